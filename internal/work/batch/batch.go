// Package batch is the notebook of a design: what really happened when it was made,
// measured and eaten, in a file beside it.
//
// A Batch is a plain value. Nothing is computed here: what the notebook teaches,
// package learn says. Masses g, temperatures °C, times minutes.
package batch

// Batch is one making of a design. The zero Batch has measured nothing.
type Batch struct {
	ID      string // its name in the file, and the lot where no other is given
	When    string // it was written down, "2026-11-28 09:40"
	Version string // of the design, see VersionOf

	Made, BestBefore string // days, "2026-11-28"
	Lot              string

	Weighed []string // lines where they differ from the design, see Weight

	Syrup    Syrup
	Custard  Custard
	Foam     Foam
	FreezerC Measured
	RoomC    Measured
	Scooped  Scooped
	Cut      Cut
	Ate      Ate

	Photographs []string // paths
	Words       string   // anything to remember

	Forecast Forecast // what was expected of it, as nothing was learnt yet

	// Off names what is no longer learnt from now on, "nothing" for nothing.
	Off []string
}

// Measured is a number that somebody has read off. The zero Measured is not known.
type Measured struct {
	Value float64
	Known bool
}

// Of returns a known number.
func Of(v float64) Measured { return Measured{v, true} }

// Get implements setting.Maybe.
func (m *Measured) Get() (number float64, known bool) { return m.Value, m.Known }

// Put implements setting.Maybe.
func (m *Measured) Put(number float64, known bool) {
	if *m = (Measured{}); known {
		*m = Of(number)
	}
}

// Syrup is what was read at the stove.
type Syrup struct {
	WaterBoilsC Measured // what the probe shows in boiling water
	ReadingC    Measured // what it showed when the syrup came off
	WeighedG    Measured // pan and syrup
	PanG        Measured // the empty pan, 0 where the scale was set to nought
}

// MassG returns the syrup's own mass, g.
func (s Syrup) MassG() Measured {
	if !s.WeighedG.Known || !s.PanG.Known || !(s.WeighedG.Value > s.PanG.Value) {
		return Measured{}
	}
	return Of(s.WeighedG.Value - s.PanG.Value)
}

// Custard is what was weighed of it.
type Custard struct {
	WeighedG     Measured // cooked, without its pan
	CupG         Measured // a level cup of CupML, half frozen
	StirsMinutes []string // when it was stirred, minutes from going into the freezer
}

// Foam is what was read of it.
type Foam struct {
	WhitesC Measured // after the pour
	CupG    Measured // a level cup of CupML
}

// CupML is the cup that air is weighed with, mL.
const CupML = 250

// Scooped is the tub taken out of the freezer until it first scooped.
type Scooped struct {
	CoreC        Measured // a probe in its middle, as it came out
	AfterMinutes Measured
	RingC        Measured // a probe in the outer centimetre, then
}

// Cut is what a photograph of the cut tub shows.
type Cut struct {
	View        string // "side" or "top", as package ripple has it; "" is side
	FoamPercent Measured
	RibbonMM    Measured // mean of the foam, of ribbons thicker than LeastMM
	ThickestMM  Measured // thickest tenth of the foam's chords
	LeastMM     Measured // thinner ribbons cannot be seen in it
}

// Ate is how it ate.
type Ate struct {
	AtC       Measured // of the custard; the design's own where nobody read it
	AfterDays Measured // in the freezer
	Hardness  string   // a name of phase.Words, "" where nobody said, as of all below
	Icy       string   // a name of ice.Words
	Sweetness string
	Sandy     string
	Ripple    string
}

// Forecast is what the models expected of a batch in its kitchen, with the lines as
// weighed, before anything was learnt: what its measurements are compared with, even
// when the design has long become another.
type Forecast struct {
	WaterBoilsC          Measured
	SyrupG               Measured // by the thermometer's reading
	SyrupSolidsPercent   Measured
	SyrupSolidsPerK      Measured // points more of a reading a degree higher
	CustardG             Measured
	CustardInG           Measured // before the stove
	StoveLossPercent     Measured // as the design had it
	CustardCupG          Measured
	CustardOverrun       Measured // %
	FoamC                Measured
	FoamCupG             Measured
	FoamOverrun          Measured // %
	FreezerC             Measured
	CounterFactor        Measured // this and the next as the kitchen had them
	CounterWPerK         Measured // coefficient, W/(m² K), 0: still air
	ProbeK               Measured // that the kitchen's probe shows too much
	ScoopedMinutes       Measured // with the freezer and the room as read
	ScoopedTwiceHard     Measured // minutes, were it twice as hard; as ScoopedMinutes where the ring was read
	ScoopedFreezerWarmer Measured // minutes, were the freezer 1 K warmer
	ScoopedKPa           Measured // of the custard at the ring's temperature
	HardnessKPa          Measured // of the custard as eaten
	IceUM                Measured // of the custard as eaten, at its coarser place
	CutFoamPercent       Measured // as CutRibbonMM of the computed cut, past what the photograph cannot show
	CutRibbonMM          Measured
	CutThickestMM        Measured
}

// With returns b with what a later entry of it says.
func (b Batch) With(later *Batch) Batch {
	for _, f := range entries {
		if text := f.Text(later); text != "" {
			f.Set(&b, text)
		}
	}
	return b
}
