package balance

import (
	"math/rand"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/kind"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/work/design"
)

// family is a kind of recipe in ordinary proportions, as a trial draws designs of it.
type family struct {
	name               string
	dense, foam, syrup []portion
	warmC, coldC       float64 // between which it is served
}

// portion is an ingredient between two weights in g; a sometimes one is there in every
// other design.
type portion struct {
	id        string
	low, high float64
	sometimes bool
}

// families are the recipes of trials: invented, in proportions of common practice, no
// source.
var families = [...]family{
	{"custard", []portion{
		{"milk_whole", 380, 520, false}, {"cream_heavy", 120, 220, false}, {"egg_yolk", 70, 110, false}, {sucrose, 80, 120, false},
		{dextrose, 15, 45, true}, {"honey", 10, 40, true}, {"salt", 1, 3, true}, {"vanilla_extract", 3, 8, true}, {"hazelnut_roasted", 20, 60, true},
	}, []portion{{"egg_white", 150, 190, false}}, []portion{{sucrose, 150, 190, false}, {"water", 45, 70, false}}, -11, -15},
	{"dairy-free", []portion{
		{"oat_drink", 330, 430, false}, {"coconut_milk", 220, 300, false}, {"egg_yolk", 75, 100, false}, {sucrose, 35, 65, false}, {dextrose, 70, 115, false},
		{"almond_butter", 20, 55, true}, {"salt", 1, 2, true},
	}, []portion{{"egg_white", 140, 165, false}}, []portion{{sucrose, 70, 95, false}, {"maple_syrup", 25, 45, false}, {"glucose_liquid_bp", 30, 50, false}, {"water", 40, 55, false}}, -11, -14},
	{"honey foam", []portion{
		{"milk_whole", 400, 500, false}, {"cream_heavy", 130, 200, false}, {"egg_yolk", 75, 100, false}, {sucrose, 55, 85, false}, {dextrose, 25, 55, false},
	}, []portion{{"egg_white", 150, 180, false}}, []portion{{"honey", 50, 90, false}, {sucrose, 55, 90, false}, {"water", 35, 50, false}}, -11, -14},
	{"brown sugar", []portion{
		{"milk_whole", 400, 500, false}, {"cream_heavy", 130, 200, false}, {"egg_yolk", 70, 100, false}, {"sugar_brown", 60, 95, false}, {dextrose, 25, 55, false}, {"salt", 1, 3, true},
	}, []portion{{"egg_white", 150, 170, false}}, []portion{{"sugar_brown", 80, 110, false}, {"glucose_liquid_bp", 35, 60, false}, {"water", 45, 60, false}}, -11, -14},
	{"spirit", []portion{
		{"milk_whole", 400, 480, false}, {"cream_heavy", 150, 220, false}, {"egg_yolk", 75, 105, false}, {sucrose, 70, 100, false}, {"rum_40", 8, 28, false}, {"raisins", 20, 50, true},
	}, []portion{{"egg_white", 150, 180, false}}, []portion{{sucrose, 120, 160, false}, {"water", 45, 60, false}}, -11, -15},
	{"chocolate", []portion{
		{"milk_whole", 430, 520, false}, {"cream_heavy", 100, 160, false}, {"egg_yolk", 70, 95, false}, {sucrose, 40, 70, false}, {dextrose, 45, 80, false},
		{"chocolate_dark_70_85", 45, 85, false}, {"cocoa_natural", 5, 15, true}, {"coffee_espresso", 20, 50, true},
	}, []portion{{"egg_white", 150, 175, false}}, []portion{{sucrose, 90, 130, false}, {"glucose_liquid_bp", 30, 55, false}, {"water", 45, 60, false}}, -11, -14},
	{"fruit", []portion{
		{"milk_whole", 260, 340, false}, {"cream_heavy", 180, 240, false}, {"raspberry", 90, 170, false}, {"egg_yolk", 75, 100, false}, {sucrose, 50, 80, false}, {dextrose, 50, 90, false},
		{"lemon_peel", 2, 5, true},
	}, []portion{{"egg_white", 150, 175, false}}, []portion{{sucrose, 90, 130, false}, {"glucose_liquid_bp", 30, 50, false}, {"water", 45, 60, false}}, -11, -14},
	{"stabilised", []portion{
		{"milk_whole", 430, 520, false}, {"cream_heavy", 130, 190, false}, {"nfdm_regular", 15, 35, false}, {"egg_yolk", 35, 60, false}, {sucrose, 70, 100, false}, {dextrose, 25, 50, false},
		{"locust_bean_gum", 0.8, 1.6, false}, {"guar_gum", 0.4, 1, true}, {"inulin", 8, 20, true},
	}, []portion{{"egg_white", 150, 175, false}}, []portion{{sucrose, 120, 160, false}, {"water", 45, 60, false}}, -11, -15},
}

