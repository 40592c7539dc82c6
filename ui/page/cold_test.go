package page

import (
	"image/png"
	"os"
	"path/filepath"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/assets"
	"ripplewright/internal/cold"
	"ripplewright/internal/design"
	"ripplewright/internal/ingredient"
	"ripplewright/internal/model"
	"ripplewright/ui/theme"
)

// fakeHost is a program around a page. What is posted waits until the test, on
// its own goroutine as the window would, lets it run.
type fakeHost struct {
	t      testing.TB
	model  *model.Model
	d      design.Design
	r      model.Result
	steps  []string
	said   string
	posted chan func()
	win    fyne.Window
}

func newFakeHost(t testing.TB, d design.Design) *fakeHost {
	f, err := assets.Library.Open("library/ingredients.jsonl")
	require.NoError(t, err)
	defer f.Close()
	lib, err := ingredient.Read(f)
	require.NoError(t, err)
	h := &fakeHost{t: t, model: model.New(lib), posted: make(chan func(), 1000)}
	h.win = test.NewWindow(container.NewWithoutLayout())
	t.Cleanup(h.win.Close)
	h.set(d)
	return h
}

func (h *fakeHost) set(d design.Design) {
	r, err := h.model.Evaluate(d)
	require.NoError(h.t, err)
	h.d, h.r = d, r
}

func (h *fakeHost) Design() design.Design               { return h.d }
func (h *fakeHost) Result() *model.Result               { return &h.r }
func (h *fakeHost) Model() *model.Model                 { return h.model }
func (h *fakeHost) Preview(d design.Design)             { h.set(d) }
func (h *fakeHost) Commit(d design.Design, step string) { h.set(d); h.steps = append(h.steps, step) }
func (h *fakeHost) Post(f func())                       { h.posted <- f }
func (h *fakeHost) Window() fyne.Window                 { return h.win }
func (h *fakeHost) Say(s string)                        { h.said = s }
func (h *fakeHost) Export(string, func(string) error)   {}

// until runs what is posted until done says so.
func (h *fakeHost) until(done func() bool) {
	h.t.Helper()
	late := time.After(time.Minute)
	for !done() {
		select {
		case f := <-h.posted:
			f()
		case <-late:
			h.t.Fatal("it did not come about within a minute")
		}
	}
}

// saltmarsh is an invented design of the Saltmarsh Quay stall.
func saltmarsh() design.Design {
	d := design.New()
	d.Name = "Hazelnut and burnt honey"
	d.Dense.Lines = []design.Line{
		{Ingredient: "milk_whole", Grams: 420}, {Ingredient: "cream_heavy", Grams: 180},
		{Ingredient: "egg_yolk", Grams: 90}, {Ingredient: "sugar", Grams: 95}, {Ingredient: "honey", Grams: 40},
	}
	d.Foam.Lines = []design.Line{{Ingredient: "egg_white", Grams: 165}}
	d.Foam.Syrup.Lines = []design.Line{{Ingredient: "sugar", Grams: 180}, {Ingredient: "water", Grams: 60}}
	return d
}

// coldPage is the page over a fake program, its first answer there, its own
// kitchens in a folder of the test.
func coldPage(t testing.TB, d design.Design, look theme.Options) (*Cold, *fakeHost) {
	test.NewTempApp(t)
	fyne.CurrentApp().Settings().SetTheme(theme.New(look))
	h := newFakeHost(t, d)
	p := NewCold(h, NewKitchens(filepath.Join(t.TempDir(), "profiles.yaml")), nil)
	h.win.SetContent(p.Object())
	h.win.Resize(fyne.NewSize(1280, 720))
	p.Show()
	h.until(func() bool { return p.state == planDone })
	return p, h
}

// TestTheColdLooks draws the page in every dress. With COLD_LOOK set to a
// folder it leaves the pictures there, for people to look at.
func TestTheColdLooks(t *testing.T) {
	for dress, o := range map[string]theme.Options{
		"light":    {Variant: theme.Light},
		"dark":     {Variant: theme.Dark},
		"light150": {Variant: theme.Light, TextScale: 1.5},
	} {
		p, h := coldPage(t, saltmarsh(), o)
		for i, v := range p.views {
			p.choose(i)
			h.win.Resize(fyne.NewSize(1280, 720))
			size := h.win.Canvas().Size()
			assert.LessOrEqual(t, size.Width, float32(1280), "%s %s", dress, v.title)
			assert.LessOrEqual(t, size.Height, float32(720), "%s %s", dress, v.title)
			if dir := os.Getenv("COLD_LOOK"); dir != "" {
				f, err := os.Create(filepath.Join(dir, v.title+"_"+dress+".png"))
				require.NoError(t, err)
				require.NoError(t, png.Encode(f, h.win.Canvas().Capture()))
				require.NoError(t, f.Close())
			}
		}
		p.Leave()
	}
	_ = cold.Default
}
