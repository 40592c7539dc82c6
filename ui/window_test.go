package ui

import (
	"errors"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/assets"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/start"
	"ripplewright/internal/check/market"
	"ripplewright/internal/desk/places"
	"ripplewright/internal/desk/session"
	"ripplewright/internal/work/design"
	"ripplewright/internal/work/designfile"
	"ripplewright/internal/work/journal"
	"ripplewright/testdata"
	"ripplewright/ui/kit"
	"ripplewright/ui/theme"
)

var nan = math.NaN()

// bed is a window on the test driver over the real library and demos.
type bed struct {
	*Window
	t testing.TB
}

func newBed(t testing.TB) *bed {
	t.Helper()
	t.Setenv("LANGUAGE", "en")
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	app := test.NewTempApp(t)
	b := &bed{t: t}
	first := market.Demo(t)
	events, err := os.Create(filepath.Join(t.TempDir(), "events"))
	require.NoError(t, err)
	t.Cleanup(func() { events.Close() })
	shelf, err := start.Open(assets.Bases)
	require.NoError(t, err)
	b.Window = New(Setup{App: app, Starts: shelf, Journal: journal.At(t.TempDir()), Session: session.New(model.New(market.Library(t)), first), Demos: []Demo{{first.Name, first}},
		Tables: testdata.Tables, LabelWords: market.LabelWords(t), Version: "test", Events: events})
	t.Cleanup(func() { b.keeper.Close() })
	b.win.Resize(fyne.NewSize(startWidth, startHeight))
	b.win.Show()
	t.Cleanup(b.win.Close)
	b.frame()
	return b
}

// frame is one turn of the window's loop.
func (b *bed) frame() { b.tick() }

// happens lets frames go by until done says so.
func (b *bed) happens(done func() bool) bool {
	for end := time.Now().Add(20 * time.Second); time.Now().Before(end); time.Sleep(5 * time.Millisecond) {
		if b.frame(); done() {
			return true
		}
	}
	return false
}

// menu runs the item at a path such as "File", "Save".
func (b *bed) menu(path ...string) {
	b.t.Helper()
	it := b.item(path...)
	require.False(b.t, it.Disabled, "%v", path)
	it.Action()
	b.frame()
}

func (b *bed) item(path ...string) *fyne.MenuItem {
	b.t.Helper()
	items := []*fyne.MenuItem{}
	for _, m := range b.win.MainMenu().Items {
		items = append(items, &fyne.MenuItem{Label: m.Label, ChildMenu: m})
	}
	var found *fyne.MenuItem
	for _, name := range path {
		found = nil
		for _, it := range items {
			if it.Label == name || found == nil && (strings.HasPrefix(it.Label, name+" ") || strings.HasPrefix(it.Label, name+":")) {
				found = it
			}
		}
		require.NotNil(b.t, found, "no menu item %v", path)
		if found.ChildMenu != nil {
			items = found.ChildMenu.Items
		}
	}
	return found
}

// dialogTexts are the words of the dialog on top, "" without one.
func (b *bed) dialogTexts() string {
	top := b.win.Canvas().Overlays().Top()
	if top == nil {
		return ""
	}
	var all []string
	for _, o := range test.LaidOutObjects(top) {
		switch x := o.(type) {
		case *canvas.Text:
			all = append(all, x.Text)
		case *kit.Button:
			all = append(all, x.Text)
		case *widget.Button:
			all = append(all, x.Text)
		case fyne.Widget:
			all = append(all, setIn(x)...)
		}
	}
	return strings.Join(all, "\n")
}

// unbroken takes out spaces and line ends, which are where the window breaks its
// words.
func unbroken(s string) string { return strings.Join(strings.Fields(s), "") }

// press taps the button of that name in the dialog on top.
func (b *bed) press(name string) {
	b.t.Helper()
	top := b.win.Canvas().Overlays().Top()
	require.NotNil(b.t, top, "no dialog to press %q in", name)
	for _, o := range test.LaidOutObjects(top) {
		x, ok := o.(*widget.Button) // the toolkit's own dialogs
		if own, is := o.(*kit.Button); is {
			x, ok = &own.Button, true
		}
		if ok && x.Text == name {
			test.Tap(x)
			b.frame()
			return
		}
	}
	b.t.Fatalf("no button %q in:\n%s", name, b.dialogTexts())
}

