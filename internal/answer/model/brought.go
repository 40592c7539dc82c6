package model

import (
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/kind"
	"ripplewright/internal/matter/mix"
)

// brought is what the lines of a part bring that a pan or a whisk minds, g as
// written.
type brought struct {
	yolk    float64 // the yolk of whole eggs too; dried, as much as it was
	white   float64 // liquid
	starch  float64 // starches and flours as weighed
	alcohol float64
	salt    float64 // see saltBrought
	acid    float64 // citric acid equivalent
	milk    float64 // cream counts in part, see kind.MilkPercent
	unnamed float64 // carbohydrate that no figure of a pack names
}

// yolkOfWhole is the share of yolk in a shelled egg: USDA SR28 NDB 01125 and
// 01124, a large egg's 17 and 33 g.
const yolkOfWhole = 0.34

// broughtBy returns what one gram of an ingredient brings.
func broughtBy(in *ingredient.Ingredient, x *ingredient.Resolved) brought {
	var b brought
	switch k := kind.Of(in); {
	case kind.WholeEgg(in):
		b.yolk, b.white = yolkOfWhole, 1-yolkOfWhole
	case k == kind.Yolk:
		b.yolk = 1
		if in.Cell(ingredient.Water).Or(100) < driedWater {
			b.yolk = in.Cell(ingredient.CholesterolMG).Or(yolkCholesterolMG) / yolkCholesterolMG
		}
	case k == kind.White, k == kind.WhitePast:
		b.white = 1
	case k == kind.Starch:
		b.starch = 1
	}
	b.alcohol = in.Cell(ingredient.Alcohol).Least() / 100
	b.salt = saltBrought(in, x) / 100
	b.acid = kind.AcidPercent(in, x.Nominal.Grams[mix.CitricAcid]) / 100
	b.milk = kind.MilkPercent(in) / 100
	if b.starch == 0 { // whose name says what its carbohydrate is
		b.unnamed = x.UnnamedG / 100
	}
	return b
}

// saltBrought is the salt, g per 100 g of in, that a cook tastes as added: salt
// itself, and by its sodium that of all but milk and egg, which have their own
// and are not salted, and of what is low in sodium. Butter has so little of milk
// in it that its sodium is added.
func saltBrought(in *ingredient.Ingredient, x *ingredient.Resolved) float64 {
	if g := x.Nominal.Grams[mix.SodiumChloride]; g > 0 {
		return g
	}
	if (in.Group == "dairy" || in.Group == "egg") && kind.Of(in) != kind.Fat {
		return 0
	}
	if sodium := in.Cell(ingredient.SodiumMG).Or(0); sodium > lowSodiumMG {
		return sodium * ingredient.SaltPerSodium / 1000
	}
	return 0
}

// add adds g grams of what brings x a gram.
func (b *brought) add(x *brought, g float64) {
	b.yolk += g * x.yolk
	b.white += g * x.white
	b.starch += g * x.starch
	b.alcohol += g * x.alcohol
	b.salt += g * x.salt
	b.acid += g * x.acid
	b.milk += g * x.milk
	b.unnamed += g * x.unnamed
}

// A dried yolk is as much yolk as its cholesterol says, all of which is an egg's
// yolk's: 1085 mg in 100 g, USDA SR28 NDB 01125. Dried egg holds under 5 % water.
const (
	yolkCholesterolMG = 1085
	driedWater        = 10
)

// lowSodiumMG in 100 g is the most of a food that is called low in sodium:
// Regulation (EC) No 1924/2006, Annex.
const lowSodiumMG = 120
