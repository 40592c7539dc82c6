package ripple

// rng is splitmix64 (G. L. Steele, D. Lea and C. H. Flood, Fast Splittable
// Pseudorandom Number Generators, OOPSLA 2014). It is our own so that no release
// of the standard library can change a maker's picture.
type rng uint64

// stream returns a generator for purpose p of seed, so that drawing one number
// more for the layout does not move a stroke.
func stream(seed uint64, p uint64) *rng {
	r := rng(seed ^ (p+1)*0xd1342543de82ef95)
	r.next()
	return &r
}

func (r *rng) next() uint64 {
	*r += 0x9e3779b97f4a7c15
	z := uint64(*r)
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}

// unit returns a number in [0, 1).
func (r *rng) unit() float64 { return float64(r.next()>>11) / (1 << 53) }

// between returns a number in [lo, hi).
func (r *rng) between(lo, hi float64) float64 { return lo + (hi-lo)*r.unit() }
