// Package label computes what a label must say: the US Nutrition Facts by
// 21 CFR 101.9, the EU and UK declaration by Regulation (EU) No 1169/2011, the
// list of ingredients with its allergens, the names a frozen dessert may bear
// and the claims it meets.
//
// Masses are grams and volumes millilitres; amounts are per 100 g or per
// serving as said. What no source gives is kept apart from zero: a figure that
// depends on it is marked incomplete, with the ingredients it lacks.
//
// Everything here is our reading of the sections named beside it. Local code
// and licensed practice decide.
package label

import (
	"math"
	"strings"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/form/flaw"
)

// Region is whose rules a label follows.
type Region string

// The regions.
const (
	US Region = "us"
	EU Region = "eu" // and the UK, which keeps the same regulation
)

// The energy methods of a US label, one for the whole product,
// 21 CFR 101.9(c)(1)(i).
const (
	General  = "general"  // (B) 4-4-9, or (C) with (F) where there are sugar alcohols
	Specific = "specific" // (A) each record's own Atwater factors
)

// Food is a finished food and what it was made from.
type Food struct {
	Name  string // as the maker calls it
	Lines []Used // everything that went in, as weighed, before cooking

	// WaterOffG is g of water driven off while cooking. It takes nothing
	// else along.
	WaterOffG float64

	DensityGPerML float64 // of the finished food with its air, g/mL
	TubML         float64 // mL of food in one tub, which is one container
	TubG          float64 // g of it; 0: TubML × DensityGPerML

	EnergyMethod string // General or Specific; "": General
	Portion      string // of an EU label in words with its grams, "2 scoops (80 g)"; "": as a US serving

	// Dense is the custard alone, for the names it may bear by itself; nil
	// where the food has one phase. Its lines are among Lines.
	Dense *Food
}

// Used is one weighed ingredient.
type Used struct {
	Ingredient *ingredient.Ingredient
	Grams      float64
	Phase      string // "dense" or "foam"
}

// DensePhase is the Phase of what is cooked into the custard.
const DensePhase = "dense"

// MassG returns the finished mass, in g: what went in less the water driven
// off.
func (f *Food) MassG() float64 {
	m := 0.0
	for _, u := range f.Lines {
		m += u.Grams
	}
	return m - f.WaterOffG
}

// Tally returns the sum of every column over the finished food, water driven
// off being gone from mass and water.
func (f *Food) Tally() ingredient.Tally {
	var t ingredient.Tally
	for _, u := range f.Lines {
		t = t.Add(u.Ingredient, u.Grams)
	}
	return t.Less(f.WaterOffG)
}

// tubG returns the net mass of a container.
func (f *Food) tubG() float64 {
	if f.TubG > 0 {
		return f.TubG
	}
	return f.TubML * f.DensityGPerML
}

// check refuses a food of which nothing can be declared.
func (f *Food) check() error {
	for _, u := range f.Lines {
		if u.Ingredient == nil {
			return flaw.New("label: a line has no ingredient")
		}
		if !(u.Grams >= 0) || math.IsInf(u.Grams, 1) {
			return flaw.New("label: %v g of %s cannot be declared", u.Grams, u.Ingredient.ID)
		}
	}
	if m := f.MassG(); !(m > 0) {
		return flaw.New("label: the finished food weighs %.4g g; there is nothing to declare", m)
	}
	if !(f.DensityGPerML > 0) || !(f.tubG() > 0) {
		return flaw.New("label: a serving needs the finished density (%.4g g/mL) and the contents of a tub (%.4g g)", f.DensityGPerML, f.tubG())
	}
	return nil
}

