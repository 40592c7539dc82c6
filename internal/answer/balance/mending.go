package balance

import (
	"math"
	"slices"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/kind"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/work/design"
)

// mending is the problem of a good verdict, nil where the design makes no sketch; wide,
// with what few kitchens keep.
func mending(m *model.Model, d design.Design, locks Locks, wide bool) *problem {
	s, err := m.Sketch(d)
	if err != nil {
		return nil
	}
	k := newMaker(m.Holding(d.Own), &d, &s, locks)
	k.serving()
	k.lines()
	k.swaps()
	k.adds(design.DensePart, 0.25, sucrose, dextrose, "milk_whole")
	if len(d.Foam.Syrup.Lines) > 0 {
		k.adds(design.SyrupPart, 0.3, dextrose, glucoseSyrup, "water")
	}
	if len(d.Foam.Lines) > 0 {
		k.adds(design.FoamPart, 0.4, "egg_white")
	}
	if wide {
		k.seldomKept()
	}
	k.air()
	k.syrup()
	k.ratio()
	k.setting("tubs.fill_percent", 60, d.Tubs.FillPercent, 3, 0.5, 0)
	k.forCautions(&s)
	p := newProblem(m, d, k.levers)
	p.eats, p.cautions = true, func(string) bool { return true }
	for i, role := range roles {
		p.eat[i] = biteOf(s.Phase(role), role)
	}
	p.keep = &tastes{s.Phase(phase.Dense).SweetnessPercent, s.Phase(phase.Foam).SweetnessPercent}
	return p
}

// forCautions adds what only one caution asks to move.
func (k *maker) forCautions(s *model.Sketch) {
	for _, w := range s.Warnings() {
		if !spoils(&w) {
			continue
		}
		switch w.Code {
		case "freezer_overloaded":
			if k.d.Batch.Basis == design.BasisAsWritten {
				k.add(Lever{Kind: Batch, Low: 0.05, High: 1, Unit: 0.25, Price: 1})
			} else {
				k.setting("tubs.count", 1, float64(k.d.Tubs.Count), math.Max(1, float64(k.d.Tubs.Count)/8), 1, 1)
			}
		case "syrup_too_little":
			k.setting("tubs.count", float64(k.d.Tubs.Count), math.Min(500, 8*float64(k.d.Tubs.Count)+8), 2, 1, 1)
		case "stove_loss_exceeds_water":
			k.setting("dense.stove_loss_percent", 0, k.d.Dense.StoveLossPercent, 4, 1, 0)
		case "weighed_too_heavy", "syrup_weighed_too_light":
			k.setting("foam.syrup.weighed_g", 0, k.d.Foam.Syrup.WeighedG, k.d.Foam.Syrup.WeighedG, 1, k.d.Foam.Syrup.WeighedG)
		case "syrup_no_boil_off":
			k.setting("foam.syrup.cook_temperature_c", softBall, 130, 2, 3, 0)
		case "altitude_syrup":
			if f, ok := w.Facts.(model.AltitudeSyrup); ok { // the recipe's syrup, at its boiling point up here
				k.setting("foam.syrup.cook_temperature_c", math.Round(f.HereC)-1, math.Round(f.HereC), 2, 1, 0)
			}
		case "yolk_in_whites", "alcohol_boils_off":
			k.takeOut(w.Code)
		case "carbohydrate_unnamed", "acid_with_milk", "sugar_crystallises", "outside_model_range", "salt_rule_unsettled", "too_salty", "outside_hardness_law":
			k.allLines()
		}
	}
}

// takeOut adds levers that take yolk or spirit out of the foam, wholly.
func (k *maker) takeOut(code string) {
	parts := []design.Part{design.FoamPart, design.SyrupPart}
	if code == "alcohol_boils_off" {
		parts = parts[1:]
	}
	for _, p := range parts {
		for i, l := range k.d.Lines(p) {
			in, ok := k.m.Library().Find(l.Ingredient)
			if !ok || k.locks.Lines[LineAt{p, i}] {
				continue
			}
			yolk := code == "yolk_in_whites" && kind.Of(in) == kind.Yolk
			spirit := code == "alcohol_boils_off" && in.Cell(ingredient.Alcohol).Or(0) > 0
			switch {
			case !yolk && !spirit:
			case l.Count > 0:
				k.replace(Lever{Kind: Count, Part: p, Line: i, High: l.Count, Unit: l.Count, Whole: l.Count, Price: 1})
			default:
				k.replace(Lever{Part: p, Line: i, High: l.Grams, Unit: math.Max(l.Grams, 1), Whole: l.Grams, Price: 1})
			}
		}
	}
}

// allLines adds a lever down to nothing for each line that has none, since any
// ingredient may bring what a caution tells of.
func (k *maker) allLines() {
	for _, p := range design.Parts {
		for i, l := range k.d.Lines(p) {
			if l.Count > 0 || l.Grams <= 0 || k.locks.Lines[LineAt{p, i}] {
				continue
			}
			at := slices.IndexFunc(k.levers, func(v Lever) bool { return v.Kind == Grams && v.Part == p && v.Line == i })
			if at < 0 {
				k.add(Lever{Part: p, Line: i, High: l.Grams, Unit: math.Max(0.25*l.Grams, 0.1), Price: 3})
			} else if in, ok := k.m.Library().Find(l.Ingredient); ok && kind.Of(in) != kind.Yolk && kind.Of(in) != kind.White {
				k.levers[at].Low = 0
			}
		}
	}
}

// replace puts l in the place of a lever of the same line.
func (k *maker) replace(l Lever) {
	k.levers = slices.DeleteFunc(k.levers, func(v Lever) bool {
		return (v.Kind == Grams || v.Kind == Count) && v.Part == l.Part && v.Line == l.Line && l.Line >= 0
	})
	k.add(l)
}
