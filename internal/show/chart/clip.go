package chart

import "math"

// start begins a clipped curve at (x, y).
func (d *Drawing) start(box Rect, x, y float64) {
	d.penX, d.penY = x, y
	if box.holds(x, y) {
		d.To(x, y)
	}
}

// clipTo continues a clipped curve to (x, y): only what lies in box is added.
func (d *Drawing) clipTo(box Rect, x, y float64) {
	ax, ay := d.penX, d.penY
	d.penX, d.penY = x, y
	if box.holds(ax, ay) && box.holds(x, y) {
		d.To(x, y)
		return
	}
	t0, t1 := 0.0, 1.0
	for _, side := range [...]struct{ toward, room float64 }{
		{ax - x, ax - box.X0}, {x - ax, box.X1 - ax},
		{ay - y, ay - box.Y0}, {y - ay, box.Y1 - ay},
	} {
		switch {
		case side.toward == 0:
			if side.room < 0 {
				return
			}
		case side.toward < 0:
			t0 = math.Max(t0, side.room/side.toward)
		default:
			t1 = math.Min(t1, side.room/side.toward)
		}
	}
	if t0 > t1 {
		return
	}
	if t0 > 0 {
		d.Lift()
		d.To(ax+(x-ax)*t0, ay+(y-ay)*t0)
	}
	d.To(ax+(x-ax)*t1, ay+(y-ay)*t1)
	if t1 < 1 {
		d.Lift()
	}
}

func (r Rect) holds(x, y float64) bool { return x >= r.X0 && x <= r.X1 && y >= r.Y0 && y <= r.Y1 }
