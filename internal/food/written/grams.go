package written

import (
	"math"
	"strconv"
	"strings"

	"ripplewright/internal/food/egg"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/form/customary"
)

// The American can of sweetened condensed milk holds 14 oz by weight, 397 g. common
// practice, no source.
const (
	condensed   = "condensed_milk_sweet"
	condensedOz = 14
)

// sold is how much one can or jar holds, g, from here on: what stands beside several
// of them is then each one's. common practice, no source.
const sold = 150

// packs is how often a weight that stands beside containers counts: once where it is
// that of all, as often as there are where it is each one's, 0 where the line does
// not tell, as "2 sachets (10 g)".
func packs(l *Said, p parts, grams float64) float64 {
	n := p.sum[0].n
	text := strings.ToLower(l.Text)
	each, known := recordPiece(l.Ingredient, one(strings.ToLower(p.sum[0].word)))
	switch {
	case n == 1 || strings.Contains(text, "total") || strings.Contains(text, "altogether"):
		return 1
	case p.each || strings.Contains(text, "each"):
		return n
	case known && math.Abs(grams-n*each) <= apartRecord*grams:
		return 1
	case known && math.Abs(grams-each) <= apartRecord*grams:
		return n
	case n > 1 && grams >= sold && grams < 3*sold:
		return n
	}
	return 0
}

// sum adds amounts up.
func (r *Reader) sum(l *Said, list []amount, size string, american bool) (ingredient.Cell, Said) {
	total, how := ingredient.Known(0), Said{}
	for i, a := range list {
		g, h := r.grams(l, a, size, american)
		if i > 0 && list[0].in.size == customary.PoundG && h.Doubt == OunceOrFluid {
			h.Doubt = 0 // behind pounds they are of weight
		}
		if i > 0 {
			h.Count, h.ML = how.Count+h.Count, how.ML+h.ML
			if h.Doubt == 0 {
				h.Doubt = how.Doubt
			}
		}
		how = h
		total.Known = total.Known && g.Known
		total.Value += g.Value
	}
	if !total.Known {
		return ingredient.Cell{}, how
	}
	return total, how
}

// grams is what one amount of l's ingredient weighs, and how that is known.
func (r *Reader) grams(l *Said, a amount, size string, american bool) (ingredient.Cell, Said) {
	in := l.Ingredient
	no := ingredient.Cell{}
	if a.doubts == Range || a.doubts == Vague || a.doubts == NoAmount {
		return no, Said{Doubt: a.doubts}
	}
	out := Said{Doubt: a.doubts}
	switch a.in.kind {
	case mass, ounce:
		out.Basis = Weighed
		if a.in.size < 1 && out.Doubt == 0 && in.DensityKind == "liquid" {
			out.Doubt = NoMeasure // "200 mg milk" is a slip
		}
		if a.in.kind == ounce && in.DensityKind == "liquid" && out.Doubt == 0 && !(in.ID == condensed && a.n == condensedOz) && !byWeight.in(l.Text) {
			out.Doubt = OunceOrFluid
		}
		return ingredient.Known(a.n * a.in.size), out
	case volume, pint:
		switch {
		case a.in.kind != pint || nameThere.in(l.Name):
		case in.Group == "fruit" && in.DensityKind != "liquid":
			out.Doubt = HowFull // a basket of berries is no measured pint
		case !american:
			out.Doubt = PintOf
		}
		return r.measured(l, a, out)
	case container:
		if g, ok := recordPiece(in, one(strings.ToLower(a.word))); ok && out.Doubt == 0 {
			out.Basis, out.Count, out.CountOf, out.EachGrams = Packed, a.n, strings.ToLower(a.word), g
			return ingredient.Known(a.n * g), out
		}
		return no, Said{Doubt: NoMeasure}
	case pieces:
		part, ok := eggParts[in.ID]
		if class, known := r.classOf(size); ok && known {
			each, err := egg.Grams(class.System, class.Name, part, 1)
			if err == nil {
				out.Basis, out.Count, out.CountOf, out.EachGrams = Counted, a.n, part, each
				out.OfSize = class.System + " " + class.Name
				out.DesignSize = strings.EqualFold(class.Name, r.eggs.Size)
				return ingredient.Known(a.n * each), out
			}
		}
		if each, of, ok := onePieceOf(in, l.Name); ok {
			out.Basis, out.Count, out.CountOf, out.EachGrams, out.OfSize = Packed, a.n, Pieces, each, of
			return ingredient.Known(a.n * each), out
		}
	}
	return no, Said{Doubt: NoMeasure}
}

