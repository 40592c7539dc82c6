package say

import (
	"strings"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/work/design"
)

// PhaseLines says in three lines how a phase freezes, what a spoon and a tongue
// meet, and how much of it is made.
func PhaseLines(s Style, p *model.Phase) string {
	freezes := "nothing in it freezes"
	if known(p.FreezingPointC.Value) {
		point, _ := s.Freezing(p.FreezingPointC)
		freezes = "freezes at " + point + ", " + s.Percent(100*p.FrozenFraction.Value, 0) + " of the water frozen"
	}
	made := s.Mass(p.Portion.MadeG) + ", " + s.Volume(p.Portion.MadeML)
	if by := s.Number(p.Portion.Factor, 2); by != s.Number(1, 2) && by != Unknown {
		made += ", " + by + " times the recipe"
	}
	return freezes + "\n" +
		s.Percent(100*p.State.IceVolumeFraction, 0) + " ice by volume · sweetness " + s.Percent(p.SweetnessPercent, 1) + "\n" +
		made + " · " + s.Density(p.Body.GPerML())
}

// SyrupTitle names the lines that are boiled, with what the boiling comes to.
func SyrupTitle(s Style, y *model.Syrup) string {
	const title = "Boiled to syrup"
	switch {
	case !y.Present:
		return title
	case y.Weighed:
		return title + " (weighed), " + s.Percent(y.SolidsPercent, 0) + " solids"
	}
	return title + ", " + s.Percent(y.SolidsPercent, 0) + " solids"
}

// TubLines says in two lines what is filled, with what is left over, and where
// both phases eat well.
func TubLines(s Style, d design.Design, r *model.Result) string {
	b := &r.Blend
	if b.MassG == 0 {
		return "nothing to fill the tubs with yet\n "
	}
	tubs := s.Number(b.TubsFilled, 2) + " " + Plural(b.TubsFilled, "tub", "tubs")
	if d.Batch.Basis == design.BasisAsWritten {
		tubs = "as written: " + tubs
	} else {
		tubs += ", " + s.Mass(b.MassG) + ", sweetness " + s.Percent(b.SweetnessPercent, 1)
	}
	parts := []string{tubs}
	if b.Dense.LeftML > 1 {
		parts = append(parts, s.Volume(b.Dense.LeftML)+" custard left over")
	}
	if b.Foam.LeftML > 1 {
		parts = append(parts, s.Volume(b.Foam.LeftML)+" foam left over")
	}
	text := strings.Join(parts, "; ")
	who, together := "both", "at which both eat well"
	switch {
	case r.Verdict.Empty:
		return text + "\n "
	case r.Absent(&r.Dense):
		who, together = "it", "at which the foam eats well"
	case r.Absent(&r.Foam):
		who, together = "it", "at which the custard eats well"
	}
	if !b.Both.OK && !(r.Absent(&r.Dense) || r.Dense.Felt()) || !b.Both.OK && !(r.Absent(&r.Foam) || r.Foam.Felt()) {
		return text + "\nits hardness is not known"
	}
	if !b.Both.OK {
		return text + "\nthere is no temperature here " + together
	}
	if who == "it" {
		return text + "\nit eats well from " + s.TemperatureBand(b.Both.FromC, b.Both.ToC, 1)
	}
	return text + "\nboth eat well from " + s.TemperatureBand(b.Both.FromC, b.Both.ToC, 1)
}
