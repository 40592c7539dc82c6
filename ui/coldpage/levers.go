package coldpage

import (
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/work/design"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// setting finds a kitchen's setting by its path.
func setting(path string) cold.Field {
	for _, f := range cold.Fields() {
		if f.Path == path {
			return f
		}
	}
	panic("no setting of a kitchen: " + path) // a misspelt path, seen by every test
}

// leverName is the room for a lever's name.
const leverName = 92

// lever is a number of the kitchen to be moved: the page follows the hand, the
// maker's file gets what it rests at.
func (p *Page) lever(v *coldView, name, path string, step float64) *kit.Slide {
	f := setting(path)
	lo := f.Min
	if f.Least > 0 {
		lo = f.Least
	}
	decimals := 0
	if step < 1 {
		decimals = 1
	}
	s := kit.NewSlide(name, f.Unit, lo, f.Max, step, decimals)
	s.NameWidth = leverName
	of := func(k *cold.Profile) *float64 { return f.At(k).(*float64) }
	s.OnChanged = func(x float64) { p.change(func(k *cold.Profile) { *of(k) = x }) }
	s.OnChangeEnded = func(float64) { p.keep(f.About) }
	v.levers = append(v.levers, func() { s.ShowValue(*of(&p.kitchen)) })
	v.add(s)
	return s
}

// wording is one of a few choices, in words.
type wording struct{ name, value string }

// selectOf is a select among options, kept up to date by show.
func selectOf(options []wording, changed func(value string)) (s *widget.Select, show func(value string)) {
	names := make([]string, len(options))
	for i, o := range options {
		names[i] = o.name
	}
	s = kit.NewSelect(names, nil)
	s.OnChanged = mishap.With(func(string) { changed(options[s.SelectedIndex()].value) })
	return s, func(value string) {
		for _, o := range options {
			if o.value == value {
				page.ShowSelected(s, o.name)
			}
		}
	}
}

var vessels = []wording{
	{"In a shallow dish", string(cold.FormDish)},
	{"In a mixing bowl", string(cold.FormBowl)},
	{"In a lidded box", string(cold.FormBox)},
}

// freezing adds what decides how a phase freezes before it meets the other.
func (p *Page) freezing(v *coldView) {
	p.lever(v, "Freezer", "freezer.air_c", 0.5)
	p.lever(v, "Goes in at", "layer.start_c", 1)
	form, show := selectOf(vessels, func(value string) {
		p.change(func(k *cold.Profile) {
			// Another vessel has another depth, until one is chosen.
			if k.Layer.Form != cold.Form(value) {
				k.Layer.Form, k.Layer.DepthMM = cold.Form(value), 0
			}
		})
		p.keep("what a phase freezes in")
	})
	v.add(form)
	depth := p.lever(v, "Depth", "layer.depth_mm", 1)
	v.levers = append(v.levers, func() {
		show(string(p.kitchen.Layer.Form))
		if p.kitchen.Layer.DepthMM == 0 && p.answer != nil {
			depth.ShowValue(p.ownDepth(v))
		}
	})
}

// ownDepth is the depth that a vessel without one has.
func (p *Page) ownDepth(v *coldView) float64 {
	if len(p.views) > foamView && v == p.views[foamView] {
		return p.answer.StillFreeze.Foam.Vessel.HeightMM
	}
	return p.answer.StillFreeze.Dense.Vessel.HeightMM
}

// The stirRules of stirring; by the clock is a StirEveryMin above 0.
var stirRules = []wording{{"Stir by the clock", "clock"}, {"Stir when the edge is icy", "edge"}}

// stirring adds when to stir.
func (p *Page) stirring(v *coldView) {
	rule, show := selectOf(stirRules, func(value string) {
		p.change(func(k *cold.Profile) {
			k.Layer.StirEveryMin = 0
			if value == "clock" {
				k.Layer.StirEveryMin = cold.Default().Layer.StirEveryMin
			}
		})
		p.keep("when to stir")
	})
	v.add(rule)
	every := p.lever(v, "Every", "layer.stir_every_min", 5)
	icy := p.lever(v, "Edge frozen", "layer.edge_ice_percent", 5)
	v.levers = append(v.levers, func() {
		if p.kitchen.Layer.StirEveryMin > 0 {
			show("clock")
			every.Show()
			icy.Hide()
			return
		}
		show("edge")
		every.Hide()
		icy.Show()
	})
}

var tubShapes = []wording{
	{"Round tub, about as high as wide", string(design.ShapeRound)},
	{"Round tub, wide and shallow", string(design.ShapeShallow)},
	{"Box, one and a half times as long as wide", string(design.ShapeRectangle)},
}

// tubShape adds the shape of the design's tub.
func (p *Page) tubShape(v *coldView) {
	s, show := selectOf(tubShapes, func(value string) {
		d := p.host.Design()
		d.Tubs.Shape = design.Shape(value)
		p.host.Commit(d, "tub shape")
	})
	v.levers = append(v.levers, func() { show(string(p.host.Design().Tubs.Shape)) })
	v.add(s)
}

// calibration adds what a place's coefficient rests on, and the ways to
// measure it and to forget the measurement.
func (p *Page) calibration(v *coldView, kind cold.MeasurementKind) {
	word := page.Prose("")
	back := kit.NewButton("Undo", func() { p.undoCalibration(kind) })
	reset := kit.NewButton("Forget", func() { p.setFactor(kind, 1, "", "calibration forgotten") })
	measure := kit.NewButton("I have measured it…", func() { p.calibrate(kind) })
	v.levers = append(v.levers, func() {
		at := placeOf(&p.kitchen, kind)
		word.SetText("Nothing is measured in this kitchen yet: one measured time makes the answers closer.")
		reset.Disable()
		if at.Measured != "" {
			word.SetText("Measured: " + minus(at.Measured) + ". Heat goes " + page.Number(at.Factor, 2) + " times as fast as first assumed.")
			reset.Enable()
		}
		if back.Disable(); p.canUndo(kind) {
			back.Enable()
		}
	})
	v.add(page.Small("Calibration of the "+placeName(kind)), word, container.NewHBox(measure, back, reset))
}

// undoCalibration brings back what the last calibration replaced.
func (p *Page) undoCalibration(kind cold.MeasurementKind) {
	key := p.kitchen.Name + placeName(kind)
	k, ok := p.undo[key]
	if !ok {
		return
	}
	delete(p.undo, key)
	at := placeOf(&k, kind)
	p.setFactor(kind, at.Factor, at.Measured, "calibration undone")
}

func (p *Page) canUndo(kind cold.MeasurementKind) bool {
	_, ok := p.undo[p.kitchen.Name+placeName(kind)]
	return ok
}

// placeOf is the place that a kind of measurement tells of.
func placeOf(k *cold.Profile, kind cold.MeasurementKind) *cold.Place {
	if kind == cold.ScoopedWell {
		return &k.Counter
	}
	return &k.Freezer
}

func placeName(kind cold.MeasurementKind) string {
	if kind == cold.ScoopedWell {
		return "counter"
	}
	return "freezer"
}

// setFactor keeps another factor, and on what it rests.
func (p *Page) setFactor(kind cold.MeasurementKind, factor float64, measured, step string) {
	at := placeOf(&p.kitchen, kind)
	at.Factor, at.Measured = factor, measured
	p.keep(step)
}
