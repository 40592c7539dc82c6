package selling

import (
	"context"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/icy"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/work/design"
)

// Stored returns what the models say of a design's time in the maker's freezer: how
// its ice grows. It is no durability, which the maker finds out. Errors: those of
// cold.FindOwn and cold.Plan.
func Stored(ctx context.Context, d design.Design, r *model.Result) (icy.Answer, error) {
	kitchen, err := cold.FindOwn(d.Kitchen.Profile)
	if err != nil {
		return icy.Answer{}, err
	}
	plan, err := cold.Plan(ctx, d, r, kitchen, cold.Options{NoPictures: true})
	if err != nil {
		return icy.Answer{}, err
	}
	return icy.Tell(r, &plan, icy.Options{})
}
