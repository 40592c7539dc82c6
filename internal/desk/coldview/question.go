// Package coldview is what the page of the cold shows of an answer, without a
// toolkit: seven questions, each with its brief, its tables, and its picture in time.
package coldview

import (
	"math"
	"slices"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/show/say"
)

// A Question is what a maker asks of the cold.
type Question int

// The questions in the order of their tiles.
const (
	Custard Question = iota
	Foam
	Harden
	Counter
	Fridge
	Storage
	Ice
	numQuestions
)

// Questions returns them all.
func Questions() []Question {
	all := make([]Question, numQuestions)
	for i := range all {
		all[i] = Question(i)
	}
	return all
}

var questions = [numQuestions]struct {
	title say.Message
	notes []string // where the notes are that belong here
}{
	Custard: {"Freeze the custard", []string{"still_freeze"}},
	Foam:    {"Freeze the foam", nil},
	Harden:  {"Harden the tub", []string{"harden", "tubs"}},
	Counter: {"Leave out", []string{"serving_window", "tubs"}},
	Fridge:  {"In the fridge", []string{"tubs"}},
	Storage: {"Keep it", []string{"storage"}},
	Ice:     {"How icy", nil},
}

// Title returns what is asked.
func (q Question) Title() string { return questions[q].title.String() }

// Notes returns those of a's notes that belong to the question and that its view
// does not say itself.
func (q Question) Notes(a *cold.Answer) []model.Warning {
	var out []model.Warning
	for _, n := range a.Notes {
		if slices.Contains(questions[q].notes, n.Where) && n.Code != "water_drawn_in_storage" {
			out = append(out, n)
		}
	}
	return out
}

// WaterCause is the warning of the design whose cause is that of the water which one phase
// draws from the other in the freezer.
func WaterCause(a *cold.Answer) model.Warning {
	return model.Warning{Code: "foam_draws_water", Where: a.Storage.Drawer}
}

// Brief returns the answer in a word or two. How icy it eats comes after the plan,
// by say.IceBrief.
func (q Question) Brief(s say.Style, a *cold.Answer) say.Brief {
	switch q {
	case Custard:
		return say.CustardBrief(s, &a.StillFreeze.Dense)
	case Foam:
		return say.FoamBrief(s, &a.StillFreeze)
	case Harden:
		return say.HardenBrief(s, &a.Harden)
	case Storage:
		return say.StorageBrief(s, &a.Storage)
	case Ice:
		return say.Brief{Answer: say.Unknown}
	}
	return say.LeaveOutBrief(s, q.Softens(a))
}

// Softens returns the tub that warms, on the counter or in the refrigerator.
func (q Question) Softens(a *cold.Answer) *cold.Softening {
	if q == Fridge {
		return &a.Fridge
	}
	return &a.Counter
}

// Freezes returns the phase that freezes in its dish.
func (q Question) Freezes(a *cold.Answer) *cold.Cooling {
	if q == Foam {
		return &a.StillFreeze.Foam
	}
	return &a.StillFreeze.Dense
}

// Place returns the place of the kitchen on whose air the times rest.
func (q Question) Place(k *cold.Profile) *cold.Place {
	switch q {
	case Counter:
		return &k.Counter
	case Fridge:
		return &k.Refrigerator
	}
	return &k.Freezer
}

// LawEnds says of each phase whose band the plot lacks, or has in part only, that
// its hardness is not known there. No tub is colder than the freezer it comes from.
func (q Question) LawEnds(s say.Style, a *cold.Answer) []string {
	if q != Counter && q != Fridge {
		return nil
	}
	var out []string
	v := q.Softens(a)
	for _, x := range [...]struct {
		name string
		band *cold.ScoopTimes
	}{{say.T("custard"), &v.Dense}, {say.T("ribbon¦of foam"), &v.Foam}} {
		switch b := x.band; {
		case !b.Present:
		case math.IsNaN(b.LawFromC):
			out = append(out, say.NoBand(x.name))
		case b.OK && b.LawFromC > math.Max(b.FromC, v.StartC):
			out = append(out, say.BandEnds(s, x.name, b.LawFromC))
		}
	}
	return out
}
