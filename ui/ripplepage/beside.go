package ripplepage

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// beside lays objects in a row where they fit, else under each other.
type beside struct {
	even bool // give each the same width, not just what it asks for
	rows bool
}

const besideGap = 10

func (b *beside) row(objects []fyne.CanvasObject, width float32) bool {
	need, widest := float32(besideGap*(len(objects)-1)), float32(0)
	for _, o := range objects {
		need += o.MinSize().Width
		widest = max(widest, o.MinSize().Width)
	}
	if b.even {
		need = float32(len(objects))*(widest+besideGap) - besideGap
	}
	return need <= width
}

// Layout implements fyne.Layout.
func (b *beside) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	if size.Width <= 0 {
		return // no place yet: what fits is not known
	}
	n := float32(len(objects))
	if b.rows = !b.row(objects, size.Width); b.rows {
		y := float32(0)
		for _, o := range objects {
			h := o.MinSize().Height
			o.Move(fyne.NewPos(0, y))
			o.Resize(fyne.NewSize(size.Width, h))
			y += h + theme.Padding()
		}
		return
	}
	need := besideGap * (n - 1)
	for _, o := range objects {
		need += o.MinSize().Width
	}
	x := float32(0)
	for _, o := range objects {
		w := o.MinSize().Width + (size.Width-need)/n
		if b.even {
			w = (size.Width - besideGap*(n-1)) / n
		}
		o.Move(fyne.NewPos(x, 0))
		o.Resize(fyne.NewSize(w, size.Height))
		x += w + besideGap
	}
}

// MinSize implements fyne.Layout: of the way they were laid last.
func (b *beside) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var s fyne.Size
	for i, o := range objects {
		m := o.MinSize()
		s.Width = max(s.Width, m.Width)
		if !b.rows {
			s.Height = max(s.Height, m.Height)
			continue
		}
		s.Height += m.Height
		if i > 0 {
			s.Height += theme.Padding()
		}
	}
	return s
}
