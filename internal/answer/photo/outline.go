package photo

import (
	"math"
	"strconv"
	"strings"

	"ripplewright/internal/form/echo"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/matter/ripple"
)

// Point is a place in a picture, pixels from its upper left corner: x to the right, y down.
type Point struct{ X, Y float64 }

// Outline is a cut in a picture. Of a cut with corners it is these, of the cut of a round
// tub seen from above four places on its rim, a quarter turn apart; in order round the
// cut, clockwise as seen, from the upper left corner or the top.
type Outline [4]Point

// ParsePoint reads "x,y".
func ParsePoint(s string) (Point, error) {
	x, y, ok := strings.Cut(strings.TrimSpace(s), ",")
	if !ok {
		return Point{}, flaw.New("%s is not x,y in pixels", echo.Quoted(s))
	}
	var p Point
	for _, c := range []struct {
		text string
		to   *float64
	}{{x, &p.X}, {y, &p.Y}} {
		v, err := strconv.ParseFloat(strings.TrimSpace(c.text), 64)
		if err != nil || math.IsNaN(v) || math.Abs(v) > MaxSide {
			return Point{}, flaw.New("%s is not x,y in pixels", echo.Quoted(s))
		}
		*c.to = v
	}
	return p, nil
}

// ParseOutline reads four places, "x,y x,y x,y x,y".
func ParseOutline(s string) (Outline, error) {
	var o Outline
	words := strings.Fields(s)
	if len(words) != len(o) {
		return o, flaw.New("%s has %d places, not the %d of an outline, as \"120,80 900,95 880,640 130,620\"", echo.Quoted(s), len(words), len(o))
	}
	for i, w := range words {
		p, err := ParsePoint(w)
		if err != nil {
			return o, err
		}
		o[i] = p
	}
	return o, nil
}

// turns returns twice the area on the left of each corner: all of one sign where the
// outline is convex.
func (o Outline) turns() (t [4]float64) {
	for i := range o {
		a, b, c := o[i], o[(i+1)%4], o[(i+2)%4]
		t[i] = (b.X-a.X)*(c.Y-b.Y) - (b.Y-a.Y)*(c.X-b.X)
	}
	return t
}

// sides returns the lengths of the sides, pixels.
func (o Outline) sides() (s [4]float64) {
	for i := range o {
		b := o[(i+1)%4]
		s[i] = math.Hypot(b.X-o[i].X, b.Y-o[i].Y)
	}
	return s
}

// leastSide is the shortest side of an outline, pixels: fewer show no ribbons.
const leastSide = 40

// mostSlant is how much longer a side may be than the one opposite: a picture taken at
// 20° is far from it.
const mostSlant = 2.5

// check returns a *Refusal for an outline that is no cut of a tub, in a picture w by h
// pixels large.
func (o Outline) check(w, h int) error {
	for _, p := range o {
		if p.X < 0 || p.Y < 0 || p.X > float64(w) || p.Y > float64(h) {
			return &Refusal{Reason: OutlineOutside, Place: p, Width: w, Height: h}
		}
	}
	t, s := o.turns(), o.sides()
	for i := range t {
		if t[i]*t[0] <= 0 {
			return refuse(OutlineCrossed)
		}
		if s[i] < leastSide {
			return refuse(OutlineSmall)
		}
		if s[i] > mostSlant*s[(i+2)%4] {
			return refuse(OutlineSlanted)
		}
		if math.Abs(t[i]) < 0.25*s[i]*s[(i+1)%4] { // a corner under 15° or over 165°
			return refuse(OutlineSlanted)
		}
	}
	return nil
}

// homography maps the unit square, v down, to the picture.
type homography struct{ a, b, c, d, e, f, g, h float64 }

// straightens returns the map from the box around the cut, as a unit square, to the
// picture. rim: the places are on the rim of a round cut, not its corners.
func (o Outline) straightens(rim bool) homography {
	p := squareTo(o)
	if !rim {
		return p
	}
	// The places are the middles of the box's sides: s = u+v−½ and r = v−u+½ along the
	// square that they make.
	return homography{
		a: p.a - p.b, b: p.a + p.b, c: p.c - p.a/2 + p.b/2,
		d: p.d - p.e, e: p.d + p.e, f: p.f - p.d/2 + p.e/2,
		g: (p.g - p.h) / (1 - p.g/2 + p.h/2), h: (p.g + p.h) / (1 - p.g/2 + p.h/2),
	}.scaled(1 - p.g/2 + p.h/2)
}

// scaled divides the first two rows by k.
func (m homography) scaled(k float64) homography {
	m.a, m.b, m.c, m.d, m.e, m.f = m.a/k, m.b/k, m.c/k, m.d/k, m.e/k, m.f/k
	return m
}

// squareTo returns the map of the unit square's corners to o's.
func squareTo(o Outline) homography {
	dx1, dx2, sx := o[1].X-o[2].X, o[3].X-o[2].X, o[0].X-o[1].X+o[2].X-o[3].X
	dy1, dy2, sy := o[1].Y-o[2].Y, o[3].Y-o[2].Y, o[0].Y-o[1].Y+o[2].Y-o[3].Y
	den := dx1*dy2 - dx2*dy1
	g, h := (sx*dy2-dx2*sy)/den, (dx1*sy-sx*dy1)/den
	return homography{
		a: o[1].X - o[0].X + g*o[1].X, b: o[3].X - o[0].X + h*o[3].X, c: o[0].X,
		d: o[1].Y - o[0].Y + g*o[1].Y, e: o[3].Y - o[0].Y + h*o[3].Y, f: o[0].Y,
		g: g, h: h,
	}
}

// at returns where u, v lies in the picture.
func (m *homography) at(u, v float64) (x, y float64) {
	w := 1 / (m.g*u + m.h*v + 1)
	return (m.a*u + m.b*v + m.c) * w, (m.d*u + m.e*v + m.f) * w
}

// back returns where a place in the picture lies in the unit square.
func (m *homography) back(x, y float64) (u, v float64) {
	// (a − gx)u + (b − hx)v = x − c, and the same of y.
	p, q, r := m.a-m.g*x, m.b-m.h*x, x-m.c
	s, t, k := m.d-m.g*y, m.e-m.h*y, y-m.f
	den := p*t - q*s
	return (r*t - q*k) / den, (p*k - r*s) / den
}

// pixelsMM returns the length that the coarsest and the finest pixel of the picture has
// on a cut of w by h mm.
func (m *homography) pixelsMM(w, h float64) (coarse, fine float64) {
	coarse, fine = 0, math.Inf(1)
	for _, u := range []float64{0, 0.5, 1} {
		for _, v := range []float64{0, 0.5, 1} {
			const step = 1e-4
			x, y := m.at(u, v)
			for _, d := range [][2]float64{{step, 0}, {0, step}, {step, step}, {step, -step}} {
				nx, ny := m.at(u+d[0], v+d[1])
				mm := math.Hypot(d[0]*w, d[1]*h) / math.Hypot(nx-x, ny-y)
				coarse, fine = math.Max(coarse, mm), math.Min(fine, mm)
			}
		}
	}
	return coarse, fine
}

// Rim reports whether an outline of that cut is four places on its rim, not its corners.
func Rim(t ripple.Tub, v ripple.View) bool {
	return v == ripple.Top && t.CornerMM >= 0.45*math.Min(t.LengthMM, t.BreadthMM)
}