// typeName types a name into the file dialog.
func (b *bed) typeName(name string) {
	b.t.Helper()
	for _, o := range test.LaidOutObjects(b.win.Canvas().Overlays().Top()) {
		if e, ok := o.(*kit.TextField); ok {
			e.SetText(name)
			return
		}
	}
	b.t.Fatal("no field for a name")
}

// drag moves a slider's hand from one place to another, a frame for each motion.
func (b *bed) drag(s fyne.Draggable, from, to float32) {
	for x := from; x != to; x += (to - from) / 4 {
		s.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(x, 10)}})
		b.frame()
	}
	s.DragEnd()
	b.frame()
}

func (b *bed) events() string {
	data, err := os.ReadFile(b.Events.Name())
	require.NoError(b.t, err)
	return string(data)
}

func TestTheWindowFitsASmallScreenAtEveryTextSize(t *testing.T) {
	b := newBed(t)
	for _, scale := range []float32{1, 1.25, 1.5} {
		b.look.TextScale = scale
		b.applyLook()
		b.win.Resize(fyne.NewSize(startWidth, startHeight))
		menu := lineHeight() + 2*6 // the bar that the driver puts over the content
		size := b.win.Content().MinSize()
		assert.LessOrEqual(t, size.Width, float32(startWidth), "at %g", scale)
		assert.LessOrEqual(t, size.Height+menu, float32(startHeight), "at %g", scale)
		for _, c := range []*column{b.bench.dense, b.bench.foam} {
			row := c.lists[0].rows[0].amount.MinSize().Height
			assert.GreaterOrEqual(t, c.scroll.Size().Height, leastLines*row, "at %g the lines have no room", scale)
		}
	}
}

func TestEveryKnobMovesTheDesignAndTheViewsAndIsOneStepOfUndo(t *testing.T) {
	b := newBed(t)
	var knobs []*knob
	knobs = append(append(append(knobs, b.bench.dense.knobs...), b.bench.foam.knobs...), b.bench.tub.knobs...)
	require.Len(t, knobs, 7)
	for _, k := range knobs {
		t.Run(k.Path, func(t *testing.T) {
			before, figures := b.Design(), *b.Result()
			hand := k.Focusable().(fyne.Draggable)
			b.drag(hand, 20, 60)
			assert.NotEqual(t, k.of(before), k.of(b.Design()))
			assert.Equal(t, k.of(b.Design()), k.Value())
			assert.NotEqual(t, figures.Blend, b.Result().Blend)
			assert.Equal(t, k.what, b.Session.UndoName())
			b.menu("Edit", "Undo")
			assert.True(t, b.Design().Equal(before), "one drag is one step")
			assert.Equal(t, k.of(before), k.Value(), "the slider goes back as well")
			assert.Equal(t, figures.Blend.MassG, b.Result().Blend.MassG)
		})
	}
}

func TestTheRailMovesTheServingTemperatureAndTheVerdict(t *testing.T) {
	b := newBed(t)
	words := b.bench.dense.word.Text()
	b.drag(b.bench.rail, 300, 100)
	assert.Less(t, b.Design().Serving.TemperatureC, -20.0)
	assert.NotEqual(t, words, b.bench.dense.word.Text())
	assert.Equal(t, "serving temperature", b.Session.UndoName())
	f, ok := design.FieldAt("serving.temperature_c")
	require.True(t, ok)
	assert.Equal(t, [2]float64{f.Min, f.Max}, [2]float64{kit.RailMin, kit.RailMax}, "the rail is as long as the field")
}

func TestNumbersTakeTheWholeRangeOfTheirField(t *testing.T) {
	b := newBed(t)
	d := b.Design()
	d.Tubs.Count, d.Tubs.VolumeML, d.Dense.StoveLossPercent = 200, 20000, 55
	b.Commit(d, "everything large")
	b.frame()
	for i, want := range map[int]float64{1: 200, 2: 20000} {
		assert.Equal(t, want, b.bench.tub.knobs[i].Value())
	}
	assert.Equal(t, 55.0, b.bench.dense.knobs[0].Value())
	hand := b.bench.tub.knobs[1].Focusable()
	hand.TypedKey(&fyne.KeyEvent{Name: fyne.KeyRight})
	b.frame()
	assert.Equal(t, 201, b.Design().Tubs.Count)
}

