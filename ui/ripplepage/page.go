// Package ripplepage is the page of the stirred tub.
package ripplepage

import (
	"errors"
	"fmt"
	"image/color"
	"math"
	"reflect"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/tub"
	"ripplewright/internal/desk/cutting"
	"ripplewright/internal/matter/ripple"
	"ripplewright/internal/show/card"
	"ripplewright/internal/show/report"
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
	asked  request
	object fyne.CanvasObject
}

// request is all that the pictures and the figures come from.
type request struct {
	cutting cutting.Job // but for Study
	sweet   ripple.Pair
	serving serving
}

// views are the choices of what is shown.
var views = [...]struct {
	name  string
	views []ripple.View
}{
	{"Side cut", []ripple.View{ripple.Side}},
	{"From above", []ripple.View{ripple.Top}},
	{"Both", []ripple.View{ripple.Side, ripple.Top}},
}

var viewTitles = [...]string{ripple.Side: "Side cut", ripple.Top: "Cut seen from above"}

// Pixels of the pictures along their longer side; of coarse ones the least, for
// both together.
const (
	coarsePixels = 220
	sharpPixels  = 900
	exportPixels = 1800
)

// New returns the page. drawn, if not nil, is told when sharp pictures are on
// screen.
func New(h page.Host, drawn func()) *Page {
	p := &Page{host: h, drawn: drawn, sharp: sharpPixels, large: exportPixels, pictures: kit.NewCutView(), nothing: page.Prose(""), status: widget.NewLabel(""),
		bar: widget.NewProgressBar(), grams: page.Prose(""), alike: page.Prose(""), found: newRibbonReport(h)}
	p.pictures.Reads = page.Reads
	p.cutter = cutting.NewCutter(h.Post, p.show, func(done float64) { p.bar.SetValue(max(done, p.bar.Value)) })
	p.pictures.OnSpace = func() { p.ask(p.host.Design(), p.host.Result()) }
	p.nothing.Alignment = fyne.TextAlignCenter
	p.status.Truncation = fyne.TextTruncateEllipsis

	var names []string
	for _, v := range views {
		names = append(names, v.name)
	}
	p.view = page.Choice(func() { p.Show() }, names...)
	p.view.Horizontal, p.view.Selected = true, views[2].name
	p.export = kit.NewButton("Export picture…", p.exportPicture)
	p.stop = kit.NewButton("Stop", func() {
		p.cutter.Stop()
		p.rest("Stopped: the picture is coarse.")
		p.found.clear()
	})

	p.layout = newWordList("layout", layouts[:], p.change, func(d *design.Design) *string { return &d.Blend.Layout })
	p.motion = newWordList("motion", motions[:], p.change, func(d *design.Design) *string { return &d.Blend.Motion })
	p.strokes = p.slide("Strokes", "blend.strokes", "strokes", func(d *design.Design, v float64) { d.Blend.Strokes = int(math.Round(v)) })
	p.foam = p.slide("Foam", "blend.foam_volume_percent", "foam share", func(d *design.Design, v float64) { d.Blend.FoamVolumePercent = v })
	p.depth = p.slide("Depth", "blend.stroke_depth_percent", "stroke depth", func(d *design.Design, v float64) { d.Blend.DepthPercent = v })
	p.handle = p.slide("Handle", "blend.handle_mm", "handle width", func(d *design.Design, v float64) { d.Blend.HandleMM = v })
	kit.AlignSlides(p.strokes, p.foam, p.depth, p.handle)
	another := kit.NewButtonWithIcon("Another tub", theme.ViewRefreshIcon(), func() {
		p.change("another tub", func(d *design.Design) { d.Blend.Seed++ })
	})
	p.colours = [2]*colourRow{newColourRow(p, "Custard", false), newColourRow(p, "Foam", true)}
	for _, l := range []*widget.Label{p.grams, p.alike} {
		l.Hide()
	}

	top := container.NewBorder(nil, nil, p.view, p.export)
	p.status.Alignment = fyne.TextAlignTrailing
	wide := canvas.NewRectangle(color.Transparent)
	wide.SetMinSize(fyne.NewSize(150, 0))
	p.working = container.NewHBox(container.NewStack(wide, p.bar), p.stop)
	// It stands over the foot of the pictures' room, beside their ruler.
	working := container.NewBorder(nil, container.NewBorder(nil, nil, nil, p.working, p.status), nil, nil)
	caption := page.Prose(fmt.Sprintf("At most %d strokes. Air lost by mixing too long is not computed.", ripple.MaxStrokes))
	caption.SizeName = theme.SizeNameCaptionText
	hands := container.NewVBox(
		container.New(&beside{}, labelled("Filled as", p.layout.list), labelled("Stirred by", p.motion.list), another),
		container.New(&beside{even: true}, p.strokes, p.foam),
		container.New(&beside{even: true}, p.depth, p.handle),
		p.grams, caption)
	left := container.NewBorder(top, hands, nil, nil,
		container.NewStack(p.pictures, working, container.NewVBox(layout.NewSpacer(), p.nothing, layout.NewSpacer())))
	colours := container.New(layout.NewFormLayout())
	for _, c := range p.colours {
		colours.Objects = append(colours.Objects, c.name, c.object)
	}
	right := page.Scrolled(page.Heading("Colours"), colours, p.alike, p.found.object)
	p.found.follow(right)
	split := container.NewHSplit(container.NewPadded(left), right)
	split.Offset = 0.63
	p.object = split
	p.rest("")
	return p
}