var (
	foamed = find(`(?i)\b(?:whipped|whisked|beaten|frothed)\b`)
	mashed = find(`(?i)\b(?:smashed|pureed|puréed|mashed|crushed|pulped|blended|blitzed)\b`)
	flaked = find(`(?i)\b(?:grated|shaved|shredded|flaked)\b`)
	melted = find(`(?i)\bmelted\b`)
)

// reshaped reports whether a food is measured after it was whipped, mashed or melted, so
// that a cup of it is not the record's. What is done behind a comma is done later, except that a
// bar of chocolate fills no cup before it is grated.
func reshaped(in *ingredient.Ingredient, name, note string) bool {
	switch {
	case in.ID == "egg_white" || strings.HasPrefix(in.ID, "cream_"):
		return foamed.in(name)
	case in.Group == "fruit" && in.DensityKind == "bulk":
		return mashed.in(name)
	}
	return in.Group == "cocoa_chocolate" && (melted.in(name) || flaked.in(name+" "+note))
}

// measured weighs a volume.
func (r *Reader) measured(l *Said, a amount, out Said) (ingredient.Cell, Said) {
	in := l.Ingredient
	out.ML = a.n * a.in.size
	own := map[float64]ingredient.Cell{customary.CupML: in.GramsPerCup, customary.TablespoonML: in.GramsPerTbsp, customary.TeaspoonML: in.GramsPerTsp, customary.FluidOunceML: in.GramsPerFlOz}[a.in.size]
	if g, several := filled(in, a.in.size, l.Text); g > 0 {
		out.Basis, out.GPerML = Measured, g/a.in.size
		return ingredient.Known(a.n * g), out
	} else if several && out.Doubt == 0 {
		out.Doubt = HowFull
	} else if reshaped(in, l.Name, l.Note) && out.Doubt == 0 {
		out.Doubt = HowFull
	}
	if !in.Density.Known {
		if !own.Known {
			return ingredient.Cell{}, Said{Doubt: NoDensity}
		}
		out.Basis, out.GPerML = Spooned, own.Value/a.in.size
		return ingredient.Known(a.n * own.Value), out
	}
	out.Basis, out.GPerML = Measured, in.Density.Value
	if own.Known && in.DensityKind != "liquid" {
		out.GPerML = own.Value / a.in.size // the record's own spoon, whose density is that of its cup
	}
	g := out.ML * out.GPerML
	for ml, c := range map[float64]ingredient.Cell{customary.CupML: in.GramsPerCup, customary.TablespoonML: in.GramsPerTbsp, customary.TeaspoonML: in.GramsPerTsp, customary.FluidOunceML: in.GramsPerFlOz} {
		near := ml == a.in.size || a.in.size != customary.CupML && a.in.size != customary.TablespoonML && a.in.size != customary.TeaspoonML
		if out.ML >= cupsWorth && ml != a.in.size && (ml == customary.TablespoonML || ml == customary.TeaspoonML) {
			near = false // what is poured by the millilitre is as a cup of it, and no spoon
		}
		if c.Known && near && math.Abs(c.Value/ml/in.Density.Value-1) > apartRecord && out.Doubt == 0 {
			out.Doubt = Apart
		}
	}
	return ingredient.Known(g), out
}

// cupsWorth is from how many mL on nobody measures by the spoon: a quarter of a cup. common
// practice, no source.
const cupsWorth = customary.CupML / 4

