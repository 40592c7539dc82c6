// Package kind says how a cook treats an ingredient: where in the making it goes
// in, and what it brings that a pan or a whisk minds.
package kind

import (
	"slices"
	"strings"
	"unicode"

	"ripplewright/internal/food/ingredient"
)

// Kind is how a cook treats an ingredient of one phase: where in the making it
// goes in.
type Kind uint8

// The kinds.
const (
	Liquid    Kind = iota // milk, cream, water, plant drinks: into the pan
	Yolk                  // yolk and whole egg
	White                 // fresh white
	WhitePast             // white pasteurised in the carton
	WhiteDry              // dried white
	Sugar                 // dry sugars, syrups, honey
	Starch                // starches and flours
	Gum                   // gums, pectin: dry, with sugar
	Gelatine
	Powder    // milk powders and other dry things: with the sugar
	Cocoa     // cocoa powder
	Chocolate // melts off the heat
	Fat       // butter, oils: whisked in off the heat
	Paste     // nuts and nut pastes, likewise
	Infusion  // spices, tea, peel, salt: with the milk
	Sour      // fruit, juice, vinegar, acids: cold, after cooking
	Cultured  // yogurt and the like: cold
	Spirit    // alcohol and extracts: cold
	Acid      // cream of tartar and the like for the whites
	Piece     // folded in when the tub is filled
)

var starchIDs = []string{"cornstarch", "potato_starch", "tapioca_starch", "rice_starch", "wheat_starch", "arrowroot", "tapioca_pearls",
	"rice_flour", "wheat_flour", "potato_flour", "malt_flour"}

// acidIDs are acids that whites are whipped with as well as sour flavours.
var acidIDs = []string{"cream_of_tartar", "citric_acid", "tartaric_acid", "vinegar"}

// mild are the fruits that are hardly sour: pH 4.6 and more (banana, fig: table
// of the Handbook of Food Preparation, 9th ed., 1993) or, from memory, the
// others.
var mild = []string{"banana", "avocado", "pumpkin_canned", "figs_dried", "dates_deglet", "raisins"}

// Of returns how a cook treats in. Of a maker's own pack, which has no
// group, its name and figures decide, and it goes in cold where they tell
// nothing of it being a liquid or a sugar.
func Of(in *ingredient.Ingredient) Kind {
	id := in.ID
	has := func(words ...string) bool {
		name := strings.ToLower(in.Name + " " + in.CommonName + " " + strings.ReplaceAll(id, "_", " "))
		return slices.ContainsFunc(words, func(w string) bool { return strings.Contains(name, w) })
	}
	switch in.Group {
	case "egg":
		switch {
		case strings.HasPrefix(id, "egg_white_dried"):
			return WhiteDry
		case id == "egg_white_past":
			return WhitePast
		case strings.HasPrefix(id, "egg_white"):
			return White
		}
		return Yolk
	case "dairy":
		switch {
		case in.Standing == ingredient.Cultured, has("yogurt", "yoghurt", "sour cream", "buttermilk", "crème fraîche", "creme fraiche", "mascarpone", "cream cheese", "ricotta") && !has("dried"):
			return Cultured
		case has("butter") && in.Cell(ingredient.Fat).Or(0) > 60:
			return Fat
		case in.Cell(ingredient.Water).Or(100) < 15:
			return Powder
		}
		return Liquid
	case "plant_milk":
		return Liquid
	case "sugar_syrup":
		if has("marshmallow") {
			return Piece
		}
		return Sugar
	case "cocoa_chocolate":
		if in.Cell(ingredient.CocoaSolidsFatFree).Or(0) > 30 && in.Cell(ingredient.TotalSugars).Or(0) < 10 && in.Cell(ingredient.Fat).Or(0) < chocolateFat && has("cocoa") {
			return Cocoa
		}
		if in.Cell(ingredient.Water).Or(0) > 15 { // a syrup
			return Sugar
		}
		return Chocolate
	case "starch_thickener":
		switch {
		case slices.Contains(starchIDs, id):
			return Starch
		case id == "gelatin":
			return Gelatine
		}
		return Gum
	case "flavour":
		switch {
		case slices.Contains(acidIDs, id):
			return Acid
		case has("vanilla") || in.Cell(ingredient.Alcohol).Or(0) > 1:
			return Spirit
		case id == "mint_peppermint":
			return Infusion
		}
		return Infusion
	case "fruit":
		if slices.Contains(mild, id) {
			return Paste
		}
		return Sour
	case "nut_seed":
		if has("coconut milk", "coconut cream") {
			return Liquid
		}
		return Paste
	case "spirit":
		return Spirit
	case "fat_oil":
		return Fat
	case "bakery":
		if id == "malt_flour" {
			return Starch
		}
		return Piece
	case "other":
		return Liquid
	}
	return ownKind(in, has)
}

// chocolateFat is the fat, %, from which cocoa is a chocolate, which melts: the
// fattest powder of the library has 24, unsweetened chocolate 52.
const chocolateFat = 40

