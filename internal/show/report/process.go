package report

import (
	"io"
	"strconv"
	"strings"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/process"
	"ripplewright/internal/food/egg"
	"ripplewright/internal/show/say"
)

// Process is the making of a batch. Masses are g of the batch as made,
// temperatures °C, times minutes; what does not apply is null.
type Process struct {
	File     string    `json:"file"`
	Name     string    `json:"name"`
	Syrup    *Boil     `json:"syrup"`
	FoamMix  *FoamMix  `json:"foam_mix"`
	Custard  *Cooking  `json:"custard"`
	Eggs     EggLedger `json:"eggs"`
	Dishes   int       `json:"dishes"`
	Freezer  Freezer   `json:"freezer"`
	Steps    []Step    `json:"steps"`
	Cautions []Caution `json:"cautions"`
	Cost     object    `json:"cost"`
}

// Boil is the syrup on the stove.
type Boil struct {
	ReadingC          Number `json:"reading_c"`       // what the probe shows when it is done
	BoilingPointC     Number `json:"boiling_point_c"` // of the syrup as it is poured
	WaterBoilsC       Number `json:"water_boils_c"`   // plain water, at this altitude
	SeaLevelC         Number `json:"sea_level_c"`     // where the same syrup boils at sea level
	SolidsPercent     Number `json:"solids_percent"`
	SolidsLowPercent  Number `json:"solids_low_percent"`
	SolidsHighPercent Number `json:"solids_high_percent"`
	MassG             Number `json:"mass_g"`
	WaterLeftG        Number `json:"water_left_g"`
	WaterBoiledOffG   Number `json:"water_boiled_off_g"`
	AlcoholOffG       Number `json:"alcohol_boiled_off_g"`
	Minutes           Number `json:"minutes"`
	MinutesLow        Number `json:"minutes_low"`
	MinutesHigh       Number `json:"minutes_high"`
}

// FoamMix is what the whites come to once the syrup is in.
type FoamMix struct {
	AdiabaticC       Number `json:"adiabatic_c"`
	WithBowlC        Number `json:"with_bowl_c"`
	PeakC            Number `json:"peak_c"`
	PeakLowC         Number `json:"peak_low_c"`
	PeakHighC        Number `json:"peak_high_c"`
	MinutesAbove60   Number `json:"minutes_above_60_c"`
	LogReductionLow  Number `json:"log_reduction_low"` // tenfold reductions of Salmonella, by data of sugar solutions
	LogReductionHigh Number `json:"log_reduction_high"`
	WhiskMinutes     Number `json:"whisk_minutes"` // until below 30 °C

	MinutesAbove map[string]Number `json:"minutes_above"` // by °C
	CourseC      []Number          `json:"course_c"`      // minute by minute from the beginning of the pour
	Air          ExpectedAir       `json:"air"`
}

// ExpectedAir is the overrun that the foam comes to beside what is asked, %.
type ExpectedAir struct {
	Asked         Number   `json:"asked_percent"`
	Low           Number   `json:"expected_low_percent"`
	High          Number   `json:"expected_high_percent"`
	Causes        []string `json:"causes"`
	CupG          Number   `json:"level_250_ml_cup_g"`
	ShrinksTo     Number   `json:"shrinks_to_percent"` // from 30 to 4 °C, at most
	SugarPerWhite Number   `json:"sugar_per_white"`
}

// Cooking is the custard's window on the stove and its cooling.
type Cooking struct {
	FromC         Number `json:"from_c"`
	ToC           Number `json:"to_c"`
	CurdlesC      Number `json:"curdles_c"`
	StarchNeedsC  Number `json:"starch_needs_c"`
	WaterOffG     Number `json:"water_driven_off_g"`
	OffMinutes    Number `json:"driving_off_minutes"` // in an open pan that does not boil
	YolkGPerKG    Number `json:"yolk_g_per_kg"`
	AcidGPerKG    Number `json:"acid_g_per_kg_milk"`
	WeighedG      Number `json:"weighs_g"`       // on the scale, before what goes in later
	HoldLog       Number `json:"log_reduction"`  // of Salmonella in 10 s at from_c, by sugared yolk's data
	HoldMinutes   Number `json:"hold_counts_as"` // minutes at 63.33 °C, where 9 CFR 590.570 asked 3.5 until 2020
	CoolMinutes   Number `json:"cool_minutes"`   // stirred in an ice bath, to 5 °C
	FridgeHours   Number `json:"refrigerator_hours"`
	FridgeKeepsTo bool   `json:"refrigerator_keeps_food_code"`
}

