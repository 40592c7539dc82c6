package ripplepage

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"os"
	"path/filepath"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/tub"
	"ripplewright/internal/check/market"
	"ripplewright/internal/desk/cutting"
	"ripplewright/internal/desk/rippleview"
	"ripplewright/internal/matter/ripple"
	"ripplewright/internal/work/design"
	"ripplewright/ui/kit"
	"ripplewright/ui/page/pagetest"
	"ripplewright/ui/theme"
)

// stirHost is a program around the ripple page that writes where the test says.
type stirHost struct {
	*pagetest.Host
	export  string // where Export writes
	offered string // what Export was offered
}

func newStirHost(t testing.TB, demo string) *stirHost {
	t.Helper()
	test.NewTempApp(t).Settings().SetTheme(theme.New(theme.Options{Variant: theme.Light}))
	return &stirHost{Host: pagetest.NewHost(t, market.Demos(t)[demo])}
}

func (h *stirHost) Export(name string, write func(string) error) {
	h.offered = name
	require.NoError(h.T, write(h.export))
}

// openRipple shows the page in its window, drawing small; drawn counts sharp
// pictures.
func openRipple(h *stirHost) (p *Page, drawn *int) {
	drawn = new(int)
	p = New(h, func() { *drawn++ })
	p.sharp, p.large = 200, 400
	h.Win.SetContent(p.Object())
	h.Win.Resize(fyne.NewSize(1264, 700))
	p.Show()
	return p, drawn
}

func TestRippleShowsTheDesignAndCallsNobodyBack(t *testing.T) {
	h := newStirHost(t, "night-tram.yaml")
	p, _ := openRipple(h)
	var chosen []string
	for _, s := range pagetest.All[*kit.Select](p.Object()) {
		chosen = append(chosen, s.Selected)
	}
	require.Equal(t, []string{"piped spiral", "folding", "cocoa", "your own"}, chosen)
	var values []float64
	for _, s := range pagetest.All[*kit.Slide](p.Object()) {
		values = append(values, s.Value())
	}
	require.Equal(t, []float64{10, 38, 100, 10}, values)
	require.Empty(t, h.Steps)
	require.Contains(t, pagetest.Texts(p.Object()), "Air lost by mixing too long is not computed")
}

func TestEveryHandOnTheRipplePageIsOneStep(t *testing.T) {
	h := newStirHost(t, "hazelnut.yaml")
	p, _ := openRipple(h)
	selects, slides := pagetest.All[*kit.Select](p.Object()), pagetest.All[*kit.Slide](p.Object())
	for _, c := range []struct {
		step string
		hand func()
		now  func() any
		want any
	}{
		{"layout", func() { selects[0].SetSelected("layers") }, func() any { return h.Now.Blend.Layout }, "layers"},
		{"motion", func() { selects[1].SetSelected("dragging") }, func() any { return h.Now.Blend.Motion }, "drag"},
		{"custard colour", func() { selects[2].SetSelected("beetroot") }, func() any { return h.Now.Blend.DenseColour }, "#7d1f42"},
		{"foam colour", func() { selects[3].SetSelected("matcha") }, func() any { return h.Now.Blend.FoamColour }, "#dbe3b4"},
		{"another tub", func() { test.Tap(pagetest.Button(t, p.Object(), "Another tub")) }, func() any { return h.Now.Blend.Seed }, h.Now.Blend.Seed + 1},
		{"strokes", func() { press(slides[0], fyne.KeyEnd) }, func() any { return h.Now.Blend.Strokes }, 24},
		{"stroke depth", func() { press(slides[2], fyne.KeyHome) }, func() any { return h.Now.Blend.DepthPercent }, 10.0},
		{"handle width", func() { press(slides[3], fyne.KeyEnd) }, func() any { return h.Now.Blend.HandleMM }, 40.0},
		{"foam share", func() { press(slides[1], fyne.KeyHome) }, func() any { return h.Now.Blend.FoamVolumePercent }, 0.0},
	} {
		h.Steps = nil
		c.hand()
		p.Show()
		require.Equal(t, []string{c.step}, h.Steps)
		require.Equal(t, c.want, c.now(), c.step)
		require.Empty(t, design.Validate(h.Now), c.step)
	}
}

