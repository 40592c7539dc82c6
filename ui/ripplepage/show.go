package ripplepage

import (
	"slices"

	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/desk/cutting"
	"ripplewright/internal/desk/rippleview"
	"ripplewright/internal/matter/ripple"
	"ripplewright/internal/show/card"
	"ripplewright/internal/show/say"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// Show implements page.Page.
func (p *Page) Show() {
	p.inView = true
	d, r := p.host.Design(), p.host.Result()
	p.layout.show(&d)
	p.motion.show(&d)
	p.strokes.ShowValue(float64(d.Blend.Strokes))
	p.foam.ShowValue(d.Blend.FoamVolumePercent)
	p.depth.ShowValue(d.Blend.DepthPercent)
	p.handle.ShowValue(d.Blend.HandleMM)
	p.colours[0].show(d.Blend.DenseColour)
	p.colours[1].show(d.Blend.FoamColour)
	showNote(p.grams, rippleview.GramsKept(page.Reads, d, r))
	showNote(p.alike, rippleview.TooAlike(page.Reads, d))

	faces, err := rippleview.Faces(page.Reads, d, r, p.chosen())
	if err != nil {
		p.empty(err)
		return
	}
	p.nothing.Hide()
	p.pictures.Show()
	p.export.Enable()
	cuts := make([]kit.CutFace, len(faces))
	for i, f := range faces {
		cuts[i] = kit.CutFace{Title: f.Title, WidthMM: f.WidthMM, HeightMM: f.HeightMM, CornerMM: f.CornerMM, Open: f.Open, HeadMM: f.HeadMM}
		if len(p.cuts) == len(faces) && p.cuts[i].Title == f.Title {
			cuts[i].Picture = p.cuts[i].Picture
		}
	}
	if !slices.Equal(cuts, p.cuts) {
		p.cuts = cuts
		p.pictures.ShowCuts(cuts)
	}
	p.ask()
}

func showNote(l *widget.Label, text string) {
	kit.SetText(l, text)
	if show := text != ""; show != l.Visible() {
		l.Hidden = !show
		l.Refresh()
	}
}

// empty says why there is no picture.
func (p *Page) empty(why error) {
	p.cutter.Stop()
	p.asked, p.cuts = rippleview.Request{}, nil
	p.rest("")
	p.export.Disable()
	p.pictures.Hide()
	p.nothing.SetText(say.NoPicture(rippleview.Reason(page.Reads, why)))
	p.nothing.Show()
	p.found.clear()
}

func (p *Page) chosen() []ripple.View { return rippleview.ViewsNamed(p.view.Selected) }

// ask has the pictures and the figures made, if they are not what was asked for
// last.
func (p *Page) ask() {
	if !p.inView || len(p.cuts) == 0 {
		return
	}
	q, ok := rippleview.Ask(p.host.Design(), p.host.Result(), p.chosen(), p.pictures.Pixels(p.host.Window().Canvas().Scale()), p.sharp)
	if !ok || q.Same(p.asked) {
		return // Show has said why
	}
	p.asked = q
	p.begin()
	c := q.Job
	c.Study = func(r *ripple.Raster) func() {
		f := q.Study(r)
		return func() { p.found.show(&f) }
	}
	p.cutter.Draw(c)
}

func (p *Page) begin() {
	if p.bar.Value != 0 {
		p.bar.SetValue(0)
	}
	p.working.Show()
	kit.SetText(p.status, "")
	p.found.wait()
}

// rest says that nobody is drawing.
func (p *Page) rest(text string) {
	p.working.Hide()
	kit.SetText(p.status, text)
}

// show puts pictures on screen.
func (p *Page) show(d cutting.Drawn) {
	if d.Err != nil {
		p.empty(d.Err)
		return
	}
	if len(d.Pictures) != len(p.cuts) {
		return // another choice has been made since
	}
	cuts := make([]kit.CutFace, len(p.cuts))
	copy(cuts, p.cuts)
	for i := range cuts {
		cuts[i].Picture = d.Pictures[i]
	}
	p.cuts = cuts
	p.pictures.ShowCuts(cuts)
	if d.Sharp {
		p.rest("")
		if p.drawn != nil {
			p.drawn()
		}
	}
}

// exportPicture writes what is shown as a PNG or SVG.
func (p *Page) exportPicture() {
	cuts, style := p.asked.Job.Cuts, p.asked.Job.Style
	if len(cuts) == 0 {
		return
	}
	px := p.large
	p.host.Export(page.FileTitle(p.host.Design())+", cut.png", func(path string) error {
		pictures, err := card.RenderCuts(cuts, style, px)
		if err != nil {
			return err
		}
		return card.WriteCuts(path, pictures)
	})
}