func labelled(name string, o fyne.CanvasObject) fyne.CanvasObject {
	return container.NewBorder(nil, nil, widget.NewLabel(name), nil, o)
}

// Title implements page.Page.
func (p *Page) Title() string { return "Ripple" }

// Object implements page.Page.
func (p *Page) Object() fyne.CanvasObject { return p.object }

// Leave implements page.Page.
func (p *Page) Leave() {
	p.cutter.Stop()
	p.asked = request{}
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
	s := kit.NewSlide(name, f.Unit, f.Min, f.Max, 1, 0)
	s.OnChanged = func(v float64) {
		d := p.host.Design()
		set(&d, v)
		p.host.Preview(d)
	}
	s.OnChangeEnded = func(v float64) { p.change(step, func(d *design.Design) { set(d, v) }) }
	return s
}

// Show implements page.Page.
func (p *Page) Show() {
	d, r := p.host.Design(), p.host.Result()
	p.layout.show(&d)
	p.motion.show(&d)
	p.strokes.ShowValue(float64(d.Blend.Strokes))
	p.foam.ShowValue(d.Blend.FoamVolumePercent)
	p.depth.ShowValue(d.Blend.DepthPercent)
	p.handle.ShowValue(d.Blend.HandleMM)
	p.colours[0].show(d.Blend.DenseColour)
	p.colours[1].show(d.Blend.FoamColour)
	p.showNotes(d, r)

	cuts, err := p.cutsOf(d, r)
	if err != nil {
		p.empty(err)
		return
	}
	p.nothing.Hide()
	p.pictures.Show()
	p.export.Enable()
	for i := range cuts {
		if len(p.cuts) == len(cuts) && p.cuts[i].Title == cuts[i].Title {
			cuts[i].Picture = p.cuts[i].Picture
		}
	}
	if !reflect.DeepEqual(cuts, p.cuts) {
		p.cuts = cuts
		p.pictures.ShowCuts(cuts)
	}
	p.ask(d, r)
}

// showNotes says where the picture does not follow the sliders and the colours.
func (p *Page) showNotes(d design.Design, r *model.Result) {
	text := ""
	if share := 100 * r.Blend.FoamVolume; d.Batch.Basis == design.BasisAsWritten && math.Abs(share-d.Blend.FoamVolumePercent) > 0.5 {
		text = say.AsWrittenFoam(page.Reads, share)
	}
	showNote(p.grams, text)
	text = ""
	if len(design.Validate(d)) == 0 {
		text = tooAlike(tub.Style(d))
	}
	showNote(p.alike, text)
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
	p.asked, p.cuts = request{}, nil
	p.rest("")
	p.export.Disable()
	p.pictures.Hide()
	p.nothing.SetText("No picture: " + reason(why) + ".")
	p.nothing.Show()
	p.found.clear()
}

// reason is why there is no picture, in the maker's units.
func reason(why error) string {
	var size *cutting.SizeError
	if errors.As(why, &size) {
		return say.NoCut(page.Reads, size.Tub)
	}
	return why.Error()
}

func (p *Page) chosen() []ripple.View {
	for _, v := range views {
		if v.name == p.view.Selected {
			return v.views
		}
	}
	return views[0].views
}

// cutsOf returns what is shown of d, without pictures.
func (p *Page) cutsOf(d design.Design, r *model.Result) ([]kit.CutFace, error) {
	if r.Blend.VolumeML == 0 {
		return nil, errors.New("the tub is empty; add ingredients to the custard or the foam on the bench")
	}
	size := tub.Size(d.Tubs)
	var cuts []kit.CutFace
	for _, v := range p.chosen() {
		if _, err := cutting.Of(d, r, v); err != nil {
			return nil, err
		}
		c := kit.CutFace{WidthMM: size.LengthMM, HeightMM: size.BreadthMM, CornerMM: size.CornerMM}
		if v == ripple.Side {
			c = kit.CutFace{WidthMM: size.LengthMM, HeightMM: size.FillMM, HeadMM: size.HeightMM - size.FillMM, Open: true}
		}
		c.Title = viewTitles[v] + ", " + page.Reads.Size(c.WidthMM, c.HeightMM)
		cuts = append(cuts, c)
	}
	return cuts, nil
}

// ask has the pictures and the figures made, if they are not what was asked for
// last.
func (p *Page) ask(d design.Design, r *model.Result) {
	if len(p.cuts) == 0 {
		return
	}
	q := request{sweet: report.SweetnessOf(r), serving: serving{d.Serving.TemperatureC, report.ServingOf(r)}}
	q.cutting = cutting.Job{Style: tub.Style(d), Fit: p.pictures.Pixels(p.host.Window().Canvas().Scale()), Sharp: p.sharp}
	for _, v := range p.chosen() {
		s, err := cutting.Of(d, r, v)
		if err != nil {
			return // Show has said why
		}
		q.cutting.Cuts = append(q.cutting.Cuts, s)
	}
	for _, size := range q.cutting.Fit {
		q.cutting.Sharp = min(max(q.cutting.Sharp, size.X, size.Y), ripple.MaxPixels)
	}
	q.cutting.Coarse = coarsePixels / len(q.cutting.Cuts)
	if reflect.DeepEqual(q, p.asked) {
		return
	}
	p.asked = q
	p.begin()
	c := q.cutting
	c.Study = func(rasters []*ripple.Raster) func() {
		f := q.study(rasters[0])
		return func() { p.found.show(f) }
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
	cuts, style := p.asked.cutting.Cuts, p.asked.cutting.Style
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
