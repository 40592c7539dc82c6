// Package wishing holds what a maker wishes of the open design, and looks in the
// background for the design that has it and for how sure the open one is.
package wishing

import (
	"context"
	"math"

	"ripplewright/internal/answer/balance"
	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/sure"
	"ripplewright/internal/desk/newest"
	"ripplewright/internal/food/label"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/work/design"
)

// Wishes are what the page asks for: a texture for each phase, "" for any, the
// sweetness of the custard, % as sucrose, and more.
type Wishes struct {
	Custard, Foam      string
	SweetFrom, SweetTo End
	KeepsIce           bool
	WholeEggs          bool
	Eggs               End // to crack; open: any number
	MayServeAt         bool

	Name string        // of food, the id of a standard that the custard keeps; "": any
	More [MostMore]One // of any figure

	Packs    []Pack             // of which whole ones are used up
	Cautions []string           // codes of those that must not be; nil: of all
	Adds     []string           // ids of ingredients that may come in
	Weight   [NumCounts]float64 // what the wishes of the page count beside each other; 0: 1, of what is whole: whatever it costs
}

// Count is a wish of the page that can count more or less than the others.
type Count uint8

// The wishes that count, in the order of the page.
const (
	CountCustard Count = iota
	CountFoam
	CountName
	CountSweet
	CountIce
	CountEggs
	CountPacks
	CountCautions
	CountMore // all figures that are asked for beside
	NumCounts
)

// One is a figure that is wished for between two values.
type One struct {
	Of       *balance.Quantity // nil: none
	From, To End
}

// An End of what is wished for is open until a value is said; 0 is a value.
type End struct {
	At   float64
	Said bool
}

// At is an end that is said, open if v is NaN.
func At(v float64) End {
	if math.IsNaN(v) {
		return End{}
	}
	return End{v, true}
}

// Value is where the end is, NaN if it is open.
func (e End) Value() float64 {
	if !e.Said {
		return math.NaN()
	}
	return e.At
}

// MostMore is how many figures beside the usual ones can be asked for.
const MostMore = 3

// band is the wish for a figure between two values, 0 or NaN being an open end.
func band(q *balance.Quantity, from, to End) balance.Wish {
	x := balance.Wish{Of: q, Low: math.Inf(-1), High: math.Inf(1), Weight: 1, AtC: math.NaN()}
	if from.Said {
		x.Low = from.At
	}
	if to.Said {
		x.High = to.At
	}
	if x.Low > x.High { // said the wrong way round
		x.Low, x.High = x.High, x.Low
	}
	return x
}

// Ask returns the question that w puts in a kitchen, with the lines that are locked.
func (w Wishes) Ask(locks balance.Locks, in cold.Profile) balance.Ask {
	a := balance.Ask{Locks: locks, WholeEggs: w.WholeEggs, MayServeAt: w.MayServeAt, Kitchen: &in}
	a.Adds, a.Cautions = w.Adds, w.Cautions
	a.EggsWeight, a.PacksWeight, a.CautionsWeight = w.Weight[CountEggs], w.Weight[CountPacks], w.Weight[CountCautions]
	for _, p := range w.Packs {
		if a.Packs == nil {
			a.Packs = map[string]float64{}
		}
		a.Packs[p.Ingredient] = p.Grams
	}
	add := func(x balance.Wish, of Count) {
		if w.Weight[of] > 0 {
			x.Weight = w.Weight[of]
		}
		a.Wishes = append(a.Wishes, x)
	}
	if w.Custard != "" {
		add(balance.Texture(balance.CustardHardness, w.Custard), CountCustard)
	}
	if w.Foam != "" {
		add(balance.Texture(balance.FoamHardness, w.Foam), CountFoam)
	}
	if w.SweetFrom.Said || w.SweetTo.Said {
		add(band(balance.CustardSweetness, w.SweetFrom, w.SweetTo), CountSweet)
	}
	if w.KeepsIce {
		add(balance.KeepsIce(in.Freezer.AirC), CountIce)
	}
	if w.WholeEggs && w.Eggs.Said {
		add(band(balance.EggsCracked, w.Eggs, w.Eggs), CountEggs)
	}
	if s, ok := label.StandardOf(w.Name); ok {
		dense := phase.Dense
		add(balance.Named(s, &dense), CountName)
	}
	for _, x := range w.More {
		if x.Of != nil && (x.From.Said || x.To.Said) {
			add(band(x.Of, x.From, x.To), CountMore)
		}
	}
	return a
}

