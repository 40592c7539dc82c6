// Package places knows where a maker can be in the window, grouped by what is being
// done there, and how a hand gets from one place to the next.
package places

import (
	"slices"

	"ripplewright/internal/show/say"
)

// A Place is the bench or one of the pages.
type Place int

// The places, in the order of their groups.
const (
	Bench Place = iota
	Ask
	Ripple
	Steps
	Day
	Cold
	Shopping
	Label
	Card
	Cost
	Notebook
	Library
	Sure
	Figures     // opens from the bench and stands in no row
	Count   int = iota
)

// A Group is what is being done at some places.
type Group struct {
	Name   say.Message
	Places []Place
}

// Groups are the groups, in the order of an evening: none of their places stands in two.
var Groups = [...]Group{
	{say.ToThink, []Place{Bench, Ask, Ripple}},
	{say.ToMake, []Place{Steps, Day, Cold, Shopping}},
	{say.ToSell, []Place{Label, Card, Cost}},
	{say.ToLearn, []Place{Notebook, Library, Sure}},
}

var names = [Count]say.Message{Bench: say.BenchPage, Ask: say.AskPage, Ripple: say.RipplePage,
	Steps: say.StepsPage, Day: say.DayPage, Cold: say.ColdPage, Shopping: say.ShopPage,
	Label: say.LabelPage, Card: say.CardPage, Cost: say.CostPage,
	Notebook: say.BatchPage, Library: say.LibraryPage, Sure: say.SurePage, Figures: say.AllFigures}

// Name is what the place is called.
func (p Place) Name() string { return names[p].String() }

// InRow is the place itself, or for one that stands in no row the one that it opens from.
func (p Place) InRow() Place {
	if p == Figures {
		return Bench
	}
	return p
}

// Group is the number of the group of the place.
func (p Place) Group() int {
	return slices.IndexFunc(Groups[:], func(g Group) bool { return slices.Contains(g.Places, p.InRow()) })
}

// A Way is where one is, and where one was last in each group. The zero Way stands at
// the bench.
type Way struct {
	at   Place
	last [len(Groups)]int // of the group's places
}

// At is where one is.
func (w *Way) At() Place { return w.at }

// Go goes to p.
func (w *Way) Go(p Place) {
	w.at = p
	g := p.Group()
	w.last[g] = slices.Index(Groups[g].Places, p.InRow())
}

// Into is where a group leads: to the place of it where one was last, and from within the
// group to its next one, around.
func (w *Way) Into(group int) Place {
	all := Groups[group].Places
	if w.at.Group() == group {
		return all[(w.last[group]+1)%len(all)]
	}
	return all[w.last[group]]
}

// Next is the place that is so many further on in the order of all rows, around.
func (w *Way) Next(by int) Place {
	inRows := Count - 1
	return Place(((int(w.at.InRow())+by)%inRows + inRows) % inRows)
}
