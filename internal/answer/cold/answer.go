package cold

import (
	"math"

	"ripplewright/internal/answer/model"
)

// Range is a time with its band, Low ≤ Value ≤ High: the outside coefficient
// as it stands, and at the ends of what is known of it, with those of the tub as
// batches have shown it to come out. NaN means not within the time looked at.
type Range struct{ Value, Low, High float64 }

// Known reports whether the time is reached with the coefficient as it stands.
func (r Range) Known() bool { return !math.IsNaN(r.Value) }

// hold widens r's band to x's. A time that x does not reach at all has no upper end.
func (r *Range) hold(x Range) {
	if !r.Known() {
		return
	}
	if x.Low < r.Low {
		r.Low = x.Low
	}
	r.High = math.Max(r.High, x.High)
}

// ranges are all times of a that have a band.
func (a *Answer) ranges() []*Range {
	out := []*Range{&a.Harden.MoveHours, &a.Harden.Hours}
	for _, c := range [...]*Cooling{&a.StillFreeze.Dense, &a.StillFreeze.Foam} {
		out = append(out, &c.FirstIceMinutes, &c.WhipMinutes, &c.ReadyMinutes)
	}
	for _, s := range [...]*Softening{&a.Counter, &a.Fridge} {
		out = append(out, &s.FromMinutes, &s.ToMinutes, &s.WholeMinutes, &s.CoreMinutes, &s.RingServingMinutes, &s.MeanServingMinutes, &s.MeltsAtWallMinutes)
		for _, t := range [...]*ScoopTimes{&s.Dense, &s.Foam} {
			out = append(out, &t.FromMinutes, &t.ToMinutes)
		}
	}
	return out
}

func never() Range { return Range{math.NaN(), math.NaN(), math.NaN()} }

// Answer is what Plan finds.
type Answer struct {
	Profile     Profile
	Tub         Vessel
	StillFreeze StillFreeze
	Harden      Harden
	Counter     Softening
	Fridge      Softening // in the refrigerator instead
	Storage     Storage
	Notes       []model.Warning
}

// Harden is a filled tub going into the freezer.
type Harden struct {
	StartC, AirC float64
	MoveC        float64 // of the core, to be carried about
	MoveHours    Range
	CoreToC      float64 // of the core, to be stored
	Hours        Range
	Already      bool // it goes in as cold as that, so Hours is 0 and no time to speak of
	Run          Run
}

// StillFreeze is both phases in the freezer before they meet.
type StillFreeze struct {
	Dense, Foam Cooling
	// StartFirst is "custard" or "foam", the one that takes longer, and
	// HeadStartMinutes how much earlier it goes in for both to be ready
	// together; "" and NaN where one never is.
	StartFirst       string
	HeadStartMinutes float64
	ReadyMinutes     float64 // from the first going in until both are ready
}

// Cooling is one phase in its dish.
type Cooling struct {
	Present          bool
	Vessel           Vessel
	VolumeML         float64
	StartC           float64
	Stirred          bool // the foam is left alone: beating it would let its air out
	Stirs            []Stir
	FirstIceMinutes  Range // minutes until the edge begins to freeze
	WhipC            float64
	WhipMinutes      Range // minutes until thick enough to whip air in; NaN for the foam
	ReadyC           float64
	ReadyMinutes     Range   // minutes until it can be swirled
	ReadyIceFraction float64 // of its water then, 0 to 1
	Means            Ready   // what ready rests on
	AirC             float64 // of the freezer
	Run              Run
}

// Ready is what makes a phase ready to be swirled.
type Ready uint8

// What ready means.
const (
	HalfFrozen    Ready = iota // half of its water is ice
	NeverHalf                  // the freezer never gets it there
	AsCustard                  // it is as cold as the custard when that is swirled
	ByItself                   // there is no custard: half of its water is ice, or it is nearly as cold as the freezer
	AsCustardBare              // likewise, and has no ice there: its film alone holds its shape
)

// Stir is one beating.
type Stir struct {
	AtMinutes          float64
	MeanC              float64 // once beaten
	EdgeC              float64 // the coldest spot, just before
	WaterFrozenPercent float64 // once beaten
}

// Softening is a tub taken out of the freezer.
type Softening struct {
	Place        string // "counter" or "refrigerator"
	AirC, StartC float64

	// The window: the outer ring is in both phases' bands.
	OK                     bool
	Why                    NoWindow // not OK
	FromC, ToC             float64  // of the ring
	FromMinutes, ToMinutes Range    // minutes
	RingC, CoreC           float64  // at From
	EndCoreC               float64  // the core at To
	Dense, Foam            ScoopTimes

	WholeMinutes       Range // minutes until all of the tub, evened out, is past FromC
	CoreMinutes        Range // until its coldest spot is
	RingServingMinutes Range // until the ring is at the design's serving temperature
	MeanServingMinutes Range // until the whole tub, evened out, is
	MeltC              float64
	MeltsAtWallMinutes Range

	Run Run
}

// NoWindow is why a tub never scoops well.
type NoWindow uint8

