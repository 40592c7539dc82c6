package process

import (
	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/kind"
	"ripplewright/internal/work/design"
)

// pan is what decides where the custard's lines go in.
type pan struct {
	yolk   bool
	liquid bool // something to heat the rest in that acid does not curdle
	reduce bool // water is to be driven off
}

func panOf(r *model.Result, p *Process) pan {
	w := pan{yolk: p.Custard.Yolk, reduce: p.Custard.WaterOffG > 0}
	for _, l := range r.Lines {
		if k := kind.Of(l.Ingredient); l.Part == design.DensePart && l.Grams > 0 {
			w.liquid = w.liquid || k == kind.Liquid || k == kind.Infusion && l.Ingredient.Cell(ingredient.Water).Or(0) > 50
		}
	}
	return w
}

// step says in which steps a line of the custard goes in, and how much of it in
// the first. Without anything else to heat, the sour things are the liquid.
func (w pan) step(k kind.Kind, in *ingredient.Ingredient) (first, second StepCode, share float64) {
	heated := HeatMilk
	if !w.liquid && !w.yolk && !w.reduce {
		heated = ColdIn // stirred together
	}
	switch k {
	case kind.Yolk, kind.White, kind.WhitePast, kind.WhiteDry:
		return YolkSugar, "", 1
	case kind.Sugar:
		if w.yolk && in.Cell(ingredient.Water).Or(0) < 10 {
			return YolkSugar, heated, 0.5
		}
	case kind.Starch:
		if w.yolk {
			return YolkSugar, "", 1
		}
		return HeatMilk, "", 1
	case kind.Gelatine:
		return Bloom, "", 1
	case kind.Chocolate, kind.Fat, kind.Paste:
		if heated == HeatMilk {
			return OffHeat, "", 1
		}
	case kind.Sour, kind.Acid, kind.Cultured:
		if w.liquid {
			return ColdIn, "", 1
		}
	case kind.Spirit:
		return ColdIn, "", 1
	case kind.Piece:
		return Swirl, "", 1
	}
	return heated, "", 1
}

// foamStep says in which step a line of the foam's bowl goes in.
func foamStep(k kind.Kind, in *ingredient.Ingredient) StepCode {
	switch k {
	case kind.Sour:
		if in.ID == "lemon_juice" || in.ID == "lime_juice" { // an acid that whites stand by
			return BowlWhites
		}
		return FoldIn
	case kind.Spirit, kind.Cocoa, kind.Chocolate, kind.Fat, kind.Paste, kind.Cultured:
		return FoldIn
	case kind.Gelatine:
		return Bloom
	case kind.Piece:
		return Swirl
	}
	return BowlWhites
}

// linesOf sorts the lines into steps.
func linesOf(r *model.Result, p *Process) map[StepCode][]Used {
	out := map[StepCode][]Used{}
	w := panOf(r, p)
	put := func(c StepCode, line int, g float64) {
		if g > 0 {
			out[c] = append(out[c], Used{line, g})
		}
	}
	for i, l := range r.Lines {
		k := kind.Of(l.Ingredient)
		switch {
		case !(l.Grams > 0):
		case l.Part == design.SyrupPart:
			if k == kind.Gelatine {
				put(Bloom, i, l.Grams)
			} else {
				put(BoilSyrup, i, l.Grams)
			}
		case l.Part == design.FoamPart:
			put(foamStep(k, l.Ingredient), i, l.Grams)
		default:
			first, second, share := w.step(k, l.Ingredient)
			part := share * l.Grams
			put(first, i, part)
			put(second, i, l.Grams-part)
		}
	}
	return out
}
