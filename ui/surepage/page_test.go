package surepage

import (
	"fmt"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
	"testing/fstest"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/validate"
	"ripplewright/internal/check/market"
	"ripplewright/internal/desk/proofs"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/show/say"
	"ripplewright/testdata"
	"ripplewright/ui/page"
	"ripplewright/ui/page/pagetest"
	"ripplewright/ui/theme"
)

// surePage is the page over a fake program, in a window, its checks done.
func surePage(t testing.TB, look theme.Options) (*Page, *pagetest.Host) {
	test.NewTempApp(t)
	fyne.CurrentApp().Settings().SetTheme(theme.New(look))
	h := pagetest.NewHost(t, market.Honey())
	p := New(h, testdata.Tables)
	h.Win.SetContent(p.Object())
	h.Win.Resize(fyne.NewSize(1280, 760))
	p.done(checked(t, h), nil)
	return p, h
}

// checked are the checks of the program, run once for all tests.
func checked(t testing.TB, h *pagetest.Host) []validate.Row {
	checks.once.Do(func() { checks.rows, checks.err = validate.Run(testdata.Tables, h.With.Library()) })
	require.NoError(t, checks.err)
	return slices.Clone(checks.rows)
}

var checks struct {
	once sync.Once
	rows []validate.Row
	err  error
}

// pick chooses the check over a table and returns it.
func (p *Page) pick(t testing.TB, table string) *validate.Row {
	for i, e := range p.entries {
		if e.Row != nil && e.Row.Table == table {
			p.list.Select(i)
			return e.Row
		}
	}
	t.Fatalf("no check of %s", table)
	return nil
}

// words is all the text under o that is in sight.
func words(o fyne.CanvasObject) string {
	var b strings.Builder
	for _, x := range test.LaidOutObjects(o) {
		if l, ok := x.(*widget.Label); ok && l.Visible() {
			b.WriteString(l.Text + "\n")
		}
	}
	return b.String()
}

func TestEveryCheckStandsOnceUnderItsKind(t *testing.T) {
	p, h := surePage(t, theme.Options{})
	seen, kind := map[string]bool{}, ""
	for _, e := range p.entries {
		if e.Row == nil {
			kind = e.Head
			continue
		}
		assert.False(t, seen[e.Row.Table], e.Row.Table)
		seen[e.Row.Table] = true
		for _, k := range proofs.Order() {
			if k.Kind == e.Row.Kind {
				assert.Equal(t, k.Name, kind, e.Row.Table)
			}
		}
	}
	assert.Len(t, seen, len(checked(t, h)))
	assert.Contains(t, p.status.Text, "keep within their limits")
}

func TestThePageOpensWithWhatItsFiguresRestOn(t *testing.T) {
	p, _ := surePage(t, theme.Options{})
	text := words(p.scene)
	for _, x := range phase.Explanation {
		assert.Contains(t, text, page.Reads.Text(x.Text))
		assert.Contains(t, strings.ToLower(text), string(x.Standing))
	}
}

func TestWhatItsFiguresRestOnIsReadInTheMakersDegrees(t *testing.T) {
	page.Reads = say.Customary
	t.Cleanup(func() { page.Reads = say.Usual })
	p, _ := surePage(t, theme.Options{})
	text := words(p.overview)
	assert.Contains(t, text, "3 to 7 °F")
	assert.Contains(t, text, "below 32 °F")
	assert.NotContains(t, text, "°C")
}

func TestEachCheckTellsItsFiguresAndDrawsItsPoints(t *testing.T) {
	p, _ := surePage(t, theme.Options{})
	for i, e := range p.entries {
		r := e.Row
		if r == nil {
			continue
		}
		p.list.Select(i)
		text := words(p.scene)
		for _, want := range []string{r.Title().String(), r.Source, r.Kind.Words(), page.Reads.Sized(r.MaxAbsError), page.Reads.Sized(r.RMSError), r.Note.String()} {
			assert.Contains(t, text, want, r.Table)
		}
		if !math.IsInf(r.Bar, 1) {
			assert.Contains(t, text, " of "+page.Reads.Sized(r.Bar)+" "+string(r.Unit), r.Table)
		}
		for _, view := range []string{say.Errors.String(), say.Numbers.String(), say.ModelAndMeasurement.String()} {
			p.view.SetSelected(view)
			assert.Equal(t, view == say.Numbers.String() && len(r.Pairs) > 0, p.numbers.Visible(), r.Table)
		}
	}
}

