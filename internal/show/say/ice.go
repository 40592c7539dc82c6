package say

import (
	"math"
	"strings"

	"ripplewright/internal/answer/icy"
	"ripplewright/internal/matter/ice"
)

// Crystal is the diameter of an ice crystal.
func (s Style) Crystal(um float64) string { return s.with(s.Number(um, 0), "µm") }

// CrystalSpan is a diameter's band.
func (s Style) CrystalSpan(low, high float64) string {
	return s.span(s.Number(low, 0), s.Number(high, 0), "µm")
}

// CrystalBand is CrystalSpan without the unit, for a column that has it.
func CrystalBand(s Style, low, high float64) string {
	return T("%s to %s", s.Number(low, 0), s.Number(high, 0))
}

// IceFreezer says what the figures take of the freezer.
func IceFreezer(s Style, a *icy.Answer) string {
	at, swing, opened := s.Temperature(a.AtC), s.TemperatureStep(a.SwingK), s.Count(int(math.Round(a.Openings)), "time", "times")
	switch {
	case a.SwingK > 0 && a.Openings > 0:
		return T("%s, air up and down by %s, opened %s a day", at, swing, opened)
	case a.SwingK > 0:
		return T("%s, air up and down by %s", at, swing)
	case a.Openings > 0:
		return T("%s, opened %s a day", at, opened)
	}
	return at
}

// Icy is a word of the ice, and what else its band reaches.
func Icy(w icy.Word) string {
	name := func(i int) string { return Of(ice.Words[i].Name) }
	low, high := name(w.Low), name(w.High)
	switch {
	case w.Low < w.Step && w.High > w.Step:
		return T("%s, may be %s or %s", Of(w.Name()), low, high)
	case w.Low < w.Step:
		return T("%s, may be %s", Of(w.Name()), low)
	case w.High > w.Step:
		return T("%s, may be %s", Of(w.Name()), high)
	}
	return Of(w.Name())
}

// IceLine says in a few words how icy the custard eats, for where room is short;
// "" without a custard.
func IceLine(s Style, a *icy.Answer) string {
	c := &a.Custard
	switch {
	case !c.Present:
		return ""
	case !c.Frozen:
		return T("no ice at %s", s.Temperature(a.AtC))
	case c.Melts:
		return T("%s when hardened, but the freezer's swing melts its edge: icy", Of(c.Hardened.Name()))
	}
	if !iceChanges(a) {
		return T("%s when hardened and %s", Of(c.Hardened.Name()), iceThen(s, a))
	}
	return T("%s when hardened, %s", Of(c.Hardened.Name()), iceThen(s, a))
}

// iceChanges reports whether the custard's word changes within the weeks.
func iceChanges(a *icy.Answer) bool {
	return a.Keeps.Weeks <= float64(a.Weeks) && a.Custard.Word.Step > a.Custard.Hardened.Step
}

// iceThen says when the word changes, or how long it does not.
func iceThen(s Style, a *icy.Answer) string {
	if !iceChanges(a) {
		return T("after %s", weeks(s, float64(a.Weeks)))
	}
	next := Of(ice.Words[a.Custard.Hardened.Step+1].Name)
	if a.Keeps.Weeks < 0.75 {
		return T("%s within a week", next)
	}
	return T("%s after %s", next, weeks(s, a.Keeps.Weeks))
}

// weeks is a time in whole weeks.
func weeks(s Style, n float64) string {
	if n >= 1e6 {
		return T("many weeks")
	}
	return s.Count(int(math.Round(n)), "week", "weeks")
}

// IceOf tells the crystals of one phase, "custard" or "foam".
func IceOf(s Style, name string, p *icy.Phase) string {
	switch {
	case !p.Present:
		return ""
	case !p.Frozen:
		return T("The %s holds no ice where it is kept, so it has no crystals.", name)
	}
	last := p.Weeks[len(p.Weeks)-1]
	both := func(w icy.Week) string {
		if s.Number(w.Wall.ValueUM, 0) == s.Number(w.Core.ValueUM, 0) {
			return s.Crystal(w.Core.ValueUM)
		}
		return T("%s at the wall and %s in the core", s.Number(w.Wall.ValueUM, 0), s.Crystal(w.Core.ValueUM))
	}
	band := last.Coarser()
	text := T("The %s's ice crystals are about %s as it goes into the tub, %s when hardened and %s after %s (%s): %s.", name, s.Crystal(p.AfterFreezing.ValueUM), both(p.Weeks[0]), both(last), weeks(s, last.Week), s.CrystalSpan(band.LowUM, band.HighUM), Icy(p.Word))
	if p.Little {
		text += " " + T("It holds so little ice that they have no room to grow coarse.")
	}
	if p.Unbeaten {
		text += " " + T("Nothing parts them while it freezes, so they grow into plates that the tongue feels as one.")
	}
	if p.Melts {
		text += " " + T("At the warm end of the freezer's swing its edge melts, and freezes back unbeaten each time.")
	}
	return text
}

