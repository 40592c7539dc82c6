package report

import (
	"io"

	"ripplewright/internal/answer/photo"
	"ripplewright/internal/matter/ripple"
	"ripplewright/internal/show/say"
)

// Photo is what a photograph of a cut shows, beside the computed cut.
type Photo struct {
	File, Name, Picture string
	View                ripple.View
	Reading             *photo.Reading
	Computed            ripple.Measure // past what the picture cannot show
	Whole               ripple.Measure // with ribbons of any thickness
	Batch, Notebook     string         // where it was written down, "" where it was not
}

// WriteText writes a table and what it does not show.
func (f Photo) WriteText(w io.Writer) error {
	p := &page{w: w}
	p.line("%s", say.PhotoTitle(f.Name, f.View.String(), f.Picture))
	r := f.Reading
	row := func(cells ...string) string {
		text := left(cells[0], batchColumn)
		for _, c := range cells[1:] {
			text += "\t" + c
		}
		return text
	}
	rows := []string{row(say.PhotoHeads()...)}
	for _, x := range say.PhotoTable(Reads, r, &f.Computed) {
		rows = append(rows, row(append([]string{x.Name}, x.Cells...)...))
	}
	p.table(rows)
	if r.Thin != nil {
		p.line("%s", say.T(say.PhotoNoWidth, say.PhotoRefused(Reads, r.Thin)))
	} else {
		p.line("%s", say.PhotoLeast(Reads, r.LeastMM, f.Whole.Foam.MeanMM))
	}
	p.line("%s", say.PhotoOneCut.String())
	if f.Batch != "" {
		p.line("%s", say.PhotoKept(f.Batch, f.Notebook))
	}
	return p.err
}

// MarshalJSON writes what was read, computed beside it, and why thickness is not told.
func (f Photo) MarshalJSON() ([]byte, error) {
	r := f.Reading
	edged := func(e photo.Edged, unit float64) object {
		return object{{"value", Number(unit * e.Value)}, {"low", Number(unit * e.Low)}, {"high", Number(unit * e.High)}}
	}
	computed := func(m ripple.Measure) object {
		return object{{"foam_area_percent", Number(100 * m.FoamFraction)}, {"mean_ribbon_mm", Number(m.Foam.MeanMM)},
			{"thickest_tenth_chord_mm", Number(m.Foam.ThickestTenthMM)}, {"dense_mean_ribbon_mm", Number(m.Dense.MeanMM)}}
	}
	var refused any
	if r.Thin != nil {
		refused = object{{"code", r.Thin.Reason.String()}, {"sentence", say.PhotoRefused(Reads, r.Thin)}}
	}
	return object{{"file", f.File}, {"name", f.Name}, {"picture", f.Picture}, {"view", f.View.String()},
		{"foam_area_percent", edged(r.FoamFraction, 100)}, {"mean_ribbon_mm", edged(r.FoamMeanMM, 1)},
		{"thickest_tenth_chord_mm", edged(r.ThickestTenthMM, 1)}, {"dense_mean_ribbon_mm", edged(r.DenseMeanMM, 1)},
		{"thickness_refused", refused}, {"least_ribbon_mm", Number(r.LeastMM)}, {"pixel_mm", Number(r.PixelMM)}, {"edge_mm", Number(r.EdgeMM)},
		{"computed", computed(f.Computed)}, {"computed_of_any_thickness", computed(f.Whole)},
		{"batch", word(f.Batch)}, {"notebook", word(f.Notebook)}}.MarshalJSON()
}
