package chart

import (
	"image/png"
	"math"
	"math/rand"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/draw/raster"
	"ripplewright/internal/show/say"
)

var plain say.Style

func labels(ticks []Tick) (s []string) {
	for _, t := range ticks {
		if !t.Minor {
			s = append(s, t.Label)
		}
	}
	return
}

func TestTicksAreRound(t *testing.T) {
	assert.Equal(t, []string{"−24", "−22", "−20", "−18", "−16", "−14", "−12", "−10", "−8", "−6", "−4"}, labels(Ticks(plain, -24, -4, 10)))
	assert.Equal(t, []string{"0.0", "0.2", "0.4", "0.6", "0.8", "1.0"}, labels(Ticks(plain, 0, 1, 5)))
	assert.Equal(t, []string{"−0.05", "0.00", "0.05"}, labels(Ticks(plain, -.06, .06, 3)))
	for _, c := range [][2]float64{{1, 1}, {2, 1}, {math.NaN(), 1}, {0, math.Inf(1)}, {1e17, 1e17 + 64}} {
		assert.Empty(t, Ticks(plain, c[0], c[1], 5), "%v", c)
	}
}

func TestTicksStayWithinTheLimitsAndNearTheWantedNumber(t *testing.T) {
	rng := rand.New(rand.NewSource(2))
	for i := 0; i < 2000; i++ {
		lo := rng.NormFloat64() * math.Pow(10, float64(rng.Intn(9)-4))
		hi := lo + math.Pow(10, float64(rng.Intn(7)-3))*(.1+rng.Float64())
		n := 2 + rng.Intn(10)
		ticks := Ticks(plain, lo, hi, n)
		require.GreaterOrEqual(t, len(ticks), 2, "%g..%g, %d", lo, hi, n)
		require.LessOrEqual(t, len(ticks), n+4, "%g..%g, %d", lo, hi, n)
		slack := (hi - lo) * 1e-6
		for k, x := range ticks {
			require.True(t, x.Value >= lo-slack && x.Value <= hi+slack)
			require.True(t, k == 0 || x.Value > ticks[k-1].Value)
		}
	}
}

func TestTicksOfTemperaturesAreRoundAsTheyAreRead(t *testing.T) {
	ticks := DegreeTicks(say.Customary, -18, 0, 5)
	var labels []string
	for _, x := range ticks {
		labels = append(labels, x.Label)
	}
	assert.Equal(t, []string{"0", "10", "20", "30"}, labels)
	assert.InDelta(t, -160./9, ticks[0].Value, 1e-12, "0 °F")
	assert.Equal(t, Ticks(say.Usual, -18, 0, 5), DegreeTicks(say.Usual, -18, 0, 5))
}

func TestLogTicksLabelThePowers(t *testing.T) {
	assert.Equal(t, []string{"0.1", "1", "10", "100"}, labels(LogTicks(plain, .1, 100)))
	assert.Equal(t, []string{"1", "2", "5", "10"}, labels(LogTicks(plain, 1, 10)))
	assert.Nil(t, LogTicks(plain, 0, 10))
}

func TestValueUndoesPos(t *testing.T) {
	for _, s := range []Scale{{Min: -24, Max: -4, Lo: 40, Hi: 900}, {Min: .05, Max: 50, Lo: 300, Hi: 10, Log: true}} {
		for f := -.2; f < 1.3; f += .1 {
			pos := s.Lo + f*(s.Hi-s.Lo)
			assert.InDelta(t, pos, s.Pos(s.Value(pos)), 1e-9)
		}
	}
	assert.True(t, math.IsNaN(Scale{Min: 1, Max: 10, Hi: 1, Log: true}.Pos(0)))
}

var black = draw.RGB(0)

