package coldpage

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/desk/coldview"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// leverName is the room for a lever's name.
const leverName = 92

// lever is a number of the kitchen to be moved: the page follows the hand, the
// maker's file gets what it rests at.
func (p *Page) lever(v *view, name, path string, step float64) *kit.Slide {
	l := coldview.LeverOf(path, step)
	s := page.Slide(name, l.Unit, l.From, l.Max, l.Step, l.Decimals)
	s.NameWidth = leverName
	s.OnChanged = func(x float64) { p.change(func(k *cold.Profile) { *l.Value(k) = x }) }
	s.OnChangeEnded = func(float64) { p.keep(say.Of(l.About)) }
	v.levers = append(v.levers, func() { s.ShowValue(*l.Value(&p.kitchen)) })
	v.add(s)
	v.at[path] = s
	return s
}

// leadTo puts the keyboard on the lever of a setting, in the view shown or in the first
// that has it, and in sight.
func (p *Page) leadTo(path string) {
	of := p.views[p.current]
	if of.at[path] == nil {
		if i := slices.IndexFunc(p.views, func(v *view) bool { return v.at[path] != nil }); i >= 0 {
			of = p.views[i]
			p.choose(of.Question)
		}
	}
	o := of.at[path]
	if o == nil {
		return
	}
	page.ScrollTo(of.scroll, o)
	f, ok := o.(fyne.Focusable)
	if s, slide := o.(*kit.Slide); slide {
		f, ok = s.Focusable(), true
	}
	if ok {
		p.host.Window().Canvas().Focus(f)
	}
}

// selectOf is a select among options, kept up to date by show.
func selectOf(options []coldview.Option, changed func(value string)) (s *kit.Select, show func(value string)) {
	names := make([]string, len(options))
	for i, o := range options {
		names[i] = o.Name
	}
	s, put := page.SelectOf(names, func(i int) { changed(options[i].Value) })
	return s, func(value string) {
		put(slices.IndexFunc(options, func(o coldview.Option) bool { return o.Value == value }))
	}
}

// freezing adds what decides how a phase freezes before it meets the other.
func (p *Page) freezing(v *view) {
	p.lever(v, say.T("Freezer"), "freezer.air_c", 0.5)
	p.lever(v, say.T("Goes in at"), "layer.start_c", 1)
	form, show := selectOf(coldview.Vessels(), func(value string) {
		p.change(func(k *cold.Profile) { coldview.UseVessel(k, value) })
		p.keep(say.T("what a phase freezes in"))
	})
	v.add(form)
	v.at["layer.form"] = form
	depth := p.lever(v, say.T("Depth"), "layer.depth_mm", 1)
	v.levers = append(v.levers, func() {
		show(string(p.kitchen.Layer.Form))
		if p.kitchen.Layer.DepthMM == 0 && p.answer != nil {
			depth.ShowValue(v.OwnDepth(p.answer))
		}
	})
}

// stirring adds when to stir.
func (p *Page) stirring(v *view) {
	rule, show := selectOf(coldview.StirRules(), func(value string) {
		p.change(func(k *cold.Profile) { coldview.UseStirRule(k, value) })
		p.keep(say.T("when to stir"))
	})
	v.add(rule)
	every := p.lever(v, say.T("Every"), "layer.stir_every_min", 5)
	icy := p.lever(v, say.T("Edge frozen"), "layer.edge_ice_percent", 5)
	v.levers = append(v.levers, func() {
		by := coldview.StirRule(&p.kitchen)
		show(by)
		every.Show()
		icy.Hide()
		if by == coldview.ByTheEdge {
			every.Hide()
			icy.Show()
		}
	})
}

// tubShape adds the shape of the design's tub.
func (p *Page) tubShape(v *view) {
	s, show := selectOf(coldview.TubShapes(), func(value string) {
		d := p.host.Design()
		d.Tubs.Shape = design.Shape(value)
		p.host.Commit(d, say.T("tub shape"))
	})
	v.levers = append(v.levers, func() { show(string(p.host.Design().Tubs.Shape)) })
	v.at["tubs.shape"] = s
	v.add(s)
}

// calibration adds what a place's coefficient rests on, and the ways to
// measure it and to forget the measurement.
func (p *Page) calibration(v *view, kind cold.MeasurementKind) {
	word := page.Prose("")
	back := kit.NewButton(say.T("Undo"), func() { p.undoCalibration(kind) })
	reset := kit.NewButton(say.T("Forget"), func() { p.setFactor(kind, 1, "", say.T("calibration forgotten")) })
	measure := kit.NewButton(say.T("I have measured it…"), func() { p.calibrate(kind) })
	v.levers = append(v.levers, func() {
		at := coldview.PlaceOf(&p.kitchen, kind)
		word.SetText(say.Measured(page.Reads, *at))
		if reset.Disable(); at.Measured != "" {
			reset.Enable()
		}
		if back.Disable(); p.replaced.Has(p.kitchen.Name, kind) {
			back.Enable()
		}
	})
	v.add(page.Small(say.CalibrationHead(kind)), word, container.NewHBox(measure, back, reset))
}

// undoCalibration brings back what the last calibration replaced.
func (p *Page) undoCalibration(kind cold.MeasurementKind) {
	if was, ok := p.replaced.Take(p.kitchen.Name, kind); ok {
		p.setFactor(kind, was.Factor, was.Measured, say.T("calibration undone"))
	}
}

// setFactor keeps another factor, and on what it rests.
func (p *Page) setFactor(kind cold.MeasurementKind, factor float64, measured, step string) {
	at := coldview.PlaceOf(&p.kitchen, kind)
	at.Factor, at.Measured = factor, measured
	p.keep(step)
}
