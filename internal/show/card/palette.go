package card

import "ripplewright/internal/show/draw"

// The card's colours: deep water, terracotta, sand and sea glass on white, so
// that a page costs little ink. Text on white has a contrast of 4.5 or more.
var (
	ink   = draw.RGB(0x1c2f42)
	muted = draw.RGB(0x5d6974)
	coral = draw.RGB(0xb44a32)
	glass = draw.RGB(0x2a7378)
	sand  = draw.RGB(0xf6eedf)
	dune  = draw.RGB(0xd9ccb4)
	white = draw.RGB(0xffffff)
	black = draw.RGB(0)
)

// The card's type.
var (
	body    = style{draw.Sans, 9, ink}
	small   = style{draw.Sans, 7.5, muted}
	strong  = style{draw.SansBold, 9, ink}
	heading = style{draw.SerifBold, 15, ink}
	eyebrow = style{draw.SansBold, 8, coral}
)

const bodyLead, smallLead = 12.2, 10 // pt
