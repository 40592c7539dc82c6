package ui

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/desk/places"
	"ripplewright/internal/show/figure"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
	"ripplewright/ui/page/pagetest"
)

// keys gives a shortcut to what has the keyboard.
func (b *bed) keys(key fyne.KeyName, with fyne.KeyModifier) {
	b.t.Helper()
	f, ok := b.win.Canvas().Focused().(fyne.Shortcutable)
	require.True(b.t, ok, "%T takes no shortcuts", b.win.Canvas().Focused())
	f.TypedShortcut(&desktop.CustomShortcut{KeyName: key, Modifier: with})
	b.frame()
}

func TestALineGoesThroughAllListsAndBack(t *testing.T) {
	b := newBed(t)
	before := b.Design()
	dense := before.Dense.Lines
	last := len(dense) - 1
	l := b.listOf(design.DensePart)
	b.win.Canvas().Focus(l.rows[last].amount.Focusable())
	for range len(before.Foam.Lines) + 2 {
		b.keys(fyne.KeyDown, fyne.KeyModifierAlt)
	}
	d := b.Design()
	require.Equal(t, dense[last], d.Foam.Syrup.Lines[0], "through the foam into the syrup")
	assert.Equal(t, dense[:last], d.Dense.Lines)
	assert.Equal(t, before.Foam.Lines, d.Foam.Lines)
	assert.Same(t, b.listOf(design.SyrupPart).rows[0].amount.Focusable(), b.win.Canvas().Focused(), "the keyboard goes with it")
	for range len(before.Foam.Lines) + 2 {
		b.keys(fyne.KeyUp, fyne.KeyModifierAlt)
	}
	assert.True(t, before.Equal(b.Design()))
	for range last + 3 {
		b.keys(fyne.KeyUp, fyne.KeyModifierAlt)
	}
	assert.Equal(t, dense[last], b.Design().Dense.Lines[0], "and not beyond the first")
}

func TestALineIsDoubledAndTheSecondHasTheKeyboard(t *testing.T) {
	b := newBed(t)
	before := b.Design().Dense.Lines
	l := b.listOf(design.DensePart)
	b.win.Canvas().Focus(l.rows[0].name)
	b.keys(fyne.KeyD, fyne.KeyModifierControl|fyne.KeyModifierShift)
	now := b.Design().Dense.Lines
	require.Len(t, now, len(before)+1)
	assert.Equal(t, before[0], now[0])
	assert.Equal(t, before[0], now[1])
	assert.Equal(t, before[1:], now[2:])
	assert.Same(t, l.rows[1].amount.Focusable(), b.win.Canvas().Focused())
	b.undo()
	assert.Equal(t, before, b.Design().Dense.Lines, "one step")
}

func TestALineIsDraggedToAnotherList(t *testing.T) {
	b := newBed(t)
	before := b.Design()
	from, to := b.listOf(design.DensePart), b.listOf(design.FoamPart)
	b.win.Resize(fyne.NewSize(startWidth+20, startHeight)) // the test driver lays out anew only then
	target := fyne.CurrentApp().Driver().AbsolutePositionForObject(to.rows[0].name)
	from.rows[0].name.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{AbsolutePosition: target.AddXY(10, 2)}})
	assert.Contains(t, b.status.Text, say.Part(design.FoamPart))
	from.rows[0].name.DragEnd()
	b.frame()
	assert.Equal(t, before.Dense.Lines[0], b.Design().Foam.Lines[0])
	assert.Equal(t, before.Dense.Lines[1:], b.Design().Dense.Lines)

	from.rows[0].name.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{AbsolutePosition: fyne.NewPos(2, 2)}})
	held := b.Design()
	from.rows[0].name.DragEnd()
	b.frame()
	assert.True(t, held.Equal(b.Design()), "let go of elsewhere it stays")
}

func TestTheWheelStepsOnlyTheAmountThatHasTheKeyboard(t *testing.T) {
	b := newBed(t)
	l := b.listOf(design.DensePart)
	var w *kit.Wheel
	for _, o := range test.LaidOutObjects(l.box.Objects[0]) {
		if x, ok := o.(*kit.Wheel); ok {
			w = x
		}
	}
	require.NotNil(t, w)
	was := b.Design().Dense.Lines[0]
	up := &fyne.ScrollEvent{Scrolled: fyne.NewDelta(0, 10)}
	w.Scrolled(up)
	b.frame()
	assert.Equal(t, was, b.Design().Dense.Lines[0], "scrolling past changes nothing")
	b.win.Canvas().Focus(l.rows[0].amount.Focusable())
	w.Scrolled(up)
	b.frame()
	assert.NotEqual(t, was, b.Design().Dense.Lines[0])
}

