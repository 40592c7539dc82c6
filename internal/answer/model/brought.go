package model

import (
	"math"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/kind"
	"ripplewright/internal/matter/mix"
)

// brought is what the lines of a part bring that a pan or a whisk minds, g as
// written.
type brought struct {
	total   float64
	yolk    float64 // the yolk of whole eggs too
	white   float64 // liquid
	starch  float64 // starches and flours as weighed
	alcohol float64
	salt    float64 // sodium chloride added as such
	acid    float64 // citric acid equivalent
	milk    float64 // cream counts in part, see kind.MilkPercent
	unnamed float64 // carbohydrate that no figure of a pack names
}

// yolkOfWhole is the share of yolk in a shelled egg: USDA SR28 NDB 01125 and
// 01124, a large egg's 17 and 33 g.
const yolkOfWhole = 0.34

func (b *brought) add(in *ingredient.Ingredient, x *ingredient.Resolved, g float64) {
	b.total += g
	switch k := kind.Of(in); {
	case k == kind.Yolk && in.Cell(ingredient.CholesterolMG).Or(math.Inf(1)) < yolkiest: // a whole egg
		b.yolk += yolkOfWhole * g
		b.white += (1 - yolkOfWhole) * g
	case k == kind.Yolk:
		b.yolk += g
	case k == kind.White, k == kind.WhitePast:
		b.white += g
	case k == kind.Starch:
		b.starch += g
	}
	b.alcohol += g * in.Cell(ingredient.Alcohol).Or(0) / 100
	b.salt += g * x.Nominal.Mass[mix.SodiumChloride] / 100
	b.acid += g * kind.AcidPercent(in, x.Nominal.Mass[mix.CitricAcid]) / 100
	b.milk += g * kind.MilkPercent(in) / 100
	b.unnamed += g * x.UnnamedG / 100
}

// yolkiest parts whole eggs (372 mg of cholesterol in 100 g, USDA SR28 NDB
// 01123) from yolk (1085, NDB 01125), dried whole egg apart.
const yolkiest = 700
