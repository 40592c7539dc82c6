package kit_test

import (
	"fmt"
	"image"
	"image/color"
	"math"
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
	base "fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/desk/typed"
	"ripplewright/internal/show/say"
	"ripplewright/ui/kit"
	"ripplewright/ui/theme"
)

// window puts o on a test canvas of a size.
func window(t *testing.T, o fyne.CanvasObject, w, h float32) fyne.Window {
	t.Helper()
	test.NewTempApp(t)
	fyne.CurrentApp().Settings().SetTheme(theme.New(theme.Options{Variant: theme.Light}))
	win := test.NewWindow(o)
	win.SetPadded(false)
	win.Resize(fyne.NewSize(w, h))
	t.Cleanup(win.Close)
	return win
}

func key(f fyne.Focusable, name fyne.KeyName) { f.TypedKey(&fyne.KeyEvent{Name: name}) }

func dragTo(d fyne.Draggable, x float32) {
	d.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(x, 10)}})
}

// log collects what a widget reports.
type log []string

func (l *log) changed(v float64) { *l = append(*l, fmt.Sprintf("changed %g", v)) }
func (l *log) ended(v float64)   { *l = append(*l, fmt.Sprintf("ended %g", v)) }
func (l *log) take() []string {
	was := *l
	*l = nil
	return was
}

func newRail(t *testing.T) (*kit.Rail, *log) {
	r, l := kit.NewRail(), &log{}
	r.OnChanged, r.OnChangeEnded = l.changed, l.ended
	window(t, r, 900, 180)
	r.ShowRail(sampleRail())
	return r, l
}

func TestShowCallsNobodyBack(t *testing.T) {
	r, l := newRail(t)
	r.ShowServing(-9)
	assert.Equal(t, -9.0, r.Serving())
	s := kit.NewSlide("Overrun", "%", 0, 100, 1, 0)
	s.OnChanged, s.OnChangeEnded = l.changed, l.ended
	n := kit.NewNumberField("g", 0, 100, 1)
	n.OnChanged = l.changed
	window(t, s, 400, 60)
	for _, v := range []float64{10, 10.4, math.NaN(), 900} {
		s.ShowValue(v)
		n.ShowValue(v)
	}
	f := kit.NewFinder("", []kit.FinderItem{{ID: "a", Title: "A"}})
	f.OnChosen = func(kit.FinderItem) { t.Error("told of a choice nobody made") }
	f.ShowItems([]kit.FinderItem{{ID: "b", Title: "B"}, {ID: "c", Title: "C"}})
	f.Reset()
	assert.Empty(t, l.take())
}

func TestRailDragReportsOnTheWayAndOnceAtRest(t *testing.T) {
	r, l := newRail(t)
	dragTo(r, 400)
	dragTo(r, 500)
	dragTo(r, 500)
	on := l.take()
	require.Len(t, on, 2, "a motion that changes nothing is no change")
	r.DragEnd()
	assert.Equal(t, []string{fmt.Sprintf("ended %g", r.Serving())}, l.take())
	assert.Zero(t, math.Mod(r.Serving(), kit.RailStep))
	dragTo(r, -50)
	assert.Equal(t, kit.RailMin, r.Serving())
	dragTo(r, 5000)
	assert.Equal(t, kit.RailMax, r.Serving())
}

func TestRailKeysStepHalfADegree(t *testing.T) {
	r, l := newRail(t)
	key(r, fyne.KeyRight)
	assert.Equal(t, []string{"changed -12.5", "ended -12.5"}, l.take())
	key(r, fyne.KeyLeft)
	key(r, fyne.KeyPageDown)
	assert.Equal(t, -18.0, r.Serving())
	key(r, fyne.KeyHome)
	assert.Equal(t, -24.0, r.Serving())
	l.take()
	key(r, fyne.KeyHome)
	assert.Empty(t, l.take(), "already there")
	key(r, fyne.KeyEnd)
	assert.Equal(t, -4.0, r.Serving())
}