// question is a search for a design.
type question struct {
	m   *model.Model
	d   design.Design
	ask balance.Ask
}

// Finder looks for designs and samples kitchens, of the newest question only.
// Its methods are for the window's thread.
type Finder struct {
	designs  *newest.Answers[question, balance.Answer]
	kitchens *newest.Answers[sampled, sure.Answer]
	blends   *newest.Answers[question, []balance.Spot]
	besides  *newest.Answers[comparison, []*balance.Beside]
}

// comparison asks what the designs of an answer bring beside what is wished for.
type comparison struct {
	question
	r  model.Result
	in cold.Profile
	a  *balance.Answer
}

// sampled is a design to be made many times over.
type sampled struct {
	m *model.Model
	d design.Design
	r model.Result
	k cold.Profile
	l *sure.Learnt
}

// New returns a finder whose answers come by post, to found, likely and spots; told is
// called when Compare has its answer.
func New(post func(func()), found func(balance.Answer, error), likely func(sure.Answer, error), spots func([]balance.Spot, error), told func()) *Finder {
	return &Finder{
		designs: newest.NewAnswers(post,
			func(ctx context.Context, q question) (balance.Answer, error) {
				return balance.Balance(ctx, q.m, q.d, q.ask)
			},
			func(_ question, a balance.Answer, err error) { found(a, err) }),
		kitchens: newest.NewAnswers(post,
			func(ctx context.Context, q sampled) (sure.Answer, error) {
				o := sure.Options{Learnt: q.l}
				if out, err := cold.Thaw(ctx, q.d, &q.r, q.k); err == nil { // else there are no minutes
					o.Cold = &cold.Answer{Counter: out}
				}
				return sure.Sample(ctx, q.m, q.d, o)
			},
			func(_ sampled, a sure.Answer, err error) { likely(a, err) }),
		blends: newest.NewAnswers(post,
			func(ctx context.Context, q question) ([]balance.Spot, error) {
				custard, err := balance.Blends(ctx, q.m, q.d, phase.Dense, q.ask.Locks)
				if err != nil {
					return nil, err
				}
				foam, err := balance.Blends(ctx, q.m, q.d, phase.Foam, q.ask.Locks)
				return append(custard, foam...), err
			},
			func(_ question, a []balance.Spot, err error) { spots(a, err) }),
		besides: newest.NewAnswers(post,
			func(ctx context.Context, q comparison) ([]*balance.Beside, error) {
				return balance.Compare(ctx, q.d, &q.r, q.in, q.a.All())
			},
			func(q comparison, found []*balance.Beside, err error) {
				if err == nil {
					balance.Told(q.a.All(), found)
					told()
				}
			}),
	}
}

// Compare looks for what the designs of a bring beside what is wished for: a holds it
// when told is called. d is the design that they change, which comes to r.
func (f *Finder) Compare(a *balance.Answer, d design.Design, r *model.Result, in cold.Profile) {
	f.besides.Ask(comparison{question{d: d}, *r, in, a})
}

// Find looks for the design nearest to d that has what is wished for.
func (f *Finder) Find(m *model.Model, d design.Design, ask balance.Ask) {
	f.designs.Ask(question{m, d, ask})
}

// Blend asks what blends of the sugars of d make of both phases.
func (f *Finder) Blend(m *model.Model, d design.Design, locks balance.Locks) {
	f.blends.Ask(question{m, d, balance.Ask{Locks: locks}})
}

// Sample asks how sure d is, whose evaluation is r, in a kitchen of which batches have
// taught l; nil: nothing.
func (f *Finder) Sample(m *model.Model, d design.Design, r *model.Result, in cold.Profile, l *sure.Learnt) {
	f.kitchens.Ask(sampled{m, d, *r, in, l})
}

// Stop drops what runs.
func (f *Finder) Stop() {
	f.designs.Stop()
	f.kitchens.Stop()
	f.blends.Stop()
	f.besides.Stop()
}
