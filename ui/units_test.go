package ui

import (
	"regexp"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/desk/places"
	"ripplewright/internal/show/say"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

var (
	metricUnits = regexp.MustCompile(`°C|\bmL\b|\bmm\b|\bcm\b|cm²|[0-9] ?(m|L|K)\b|g/mL|W/\(m`)
	usUnits     = regexp.MustCompile(`°F|\boz\b|[0-9] ?cups?\b|[0-9] in([.,;:)]|$| wide| deep)|\blbs?\b|[0-9] ft\b|pints?\b|gal\b|Btu`)
	inBoth      = regexp.MustCompile(`71 °C \(160 °F\)`) // a published figure, with what it is in °C
)

// published are what records repeat of their sources, in the units of these.
var published = regexp.MustCompile(`^(By the source|Density): `)

// ruled are the pages whose units rules or published tables give.
var ruled = map[places.Place]bool{places.Label: true, places.Sure: true}

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
		}
	}
	return all
}

// useUnits shows everything in a system and puts the usual back after the test.
func (b *bed) inUnits(s say.Style) {
	b.t.Cleanup(func() { page.Reads = say.Usual })
	b.useUnits(s)
	b.frame()
}

// Every text of every page follows the units, before and after a change of them.
func TestEveryPageFollowsTheUnits(t *testing.T) {
	b := newBed(t)
	look := func(wrong *regexp.Regexp, system string) {
		for p := places.Place(0); int(p) < places.Count; p++ {
			if ruled[p] {
				continue
			}
			b.turnTo(p)
			name, object := p.Name(), b.bench.object
			if shown := b.shown(); shown != nil {
				object = shown.Object()
			}
			// Workers have their say, and on a busy machine some time for it.
			var astray []string
			for begun := time.Now(); time.Since(begun) < 700*time.Millisecond || len(astray) > 0 && time.Since(begun) < 30*time.Second; time.Sleep(20 * time.Millisecond) {
				b.frame()
				astray = astray[:0]
				texts := textsIn(object)
				require.NotEmpty(t, texts, name)
				for _, text := range texts {
					if !published.MatchString(text) && wrong.MatchString(inBoth.ReplaceAllString(text, "")) {
						astray = append(astray, text)
					}
				}
			}
			assert.Empty(t, astray, "%s, %s", system, name)
		}
		b.turnTo(places.Bench)
	}
	look(usUnits, "metric")
	b.inUnits(say.Customary)
	look(metricUnits, "us")
	b.inUnits(say.Usual)
	look(usUnits, "metric again")
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