func TestAKeyHeldDownIsOneChange(t *testing.T) {
	r, l := newRail(t)
	right := &fyne.KeyEvent{Name: fyne.KeyRight}
	r.KeyDown(right)
	r.TypedKey(right)
	r.TypedKey(right)
	r.KeyUp(right)
	assert.Equal(t, []string{"changed -12.5", "changed -12", "ended -12"}, l.take())

	r.KeyDown(&fyne.KeyEvent{Name: desktop.KeyShiftLeft})
	r.KeyDown(right)
	r.TypedKey(right)
	assert.Equal(t, []string{"changed -7"}, l.take(), "ten steps with shift")
	r.FocusLost()
	assert.Equal(t, []string{"ended -7"}, l.take(), "leaving ends the change")
}

func TestNumberCountsOnEnterAndOnLeaving(t *testing.T) {
	n, l := kit.NewNumberField("g", 0, 5000, 1), &log{}
	n.OnChanged = l.changed
	win := window(t, n, 200, 80)
	n.ShowValue(12)
	field := n.Focusable()
	retype := func(s string) {
		win.Canvas().Focus(field)
		field.(fyne.Shortcutable).TypedShortcut(&fyne.ShortcutSelectAll{})
		for _, r := range s {
			field.TypedRune(r)
		}
	}
	retype("80,5")
	assert.Empty(t, l.take(), "nothing counts while typing")
	key(field, fyne.KeyReturn)
	assert.Equal(t, []string{"changed 80.5"}, l.take())
	retype("99")
	win.Canvas().Unfocus()
	assert.Equal(t, []string{"changed 99"}, l.take())

	retype("9000")
	key(field, fyne.KeyReturn)
	var bad *typed.NumberError
	require.ErrorAs(t, n.Problem(), &bad)
	assert.True(t, bad.Outside)
	assert.EqualError(t, bad, "must be 0 to 5000 g")
	n.ShowValue(50)
	assert.Error(t, n.Problem(), "what is being typed is left alone")
	key(field, fyne.KeyEscape)
	assert.NoError(t, n.Problem())
	assert.Equal(t, 50.0, n.Value())
	assert.Empty(t, l.take())

	key(field, fyne.KeyUp)
	key(field, fyne.KeyPageDown)
	assert.Equal(t, []string{"changed 50.1", "changed 49.1"}, l.take())
}

func TestANumberThatMayBeUnknownCanBeEmptied(t *testing.T) {
	for _, empties := range []bool{false, true} {
		l := &log{}
		n := kit.NewNumberField("g", 0, 1000, 0)
		n.Empties, n.OnChanged = empties, l.changed
		win := window(t, n, 200, 80)
		win.Canvas().Focus(n.Focusable())
		test.Type(n.Focusable(), "212")
		key(n.Focusable(), fyne.KeyReturn)
		require.Equal(t, []string{"changed 212"}, l.take())
		for range 3 {
			key(n.Focusable(), fyne.KeyBackspace)
		}
		win.Canvas().Unfocus()
		if empties {
			assert.True(t, math.IsNaN(n.Value()))
			assert.Equal(t, []string{"changed NaN"}, l.take())
		} else {
			assert.Equal(t, 212., n.Value())
			assert.Empty(t, l.take())
		}
	}
}

func TestANumberIsWrittenWithoutClosingZeros(t *testing.T) {
	n := kit.NewNumberField("g", 0, 5000, 2)
	window(t, n, 200, 80)
	for v, want := range map[float64]string{500: "500", 1.5: "1.5", 0.25: "0.25", 0: "0", -0.001: "0", 1200: "1200"} {
		n.ShowValue(v)
		assert.Equal(t, want, n.Focusable().(interface{ SelectedText() string }).SelectedText()+text(n))
	}
}

// text is what stands in the field.
func text(n *kit.NumberField) string {
	for _, o := range test.LaidOutObjects(n) {
		if x, ok := o.(*canvas.Text); ok && x.Text != n.Unit && x.Text != "" {
			return x.Text
		}
	}
	return ""
}

