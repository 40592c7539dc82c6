package heat

import "ripplewright/internal/matter/num"

// reading is a followed enthalpy and its rate, J/m³ and W/m³. Of the Wall it is
// the temperature itself, °C, with no rate: a surface has no enthalpy, and its
// temperature does not jump where it begins to melt.
type reading struct{ u, rate float64 }

// read takes the followed quantities from the present field.
func (r *run) read() (q [quantities]reading) {
	coldest, hottest := extremes(r.u)
	q[Hottest] = reading{r.u[hottest], r.rate[hottest]}
	q[Coldest] = reading{r.u[coldest], r.rate[coldest]}
	q[Wall] = reading{u: r.beside.surface(r.phi[r.wall], r.mat.temperature(r.u[r.wall]))}
	// The mean's rate is known from the faces.
	q[Mean] = reading{r.weighted(Mean, r.u), r.flow / r.volume}
	q[Ring] = reading{r.weighted(Ring, r.u), r.weighted(Ring, r.rate)}
	return q
}

// weighted is the mean of x over the body or its ring, in two sums so that one
// addition need not wait for the other.
func (r *run) weighted(q Quantity, x []float64) float64 {
	weights := r.weights[q]
	nr := r.mesh.nr
	first := r.first[q]
	var a, b float64
	for o := 0; o < len(x); o += nr {
		row, w := x[o+first:o+nr], weights[o+first:o+nr]
		w = w[:len(row)]
		i := 0
		for ; i < len(row)-1; i += 2 {
			a += w[i] * row[i]
			b += w[i+1] * row[i+1]
		}
		if i < len(row) {
			a += w[i] * row[i]
		}
	}
	return a + b
}

// extremes returns the cells of the least and the greatest enthalpy.
func extremes(u []float64) (least, greatest int) {
	lo, hi := u[0], u[0]
	for i, v := range u {
		if v < lo {
			lo, least = v, i
		}
		if v > hi {
			hi, greatest = v, i
		}
	}
	return least, greatest
}

// between reads quantity q at the fraction f of the step of h seconds. What one
// cell shows is read from the parabola through the ends of this step and of the
// one before: its rate carries what the step has not yet damped, too little to
// move the cell and enough to bend a cubic.
func (r *run) between(q Quantity, f, h float64) float64 {
	a, b := r.then[q], r.now[q]
	if r.priorStep == 0 && q == Wall {
		return a.u + f*(b.u-a.u)
	}
	if r.priorStep == 0 || q == Mean || q == Ring {
		return num.Hermite(f, h, a.u, a.rate, b.u, b.rate)
	}
	rise := (b.u - a.u) / h
	bend := (rise - (a.u-r.prior[q].u)/r.priorStep) / (h + r.priorStep)
	return a.u + f*h*(rise-bend*(1-f)*h)
}

// cross returns the fraction of the step at which q passes u, if it does.
func (r *run) cross(q Quantity, u, h float64) (float64, bool) {
	before, after := r.then[q].u-u, r.now[q].u-u
	if before == 0 || before*after > 0 {
		return 0, before == 0
	}
	f, err := num.Root(func(f float64) float64 { return r.between(q, f, h) - u }, 0, 1, 1e-12)
	return f, err == nil
}

// result closes the accounts.
func (r *run) result() Result {
	r.out.TimeS = r.time
	r.out.FieldJPerM3 = append([]float64(nil), r.u...)
	now, _ := r.energy()
	r.out.Balance = Balance{InJ: r.heat, StoredJ: now - r.stored, ContentJ: r.content}
	return r.out
}
