package photodialog

import (
	"image"
	"math"

	"fyne.io/fyne/v2"

	"ripplewright/internal/answer/photo"
	"ripplewright/internal/desk/mishap"
)

// How far the picture is magnified, and by how much at a step.
const mostTimes, zoomStep = 16, 1.5

// view is what of a picture is in image: its corner and size on screen, and how many
// units one of its pixels has.
type view struct {
	at   photo.Point
	size image.Point
	k    float32
}

// Scrolled implements fyne.Scrollable. The keyboard follows, so that the keys that magnify
// and move go on where the wheel has begun.
func (m *marks) Scrolled(e *fyne.ScrollEvent) {
	by := float32(zoomStep)
	if e.Scrolled.DY < 0 {
		by = 1 / by
	}
	mishap.Do(func() { m.take(); m.magnify(by, e.Position) })
}

// magnify shows the picture so many times as large; what is at p stays there.
func (m *marks) magnify(by float32, p fyne.Position) {
	at, k := m.frame()
	if k == 0 {
		return
	}
	was := m.times
	m.times = max(1, min(mostTimes, m.times*by))
	if m.times == was {
		return
	}
	k2 := k * m.times / was
	x, y := (p.X-at.X)/k, (p.Y-at.Y)/k // of the picture, at p
	m.middle = photo.Point{X: float64(x + (m.Size().Width/2-p.X)/k2), Y: float64(y + (m.Size().Height/2-p.Y)/k2)}
	m.Refresh()
}

// follow brings the chosen place into sight.
func (m *marks) follow() {
	if p := m.onScreen(m.places[m.chosen]); p.X < 0 || p.Y < 0 || p.X > m.Size().Width || p.Y > m.Size().Height {
		m.middle = m.places[m.chosen]
	}
}

// draw puts what is to be seen of the picture on screen: the whole, or a part as fine as
// the picture is.
func (m *marks) draw() {
	at, k := m.frame()
	if k == 0 {
		return
	}
	if m.times == 1 || m.part == nil {
		if m.image.Image != image.Image(m.whole) {
			m.image.Image = m.whole
		}
		m.shown = view{}
		m.image.Move(at)
		m.image.Resize(fyne.NewSize(k*float32(m.size.X), k*float32(m.size.Y)))
		return
	}
	from := fyne.NewPos(max(0, at.X), max(0, at.Y))
	to := fyne.NewPos(min(m.Size().Width, at.X+k*float32(m.size.X)), min(m.Size().Height, at.Y+k*float32(m.size.Y)))
	now := view{photo.Point{X: float64((from.X - at.X) / k), Y: float64((from.Y - at.Y) / k)},
		image.Pt(int(math.Ceil(float64(to.X-from.X))), int(math.Ceil(float64(to.Y-from.Y)))), k}
	if now != m.shown && now.size.X > 0 && now.size.Y > 0 {
		m.image.Image, m.shown = m.part(now.at, now.size, float64(k)), now
	}
	m.image.Move(from)
	m.image.Resize(fyne.NewSize(float32(now.size.X), float32(now.size.Y)))
}
