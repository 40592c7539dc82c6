package batch

import (
	"strconv"
	"strings"
	"time"

	"ripplewright/internal/form/echo"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/form/setting"
	"ripplewright/internal/matter/ice"
	"ripplewright/internal/matter/phase"
)

// Entry is one setting of a batch. The table is the one place that knows a
// setting's path, unit and range; file, command line and window read it here.
type Entry = setting.Field[Batch]

// Entries returns every setting in the order of the file. The caller must not change
// it.
func Entries() []Entry { return entries }

// EntryAt returns the setting with that path.
func EntryAt(path string) (Entry, bool) { return setting.Find(entries, path) }

// The bounds of one batch: a page of words, and pictures enough.
const (
	MaxWords  = 4000 // letters of the free words
	MaxListed = 200  // items in a list
	MaxItem   = 400  // letters of an item
)

// The words of the plain scales.
var (
	Sweetnesses = []string{"not sweet enough", "a little less sweet", "right", "a little too sweet", "too sweet"}
	Sandies     = []string{"not at all", "a little", "clearly"}
	Ripples     = []string{"lost", "faint", "right", "too coarse"}
	CutViews    = []string{"side", "top"} // as package ripple names them
)

// HardnessWords and IceWords are the names of the models' own scales.
func HardnessWords() []string {
	var out []string
	for _, w := range phase.Words {
		out = append(out, w.Name)
	}
	return out
}

// IceWords are the names of ice.Words.
func IceWords() []string {
	var out []string
	for _, w := range ice.Words {
		out = append(out, w.Name)
	}
	return out
}

const day, minute = "2006-01-02", "2006-01-02 15:04"

// dated has an editor look for the signs of a date; whether there is such a day, notTime tells.
func dated(e Entry) Entry {
	e.Pattern = `^(\d{4}-\d{2}-\d{2}( \d{2}:\d{2})?)?$`
	return e
}

func number(path, about, unit string, min, max float64, of func(*Batch) *Measured) Entry {
	return Entry{Path: path, About: about, Unit: unit, Min: min, Max: max, Optional: true, Of: func(b *Batch) any { return of(b) }}
}

func words(path, about string, choices []string, of func(*Batch) *string) Entry {
	return Entry{Path: path, About: about, Choices: choices, Optional: true, Of: func(b *Batch) any { return of(b) }}
}

func text(path, about, format string, longest int, wrong func(string) error, of func(*Batch) *string) Entry {
	return Entry{Path: path, About: about, Format: format, Longest: longest, Wrong: wrong, Optional: true, Of: func(b *Batch) any { return of(b) }}
}

func list(path, about, format string, of func(*Batch) *[]string) Entry {
	return Entry{Path: path, About: about, Format: format, Optional: true, Of: func(b *Batch) any { return of(b) }}
}

