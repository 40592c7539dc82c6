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
	Fault    string // of a remedy
	Outcomes []Outcome
	Cautions []string
}

// asked are the figures of which a round trip asks four.
var asked = [...]*Quantity{
	CustardHardness, CustardSweetness, CustardSolids, CustardFat, CustardFreezes, FoamHardness, FoamSweetness, FoamSolids, FoamFreezes,
	TubSweetness, TubContrast, TubEnergy, TubSugar, TubProtein,
}

// RoundTrips asks n times for figures of a good design, from that design with its
// grams and its air 25 % off at most. The same seed is the same designs. The error
// is the context's.
func RoundTrips(ctx context.Context, m *model.Model, n int, seed int64) (Trial, error) {
	r := rand.New(rand.NewSource(seed))
	t := Trial{Cases: n}
	for i := range n {
		d, _ := good(m, r)
		s, err := m.Sketch(d)
		if err != nil {
			return t, err
		}
		var ask Ask
		for _, k := range r.Perm(len(asked))[:4] {
			w := Wish{Of: asked[k], Weight: 1, AtC: math.NaN()}
			if w.Of.AtC && r.Intn(2) == 0 {
				w.AtC = -16 + 5*r.Float64()
			}
			w.Low = w.Value(&s)
			w.High = w.Low
			ask.Wishes = append(ask.Wishes, w)
		}
		from := perturbed(d, r)
		began := time.Now()
		a, err := Balance(ctx, m, from, ask)
		if err != nil {
			return t, err
		}
		t.Took = append(t.Took, time.Since(began))
		if a.Met {
			t.Met++
		} else {
			t.Missed = append(t.Missed, Miss{Case: i, Outcomes: a.Outcomes, Cautions: a.Cautions})
		}
	}
	slices.Sort(t.Took)
	return t, nil
}

// MendBad mends n bad designs: good ones with a fault or two. The same seed is the
// same designs. The error is the context's.
func MendBad(ctx context.Context, m *model.Model, n int, seed int64) (Trial, error) {
	r := rand.New(rand.NewSource(seed))
	t := Trial{Cases: n}
	for i := 0; len(t.Took) < n; i++ {
		name, d := spoilt(m, r, i)
		x, err := m.Evaluate(d)
		if err != nil || x.Verdict.Good {
			continue
		}
		began := time.Now()
		found := Mend(ctx, m, d, &x, Locks{})
		t.Took = append(t.Took, time.Since(began))
		switch {
		case ctx.Err() != nil:
			return t, ctx.Err()
		case len(found.List) > 0 && mends(m, found.List[0].Design):
			t.Met++
			continue
		case len(found.Unmet) > 0:
			t.Named++
		}
		miss := Miss{Case: i, Fault: name}
		for _, u := range found.Unmet {
			if u.Phase == nil {
				miss.Cautions = append(miss.Cautions, u.Code)
			} else {
				miss.Cautions = append(miss.Cautions, u.Role.String())
			}
		}
		t.Missed = append(t.Missed, miss)
	}
	slices.Sort(t.Took)
	return t, nil
}

func mends(m *model.Model, d design.Design) bool {
	r, err := m.Evaluate(d)
	return err == nil && r.Verdict.Good
}

// spoilt returns a good design of r with the i-th fault, and in one case of four
// with another.
func spoilt(m *model.Model, r *rand.Rand, i int) (name string, d design.Design) {
	f := faults[i%len(faults)]
	d, _ = good(m, r)
	d = f.spoil(d, r)
	if r.Intn(4) == 0 {
		d = faults[r.Intn(len(faults))].spoil(d, r)
	}
	return f.name, d
}

// sound returns a design out of ordinary proportions; most are good.
func sound(r *rand.Rand) design.Design {
	between := func(low, high float64) float64 { return low + (high-low)*r.Float64() }
	d := design.New()
	d.Serving.TemperatureC = between(-15, -11)
	d.Dense.Lines = []design.Line{
		{Ingredient: "milk_whole", Grams: between(380, 520)}, {Ingredient: "cream_heavy", Grams: between(120, 220)},
		{Ingredient: "egg_yolk", Grams: between(70, 110)}, {Ingredient: sucrose, Grams: between(80, 120)},
	}
	d.Foam.Lines = []design.Line{{Ingredient: "egg_white", Grams: between(150, 190)}}
	d.Foam.Syrup.Lines = []design.Line{{Ingredient: sucrose, Grams: between(150, 190)}, {Ingredient: "water", Grams: between(45, 70)}}
	more := func(id string, low, high float64) {
		if r.Intn(2) == 0 {
			d = d.WithLineAdded(design.DensePart, design.Line{Ingredient: id, Grams: between(low, high)})
		}
	}
	more(dextrose, 15, 45)
	more("honey", 10, 40)
	more("salt", 1, 3)
	more("vanilla_extract", 3, 8)
	more("hazelnut_roasted", 20, 60)
	d.Dense.OverrunPercent, d.Foam.OverrunPercent = between(10, 30), between(200, 350)
	d.Blend.FoamVolumePercent = between(25, 55)
	d.Tubs.Count = 1 + r.Intn(4)
	return d
}

