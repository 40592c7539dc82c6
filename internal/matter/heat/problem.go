package heat

import (
	"context"
	"fmt"
	"math"
)

// Problem is one body of one material, where it stands, and what is asked.
type Problem struct {
	Material    *Material
	Mesh        Mesh
	StartC      float64   // uniform temperature at time 0, °C, unless there is a Field
	FieldJPerM3 []float64 // enthalpy of each cell at time 0, J/m³, as in Result.Field; nil means uniform

	Segments []Segment // where the body stands, in order; they add up to the run
	Stirring Stirring

	Levels  []Level   // temperatures whose first crossing is asked
	FramesS []float64 // times whose temperature field is asked, s, rising
	EveryS  float64   // spacing of Result.Track, s; 0 means one sample per step
	RingM   float64   // width of the outer ring, m; 0 means 10 mm
}

// Segment is a time spent in unchanging surroundings: freezer, then counter.
type Segment struct {
	ForS float64 // s
	Surroundings
}

// Stirring says when the body is mixed: its enthalpy is then averaged, at
// once and without loss. The zero value never stirs.
type Stirring struct {
	EveryS float64 // stir this often, s; 0 means not by the clock
	ByEdge bool    // stir when the coldest cell falls to EdgeC…
	EdgeC  float64 // …°C, until the body as a whole is as cold
	RestS  float64 // least time between two stirs by the edge, s; 0 means 60
}

// Quantity is one temperature of the body that is followed through a run.
type Quantity int

// The quantities. Mean and Ring are equilibrated: the temperature of the mean
// enthalpy, which is what a thermometer would show after stirring.
const (
	Hottest Quantity = iota // the hottest cell
	Coldest                 // the coldest cell
	Mean                    // the whole body, equilibrated
	Ring                    // the outer ring (of a slab, the uppermost layer), equilibrated
	Wall                    // the surface of the side at half height (of a slab, of the top), inside any package
	quantities
)

func (q Quantity) String() string {
	if q < 0 || q >= quantities {
		return fmt.Sprintf("Quantity(%d)", int(q))
	}
	return [...]string{"hottest cell", "coldest cell", "mean", "outer ring", "wall"}[q]
}

// Level asks when a quantity first crosses a temperature, from either side.
type Level struct {
	Of  Quantity
	AtC float64 // °C
}

// Options adjusts Solve. The zero Options suits a tub in a freezer.
type Options struct {
	// Tolerance is the error of one step relative to the largest change of
	// enthalpy so far. 0 means 3e-4, which puts the hottest cell's time within
	// 0.05 % of the converged one in every tub of the tests.
	Tolerance float64
	MaxSteps  int  // 0 means 200 000
	StopEarly bool // stop as soon as every level has been crossed
	// Progress, if set, is called on Solve's goroutine every few dozen steps
	// with the part of the run that is done, 0 to 1.
	Progress func(done float64)
}

// Status says why a run stopped.
type Status int

// The statuses.
const (
	Finished  Status = iota // the segments are over
	Reached                 // every level was crossed, and StopEarly was set
	Cancelled               // the context was cancelled
	StepLimit               // MaxSteps steps were taken
	Stuck                   // the tolerance asks for steps that rounding swallows
)

func (s Status) String() string {
	if s < 0 || int(s) >= 5 {
		return fmt.Sprintf("Status(%d)", int(s))
	}
	return [...]string{"finished", "levels reached", "cancelled", "step limit", "stuck"}[s]
}

// Sample is one moment of a run; temperatures in °C.
type Sample struct {
	TimeS        float64 // s
	TemperatureC [quantities]float64
}

// OfC returns one of the sample's temperatures, °C.
func (s Sample) OfC(q Quantity) float64 { return s.TemperatureC[q] }

// Frame is the temperature of every cell at one moment, °C, as Mesh orders
// them.
type Frame struct {
	TimeS        float64 // s
	TemperatureC []float64
}

// Stir is one mixing.
type Stir struct {
	TimeS  float64 // s
	MeanC  float64 // the body's temperature once mixed, °C
	EdgeC  float64 // the coldest cell's just before, °C
	JPerM3 float64 // the mixed body's, J/m³
}

// Balance compares two accounts of the same heat: what came through the faces,
// integrated along the run, and what the cells hold more than at the start.
// For a slab they are per square metre.
type Balance struct {
	InJ      float64 // J, through the faces
	StoredJ  float64 // J, change of the body's enthalpy
	ContentJ float64 // J, sum of the cells' absolute enthalpies at the start
}

