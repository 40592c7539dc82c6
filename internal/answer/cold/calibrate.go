package cold

import (
	"context"
	"fmt"
	"math"
	"regexp"
	"strconv"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/form/setting"
	"ripplewright/internal/matter/heat"
	"ripplewright/internal/matter/num"
	"ripplewright/internal/work/design"
)

// Measurement is one time a maker has measured with a design's tub.
type Measurement struct {
	Kind    MeasurementKind
	Minutes float64
	CoreC   float64 // for CoreAt, °C
	StartC  float64 // for CoreAt, °C of the filled tub as it went in
}

// MeasurementFields returns what is typed of a measurement, by kind, in the order
// in which it is asked for.
func MeasurementFields(k MeasurementKind) []setting.Field[Measurement] {
	if k == CoreAt {
		return measured
	}
	return measured[len(measured)-1:]
}

var measured = []setting.Field[Measurement]{
	{Path: "start_c", About: "it goes in at", Unit: "°C", Min: -30, Max: 40, Of: func(m *Measurement) any { return &m.StartC }},
	{Path: "core_c", About: "its core is at", Unit: "°C", Min: -40, Max: 0, Of: func(m *Measurement) any { return &m.CoreC }},
	{Path: "minutes", About: "after", Unit: "min", Min: 1, Max: 6000, Of: func(m *Measurement) any { return &m.Minutes }},
}

// Between reports whether a core can be where it was measured: colder than it went
// in and warmer than the air.
func (m Measurement) Between(airC float64) bool {
	return m.Kind != CoreAt || m.CoreC < m.StartC && m.CoreC > airC
}

// MeasurementKind says what was seen.
type MeasurementKind uint8

// The kinds of measurement.
const (
	CoreAt      MeasurementKind = iota // in the freezer, a thermometer in the core came down to CoreC after Minutes
	ScoopedWell                        // on the counter, straight from the freezer: the outer ring was amid both phases' bands
)

// String is the measurement as a kitchen's file keeps it, in the file's units.
func (m Measurement) String() string {
	if m.Kind == ScoopedWell {
		return fmt.Sprintf("scooped well after %.0f min", m.Minutes)
	}
	return fmt.Sprintf("core at %g °C after %.0f min from %g °C", m.CoreC, m.Minutes, m.StartC)
}

// measurements are the two that String writes.
var measurements = regexp.MustCompile(`^(?:scooped well after (\S+) min|core at (\S+) °C after (\S+) min from (\S+) °C)$`)

// ReadMeasurement reads what String wrote; false where a kitchen's file says something else.
func ReadMeasurement(text string) (Measurement, bool) {
	found := measurements.FindStringSubmatch(text)
	if found == nil {
		return Measurement{}, false
	}
	number := func(i int) float64 { v, _ := strconv.ParseFloat(found[i], 64); return v } // what is none differs below
	m := Measurement{Kind: ScoopedWell, Minutes: number(1)}
	if found[1] == "" {
		m = Measurement{Kind: CoreAt, CoreC: number(2), Minutes: number(3), StartC: number(4)}
	}
	return m, m.String() == text
}

// CalibrationError says that no coefficient in reason makes the measured time.
type CalibrationError struct {
	Measured Measurement
	// Shortest and Longest are the times, minutes, at the ends of the factor's
	// range, as far as a tub is followed.
	ShortestMinutes, LongestMinutes float64
}

// Words are what is wrong.
func (e *CalibrationError) Words() error {
	return flaw.New("calibration: no coefficient in reason makes the measured time")
}

func (e *CalibrationError) Error() string { return e.Words().Error() }

// Calibrate returns p with the factor of its freezer or counter at which the
// tub of d takes the measured time, and the measurement as it is kept there. The time
// falls as the factor rises, so the factor is the only one. The error is a
// *CalibrationError where the factor would leave 0.2 to 5.
func Calibrate(ctx context.Context, d design.Design, r *model.Result, p Profile, m Measurement) (Profile, error) {
	if err := p.Validate(); err != nil {
		return p, err
	}
	tub, err := rippled(r)
	if err != nil {
		return p, err
	}
	pl := planner{runner{ctx: ctx}, d, r, p, tub, &Answer{Tub: tubVessel(d.Tubs)}, Options{}}
	e := exposure{
		what: "calibration", substance: tub, vessel: pl.a.Tub, cells: hardenCells,
		place: p.Freezer, pack: p.Package, lid: p.Package.LidM2KPerW,
		start: m.StartC, target: m.CoreC, limit: 10 * hardenLimit,
		levels: []heat.Level{{Of: heat.Hottest, AtC: m.CoreC}},
	}
	target := &p.Freezer
	if m.Kind == ScoopedWell {
		var s Softening
		pl.bands(&s)
		if !s.OK {
			return p, flaw.New("calibration: this design has no temperature at which it scoops well")
		}
		target = &p.Counter
		e.cells = counterMesh
		e.place, e.start, e.target = p.Counter, p.Freezer.AirC, warmestBand
		e.levels = []heat.Level{{Of: heat.Ring, AtC: (s.FromC + s.ToC) / 2}}
	}
	if !(m.Minutes > 0) || math.IsInf(m.Minutes, 0) {
		return p, flaw.New("calibration: %g is not a time", m.Minutes)
	}
	e.place.Factor = 1
	factor, err := pl.factor(e, m)
	if err != nil {
		return p, err
	}
	target.Factor, target.Measured = factor, m.String()
	return p, nil
}

// factor finds the factor of e's place by its logarithm.
func (pl *planner) factor(e exposure, m Measurement) (float64, error) {
	mesh, err := e.vessel.mesh(e.cells)
	if err != nil {
		return math.NaN(), err
	}
	material, err := e.substance.material(math.Min(e.start, e.place.AirC)-1, math.Max(e.start, e.place.AirC)+1)
	if err != nil {
		return math.NaN(), err
	}
	var failed error
	time := func(ln float64) float64 {
		if failed != nil {
			return math.NaN()
		}
		_, at, err := pl.once(e, material, mesh, math.Exp(ln), false)
		if err != nil {
			failed = err
			return math.NaN()
		}
		if math.IsNaN(at[0]) {
			return e.limit / 60 // not within the limit, so no shorter
		}
		return at[0] / 60
	}
	low, high := math.Log(minFactor), math.Log(maxFactor)
	longest, shortest := time(low), time(high)
	if failed != nil {
		return math.NaN(), flaw.New("calibration: %v", failed)
	}
	if !(shortest <= m.Minutes && m.Minutes <= longest) {
		return math.NaN(), &CalibrationError{m, shortest, longest}
	}
	ln, err := num.Root(func(ln float64) float64 { return math.Log(time(ln) / m.Minutes) }, low, high, 1e-5)
	if failed != nil {
		err = failed
	}
	if err != nil {
		return math.NaN(), flaw.New("calibration: %v", err)
	}
	return math.Exp(ln), nil
}
