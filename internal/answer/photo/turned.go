package photo

import "image/color"

// At implements image.Image: row and column as the orientation tag has them, 1 the upper
// left, 2 mirrored, 3 upside down, 4 that mirrored, 5 to 8 with rows for columns.
func (t *turned) At(x, y int) color.Color {
	b := t.Image.Bounds()
	w, h := b.Dx()-1, b.Dy()-1
	switch t.as {
	case 2:
		x = w - x
	case 3:
		x, y = w-x, h-y
	case 4:
		y = h - y
	case 5:
		x, y = y, x
	case 6:
		x, y = y, h-x
	case 7:
		x, y = w-y, h-x
	case 8:
		x, y = w-y, x
	}
	return t.Image.At(b.Min.X+x, b.Min.Y+y)
}