func TestTypingIsUndoneInTheFieldAsLongAsItIsNotSettled(t *testing.T) {
	n, l := kit.NewNumberField("g", 0, 5000, 1), &log{}
	n.OnChanged = l.changed
	win := window(t, n, 200, 80)
	n.ShowValue(12)
	field := n.Focusable().(interface {
		fyne.Focusable
		Typing() bool
		Undo()
		ByKeys() bool
	})
	win.Canvas().Focus(field)
	assert.False(t, field.Typing())
	field.TypedRune('9')
	assert.True(t, field.Typing(), "the text was selected, and is replaced")
	field.Undo()
	field.Undo()
	assert.False(t, field.Typing(), "undone as far as the value that was there")
	field.TypedRune('7')
	key(field, fyne.KeyReturn)
	assert.False(t, field.Typing())
	assert.Equal(t, []string{"changed 127"}, l.take())

	byKeys := false
	n.OnChanged = func(float64) { byKeys = field.ByKeys() }
	key(field, fyne.KeyUp)
	assert.True(t, byKeys)
	field.TypedRune('5')
	key(field, fyne.KeyReturn)
	assert.False(t, byKeys)
}

func TestALogarithmicSlideReachesBothEndsAndEveryValueByKeys(t *testing.T) {
	s, l := kit.NewSlide("Tubs", "", 1, 500, 1, 0), &log{}
	s.Logarithmic()
	s.OnChanged, s.OnChangeEnded = l.changed, l.ended
	window(t, s, 500, 60)
	s.ShowValue(200)
	assert.Equal(t, 200.0, s.Value())
	key(s.Focusable(), fyne.KeyRight)
	assert.Equal(t, 201.0, s.Value())
	seen := map[float64]bool{}
	for x := float32(-20); x < 400; x++ {
		dragTo(s.Focusable().(fyne.Draggable), x)
		seen[s.Value()] = true
		assert.Zero(t, math.Mod(s.Value(), 1))
	}
	for _, v := range []float64{1, 2, 3, 4, 5, 6, 7, 8, 100, 500} {
		assert.True(t, seen[v], "%g", v)
	}
}

func TestSlideKeepsWhatIsBetweenItsSteps(t *testing.T) {
	s, l := kit.NewSlide("Cook to", "°C", 100.25, 160, .5, 2), &log{}
	s.OnChanged, s.OnChangeEnded = l.changed, l.ended
	window(t, s, 500, 60)
	s.ShowValue(118.1)
	assert.Equal(t, 118.1, s.Value())
	key(s.Focusable(), fyne.KeyHome)
	assert.Equal(t, []string{"changed 100.25", "ended 100.25"}, l.take())
	key(s.Focusable(), fyne.KeyRight)
	assert.Equal(t, 100.75, s.Value(), "steps count from the least value")
	l.take()
	dragTo(s.Focusable().(fyne.Draggable), 100)
	dragTo(s.Focusable().(fyne.Draggable), 140)
	s.Focusable().(fyne.Draggable).DragEnd()
	got := l.take()
	require.Len(t, got, 3)
	assert.Equal(t, fmt.Sprintf("ended %g", s.Value()), got[2])
	s.Disable()
	dragTo(s.Focusable().(fyne.Draggable), 20)
	assert.Empty(t, l.take(), "a disabled row takes no hand")
}

func TestFinderRanksTheTitlesBeginningFirst(t *testing.T) {
	var chosen []string
	cancelled := 0
	f := kit.NewFinder("", []kit.FinderItem{
		{ID: "butter", Title: "Buttermilk", Group: "dairy"}, {ID: "oat", Title: "Oat milk"},
		{ID: "milk", Title: "Milk, whole"}, {ID: "powder", Title: "Skimmed powder", Subtitle: "milk solids"},
		{ID: "creme", Title: "Crème épaisse"}, {ID: "sugar", Title: "Sugar"},
	})
	f.OnChosen = func(it kit.FinderItem) { chosen = append(chosen, it.ID) }
	f.OnCancelled = func() { cancelled++ }
	window(t, f, 300, 300)
	ids := func() (ids []string) {
		for _, it := range f.Found() {
			ids = append(ids, it.ID)
		}
		return
	}
	test.Type(f.Focusable(), "milk")
	assert.Equal(t, []string{"milk", "oat", "butter", "powder"}, ids())
	key(f.Focusable(), fyne.KeyDown)
	key(f.Focusable(), fyne.KeyDown)
	key(f.Focusable(), fyne.KeyUp)
	assert.Empty(t, chosen, "moving is not taking")
	key(f.Focusable(), fyne.KeyReturn)
	assert.Equal(t, []string{"oat"}, chosen)
	f.Reset()
	test.Type(f.Focusable(), "CREME ep")
	assert.Equal(t, []string{"creme"}, ids())
	f.Reset()
	test.Type(f.Focusable(), "skimed powdre")
	assert.Equal(t, []string{"powder"}, ids(), "slips of the finger are forgiven")
	f.Reset()
	test.Type(f.Focusable(), "xyzzy")
	key(f.Focusable(), fyne.KeyReturn)
	key(f.Focusable(), fyne.KeyDown)
	assert.Len(t, chosen, 1, "nothing to take")
	key(f.Focusable(), fyne.KeyEscape)
	assert.Equal(t, 1, cancelled)
}

