package ripple

import (
	"fmt"
	"math"
	"slices"
)

// Kind is a motion of the spoon handle.
type Kind uint8

// The kinds. What each does to the two cuts:
const (
	Plunge      Kind = iota // down and up: a lane in the side cut, a swirl from above
	Fold                    // turns the tub's content over: one cell, or a broad push from above
	FigureEight             // two loops: a pair of opposite twists in both cuts
	Drag                    // a straight pull: a lane in both cuts
)

var kindNames = [...]string{"plunge", "fold", "eight", "drag"}

// String returns the kind's name in a design file.
func (k Kind) String() string {
	if int(k) < len(kindNames) {
		return kindNames[k]
	}
	return fmt.Sprintf("Kind(%d)", uint8(k))
}

// ParseKind returns the kind that String names.
func ParseKind(name string) (Kind, error) {
	if i := slices.Index(kindNames[:], name); i >= 0 {
		return Kind(i), nil
	}
	return 0, fmt.Errorf("ripple: no stroke is called %q", name)
}

// Stroke is one motion of the spoon handle. Where it falls follows from the seed
// and from its place in the order.
type Stroke struct {
	Kind Kind
	// DepthMM is how deep the handle goes, two of its widths at least; 0 or more than
	// the fill: to the bottom. Nothing to the view from above.
	DepthMM float64
	WidthMM float64 // of the handle, MinWidthMM to MaxWidthMM; 0: 10
}

// Our own choices; none is measured.
const (
	defaultWidthMM = 10.0
	// carried is the share of the handle's travel that the fluid beside it
	// follows, since it slips: 35 mm in the tub of the thickness table of the side
	// cut, as its strokes are. From above, where the walls hold the return flow
	// closer, a quarter.
	carried    = 0.42
	carriedTop = 0.25
	// flatTub limits how far a level stroke carries, in heights of the filling: in a
	// flatter tub the return goes round the handle, out of the cut.
	flatTub = 2.0
	// spreadOf is the length s of a stroke's stream function in handle widths:
	// half of what moves along with the handle lies within 0.58 s of its middle.
	// With it ribbons thin as that table has them.
	spreadOf = 0.9
	// swirlAngle is the twist of the thickness table of the view from above, rad.
	swirlAngle = 2.2
	// loopAngle is the twist of each loop of a figure eight, rad.
	loopAngle = 1.5
	// swirlReach is the radius of a swirl in handle widths.
	swirlReach = 4.25
	// swirlPlace is where swirls sit, in half sides from the middle.
	swirlPlace = 0.42
)

// goldenAngle spreads places round the middle so that no two fall together, rad.
var goldenAngle = math.Pi * (3 - math.Sqrt(5))

// goldenStep spreads places between two walls likewise.
const goldenStep = 0.6180339887498949

// Mixed is the motion of Sequence that takes a plunge, a drag, a plunge and a fold
// in turn.
const Mixed = "mixed"

// Sequence returns n strokes of one motion, the name of a Kind or Mixed, of the
// given depth and width in mm; see Stroke. The first strokes of a longer sequence
// are the shorter one.
func Sequence(motion string, n int, depthMM, widthMM float64) ([]Stroke, error) {
	kinds := []Kind{Plunge, Drag, Plunge, Fold}
	if motion != Mixed {
		k, err := ParseKind(motion)
		if err != nil {
			return nil, err
		}
		kinds = []Kind{k}
	}
	if n < 0 || n > MaxStrokes {
		return nil, &FieldError{"Strokes", float64(n), fmt.Sprintf("0 to %d strokes", MaxStrokes)}
	}
	strokes := make([]Stroke, n)
	for i := range strokes {
		strokes[i] = Stroke{kinds[i%len(kinds)], depthMM, widthMM}
	}
	return strokes, nil
}

// motion is a stroke in place: either twists or a flow.
type motion struct {
	twists []Twist // in order
	flow   flow
}

// place puts stroke number i of the order into the cut.
func (k Stroke) place(o outline, v View, seed uint64, i int) motion {
	width := k.WidthMM
	if width == 0 {
		width = defaultWidthMM
	}
	r := stream(seed, 1000+uint64(i))
	start := stream(seed, 1).unit()
	// Spread over the strokes, and shaken a little.
	spread := math.Mod(start+float64(i)*goldenStep, 1)
	spread = math.Min(math.Max(spread+r.between(-0.06, 0.06), 0), 1)
	sign := 1.0
	if i%2 == 1 {
		sign = -1
	}
	if v == Top {
		return k.placeTop(o, width, spread, sign, 2*math.Pi*start, i, r)
	}

	depth := k.DepthMM
	if depth == 0 || depth > o.h {
		depth = o.h
	}
	depth = math.Min(math.Max(depth, 2*width), o.h)
	floor := 0.0 // only a stroke that stays clear of the bottom has one
	if depth < o.h-width {
		floor = o.h - depth
	}
	switch k.Kind {
	case Plunge:
		at := o.w * (0.14 + 0.72*spread)
		return motion{flow: newLane(o.w, o.h, at, spreadOf*width, floor, false, sign*carried*depth)}
	case Drag:
		at := o.h - depth*(0.14+0.72*spread)
		return motion{flow: newLane(o.h, o.w, at, spreadOf*width, 0, true, sign*carried*math.Min(o.w, flatTub*o.h))}
	case Fold:
		return motion{flow: newTurnover(o, spreadOf*width, floor, carried*math.Max(depth, math.Min(o.w/2, flatTub*o.h)))}
	default: // FigureEight
		x, y := o.w*(0.38+0.24*spread), o.h-depth*r.between(0.35, 0.65)
		apart := o.w * r.between(0.17, 0.25)
		tilt := o.h * r.between(-0.08, 0.08)
		return motion{twists: []Twist{
			swirl(o, x-apart, y-tilt, width, loopAngle),
			swirl(o, x+apart, y+tilt, width, -loopAngle),
		}}
	}
}

func (k Stroke) placeTop(o outline, width, spread, sign, phase float64, i int, r *rng) motion {
	turn := phase + float64(i)*goldenAngle
	sin, cos := math.Sincos(turn)
	half := math.Min(o.w, o.h) / 2
	switch k.Kind {
	case Plunge:
		out := swirlPlace * r.between(0.9, 1.1)
		if i%4 == 3 {
			out = 0
		}
		return motion{twists: []Twist{swirl(o, o.w/2*(1+out*cos), o.h/2*(1+out*sin), width, sign*swirlAngle)}}
	case FigureEight:
		out := swirlPlace * r.between(0.9, 1.1)
		return motion{twists: []Twist{
			swirl(o, o.w/2*(1+out*cos), o.h/2*(1+out*sin), width, loopAngle),
			swirl(o, o.w/2*(1-out*cos), o.h/2*(1-out*sin), width, -loopAngle),
		}}
	case Drag:
		return motion{flow: newChord(o, turn, half*(spread-0.5), spreadOf*width, sign*carriedTop*2*half)}
	default: // Fold
		return motion{flow: newChord(o, turn, half*0.3*(spread-0.5), half/2, sign*carriedTop*2*half)}
	}
}

// swirl is a twist that reaches swirlReach widths, or to the nearest wall.
func swirl(o outline, x, y, width, angle float64) Twist {
	return Twist{x, y, math.Min(swirlReach*width, o.depth(x, y)), angle}
}
