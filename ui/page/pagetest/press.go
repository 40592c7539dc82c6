package pagetest

import (
	"bytes"
	"image"
	"image/draw"
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/work/design"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
	"ripplewright/ui/theme"
)

// A Press is a program around a page that prints: what is exported goes into
// a folder of the test.
type Press struct {
	*Host
	dir   string
	Wrote string // the path of what was exported last
	Err   error
}

func (h *Press) Export(name string, write func(string) error) {
	h.Wrote = filepath.Join(h.dir, name)
	h.Err = write(h.Wrote)
}

// Written returns what was exported last.
func (h *Press) Written() []byte {
	h.T.Helper()
	require.NoError(h.T, h.Err)
	data, err := os.ReadFile(h.Wrote)
	require.NoError(h.T, err)
	return data
}

// Open puts a page into the host's window.
func (h *Press) Open(p page.Page) {
	h.Win.SetContent(p.Object())
	h.Win.Resize(fyne.NewSize(1264, 700))
	p.Show()
	h.T.Cleanup(p.Leave)
}

// KeepLook leaves a picture of the window in the folder that PRESS_LOOK names,
// for people to look at.
func (h *Press) KeepLook(name string) {
	dir := os.Getenv("PRESS_LOOK")
	if dir == "" {
		return
	}
	f, err := os.Create(filepath.Join(dir, name+".png"))
	require.NoError(h.T, err)
	defer f.Close()
	require.NoError(h.T, png.Encode(f, h.Win.Canvas().Capture()))
}

// Reached returns the texts of the buttons, choices and pickers that Tab comes
// to, and whether it comes to a view of sheets.
func (h *Press) Reached() (names []string, sheets bool) {
	first := true
	var begun fyne.Focusable
	for range 200 {
		h.Win.Canvas().FocusNext()
		f := h.Win.Canvas().Focused()
		if first {
			begun, first = f, false
		} else if f == begun {
			break
		}
		switch f := f.(type) {
		case *kit.Button:
			names = append(names, f.Text)
		case *kit.Select:
			names = append(names, f.Selected)
		case *kit.SheetView:
			sheets = true
		}
	}
	return names, sheets
}

// NewPress returns a program that prints, in that look.
func NewPress(t *testing.T, d design.Design, look theme.Options) *Press {
	test.NewTempApp(t).Settings().SetTheme(theme.New(look))
	return &Press{Host: NewHost(t, d), dir: t.TempDir()}
}

// SamePixels requires two pictures to be the same.
func SamePixels(t *testing.T, want, got image.Image) {
	t.Helper()
	require.Equal(t, want.Bounds().Size(), got.Bounds().Size())
	pixels := func(img image.Image) []byte {
		flat := image.NewRGBA(image.Rectangle{Max: img.Bounds().Size()})
		draw.Draw(flat, flat.Bounds(), img, img.Bounds().Min, draw.Src)
		return flat.Pix
	}
	require.True(t, bytes.Equal(pixels(want), pixels(got)))
}

// Dresses are the looks in which a page must keep within its window.
var Dresses = map[string]theme.Options{
	"light":    {Variant: theme.Light},
	"dark":     {Variant: theme.Dark},
	"light150": {Variant: theme.Light, TextScale: 1.5},
}
