package report

import (
	"io"

	"ripplewright/internal/answer/sure"
	"ripplewright/internal/show/say"
)

// Sure is how sure the figures of a design are.
type Sure struct {
	File   string
	Answer sure.Answer
}

// MarshalJSON returns one object with chance_scoops, spread and by_cause.
func (s Sure) MarshalJSON() ([]byte, error) {
	a := &s.Answer
	spread := object{}
	for f := range sure.NumFigures {
		spread.put(f.String(), spreadObject(a.Spread[f]))
	}
	causes := []object{}
	for c := range sure.NumCauses {
		o := object{{"cause", c.String()}}
		for f := range sure.NumFigures {
			o.put(f.String(), spreadObject(a.ByCause[c][f]))
		}
		causes = append(causes, o)
	}
	return object{{"file", s.File}, {"kitchens", a.Kitchens}, {"chance_scoops", Number(a.BothFraction)},
		{"chance_custard_scoops", Number(a.CustardFraction)}, {"chance_foam_spoons", Number(a.FoamFraction)},
		{"spread", spread}, {"by_cause", causes}}.MarshalJSON()
}

func spreadObject(s sure.Spread) object {
	return object{{"low", Number(s.Low)}, {"middle", Number(s.Middle)}, {"high", Number(s.High)}}
}

// WriteText writes it as a page for a terminal.
func (s Sure) WriteText(w io.Writer) error {
	p, a := &page{w: w}, &s.Answer
	p.line("%s: %s", s.File, say.HowOften(a))
	p.line("")
	for f := range sure.NumFigures {
		if !a.Has(f) {
			continue
		}
		p.line("%s: %s", say.Capital(say.SureFigure(f)), say.SureSpread(Reads, f, a.Spread[f]))
	}
	for _, f := range [...]sure.Outcome{sure.CustardKPa, sure.FoamKPa, sure.Minutes} {
		if list := a.Foremost(f); len(list) > 0 {
			p.line("")
			p.line("What moves the %s most:", say.SureFigure(f))
			for _, c := range list {
				p.line("  %s: %s", say.SureCause(Reads, c), say.SureSpread(Reads, f, a.ByCause[c][f]))
			}
		}
	}
	p.line("")
	p.line("%s", say.SureHow(Reads, a))
	return p.err
}