// Label is everything a label says, in the form of its JSON.
type Label struct {
	Region Region `json:"region"`

	ServingG             float64      `json:"serving_g"`              // unrounded
	ServingMeasure       string       `json:"serving_measure"`        // "2/3 cup (88g)"
	ServingsPerContainer float64      `json:"servings_per_container"` // as declared
	ServingsText         string       `json:"servings_text"`          // "about 3.5 servings per container", "" where it is left out
	Columns              string       `json:"columns"`                // "single", or "dual" where the container demands a second or lets it be chosen
	ColumnsWhy           *flaw.Remark `json:"columns_why"`
	SecondAllowed        bool         `json:"-"` // a second column is demanded, or may be chosen

	Lines          []PanelLine  `json:"lines"`                     // US: per serving; EU: per 100 g
	SecondColumn   string       `json:"second_column,omitempty"`   // what Second is per: PerContainer, "2/3 cup" or "portion"
	Second         []PanelLine  `json:"second,omitempty"`          // the same lines, for the second column
	NotSignificant string       `json:"not_significant,omitempty"` // "Not a significant source of …", for lines left out
	Footnote       string       `json:"footnote"`
	EnergyMethod   *flaw.Remark `json:"energy_method"`

	Ingredients     []Run  `json:"ingredients"` // the statement in runs of type
	IngredientsText string `json:"ingredients_text"`
	Contains        string `json:"contains"`

	// Carries is Contains, with what is said of allergens that nobody stated in words
	// that can be told.
	Carries *flaw.Remark `json:"-"`

	Statements   []string     `json:"statements,omitempty"` // words that must stand beside the name or the list because of what is in the food
	ProposedName string       `json:"proposed_name"`
	Names        []Name       `json:"names"`
	Claims       []Claim      `json:"claims"`
	Notes        flaw.Remarks `json:"notes"`    // how it was read and what is left to judge
	Warnings     flaw.Remarks `json:"warnings"` // what is incomplete
	Gaps         int          `json:"-"`        // how many of the first Warnings tell of incomplete figures

	simple *simplePanel // of the US, nil where it is not allowed
}

// PanelLine is one line of a panel.
type PanelLine struct {
	Key        string   `json:"key"`
	Name       string   `json:"name"`
	Amount     float64  `json:"amount"` // unrounded, the known part; in the unit of Unit
	Unit       string   `json:"unit"`
	Text       string   `json:"text"`       // as declared
	DVPercent  *float64 `json:"dv_percent"` // as declared; nil where the line has none
	DVText     string   `json:"dv_text"`
	Incomplete bool     `json:"incomplete"`
	Missing    []string `json:"missing,omitempty"`   // ids of ingredients without the figure
	MostText   string   `json:"most_text,omitempty"` // what it would say with the most they can hold
	Indent     int      `json:"indent"`
	Bold       bool     `json:"bold"` // the name is set bold
	Vitamin    bool     `json:"vitamin,omitempty"`
}

// AmountText is the amount as declared, without the words that some lines have
// about it.
func (l PanelLine) AmountText() string {
	return strings.TrimSuffix(strings.TrimPrefix(l.Text, "Includes "), " Added Sugars")
}

// IncompleteMark stands behind an amount that some ingredient leaves unknown, and
// before the warning that says so.
const IncompleteMark = "‡"

// Marked is an amount of l as text, with the mark of an incomplete one.
func (l PanelLine) Marked(amount string) string {
	if l.Incomplete {
		return amount + IncompleteMark
	}
	return amount
}

// Options adjusts a label. The zero Options prints every line.
type Options struct {
	// OmitInsignificant leaves out the US lines that may go, and says "Not a
	// significant source of …" instead.
	OmitInsignificant bool
	// SecondColumn asks for the second column of a US panel that 21 CFR
	// 101.9(b)(6) allows for a container of over 150 and under 200 % of the
	// reference amount. It is an error where none is allowed.
	SecondColumn bool
	// Reference is the food that "reduced" and "light" are measured against;
	// nil leaves these claims open.
	Reference *Food
}

// PerContainer is what a second column is per where the container demands it,
// 21 CFR 101.9(b)(12)(i).
const PerContainer = "container"

// For returns the label of food under the rules of region.
func For(food Food, region Region, options Options) (*Label, error) {
	if err := food.check(); err != nil {
		return nil, err
	}
	if options.Reference != nil {
		if err := options.Reference.check(); err != nil {
			return nil, flaw.New("reference food: %v", err)
		}
	}
	switch region {
	case US:
		return forUS(&food, options)
	case EU:
		return forEU(&food, options)
	}
	return nil, flaw.New("label: no rules are known for region %q", region)
}