// IceKeeps says how long the custard stays as it is when hardened; "" where
// there is nothing to say.
func IceKeeps(s Style, a *icy.Answer) string {
	k := &a.Keeps
	if !a.Custard.Frozen || a.Custard.Melts {
		return ""
	}
	caveat := " " + T("This says nothing of how long it keeps.")
	if math.IsInf(k.UpToUM, 1) {
		return ""
	}
	if a.SwingK > 0 {
		caveat = " " + T("That is in this freezer, which swings %s up and down.", s.TemperatureStep(a.SwingK)) + caveat
	}
	now := Of(k.Word.Name())
	switch {
	case k.Word.Step >= icy.Coarse && k.LowWeeks > icy.MostWeeks:
		return T("In this freezer it does not turn icy within a year.") + caveat
	case k.Word.Step >= icy.Coarse:
		return T("In this freezer it turns icy after about %s: %s.", weeks(s, k.Weeks), weeksBand(s, k)) + caveat
	case k.Weeks < 0.75:
		return T("In this freezer it stays %s for less than a week.", now) + caveat
	case k.LowWeeks > icy.MostWeeks:
		return T("In this freezer it stays %s for a year and more.", now) + caveat
	}
	return T("In this freezer it stays %s for about %s: %s.", now, weeks(s, k.Weeks), weeksBand(s, k)) + caveat
}

// weeksBand is between which weeks a word ends, and why.
func weeksBand(s Style, k *icy.Keeps) string {
	high := weeks(s, k.HighWeeks)
	if k.HighWeeks > icy.MostWeeks {
		high = T("more than a year")
	}
	low := s.Number(k.LowWeeks, 0)
	if k.LowWeeks < 0.75 {
		low = T("less than one")
	}
	return T("%s to %s, since the growth is known to a factor of %s", low, high, s.Number(ice.Uncertain, 0))
}

// stepNames are the steps that coarsen, after "Of the crystals' volume".
var stepNames = map[icy.Step]Message{
	icy.Seed: "first crystals", icy.Mush: "freezing to the last beat", icy.Unparted: "freezing unbeaten", icy.Hardening: "hardening",
	icy.Storage: "storage", icy.Swing: "the freezer's swing", icy.Openings: "its door",
}

// IceStep names a step that coarsens.
func IceStep(x icy.Step) string { return stepNames[x].String() }

// IceSteps says which steps made the crystals what they are, the largest first.
func IceSteps(s Style, a *icy.Answer) string {
	if len(a.Steps) == 0 {
		return ""
	}
	const least = 0.03
	var parts []string
	for _, x := range largest(a.Steps) {
		if x.Fraction >= least {
			parts = append(parts, s.Percent(100*x.Fraction, 0)+" "+IceStep(x.Step))
		}
	}
	return T("Where they come from, by volume after %s: %s.", weeks(s, float64(a.Weeks)), List(parts))
}

// largest returns the shares from the largest down.
func largest(in []icy.Share) []icy.Share {
	out := append([]icy.Share(nil), in...)
	for i := range out {
		for j := i; j > 0 && out[j].Fraction > out[j-1].Fraction; j-- {
			out[j], out[j-1] = out[j-1], out[j]
		}
	}
	return out
}

// IceRemedy says what one change does, with how much it helps.
func IceRemedy(s Style, r *icy.Remedy) string {
	return T("%s: %s in the end instead of %s, %s.", remedyText(s, r), s.Crystal(r.After.ValueUM), s.Number(r.After.ValueUM+r.FinerUM, 0), Of(r.Word.Name()))
}