func TestKeysInARowAreOneStepAndTheMouseAfterThemAnother(t *testing.T) {
	b := newBed(t)
	b.Session.SetClock(func() time.Time { return time.Time{} }) // no key is late
	k := b.bench.dense.knobs[1]
	before := k.of(b.Design())
	b.win.Canvas().Focus(k.Focusable())
	for range 3 {
		k.Focusable().TypedKey(&fyne.KeyEvent{Name: fyne.KeyRight})
	}
	byKeys := k.of(b.Design())
	assert.Equal(t, before+3, byKeys)
	k.Focusable().(fyne.Tappable).Tapped(&fyne.PointEvent{Position: fyne.NewPos(10, 10)})
	b.frame()
	b.menu("Edit", "Undo")
	assert.Equal(t, byKeys, k.of(b.Design()))
	b.menu("Edit", "Undo")
	assert.Equal(t, before, k.of(b.Design()))
}

func TestUndoInAFieldIsAboutTheTypingUntilItIsSettled(t *testing.T) {
	b := newBed(t)
	amount := b.bench.dense.lists[0].rows[0].amount
	was := b.Design().Dense.Lines[0].Grams
	b.win.Canvas().Focus(amount.Focusable())
	test.Type(amount.Focusable(), "7")
	b.undo()
	b.undo()
	b.frame()
	assert.Equal(t, was, b.Design().Dense.Lines[0].Grams)
	assert.NoError(t, amount.Problem())
	test.Type(amount.Focusable(), "1")
	amount.Focusable().TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	b.frame()
	require.NotEqual(t, was, b.Design().Dense.Lines[0].Grams)
	assert.Contains(t, b.item("Edit", "Undo").Label, "amount of whole milk")
	b.undo()
	b.frame()
	assert.Equal(t, was, b.Design().Dense.Lines[0].Grams, "settled, it is a step of the design")
}

func TestLinesAreAddedChangedMovedCountedAndRemoved(t *testing.T) {
	b := newBed(t)
	l := b.bench.dense.lists[0]
	n := len(b.Design().Dense.Lines)
	l.put(-1, kit.FinderItem{ID: "salt", Title: "Salt, table"})
	b.frame()
	require.Len(t, b.Design().Dense.Lines, n+1)
	require.Len(t, l.rows, n+1)
	assert.Equal(t, l.rows[n].amount.Focusable(), b.win.Canvas().Focused(), "the grams of the new line have the keyboard")
	l.rows[n].name.TypedShortcut(ctrl(fyne.KeyUp))
	b.frame()
	assert.Equal(t, "salt", b.Design().Dense.Lines[n-1].Ingredient)
	assert.Equal(t, fyne.Focusable(l.rows[n-1].name), b.win.Canvas().Focused(), "and keeps it")
	l.rows[n-1].name.TypedKey(&fyne.KeyEvent{Name: fyne.KeyDelete})
	b.frame()
	require.Len(t, b.Design().Dense.Lines, n)

	// The demo's yolks weigh 90 g: five of 17 g (USDA SR28 NDB 01125).
	i := 2
	require.Equal(t, "egg_yolk", b.Design().Dense.Lines[i].Ingredient)
	require.Equal(t, 90.0, b.Design().Dense.Lines[i].Grams)
	l.count(i, design.Yolks)
	b.frame()
	assert.Equal(t, design.Line{Ingredient: "egg_yolk", CountOf: design.Yolks, Count: 5}, b.Design().Dense.Lines[i])
	_, err := b.Session.Result()
	require.NoError(t, err)
	assert.Equal(t, "yolks", l.rows[i].amount.Unit)
	l.weigh(i)
	b.frame()
	assert.Equal(t, design.Line{Ingredient: "egg_yolk", Grams: 85}, b.Design().Dense.Lines[i])
	l.put(i, kit.FinderItem{ID: "whites", Title: "Whites, counted"})
	b.frame()
	assert.Equal(t, design.Line{Ingredient: "egg_white", CountOf: design.Whites, Count: 3}, b.Design().Dense.Lines[i])
	_, err = b.Session.Result()
	require.NoError(t, err)
	for b.Session.Undo() {
	}
	b.frame()
	assert.True(t, b.Design().Equal(market.Demo(t)))
	assert.Len(t, l.rows, n)
}

func ctrl(key fyne.KeyName) fyne.Shortcut {
	return command("", key, 0, nil).Shortcut
}

