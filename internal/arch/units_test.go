package arch

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The name of an exported number ends in what it is counted in, in one spelling
// for each: °C is C, a share of one Fraction, of a hundred Percent, and a
// quotient is told with Per.
const unitNames = `C|K|UG|MG|G|Grams|KG|Mol|ML|L|UM|MM|CM|M|MM2|CM2|In2|M2|M3|UM3|Pa|KPa|PaS|J|KJ|Kcal|W|Rad|` +
	`S|Minutes|Hours|Days|Weeks|Percent|Fractions?|Ratio|Factors?|[A-Za-z0-9]*Per[A-Z0-9][A-Za-z0-9]*`

var (
	unitEnds  = regexp.MustCompile(`(^[A-Z]?|[a-z0-9])(` + unitNames + `)$`)
	unitAlone = regexp.MustCompile(`^(?i:` + unitNames + `)$`)
)

// symbols are what a parameter may be called without its unit, and mean one
// thing everywhere: t °C, x and y a place or a share of moles, h W/(m² K), k
// W/(m K), the numbers of Biot and Fourier, an activity, a shape's φ, and v what
// its neighbour says.
var symbols = []string{"t", "x", "y", "h", "kc", "kd", "k1", "k2", "phi", "p2", "bi", "fo", "aw", "v", "_"}

// unitless are the numbers that have no unit, or that of something beside them.
var unitless = map[string]string{
	"counts": `model.EggParts.Yolks model.EggParts.Whites model.EggParts.ToCrack model.Eggs.Crack model.EggsUnpaired.Yolks model.EggsUnpaired.Whites
		model.Blend.TubsFilled model.Nutrition.ServingsTotal process.Eggs.YolksUsed process.Eggs.WhitesUsed process.Eggs.Whole process.Eggs.YolksLeft
		process.Eggs.WhitesLeft design.Line.Count written.Said.Count egg.Grams(count) price.Pack.Pieces icy.Week.Week icy.Answer.Openings cold.Profile.Openings
		ripple.Ribbons.Counts ripple.Spoonful.Counts`,
	"money": `model.Cost.Known shop.Offer.Price shop.Offer.Margin shop.List.Paid shop.List.Used shop.List.Worth price.Pack.Price price.Margin
		design.Tubs.SellsFor price.Margin(cost) price.Margin(selling) price.Selling price.Selling(cost) price.Selling(margin)`,
	"of one, a logarithm or an index": `cold.Storage.AgeingIndex cold.Storage.AgeingIndexWarm cold.Storage.Ageing model.Strain.Past
		process.Custard.LogYolk process.Foam.LogLow process.Foam.LogHigh process.Killing.LogReduction process.Freezing.Loaded
		ingredient.Ingredient.HigherSweetness heat.ComputedMean heat.ComputedSurface heat.Series.At heat.Series.Mean heat.NeumannFront.Lambda
		heat.Options.Tolerance heat.Balance.Residual heat.UprightWall.Emissivity phase.Slopes.LnYield ripple.Lightness solution.SyrupActivity
		solution.Activity solution.Solute.Nu solution.Solute.H solution.Solute.Q water.LnIceActivity onpack.Tub.Sector(degrees)`,
	"the unit beside it, or its caller's": `photo.Point.X photo.Point.Y photo.Edged.Value photo.Edged.Low photo.Edged.High learn.Slopes.Hardness sure.Learnt.Shift sure.Learnt.Left model.Lesson.Mean model.Lesson.Half model.Lesson.Before learn.Belief.Mean learn.Belief.SD learn.Belief.Band(low) learn.Belief.Band(value) learn.Belief.Band(high) learn.Observation.Says learn.Observation.Along learn.Observation.ErrorSD learn.Posterior.Cov learn.Posterior.Narrower learn.Observation.Chance batch.Measured.Value batch.Measured.Get(number) batch.Measured.Put(number) cold.Range.Value cold.Range.Low cold.Range.High process.Range.Value process.Range.Low process.Range.High
		learn.Observation.In(low) learn.Observation.In(value) learn.Observation.In(high) learn.Pair.Measured learn.Pair.Low learn.Pair.High learn.Pair.Expected
		sure.Spread.Low sure.Spread.Middle sure.Spread.High sure.Answer.Effect model.Span.Value model.Span.Low model.Span.High model.OverLimit.Value model.OverLimit.Extra model.Strain.Value model.Strain.At
		model.Result.TubMean process.Caution.Has process.Caution.Limit process.Caution.Low icy.Remedy.From icy.Remedy.To
		ingredient.Cell.Value ingredient.Cell.Get(value) ingredient.Cell.Put(value) ingredient.Cell.Or ingredient.Cell.Or(d)
		ingredient.Cell.Least ingredient.Ingredient.Most ingredient.Amount.Known ingredient.Amount.Most ingredient.Compared.Published
		ingredient.Compared.Ours label.PanelLine.Amount label.Limit.Own label.Limit.Miss label.Nutrient.Step label.Trace(amount) label.Declare(amount)
		limits.Step.At blend.Tub.Mean blend.Tub.Mean(dense) blend.Tub.Mean(foam) ripple.FieldError.Value ripple.Pair.Foam ripple.Pair.Dense ripple.Pair.At
		ripple.Pair.At(f) ripple.Spoonful.Mean ripple.Spoonful.SD ripple.Spoonful.P10 ripple.Spoonful.P50 ripple.Spoonful.P90
		ripple.Spoonful.Lowest ripple.Spoonful.Highest ripple.Cut.Origin ripple.Twist.At ripple.Twist.Jacobian ripple.Tine.At
		solution.RangeError.Got solution.RangeError.Low solution.RangeError.High solution.At`,
}