var entries = []Entry{
	text("batch", "which batch; the same name again adds to it", "words, 40 letters at most", 40, notPlain, func(b *Batch) *string { return &b.ID }),
	dated(text("when", "when this was written down", "YYYY-MM-DD HH:MM", 16, notTime(minute), func(b *Batch) *string { return &b.When })),
	text("version", "which version of the design", "hexadecimal digits", 64, notPlain, func(b *Batch) *string { return &b.Version }),
	dated(text("made", "the day it was made", "YYYY-MM-DD", 10, notTime(day), func(b *Batch) *string { return &b.Made })),
	dated(text("best_before", "the day until which you let it be sold", "YYYY-MM-DD", 10, notTime(day), func(b *Batch) *string { return &b.BestBefore })),
	text("lot", "the lot on its label, where it is not the batch's name", "words, 40 letters at most", 40, notPlain, func(b *Batch) *string { return &b.Lot }),
	list("weighed", "lines that were weighed otherwise than written", "PART INGREDIENT GRAMS g, as dense sucrose 118 g; PART is dense, foam or foam.syrup", func(b *Batch) *[]string { return &b.Weighed }),

	number("syrup.water_boils_c", "what the probe shows in boiling water", "°C", 80, 110, func(b *Batch) *Measured { return &b.Syrup.WaterBoilsC }),
	number("syrup.reading_c", "what it showed as the syrup came off", "°C", 95, 160, func(b *Batch) *Measured { return &b.Syrup.ReadingC }),
	number("syrup.weighed_g", "pan and syrup on the scale", "g", 1, 1e5, func(b *Batch) *Measured { return &b.Syrup.WeighedG }),
	number("syrup.pan_g", "the empty pan, 0 if the scale was set to nought", "g", 0, 2e4, func(b *Batch) *Measured { return &b.Syrup.PanG }),
	number("custard.weighed_g", "the cooked custard without its pan", "g", 1, 1e6, func(b *Batch) *Measured { return &b.Custard.WeighedG }),
	number("custard.cup_g", "a level 250 mL cup of the custard, half frozen", "g", 20, 400, func(b *Batch) *Measured { return &b.Custard.CupG }),
	list("custard.stirs_min", "when it was stirred, from going into the freezer", "minutes", func(b *Batch) *[]string { return &b.Custard.StirsMinutes }),
	number("foam.whites_c", "the whites just after the pour", "°C", 0, 130, func(b *Batch) *Measured { return &b.Foam.WhitesC }),
	number("foam.cup_g", "a level 250 mL cup of the foam", "g", 5, 400, func(b *Batch) *Measured { return &b.Foam.CupG }),
	number("freezer_c", "the air of the freezer", "°C", -40, -2, func(b *Batch) *Measured { return &b.FreezerC }),
	number("room_c", "the air of the room as it thawed", "°C", 5, 45, func(b *Batch) *Measured { return &b.RoomC }),
	number("scooped.core_c", "a probe in the middle of the tub, straight out of the freezer", "°C", -40, 0, func(b *Batch) *Measured { return &b.Scooped.CoreC }),
	number("scooped.after_min", "out of the freezer until its edge scooped", "min", 0, 720, func(b *Batch) *Measured { return &b.Scooped.AfterMinutes }),
	number("scooped.ring_c", "a probe in its outer centimetre then", "°C", -30, 0, func(b *Batch) *Measured { return &b.Scooped.RingC }),
	words("cut.view", "which cut was photographed", CutViews, func(b *Batch) *string { return &b.Cut.View }),
	number("cut.foam_percent", "foam's share of the photographed cut", "%", 0, 100, func(b *Batch) *Measured { return &b.Cut.FoamPercent }),
	number("cut.ribbon_mm", "its mean ribbon of foam", "mm", 0.01, mostRibbonMM, func(b *Batch) *Measured { return &b.Cut.RibbonMM }),
	number("cut.thickest_mm", "its thickest tenth of ribbons of foam", "mm", 0.01, mostRibbonMM, func(b *Batch) *Measured { return &b.Cut.ThickestMM }),
	number("cut.least_mm", "the thinnest ribbon that the photograph shows", "mm", 0, 100, func(b *Batch) *Measured { return &b.Cut.LeastMM }),
	number("ate.at_c", "how cold the custard was eaten", "°C", -24, -2, func(b *Batch) *Measured { return &b.Ate.AtC }),
	number("ate.after_days", "days in the freezer until then", "days", 0, 364, func(b *Batch) *Measured { return &b.Ate.AfterDays }),
	words("ate.hardness", "how hard the custard was", HardnessWords(), func(b *Batch) *string { return &b.Ate.Hardness }),
	words("ate.icy", "how icy the custard was", IceWords(), func(b *Batch) *string { return &b.Ate.Icy }),
	words("ate.sweetness", "how sweet it was", Sweetnesses, func(b *Batch) *string { return &b.Ate.Sweetness }),
	words("ate.sandy", "how sandy it was", Sandies, func(b *Batch) *string { return &b.Ate.Sandy }),
	words("ate.ripple", "how the ripple looked", Ripples, func(b *Batch) *string { return &b.Ate.Ripple }),
	list("photographs", "pictures, by their paths", "paths", func(b *Batch) *[]string { return &b.Photographs }),
	text("words", "anything to remember", "words, 4000 letters at most", MaxWords, nil, func(b *Batch) *string { return &b.Words }),
	list("off", "what is not learnt from now on, or nothing", "names of what is learnt", func(b *Batch) *[]string { return &b.Off }),

	expected("water_boils_c", "°C", func(f *Forecast) *Measured { return &f.WaterBoilsC }),
	expected("syrup_g", "g", func(f *Forecast) *Measured { return &f.SyrupG }),
	expected("syrup_solids_percent", "%", func(f *Forecast) *Measured { return &f.SyrupSolidsPercent }),
	expected("syrup_solids_per_k", "%/K", func(f *Forecast) *Measured { return &f.SyrupSolidsPerK }),
	expected("custard_g", "g", func(f *Forecast) *Measured { return &f.CustardG }),
	expected("custard_in_g", "g", func(f *Forecast) *Measured { return &f.CustardInG }),
	expected("stove_loss_percent", "%", func(f *Forecast) *Measured { return &f.StoveLossPercent }),
	expected("custard_cup_g", "g", func(f *Forecast) *Measured { return &f.CustardCupG }),
	expected("custard_overrun_percent", "%", func(f *Forecast) *Measured { return &f.CustardOverrun }),
	expected("foam_c", "°C", func(f *Forecast) *Measured { return &f.FoamC }),
	expected("foam_cup_g", "g", func(f *Forecast) *Measured { return &f.FoamCupG }),
	expected("foam_overrun_percent", "%", func(f *Forecast) *Measured { return &f.FoamOverrun }),
	expected("freezer_c", "°C", func(f *Forecast) *Measured { return &f.FreezerC }),
	expected("counter_factor", "times", func(f *Forecast) *Measured { return &f.CounterFactor }),
	expected("counter_coefficient", "W/(m² K)", func(f *Forecast) *Measured { return &f.CounterWPerK }),
	expected("probe_offset_k", "K", func(f *Forecast) *Measured { return &f.ProbeK }),
	expected("scooped_min", "min", func(f *Forecast) *Measured { return &f.ScoopedMinutes }),
	expected("scooped_min_twice_as_hard", "min", func(f *Forecast) *Measured { return &f.ScoopedTwiceHard }),
	expected("scooped_min_freezer_1k_warmer", "min", func(f *Forecast) *Measured { return &f.ScoopedFreezerWarmer }),
	expected("scooped_kpa", "kPa", func(f *Forecast) *Measured { return &f.ScoopedKPa }),
	expected("hardness_kpa", "kPa", func(f *Forecast) *Measured { return &f.HardnessKPa }),
	expected("ice_um", "µm", func(f *Forecast) *Measured { return &f.IceUM }),
	expected("cut_foam_percent", "%", func(f *Forecast) *Measured { return &f.CutFoamPercent }),
	expected("cut_ribbon_mm", "mm", func(f *Forecast) *Measured { return &f.CutRibbonMM }),
	expected("cut_thickest_mm", "mm", func(f *Forecast) *Measured { return &f.CutThickestMM }),
}