var recordMeasure = find(`^([\d.]+) ([a-z]+)(?:,? ([^=]*?))? = ([\d.]+) g$`)

// heaped is one of a measure as a record has it: filled or cut how, and what it weighs.
type heaped struct {
	how   string
	grams float64
}

// recordMeasures are what a record says of a measure.
func recordMeasures(in *ingredient.Ingredient, measure string) (all []heaped) {
	for _, entry := range strings.Split(in.Measures, "; ") {
		m := recordMeasure.parts(entry)
		if m == nil || m[2] != measure {
			continue
		}
		n, _ := strconv.ParseFloat(m[1], 64)
		g, _ := strconv.ParseFloat(m[4], 64)
		if n > 0 {
			all = append(all, heaped{m[3], g / n})
		}
	}
	return all
}

var (
	siftedLater = find(`(?i)[,(]\s*sifted`)
	groundLater = find(`(?i)[,(][^,(]*\bground\b`)
	// nameThere finds names that only the US has, whose pint it is then: 21 CFR 131.150
	// (heavy cream) and 131.180 (half-and-half).
	nameThere = find(`(?i)\bheavy (?:whipping )?cream\b|\bhalf[- ](?:and|&)[- ]half\b`)
)

// filled is what one cup or spoon of a record weighs as the line says it is filled
// or cut ("packed", "sliced"); 0 where the line does not say, and several where
// the record's own measures then differ by more than a quarter and none of them is of the
// food as it stands, as of cream cheese beside that which is whipped.
func filled(in *ingredient.Ingredient, ml float64, text string) (grams float64, several bool) {
	if in.DensityKind == "liquid" {
		return 0, false
	}
	want := map[float64]string{customary.CupML: "cup", customary.TablespoonML: "tbsp", customary.TeaspoonML: "tsp"}[ml]
	said := words(keyOf(text))
	if siftedLater.in(text) {
		said["sifted"], said["unsifted"] = false, true // "1 cup, sifted" is measured first
	}
	if groundLater.in(text) {
		said["ground"] = false
	}
	if in.ID == "pepper_black" && !said["whole"] {
		said["ground"] = true // by the spoon: what is whole is called so, or peppercorns
	}
	between := said["packed"] && (said["lightly"] || said["loosely"] || said["not"]) // neither of a record's two
	low, high, plain := math.Inf(1), 0.0, false
	for _, m := range recordMeasures(in, want) {
		for _, w := range strings.Fields(keyOf(m.how)) {
			if said[w] && w != "or" && (w != "whole" || m.how == w) && !between {
				grams = m.grams
			}
		}
		low, high, plain = min(low, m.grams), max(high, m.grams), plain || m.how == ""
	}
	return grams, !plain && high > low*(1+apartBulk)
}

// lightest is what the smallest piece of a record weighs, g, 0 where it has none.
func lightest(in *ingredient.Ingredient) (least float64) {
	for _, entry := range strings.Split(in.Measures, "; ") {
		m := wholePiece.parts(entry)
		if m == nil || measures[m[2]] != (measure{}) {
			continue
		}
		n, _ := strconv.ParseFloat(m[1], 64)
		g, _ := strconv.ParseFloat(m[3], 64)
		if n > 0 && (least == 0 || g/n < least) {
			least = g / n
		}
	}
	return least
}

// wholePiece finds a record's measure of a piece as it grows or is sold.
var wholePiece = find(`^([\d.]+) (extra|small|medium|large|fruit|regular|cookie|cracker|berry|date|fig|apricot|plum|cherry|nut)\b.*? = ([\d.]+) g$`)

// recordPiece is what one stick, envelope or can weighs by the record.
func recordPiece(in *ingredient.Ingredient, piece string) (grams float64, ok bool) {
	all := recordMeasures(in, piece)
	if len(all) > 0 {
		grams = all[len(all)-1].grams
	}
	// A can's size is not the kitchen's; what is sold in one size is.
	return grams, len(all) == 1 && (piece == "stick" || piece == "envelope")
}