// freeOfUnits are packages whose numbers stand in tables that name their units.
var freeOfUnits = []string{"internal/matter/num", "internal/answer/validate", "internal/answer/balance"}

// number reports whether a type is a number, or several, or one with its ends.
func number(e ast.Expr) bool {
	switch x := e.(type) {
	case *ast.Ident:
		return x.Name == "float64" || x.Name == "Range"
	case *ast.SelectorExpr:
		return x.Sel.Name == "Range"
	case *ast.ArrayType:
		return number(x.Elt)
	case *ast.StarExpr:
		return number(x.X)
	case *ast.MapType:
		return number(x.Value)
	}
	return false
}

// numbersOf returns the exported numbers of a file that do not tell their unit,
// as pkg.Type.Field, pkg.Func for a result and pkg.Func(name) for a parameter.
func numbersOf(f *ast.File) (untold []string) {
	tells := func(name string, also ...string) bool {
		return unitEnds.MatchString(name) || unitAlone.MatchString(name) || slices.Contains(also, name)
	}
	say := func(name string) { untold = append(untold, f.Name.Name+"."+name) }
	for _, d := range f.Decls {
		switch d := d.(type) {
		case *ast.GenDecl:
			for _, s := range d.Specs {
				t, ok := s.(*ast.TypeSpec)
				if !ok || !t.Name.IsExported() {
					continue
				}
				fields, ok := t.Type.(*ast.StructType)
				if !ok {
					continue
				}
				for _, field := range fields.Fields.List {
					for _, n := range field.Names {
						if number(field.Type) && n.IsExported() && !tells(n.Name) {
							say(t.Name.Name + "." + n.Name)
						}
					}
				}
			}
		case *ast.FuncDecl:
			name := d.Name.Name
			if d.Recv != nil {
				of := d.Recv.List[0].Type
				if p, ok := of.(*ast.StarExpr); ok {
					of = p.X
				}
				if id, ok := of.(*ast.Ident); ok {
					if !id.IsExported() {
						continue
					}
					name = id.Name + "." + name
				}
			}
			if !d.Name.IsExported() {
				continue
			}
			for _, p := range d.Type.Params.List {
				for _, n := range p.Names {
					if number(p.Type) && !tells(n.Name, symbols...) {
						say(name + "(" + n.Name + ")")
					}
				}
			}
			if d.Type.Results == nil || tells(d.Name.Name) {
				continue
			}
			for _, r := range d.Type.Results.List {
				switch {
				case !number(r.Type):
				case len(r.Names) == 0:
					say(name)
				default:
					for _, n := range r.Names {
						if !tells(n.Name) {
							say(name + "(" + n.Name + ")")
						}
					}
				}
			}
		}
	}
	return untold
}

func TestEachExportedNumberTellsItsUnit(t *testing.T) {
	known := map[string]bool{}
	for _, names := range unitless {
		for _, n := range strings.Fields(names) {
			known[n] = false
		}
	}
	for _, floor := range []string{"matter", "food", "work", "answer"} {
		require.NoError(t, filepath.WalkDir(filepath.Join(top, "internal", floor), func(path string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
				return err
			}
			dir, err := filepath.Rel(top, filepath.Dir(path))
			require.NoError(t, err)
			if slices.Contains(freeOfUnits, filepath.ToSlash(dir)) {
				return nil
			}
			f, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.SkipObjectResolution)
			require.NoError(t, err)
			for _, name := range numbersOf(f) {
				_, ok := known[name]
				assert.True(t, ok, "%s does not end in its unit; if it has none, list it among the unitless", name)
				known[name] = true
			}
			return nil
		}))
	}
	for name, found := range known {
		assert.True(t, found, "%s is listed without a unit, and is not there or has one", name)
	}
}

func TestTheTestOfUnitsSeesThem(t *testing.T) {
	for code, seen := range map[string][]string{
		"type A struct{ Overrun float64 }":                                {"x.A.Overrun"},
		"type A struct{ OverrunPercent, OverrunFraction float64 }":        nil,
		"type A struct{ AtC, DepthMM, WallWPerM2K, AboveGlassK float64 }": nil,
		"type A struct{ Topic, Magic, Lock, Sum float64 }":                {"x.A.Topic", "x.A.Magic", "x.A.Lock", "x.A.Sum"},
		"type A struct{ FoamShare, HoldMin, Hour, Litres float64 }":       {"x.A.FoamShare", "x.A.HoldMin", "x.A.Hour", "x.A.Litres"},
		"type a struct{ Overrun float64 }":                                nil,
		"func Density(t float64) float64":                                 {"x.Density"},
		"func GPerML(t, overrun float64) float64":                         {"x.GPerML(overrun)"},
		"func Ends(g float64) (lowC, high float64)":                       {"x.Ends(high)"},
		"func (a *A) Hours() Range":                                       nil,
		"func (a *A) Wait() Range":                                        {"x.A.Wait"},
	} {
		f, err := parser.ParseFile(token.NewFileSet(), "x.go", "package x\n"+code, 0)
		require.NoError(t, err)
		assert.Equal(t, seen, numbersOf(f), code)
	}
}