// press types a key on a slide, as a hand does that lets it go again.
func press(s *kit.Slide, key fyne.KeyName) {
	f := s.Focusable().(desktop.Keyable)
	f.FocusGained()
	f.KeyDown(&fyne.KeyEvent{Name: key})
	f.TypedKey(&fyne.KeyEvent{Name: key})
	f.KeyUp(&fyne.KeyEvent{Name: key})
}

func TestATypedColourCountsOnlyIfItIsOne(t *testing.T) {
	h := newStirHost(t, "hazelnut.yaml")
	p, _ := openRipple(h)
	before := h.Now.Blend.DenseColour
	for _, c := range []struct {
		typed, now string
		commits    int
	}{
		{"reddish", before, 0}, {"#12345", before, 0}, {"#12345g", before, 0}, {before, before, 0},
		{"#7A1F42", "#7a1f42", 1}, {" 00ff7f ", "#00ff7f", 1},
	} {
		h.Steps = nil
		e := entry(t, p.Object(), h.Now.Blend.DenseColour)
		h.Win.Canvas().Focus(e)
		e.SetText(c.typed)
		h.Win.Canvas().Unfocus()
		p.Show()
		require.Len(t, h.Steps, c.commits, c.typed)
		require.Equal(t, c.now, h.Now.Blend.DenseColour, c.typed)
		entry(t, p.Object(), c.now)
	}
}

// entry returns the field that shows text and takes the keyboard.
func entry(t *testing.T, o fyne.CanvasObject, text string) interface {
	fyne.Focusable
	SetText(string)
} {
	t.Helper()
	for _, x := range pagetest.All[fyne.CanvasObject](o) {
		if e, ok := x.(interface {
			fyne.Focusable
			SetText(string)
			SelectedText() string
			TypedShortcut(fyne.Shortcut)
		}); ok {
			e.TypedShortcut(&fyne.ShortcutSelectAll{})
			if e.SelectedText() == text {
				return e
			}
		}
	}
	require.FailNow(t, "no field shows "+text)
	return nil
}

// The tests draw smaller pictures than makers get.
func TestThePicturesOfMakersCanBeDrawn(t *testing.T) {
	for _, px := range []int{sharpPixels, exportPixels} {
		require.LessOrEqual(t, px, ripple.MaxPixels)
		require.GreaterOrEqual(t, px, ripple.MinPixels)
	}
}

func TestTheExportedPictureHasBothColoursInTheirShares(t *testing.T) {
	h := newStirHost(t, "night-tram.yaml")
	h.Now.Blend.Strokes = 2
	h.export = filepath.Join(t.TempDir(), "cut.png")
	p, drawn := openRipple(h)
	h.Until(func() bool { return *drawn > 0 })
	test.Tap(pagetest.Button(t, p.Object(), "Export picture…"))
	require.Equal(t, h.Now.Name+", cut.png", h.offered)
	file, err := os.ReadFile(h.export)
	require.NoError(t, err)
	im, err := png.Decode(bytes.NewReader(file))
	require.NoError(t, err)
	foam, all := 0, 0
	b := im.Bounds()
	for y := b.Min.Y; y < b.Max.Y; y += 3 {
		for x := b.Min.X; x < b.Max.X; x += 3 {
			c := color.NRGBAModel.Convert(im.At(x, y)).(color.NRGBA)
			if c.A < 255 {
				continue
			}
			all++
			if c.G > 0x90 { // between cocoa's 2f and the foam's df
				foam++
			}
		}
	}
	require.Greater(t, b.Dx(), b.Dy(), "two cuts side by side")
	require.InDelta(t, h.Found.Blend.FoamVolumeFraction, float64(foam)/float64(all), 0.03)
}

