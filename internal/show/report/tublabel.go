package report

import (
	"io"
	"math"

	"ripplewright/internal/answer/icy"
	"ripplewright/internal/food/onpack"
	"ripplewright/internal/show/say"
)

// TubLabel is the whole label of a tub: the panel, and what else must stand there.
type TubLabel struct {
	Label
	Place     onpack.Place     `json:"place"`
	Sale      onpack.Sale      `json:"sale"`
	Languages []string         `json:"languages"`
	FrozenML  float64          `json:"frozen_ml"` // what one tub holds, frozen
	Elements  []onpack.Element `json:"elements"`
	Faces     []TubFace        `json:"faces"`

	Fill onpack.Fill `json:"fill"`
	// BesideDate is what the model of ice says of the time in store, which is no
	// durability; nil where no date is asked for.
	BesideDate *BesideDate `json:"beside_date,omitempty"`

	Lacking map[string][]string `json:"lacking,omitempty"` // by language, the terms without words of ours
}

// BesideDate is how long the custard keeps its word for ice, in weeks, and over and
// times the law's uncertainty; a time without end is null.
type BesideDate struct {
	FreezerC  float64  `json:"freezer_c"`
	Word      string   `json:"word"`
	Weeks     *float64 `json:"weeks"`
	LowWeeks  *float64 `json:"low_weeks"`
	HighWeeks *float64 `json:"high_weeks"`
	Text      string   `json:"text"`
}

// NewBesideDate returns it of an answer.
func NewBesideDate(a *icy.Answer) *BesideDate {
	ended := func(w float64) *float64 {
		if math.IsInf(w, 0) || math.IsNaN(w) {
			return nil
		}
		return &w
	}
	k := &a.Keeps
	return &BesideDate{a.AtC, k.Word.Name(), ended(k.Weeks), ended(k.LowWeeks), ended(k.HighWeeks), say.BesideDate(Reads, a)}
}

// TubFace is a face of the label with the least letters that it may have.
type TubFace struct {
	Name          string  `json:"name"`
	WidthMM       float64 `json:"width_mm"`
	HeightMM      float64 `json:"height_mm"`
	LeastLetterMM float64 `json:"least_letter_mm"`
	Fits          bool    `json:"fits"`
	Why           string  `json:"why,omitempty"` // it does not fit
}

// WriteText writes the elements and the faces, and then the panel with the rest.
func (l TubLabel) WriteText(w io.Writer) error {
	p := &page{w: w}
	p.line("%s", say.TubLabelHead(l.Place, l.Sale))
	for _, e := range l.Elements {
		p.line("  %s", say.LabelElement(e))
	}
	p.line("  %s", say.LabelFill(Reads, l.Place, l.Fill))
	if l.BesideDate != nil && l.BesideDate.Text != "" {
		p.line("  %s", l.BesideDate.Text)
	}
	for _, f := range l.Faces {
		p.line("  %s", say.LabelFace(Reads, f.Name, f.WidthMM, f.HeightMM, f.LeastLetterMM, f.Why))
	}
	for _, lang := range l.Languages {
		if lacks := say.LabelLacks(lang, l.Lacking[lang]); lacks != "" {
			p.line("  %s", lacks)
		}
	}
	p.line("")
	if p.err != nil {
		return p.err
	}
	return l.Label.WriteText(w)
}
