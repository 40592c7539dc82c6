package balance

import (
	"context"
	"math"
	"sort"
)

// throw moves all levers at once, from several points, for what no few of them
// reach.
func (n *mender) throw(ctx context.Context) []float64 {
	free := n.loose()
	best, bestSum := []float64(nil), math.Inf(1)
	for _, from := range n.starts(free, 2) {
		if ctx.Err() != nil {
			break
		}
		if x, sum := n.descend(ctx, from, free, 15); sum < bestSum {
			best, bestSum = x, sum
		}
	}
	return best
}

// loose lists the levers that may take any value.
func (p *problem) loose() []int {
	var free []int
	for i := range p.levers {
		if p.levers[i].Whole == 0 {
			free = append(free, i)
		}
	}
	return free
}

// starts returns p's own point and the n best of a scatter over the ranges of
// the free levers.
func (p *problem) starts(free []int, n int) [][]float64 {
	type start struct {
		x   []float64
		sum float64
	}
	var all []start
	for k := 1; k <= 16*n; k++ {
		x := append([]float64(nil), p.at...)
		for j, i := range free {
			l := &p.levers[i]
			x[i] = l.Low + halton(k, j)*(l.High-l.Low)
			x[i] = p.at[i] + 0.6*(x[i]-p.at[i])
		}
		if _, sum, ok := p.gaps(x); ok {
			all = append(all, start{x, sum})
		}
	}
	sort.SliceStable(all, func(i, j int) bool { return all[i].sum < all[j].sum })
	out := [][]float64{append([]float64(nil), p.at...)}
	for _, s := range all[:min(n, len(all))] {
		out = append(out, s.x)
	}
	return out
}

// halton is the k-th number of the j-th of the sequences that scatter evenly
// (Halton 1960, Numerische Mathematik 2:84).
func halton(k, j int) float64 {
	base := primes[j%len(primes)]
	f, v := 1.0, 0.0
	for k += j / len(primes); k > 0; k /= base {
		f /= float64(base)
		v += f * float64(k%base)
	}
	return v
}

var primes = [...]int{2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37, 41, 43, 47, 53, 59, 61, 67, 71}