// Residual is the difference of the two accounts relative to the heat that
// came in, or to Content in an insulated body.
func (b Balance) Residual() float64 {
	scale := math.Abs(b.InJ)
	if scale == 0 {
		scale = b.ContentJ
	}
	if scale == 0 {
		return 0
	}
	return math.Abs(b.StoredJ-b.InJ) / scale
}

// Result is the outcome of a run, as far as it came.
type Result struct {
	Status      Status
	TimeS       float64   // s reached
	FieldJPerM3 []float64 // enthalpy of each cell then, J/m³
	CrossingsS  []float64 // s, for each of Problem.Levels; NaN if it was not crossed
	Track       []Sample  // from time 0 on
	Frames      []Frame   // for each of Problem.Frames that was reached
	Stirs       []Stir
	Balance     Balance

	Steps    int // accepted
	Rejected int // tried, found too long and repeated
}

// Solve follows the body through its segments.
//
// A Problem that cannot be run gives an error and no Result: a *RangeError when
// the start, an ambient or a level lies outside the material's tables. A
// cancelled context gives ctx.Err() and the Result so far. Every other way to
// stop is a Status.
func Solve(ctx context.Context, p Problem, o Options) (Result, error) {
	lowest, highest, err := p.check()
	if err != nil {
		return Result{}, fmt.Errorf("heat conduction: %w", err)
	}
	if o.Tolerance == 0 {
		o.Tolerance = 3e-4
	}
	if o.MaxSteps == 0 {
		o.MaxSteps = 200_000
	}
	r := newRun(p, o, lowest, highest)
	err = r.all(ctx)
	return r.result(), err
}

// check validates p and returns the temperatures that the body stays between.
func (p *Problem) check() (lowest, highest float64, err error) {
	if p.Material == nil {
		return lowest, highest, fmt.Errorf("no material")
	}
	cells := p.Mesh.nr * p.Mesh.nz
	switch {
	case cells == 0:
		return lowest, highest, fmt.Errorf("no mesh")
	case len(p.Segments) == 0:
		return lowest, highest, fmt.Errorf("no segments")
	case p.FieldJPerM3 != nil && len(p.FieldJPerM3) != cells:
		return lowest, highest, fmt.Errorf("start field of %d cells on a mesh of %d", len(p.FieldJPerM3), cells)
	case p.Stirring.EveryS < 0 || p.Stirring.RestS < 0 || p.EveryS < 0 || p.RingM < 0:
		return lowest, highest, fmt.Errorf("a negative interval or width")
	}
	lowest, highest = p.StartC, p.StartC
	if p.FieldJPerM3 != nil {
		lo, hi := extremes(p.FieldJPerM3)
		lowest, highest = p.Material.TemperatureC(p.FieldJPerM3[lo]), p.Material.TemperatureC(p.FieldJPerM3[hi])
	}
	for _, t := range []float64{lowest, highest} {
		if err := p.Material.covers("start", t); err != nil {
			return lowest, highest, err
		}
	}
	for _, s := range p.Segments {
		if !(s.ForS > 0) || math.IsInf(s.ForS, 0) {
			return lowest, highest, fmt.Errorf("a segment of %g s", s.ForS)
		}
		for _, f := range p.Mesh.faces(s.Surroundings) {
			if err := f.check(f.name, p.Material); err != nil {
				return lowest, highest, err
			}
			if f.WPerM2K > 0 {
				lowest, highest = min(lowest, f.AmbientC), max(highest, f.AmbientC)
			}
		}
	}
	if highest-lowest < 1 { // the faces are tabulated over this range
		from, to := p.Material.RangeC()
		lowest, highest = max(lowest-0.5, from), min(highest+0.5, to)
	}
	for _, l := range p.Levels {
		if l.Of < 0 || l.Of >= quantities {
			return lowest, highest, fmt.Errorf("level of an unknown %v", l.Of)
		}
		if err := p.Material.covers("level", l.AtC); err != nil {
			return lowest, highest, err
		}
	}
	for i, t := range p.FramesS {
		if !(t >= 0) || i > 0 && t < p.FramesS[i-1] {
			return lowest, highest, fmt.Errorf("frame %d at %g s: times must rise from 0", i, t)
		}
	}
	if p.Stirring.ByEdge {
		return lowest, highest, p.Material.covers("edge", p.Stirring.EdgeC)
	}
	return lowest, highest, nil
}

type namedFace struct {
	name string
	Face
}

// faces lists the faces that a body of this shape has.
func (m Mesh) faces(s Surroundings) []namedFace {
	var faces []namedFace
	if !m.sideless {
		faces = append(faces, namedFace{"side", s.Side})
	}
	if m.layer != nil {
		faces = append(faces, namedFace{"top", s.Top}, namedFace{"bottom", s.Bottom})
	}
	return faces
}
