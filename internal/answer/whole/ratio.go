package whole

import (
	"math"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/work/design"
)

// byRatio rescales the custard by a and the foam by b so that together they use
// n yolks and n whites, and moves the ratio to what that makes.
func (s *search) byRatio(n int) (Way, Why, error) {
	a, b, ok := perEgg(s.r.Eggs)
	if !ok {
		return Way{}, NotPaired, nil
	}
	dense, foam := &s.r.Dense.Portion, &s.r.Foam.Portion
	one := a*dense.MadeML + b*foam.MadeML // mL that one egg makes
	if n == 0 {
		n = max(1, int(math.Round(s.r.Blend.VolumeML/one)))
	}
	a, b = a*float64(n), b*float64(n)
	d := s.written(func(l *model.BatchLine) float64 {
		if l.Part == design.DensePart {
			return a
		}
		return b
	}, b)
	r, err := s.m.Evaluate(d)
	if err != nil {
		return Way{}, Refused, err
	}
	made := r.Dense.Portion.MadeML + r.Foam.Portion.MadeML
	if r.Dense.Portion.MadeML > 0 && r.Foam.Portion.MadeML > 0 {
		d.Blend.FoamVolumePercent = 100 * r.Foam.Portion.MadeML / made
	}
	if d.Tubs, err = tubsFor(d.Tubs, made); err != nil {
		return Way{}, Refused, err
	}
	if r, err = s.m.Evaluate(d); err != nil {
		return Way{}, Refused, err
	}
	return Way{Eggs: n, Design: d, After: r}, Fits, nil
}

// perEgg returns the factors on custard and foam with which the batch would use
// one yolk and one white.
func perEgg(e model.Eggs) (a, b float64, ok bool) {
	y1, y2, w1, w2 := e.Dense.Yolks, e.Foam.Yolks, e.Dense.Whites, e.Foam.Whites
	det := y1*w2 - y2*w1
	if math.Abs(det) > same*(y1*w2+y2*w1) {
		a, b = (w2-y2)/det, (y1-w1)/det
		return a, b, a > 0 && b > 0
	}
	// Yolks and whites come at one proportion in both phases: as many, or never.
	if math.Abs(e.Yolks-e.Whites) > same*e.Yolks {
		return 0, 0, false
	}
	return 1 / e.Yolks, 1 / e.Yolks, true
}

// A tub may be this much fuller than the maker has it, in points, but no fuller
// than fullest, before one more is taken.
const (
	fuller  = 1
	fullest = 98
)

// tubsFor returns the tubs that hold ml, all filled alike.
func tubsFor(t design.Tubs, ml float64) (design.Tubs, error) {
	most := math.Max(t.FillPercent, math.Min(fullest, t.FillPercent+fuller))
	t.Count = max(1, int(math.Ceil(ml/(t.VolumeML*most/100)-same)))
	count, _ := design.FieldAt("tubs.count")
	if wrong := count.Check(&design.Design{Tubs: t}); wrong != nil {
		return t, flaw.At("tubs.count", wrong)
	}
	fill, _ := design.FieldAt("tubs.fill_percent")
	// What is less than the least fill leaves the tub short.
	t.FillPercent = math.Max(fill.Min, math.Min(fill.Max, 100*ml/(float64(t.Count)*t.VolumeML)))
	return t, nil
}
