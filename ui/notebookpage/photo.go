package notebookpage

import (
	"math"
	"slices"

	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/batch"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// Photographs gives the page a button that has a photograph of the cut read.
func (p *Page) Photographs(read func()) {
	p.form.photo.OnTapped = mishap.Func(read)
	p.form.photo.Show()
}

// Noted takes what a photograph has shown, in the file at path, into the batch that is
// being noted.
func (p *Page) Noted(cut batch.Cut, path string) {
	p.form.take()
	b := &p.book.Draft
	b.Cut = cut
	if !slices.Contains(b.Photographs, path) {
		b.Photographs = append(b.Photographs, path)
	}
	p.form.put()
	p.book.Noted()
}

// showCut says what a photograph has shown of the batch that is being noted.
func (f *form) showCut() {
	cut := &f.p.book.Draft.Cut
	kit.SetText(f.cut, say.PhotoNoted(page.Reads, orNaN(cut.FoamPercent), orNaN(cut.RibbonMM)))
	f.cut.Hidden = f.cut.Text == ""
}

func orNaN(m batch.Measured) float64 {
	if !m.Known {
		return math.NaN()
	}
	return m.Value
}