func remedyText(s Style, r *icy.Remedy) string {
	switch r.Change {
	case icy.ShallowerDish:
		return T("Freeze it %s deep instead of %s", s.Length(r.To), s.Length(r.From))
	case icy.ColderTray:
		return T("Freeze it in a tray chilled beforehand, on cold metal")
	case icy.BeatToTheEnd:
		return T("Beat it once more as it comes out of the dish, %s after the last stir", s.Duration(r.To-r.From))
	case icy.BeatAtAll:
		return T("Beat it every half hour while it freezes, and to the end")
	case icy.SmallerTubs:
		return T("Fill tubs of %s instead of %s", s.Volume(r.To), s.Volume(r.From))
	case icy.ColderFreezer:
		return T("Set the freezer to %s instead of %s", s.Temperature(r.To), s.Temperature(r.From))
	case icy.SteadyFreezer:
		return T("Keep the freezer within %s up and down instead of %s", s.TemperatureStep(r.To), s.TemperatureStep(r.From))
	case icy.OpenLess:
		return T("Open the freezer %s a day instead of %s", s.Count(int(r.To), "time", "times"), s.Number(r.From, 0))
	}
	return T("Leave out or boil off %s of the custard's water", s.Percent(r.To, 0))
}

// IcePutBack says what one outing to the counter costs; "" where there is none to
// tell.
func IcePutBack(s Style, a *icy.Answer) string {
	b := &a.PutBack
	if !a.Custard.Frozen || !known(b.Minutes) || b.Minutes < 0.5 {
		return ""
	}
	out, cost := s.Duration(b.Minutes), 100*(b.RingFactor-1)
	more, most := s.Percent(cost, 0), s.Percent(100*(b.HighRingFactor-1), 0)
	switch {
	case cost < 1 && b.Rim:
		return T("Left on the counter for %s to scoop and frozen again, its edge is hardly coarser each time, and what melts at the wall freezes back as an icy rim.", out)
	case cost < 1:
		return T("Left on the counter for %s to scoop and frozen again, its edge is hardly coarser each time.", out)
	case b.Rim:
		return T("Left on the counter for %s to scoop and frozen again, its edge is %s coarser (at most %s) each time, and what melts at the wall freezes back as an icy rim.", out, more, most)
	}
	return T("Left on the counter for %s to scoop and frozen again, its edge is %s coarser (at most %s) each time.", out, more, most)
}

// untriedK is by how much a custard may freeze too warm for the law before a word
// is due: the mush is soon colder (our own).
const untriedK = 1

// IceLearnt says what the kitchen's batches have moved the sizes by; "" where nothing
// was learnt.
func IceLearnt(s Style, a *icy.Answer) string {
	if a.Learnt.IceFactor == 0 {
		return ""
	}
	return T("Your words for how icy %s ate are in these sizes: they are %s times the law's, and their band is %s as wide.", s.Count(a.Learnt.IceBatches, "batch", "batches"), s.Number(a.Learnt.IceFactor, 2), s.Percent(100*a.Learnt.IceLeftFraction, 0))
}

// IceNotModelled says what the figures leave out.
func IceNotModelled(s Style, a *icy.Answer) string {
	text := T("Not in these figures: what the beaters break, crystals that grow together, and what yolk and starch do to the ice.") + " "
	if a.Gums {
		text += T("The gums count as slowing the growth by %s times, the one published figure.", s.Number(ice.GumSlows, 1)) + " "
	}
	text += T("We found no measured crystals of a hand-beaten custard, and laboratories differ by 2 to 3 times: compare two ways with one recipe.")
	if a.BeginsC > ice.UntriedC+untriedK {
		text += " " + T("It begins to freeze at %s, warmer than the growth was looked at: the figure for the freezing is a guess.", s.TemperatureTo(a.BeginsC, 1))
	}
	if a.AtC < ice.FloorFromC {
		text += " " + T("Below %s crystals were measured to grow on where the law has them stop, so the law is held at a floor.", s.Temperature(ice.FloorFromC))
	}
	return text
}

// Ice says all of it, in order, without the remedies.
func Ice(s Style, a *icy.Answer) []string {
	var out []string
	for _, text := range [...]string{IceOf(s, T("custard"), &a.Custard), IceOf(s, T("foam"), &a.Foam), IceKeeps(s, a), IceSteps(s, a), IcePutBack(s, a), IceLearnt(s, a)} {
		if text = strings.TrimSpace(text); text != "" {
			out = append(out, text)
		}
	}
	if a.Custard.Frozen || a.Foam.Frozen {
		out = append(out, IceNotModelled(s, a))
	}
	return out
}

// iceStep is what a maker should know of the ice while the tubs harden; "" where
// it does not matter.
func iceStep(s Style, a *icy.Answer) string {
	if a == nil || !a.Matters() {
		return ""
	}
	return " " + T("Ice: %s, not counting what beaters break and yolk does to it.", IceLine(s, a))
}
