package chart

import "ripplewright/internal/show/draw"

type (
	Colour  = draw.Colour
	Point   = draw.Point
	Rect    = draw.Rect
	Line    = draw.Line
	Text    = draw.Text
	Dash    = draw.Dash
	Hatch   = draw.Hatch
	Marker  = draw.Marker
	Rise    = draw.Rise
	Align   = draw.Align
	Drawing = draw.List
)

const (
	Left, Centre, Right                                    = draw.Left, draw.Centre, draw.Right
	Middle, Above, Below                                   = draw.Middle, draw.Above, draw.Below
	Solid, Dashed, Dotted, DashDot                         = draw.Solid, draw.Dashed, draw.Dotted, draw.DashDot
	Plain, Rising, Falling, Crossed, Dots, Level           = draw.Plain, draw.Rising, draw.Falling, draw.Crossed, draw.Dots, draw.Level
	NoMarker, Disc, Square, Triangle, Diamond, Plus, Cross = draw.NoMarker, draw.Disc, draw.Square, draw.Triangle, draw.Diamond, draw.Plus, draw.Cross
)

func RGB(hex uint32) Colour               { return draw.RGB(hex) }
func Fade(c Colour, a float64) Colour     { return draw.Fade(c, a) }
func Blend(a, b Colour, f float64) Colour { return draw.Blend(a, b, f) }
