package balance

import (
	"context"
	"math"
	"slices"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/label"
	"ripplewright/internal/work/design"
)

// Beside is what a proposal brings beside what it is for, against the design that it
// changes.
type Beside struct {
	NamesGained, NamesLost         []label.Name // of food, whose computed limits the one keeps and the other does not
	AllergensGained, AllergensLost []string     // codes of package label, of either region
	Declared, DeclaredEU           []Declared   // of a US serving, and of 100 g in the EU
	CautionsGained, CautionsLost   []string     // codes
	Contrast                       Pair         // hardness of the custard over that of the foam; NaN where one is not known
	CostPerTub                     Pair         // in the maker's own money; NaN where nothing is priced
	Minutes                        Pair         // from the freezer to the spoon; NaN where they are not known
}

// Pair is a figure before and after.
type Pair struct{ Before, After float64 }

// Declared is a line of a panel before and after, as declared.
type Declared struct {
	Key, Name     string
	Before, After label.PanelLine
}

// Changed reports whether the panel reads otherwise.
func (d *Declared) Changed() bool { return d.Before.AmountText() != d.After.AmountText() }

// declared are the lines of each region's panel that a proposal is asked about.
var declared = map[label.Region][]string{
	label.US: {"calories", "total_sugars", "added_sugars"},
	label.EU: {"energy_kcal", "sugars"},
}

// Compare returns what each proposal brings beside what it is for, d being the design
// that they change, which comes to r, in a kitchen. It takes some ten milliseconds a
// proposal, writes nothing into them and is for their Beside. The error is the
// context's.
func Compare(ctx context.Context, d design.Design, r *model.Result, in cold.Profile, of []*Proposal) ([]*Beside, error) {
	now := minutesOf(ctx, d, r, in)
	out := make([]*Beside, len(of))
	for i, p := range of {
		b := compare(d, r, p)
		b.Minutes = Pair{now, minutesOf(ctx, p.Design, &p.Result, in)}
		if out[i] = &b; ctx.Err() != nil {
			break
		}
	}
	return out, ctx.Err()
}

// Told writes into the proposals what Compare has found of them.
func Told(of []*Proposal, found []*Beside) {
	for i, p := range of {
		p.Beside = found[i]
	}
}

// compare is Compare of one proposal, without its minutes.
func compare(d design.Design, r *model.Result, p *Proposal) Beside {
	b := Beside{CostPerTub: Pair{math.NaN(), math.NaN()}, Minutes: Pair{math.NaN(), math.NaN()}}
	b.CautionsGained, b.CautionsLost = apart(cautionCodes(r), cautionCodes(&p.Result))
	b.AllergensGained, b.AllergensLost = apart(allergens(r), allergens(&p.Result))
	b.Contrast = Pair{r.Blend.HardnessRatio, p.Result.Blend.HardnessRatio}
	if r.Cost.Priced && p.Result.Cost.Priced {
		b.CostPerTub = Pair{r.Cost.PerTub, p.Result.Cost.PerTub}
	}
	b.read(r.Food(d), p.Result.Food(p.Design))
	return b
}

// minutesOf is how long a tub is out of the freezer until it eats well; NaN where it
// never does or its warming is not computed.
func minutesOf(ctx context.Context, d design.Design, r *model.Result, in cold.Profile) float64 {
	s, err := cold.Thaw(ctx, d, r, in)
	if err != nil || !s.OK {
		return math.NaN()
	}
	return s.FromMinutes.Value
}

// read reads both foods' labels, of either region.
func (b *Beside) read(before, after label.Food) {
	for _, region := range [...]label.Region{label.US, label.EU} {
		was, err := label.For(before, region, label.Options{})
		if err != nil {
			continue
		}
		is, err := label.For(after, region, label.Options{})
		if err != nil {
			continue
		}
		if lines := declaredOf(was, is); region == label.EU {
			b.DeclaredEU = lines
		} else {
			b.Declared = lines
			b.NamesGained, b.NamesLost = keptOnlyBy(is.Names, was.Names), keptOnlyBy(was.Names, is.Names) // of both regions
		}
	}
}

func declaredOf(was, is *label.Label) (out []Declared) {
	line := func(l *label.Label, key string) int {
		return slices.IndexFunc(l.Lines, func(x label.PanelLine) bool { return x.Key == key })
	}
	for _, key := range declared[was.Region] {
		i, j := line(was, key), line(is, key)
		if i >= 0 && j >= 0 {
			out = append(out, Declared{key, was.Lines[i].Name, was.Lines[i], is.Lines[j]})
		}
	}
	return out
}

// keptOnlyBy lists the names of a whose limits b does not keep.
func keptOnlyBy(a, b []label.Name) (out []label.Name) {
	for _, n := range a {
		if n.Met && !slices.ContainsFunc(b, func(o label.Name) bool {
			return o.Met && o.Name == n.Name && o.Region == n.Region && o.Of == n.Of
		}) {
			out = append(out, n)
		}
	}
	return out
}

// cautionCodes lists the codes of what spoils a design, each once.
func cautionCodes(r *model.Result) (codes []string) {
	for i := range r.Warnings {
		if w := &r.Warnings[i]; spoils(w) && !slices.Contains(codes, w.Code) {
			codes = append(codes, w.Code)
		}
	}
	return codes
}

func allergens(r *model.Result) []string {
	all := append(slices.Clone(r.Allergens.US), r.Allergens.EU...)
	slices.Sort(all)
	return slices.Compact(all)
}

// apart lists what is in after alone, and what is in before alone.
func apart(before, after []string) (gained, lost []string) {
	only := func(a, b []string) []string {
		return slices.DeleteFunc(slices.Clone(a), func(x string) bool { return slices.Contains(b, x) })
	}
	return only(after, before), only(before, after)
}
