package written

import (
	"strings"

	"ripplewright/internal/form/customary"
)

// measure is what an amount is counted in.
type measure struct {
	kind measureKind
	size float64 // g or mL of one
}

type measureKind uint8

const (
	pieces    measureKind = iota // nothing behind the number
	mass                         // g
	volume                       // mL; a customary cup, not the 240 mL of 21 CFR 101.9(b)(5)(viii), which is for labels alone
	ounce                        // g, and of a liquid perhaps a fluid ounce
	pint                         // mL in the US, a fifth more in Britain
	container                    // a can, a packet
	vague                        // a pinch, a handful
)

// cased are the measures that differ in the case of a letter alone, and the German spoons,
// which are written so.
var cased = map[string]measure{"EL": {volume, 15}, "TL": {volume, 5}, "T": {volume, customary.TablespoonML}, "t": {volume, customary.TeaspoonML}}

var measures = func() map[string]measure {
	all := map[string]measure{}
	for _, m := range []struct {
		words string
		is    measure
	}{
		{"g gr grs grm grms gm gms gram gramms grams gramme grammes", measure{mass, 1}},
		{"kg kgs kilo kilos kilogram kilograms", measure{mass, 1000}},
		{"dag dkg decagram decagrams dekagram dekagrams", measure{mass, 10}}, // BIPM SI Brochure, table 7; dkg in shops from Vienna to Warsaw
		{"mg milligram milligrams", measure{mass, 0.001}},
		{"lb lbs pound pounds", measure{mass, customary.PoundG}},
		{"oz ozs ounce ounces", measure{ounce, customary.OunceG}},
		{"ml mls cc milliliter milliliters millilitre millilitres", measure{volume, 1}},
		{"cl centiliter centilitre centiliters centilitres", measure{volume, 10}},
		{"dl deciliter decilitre deciliters decilitres", measure{volume, 100}},
		{"l lt ltr liter liters litre litres", measure{volume, 1000}},
		{"floz", measure{volume, customary.FluidOunceML}},
		{"cup cups c cupful cupfuls cupsful", measure{volume, customary.CupML}},
		{"tbsp tbsps tbs tblsp tblsps tbl tbls tbspn tbspns tblspn tblspns tablesp tbspoon tbspoons tablespoon tablespoons tablespoonful tablespoonfuls tablespoonsful", measure{volume, customary.TablespoonML}},
		{"tsp tsps ts tspn tspns teasp teasps tspoon tspoons teaspoon teaspoons teaspoonful teaspoonfuls teaspoonsful", measure{volume, customary.TeaspoonML}},
		{"pt pts pint pints", measure{pint, customary.PintML}},
		{"qt qts quart quarts", measure{volume, customary.QuartML}},
		{"gal gallon gallons", measure{volume, customary.GallonML}},
		{"pc pcs piece pieces ea each unit units pz", measure{pieces, 0}},
		{"can cans tin tins package packages pkg pkgs packet packets envelope envelopes stick sticks block blocks jar jars bottle bottles box boxes carton cartons tub tubs bag bags sachet sachets pot pots punnet punnets basket baskets pouch pouches brick bricks tray trays bucket buckets container containers pkt pkts", measure{container, 0}},
		{"pinch pinches dash dashes drop drops splash knob knobs handful handfuls glug drizzle touch shot shots sheet sheets leaf leaves slice slices clove cloves sprig sprigs bar bars " +
			"some dessertspoon dessertspoons ladle ladles glass glasses scoop scoops spoon spoons spoonful spoonfuls part parts bunch bunches", measure{vague, 0}},
	} {
		for _, w := range strings.Fields(m.words) {
			all[w] = m.is
		}
	}
	return all
}()

// unsure are words about an amount that say it is not the measure's own.
var unsure = words("almost nearly barely scant heaping heaped rounded generous tiny wee large big small up least good")

// hedges are words before an amount that change nothing.
var hedges = words("like about abt approx approximately ca circa roughly around level of")

func words(s string) map[string]bool {
	all := map[string]bool{}
	for _, w := range strings.Fields(s) {
		all[w] = true
	}
	return all
}