// EggLedger is the eggs in pieces: used + left = crack.
type EggLedger struct {
	System       string   `json:"system"`
	Size         string   `json:"size"`
	Crack        int      `json:"crack"`
	Dense        EggParts `json:"dense"`
	Foam         EggParts `json:"foam"`
	YolksUsed    Number   `json:"yolks_used"`
	WhitesUsed   Number   `json:"whites_used"`
	YolksLeft    Number   `json:"yolks_left"`
	WhitesLeft   Number   `json:"whites_left"`
	YolksLeftG   Number   `json:"yolks_left_g"`
	WhitesLeftG  Number   `json:"whites_left_g"`
	KeepDays     Ends     `json:"keep_days"` // in the refrigerator, by published advice
	FrozenMonths int      `json:"whites_frozen_months"`
}

// EggParts is what one phase uses.
type EggParts struct {
	Yolks  Number `json:"yolks"`
	Whites Number `json:"whites"`
}

func eggLedger(e process.Eggs) EggLedger {
	return EggLedger{
		System: e.System, Size: e.Size, Crack: e.Crack,
		Dense: EggParts{Number(e.Dense.Yolks), Number(e.Dense.Whites)}, Foam: EggParts{Number(e.Foam.Yolks), Number(e.Foam.Whites)},
		YolksUsed: Number(e.YolksUsed), WhitesUsed: Number(e.WhitesUsed),
		YolksLeft: Number(e.YolksLeft), WhitesLeft: Number(e.WhitesLeft), YolksLeftG: Number(e.YolksLeftG), WhitesLeftG: Number(e.WhitesLeftG),
		KeepDays: Ends{Number(egg.KeepsDays[0]), Number(egg.KeepsDays[1])}, FrozenMonths: egg.FrozenMonths,
	}
}

// Freezer is what the freezer is asked for.
type Freezer struct {
	LoadKJ       Number `json:"load_kj"`
	LoadOfRating Number `json:"load_of_rating"` // 1: as much as it is rated for in a day
	ChillFoamToC Number `json:"chill_foam_to_c"`
	IceMeltedG   Number `json:"ice_melted_by_warm_foam_g_per_tub"`
}

// Step is one step with what goes in at it.
type Step struct {
	Code        string       `json:"code"`
	Title       string       `json:"title"`
	Text        string       `json:"text"`
	Minutes     Number       `json:"minutes"`
	HandsOn     Number       `json:"hands_on_minutes"`
	Uses        []string     `json:"uses"`
	After       []string     `json:"after"`
	Ingredients []Ingredient `json:"ingredients"`
}

// Ingredient is what of a line goes in.
type Ingredient struct {
	ID      string `json:"id"`
	Grams   Number `json:"grams"`
	Measure string `json:"measure"` // household, "" where none is known
}

// Caution is a caution of the card or of the design.
type Caution struct {
	Code  string `json:"code"` // of the making or of a warning of the design; "" of a general one
	Title string `json:"title"`
	Text  string `json:"text"`

	inStep bool // a step says it
}

// courseMinutes is how long the foam's course is told.
const courseMinutes = 20