func TestPlotReadsUnderTheMouseAndByKeys(t *testing.T) {
	p := kit.NewPlot()
	var said []string
	p.OnRead = func(s string) { said = append(said, s) }
	window(t, p, 500, 300)
	p.ShowPlot(samplePlot())
	p.MouseMoved(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(250, 100)}})
	require.Len(t, said, 1)
	assert.Contains(t, said[0], "core −")
	p.MouseOut()
	assert.Equal(t, "", said[1])
	key(p, fyne.KeyHome)
	assert.Equal(t, "hours in the freezer 0.0; core −5.0; mean −5.0; outer ring −6.0", p.Reading())
}

func TestHintsFollowTheMouseAndOtherwiseTheFocus(t *testing.T) {
	test.NewTempApp(t)
	var said []string
	h := kit.NewHints(func(s string) { said = append(said, s) })
	n := kit.NewNumberField("g", 0, 1, 0)
	win := window(t, h.Wrap(n, "grams of it"), 200, 60)
	win.Canvas().Focus(n.Focusable())
	h.Look(win.Canvas())
	h.Look(win.Canvas())
	assert.Equal(t, []string{"grams of it"}, said)

	taps := 0
	b := widget.NewButton("Go", func() { taps++ })
	win.SetContent(h.Wrap(b, "goes"))
	win.Resize(fyne.NewSize(200, 60))
	test.MoveMouse(win.Canvas(), fyne.NewPos(50, 20))
	test.TapCanvas(win.Canvas(), fyne.NewPos(50, 20))
	assert.Equal(t, "goes", said[len(said)-1])
	assert.Equal(t, 1, taps, "taps go through")
}

func TestWithoutACutTheFoamLiesLevelOnTheCustard(t *testing.T) {
	// How high it lies is tested beside the drawing. Below the food's surface, at
	// row 95, there is foam and then custard down to the floor.
	last := -1
	for _, share := range []float64{0, .25, .4, .75, 1} {
		v := kit.NewTubView()
		win := window(t, v, 400, 400)
		v.ShowTub(kit.Tub{TopMM: 90, BaseMM: 70, HeightMM: 90, Fill: .9, Foam: share,
			DenseColour: color.NRGBA{R: 250, A: 255}, FoamColour: color.NRGBA{R: 60, G: 60, B: 250, A: 255}})
		img := win.Canvas().Capture()
		dense, foam := 0, 0
		for y := 95; y < 360; y++ {
			r, _, b, _ := img.At(200, y).RGBA()
			switch {
			case b > r+0x3000:
				assert.Zero(t, dense, "share %g: foam under custard at %d", share, y)
				foam++
			case r > b+0x9000:
				dense++
			}
		}
		assert.Greater(t, foam, last, "share %g", share)
		assert.Equal(t, share == 0, foam == 0, "share %g", share)
		assert.Equal(t, share == 1, dense == 0, "share %g", share)
		last = foam
	}
}

func TestTubShowsAGivenCut(t *testing.T) {
	cut := image.NewRGBA(image.Rect(0, 0, 30, 30))
	for i := range cut.Pix {
		cut.Pix[i] = 255
	}
	for y := 0; y < 30; y++ {
		for x := 0; x < 30; x++ {
			cut.Set(x, y, color.NRGBA{G: 200, A: 255})
		}
	}
	v := kit.NewTubView()
	win := window(t, v, 300, 300)
	v.ShowTub(kit.Tub{Fill: .9, Foam: math.NaN(), Cut: cut})
	r, g, b, _ := win.Canvas().Capture().At(150, 200).RGBA()
	assert.Equal(t, [3]uint32{0, 200 * 257, 0}, [3]uint32{r, g, b})
}

