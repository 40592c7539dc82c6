package heat

import (
	"fmt"
	"math"
)

// Face is what one face of the body meets. Its zero value insulates.
type Face struct {
	AmbientC float64 // temperature of the air or the shelf, °C
	WPerM2K  float64 // surface coefficient, W/(m² K); 0 insulates, +Inf holds the surface at Ambient
	// Resistance lies between the body and the surface: package wall, lid,
	// head space, frost; thickness/conductivity of each, summed, in m² K/W.
	M2KPerW float64
}

// OverallWPerM2K returns the overall coefficient 1/(1/H + Resistance), W/(m² K).
func (f Face) OverallWPerM2K() float64 { return 1 / (1/f.WPerM2K + f.M2KPerW) }

func (f Face) check(name string, m *Material) error {
	switch {
	case !(f.WPerM2K >= 0):
		return fmt.Errorf("%s: a surface coefficient of %g W/(m² K)", name, f.WPerM2K)
	case !(f.M2KPerW >= 0):
		return fmt.Errorf("%s: a resistance of %g m² K/W", name, f.M2KPerW)
	case f.WPerM2K == 0:
		return nil
	}
	return m.covers(name, f.AmbientC)
}

// Surroundings are the faces of a body. A slab has no side, a sphere nothing
// else.
type Surroundings struct{ Side, Top, Bottom Face }

// film tabulates the flux into the body through one face against the potential
// φ of the cell behind it. The surface temperature Ts is the exact root of
//
//	U (Ta − Ts) = (φ(Ts) − φ) / (d/2),
//
// d being the cell's thickness, so neither a conductivity that changes across
// the half cell nor a large U needs an iteration at run time.
type film struct {
	ambient, u   float64 // °C; overall coefficient, W/(m² K)
	low, perNode float64
	grid         [filmNodes + 1]struct{ flux, rise float64 }
}

// filmNodes intervals leave an error of the order of 1e-5 of the flux: the
// curve bends only as k does.
const filmNodes = 512

// build fills the table for cells between the temperatures lowest and highest,
// which must lie in the material's range, as must f.Ambient.
func (f *film) build(m *Material, face Face, halfCell, lowest, highest float64) {
	from, to := m.PotentialWPerM(lowest), m.PotentialWPerM(highest)
	width := (to - from) / filmNodes
	f.low, f.perNode = from, 1/width
	u := face.OverallWPerM2K()
	f.ambient, f.u = face.AmbientC, u
	i := 0
	var ambient float64
	if u > 0 {
		ambient = m.PotentialWPerM(face.AmbientC)
	}
	for n := range f.grid {
		phi := from + float64(n)*width
		var flux float64
		switch {
		case math.IsInf(u, 1):
			flux = (ambient - phi) / halfCell
		case u > 0:
			c := u * halfCell
			w := phi + c*face.AmbientC // = φ(Ts) + c Ts, which rises with Ts
			for i < len(m.t)-2 && w > m.phi[i+1]+c*m.t[i+1] {
				i++
			}
			rest := w - m.phi[i] - c*m.t[i]
			b := m.k[i] + c
			a := (m.k[i+1] - m.k[i]) / (m.t[i+1] - m.t[i]) / 2
			s := 2 * rest / (b + math.Sqrt(b*b+4*a*rest))
			flux = u * (face.AmbientC - m.t[i] - s)
			if c > m.k[i] {
				// The surface is almost at Ambient: take the other, well
				// conditioned, form of the same flux.
				flux = (m.phi[i] + s*(m.k[i]+a*s) - phi) / halfCell
			}
		}
		f.grid[n].flux = flux
		if n > 0 {
			f.grid[n-1].rise = flux - f.grid[n-1].flux
		}
	}
	f.grid[filmNodes].rise = f.grid[filmNodes-1].rise
}

// surface returns the temperature in °C of the body's own surface, inside any
// package, where the cell behind it has the potential phi and the temperature
// inner, °C: U (Ta − Ts) is the flux that comes in.
func (f *film) surface(phi, inner float64) float64 {
	if f.u == 0 {
		return inner
	}
	flux, _ := f.at(phi)
	return f.ambient - flux/f.u
}

// at returns the flux into the body in W/m² and its derivative by φ, 1/m.
func (f *film) at(phi float64) (flux, slope float64) {
	x := (phi - f.low) * f.perNode
	n := int(x)
	if uint(n) > filmNodes {
		n = filmNodes
		if x < 0 {
			n = 0
		}
	}
	g := &f.grid[n]
	return g.flux + (x-float64(n))*g.rise, g.rise * f.perNode
}
