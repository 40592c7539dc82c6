package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
)

// Reveal scrolls whatever scrolls within root so that the thing with the keyboard is in
// sight: the toolkit leaves it where it is.
func Reveal(root fyne.CanvasObject, f fyne.Focusable) {
	target, ok := f.(fyne.CanvasObject)
	if !ok {
		return
	}
	for _, s := range scrollsAround(root, f) {
		scrollTo(s, target)
	}
}

// scrollsAround are the scrolls between root and f, the innermost first; nil where f is
// not within root.
func scrollsAround(root fyne.CanvasObject, f fyne.Focusable) []*container.Scroll {
	all, _ := around(root, f)
	return all
}

func around(o fyne.CanvasObject, f fyne.Focusable) (all []*container.Scroll, found bool) {
	if o == nil || !o.Visible() {
		return nil, false
	}
	within := func(objects ...fyne.CanvasObject) bool {
		for _, c := range objects {
			if all, found = around(c, f); found {
				return true
			}
		}
		return false
	}
	switch x := o.(type) {
	case *fyne.Container:
		return all, within(x.Objects...)
	case *container.Split:
		return all, within(x.Leading, x.Trailing)
	case *container.Scroll:
		if within(x.Content) {
			return append(all, x), true
		}
		return nil, false
	case interface{ Focusable() fyne.Focusable }:
		return nil, x.Focusable() == f
	case fyne.Focusable:
		return nil, x == f
	}
	return nil, false
}

// scrollTo moves s no further than needed for o to be seen, with some room around it.
func scrollTo(s *container.Scroll, o fyne.CanvasObject) {
	d := fyne.CurrentApp().Driver()
	room := theme.TextSize()
	at := d.AbsolutePositionForObject(o).Subtract(d.AbsolutePositionForObject(s.Content))
	along := func(offset, from, size, view float32) float32 {
		if size+2*room > view {
			return max(0, from)
		}
		return max(0, min(from-room, max(offset, from+size+room-view)))
	}
	to := s.Offset
	if s.Direction != container.ScrollHorizontalOnly {
		to.Y = along(to.Y, at.Y, o.Size().Height, s.Size().Height)
	}
	if s.Direction != container.ScrollVerticalOnly {
		to.X = along(to.X, at.X, o.Size().Width, s.Size().Width)
	}
	if to != s.Offset {
		s.ScrollToOffset(to)
	}
}