func TestSaveReopenAndRecentFiles(t *testing.T) {
	b := newBed(t)
	dir := t.TempDir()
	first, second := filepath.Join(dir, "first.yaml"), filepath.Join(dir, "second.yaml")
	assert.True(t, b.item("File", "Open recent").Disabled)
	b.Commit(serveAt(b.Design(), -15), "serving temperature")
	b.saveTo(first, false, nil)
	b.Commit(serveAt(b.Design(), -16), "serving temperature")
	b.saveTo(second, false, nil)
	b.frame()
	assert.False(t, b.Session.Dirty())
	assert.Contains(t, b.win.Title(), "second.yaml")
	b.menu("File", "Open recent", "first.yaml")
	assert.Equal(t, -15.0, b.Design().Serving.TemperatureC)
	assert.Equal(t, -15.0, b.bench.rail.Serving())
	assert.Equal(t, "first.yaml", b.item("File", "Open recent").ChildMenu.Items[0].Label)
	assert.Len(t, b.recent(), 2)
}

func TestUnsavedChangesAreAskedAboutWithThreeAnswers(t *testing.T) {
	for answer, want := range map[string]struct {
		name  string
		saved bool
	}{"Cancel": {"Hazelnut and burnt honey", false}, "Discard": {"Untitled", false}, "Save": {"Untitled", true}} {
		t.Run(answer, func(t *testing.T) {
			b := newBed(t)
			path := filepath.Join(t.TempDir(), "kept.yaml")
			b.saveTo(path, false, nil)
			b.Commit(serveAt(b.Design(), -16), "serving temperature")
			b.frame()
			assert.Contains(t, b.win.Title(), "not saved")
			b.menu("File", "New")
			assert.Contains(t, b.dialogTexts(), "Save the changes?")
			b.press(answer)
			assert.Empty(t, b.dialogTexts())
			assert.Equal(t, want.name, b.Design().Name)
			f, err := designfile.Load(path)
			require.NoError(t, err)
			assert.Equal(t, want.saved, f.Design.Serving.TemperatureC == -16)
		})
	}
}

func TestSaveAsAsksOnceBeforeItReplaces(t *testing.T) {
	for _, typed := range []string{"there.yaml", "there"} {
		t.Run(typed, func(t *testing.T) {
			b := newBed(t)
			dir := t.TempDir()
			own, there := filepath.Join(dir, "own.yaml"), filepath.Join(dir, "there.yaml")
			b.saveTo(own, false, nil) // so that the dialog opens in the folder
			require.NoError(t, os.WriteFile(there, []byte("of another hand\n"), 0o644))
			b.menu("File", "Save as…")
			b.typeName(typed)
			b.press("Save")
			assert.Contains(t, b.dialogTexts(), "there")
			data, err := os.ReadFile(there)
			require.NoError(t, err)
			assert.Equal(t, "of another hand\n", string(data), "nothing is written before the answer")
			b.press("Replace")
			assert.Empty(t, b.dialogTexts(), "asked once")
			assert.Equal(t, there, b.Session.Path())
			_, err = designfile.Load(there)
			assert.NoError(t, err)
		})
	}
}

func TestABrokenFileIsToldOfWithFileLineAndKeyAndChangesNothing(t *testing.T) {
	b := newBed(t)
	path := filepath.Join(t.TempDir(), "broken.yaml")
	require.NoError(t, os.WriteFile(path, []byte("ripplewright: 1\nserving: {temperature: -3}\ndense: {lines: []}\nfoam: {lines: []}\n"), 0o644))
	b.open(path)
	for _, part := range []string{"broken.yaml", ":2", "temperature"} {
		assert.Contains(t, unbroken(b.dialogTexts()), part)
	}
	assert.Equal(t, "Hazelnut and burnt honey", b.Design().Name)
	assert.Empty(t, b.recent())
}

func TestAChangeOnDiskIsAskedAboutOnce(t *testing.T) {
	b := newBed(t)
	path := filepath.Join(t.TempDir(), "shared.yaml")
	b.saveTo(path, false, nil)
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(path, []byte(strings.Replace(string(data), "temperature_c: -13", "temperature_c: -17", 1)), 0o644))
	for range 3 {
		b.lookAtDisk()
	}
	assert.Len(t, b.win.Canvas().Overlays().List(), 1)
	b.press("Later")
	b.lookAtDisk()
	assert.Empty(t, b.dialogTexts())
	b.Commit(serveAt(b.Design(), -11), "serving temperature")
	b.saveTo("", false, nil)
	assert.Contains(t, unbroken(b.dialogTexts()), unbroken("Another program or window has changed"))
	b.press("Later")
	after, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Contains(t, string(after), "-17")
}