// good returns the first of r's sound designs that is good, and after how many.
func good(m *model.Model, r *rand.Rand) (design.Design, int) {
	for n := 1; ; n++ {
		if d := sound(r); mends(m, d) || n == 1000 {
			return d, n
		}
	}
}

// perturbed moves what a search may move.
func perturbed(d design.Design, r *rand.Rand) design.Design {
	by := func() float64 { return 0.75 + 0.5*r.Float64() }
	for _, p := range [...]design.Part{design.DensePart, design.SyrupPart} {
		for i, l := range d.Lines(p) {
			switch l.Ingredient {
			case sucrose, "milk_whole", "cream_heavy", dextrose:
				d = d.WithGrams(p, i, l.Grams*by())
			}
		}
	}
	d.Foam.OverrunPercent *= by()
	return d
}

// The lines of a sound design's custard that faults move.
const (
	creamLine = 1 + iota
	yolkLine
	sugarLine
)

// faults spoil a design, each in its own way and by no sensible measure.
var faults = [...]struct {
	name  string
	spoil func(d design.Design, r *rand.Rand) design.Design
}{
	{"too hard", func(d design.Design, r *rand.Rand) design.Design {
		d.Dense.OverrunPercent = 0
		return d.WithGrams(design.DensePart, sugarLine, 10+50*r.Float64())
	}},
	{"too cold", func(d design.Design, r *rand.Rand) design.Design {
		d.Serving.TemperatureC = -19 - 5*r.Float64()
		return d
	}},
	{"too soft", func(d design.Design, r *rand.Rand) design.Design {
		d.Serving.TemperatureC = -8 - 3*r.Float64()
		return d.WithGrams(design.DensePart, sugarLine, 140+80*r.Float64())
	}},
	{"too sweet", func(d design.Design, r *rand.Rand) design.Design {
		return d.WithGrams(design.DensePart, sugarLine, 170+120*r.Float64())
	}},
	{"not sweet", func(d design.Design, r *rand.Rand) design.Design {
		return d.WithGrams(design.DensePart, sugarLine, 50*r.Float64())
	}},
	{"salty", func(d design.Design, r *rand.Rand) design.Design {
		return d.WithLineAdded(design.DensePart, design.Line{Ingredient: "salt", Grams: 9 + 25*r.Float64()})
	}},
	{"airy", func(d design.Design, r *rand.Rand) design.Design {
		d.Dense.OverrunPercent = 45 + 90*r.Float64()
		return d
	}},
	{"airy foam", func(d design.Design, r *rand.Rand) design.Design {
		d.Foam.OverrunPercent = 520 + 300*r.Float64()
		return d
	}},
	{"over-filled", func(d design.Design, r *rand.Rand) design.Design {
		d.Tubs.FillPercent = 98 + 2*r.Float64()
		return d
	}},
	{"foam without ice", func(d design.Design, r *rand.Rand) design.Design {
		return d.WithGrams(design.SyrupPart, 0, 260+200*r.Float64())
	}},
	{"yolky", func(d design.Design, r *rand.Rand) design.Design {
		return d.WithGrams(design.DensePart, yolkLine, 220+150*r.Float64())
	}},
	{"fat", func(d design.Design, r *rand.Rand) design.Design {
		return d.WithGrams(design.DensePart, creamLine, 500+300*r.Float64())
	}},
	{"too much", func(d design.Design, r *rand.Rand) design.Design {
		d.Tubs.Count = 20 + r.Intn(60)
		return d
	}},
	{"yolk in the whites", func(d design.Design, r *rand.Rand) design.Design {
		return d.WithLineAdded(design.FoamPart, design.Line{Ingredient: "egg_yolk", Grams: 2 + 10*r.Float64()})
	}},
}