// Each warning of a design that has them leads somewhere that takes the keyboard.
func TestEachWarningLeadsToWhatCausesIt(t *testing.T) {
	b := newBed(t)
	for _, x := range []struct {
		where string
		has   func() fyne.Focusable
	}{
		{"dense.lines[1]", func() fyne.Focusable { return b.listOf(design.DensePart).rows[1].name }},
		{"foam.syrup.lines[0]", func() fyne.Focusable { return b.listOf(design.SyrupPart).rows[0].name }},
		{"dense.stove_loss_percent", func() fyne.Focusable { return b.bench.dense.knobs[0].Focusable() }},
		{"foam.syrup.cook_temperature_c", func() fyne.Focusable { return b.bench.foam.knobs[0].Focusable() }},
		{"blend", func() fyne.Focusable { return b.bench.tub.knobs[0].Focusable() }},
		{"serving.temperature_c", func() fyne.Focusable { return b.bench.rail }},
		{"dense", func() fyne.Focusable { return b.listOf(design.DensePart).entry }},
		{"foam.syrup", func() fyne.Focusable { return b.listOf(design.SyrupPart).entry }},
	} {
		b.turnTo(places.Figures)
		b.lead(x.where)
		assert.Equal(t, places.Bench, b.way.At(), x.where)
		assert.Same(t, x.has(), b.win.Canvas().Focused(), x.where)
	}
	b.lead("tubs.fill_percent")
	assert.Contains(t, b.dialogTexts(), "Tub filled")
	b.lead("foam.syrup.weighed_g")
	assert.Contains(t, b.dialogTexts(), say.SyrupWeighing(page.Reads, 0).Title)
	b.lead("eggs")
	assert.Contains(t, b.dialogTexts(), "Use whole eggs")
}

func TestTheReasonsOpenFromTheBenchAndLeadOn(t *testing.T) {
	b := newBed(t)
	d := b.Design()
	d.Serving.TemperatureC = -22
	d.Kitchen.AltitudeM = 3000
	b.Commit(d, "cold")
	b.frame()
	require.NotEmpty(t, b.Result().Warnings)
	b.askWhy()
	text := b.dialogTexts()
	for _, w := range b.Result().Warnings {
		assert.Contains(t, strings.Join(strings.Fields(text), " "), strings.Join(strings.Fields(say.Severity(w.Severity)), " "))
	}
	for _, o := range test.LaidOutObjects(b.win.Canvas().Overlays().Top()) {
		if x, ok := o.(*kit.Button); ok && x.Text == say.ShowCause.String() {
			test.Tap(x)
			break
		}
	}
	b.frame()
	assert.NotContains(t, b.dialogTexts(), say.WhatToKnow.String())
	assert.Equal(t, places.Bench, b.way.At())
}

// Every figure of every table says what it is made of, by which equation, after whom
// and how sure.
func TestEachFigureOpensToHowItIsComputed(t *testing.T) {
	b := newBed(t)
	r := b.Result()
	heads, food := figure.FoodList(page.Reads, r)
	of, more := figure.GramMoreOf(page.Reads, r, 2)
	for _, table := range []struct {
		listed []figure.Listed
		heads  []string
	}{{figure.List(page.Reads, r), figure.Phases.Columns}, {food, heads}, {figure.ListOf(page.Reads, r, &figure.Eggs), figure.Eggs.Columns}, {more, of}} {
		require.NotEmpty(t, table.listed)
		for _, l := range table.listed {
			said := map[string]string{}
			for _, x := range l.Of.Computed(page.Reads, table.listed, table.heads) {
				said[x.Title] = x.Text
			}
			for _, part := range []string{say.FigureFrom.String(), say.FigureBy.String(), say.FigureAfter.String(), say.FigureBand.String()} {
				assert.NotEmpty(t, said[part], "%s of %s", part, l.Of.Key)
			}
		}
	}
	b.askHow()
	assert.Contains(t, b.dialogTexts(), figure.Phases.Row("initial_freezing_point_c").Source[:20])
	require.True(t, kit.Dismiss(b.win.Canvas()), "Escape closes it")
	assert.Empty(t, b.dialogTexts())
}

// All tables of the page of all figures open by the keyboard.
func TestAllTablesOfThePageOfFiguresOpen(t *testing.T) {
	b := newBed(t)
	b.turnTo(places.Figures)
	b.frame()
	opened := 0
	for _, table := range pagetest.All[*kit.OpenFigures](b.shown().Object()) {
		b.win.Canvas().Focus(table)
		table.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
		assert.Contains(t, b.dialogTexts(), say.FigureBy.String())
		require.True(t, kit.Dismiss(b.win.Canvas()))
		opened++
	}
	assert.Equal(t, 4, opened, "phases, nutrition, eggs, a gram more; nothing has a price here")
}