func TestFiguresShowADashForTheUnknown(t *testing.T) {
	test.NewTempApp(t)
	f := sampleFigures()
	window(t, f, 400, 200)
	shown := func() (texts []string) {
		for _, o := range test.LaidOutObjects(f) {
			if x, ok := o.(*canvas.Text); ok {
				texts = append(texts, x.Text)
			}
		}
		return
	}
	f.ShowFigures([]say.TableRow{{Name: "Freezing point", Unit: "°C", Cells: []string{"−2.6", ""}}})
	assert.Equal(t, []string{"Custard", "Foam", "Tub", "Freezing point", "−2.6", "–", "–", "°C"}, shown())
	f.ShowFigures([]say.TableRow{{Name: "Freezing point", Unit: "°C", Cells: []string{"−2.7", "", "0"}}})
	assert.Equal(t, []string{"Custard", "Foam", "Tub", "Freezing point", "−2.7", "–", "0", "°C"}, shown())
}

func TestATileIsChosenByTapAndByKey(t *testing.T) {
	taps := 0
	tile := kit.NewTile(func() { taps++ })
	window(t, tile, 200, 100)
	tile.ShowTile(kit.TileView{Title: "Leave out", Value: "9 to 14 min"}, true)
	test.Tap(tile)
	key(tile, fyne.KeySpace)
	key(tile, fyne.KeyReturn)
	key(tile, fyne.KeyLeft)
	assert.Equal(t, 3, taps)
	v, chosen := tile.View()
	assert.Equal(t, "9 to 14 min", v.Value)
	assert.True(t, chosen)
}

func TestABookIsAsLargeAsItsOpenLeaf(t *testing.T) {
	a, b := widget.NewLabel("a"), widget.NewLabel("a much longer leaf")
	book := kit.NewLeaves(a, b)
	window(t, book, 300, 100)
	assert.Equal(t, a.MinSize(), book.MinSize())
	assert.False(t, b.Visible())
	kit.Turn(book, b)
	assert.Equal(t, b.MinSize(), book.MinSize())
	assert.False(t, a.Visible())
	assert.Equal(t, book.Size(), b.Size())
}

func TestLinesCutWhatIsTooLongAndTellItUncut(t *testing.T) {
	l := kit.NewLines(2, fyne.TextAlignLeading, base.SizeNameText, fyne.TextStyle{})
	win := window(t, l, 160, 60)
	shown := test.WidgetRenderer(l).(interface{ Texts() []string }).Texts
	const long = "freezes at −2.9 °C, 71 % of water frozen"
	l.ShowText("short\n" + long)
	require.Len(t, shown(), 2)
	assert.Equal(t, "short", shown()[0])
	assert.Regexp(t, `^freezes at .*[^ ,(]…$`, shown()[1])
	assert.Equal(t, "short\n"+long, l.Text())
	win.Resize(fyne.NewSize(600, 60))
	assert.Equal(t, long, shown()[1], "wider, it has room")
	l.ShowText("one line only")
	assert.Equal(t, []string{"one line only"}, shown())
	l.ShowTexts("short\n"+long, "shorter\nfreezes at −2.9 °C")
	assert.Equal(t, []string{"short", long}, shown())
	win.Resize(fyne.NewSize(180, 60))
	assert.Equal(t, []string{"short", "freezes at −2.9 °C"}, shown(), "briefly, where the whole has no room")
	l.ShowText("short\n" + long)
	assert.Regexp(t, `…$`, shown()[1])
	l.ShowText("short\nアイス")
	assert.Equal(t, []string{"short"}, shown(), "what our letters cannot set")
	at := slices.IndexFunc(test.LaidOutObjects(l), func(o fyne.CanvasObject) bool {
		x, ok := o.(*canvas.Text)
		return ok && x.Visible() && x.Text == "アイス"
	})
	assert.GreaterOrEqual(t, at, 0, "the toolkit sets")
}