func TestWhatThePageCannotDrawItSays(t *testing.T) {
	h := newStirHost(t, "hazelnut.yaml")
	good := h.Now
	p, drawn := openRipple(h)
	h.Until(func() bool { return *drawn > 0 })
	for _, c := range []struct {
		name  string
		spoil func(*design.Design)
		says  string
	}{
		{"no lines", func(d *design.Design) { d.Dense.Lines, d.Foam.Lines, d.Foam.Syrup.Lines = nil, nil, nil }, "the tub is empty"},
		{"no colour", func(d *design.Design) { d.Blend.FoamColour = "whitish" }, "blend.foam_colour"},
		{"no layout", func(d *design.Design) { d.Blend.Layout = "marbled" }, "blend.layout"},
		{"a thimble", func(d *design.Design) { d.Tubs.VolumeML, d.Tubs.FillPercent = 30, 10 }, "a cut is drawn of one 30 to 600 mm wide and at least 5 mm high"},
	} {
		d := good
		c.spoil(&d)
		h.Now = d
		if r, err := h.With.Evaluate(d); err == nil {
			h.Found = r
		}
		p.Show()
		require.Contains(t, pagetest.Texts(p.Object()), c.says, c.name)
		require.Empty(t, pagetest.All[*kit.CutView](p.Object()), c.name)
		require.Empty(t, pagetest.All[*kit.Figures](p.Object()), "figures of another tub: %s", c.name)
		require.True(t, pagetest.Button(t, p.Object(), "Export picture…").Disabled(), c.name)
		h.Set(good)
		*drawn = 0
		p.Show()
		h.Until(func() bool { return *drawn > 0 })
		require.NotContains(t, pagetest.Texts(p.Object()), c.says, c.name)
		require.Len(t, pagetest.All[*kit.CutView](p.Object()), 1, c.name)
	}
}

func TestColoursOfOneLightnessAreToldOf(t *testing.T) {
	const notice = "almost equally light"
	h := newStirHost(t, "out-of-balance.yaml") // cream in cream
	p, _ := openRipple(h)
	require.Contains(t, pagetest.Texts(p.Object()), notice)
	h.Now.Blend.DenseColour = "#4a2f24"
	p.Show()
	require.NotContains(t, pagetest.Texts(p.Object()), notice)
}

func TestADragEndsInOneSharpPictureOfWhereItEnds(t *testing.T) {
	h := newStirHost(t, "hazelnut.yaml")
	p, drawn := openRipple(h)
	for n := 0; n <= 12; n++ { // faster than any picture
		h.Now.Blend.Strokes = n
		h.Preview(h.Now)
		p.Show()
	}
	h.Until(func() bool { return *drawn > 0 })
	require.Equal(t, 1, *drawn)
	ended := pictureOf(t, p)

	other := newStirHost(t, "hazelnut.yaml")
	other.Now.Blend.Strokes = 12
	q, once := openRipple(other)
	other.Until(func() bool { return *once > 0 })
	require.Equal(t, pictureOf(t, q), ended)
}

// pictureOf returns the pixels of what the page shows of the tub.
func pictureOf(t *testing.T, p *Page) []uint8 {
	t.Helper()
	images := pagetest.All[*canvas.Image](p.Object())
	require.NotEmpty(t, images)
	return images[0].Image.(*image.RGBA).Pix
}

func TestWorkForAPageThatWasLeftIsDropped(t *testing.T) {
	h := newStirHost(t, "hazelnut.yaml")
	p, drawn := openRipple(h)
	p.Leave()
	require.Eventually(t, func() bool { return !p.cutter.Busy() }, time.Minute, 5*time.Millisecond)
	for len(h.Posted) > 0 {
		(<-h.Posted)()
	}
	require.Zero(t, *drawn)
	p.Show()
	h.Until(func() bool { return *drawn > 0 })
	p.Leave()
	require.Eventually(t, func() bool { return !p.cutter.Busy() }, time.Minute, 5*time.Millisecond)
	h.Win.Resize(fyne.NewSize(1000, 640))
	require.False(t, p.cutter.Busy(), "where nobody looks another size of the window draws nothing")
}

func TestStopLeavesTheCoarsePicture(t *testing.T) {
	h := newStirHost(t, "hazelnut.yaml")
	p, drawn := openRipple(h)
	h.Until(func() bool {
		return len(pagetest.All[*canvas.Image](p.Object())) > 0 && pagetest.All[*canvas.Image](p.Object())[0].Image != nil
	})
	test.Tap(pagetest.Button(t, p.Object(), "Stop"))
	require.Contains(t, pagetest.Texts(p.Object()), "Stopped: the picture is coarse.")
	require.Zero(t, *drawn)
	p.Show() // the same design: stopped is stopped
	require.Contains(t, pagetest.Texts(p.Object()), "Stopped: the picture is coarse.")
}

func cutJob(t testing.TB, h *stirHost) cutting.Job {
	t.Helper()
	s, err := cutting.Of(h.Now, &h.Found, ripple.Side)
	require.NoError(t, err)
	return cutting.Job{Cuts: []ripple.Settings{s}, Style: tub.Style(h.Now), Coarse: 60, Sharp: 200}
}