// The classical method's curve stands beside ours, and the note says why they part.
func TestTheClassicalMixShowsTheLinearMethodsOwnCurve(t *testing.T) {
	p, _ := surePage(t, theme.Options{})
	r := p.pick(t, "mix_worked_example")
	names := map[string]int{}
	for _, s := range look().Agreement(r).Series {
		names[s.Name] = len(s.X)
	}
	assert.Equal(t, 11, names["model"])
	assert.Equal(t, 11, names["classical linear method"])
	assert.Contains(t, words(p.scene), "The two part by 1.6 K at 80 % frozen because")
}

func TestAMissedBarIsShownAsNotMet(t *testing.T) {
	p, h := surePage(t, theme.Options{})
	bad := checked(t, h)
	for i := range bad {
		if bad[i].Table == "lactose_freezing_point" {
			bad[i].MaxAbsError, bad[i].Pass = 0.115, false
		}
	}
	p.done(bad, nil)
	assert.Contains(t, p.status.Text, fmt.Sprintf("1 of %d checks are NOT within their limits.", len(bad)-1), "one has no bar")
	r := p.pick(t, "lactose_freezing_point")
	assert.Contains(t, words(p.scene), "✗ NOT MET: largest error 0.115 of 0.0152 K")
	line := newCheckLine()
	showEntry(proofs.Listed{Row: r}, line.(*fyne.Container))
	assert.Contains(t, words(line), "✗")
	assert.Contains(t, words(line), "NOT MET")
}

func TestTablesAreRunAwayFromTheWindowAndFailuresSaid(t *testing.T) {
	test.NewTempApp(t)
	h := pagetest.NewHost(t, market.Honey())
	p := New(h, fstest.MapFS{})
	p.Show()
	assert.True(t, p.busy.Visible())
	h.Until(func() bool { return !p.running.Load() })
	assert.False(t, p.busy.Visible())
	assert.Contains(t, p.status.Text, "could not be read")
	assert.Empty(t, p.entries)
}

// TestSureLooks draws the page in every dress. With SURE_LOOK set to a folder
// it leaves the pictures there, for people to look at.
func TestSureLooks(t *testing.T) {
	for dress, o := range map[string]theme.Options{
		"light":    {Variant: theme.Light},
		"dark":     {Variant: theme.Dark},
		"light150": {Variant: theme.Light, TextScale: 1.5},
	} {
		p, h := surePage(t, o)
		shoot := func(name string) {
			h.Win.Resize(fyne.NewSize(1280, 760))
			size := h.Win.Canvas().Size()
			assert.LessOrEqual(t, size.Width, float32(1280), dress)
			assert.LessOrEqual(t, size.Height, float32(760), dress)
			if dir := os.Getenv("SURE_LOOK"); dir != "" {
				f, err := os.Create(filepath.Join(dir, name+"_"+dress+".png"))
				require.NoError(t, err)
				require.NoError(t, png.Encode(f, h.Win.Canvas().Capture()))
				require.NoError(t, f.Close())
			}
		}
		shoot("overview")
		for _, table := range []string{"mix_worked_example", "sucrose_freezing_point", "fruit_freezing_points", "texture_model_reference (hardness)", "freezing_model_reference"} {
			p.pick(t, table)
			shoot(table)
		}
		p.pick(t, "glucose_density_20C (viscosity)")
		p.view.SetSelected(say.Errors.String())
		shoot("errors")
		p.view.SetSelected(say.Numbers.String())
		shoot("numbers")
	}
}
