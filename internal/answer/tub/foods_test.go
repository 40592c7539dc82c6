package tub

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"ripplewright/internal/matter/ripple"
	"ripplewright/internal/work/design"
)

func TestEveryFoodGivesColoursADesignCanHold(t *testing.T) {
	seen := map[string]bool{}
	for _, f := range Foods() {
		d := design.New()
		d.Blend.DenseColour, d.Blend.FoamColour = f.Dense, f.Foam
		assert.Empty(t, design.Validate(d), f.Name)
		s := Style(d)
		assert.Greater(t, ripple.Lightness(s.Foam), ripple.Lightness(s.Dense), "%s: foam is paler", f.Name)
		for _, key := range []string{f.Name, f.Dense, f.Foam} {
			assert.False(t, seen[key], "%s: %s is there twice", f.Name, key)
			seen[key] = true
		}
	}
}

func TestANewDesignsColoursHaveNames(t *testing.T) {
	d := design.New()
	named := 0
	for _, f := range Foods() {
		if f.Dense == d.Blend.DenseColour || f.Foam == d.Blend.FoamColour {
			named++
		}
	}
	assert.Equal(t, 2, named)
}