func TestACutterPaintsAnewWithoutStirringAnew(t *testing.T) {
	h := newStirHost(t, "hazelnut.yaml")
	var answers []cutting.Drawn
	c := cutting.NewCutter(h.Post, func(d cutting.Drawn) { answers = append(answers, d) }, nil)
	q := cutJob(t, h)
	studied := 0
	q.Study = func(*ripple.Raster) func() { return func() { studied++ } }
	c.Draw(q)
	h.Until(func() bool { return len(answers) == 2 })
	require.False(t, answers[0].Sharp)
	require.True(t, answers[1].Sharp)
	q.Style.Foam = color.NRGBA{200, 0, 0, 255}
	q.Fit = []image.Point{{90, 80}}
	c.Draw(q)
	h.Until(func() bool { return len(answers) == 3 })
	require.True(t, answers[2].Sharp, "another colour needs no coarse picture")
	require.Equal(t, image.Pt(90, 80), answers[2].Pictures[0].Bounds().Size())
	require.Equal(t, 2, studied)

	q.Cuts = append([]ripple.Settings{}, q.Cuts[0])
	q.Cuts[0].FoamFraction = 2
	c.Draw(q)
	h.Until(func() bool { return len(answers) == 4 })
	require.ErrorContains(t, answers[3].Err, "FoamShare")
}

func TestTheRipplePageIsReachedByKeyboard(t *testing.T) {
	h := newStirHost(t, "hazelnut.yaml")
	p, drawn := openRipple(h)
	h.Until(func() bool { return *drawn > 0 })
	reached := map[fyne.Focusable]bool{}
	for i := 0; i < 40; i++ {
		test.FocusNext(h.Win.Canvas())
		reached[h.Win.Canvas().Focused()] = true
	}
	for _, b := range []string{"Export picture…", "Another tub"} {
		require.True(t, reached[pagetest.Button(t, p.Object(), b)], b)
	}
	for _, s := range pagetest.All[*kit.Select](p.Object()) {
		require.True(t, reached[s], s.Selected)
	}
	for _, s := range pagetest.All[*kit.Slide](p.Object()) {
		require.True(t, reached[s.Focusable()], "a slide")
	}
	scroll := pagetest.All[*container.Scroll](p.Object())[0]
	for _, s := range pagetest.All[*kit.Plot](p.Object()) {
		require.True(t, reached[s.Focusable()], "a plot")
		h.Win.Canvas().Focus(s)
		at := fyne.CurrentApp().Driver().AbsolutePositionForObject(s).Y - fyne.CurrentApp().Driver().AbsolutePositionForObject(scroll).Y
		require.GreaterOrEqual(t, at, float32(0), "a plot above what is seen")
		require.LessOrEqual(t, at+s.Size().Height, scroll.Size().Height, "a plot below what is seen")
	}
}

func TestAdviceJoinsHardnessAndThickness(t *testing.T) {
	h := newStirHost(t, "out-of-balance.yaml") // three strokes, served at −18 °C
	p, drawn := openRipple(h)
	h.Until(func() bool { return *drawn > 0 })
	require.Contains(t, pagetest.Texts(p.Object()), "Served at −18 °C:Custard: very hard, about ")
	require.Regexp(t, `Custard: .*; keep its ribbons under 3 mm \(the thickest tenth has \d+ mm\) or serve it warmer\.`, pagetest.Texts(p.Object()))
	require.Contains(t, pagetest.Texts(p.Object()), "Foam: its hardness is not known.") // its syrup is thicker than the law knows
	require.Contains(t, pagetest.Texts(p.Object()), "common practice, no source")

	h = newStirHost(t, "hazelnut.yaml")
	p, drawn = openRipple(h)
	h.Until(func() bool { return *drawn > 0 })
	require.Regexp(t, `Foam: .*; ribbons of any thickness bite easily\.`, pagetest.Texts(p.Object()))
}

