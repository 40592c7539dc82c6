package draw

// A Face is a cut of type. The window, which has one family, sets all in its own.
type Face uint8

// The faces.
const (
	Sans Face = iota
	SansBold
	SansItalic
	SerifBold
	SerifItalic
	NumFaces
)

// An Align is the place of a text's anchor along the line of writing.
type Align int

// The anchors along the line.
const (
	Left Align = iota
	Centre
	Right
)

// A Rise is the place of a text's anchor across the line of writing.
type Rise int

// The anchors across the line.
const (
	Middle   Rise = iota
	Above         // the anchor is at the foot of the text
	Below         // the anchor is at the top of the text
	Baseline      // the anchor is on the line that the letters stand on
)

// Drop returns how far under its anchor the baseline is, of the text's size, in the
// faces of package face.
func (r Rise) Drop() float64 {
	return [...]float64{Middle: 0.36, Above: -0.22, Below: 0.86, Baseline: 0}[r]
}

// A Text is one line of writing, horizontal but where it is turned.
type Text struct {
	At     Point
	S      string
	Size   float64 // height of the font (its em), in units of the list
	Align  Align
	Rise   Rise
	Face   Face
	Colour Colour
	Turn   float64 // clockwise about the anchor, radians; the window sets all upright
}
