package photo

import "math"

// A shade is light that no polynomial follows, as a hand's shadow: the logarithm of its
// multiplier at the nodes of a lattice.
type shade [latticeCells + 1][latticeCells + 1]float64

// shading is how a shade is found: by turns, ever finer and ever surer. reach is over
// which part of the cut light is even, as the standard deviation of a bell, of half its
// side; loose how far a pixel's light may be off that of its phase, in its logarithm.
var shading = [...]struct{ reach, loose float64 }{
	{0.8, 0.25}, {0.6, 0.2}, {0.45, 0.16}, {0.35, 0.13}, {0.28, 0.1}, {0.24, 0.08}, {0.2, 0.07}, {0.2, 0.06}, {0.2, 0.06},
}

const (
	hueLoose  = 0.3 // of the way between the phases, that a pixel's hue may be off its phase's
	farthest  = 9.0 // squared standard deviations beyond which a pixel tells nothing
	evenLight = 2.0 // pixels' worth of even light at each node, where nothing is told
)

// shaded finds the light that is left once the polynomial's is taken out. A pixel is of
// that phase whose colour it has under some light that is near the one about it: by its
// hue, which a shadow leaves, and its brightness, which neighbours share.
func (p *phases) shaded(all []sampled) {
	plain := *p
	p.shade = &shade{}
	way := p.foam.less(p.dense).size()
	var spare []float64
	for _, turn := range shading {
		var told, weight shade
		var colours [2]gathered
		for _, q := range all {
			spare = terms(p.degree, q.x, q.y, spare)
			c := q.c.times(math.Exp(-p.lit(spare) - p.shade.at(q.x, q.y)))
			var off, cost [2]float64
			for k, ref := range [...]lab{p.dense, p.foam} {
				s := c.dot(ref) / ref.dot(ref)
				if !(s > 0) {
					cost[k] = math.Inf(1)
					continue
				}
				off[k] = math.Log(s)
				hue := c.times(1/s).less(ref).size() / (hueLoose * way)
				cost[k] = off[k]*off[k]/(turn.loose*turn.loose) + hue*hue
			}
			if math.Min(cost[0], cost[1]) > farthest {
				continue
			}
			share := 1 / (1 + math.Exp((cost[1]-cost[0])/2)) // that it is foam
			w := [2]float64{1 - share, share}
			i, j := int((q.x+1)/2*latticeCells+0.5), int((q.y+1)/2*latticeCells+0.5)
			for k := range w {
				told[j][i] += w[k] * off[k]
				weight[j][i] += w[k]
				if w[k] > 0.9 {
					colours[k].add(c, w[k])
				}
			}
		}
		told.spread(turn.reach)
		weight.spread(turn.reach)
		for j := range told {
			for i := range told[j] {
				p.shade[j][i] += told[j][i] / (weight[j][i] + evenLight/float64(latticeCells))
			}
		}
		colours[0].mean(&p.dense)
		colours[1].mean(&p.foam)
	}
	if p.shade.deep() < shallow { // nor are the colours those that it found
		trace := *p
		*p = plain
		p.trace = &trace
	}
}

// shallow is a shade that may as well come of filaments too fine for the picture, which
// look like a phase in the dark: on drawn pictures without a shadow it is mostly less, on
// those with two fifths of the light taken from a corner more.
const shallow = 0.085

// deep is how far a shade reaches from its lightest to its darkest.
func (s *shade) deep() float64 {
	least, most := math.Inf(1), math.Inf(-1)
	for j := range s {
		for i := range s[j] {
			least, most = math.Min(least, s[j][i]), math.Max(most, s[j][i])
		}
	}
	return most - least
}

// spread evens a lattice out by a bell of so much of half its side.
func (s *shade) spread(reach float64) {
	sigma := reach / 2 * latticeCells
	var bell [latticeCells + 1]float64
	for d := range bell {
		bell[d] = math.Exp(-float64(d*d) / (2 * sigma * sigma))
	}
	var along, out shade
	for j := range s {
		for i := range s[j] {
			for k := range s[j] {
				along[j][i] += bell[max(i-k, k-i)] * s[j][k]
			}
		}
	}
	for j := range s {
		for k := range s {
			f := bell[max(j-k, k-j)]
			for i := range s[j] {
				out[j][i] += f * along[k][i]
			}
		}
	}
	*s = out
}

// at returns the logarithm at a place, −1 to 1, bilinear between nodes.
func (s *shade) at(x, y float64) float64 { return (*lattice)(s).at(x, y) }
