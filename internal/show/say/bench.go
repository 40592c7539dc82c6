package say

import (
	"strings"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/work/design"
)

// PhaseLines says in three lines how a phase of r freezes and sweetens, how much of it is
// ice when a spoon meets it, and how much of it is made; briefly without the bands
// and the density, and weights in grams alone.
func PhaseLines(s Style, r *model.Result, p *model.Phase) (whole, brief string) {
	role := p.Body.Role
	sweetness := s.Percent(p.SweetnessPercent, 1)
	ice := s.Percent(100*p.State.IceVolumeFraction, 0)
	freezes, frozen := T("nothing in it freezes · sweetness %s", sweetness), T("%s ice by volume", ice)
	short := [2]string{freezes, frozen}
	if known(p.FreezingPointC.Value) {
		point, band := s.Freezing(p.FreezingPointC, r.Freezing(role))
		freezes = T("freezes at %s (%s) · sweetness %s", point, band, sweetness)
		x := r.Frozen(role)
		frozen = T("%s of the water frozen (%s), %s ice by volume", s.Percent(100*x.Value, 0), s.PercentSpan(100*x.Low, 100*x.High, 0), ice)
		short = [2]string{T("freezes at %s · sweetness %s", point, sweetness), T("%s frozen, %s ice by volume", s.Percent(100*x.Value, 0), ice)}
	}
	made := phaseMade(s, p)
	end := T("%s · %s", made, s.Density(p.Body.GPerML()))
	return strings.Join([]string{freezes, frozen, end}, "\n"), strings.Join([]string{short[0], short[1], phaseMade(s.byScale(), p)}, "\n")
}

// phaseMade says how much of a phase is made.
func phaseMade(s Style, p *model.Phase) string {
	g, ml := s.Mass(p.Portion.MadeG), s.Volume(p.Portion.MadeML)
	if by := s.Number(p.Portion.Factor, 2); by != s.Number(1, 2) && by != Unknown {
		return T("%s, %s, %s times the recipe", g, ml, by)
	}
	return g + ", " + ml
}

// byScale is s with weights as a scale shows them alone.
func (s Style) byScale() Style {
	s.Weights = GramsAlone
	return s
}

// SyrupTitle names the lines that are boiled, with what the boiling comes to.
func SyrupTitle(s Style, y *model.Syrup) string {
	title := T("Boiled to syrup")
	switch {
	case !y.Present:
		return title
	case y.Weighed:
		return T("%s (weighed), %s solids", title, s.Percent(y.SolidsPercent, 0))
	}
	return T("%s, %s solids", title, s.Percent(y.SolidsPercent, 0))
}

// TubLines says in two lines what is filled, with what is left over, and where
// both phases eat well; briefly with weights in grams alone.
func TubLines(s Style, d design.Design, r *model.Result) (whole, brief string) {
	well, short := eatsWellWhere(s, r)
	if r.Blend.MassG == 0 {
		well, short = " ", " "
	}
	return twoLines(tubsFilled(s, d, r), well), twoLines(tubsFilled(s.byScale(), d, r), short)
}

func tubsFilled(s Style, d design.Design, r *model.Result) string {
	b := &r.Blend
	if b.MassG == 0 {
		return T("nothing to fill the tubs with yet")
	}
	count, things := s.Number(b.TubsFilled, 2), Plural(b.TubsFilled, "tub", "tubs")
	tubs := T("%s %s, %s, sweetness %s", count, things, s.Mass(b.MassG), s.Percent(b.SweetnessPercent, 1))
	if d.Batch.Basis == design.BasisAsWritten {
		tubs = T("as written: %s %s", count, things)
	}
	parts := []string{tubs}
	if b.Dense.LeftML > 1 {
		parts = append(parts, T("%s custard left over", s.Volume(b.Dense.LeftML)))
	}
	if b.Foam.LeftML > 1 {
		parts = append(parts, T("%s foam left over", s.Volume(b.Foam.LeftML)))
	}
	return strings.Join(parts, "; ")
}

func twoLines(first, second string) string { return first + "\n" + second }

// eatsWellWhere says at which temperatures what is in the tub eats well, briefly if at none.
func eatsWellWhere(s Style, r *model.Result) (whole, brief string) {
	both, alone := r.Blend.Both, r.Absent(&r.Dense) || r.Absent(&r.Foam)
	unfelt := !(r.Absent(&r.Dense) || r.Dense.Felt()) || !(r.Absent(&r.Foam) || r.Foam.Felt())
	switch {
	case r.Verdict.Empty:
		whole = " "
	case both.OK && alone:
		whole = T("it eats well from %s", s.TemperatureBand(both.FromC, both.ToC, 1))
	case both.OK:
		whole = T("both eat well from %s", s.TemperatureBand(both.FromC, both.ToC, 1))
	case unfelt:
		whole = T("its hardness is not known")
	case r.Absent(&r.Dense):
		return T("there is no temperature here at which the foam eats well"), T("no temperature suits the foam")
	case r.Absent(&r.Foam):
		return T("there is no temperature here at which the custard eats well"), T("no temperature suits the custard")
	default:
		return T("there is no temperature here at which both eat well"), T("no temperature suits both")
	}
	return whole, whole
}