func TestMenusTellWhatCanBeDone(t *testing.T) {
	b := newBed(t)
	assert.True(t, b.item("Edit", "Undo").Disabled)
	assert.True(t, b.item("Edit", "Redo").Disabled)
	b.Commit(serveAt(b.Design(), -15), "serving temperature")
	b.frame()
	assert.Equal(t, "Undo: serving temperature −13 → −15 °C", b.item("Edit", "Undo").Label)
	b.menu("Edit", "Undo")
	assert.True(t, b.item("Edit", "Undo").Disabled)
	assert.Equal(t, "Redo: serving temperature −13 → −15 °C", b.item("Edit", "Redo").Label)
	b.menu("View", "Dark")
	assert.True(t, b.item("View", "Dark").Checked)
	assert.False(t, b.item("View", "Light").Checked)
	assert.Equal(t, theme.Dark, b.look.Variant)
	b.menu("Help", "How sure are we?")
	assert.Equal(t, places.Sure, b.way.At())
	b.menu("Go", "Think", "Bench")
	assert.Equal(t, places.Bench, b.way.At())
	for _, name := range []string{"Keys", "Cautions", "About"} {
		b.menu("Help", name)
		assert.NotEmpty(t, b.dialogTexts())
		b.press("Close")
	}
}

func TestEveryPageShowsAFullAndAnEmptyDesign(t *testing.T) {
	b := newBed(t)
	for _, d := range []design.Design{b.Design(), design.New()} {
		b.Session.Start(d)
		b.frame()
		b.everywhere(func(string) {})
		b.frame()
	}
	assert.Equal(t, "no lines yet", b.bench.dense.word.Text())
	for _, l := range []*kit.Lines{b.bench.dense.figures, b.bench.foam.figures, b.bench.tub.foot} {
		assert.NotContains(t, l.Text(), "–", "no dashes where words can tell")
	}
	assert.False(t, b.bench.dense.lists[0].empty.Hidden)
	assert.Zero(t, b.bench.tub.cut.shown.Fill)
}

func TestNoMenuActsBehindADialog(t *testing.T) {
	b := newBed(t)
	d := b.Design()
	b.Commit(serveAt(d, -15), "serving temperature")
	b.frame()
	b.bench.dense.cupDialog()
	b.menu("File", "New")
	b.menu("Edit", "Undo")
	assert.Len(t, b.win.Canvas().Overlays().List(), 1)
	assert.Equal(t, -15.0, b.Design().Serving.TemperatureC)
	b.press("Cancel")
	b.menu("Edit", "Undo")
	assert.True(t, b.Design().Equal(d))
}

func TestEventsTellWhenAHandIsPainted(t *testing.T) {
	b := newBed(t)
	d := b.Design()
	d.Blend.FoamVolumePercent = 55
	b.Preview(d)
	b.tick()
	assert.NotContains(t, b.events(), "foam=55", "not painted yet")
	b.tick()
	assert.Contains(t, b.events(), "design foam=55 ")
	assert.Regexp(t, `painted ms=[0-9.]+ update=[0-9.]+ hands=1\n`, b.events())
}

func TestACutIsDrawnAwayFromTheThread(t *testing.T) {
	b := newBed(t)
	assert.True(t, b.happens(func() bool { return b.bench.tub.cut.shown.Cut != nil }))
}

func TestTheCupDialogSetsTheOverrunAsOneStep(t *testing.T) {
	b := newBed(t)
	b.bench.foam.cupDialog()
	fields := numbersIn(b.win.Canvas().Overlays().Top())
	require.Len(t, fields, 3)
	for i, grams := range []string{"210", "60"} {
		b.win.Canvas().Focus(fields[i].Focusable())
		test.Type(fields[i].Focusable(), grams)
		fields[i].Focusable().TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	}
	assert.Contains(t, b.dialogTexts(), "Overrun 250 %.")
	b.press("Use it")
	assert.Equal(t, 250.0, b.Design().Foam.OverrunPercent)
	assert.Equal(t, "overrun from cup weights", b.Session.UndoName())
}

func numbersIn(o fyne.CanvasObject) (all []*kit.NumberField) {
	for _, x := range test.LaidOutObjects(o) {
		if n, ok := x.(*kit.NumberField); ok {
			all = append(all, n)
		}
	}
	return all
}

func TestAProblemWhileExportingIsSaid(t *testing.T) {
	b := newBed(t)
	dir := t.TempDir()
	b.saveTo(filepath.Join(dir, "own.yaml"), false, nil)
	b.Export("card.pdf", func(string) error { return errors.New("the disk is full") })
	b.press("Save")
	assert.True(t, b.happens(func() bool { return strings.Contains(b.dialogTexts(), "disk is full") }))
}
