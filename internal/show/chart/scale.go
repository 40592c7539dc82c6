package chart

import (
	"math"

	"ripplewright/internal/show/say"
)

// A Scale maps values from Min..Max onto positions Lo..Hi in drawing units.
// Lo may lie beyond Hi, as it does on an upward axis.
type Scale struct {
	Min, Max float64
	Lo, Hi   float64
	Log      bool // both limits must be above 0
}

// Pos returns the position of v; beyond the limits it goes on past the ends.
// It is NaN for an unknown v, and for v ≤ 0 on a logarithmic scale.
func (s Scale) Pos(v float64) float64 {
	if s.Log {
		if !(v > 0) {
			return math.NaN()
		}
		return s.Lo + (s.Hi-s.Lo)*math.Log(v/s.Min)/math.Log(s.Max/s.Min)
	}
	return s.Lo + (s.Hi-s.Lo)*(v-s.Min)/(s.Max-s.Min)
}

// Value is the inverse of Pos.
func (s Scale) Value(pos float64) float64 {
	f := (pos - s.Lo) / (s.Hi - s.Lo)
	if s.Log {
		return s.Min * math.Pow(s.Max/s.Min, f)
	}
	return s.Min + f*(s.Max-s.Min)
}

// A Tick is a labelled place on an axis.
type Tick struct {
	Value float64
	Label string
	Minor bool // a short line without a label
}

// Ticks returns about n round values within min..max, from 2 to n+4 of them:
// steps of 1, 2 or 5 times a power of ten. It returns nil when the limits are not finite
// or not in order, or n is not positive.
func Ticks(reads say.Style, min, max float64, n int) []Tick {
	span := max - min
	if !(span > 0) || math.IsInf(span, 0) || n <= 0 || span < 1e-300 {
		return nil
	}
	if math.Max(math.Abs(min), math.Abs(max))/span > 1e9 {
		return nil // too close together, so far from zero, to be told apart
	}
	step := roundStep(span / float64(n))
	for math.Floor(max/step+1e-9)-math.Ceil(min/step-1e-9) < 1 {
		step = roundStep(step * .39) // the next finer: a lone tick tells no scale
	}
	places := 0
	if step < 1 {
		places = int(math.Ceil(-math.Log10(step) - 1e-9))
	}
	var ticks []Tick
	for k := math.Ceil(min/step - 1e-9); k*step <= max+step*1e-9; k++ {
		ticks = append(ticks, Tick{Value: k * step, Label: reads.Number(k*step, places)})
	}
	return ticks
}

// DegreeTicks are Ticks of temperatures, °C, that are round in the scale that the maker
// reads, as their labels tell.
func DegreeTicks(reads say.Style, minC, maxC float64, n int) []Tick {
	zero := reads.Degrees(0)
	ticks := Ticks(reads, reads.Degrees(minC), reads.Degrees(maxC), n)
	for i := range ticks {
		ticks[i].Value = (ticks[i].Value - zero) / (reads.Degrees(1) - zero)
	}
	return ticks
}

// roundStep is the least of 1, 2 and 5 times a power of ten that is not below raw.
func roundStep(raw float64) float64 {
	power := math.Pow(10, math.Floor(math.Log10(raw)))
	for _, m := range []float64{1, 2, 5} {
		if m*power >= raw*.999999 {
			return m * power
		}
	}
	return 10 * power
}

// LogTicks returns the powers of ten within min..max, labelled, and their 2 and
// 5 (labelled when fewer than three powers would be) and the other multiples as
// minor ticks. It returns nil unless 0 < min < max.
func LogTicks(reads say.Style, min, max float64) []Tick {
	if !(min > 0 && max > min) || math.IsInf(max, 0) {
		return nil
	}
	lo, hi := int(math.Floor(math.Log10(min))), int(math.Ceil(math.Log10(max)))
	few := math.Log10(max/min) < 3
	var ticks []Tick
	for e := lo; e <= hi; e++ {
		for m := 1.0; m < 10; m++ {
			v := m * math.Pow(10, float64(e))
			if v < min*(1-1e-9) || v > max*(1+1e-9) {
				continue
			}
			t := Tick{Value: v, Minor: m != 1 && !(few && (m == 2 || m == 5))}
			if !t.Minor {
				places := 0
				if e < 0 {
					places = -e
				}
				t.Label = reads.Number(v, places)
			}
			ticks = append(ticks, t)
		}
	}
	return ticks
}

// extent widens lo..hi to hold every finite v (and, for a log axis, positive v).
func extent(lo, hi float64, log bool, vs []float64) (float64, float64) {
	for _, v := range vs {
		if math.IsNaN(v) || math.IsInf(v, 0) || log && v <= 0 {
			continue
		}
		lo, hi = math.Min(lo, v), math.Max(hi, v)
	}
	return lo, hi
}
