package card

import "image/color"

// The card's colours: deep water, terracotta, sand and sea glass on white, so
// that a page costs little ink. Text on white has a contrast of 4.5 or more.
var (
	ink   = color.NRGBA{0x1c, 0x2f, 0x42, 0xff}
	muted = color.NRGBA{0x5d, 0x69, 0x74, 0xff}
	coral = color.NRGBA{0xb4, 0x4a, 0x32, 0xff}
	glass = color.NRGBA{0x2a, 0x73, 0x78, 0xff}
	sand  = color.NRGBA{0xf6, 0xee, 0xdf, 0xff}
	dune  = color.NRGBA{0xd9, 0xcc, 0xb4, 0xff}
	white = color.NRGBA{0xff, 0xff, 0xff, 0xff}
	black = color.NRGBA{0, 0, 0, 0xff}
)

// The card's type.
var (
	body    = style{sans, 9, ink}
	small   = style{sans, 7.5, muted}
	strong  = style{sansBold, 9, ink}
	heading = style{serifBold, 15, ink}
	eyebrow = style{sansBold, 8, coral}
)

const bodyLead, smallLead = 12.2, 10 // pt