func TestATubOfOnePhaseHasNoRibbonsAndSaysSo(t *testing.T) {
	for _, foam := range []float64{0, 100} {
		h := newStirHost(t, "hazelnut.yaml")
		d := h.Now
		d.Blend.FoamVolumePercent = foam
		h.Set(d)
		p, drawn := openRipple(h)
		h.Until(func() bool { return *drawn > 0 })
		require.Contains(t, pagetest.Texts(p.Object()), "Every spoonful is alike")
		require.NotContains(t, pagetest.Texts(p.Object()), "NaN")
		require.NotContains(t, pagetest.Texts(p.Object()), "over the interface")
	}
}

func TestTheRipplePageFitsASmallScreenAtLargeText(t *testing.T) {
	h := newStirHost(t, "buckthorn.yaml") // with its note that the grams decide
	fyne.CurrentApp().Settings().SetTheme(theme.New(theme.Options{TextScale: 1.5}))
	p, _ := openRipple(h)
	need := p.Object().MinSize()
	require.LessOrEqual(t, need.Width, float32(1264))
	require.LessOrEqual(t, need.Height, float32(660))
}

// TestLook takes pictures of the page for eyes: RIPPLEWRIGHT_LOOK names a folder.
func TestLook(t *testing.T) {
	dir := os.Getenv("RIPPLEWRIGHT_LOOK")
	if dir == "" {
		t.Skip("RIPPLEWRIGHT_LOOK names no folder")
	}
	for _, c := range []struct {
		name, demo string
		o          theme.Options
	}{
		{"light", "buckthorn.yaml", theme.Options{Variant: theme.Light}},
		{"dark", "night-tram.yaml", theme.Options{Variant: theme.Dark}},
		{"large", "oat-orchard.yaml", theme.Options{Variant: theme.Light, TextScale: 1.5}},
		{"alike", "out-of-balance.yaml", theme.Options{Variant: theme.Light, HighContrast: true}},
	} {
		h := newStirHost(t, c.demo)
		fyne.CurrentApp().Settings().SetTheme(theme.New(c.o))
		p, drawn := openRipple(h)
		p.sharp = sharpPixels
		h.Win.Resize(fyne.NewSize(1200, 500)) // the driver of tests lays out anew only then
		h.Win.Resize(fyne.NewSize(1264, 700))
		p.Show()
		h.Until(func() bool { return *drawn > 0 })
		h.Win.Resize(fyne.NewSize(1200, 500))
		h.Win.Resize(fyne.NewSize(1264, 700))
		h.Until(func() bool { return *drawn > 1 })
		var b bytes.Buffer
		require.NoError(t, png.Encode(&b, h.Win.Canvas().Capture()))
		require.NoError(t, os.WriteFile(filepath.Join(dir, c.name+".png"), b.Bytes(), 0o644))
	}
}

// BenchmarkCut times what a hand waits for: the coarse pictures after a drag's
// event, and all of the sharp ones and their figures, less the rest before them.
func BenchmarkCut(b *testing.B) {
	for _, c := range []struct {
		name  string
		sharp bool
	}{{"coarse", false}, {"sharp", true}} {
		b.Run(c.name, func(b *testing.B) {
			h := newStirHost(b, "hazelnut.yaml") // eight strokes
			q := cutJob(b, h)
			top := q.Cuts[0]
			top.View = ripple.Top
			q.Cuts = append(q.Cuts, top)
			q.Coarse, q.Sharp, q.Fit = 110, sharpPixels, []image.Point{{375, 344}, {375, 375}}
			q.Study = func(r *ripple.Raster) func() {
				rippleview.Request{Job: q}.Study(r)
				return func() {}
			}
			var drawn *cutting.Drawn
			cutter := cutting.NewCutter(h.Post, func(d cutting.Drawn) { drawn = &d }, nil)
			for i := 0; i < b.N; i++ {
				drawn = nil
				q.Cuts[0].Seed++
				q.Cuts = append([]ripple.Settings{}, q.Cuts...)
				cutter.Draw(q)
				h.Until(func() bool { return drawn != nil && drawn.Sharp == c.sharp })
			}
			cutter.Stop()
		})
	}
}

// BenchmarkRippleFrame times what one step of a drag costs the window's thread,
// without painting.
func BenchmarkRippleFrame(b *testing.B) {
	h := newStirHost(b, "hazelnut.yaml")
	p, _ := openRipple(h)
	for i := 0; i < b.N; i++ {
		h.Now.Blend.Strokes = i % 25
		p.Show()
		for len(h.Posted) > 0 {
			(<-h.Posted)()
		}
	}
	p.Leave()
}
