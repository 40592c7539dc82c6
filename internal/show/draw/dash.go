package draw

// A Dash is the pattern of a stroke, so that lines can be told apart without colour.
type Dash int

// The patterns.
const (
	Solid Dash = iota
	Dashed
	Dotted
	DashDot
)

var dashes = [...][]float64{
	Solid:   nil,
	Dashed:  {4, 3.5},
	Dotted:  {0.01, 2.4},
	DashDot: {5, 3, 0.01, 3},
}

// Pattern returns on and off lengths as multiples of the line's width, nil for
// a solid line. Round caps add one width to every "on". The slice is shared: do
// not change it.
func (s Dash) Pattern() []float64 { return dashes[s] }
