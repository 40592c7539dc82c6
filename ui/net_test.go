package ui

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/desk/rescue"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/work/designfile"
	"ripplewright/ui/kit"
)

// netted is a window with its net spread, over a folder of the test.
func netted(t *testing.T) (*bed, string) {
	b := newBed(t)
	dir := t.TempDir()
	b.net.rescue = rescue.At(dir)
	t.Cleanup(mishap.Tell(b.net.caught))
	return b, dir
}

func TestAPanicIsCaughtSaidAndTheWorkKept(t *testing.T) {
	spill := func() { panic("spilt") }
	for _, c := range []struct {
		name string
		from func(b *bed)
	}{
		{"a button", func(b *bed) { kit.NewButton("Spill", spill).Tapped(nil) }},
		{"a list of choices", func(b *bed) { kit.NewSelect([]string{"a"}, func(string) { spill() }).SetSelected("a") }},
		{"a slider", func(b *bed) {
			s := kit.NewSlide("Slide", "%", 0, 100, 1, 0)
			s.OnChanged = func(float64) { spill() }
			s.Focusable().TypedKey(&fyne.KeyEvent{Name: fyne.KeyRight})
		}},
		{"a menu", func(b *bed) {
			it := fyne.NewMenuItem("Spill", spill)
			b.guard(fyne.NewMenu("", it))
			it.Action()
		}},
		{"what a worker posts", func(b *bed) { b.Post(spill) }},
		{"a worker", func(b *bed) { mishap.Go(spill) }},
		{"the drawing of a frame", func(b *bed) {
			v := b.bench.verdict
			b.bench.verdict = nil
			b.Preview(b.Design())
			b.frame()
			b.bench.verdict = v
		}},
		{"an export", func(b *bed) { b.exportTo(filepath.Join(b.t.TempDir(), "x.pdf"), func(string) error { panic("spilt") }) }},
	} {
		t.Run(c.name, func(t *testing.T) {
			b, dir := netted(t)
			d := b.Design()
			d.Name = "Saltmarsh toffee"
			b.Commit(d, "name")
			c.from(b)
			require.True(t, b.happens(func() bool {
				return strings.Contains(unbroken(b.dialogTexts()), unbroken("made a mistake and carries on"))
			}))
			kept, err := b.keeper.Flush()
			require.NoError(t, err)
			assert.Contains(t, unbroken(b.dialogTexts()), unbroken(kept))
			f, err := designfile.Load(kept)
			require.NoError(t, err)
			assert.True(t, f.Design.Equal(b.Design()))
			reports, err := filepath.Glob(filepath.Join(dir, "report *.txt"))
			require.NoError(t, err)
			require.Len(t, reports, 1)
			text, err := os.ReadFile(reports[0])
			require.NoError(t, err)
			assert.Contains(t, string(text), "goroutine")
			assert.NotContains(t, string(text), "Saltmarsh toffee", "a recipe is its maker's own")

			d.Name = "It goes on"
			b.Commit(d, "name")
			b.frame()
			assert.Contains(t, b.win.Title(), "It goes on")
		})
	}
}

func TestOneMishapIsSaidOnce(t *testing.T) {
	b, _ := netted(t)
	spill := func() { panic("spilt") }
	for range 5 {
		b.Post(spill)
		b.frame()
	}
	assert.Len(t, b.win.Canvas().Overlays().List(), 1)
}

func TestAnEndThatNothingCatchesKeepsTheWork(t *testing.T) {
	b, _ := netted(t)
	d := b.Design()
	d.Name = "Saltmarsh toffee"
	b.Commit(d, "name")
	err := b.net.lost(mishap.Of("the toolkit gave up"))
	require.ErrorContains(t, err, "the toolkit gave up")
	kept, err2 := b.keeper.Flush()
	require.NoError(t, err2)
	require.NotEmpty(t, kept)
	assert.Contains(t, err.Error(), kept)
}

