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

// broughtBy returns what one gram of an ingredient brings.
func broughtBy(in *ingredient.Ingredient, x *ingredient.Resolved) brought {
	b := brought{total: 1}
	switch k := kind.Of(in); {
	case k == kind.Yolk && in.Cell(ingredient.CholesterolMG).Or(math.Inf(1)) < yolkiest: // a whole egg
		b.yolk, b.white = yolkOfWhole, 1-yolkOfWhole
	case k == kind.Yolk:
		b.yolk = 1
	case k == kind.White, k == kind.WhitePast:
		b.white = 1
	case k == kind.Starch:
		b.starch = 1
	}
	b.alcohol = in.Cell(ingredient.Alcohol).Least() / 100
	b.salt = x.Nominal.Grams[mix.SodiumChloride] / 100
	b.acid = kind.AcidPercent(in, x.Nominal.Grams[mix.CitricAcid]) / 100
	b.milk = kind.MilkPercent(in) / 100
	b.unnamed = x.UnnamedG / 100
	return b
}

// add adds g grams of what brings x a gram.
func (b *brought) add(x *brought, g float64) {
	b.total += g * x.total
	b.yolk += g * x.yolk
	b.white += g * x.white
	b.starch += g * x.starch
	b.alcohol += g * x.alcohol
	b.salt += g * x.salt
	b.acid += g * x.acid
	b.milk += g * x.milk
	b.unnamed += g * x.unnamed
}

// yolkiest parts whole eggs (372 mg of cholesterol in 100 g, USDA SR28 NDB
// 01123) from yolk (1085, NDB 01125), dried whole egg apart.
const yolkiest = 700
