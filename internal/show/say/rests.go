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
			out = append(out, T("How hard the %s is at %s is not known.", Of(p.Body.Role.String()), s.Temperature(d.Serving.TemperatureC)))
			continue
		}
		band := p.Body.Role.Band()
		text := T("The %s comes to %s (%s) at %s and eats well from %s", Of(p.Body.Role.String()), s.Hardness(p.YieldKPa.Value), s.HardnessSpan(p.YieldKPa.Low, p.YieldKPa.High), s.Temperature(d.Serving.TemperatureC), s.HardnessSpan(band.SoftKPa, band.FirmKPa))
		if p.Scoop.OK {
			text += ": " + Scoops(s, p.Scoop)
		}
		out = append(out, text+".")
	}
	for _, p := range [...]*model.Phase{&r.Dense, &r.Foam} {
		if from := p.KnownFromC(); p.InTub() && from > model.RailLow {
			out = append(out, T("Below %s nobody knows how hard the %s is: its line of hardness ends there.", s.TemperatureTo(from, 0), Of(p.Body.Role.String())))
		}
		if p.InTub() && known(p.FreezingPointC.Value) {
			point, band := s.Freezing(p.FreezingPointC, r.Freezing(p.Body.Role))
			out = append(out, T("The %s starts to freeze at %s (%s); %s of its water is ice when served.", Of(p.Body.Role.String()), point, band, s.Percent(100*p.FrozenFraction.Value, 0)))
		}
	}
	out = append(out, Taught(s, r)...)
	return append(out, T("Hardness is a scale in kPa anchored on commercial ice creams (Briggs, Steffe and Ustunol 1996, J. Dairy Sci. 79:527); batches scatter by a factor of about %s either way: read it as a word.", s.Number(phase.Scatter, 0)))
}

// Scoops is the range of temperatures in which something eats well, the colder
// end first; "never" where there is none.
func Scoops(s Style, x model.ScoopRange) string {
	if !x.OK {
		return T("never")
	}
	return s.TemperatureBand(x.FromC, x.ToC, 0)
}

// Kitchens says what the times in the cold rest on, and the words of the ice where
// some are told.
func Kitchens(s Style, c *cold.Answer, ice *icy.Answer) string {
	text := Message("Times in the cold are computed for the kitchen “%s”, freezer %s, room %s.")
	if iceStep(s, ice) != "" {
		text = "Times in the cold and the ice are computed for the kitchen “%s”, freezer %s, room %s."
	}
	return T(text, KitchenName(c.Profile.Name), s.Temperature(c.Profile.Freezer.AirC), s.Temperature(c.Profile.Counter.AirC))
}
