package card

import (
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/draw/typeset"
)

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
	body    = typeset.Type(draw.Sans, 9, ink)
	small   = typeset.Type(draw.Sans, 7.5, muted)
	strong  = typeset.Type(draw.SansBold, 9, ink)
	heading = typeset.Type(draw.SerifBold, 15, ink)
	eyebrow = typeset.Type(draw.SansBold, 8, coral)
)

const bodyLead, smallLead = 12.2, 10 // pt
