package balance

import (
	"context"
	"math"
	"math/rand"
	"slices"
	"time"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/work/design"
)

// Trial is how well a search did on designs out of a seed.
type Trial struct {
	Cases int
	Met   int // what was asked for is met, or the fault is mended in one step
	Named int // it is not, and what cannot be met is named

	Missed []Miss          // of the others
	Took   []time.Duration // of each case, the shortest first
}

// Miss is a case in which the search did not do.
type Miss struct {
	Case     int
	Family   string // of the recipe
	Fault    string // of a remedy
	Outcomes []Outcome
	Cautions []string
}

// asked are the figures of which a round trip asks four.
var asked = [...]*Quantity{
	CustardHardness, CustardSweetness, CustardSolids, CustardFat, CustardFreezes, FoamHardness, FoamSweetness, FoamSolids, FoamFreezes,
	TubSweetness, TubContrast, TubEnergy, TubSugar, TubProtein,
}

// RoundTrips asks n times for three to five figures of a good design, of each family in
// turn, from that design with its grams and its air 25 % off at most; in every other
// case of a design whose eggs are whole, from other eggs. The same seed is the same
// designs. The error is the context's.
func RoundTrips(ctx context.Context, m *model.Model, n int, seed int64) (Trial, error) {
	r := rand.New(rand.NewSource(seed))
	t := Trial{Cases: n}
	for i := range n {
		f := &families[i%len(families)]
		d, _ := f.good(m, r)
		var ask Ask
		var err error
		if i/len(families)%2 == 1 {
			ask.WholeEggs = true
			if d, err = wholeEggs(m, d); err != nil {
				return t, err
			}
		}
		if ask.Wishes, err = ownFigures(m, d, r); err != nil {
			return t, err
		}
		from := perturbed(m, d, r)
		began := time.Now()
		a, err := Balance(ctx, m, from, ask)
		if err != nil {
			return t, err
		}
		t.Took = append(t.Took, time.Since(began))
		if a.Met {
			t.Met++
		} else {
			t.Missed = append(t.Missed, Miss{Case: i, Family: f.name, Outcomes: a.Outcomes, Cautions: a.Cautions})
		}
	}
	slices.Sort(t.Took)
	return t, nil
}

// ownFigures wishes for three to five of the figures that d has.
func ownFigures(m *model.Model, d design.Design, r *rand.Rand) ([]Wish, error) {
	s, err := m.Sketch(d)
	if err != nil {
		return nil, err
	}
	var out []Wish
	for _, k := range r.Perm(len(asked))[:3+r.Intn(3)] {
		w := Wish{Of: asked[k], Weight: 1, AtC: math.NaN()}
		if w.Of.AtC && r.Intn(2) == 0 {
			w.AtC = -16 + 5*r.Float64()
		}
		w.Low = w.Value(&s)
		w.High = w.Low
		out = append(out, w)
	}
	return out, nil
}

// MendBad mends n bad designs: good ones of each family in turn with a fault or two. The
// same seed is the same designs. The error is the context's.
func MendBad(ctx context.Context, m *model.Model, n int, seed int64) (Trial, error) {
	s := &spoiler{rand.New(rand.NewSource(seed)), m.Library()}
	t := Trial{Cases: n}
	for i := 0; len(t.Took) < n; i++ {
		f, by := &families[i%len(families)], &faults[(i+i/len(families))%len(faults)]
		d, _ := f.good(m, s.Rand)
		d = by.spoil(s, d)
		if s.Intn(4) == 0 {
			d = faults[s.Intn(len(faults))].spoil(s, d)
		}
		if err := t.mend(ctx, m, d, Miss{Case: i, Family: f.name, Fault: by.name}); err != nil {
			return t, err
		}
	}
	slices.Sort(t.Took)
	return t, nil
}

// mend mends d, unless it is good, and notes what came of it.
func (t *Trial) mend(ctx context.Context, m *model.Model, d design.Design, miss Miss) error {
	x, err := m.Evaluate(d)
	if err != nil || x.Verdict.Good {
		return nil
	}
	began := time.Now()
	found := Mend(ctx, m, d, &x, Locks{})
	t.Took = append(t.Took, time.Since(began))
	switch {
	case ctx.Err() != nil:
		return ctx.Err()
	case len(found.List) > 0 && mends(m, found.List[0].Design):
		t.Met++
		return nil
	case len(found.Unmet) > 0:
		t.Named++
	}
	for _, u := range found.Unmet {
		if u.Phase == nil {
			miss.Cautions = append(miss.Cautions, u.Code)
		} else {
			miss.Cautions = append(miss.Cautions, u.Role.String())
		}
	}
	t.Missed = append(t.Missed, miss)
	return nil
}

func mends(m *model.Model, d design.Design) bool {
	r, err := m.Evaluate(d)
	return err == nil && r.Verdict.Good
}
