package report

import (
	"io"

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

	Lacking map[string][]string `json:"lacking,omitempty"` // by language, the terms without words of ours
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