// The reasons.
const (
	HasWindow     NoWindow = iota
	NeverTogether          // no temperature is in both phases' bands
	NeverScoops            // a phase has no band
	TooSoft                // the tub is past its band as it leaves the freezer
	NobodyKnows            // the hardness law ends before a phase's band
)

// ScoopTimes is when the outer ring is in one phase's band.
type ScoopTimes struct {
	Present                bool
	OK                     bool // there is a band between −40 and 0 °C
	FromC, ToC             float64
	LawFromC               float64 // colder than this nobody knows its hardness; −40 if it is known throughout, NaN if nowhere
	FromMinutes, ToMinutes Range   // minutes
}

// Storage is the tub in the freezer for good.
type Storage struct {
	AtC, SwingK float64
	Dense, Foam Stored

	WaterDrawn bool
	Drawer     string  // "foam" or "custard", the one that draws
	DrawnG     float64 // per 100 g of the drawer at most, once even; NaN if unknown
	KeepBelowC float64 // where both hold ice with 2 K to spare; NaN if nowhere
	Change     Change  // of the drawer, that nothing be drawn

	// What the freezer's swing does, between AtC − SwingK and AtC + SwingK.
	Swing      Swing
	SwingPhase string // "foam" or "custard", the one it does the most to; "" for SwingNothing

	// Growth of the custard's crystals relative to −18 °C, package ice's; NaN
	// where it has no ice.
	AgeingIndex     float64
	AgeingIndexWarm float64                 // at the warm end of the swing
	Ageing          [len(AgeingAtC)]float64 // at AgeingAtC
}

// AgeingAtC is where the growth of crystals is told beside the freezer's own, °C.
var AgeingAtC = [...]float64{-15, -12, -10}

// Swing is what the freezer's swing does to the ice of the phase it does the most
// to. Water stays where it is only while both phases hold ice.
type Swing uint8

// The swings, from the least on.
const (
	SwingNothing Swing = iota // the freezer does not swing, or nothing has ice
	SwingPart                 // less than half of the ice melts and freezes again
	SwingMost                 // half of it or more does, so it freezes back coarse: half is our own mark
	SwingAll                  // none is left at the warm end, and where there are two phases water moves each time
)

// String returns "nothing", "part", "most" or "all".
func (s Swing) String() string { return [...]string{"nothing", "part", "most", "all"}[s] }

// Change is what keeps a phase from drawing water.
type Change struct {
	FreezesAtC float64 // as it is; NaN where it never does
	WaterG     float64 // more water, per 100 g of it,
	ThenC      float64 // and where it freezes with that
}

// Stored is one phase in storage.
type Stored struct {
	Present            bool
	FreezingPointC     float64
	WaterFrozenPercent float64
	HasIce             bool
	SwingPercent       float64 // of its ice at the cold end that a swing melts and freezes again; NaN without ice
	IceWhenWarm        bool    // it holds ice at the warm end too
}

// Run is one computed history with its pictures.
type Run struct {
	Outward, Upward int // cells of a frame, see Frame.C
	RadiusMM        float64
	HeightMM        float64
	Track           []Moment
	Frames          []Frame
}

// Moment is the tub at one time. Mean and ring are evened out: what a
// thermometer shows after stirring. The ring is the outer 10 mm.
type Moment struct {
	AtMinutes                  float64
	CoreC, MeanC, RingC, WallC float64
}

// Frame is the temperature of even cells, °C: cell (i, j), i from the axis
// outward and j from the bottom up, is C[j*Outward+i]. A tub's own are thinner
// at the faces, and these read from them.
type Frame struct {
	AtMinutes float64
	C         []float64
}

// At returns the moment at the given minute, between samples by line; before
// the first or after the last it is that one.
func (r *Run) At(minutes float64) Moment {
	t := r.Track
	if len(t) == 0 {
		n := math.NaN()
		return Moment{minutes, n, n, n, n}
	}
	for i := 1; i < len(t); i++ {
		if t[i].AtMinutes < minutes {
			continue
		}
		a, b := t[i-1], t[i]
		if minutes <= a.AtMinutes || b.AtMinutes == a.AtMinutes {
			return a
		}
		f := (minutes - a.AtMinutes) / (b.AtMinutes - a.AtMinutes)
		mid := func(x, y float64) float64 { return x + f*(y-x) }
		return Moment{minutes, mid(a.CoreC, b.CoreC), mid(a.MeanC, b.MeanC), mid(a.RingC, b.RingC), mid(a.WallC, b.WallC)}
	}
	return t[len(t)-1]
}

// RingMinutes returns when the outer ring is as warm as c °C, between samples by
// line: 0 where it begins so, NaN where it never is.
func (r *Run) RingMinutes(c float64) float64 {
	for i, b := range r.Track {
		switch {
		case b.RingC < c:
			continue
		case i == 0:
			return 0
		}
		a := r.Track[i-1]
		return a.AtMinutes + (b.AtMinutes-a.AtMinutes)*(c-a.RingC)/(b.RingC-a.RingC)
	}
	return math.NaN()
}
