package balance

import (
	"context"
	"testing"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
)

func models(t testing.TB) *model.Model { return model.New(market.Library(t)) }

var background = context.Background()