// draw returns a design of the family; most are good.
func (f *family) draw(r *rand.Rand) design.Design {
	between := func(low, high float64) float64 { return low + (high-low)*r.Float64() }
	lines := func(of []portion) (out []design.Line) {
		for _, p := range of {
			if !p.sometimes || r.Intn(2) == 0 {
				out = append(out, design.Line{Ingredient: p.id, Grams: between(p.low, p.high)})
			}
		}
		return out
	}
	d := design.New()
	d.Name = f.name
	d.Serving.TemperatureC = between(f.coldC, f.warmC)
	d.Dense.Lines, d.Foam.Lines, d.Foam.Syrup.Lines = lines(f.dense), lines(f.foam), lines(f.syrup)
	d.Dense.OverrunPercent, d.Foam.OverrunPercent = between(10, 30), between(200, 350)
	d.Blend.FoamVolumePercent = between(25, 55)
	d.Tubs.Count = 1 + r.Intn(4)
	return d
}

// mostDrawn is how many designs are drawn for a good one before any will do.
const mostDrawn = 1000

// good returns the first of the family's designs that is good, and after how many.
func (f *family) good(m *model.Model, r *rand.Rand) (design.Design, int) {
	for n := 1; ; n++ {
		if d := f.draw(r); mends(m, d) || n == mostDrawn {
			return d, n
		}
	}
}

// good returns a good custard.
func good(m *model.Model, r *rand.Rand) (design.Design, int) { return families[0].good(m, r) }

// perturbed moves what a search may move, by a quarter at most.
func perturbed(m *model.Model, d design.Design, r *rand.Rand) design.Design {
	by := func() float64 { return 0.75 + 0.5*r.Float64() }
	for _, p := range [...]design.Part{design.DensePart, design.SyrupPart} {
		for i, l := range d.Lines(p) {
			if in, ok := m.Library().Find(l.Ingredient); ok && l.Count == 0 && (kind.Of(in) == kind.Sugar || kind.Of(in) == kind.Liquid && in.ID != "water") {
				d = d.WithGrams(p, i, l.Grams*by())
			}
		}
	}
	d.Foam.OverrunPercent *= by()
	return d
}

// wholeEggs returns d with its eggs counted in whole pieces and the tubs cut to what that
// makes, so that they are filled by the lines as they stand.
func wholeEggs(m *model.Model, d design.Design) (design.Design, error) {
	s, err := m.Sketch(d)
	if err != nil {
		return d, err
	}
	d = asMade(d, &s, true)
	d.Batch.Basis = design.BasisAsWritten
	if s, err = m.Sketch(d); err != nil {
		return d, err
	}
	dense, foam := s.Phase(phase.Dense).Portion.MadeML, s.Phase(phase.Foam).Portion.MadeML
	d.Batch.Basis = design.BasisTubs
	d.Blend.FoamVolumePercent = 100 * foam / (dense + foam)
	d.Tubs.VolumeML = (dense + foam) / float64(d.Tubs.Count) / (d.Tubs.FillPercent / 100)
	return d, nil
}
