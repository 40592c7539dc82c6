package process

import "math"

// Hot is what meets in the bowl.
type Hot struct {
	SyrupG, SyrupC, SolidsPercent float64
	WhitesG, WhitesC              float64
	WhitesJPerGK                  float64 // J/(g K)
	BowlJPerK                     float64 // of the part of the bowl that is in contact
	BowlC                         float64
	LossWPerK                     float64 // to the air while whisking
	AirC                          float64
}

// SyrupJPerGK returns the specific heat, J/(g K), of a sucrose syrup of so many
// mass % of solids at t °C:
//
//	c = 4.1868 − w(0.0297 − 4.6e-5·100) + 7.5e-5·w·t
//
// Source: Bubnik et al. 1995, Sugar Technologists Manual (formula from memory;
// it gives 1.87 for dissolved sucrose at 25 °C).
func SyrupJPerGK(solidsPercent, t float64) float64 {
	return 4.1868 - solidsPercent*(0.0297-4.6e-5*100) + 7.5e-5*solidsPercent*t
}

// syrupHeat returns the syrup's specific heat, J/(g K), at the mean of its own
// temperature and of that at which syrup and whites alone come to rest.
func (h Hot) syrupHeat() float64 {
	t := h.WhitesC
	for range 60 {
		heat := SyrupJPerGK(h.SolidsPercent, (h.SyrupC+t)/2)
		next := h.rest(heat, 0)
		if !(math.Abs(next-t) > 1e-12) {
			return heat
		}
		t = next
	}
	return SyrupJPerGK(h.SolidsPercent, (h.SyrupC+t)/2)
}

// rest returns where syrup of the given specific heat, whites and so much bowl
// come to rest.
//
//	T = Σ m c T / Σ m c
func (h Hot) rest(heat, bowl float64) float64 {
	syrup, whites := h.SyrupG*heat, h.WhitesG*h.WhitesJPerGK
	return (syrup*h.SyrupC + whites*h.WhitesC + bowl*h.BowlC) / (syrup + whites + bowl)
}

// MixedC returns the temperature at which syrup, whites and bowl come to rest
// without any loss; NaN of nothing. Heat of dilution is left out.
//
// Check: testdata/tables/meringue_mixing.csv, both columns.
func (h Hot) MixedC() float64 { return h.rest(h.syrupHeat(), h.BowlJPerK) }

// Course is a temperature over time: one value a step.
type Course struct {
	StepMinutes float64
	C           []float64
}

// Poured follows the bowl: the syrup runs in for pourMin at an even rate, the
// mass loses heat to the air all along, until at minutes. Lost is the heat given
// off, J; with the heat in the bowl it makes up what came in (see the test).
//
//	C dT/dt = ṁ c_syrup (T_syrup − T) − UA (T − T_air),  C = Σ m c of what is in
func (h Hot) Poured(pourMinutes, minutes float64) (c Course, lostJ float64) {
	const steps = 50 // a minute
	c.StepMinutes = 1.0 / steps
	// The enthalpy of bowl, whites and the syrup that is in, above 0 °C, with
	// the syrup's heat taken as in Mixed.
	heatSyrup := h.syrupHeat()
	base := h.WhitesG*h.WhitesJPerGK + h.BowlJPerK
	t := (h.WhitesG*h.WhitesJPerGK*h.WhitesC + h.BowlJPerK*h.BowlC) / base
	in := 0.0
	n := int(math.Round(minutes * steps))
	c.C = append(make([]float64, 0, n+1), t)
	for i := range n {
		from, to := float64(i)/steps, float64(i+1)/steps
		add := h.SyrupG * (math.Min(to, pourMinutes) - math.Min(from, pourMinutes)) / pourMinutes
		capacity := base + in*heatSyrup
		t = (capacity*t + add*heatSyrup*h.SyrupC) / (capacity + add*heatSyrup)
		in += add
		capacity = base + in*heatSyrup
		// Exact for a constant capacity over the step.
		next := h.AirC + (t-h.AirC)*math.Exp(-h.LossWPerK*c.StepMinutes*60/capacity)
		lostJ += capacity * (t - next)
		t = next
		c.C = append(c.C, t)
	}
	return c, lostJ
}

// From follows the bowl from c °C on with all the syrup in, until at minutes.
func (h Hot) From(c float64, minutes float64) Course {
	const steps = 50 // a minute
	capacity := h.WhitesG*h.WhitesJPerGK + h.BowlJPerK + h.SyrupG*h.syrupHeat()
	out := Course{StepMinutes: 1.0 / steps}
	for i := range int(math.Round(minutes*steps)) + 1 {
		out.C = append(out.C, h.AirC+(c-h.AirC)*math.Exp(-h.LossWPerK*float64(i)*out.StepMinutes*60/capacity))
	}
	return out
}

// AtC returns the temperature at a minute, the last beyond the end.
func (c Course) AtC(minutes float64) float64 {
	return c.C[min(len(c.C)-1, int(math.Round(minutes/c.StepMinutes)))]
}

// PeakC returns the greatest temperature of the course.
func (c Course) PeakC() float64 {
	peak := math.Inf(-1)
	for _, t := range c.C {
		peak = math.Max(peak, t)
	}
	return peak
}

// AboveMinutes returns how long the course is above t, by lines between its
// steps.
func (c Course) AboveMinutes(t float64) float64 {
	n := 0.0
	for i := 1; i < len(c.C); i++ {
		a, b := c.C[i-1]-t, c.C[i]-t
		switch {
		case a >= 0 && b >= 0:
			n++
		case a < 0 && b < 0:
		default:
			n += math.Max(a, b) / math.Abs(a-b)
		}
	}
	return n * c.StepMinutes
}

// BelowMinutes returns when the course has come down through t after its peak;
// NaN where it has not.
func (c Course) BelowMinutes(t float64) float64 {
	top := 0
	for i := range c.C {
		if c.C[i] > c.C[top] {
			top = i
		}
	}
	if c.C[top] <= t {
		return 0
	}
	for i := top + 1; i < len(c.C); i++ {
		if c.C[i] <= t {
			return c.StepMinutes * (float64(i) - (t-c.C[i])/(c.C[i-1]-c.C[i]))
		}
	}
	return math.NaN()
}
