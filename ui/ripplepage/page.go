// Package ripplepage is the page of the stirred tub.
package ripplepage

import (
	"image/color"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/answer/learn"
	"ripplewright/internal/desk/cutting"
	"ripplewright/internal/desk/rippleview"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// Page is the page of the stirred tub: its cuts, how it was filled and stirred,
// its colours, and what a spoon finds in it.
type Page struct {
	host  page.Host
	drawn func() // told when sharp pictures are on screen

	view     *widget.RadioGroup
	pictures *kit.CutView
	nothing  *widget.Label
	status   *widget.Label
	bar      *widget.ProgressBar
	stop     *kit.Button
	working  *fyne.Container // bar and stop
	export   *kit.Button

	layout, motion wordList
	strokes, foam  *kit.Slide
	depth, handle  *kit.Slide
	grams          *widget.Label
	colours        [2]*colourRow
	alike          *widget.Label
	found          *ribbonReport

	cutter *cutting.Cutter
	sharp  int // pixels of the sharp pictures, and what is measured
	large  int // of exported ones
	cuts   []kit.CutFace
	asked  rippleview.Request
	inView bool // room that changes elsewhere, as with the window's size, asks for nothing
	object fyne.CanvasObject
}

// Pixels of sharp pictures along their longer side.
const (
	sharpPixels  = 900
	exportPixels = 1200 // 300 to the inch of a half-litre tub; more takes more memory than is there, see ripple.MaxPixels
)

// New returns the page. drawn, if not nil, is told when sharp pictures are on
// screen.
func New(h page.Host, drawn func()) *Page {
	p := &Page{host: h, drawn: drawn, sharp: sharpPixels, large: exportPixels, grams: page.Prose(""), alike: page.Prose(""), found: newRibbonReport(h)}
	p.makePictures()
	levers := p.makeLevers()
	p.colours = [2]*colourRow{newColourRow(p, say.T("Custard"), false), newColourRow(p, say.T("Foam"), true)}
	for _, l := range []*widget.Label{p.grams, p.alike} {
		l.Hide()
	}
	// What is at work stands over the foot of the pictures' room, beside their ruler.
	working := container.NewBorder(nil, container.NewBorder(nil, nil, nil, p.working, p.status), nil, nil)
	left := container.NewBorder(container.NewBorder(nil, nil, p.view, p.export), levers, nil, nil,
		container.NewStack(p.pictures, working, container.NewVBox(layout.NewSpacer(), p.nothing, layout.NewSpacer())))
	colours := container.New(layout.NewFormLayout())
	for _, c := range p.colours {
		colours.Objects = append(colours.Objects, c.name, c.object)
	}
	right := page.Scrolled(page.Heading(say.Colours.String()), colours, p.alike, p.found.object)
	p.found.follow(right)
	split := container.NewHSplit(container.NewPadded(left), right)
	split.Offset = 0.63
	p.object = split
	p.rest("")
	return p
}

// Stirs gives the page what batches teach of the hand that stirs a design.
func (p *Page) Stirs(taught func(*design.Design) learn.Posterior) {
	p.found.stirred = func(f *rippleview.Findings) string {
		d := p.host.Design()
		t := taught(&d)
		return f.Stirred(page.Reads, &t)
	}
}

// makePictures makes the pictures' view, what chooses among them, and what tells
// of the work on them.
func (p *Page) makePictures() {
	p.pictures, p.nothing, p.status, p.bar = kit.NewCutView(), page.Prose(""), widget.NewLabel(""), page.Progress()
	p.pictures.Reads = page.Reads
	p.cutter = cutting.NewCutter(p.host.Post, p.show, func(done float64) { p.bar.SetValue(max(done, p.bar.Value)) })
	p.pictures.OnSpace = p.ask
	p.nothing.Alignment = fyne.TextAlignCenter
	p.status.Truncation, p.status.Alignment = fyne.TextTruncateEllipsis, fyne.TextAlignTrailing
	var names []string
	for _, v := range rippleview.Views {
		names = append(names, v.Name.String())
	}
	p.view = page.Choice(func() { p.Show() }, names...)
	p.view.Horizontal, p.view.Selected = true, names[len(names)-1]
	p.export = kit.NewButton(say.ExportPicture.String(), p.exportPicture)
	p.stop = kit.NewButton(say.Stop.String(), func() {
		p.cutter.Stop()
		p.rest(say.StoppedCoarse.String())
		p.found.clear()
	})
	wide := canvas.NewRectangle(color.Transparent)
	wide.SetMinSize(fyne.NewSize(150, 0))
	p.working = container.NewHBox(container.NewStack(wide, p.bar), p.stop)
}

// makeLevers makes what changes how the tub is filled and stirred.
func (p *Page) makeLevers() fyne.CanvasObject {
	p.layout = newWordList(say.T("layout"), say.Layouts(), p.change, func(d *design.Design) *string { return &d.Blend.Layout })
	p.motion = newWordList(say.T("motion"), say.Motions(), p.change, func(d *design.Design) *string { return &d.Blend.Motion })
	p.strokes = p.slide(say.T("Strokes"), "blend.strokes", say.T("strokes"), func(d *design.Design, v float64) { d.Blend.Strokes = int(math.Round(v)) })
	p.foam = p.slide(say.T("Foam"), "blend.foam_volume_percent", say.T("foam share"), func(d *design.Design, v float64) { d.Blend.FoamVolumePercent = v })
	p.depth = p.slide(say.T("Depth"), "blend.stroke_depth_percent", say.T("stroke depth"), func(d *design.Design, v float64) { d.Blend.DepthPercent = v })
	p.handle = p.slide(say.T("Handle"), "blend.handle_mm", say.T("handle width"), func(d *design.Design, v float64) { d.Blend.HandleMM = v })
	kit.AlignSlides(p.strokes, p.foam, p.depth, p.handle)
	another := kit.NewButtonWithIcon(say.AnotherTub.String(), theme.ViewRefreshIcon(), func() {
		p.change(say.T("another tub"), func(d *design.Design) { d.Blend.Seed++ })
	})
	caption := page.Prose(say.StrokeLimit(page.Reads))
	caption.SizeName = theme.SizeNameCaptionText
	return container.NewVBox(
		container.New(&beside{}, labelled(say.FilledAs.String(), p.layout.list), labelled(say.StirredBy.String(), p.motion.list), another),
		container.New(&beside{even: true}, p.strokes, p.foam),
		container.New(&beside{even: true}, p.depth, p.handle),
		p.grams, caption)
}

func labelled(name string, o fyne.CanvasObject) fyne.CanvasObject {
	return container.NewBorder(nil, nil, widget.NewLabel(name), nil, o)
}

// Object implements page.Page.
func (p *Page) Object() fyne.CanvasObject { return p.object }

// Leave implements page.Page.
func (p *Page) Leave() {
	p.inView = false
	p.cutter.Forget()
	p.asked = rippleview.Request{}
	p.rest("")
}

// change commits one change of the design.
func (p *Page) change(step string, set func(*design.Design)) {
	d := p.host.Design()
	set(&d)
	p.host.Commit(d, step)
}

// slide returns a row for the setting at path, over its range in whole steps.
func (p *Page) slide(name, path, step string, set func(*design.Design, float64)) *kit.Slide {
	f, ok := design.FieldAt(path)
	if !ok {
		panic("no such setting: " + path) // a misspelt path, seen by every test
	}
	s := page.Slide(name, f.Unit, f.Min, f.Max, 1, 0)
	s.OnChanged = func(v float64) {
		d := p.host.Design()
		set(&d, v)
		p.host.Preview(d)
	}
	s.OnChangeEnded = func(v float64) { p.change(step, func(d *design.Design) { set(d, v) }) }
	return s
}