func TestUnknownValuesLeaveAGap(t *testing.T) {
	p := Plot{X: Axis{Min: 0, Max: 4}, Y: Axis{Min: 0, Max: 4}, NoLegend: true,
		Series: []Series{{X: []float64{0, 1, 2, 3, 4}, Y: []float64{1, 1, math.NaN(), 3, 3}, Line: draw.Stroke{Width: 7, Colour: black}}}}
	var d draw.List
	f := p.Draw(&d, 300, 200)
	var curve []draw.Point
	for _, m := range d.Marks {
		if m.Line.Width == 7 {
			curve = m.Points
		}
	}
	require.NotEmpty(t, curve)
	lifted := false
	for i, a := range curve {
		lifted = lifted || a.Lifts()
		if !a.Lifts() {
			assert.Falsef(t, f.X.Value(a.X) > 1.01 && f.X.Value(a.X) < 2.99, "point %d is at the unknown", i)
		}
	}
	assert.True(t, lifted)
}

func TestCurvesStayInTheFrame(t *testing.T) {
	rng := rand.New(rand.NewSource(5))
	for n := 0; n < 100; n++ {
		s := Series{Line: draw.Stroke{Width: 7, Colour: black}}
		for i := 0; i < 50; i++ {
			s.X = append(s.X, rng.Float64()*20-5)
			s.Y = append(s.Y, rng.NormFloat64()*10)
		}
		p := Plot{X: Axis{Min: 0, Max: 10}, Y: Axis{Min: -5, Max: 5}, Series: []Series{s}}
		var d draw.List
		f := p.Draw(&d, 300, 200)
		for _, m := range d.Marks {
			for _, a := range m.Points {
				if m.Line.Width == 7 && !a.Lifts() {
					require.True(t, a.X > f.Box.X0-1e-6 && a.X < f.Box.X1+1e-6 && a.Y > f.Box.Y0-1e-6 && a.Y < f.Box.Y1+1e-6, "%v", a)
				}
			}
		}
	}
}

func TestContourOfACone(t *testing.T) {
	const n = 41
	grid := make([][]float64, n)
	for j := range grid {
		for i := 0; i < n; i++ {
			grid[j] = append(grid[j], math.Hypot(float64(i)-20, float64(j)-20))
		}
	}
	var d draw.List
	d.Reset(40, 40)
	Contour(&d, grid, 12.5, draw.Rect{X0: 0, Y0: 0, X1: 40, Y1: 40})
	d.EndStroke(draw.Stroke{Width: 1, Colour: black})
	require.Len(t, d.Marks, 1)
	length := 0.0
	pts := d.Marks[0].Points
	for i, p := range pts {
		if p.Lifts() {
			continue
		}
		assert.InDelta(t, 12.5, math.Hypot(p.X-20, p.Y-20), .05)
		if i+1 < len(pts) && !pts[i+1].Lifts() {
			length += math.Hypot(p.X-pts[i+1].X, p.Y-pts[i+1].Y)
		}
	}
	assert.InDelta(t, 2*math.Pi*12.5, length, .5)
	Contour(&d, grid, 1000, draw.Rect{X0: 0, Y0: 0, X1: 40, Y1: 40})
	d.EndStroke(draw.Stroke{Width: 1, Colour: black})
	assert.Len(t, d.Marks, 1, "no line, no mark")
}

func TestColdGetsLighterAllTheWay(t *testing.T) {
	// Relative luminance of sRGB, WCAG 2.1 (W3C, 2018).
	light := func(c draw.Colour) float64 {
		f := func(v uint8) float64 { return math.Pow((float64(v)/255+.055)/1.055, 2.4) }
		return .2126*f(c.R) + .7152*f(c.G) + .0722*f(c.B)
	}
	last := -1.0
	for i := 0; i <= 64; i++ {
		l := light(Cold.At(float64(i) / 64))
		assert.Greater(t, l, last, i)
		last = l
	}
	assert.Equal(t, Cold[0], Cold.At(-3))
	assert.Equal(t, Cold[len(Cold)-1], Cold.At(2))
}

