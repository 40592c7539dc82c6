package num

// Hermite returns the cubic that has values y0, y1 and slopes s0, s1 at the
// ends of an interval of length h, at the fraction t (0 to 1) of it.
func Hermite(t, h, y0, s0, y1, s1 float64) float64 {
	r := 1 - t
	return y0 + t*t*(3-2*t)*(y1-y0) + h*t*r*(r*s0-t*s1)
}