func TestTheSaveQuestionAnswersToReturnAndEscape(t *testing.T) {
	b := newBed(t)
	d := b.Design()
	d.Name = "Saltmarsh toffee"
	b.Commit(d, "name")
	went := false
	ask := func() { b.unlessUnsaved(func() { went = true }) }
	key := func(name fyne.KeyName) {
		e := &fyne.KeyEvent{Name: name}
		if f := b.win.Canvas().Focused(); f != nil {
			f.TypedKey(e)
			return
		}
		b.win.Canvas().OnTypedKey()(e) // as the toolkit does
	}
	for _, focused := range []bool{true, false} {
		unfocus := func() {
			if !focused {
				b.win.Canvas().Unfocus()
			}
		}
		ask()
		unfocus()
		require.NotEmpty(t, b.dialogTexts())
		key(fyne.KeyEscape)
		require.Empty(t, b.dialogTexts())
		require.False(t, went)

		path := filepath.Join(t.TempDir(), "toffee.yaml")
		b.saveTo(path, true, nil)
		d.Blend.Strokes++
		b.Commit(d, "strokes")
		ask()
		unfocus()
		key(fyne.KeyReturn)
		require.Empty(t, b.dialogTexts())
		require.True(t, went, "saved and went on")
		require.False(t, b.Session.Dirty())
		went = false
		d.Blend.Strokes++
		b.Commit(d, "strokes")
	}
}

func TestEscapeClosesEveryDialog(t *testing.T) {
	b := newBed(t)
	for name, open := range map[string]func(){
		"the design":    b.editDesign,
		"keys":          func() { b.menu("Help", "Keys") },
		"an error":      func() { b.problem(os.ErrNotExist) },
		"a cup":         b.bench.dense.cupDialog,
		"open a file":   b.openDialog,
		"save a file":   func() { b.saveAs(nil) },
		"an ingredient": func() { b.bench.dense.lists[0].pick(-1) },
	} {
		open()
		require.NotNil(t, b.win.Canvas().Overlays().Top(), name)
		if f := b.win.Canvas().Focused(); f != nil {
			f.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
		} else {
			b.win.Canvas().OnTypedKey()(&fyne.KeyEvent{Name: fyne.KeyEscape})
		}
		assert.Nil(t, b.win.Canvas().Overlays().Top(), name)
	}
}

// Escape closes a dialog whichever of its parts has the keyboard.
func TestEscapeClosesADialogFromEachOfItsParts(t *testing.T) {
	b := newBed(t)
	c := b.win.Canvas()
	for name, open := range map[string]func(){
		"the design": b.editDesign,
		"a cup":      b.bench.dense.cupDialog,
		"a note":     func() { b.bench.dense.lists[0].note(0) },
		"a price":    func() { b.bench.dense.lists[0].price(0) },
		"a colour": func() {
			kit.AskColour(b.win, "Colour", draw.RGB(0x884422), false, func(draw.Colour) { t.Error("taken") })
		},
	} {
		for step := range 12 {
			open()
			for range step {
				c.(interface{ FocusNext() }).FocusNext()
			}
			if c.Focused() == nil {
				c.OnTypedKey()(&fyne.KeyEvent{Name: fyne.KeyEscape})
			} else {
				c.Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
			}
			require.Nil(t, c.Overlays().Top(), "%s, part %d: %T", name, step, c.Focused())
		}
	}
}

func TestAFolderIsMadeByItsOwnQuestion(t *testing.T) {
	b := newBed(t)
	c := b.win.Canvas()
	folder := t.TempDir()
	require.NoError(t, b.Session.Save(filepath.Join(folder, "quay.yaml"), false))
	b.saveAs(nil)
	files := c.Overlays().Top()
	press := func() {
		for _, o := range test.LaidOutObjects(files) {
			if button, ok := o.(*widget.Button); ok && button.Icon != nil && button.Icon.Name() == theme.FolderNewIcon().Name() {
				test.Tap(button)
			}
		}
	}
	press()
	require.NotSame(t, files, c.Overlays().Top())
	c.Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	require.Same(t, files, c.Overlays().Top(), "Escape closes the question alone")
	press()
	test.Type(c.Focused(), "winter")
	c.Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	assert.DirExists(t, filepath.Join(folder, "winter"))
}
