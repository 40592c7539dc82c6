package coldview

import (
	"math"
	"slices"
	"time"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/show/chart"
	"ripplewright/internal/show/say"
)

// Section returns the run at one minute as rows from the top of the tub down, °C,
// on the corners of the cells: the axis, the wall, floor and top are seen. It uses
// dst if that has the shape. Between pictures it goes by line, but never across a
// stir, after which the picture is another.
func Section(r *cold.Run, stirs []cold.Stir, minute float64, dst [][]float64) [][]float64 {
	a, b, f := between(r, stirs, minute)
	nr, nz := r.Outward, r.Upward
	cell := func(i, j int) float64 {
		at := j*nr + i
		return a.C[at] + f*(b.C[at]-a.C[at])
	}
	if len(dst) != nz+1 || len(dst[0]) != nr+1 {
		dst = make([][]float64, nz+1)
		for j := range dst {
			dst[j] = make([]float64, nr+1)
		}
	}
	for j := range dst {
		up := nz - j
		for i := range dst[j] {
			at := func(row int) float64 {
				if i == 0 {
					return cell(0, row) // level across the axis
				}
				return edge(i, nr, func(c int) float64 { return cell(c, row) })
			}
			dst[j][i] = edge(up, nz, at)
		}
	}
	return dst
}

// between returns the pictures on both sides of a minute and how far it is from
// the first to the second, 0 to 1.
func between(r *cold.Run, stirs []cold.Stir, minute float64) (a, b cold.Frame, f float64) {
	k := 0
	for k+1 < len(r.Frames) && r.Frames[k+1].AtMinutes <= minute {
		k++
	}
	a = r.Frames[k]
	if k+1 == len(r.Frames) {
		return a, a, 0
	}
	b = r.Frames[k+1]
	f = math.Max(0, (minute-a.AtMinutes)/(b.AtMinutes-a.AtMinutes))
	for _, s := range stirs {
		// A picture at the minute of a stir is the one before it.
		if s.AtMinutes >= a.AtMinutes && s.AtMinutes < b.AtMinutes {
			if f = 1; minute <= s.AtMinutes {
				f = 0
			}
		}
	}
	return a, b, f
}

// edge is the value at the lower edge of cell i of n, from the cells on both
// sides of it; the first and the last go on by line.
func edge(i, n int, cell func(int) float64) float64 {
	switch i {
	case 0:
		return cell(0) + (cell(0)-cell(1))/2
	case n:
		return cell(n-1) + (cell(n-1)-cell(n-2))/2
	}
	return (cell(i-1) + cell(i)) / 2
}

// evenK is a difference that is none, K: such a tub has no isotherms.
const evenK = 0.2

// Isotherms are round temperatures within the rows: few, so that each can be
// labelled, however little the tub still differs from itself. There may be none,
// but never nil.
func Isotherms(s say.Style, rows [][]float64) []float64 {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, row := range rows {
		lo, hi = math.Min(lo, slices.Min(row)), math.Max(hi, slices.Max(row))
	}
	levels := []float64{}
	if hi-lo > evenK {
		for _, t := range chart.DegreeTicks(s, lo, hi, 6) {
			levels = append(levels, t.Value)
		}
	}
	return levels
}

// Colours returns the temperatures, °C, that the colours of a run's pictures go
// from and to. What is warmer than warmest has the last colour.
func Colours(r *cold.Run, warmest float64) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, f := range r.Frames {
		lo, hi = math.Min(lo, slices.Min(f.C)), math.Max(hi, slices.Max(f.C))
	}
	return math.Floor(lo), math.Min(math.Ceil(hi), warmest)
}

// Pictured reports whether a run can be shown in time.
func Pictured(r *cold.Run) bool { return r != nil && len(r.Frames) > 0 && len(r.Track) > 0 }

// Last returns the minute of a run's last picture.
func Last(r *cold.Run) float64 { return r.Frames[len(r.Frames)-1].AtMinutes }

// First returns the minute at which a scene is shown: a whole one, where the run
// has it, and the middle where it is not known.
func (v Scene) First() float64 {
	minute, last := v.Start, Last(v.Run)
	if !(minute >= 0) {
		minute = last / 2
	}
	return v.Within(minute)
}

// Within returns the whole minute of the run nearest to one.
func (v Scene) Within(minute float64) float64 { return math.Min(math.Round(minute), Last(v.Run)) }

// How long a run takes to play, and how often the picture changes.
const (
	playTime  = 8 * time.Second
	PlayEvery = 50 * time.Millisecond
)

// Next returns the minute that is played after one, and whether the run ends
// there.
func (v Scene) Next(minute float64) (next float64, ends bool) {
	last := Last(v.Run)
	next = math.Min(minute+last*float64(PlayEvery)/float64(playTime), last)
	return next, next >= last
}