// ProcessOf returns the report of the making m of the design read from file.
func ProcessOf(file string, m say.Making) Process {
	m.Cups = true
	d, r, p := m.Design, m.Result, m.Process
	out := Process{
		File: file, Name: d.Name, Steps: []Step{}, Cautions: []Caution{}, Cost: costObject(r), Dishes: p.Freezing.Dishes,
		Eggs:    eggLedger(p.Eggs),
		Freezer: Freezer{Number(p.Freezing.LoadKJ), Number(p.Freezing.Loaded), Number(p.Freezing.ChillTheC), Number(p.Freezing.IceLostG)},
	}
	if y := p.Syrup; y.Present {
		out.Syrup = &Boil{
			Number(y.ReadingC), Number(r.Syrup.BoilingPointC), Number(y.WaterBoilsC), Number(y.SeaC),
			Number(y.SolidsPercent), Number(y.LowSolidsPercent), Number(y.HighSolidsPercent),
			Number(y.MassG), Number(y.WaterLeftG), Number(y.WaterOffG), Number(y.AlcoholOffG),
			Number(y.Minutes.Value), Number(y.Minutes.Low), Number(y.Minutes.High),
		}
	}
	if f := p.Foam; f.Present && f.Hot {
		out.FoamMix = &FoamMix{
			Number(f.AdiabaticC), Number(f.WithBowlC), Number(f.PeakC), Number(f.PeakLowC), Number(f.PeakHighC),
			Number(f.Above60Minutes), Number(f.LogLow), Number(f.LogHigh), Number(f.StopMinutes),
			map[string]Number{}, []Number{},
			ExpectedAir{Number(f.AskedOverrunPercent), Number(f.Air.LowPercent), Number(f.Air.HighPercent), []string{}, Number(process.CupML * r.Foam.Body.GPerML()), Number(100 * f.ColdShrinkRatio), Number(f.SugarGPerG)},
		}
		for c := 45; c <= 80; c += 5 {
			out.FoamMix.MinutesAbove[strconv.Itoa(c)] = Number(f.Course.AboveMinutes(float64(c)))
		}
		for i := range courseMinutes + 1 {
			out.FoamMix.CourseC = append(out.FoamMix.CourseC, Number(f.Course.AtC(float64(i))))
		}
		for _, c := range f.Air.Why {
			out.FoamMix.Air.Causes = append(out.FoamMix.Air.Causes, string(c))
		}
	}
	if c := p.Custard; c.Present {
		out.Custard = &Cooking{
			Number(c.FromC), Number(c.ToC), Number(c.CurdlesC), Number(c.StarchC), Number(c.WaterOffG),
			Number(c.OffMinutes), Number(c.YolkGPerKG), Number(c.AcidPerKG), Number(c.WeighedG), Number(c.LogYolk), Number(c.HoldMinutes),
			Number(c.Cool.BathMinutes), Number(c.Cool.FridgeHours), c.Cool.FridgeMeets,
		}
	}
	for i := range p.Steps {
		out.Steps = append(out.Steps, stepReport(m, &p.Steps[i]))
	}
	out.Cautions = cautionReport(m)
	return out
}

func stepReport(m say.Making, s *process.Step) Step {
	words := say.Step(Reads, m, s)
	out := Step{Code: string(s.Code), Title: words.Title, Text: words.Text, Minutes: Number(s.Minutes), HandsOn: Number(s.HandsOnMinutes),
		Uses: []string{}, After: []string{}, Ingredients: []Ingredient{}}
	for _, u := range s.Uses {
		out.Uses = append(out.Uses, string(u))
	}
	for _, c := range s.After {
		out.After = append(out.After, string(c))
	}
	for _, u := range s.Lines {
		out.Ingredients = append(out.Ingredients, Ingredient{m.Result.Lines[u.Line].Ingredient.ID, Number(u.Grams), say.MeasureOf(Reads, m, u)})
	}
	return out
}

func cautionReport(m say.Making) []Caution {
	d, r := m.Design, m.Result
	out := []Caution{}
	for i, c := range say.MakingCautions(Reads, m, true) {
		code := m.Process.Cautions[i].Code
		out = append(out, Caution{string(code), c.Title, c.Text, say.InStep(code)})
	}
	for _, w := range r.Warnings {
		if w.Severity > model.Note {
			out = append(out, Caution{w.Code, say.Severity(w.Severity), say.Warning(Reads, w), false})
		}
	}
	for _, c := range say.Cautions(Reads, d, r, strings.Join(say.Allergens(r.Allergens.US), ", ")) {
		out = append(out, Caution{"", c.Title, c.Text, false})
	}
	return out
}

// WriteText writes the making as numbered steps.
func (p Process) WriteText(w io.Writer) error {
	out := &page{w: w}
	out.line("%s (%s)", p.Name, p.File)
	for i, s := range p.Steps {
		out.line("")
		out.line("%d. %s", i+1, s.Title)
		out.line("   %s", s.Text)
	}
	if len(p.Cautions) > 0 {
		out.line("")
	}
	for _, c := range p.Cautions {
		if c.inStep {
			continue
		}
		out.line("%s: %s", c.Title, c.Text)
	}
	return out.err
}
