package kit_test

import (
	"image/png"
	"math"
	"os"
	"path/filepath"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/show/chart"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/say"
	"ripplewright/ui/kit"
	"ripplewright/ui/theme"
)

// sampleRail is a made-up pair of phases of the market stall "Saltmarsh Quay".
func sampleRail() kit.RailView {
	v := kit.RailView{
		Both:    kit.Reach{From: -15.5, To: -11},
		Serving: -13,
		Words: []kit.HardnessWord{{Above: 0, Name: "pourable"}, {Above: .1, Name: "soft-serve"}, {Above: .6, Name: "soft"}, {Above: 2.5, Name: "scoopable"},
			{Above: 6, Name: "firm"}, {Above: 12, Name: "hard"}, {Above: 25, Name: "very hard"}},
		Dense: kit.RailPhase{Name: "custard", Scoop: kit.Reach{From: -15.5, To: -8.5}},
		Foam:  kit.RailPhase{Name: "foam", Scoop: kit.Reach{From: -21, To: -11}},
	}
	for t := -24.0; t <= -4; t += .25 {
		v.Temperatures = append(v.Temperatures, t)
		ice := func(freeze, most float64) float64 { return math.Max(0, most*(1-freeze/math.Min(t, freeze))) }
		d, f := ice(-2.6, .78), ice(-9.5, .5)
		v.Dense.Ice = append(v.Dense.Ice, d)
		v.Foam.Ice = append(v.Foam.Ice, f)
		v.Dense.Hardness = append(v.Dense.Hardness, .02*math.Exp(11*d))
		v.Foam.Hardness = append(v.Foam.Hardness, .12+.05*math.Exp(13*f))
	}
	return v
}

func sampleFigures() *kit.Figures {
	f := kit.NewFigures("Custard", "Foam", "Tub")
	f.ShowFigures([]say.TableRow{
		{Name: "Mass", Unit: "g", Cells: []string{"1 204", "318", "1 522"}},
		{Name: "Density", Unit: "g/ml", Cells: []string{"0.93", "0.31", "0.68"}},
		{Name: "Initial freezing point", Unit: "°C", Cells: []string{"−2.6", "−9.5", ""}},
		{Name: "Water frozen", Unit: "%", Cells: []string{"71.2", "22.0", ""}},
		{Name: "Hardness", Unit: "kPa", Cells: []string{"4.1", "0.3", "1.9"}},
	})
	return f
}

func samplePlot() chart.Plot {
	var hours, core, mean, ring []float64
	for t := 0.0; t <= 12; t += .1 {
		hours = append(hours, t)
		core = append(core, -18+13*math.Exp(-math.Pow(t/4.5, 2)))
		mean = append(mean, -18+13*math.Exp(-t/3.2))
		ring = append(ring, -18+12*math.Exp(-t/1.6))
	}
	band := chart.Patch{Label: "custard scoops", X0: 0, X1: 12, Y0: -15.5, Y1: -8.5, Hatch: draw.Rising,
		Fill: draw.Fade(draw.RGB(0x924A0C), .12), Line: draw.Stroke{Width: 1, Colour: draw.Fade(draw.RGB(0x924A0C), .35)}}
	return chart.Plot{
		X: chart.Axis{Title: "hours in the freezer"}, Y: chart.Axis{Title: "°C"},
		Bands: []chart.Patch{band},
		Series: []chart.Series{
			{Name: "core", X: hours, Y: core, Line: draw.Stroke{Width: 2.2}, Marker: draw.Disc},
			{Name: "mean", X: hours, Y: mean, Line: draw.Stroke{Width: 2.2, Dash: draw.Dashed, Colour: draw.RGB(0x0B8090)}},
			{Name: "outer ring", X: hours, Y: ring, Line: draw.Stroke{Width: 2.2, Dash: draw.DashDot, Colour: draw.RGB(0xB06A1B)}},
		},
		Rules: []chart.Rule{{At: 2.5, Label: "stir", Line: draw.Stroke{Width: 1.4, Dash: draw.Dotted}}},
	}
}

// sampleField is colder at the wall and floor than in the middle.
func sampleField() [][]float64 {
	rows := make([][]float64, 30)
	for j := range rows {
		for i := 0; i < 15; i++ {
			r, z := float64(i)/14, float64(j)/29
			rows[j] = append(rows[j], -18+13*(1-r*r)*math.Sin(math.Pi*(.12+.8*z)))
		}
	}
	return rows
}

