package ice

import "math"

// Lumped is a phase without differences inside, cooling in air from 4 °C to half
// of its water frozen.
type Lumped struct {
	MushMinutes float64  // minutes of it below the freezing point
	Path        []Moment // of these
	HalfC       float64  // °C at the end
}

// lumpedFrom is how cold an aged mix goes in, °C.
const lumpedFrom = 4

// Cool returns the path of the phase that takes so many minutes in air of airC to
// come from 4 °C to half frozen, its heat flow in proportion to the air's
// distance, its heat 3.3 kJ/(kg K) and 320 kJ per kg of ice. ok is false where
// half of the water never freezes in that air.
func (l *Law) Cool(minutes, airC float64) (c Lumped, ok bool) {
	const steps = 400
	if !l.Freezes() {
		return c, false
	}
	c.HalfC = l.body.FrozenAtC(0.5)
	if !(c.HalfC > airC+0.5) {
		return c, false
	}
	waterShare := l.water / l.body.Mix.TotalG()
	heat := func(t float64) float64 { return 3.3*(t-l.top) - 320*waterShare*l.IceFraction(t) }
	before := 3.3 * math.Log((lumpedFrom-airC)/(l.top-airC)) // to the freezing point, for a flow of 1 kW/(kg K)
	c.Path = make([]Moment, steps+1)
	c.Path[0] = Moment{0, l.top}
	for i := 1; i <= steps; i++ {
		was := c.Path[i-1]
		t := l.top + float64(i)/steps*(c.HalfC-l.top)
		c.Path[i] = Moment{was.AtMinutes + (heat(was.C)-heat(t))/((was.C+t)/2-airC), t}
	}
	scale := minutes / (before + c.Path[steps].AtMinutes)
	for i := range c.Path {
		c.Path[i].AtMinutes *= scale
	}
	c.MushMinutes = c.Path[steps].AtMinutes
	return c, true
}