// mostRibbonMM bounds a mean ribbon: a cut with hardly an edge in it has one wider than
// any tub.
const mostRibbonMM = 1e5

// mostForecast bounds a forecast either way: above a batch's grams.
const mostForecast = 1e7

func expected(key, unit string, of func(*Forecast) *Measured) Entry {
	return number("forecast."+key, "what was expected", unit, -mostForecast, mostForecast, func(b *Batch) *Measured { return of(&b.Forecast) })
}

func notPlain(s string) error {
	if echo.Line(s, len(s)) != s || strings.TrimSpace(s) != s {
		return flaw.New("has signs that do not show")
	}
	return nil
}

func notTime(layout string) func(string) error {
	return func(s string) error {
		if _, err := time.Parse(layout, s); err != nil {
			return flaw.New("%s is not a date such as %s", echo.Quoted(s), layout)
		}
		return nil
	}
}

// Problem returns the path of the first thing wrong with b, and what; "", nil for
// nothing.
func (b *Batch) Problem() (path string, wrong error) {
	for _, f := range entries {
		if err := f.Check(b); err != nil {
			return f.Path, err
		}
		if items, ok := f.Of(b).(*[]string); ok {
			if err := wrongList(*items); err != nil {
				return f.Path, err
			}
		}
	}
	if b.ID == "" {
		return "batch", flaw.New("must be there: it says which batch this is")
	}
	for _, w := range b.Weighed {
		if _, err := ParseWeight(w); err != nil {
			return "weighed", err
		}
	}
	for _, s := range b.Custard.StirsMinutes {
		if v, err := strconv.ParseFloat(s, 64); err != nil || !(v >= 0 && v <= 6000) {
			return "custard.stirs_min", flaw.New("%s is not a number of minutes from 0 to 6000", echo.Quoted(s))
		}
	}
	return "", nil
}

func wrongList(items []string) error {
	if len(items) > MaxListed {
		return flaw.New("%d are more than the %d that a list may have", len(items), MaxListed)
	}
	for _, s := range items {
		if len(s) > MaxItem {
			return flaw.New("%s is longer than %d letters", echo.Quoted(s), MaxItem)
		}
		if s == "" || strings.Contains(s, ";") || strings.TrimSpace(s) != s {
			return flaw.New("%s is empty, begins or ends with a space, or has a semicolon", echo.Quoted(s))
		}
	}
	return nil
}