// ownKind reads a maker's own pack by its words and figures: what its figures say
// goes before a word, and a word of what it is before one of how it tastes.
func ownKind(in *ingredient.Ingredient, has func(...string) bool) Kind {
	words := strings.FieldsFunc(strings.ToLower(in.Name+" "+in.CommonName), func(r rune) bool { return !unicode.IsLetter(r) })
	word := func(any ...string) bool {
		return slices.ContainsFunc(words, func(w string) bool { return slices.Contains(any, w) })
	}
	sweet := in.Cell(ingredient.Carbohydrate).Or(0) > 40
	switch {
	case in.Cell(ingredient.Fat).Or(0) > 80:
		return Fat
	case has("egg white"):
		if in.Cell(ingredient.Protein).Or(0) > 40 {
			return WhiteDry
		}
		return WhitePast
	case has("yolk"), has("whole egg", "liquid egg") && !sweet:
		return Yolk
	case in.Cell(ingredient.Alcohol).Or(0) > 1 || word("rum", "liqueur", "whisky", "whiskey", "brandy"):
		return Spirit
	case has("starch", "flour", "custard powder", "pudding powder", "tapioca", "arrowroot", "semolina"), in.Cell(ingredient.Starch).Or(0) > 50:
		return Starch
	case has("chocolate", "couverture"):
		return Chocolate
	case has("cocoa"):
		return Cocoa
	case sweet && has("sugar", "syrup", "malt", "honey"):
		return Sugar
	case word("vanilla", "extract"):
		return Spirit
	case word("zest", "peel", "blossom", "leaves", "tea", "oil"):
		return Infusion
	case word("jam", "marmalade", "jelly"): // sugar more than fruit, as the library's jam
		return Paste
	case has("juice", "puree", "purée", "berry", "berries", "fruit", "lemon", "lime", "orange", "currant", "buckthorn", "rhubarb", "cherry", "cherries", "plum", "apple"):
		return Sour
	case has("yogurt", "yoghurt", "quark", "skyr", "kefir"):
		return Cultured
	case has("milk", "cream", "drink"):
		return Liquid
	case has("sugar", "syrup", "honey", "allulose", "dextrose", "glucose") || in.Cell(ingredient.Carbohydrate).Or(0) > 60:
		return Sugar
	}
	return Paste
}

// yolkiest parts whole eggs (372 mg of cholesterol in 100 g, USDA SR28 NDB
// 01123) from yolk (1085, NDB 01125), dried whole egg apart.
const yolkiest = 700

// WholeEgg reports whether what Of calls yolk is the whole egg: by its
// cholesterol, and where a pack does not give that, by its name.
func WholeEgg(in *ingredient.Ingredient) bool {
	if Of(in) != Yolk {
		return false
	}
	if c := in.Cell(ingredient.CholesterolMG); c.Known {
		return c.Value < yolkiest
	}
	return !strings.Contains(strings.ToLower(in.Name), "yolk")
}

// Acids of which the composition says nothing, g of citric acid equivalent per
// 100 g: vinegar of 5 % acetic acid (mol for mol), a maker's own sour pack as
// raspberries are (kitchen tables, 1.5 %); both from memory. Cream of tartar is
// an acid salt with one proton in 188 g.
const (
	vinegarAcid = 5.3
	ownSourAcid = 1.5
	tartarAcid  = 34
	tartaric    = 85 // two protons in 150 g, where citric acid has three in 192
)

// AcidPercent returns the acid of in, g of citric acid equivalent per 100 g; 0
// of what is not sour. Of fruit it is named, g per 100 g of acid by its
// composition: what the analysis leaves unnamed, which errs by half either way.
func AcidPercent(in *ingredient.Ingredient, namedPercent float64) float64 {
	switch in.ID {
	case "cream_of_tartar":
		return tartarAcid
	case "vinegar":
		return vinegarAcid
	case "tartaric_acid":
		return tartaric
	}
	k := Of(in)
	if k != Sour && k != Acid {
		return 0
	}
	if namedPercent > 0 {
		return namedPercent
	}
	if k == Acid {
		return 100
	}
	return ownSourAcid
}

// creamCounts is what a kg of cream counts beside a kg of milk where acid
// curdles: it has less casein, and its fat keeps the clumps apart (two kitchen
// pages; see limits.AcidHot).
const (
	creamCounts = 0.25
	creamFat    = 15 // % from which a dairy liquid is cream
)

// plants are what a pack is called that says milk or cream and has no casein.
var plants = []string{"coconut", "oat", "soy", "almond", "rice", "cashew", "hazelnut", "hemp", "pea ", "plant", "vegan", "nut"}

// ownMilk reports whether a maker's own pack is called after milk and is a liquid
// or cultured: of a plant it is not.
func ownMilk(in *ingredient.Ingredient) bool {
	if k := Of(in); !in.Own || k != Liquid && k != Cultured {
		return false
	}
	name := strings.ToLower(in.Name + " " + in.CommonName)
	called := func(w string) bool { return strings.Contains(name, w) }
	return slices.ContainsFunc([]string{"milk", "cream", "yogurt", "yoghurt", "quark", "skyr", "kefir"}, called) && !slices.ContainsFunc(plants, called)
}

// MilkPercent returns how much of 100 g of in counts as milk where acid curdles.
func MilkPercent(in *ingredient.Ingredient) float64 {
	switch {
	case in.Group != "dairy" && !ownMilk(in) || Of(in) == Fat:
		return 0
	case Of(in) == Powder:
		return 1000 // of powder, made up
	case in.Cell(ingredient.Fat).Or(0) >= creamFat:
		return 100 * creamCounts
	}
	return 100
}
