package learn

import (
	"math"

	"ripplewright/internal/work/batch"
)

// Belief is what is known of one factor, by its mean and standard deviation, in its
// unit or of its logarithm.
type Belief struct{ Mean, SD float64 }

// Band returns where it lies in 8 of 10 kitchens of whom as much is known, in the
// factor's own unit: a ratio for one.
func (b Belief) Band(f Factor) (low, value, high float64) {
	low, value, high = b.Mean-eightIn10*b.SD, b.Mean, b.Mean+eightIn10*b.SD
	if f.IsRatio() {
		return math.Exp(low), math.Exp(value), math.Exp(high)
	}
	return low, value, high
}

// Posterior is what batches teach.
type Posterior struct {
	Batches      int
	Factors      [NumFactors]Belief
	Cov          [NumFactors][NumFactors]float64
	Observations []Observation
	Off          [NumFactors]bool // not learnt: its belief is the prior's

	before [NumFactors]float64 // standard deviations before any batch
}

// Prior returns what is known before any batch.
func Prior() Posterior { return believed(prior) }

func believed(before [NumFactors]float64) Posterior {
	p := Posterior{before: before}
	for f, sd := range before {
		p.Factors[f] = Belief{0, sd}
		p.Cov[f][f] = sd * sd
	}
	return p
}

// How likely a slip is, and how many times as large as an honest error it is.
// Errors as a mixture of two normal spreads: Box & Tiao 1968, Biometrika 55:119; how
// much of it and how wide is ours.
const slipShare, slipTimes = 0.05, 8.0

// passes bounds the rounds in which slips are told from measurements; they settle in
// some ten.
const passes = 60

// From returns what a notebook teaches. Factors that it names in Off stay as before.
//
// The factors' spread before is normal and the measurements are linear in them, so
// each measurement moves the means and the spread as the conjugate formula has it
// (the update of a Kalman filter, one number at a time):
//
//	k = Σh/(hᵀΣh + s²),  μ += k(y − hᵀμ),  Σ −= k(hᵀΣ)
//
// A measurement that all others together make unlikely counts for as much as the
// chance that it is no slip leaves: s² grows to s²/(c + (1 − c)/slipTimes²). Our own
// few lines and no library: ten factors need no more.
func From(n *batch.Notebook) Posterior { return from(n, prior) }

func from(n *batch.Notebook, before [NumFactors]float64) Posterior {
	var all []Observation
	for i := range n.Batches {
		all = append(all, Observe(i, &n.Batches[i])...)
	}
	var off [NumFactors]bool
	for _, code := range n.Off {
		if f, ok := Named(code); ok {
			off[f] = true
		}
	}
	p := settle(all, off, before)
	p.Batches = len(n.Batches)
	return p
}

// settle finds slips and posterior together.
func settle(all []Observation, off [NumFactors]bool, before [NumFactors]float64) Posterior {
	used := make([]Observation, 0, len(all))
	for _, o := range all {
		if !off[o.Of] {
			for f := range off {
				if off[f] { // of what is not learnt a measurement knows no more than before
					o.ErrorSD = math.Hypot(o.ErrorSD, o.Along[f]*before[f])
					o.Along[f] = 0
				}
			}
			o.Chance = 1 - slipShare
			used = append(used, o)
		}
	}
	var p Posterior
	for range passes {
		p = believed(before)
		for i := range used {
			p.take(&used[i])
		}
		moved := 0.0
		for i := range used {
			c := p.chance(&used[i])
			moved = math.Max(moved, math.Abs(c-used[i].Chance))
			used[i].Chance = (used[i].Chance + c) / 2
		}
		if moved < 1e-6 {
			break
		}
	}
	for f := range p.Factors {
		p.Factors[f].SD = math.Sqrt(p.Cov[f][f])
	}
	p.Observations, p.Off = used, off
	return p
}

// variance is that of an observation's error as it counts.
func (o *Observation) variance() float64 {
	return o.ErrorSD * o.ErrorSD / (o.Chance + (1-o.Chance)/(slipTimes*slipTimes))
}

// expects returns what the beliefs expect an observation to say, and its variance:
// m = h·μ, v = hᵀΣh.
func (p *Posterior) expects(o *Observation) (mean, variance float64, along [NumFactors]float64) {
	for f, h := range o.Along {
		if h == 0 {
			continue
		}
		mean += h * p.Factors[f].Mean
		for g := range along {
			along[g] += h * p.Cov[f][g]
		}
	}
	for f, h := range o.Along {
		variance += h * along[f]
	}
	return mean, variance, along
}

// take moves the beliefs by one observation y of error variance s²: the linear update
// of Kalman 1960, J. Basic Eng. 82:35 (equations from memory).
//
//	μ ← μ + Σh (y − m)/(v + s²),  Σ ← Σ − Σh hᵀΣ/(v + s²)
func (p *Posterior) take(o *Observation) {
	mean, v, along := p.expects(o)
	total := v + o.variance()
	for f := range p.Factors {
		p.Factors[f].Mean += along[f] / total * (o.Says - mean)
		for g := range along {
			p.Cov[f][g] -= along[f] * along[g] / total
		}
	}
}

// chance returns how likely an observation is no slip, by what the others expect of
// it: the beliefs without it, taken out by the formula that put it in. By Bayes, of two
// normal errors, one slipTimes as wide:
//
//	P(slip)/P(none) = share/(1 − share) · N(y; m, v + (k s)²)/N(y; m, v + s²)
func (p *Posterior) chance(o *Observation) float64 {
	mean, v, _ := p.expects(o)
	s2 := o.variance()
	left := 1 - v/s2
	if left < 1e-9 {
		left = 1e-9
	}
	mean, v = o.Says-(o.Says-mean)/left, v/left
	miss := (o.Says - mean) * (o.Says - mean)
	like := func(variance float64) float64 { return -0.5 * (miss/variance + math.Log(variance)) }
	good := like(v + o.ErrorSD*o.ErrorSD)
	bad := like(v + o.ErrorSD*o.ErrorSD*slipTimes*slipTimes)
	odds := math.Log(slipShare/(1-slipShare)) + bad - good
	return 1 / (1 + math.Exp(math.Min(odds, 700)))
}

// Slips returns the measurements that are named rather than believed.
func (p *Posterior) Slips() []Observation {
	var out []Observation
	for _, o := range p.Observations {
		if o.Slip() {
			out = append(out, o)
		}
	}
	return out
}

// Narrower returns how wide a factor's band is, of what it was before any batch.
func (p *Posterior) Narrower(f Factor) float64 { return p.Factors[f].SD / p.before[f] }

// Counts returns how many measurements are about a factor, slips among them.
func (p *Posterior) Counts(f Factor) int {
	n := 0
	for i := range p.Observations {
		if p.Observations[i].Of == f {
			n++
		}
	}
	return n
}

// Learnt reports whether a factor has been measured.
func (p *Posterior) Learnt(f Factor) bool { return p.Narrower(f) < 1-1e-9 }
