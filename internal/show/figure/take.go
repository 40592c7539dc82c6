package figure

import (
	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/phase"
)

type (
	ofPhase  func(*model.Phase) Value
	ofResult func(*model.Result) Value
)

func phaseIn(r *model.Result, column int) *model.Phase {
	if column == Custard {
		return &r.Dense
	}
	return &r.Foam
}

// each is a figure of both phases, none of one that is not there, and of the tub
// where that has one.
func each(of ofPhase, tub ofResult) from {
	f := from{forecast: true, of: func(r *model.Result, column int) Value {
		if column == Tub {
			return tub(r)
		}
		p := phaseIn(r, column)
		if !r.Shown(p) {
			return none
		}
		return of(p)
	}}
	if tub == nil {
		f.only = []int{Custard, Foam}
	}
	return f
}

func phasesOnly(of ofPhase) from { return each(of, nil) }

func tubOnly(of ofResult) from {
	return from{only: []int{Tub}, forecast: true, of: func(r *model.Result, _ int) Value { return of(r) }}
}

// made is an amount of a phase, which is 0 where there is nothing of it.
func made(of func(*model.Phase) float64, tub func(*model.Result) float64) from {
	f := from{forecast: true, of: func(r *model.Result, column int) Value {
		if column == Tub {
			return exact(tub(r))
		}
		return exact(of(phaseIn(r, column)))
	}}
	if tub == nil {
		f.only = []int{Custard, Foam}
	}
	return f
}

// byTheLaw is a figure that the law of hardness tells, whose own scatter is wider than
// what batches show of air and boil: it has the band of its phase, or none.
func byTheLaw(f from) from {
	f.forecast = false
	return f
}

// mean is a figure per mass of both phases, and of the tub their mean.
func mean(of func(*model.Phase) float64) from {
	return each(func(p *model.Phase) Value { return exact(of(p)) },
		func(r *model.Result) Value { return exact(r.TubMean(of)) })
}

// share is a part of a mix, per 100 g, with the band of its readings.
func share(of func(*mix.Mix) float64) from {
	return each(
		func(p *model.Phase) Value { return banded(of(&p.Body.Mix), of(&p.Soft.Mix), of(&p.Firm.Mix)) },
		func(r *model.Result) Value {
			in := func(b func(*model.Phase) *phase.Body) float64 {
				return r.TubMean(func(p *model.Phase) float64 { return of(&b(p).Mix) })
			}
			return banded(in(func(p *model.Phase) *phase.Body { return &p.Body }),
				in(func(p *model.Phase) *phase.Body { return &p.Soft }), in(func(p *model.Phase) *phase.Body { return &p.Firm }))
		})
}

// part is a column of the ingredients' records, per 100 g of the finished
// phase or of the tub.
func part(c ingredient.Column) from {
	return each(func(p *model.Phase) Value { return counted(p.PartPercent(c)) },
		full(func(r *model.Result) Value { return counted(r.Nutrition.Per100G[c]) }))
}

// full is a figure that an empty tub has not.
func full(of ofResult) ofResult {
	return func(r *model.Result) Value {
		if r.Blend.MassG <= 0 {
			return none
		}
		return of(r)
	}
}

// comparing is a figure that a design of one phase has not.
func comparing(of ofResult) ofResult {
	return func(r *model.Result) Value {
		if !r.Shown(&r.Dense) || !r.Shown(&r.Foam) {
			return none
		}
		return of(r)
	}
}

// extremes returns the states of the softest and the firmest reading.
func extremes(p *model.Phase) (soft, firm phase.State) {
	return p.Soft.At(p.State.AtC), p.Firm.At(p.State.AtC)
}

func scoopFrom(s model.ScoopRange, never string) Value {
	if !s.OK {
		return Value{Value: nan, Low: nan, High: nan, Word: never}
	}
	v := exact(s.FromC)
	if s.FromC <= model.RailLow {
		v.Bound = AtMost
	}
	return v
}

func scoopTo(s model.ScoopRange, never string) Value {
	if !s.OK {
		return Value{Value: nan, Low: nan, High: nan, Word: never}
	}
	v := exact(s.ToC)
	if s.ToC >= model.RailHigh {
		v.Bound = AtLeast
	}
	return v
}

// felt is the hardness, or the word that nobody knows it.
func felt(p *model.Phase) Value {
	v := spanned(p.YieldKPa, 1)
	if !p.Felt() {
		v.Word = phase.NoWord.Name
	}
	return v
}

// never is why a phase has no temperature at which it eats well.
func never(p *model.Phase) string {
	if p.Felt() {
		return "never"
	}
	return phase.NoWord.Name
}

// together is a figure of the tub as it is eaten: of both phases, or of one alone.
func together(of ofResult) ofResult {
	return func(r *model.Result) Value {
		if r.Verdict.Empty {
			return none
		}
		return of(r)
	}
}

func neverTogether(r *model.Result) string {
	switch {
	case r.Absent(&r.Dense):
		return never(&r.Foam)
	case r.Absent(&r.Foam):
		return never(&r.Dense)
	}
	if r.Dense.Felt() && r.Foam.Felt() {
		return "never together"
	}
	return phase.NoWord.Name
}
