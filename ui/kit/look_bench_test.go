package kit_test

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"
	"github.com/stretchr/testify/require"

	"ripplewright/ui/kit"
	"ripplewright/ui/theme"
)

// benchmarkFrame lays out and paints the raster of o, changed by change, as a
// window does for every frame of a drag.
func benchmarkFrame(b *testing.B, o fyne.Widget, w, h int, change func(i int)) {
	test.NewTempApp(b).Settings().SetTheme(theme.New(theme.Options{Variant: theme.Light}))
	win := test.NewWindow(o)
	defer win.Close()
	win.SetPadded(false)
	win.Resize(fyne.NewSize(float32(w), float32(h)))
	var raster *canvas.Raster
	for _, c := range test.LaidOutObjects(o) {
		if r, ok := c.(*canvas.Raster); ok {
			raster = r
		}
	}
	require.NotNil(b, raster)
	b.ReportAllocs()
	b.ResetTimer()
	for i := 0; i < b.N; i++ {
		change(i)
		raster.Generator(w, h)
	}
}

func BenchmarkRailFrame(b *testing.B) {
	test.NewTempApp(b)
	r := kit.NewRail()
	r.ShowRail(sampleRail())
	benchmarkFrame(b, r, 1100, 180, func(i int) { r.ShowServing(-24 + float64(i%40)/2) })
}

func BenchmarkTubFrame(b *testing.B) {
	test.NewTempApp(b)
	t := kit.NewTubView()
	benchmarkFrame(b, t, 380, 400, func(i int) {
		t.ShowTub(kit.Tub{Fill: .9, Foam: float64(i%100) / 100, DenseName: "custard", FoamName: "foam"})
	})
}

func BenchmarkFieldFrame(b *testing.B) {
	test.NewTempApp(b)
	f := kit.NewHeatMapView()
	values := sampleField()
	benchmarkFrame(b, f, 340, 320, func(int) { f.ShowField(kit.HeatMap{Values: values, RadiusMM: 44, HeightMM: 92}) })
}
