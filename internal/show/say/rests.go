package say

import (
	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/icy"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/work/design"
)

// Rests says what the verdict rests on and how sure it is, in sentences.
func Rests(s Style, d design.Design, r *model.Result) []string {
	var out []string
	for _, p := range [...]*model.Phase{&r.Dense, &r.Foam} {
		if !p.InTub() {
			continue
		}
		if !p.Felt() {
			out = append(out, "How hard the "+p.Body.Role.String()+" is at "+s.Temperature(d.Serving.TemperatureC)+" is not known.")
			continue
		}
		band := p.Body.Role.Band()
		text := "The " + p.Body.Role.String() + " comes to " + s.Hardness(p.YieldKPa.Value) + " (" + s.HardnessSpan(p.YieldKPa.Low, p.YieldKPa.High) + ") at " +
			s.Temperature(d.Serving.TemperatureC) + " and eats well from " + s.HardnessSpan(band.SoftKPa, band.FirmKPa)
		if p.Scoop.OK {
			text += ": " + Scoops(s, p.Scoop)
		}
		out = append(out, text+".")
	}
	for _, p := range [...]*model.Phase{&r.Dense, &r.Foam} {
		if from := p.KnownFromC(); p.InTub() && from > model.RailLow {
			out = append(out, "Below "+s.TemperatureTo(from, 0)+" nobody knows how hard the "+p.Body.Role.String()+" is: its line of hardness ends there.")
		}
		if p.InTub() && known(p.FreezingPointC.Value) {
			point, band := s.Freezing(p.FreezingPointC)
			out = append(out, "The "+p.Body.Role.String()+" starts to freeze at "+point+" ("+band+"); "+
				s.Percent(100*p.FrozenFraction.Value, 0)+" of its water is ice when served.")
		}
	}
	if text := HardnessLearnt(s, r.Taught); text != "" {
		out = append(out, text)
	}
	return append(out, "Hardness is a scale in kPa anchored on commercial ice creams (Briggs, Steffe and Ustunol 1996, J. Dairy Sci. 79:527); "+
		"batches scatter by a factor of about "+s.Number(phase.Scatter, 0)+" either way: read it as a word.")
}

// Scoops is the range of temperatures in which something eats well, the colder
// end first; "never" where there is none.
func Scoops(s Style, x model.ScoopRange) string {
	if !x.OK {
		return "never"
	}
	return s.TemperatureBand(x.FromC, x.ToC, 0)
}

// Kitchens says what the times in the cold rest on, and the words of the ice where
// some are told.
func Kitchens(s Style, c *cold.Answer, ice *icy.Answer) string {
	what := "Times in the cold"
	if iceStep(s, ice) != "" {
		what += " and the ice"
	}
	return what + " are computed for the kitchen “" + c.Profile.Name + "”, freezer " + s.Temperature(c.Profile.Freezer.AirC) +
		", room " + s.Temperature(c.Profile.Counter.AirC) + "."
}