// demo is four curves of n points, as the window draws them.
func demo(n int) *Plot {
	p := &Plot{X: Axis{Title: "°C", Min: -24, Max: -4}, Y: Axis{Title: "kPa", Log: true, Min: .05, Max: 50}, Right: &Axis{Title: "ice", Min: 0, Max: 1},
		Style: Look{Ink: draw.RGB(0x17313A), Muted: draw.RGB(0x566A6E), Grid: draw.RGB(0xE2D8C3), Back: draw.RGB(0xFAF5EA)}}
	b := Upright(-15.5, -11)
	b.Fill, b.Hatch, b.Line = draw.Fade(draw.RGB(0x356B3F), .15), draw.Rising, draw.Stroke{Width: 1, Colour: draw.Fade(draw.RGB(0x356B3F), .4)}
	p.Bands = []Patch{b}
	for k, dash := range []draw.Dash{draw.Solid, draw.Dashed, draw.Dotted, draw.DashDot} {
		s := Series{Name: "curve", Line: draw.Stroke{Width: 2, Dash: dash, Colour: draw.RGB(0x924A0C)}, Marker: draw.Marker(k), Right: k > 1}
		for i := 0; i < n; i++ {
			t := -24 + 20*float64(i)/float64(n-1)
			ice := 1 + (2+float64(k))/math.Min(t, -2-float64(k))
			y := ice
			if k < 2 {
				y = .05 * math.Exp(6*ice)
			}
			s.X, s.Y = append(s.X, t), append(s.Y, y)
		}
		p.Series = append(p.Series, s)
	}
	return p
}

// TestPlotLooksAsItDid compares with a picture that people have looked at. With
// GOLDEN=write it makes the picture anew.
func TestPlotLooksAsItDid(t *testing.T) {
	name := filepath.Join("..", "..", "..", "testdata", "golden", "kit_plot.png")
	var d draw.List
	var p raster.Painter
	demo(80).Draw(&d, 320, 200)
	img := p.Resize(320, 200)
	p.Paint(&d, 1)
	if os.Getenv("GOLDEN") == "write" {
		require.NoError(t, os.MkdirAll(filepath.Dir(name), 0o755))
		f, err := os.Create(name)
		require.NoError(t, err)
		require.NoError(t, png.Encode(f, img))
		require.NoError(t, f.Close())
	}
	f, err := os.Open(name)
	require.NoError(t, err)
	defer f.Close()
	want, err := png.Decode(f)
	require.NoError(t, err)
	require.Equal(t, want.Bounds(), img.Bounds())
	off := 0
	for y := 0; y < 200; y++ {
		for x := 0; x < 320; x++ {
			r, g, b, _ := want.At(x, y).RGBA()
			c := img.RGBAAt(x, y)
			for _, e := range [3]int{int(r>>8) - int(c.R), int(g>>8) - int(c.G), int(b>>8) - int(c.B)} {
				if e > 4 || e < -4 { // the last bit differs between processors
					off++
				}
			}
		}
	}
	assert.LessOrEqual(t, off, 64, "of 192 000 samples")
}

func TestDrawingAgainAllocatesNothing(t *testing.T) {
	plot := demo(400)
	var d draw.List
	var p raster.Painter
	draw := func() {
		p.Resize(640, 400)
		p.Paint(&d, 1)
	}
	plot.Draw(&d, 640, 400)
	draw()
	assert.Zero(t, testing.AllocsPerRun(5, draw))
}

func BenchmarkPaint(b *testing.B) {
	for _, c := range []struct {
		name  string
		scale float64
	}{{"640x400", 1}, {"1280x800", 2}} {
		b.Run(c.name, func(b *testing.B) {
			plot := demo(400)
			var d draw.List
			var p raster.Painter
			plot.Draw(&d, 640, 400)
			b.ReportAllocs()
			for i := 0; i < b.N; i++ {
				p.Resize(int(640*c.scale), int(400*c.scale))
				p.Paint(&d, c.scale)
			}
		})
	}
}

func BenchmarkLayOut(b *testing.B) {
	plot := demo(400)
	var d draw.List
	b.ReportAllocs()
	for i := 0; i < b.N; i++ {
		plot.Draw(&d, 640, 400)
	}
}
