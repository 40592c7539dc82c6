package balance

import (
	"context"
	"math"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/kind"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/work/design"
)

// Spot is one blend of the sugars of a phase: how sweet and how hard it makes the
// phase at the serving temperature.
type Spot struct {
	Role      phase.Role
	Sweetness float64
	KPa       float64
	Design    design.Design
	Sugars    []Sugar // of the blend, those that are there
}

// Sugar is a part of a blend.
type Sugar struct {
	Ingredient *ingredient.Ingredient
	Grams      float64 // as written
}

// Of the map: how finely blends are stepped, and how many sugars they mix.
const (
	blendSteps  = 6
	blendSugars = 3
)

// Blends returns the spots of a phase: blends of up to three sugars, those of the
// design first, then dextrose and glucose syrup, which weigh together what the
// design's do. Locked lines stay as they are. There are none where the phase has
// no sugar that may move, and the hardness law must reach a spot. The error is
// that of Evaluate, or the context's.
func Blends(ctx context.Context, m *model.Model, d design.Design, role phase.Role, locks Locks) ([]Spot, error) {
	part := design.DensePart
	if role == phase.Foam {
		part = design.SyrupPart
	}
	held := m.Holding(d.Own)
	b := blending{lib: held.Library(), d: d, part: part}
	b.find(locks)
	if b.grams == 0 {
		return nil, nil
	}
	var out []Spot
	for i := range blendSteps + 1 {
		for j := range blendSteps + 1 - i {
			if err := ctx.Err(); err != nil {
				return nil, err
			}
			next, sugars := b.blend([blendSugars]float64{float64(i) / blendSteps, float64(j) / blendSteps, float64(blendSteps-i-j) / blendSteps})
			bare := next
			bare.Own = nil
			s, err := held.Sketch(bare)
			if err != nil {
				return nil, err
			}
			if p := s.Phase(role); p.InTub() && p.Felt() {
				out = append(out, Spot{role, p.SweetnessPercent, p.State.YieldKPa, tidied(next), sugars})
			}
		}
	}
	return out, nil
}

// blending is the sugars of a part and what they weigh together.
type blending struct {
	lib   *ingredient.Library
	d     design.Design
	part  design.Part
	ids   []string
	free  []int // the lines of sugars that may move
	grams float64
}

func (b *blending) find(locks Locks) {
	taken := map[string]bool{}
	for i, l := range b.d.Lines(b.part) {
		in, ok := b.lib.Find(l.Ingredient)
		if !ok || l.Count > 0 || kind.Of(in) != kind.Sugar || locks.Lines[LineAt{b.part, i}] {
			taken[l.Ingredient] = true
			continue
		}
		b.free = append(b.free, i)
		b.grams += l.Grams
		if !taken[in.ID] && len(b.ids) < blendSugars {
			b.ids = append(b.ids, in.ID)
			taken[in.ID] = true
		}
	}
	for _, id := range [...]string{sucrose, dextrose, glucoseSyrup} {
		if _, ok := b.lib.Find(id); ok && !taken[id] && len(b.ids) < blendSugars {
			b.ids = append(b.ids, id)
		}
	}
}

// blend returns the design with these shares of the sugars.
func (b *blending) blend(shares [blendSugars]float64) (design.Design, []Sugar) {
	lines := append([]design.Line(nil), b.d.Lines(b.part)...)
	for _, i := range b.free {
		lines[i].Grams = 0
	}
	var sugars []Sugar
	for k, id := range b.ids {
		g := math.Round(10*shares[k]*b.grams) / 10
		if g == 0 {
			continue
		}
		in, _ := b.lib.Find(id)
		sugars = append(sugars, Sugar{in, g})
		at := -1
		for _, i := range b.free {
			if lines[i].Ingredient == id {
				at = i
				break
			}
		}
		if at < 0 {
			lines = append(lines, design.Line{Ingredient: id})
			at = len(lines) - 1
		}
		lines[at].Grams += g
	}
	return b.d.WithLines(b.part, lines), sugars
}