// looks are the widgets as the pictures show them.
func looks() map[string]func() (fyne.CanvasObject, fyne.Size) {
	return map[string]func() (fyne.CanvasObject, fyne.Size){
		"rail": func() (fyne.CanvasObject, fyne.Size) {
			r := kit.NewRail()
			r.ShowRail(sampleRail())
			return r, fyne.NewSize(1080, 176)
		},
		"tub": func() (fyne.CanvasObject, fyne.Size) {
			t := kit.NewTubView()
			t.ShowTub(kit.Tub{Fill: .86, Foam: .4, DenseName: "custard", FoamName: "foam"})
			return t, fyne.NewSize(380, 400)
		},
		"fields": func() (fyne.CanvasObject, fyne.Size) {
			a := kit.NewSlide("Foam share", "%", 0, 100, 1, 0)
			a.ShowValue(40)
			b := kit.NewSlide("Cook to", "°C", 100, 160, .5, 1)
			b.ShowValue(118)
			a.NameWidth, b.NameWidth = 90, 90
			n := kit.NewNumberField("g", 0, 5000, 1)
			n.ShowValue(520)
			bad := kit.NewNumberField("ml", 50, 5000, 0)
			test.Type(bad.Focusable(), "9000")
			bad.Focusable().TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
			off := kit.NewSlide("Not here", "%", 0, 100, 1, 0)
			off.ShowValue(30)
			off.Disable()
			return container.NewVBox(a, b, off, n, bad), fyne.NewSize(420, 260)
		},
		"verdicts": func() (fyne.CanvasObject, fyne.Size) {
			box := container.NewVBox()
			for _, v := range []kit.VerdictView{
				{kit.Good, "Scoops well", "Both phases are within their band at −13 °C.", ""},
				{kit.Note, "Soft ribbon", "The foam has no ice at −13 °C and will stay soft.", ""},
				{kit.Caution, "Firm custard", "The custard needs force at −18 °C.", "Serve at −14 °C"},
				{kit.Wrong, "Will not freeze", "The foam is liquid at every freezer temperature.", "Less sugar in the syrup"},
			} {
				s := kit.NewVerdictStrip()
				s.ShowVerdict(v)
				box.Add(s)
			}
			return box, fyne.NewSize(760, 190)
		},
		"figures": func() (fyne.CanvasObject, fyne.Size) {
			f := sampleFigures()
			return f, fyne.NewSize(430, f.MinSize().Height)
		},
		"plot": func() (fyne.CanvasObject, fyne.Size) {
			p := kit.NewPlot()
			p.ShowPlot(samplePlot())
			p.MouseMoved(&desktop.MouseEvent{})
			return p, fyne.NewSize(560, 330)
		},
		"field": func() (fyne.CanvasObject, fyne.Size) {
			f := kit.NewHeatMapView()
			f.ShowField(kit.HeatMap{Values: sampleField(), RadiusMM: 44, HeightMM: 92})
			return f, fyne.NewSize(340, 320)
		},
		"tile": func() (fyne.CanvasObject, fyne.Size) {
			a, b := kit.NewTile(nil), kit.NewTile(nil)
			a.ShowTile(kit.TileView{Title: "Leave out", Value: "9 to 14 min", Foot: "the ring is too soft by 29 min"}, true)
			b.ShowTile(kit.TileView{Title: "Harden the tub", Value: "longer than there is room for", Foot: "to store; 2.7 h until it can be moved about"}, false)
			return container.NewGridWithColumns(2, a, b), fyne.NewSize(400, 90)
		},
		"finder": func() (fyne.CanvasObject, fyne.Size) {
			f := kit.NewFinder("Find an ingredient", []kit.FinderItem{
				{ID: "milk_whole", Title: "Milk, whole", Subtitle: "3.5 % fat", Group: "dairy"},
				{ID: "cream", Title: "Crème épaisse", Subtitle: "30 % fat", Group: "dairy"},
				{ID: "buttermilk", Title: "Buttermilk", Group: "dairy"},
				{ID: "sugar", Title: "Sugar", Subtitle: "sucrose", Group: "sugars"},
			})
			return f, fyne.NewSize(360, 220)
		},
	}
}

// TestEveryWidgetPaints draws each widget in every dress. With KIT_LOOK set to a
// folder it leaves the pictures there, for people to look at.
func TestEveryWidgetPaints(t *testing.T) {
	dresses := map[string]theme.Options{
		"light":    {Variant: theme.Light},
		"dark":     {Variant: theme.Dark},
		"light150": {Variant: theme.Light, TextScale: 1.5},
		"contrast": {Variant: theme.Dark, HighContrast: true},
	}
	for dress, options := range dresses {
		for name, look := range looks() {
			t.Run(name+"/"+dress, func(t *testing.T) {
				app := test.NewTempApp(t)
				app.Settings().SetTheme(theme.New(options))
				o, size := look()
				w := test.NewWindow(o)
				defer w.Close()
				w.Resize(fyne.NewSize(fyne.Max(size.Width, o.MinSize().Width)+8, fyne.Max(size.Height, o.MinSize().Height)+8))
				img := w.Canvas().Capture()
				colours := map[[3]uint32]bool{}
				for y := 0; y < img.Bounds().Dy(); y += 2 {
					for x := 0; x < img.Bounds().Dx(); x += 2 {
						r, g, b, _ := img.At(x, y).RGBA()
						colours[[3]uint32{r, g, b}] = true
					}
				}
				require.Greater(t, len(colours), 8, "nothing but background")
				if dir := os.Getenv("KIT_LOOK"); dir != "" {
					f, err := os.Create(filepath.Join(dir, name+"_"+dress+".png"))
					require.NoError(t, err)
					require.NoError(t, png.Encode(f, img))
					require.NoError(t, f.Close())
				}
			})
		}
	}
}
