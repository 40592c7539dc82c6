package ui

import (
	"context"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/process"
	"ripplewright/internal/check/astray"
	"ripplewright/internal/desk/notebook"
	"ripplewright/internal/desk/past"
	"ripplewright/internal/desk/places"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// published are what records repeat of their sources, in the units of these.
var published = regexp.MustCompile(`^(By the source|Density|[A-Z][a-z -]+: (estimate|of|from|by|USDA|SR|McCance|Ciqual|CoFID)\b.*)`)

// named are names of the library, which are those of its sources, and what begins one
// that is cut short.
var named = regexp.MustCompile(`[\d.]+ % (fat|solids|cocoa|moisture|alcohol)`)

// ruled are the pages whose units rules or published tables give.
var ruled = map[places.Place]bool{places.Label: true, places.Sure: true}

// setIn are the texts that a widget sets in its own picture.
func setIn(w fyne.Widget) []string {
	if r, sets := test.WidgetRenderer(w).(interface{ Texts() []string }); sets {
		return r.Texts()
	}
	return nil
}

// textsIn are all words in sight.
func textsIn(in fyne.CanvasObject) (all []string) {
	for _, o := range test.LaidOutObjects(in) {
		switch x := o.(type) {
		case *canvas.Text:
			all = append(all, x.Text)
		case *widget.Label:
			all = append(all, x.Text)
		case *widget.Entry:
			all = append(all, x.Text, x.PlaceHolder)
		case *kit.Button:
			all = append(all, x.Text)
		case *widget.Check:
			all = append(all, x.Text)
		case *kit.Check:
			all = append(all, x.Text)
		case *kit.Select:
			for _, option := range x.Options {
				if !slices.Contains(units(), option) {
					all = append(all, option)
				}
			}
		case fyne.Widget:
			all = append(all, setIn(x)...)
		}
	}
	return all
}

// units are what is chosen where a maker chooses a unit: of everything, or of a pack.
func units() (all []string) {
	for _, m := range say.PackMeasures(page.Reads) {
		all = append(all, m.Name)
	}
	for _, c := range say.UnitChoices() {
		all = append(all, say.NamesOf(c.Choices)...)
	}
	return all
}

// useUnits shows everything in a system and puts the usual back after the test.
func (b *bed) inUnits(s say.Style) {
	b.t.Cleanup(func() { page.Reads = say.Usual })
	if s.Currency != "" {
		require.Empty(b.t, b.useCurrency(s.Currency))
	}
	b.useUnits(s)
	b.frame()
}

// systems are those that pages and dialogs are looked at in, the metric one last
// again, after changes.
var systems = []string{"metric", "us", "comma", "metric"}

// Every text of every page follows the units, before and after a change of them.
func TestEveryPageFollowsTheUnits(t *testing.T) {
	b := newBed(t)
	for _, system := range systems {
		b.inUnits(astray.Systems[system])
		for p := places.Place(0); int(p) < places.Count; p++ {
			if ruled[p] {
				continue
			}
			object := b.standAt(p)
			// Workers have their say, and on a busy machine some time for it.
			var astrays []string
			for begun := time.Now(); time.Since(begun) < 700*time.Millisecond || len(astrays) > 0 && time.Since(begun) < 30*time.Second; time.Sleep(20 * time.Millisecond) {
				b.frame()
				astrays = strangers(object)
			}
			assert.NotEmpty(t, textsIn(object), p.Name())
			assert.Empty(t, astrays, "%s, %s", system, p.Name())
		}
		b.turnTo(places.Bench)
	}
}

// strangers are the texts in sight that are not as the maker reads quantities.
func strangers(in fyne.CanvasObject) (out []string) {
	for _, text := range textsIn(in) {
		text = named.ReplaceAllString(text, "")
		if !published.MatchString(text) && len(astray.In(text, page.Reads)) > 0 {
			out = append(out, text)
		}
	}
	return out
}

// Every text of every dialog follows the units: of those that menus open, and of those
// that buttons of bench and pages do.
func TestEveryDialogFollowsTheUnits(t *testing.T) {
	b := newBed(t)
	seen := map[string]bool{}
	// look reads the dialog on top, and closes it.
	look := func(from string) {
		canvas := b.win.Canvas()
		for n := 0; canvas.Overlays().Top() != nil && n < 9; n++ {
			top := canvas.Overlays().Top()
			for begun := time.Now(); time.Since(begun) < 60*time.Millisecond || len(strangers(top)) > 0 && time.Since(begun) < 5*time.Second; time.Sleep(10 * time.Millisecond) {
				b.frame()
			}
			assert.Empty(t, strangers(top), "%s, in a dialog from %s", b.system(), from)
			seen[from] = true
			canvas.Overlays().Remove(top)
			b.frame()
		}
	}
	for _, system := range systems[1:3] {
		b.inUnits(astray.Systems[system])
		b.openAll(look)
	}
	t.Logf("%d ways to a dialog", len(seen))
	assert.True(t, seen[say.UnitsItem.String()])
	assert.GreaterOrEqual(t, len(seen), 28)
}

// lived has a design with all that its dialogs tell of: a file, a version, an earlier save,
// batches, something to mend and something to know.
func (b *bed) lived() {
	path := filepath.Join(b.t.TempDir(), "own.yaml")
	first := b.Design()
	b.saveTo(path, true, nil)
	require.NoError(b.t, past.Keep(b.Session, "as everyone liked it", time.Now()))
	for day, cupG := range []float64{91, 84} {
		b.notebook.Keep(process.FoamCupG, cupG, first)
		kitchen, _ := b.kitchens.For("")
		_, err := notebook.Write(context.Background(), b.notebook.Job(b.Model(), first, kitchen, time.Date(2026, 11, 20+day, 12, 0, 0, 0, time.UTC)))
		require.NoError(b.t, err)
		b.notebook.Done()
	}
	b.Commit(serveAt(first.WithGrams(design.DensePart, 0, 451), -22), "serving temperature")
	b.saveTo(path, true, nil)
	require.True(b.t, b.happens(func() bool { return b.bench.mender.Found() != nil && b.bench.mender.Found().First() != nil }))
}

// Every text of every dialog that any function opens follows the units, with a design that
// has a file, batches, versions and warnings; and of those that open from it in turn, such
// as by the entries of a line's menu.
func TestDialogsOfALivedDesignAndThoseWithinThemFollowTheUnits(t *testing.T) {
	b := newBed(t)
	b.lived()
	canvas := b.win.Canvas()
	for _, system := range systems[1:3] {
		b.inUnits(astray.Systems[system])
		openers := b.openers()
		openers["versions"] = b.askVersions
		openers["compared"] = func() {
			b.askCompare()
			for _, o := range test.LaidOutObjects(canvas.Overlays().Top()) {
				if s, ok := o.(*kit.Select); ok {
					s.SetSelected(s.Options[len(s.Options)-1])
				}
			}
		}
		within := 0
		for name, open := range openers {
			b.turnTo(places.Bench)
			before := b.Design()
			open()
			b.frame()
			top := canvas.Overlays().Top()
			require.NotNil(t, top, name)
			assert.NotEmpty(t, textsIn(top), name)
			assert.Empty(t, strangers(top), "%s, %s", system, name)
			for _, open := range ways(top) {
				open()
				b.frame()
				if inner := canvas.Overlays().Top(); inner != nil && inner != top {
					assert.Empty(t, strangers(inner), "%s, in a dialog from %s", system, name)
					within++
					canvas.Overlays().Remove(inner)
				}
			}
			for b.asking() {
				canvas.Overlays().Remove(canvas.Overlays().Top())
			}
			if !before.Equal(b.Design()) {
				b.Commit(before, "back")
			}
		}
		assert.Greater(t, within, 5, system)
	}
}

// ways are what opens one more dialog from a dialog or a menu.
func ways(top fyne.CanvasObject) (all []func()) {
	for _, o := range test.LaidOutObjects(top) {
		switch x := o.(type) {
		case *kit.Button:
			if x.Visible() && !x.Disabled() && (opens(x) || x.Text == say.ShowCause.String()) {
				all = append(all, func() { x.Tapped(nil) })
			}
		case *widget.PopUpMenu:
			for _, it := range x.Items {
				if i, ok := it.(fyne.Tappable); ok {
					all = append(all, func() { i.Tapped(nil) })
				}
			}
		}
	}
	return all
}

// openAll opens one dialog after the other: those of the menus, and those of the buttons
// of bench and pages. look closes what it has seen.
func (b *bed) openAll(look func(from string)) {
	for _, m := range b.win.MainMenu().Items {
		for _, it := range m.Items {
			if strings.HasSuffix(it.Label, "…") && !it.Disabled && it.Action != nil {
				it.Action()
				b.frame()
				look(it.Label)
			}
		}
	}
	for p := places.Place(0); int(p) < places.Count; p++ {
		object := b.standAt(p)
		for begun := time.Now(); time.Since(begun) < 700*time.Millisecond; time.Sleep(20 * time.Millisecond) {
			b.frame()
		}
		for n := 0; ; n++ { // buttons may be made anew by what one of them does
			var all []*kit.Button
			for _, o := range test.LaidOutObjects(object) {
				if x, ok := o.(*kit.Button); ok && x.Visible() && !x.Disabled() && opens(x) {
					all = append(all, x)
				}
			}
			if n >= len(all) {
				break
			}
			test.Tap(&all[n].Button)
			b.frame()
			look(p.Name() + ": " + all[n].Text)
		}
	}
	b.turnTo(places.Bench)
}

// standAt turns to a place and returns what is shown there.
func (b *bed) standAt(p places.Place) fyne.CanvasObject {
	b.turnTo(p)
	if shown := b.shown(); shown != nil {
		return shown.Object()
	}
	return b.bench.object
}

// opens reports whether a button leads to a dialog: its name ends in an ellipsis, or
// it has a sign for a name.
func opens(b *kit.Button) bool {
	return strings.HasSuffix(b.Text, "…") || b.Text == "" && b.Icon != nil || b.Text == "i"
}

// system is the name of the units of now.
func (b *bed) system() string {
	for name, s := range astray.Systems {
		if page.Reads == s {
			return name
		}
	}
	return "units of one's own"
}

func TestUnitsAreKeptInPreferencesAndNeverInTheFile(t *testing.T) {
	b := newBed(t)
	before := b.Design()
	revision := b.Session.Revision()
	b.turnTo(places.Cold)
	b.inUnits(say.Style{Scale: say.Fahrenheit, Weights: say.WithOunces, Volumes: say.Pints, Comma: true})
	assert.Equal(t, places.Cold, b.way.At(), "the page in view stays")
	assert.True(t, before.Equal(b.Design()))
	assert.Equal(t, revision, b.Session.Revision(), "nothing to undo")
	want := page.Reads
	page.Reads = say.Usual
	b.restoreUnits()
	assert.Equal(t, want, page.Reads)
}

// A value that is shown, focused and left is not changed, and one typed in °F is
// shown as typed and kept in °C.
func TestNumbersTypedInOtherUnits(t *testing.T) {
	b := newBed(t)
	b.inUnits(say.Customary)
	var field *kit.NumberField
	for _, o := range test.LaidOutObjects(b.bench.object) {
		if n, ok := o.(*kit.NumberField); ok && n.Unit == "°C" {
			field = n
		}
	}
	require.NotNil(t, field)
	was := b.Design().Foam.Syrup.CookTemperatureC
	c := b.win.Canvas()
	c.Focus(field.Focusable())
	field.Focusable().TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	c.Unfocus()
	b.frame()
	assert.Equal(t, was, b.Design().Foam.Syrup.CookTemperatureC)
	for _, x := range []struct {
		typed string
		c     float64
	}{{"245", 118.33333}, {"118 °C", 118}, {"240,8", 116}} {
		b.typeInto(field, x.typed)
		assert.InDelta(t, x.c, b.Design().Foam.Syrup.CookTemperatureC, 1e-5, x.typed)
	}
}

func TestTheQuestionForUnits(t *testing.T) {
	b := newBed(t)
	t.Cleanup(func() { page.Reads = say.Usual })
	b.menu("View", say.UnitsItem.String())
	b.press(say.AllUS.String())
	b.press("Use them")
	assert.Equal(t, say.Fahrenheit, page.Reads.Scale)
	assert.Equal(t, say.FluidOunces, page.Reads.Volumes)
}

// The cautions of the Help menu warn in the maker's degrees.
func TestTheUsualCautionsAreInTheMakersDegrees(t *testing.T) {
	b := newBed(t)
	for _, x := range []struct {
		reads say.Style
		want  []string
		not   string
	}{
		{say.Usual, []string{"110 to 150 °C", "71 °C", "57 to 21 °C"}, "°F"},
		{say.Customary, []string{"230 to 302 °F", "160 °F", "135 to 70 °F", "41 °F"}, "°C"},
	} {
		b.inUnits(x.reads)
		b.menu("Help", "Cautions")
		words := b.dialogTexts()
		for _, want := range x.want {
			assert.Contains(t, words, want)
		}
		assert.NotContains(t, words, x.not)
		assert.NotContains(t, words, "{")
		b.press("Close")
	}
}
