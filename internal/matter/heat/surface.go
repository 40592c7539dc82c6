package heat

import (
	"fmt"
	"math"
)

// Coefficient is what carries heat between air and a surface, each part in
// W/(m² K) of the difference between the two.
type Coefficient struct {
	ConvectionWPerM2K float64 // natural, on an upright wall
	RadiationWPerM2K  float64 // grey, to walls at air temperature
	LatentWPerM2K     float64 // of the frost or dew that settles
}

// TotalWPerM2K returns the sum, for Face.H.
func (c Coefficient) TotalWPerM2K() float64 {
	return c.ConvectionWPerM2K + c.RadiationWPerM2K + c.LatentWPerM2K
}

// UprightWall describes the wall of a tub in still air.
type UprightWall struct {
	HeightM          float64 // m
	Emissivity       float64 // 0 to 1; paper, plastic, frost about 0.9
	HumidityFraction float64 // relative, of the air, 0 to 1; 0 leaves frost and dew out
}

// surface holds the constants of StillAir.
var surface = struct {
	lowest, highest    float64 // valid, °C
	rayleigh           float64 // laminar up to here
	zero, gravity      float64 // K; m/s²
	stefanBoltzmann    float64 // W/(m² K⁴), CODATA 2018
	viscosity, nuPower float64 // kinematic, m²/s at 0 °C
	k, kPower          float64 // W/(m K) at 0 °C
	prandtl, lewis     float64
	density, heat      float64 // kg/m³ at 0 °C and 101.325 kPa; J/(kg K)
	vapourGas          float64 // J/(kg K)
	sublime, evaporate float64 // J/kg at 0 °C
}{
	-45, 60, 1e9,
	273.15, 9.80665, 5.670374419e-8,
	1.32e-5, 1.75, 0.0243, 0.85, 0.715, 0.85, // air: power laws, from memory
	1.2929, 1006, // dry air: from memory
	461.5, 2.834e6, 2.501e6, // water vapour: from memory
}

// StillAir returns the coefficient of an upright wall at surface °C in still
// air at air °C. It holds from −45 to 60 °C and in the laminar range (Ra up to
// 1e9, a wall of some 0.5 m); outside it returns a NaN Coefficient and an error.
// Where the surface is drier than the air's dew point, Latent is 0: the cooling
// of a drying surface is left out. Measured coefficients of food scatter by
// about 30 % around such formulas, so treat the result as the middle of a band.
//
//	Nu = 0.68 + 0.670 Ra^(1/4) / (1 + (0.492/Pr)^(9/16))^(4/9)
//
// Source: Churchill S.W., Chu H.H.S. 1975, "Correlating equations for laminar
// and turbulent free convection from a vertical plate", Int. J. Heat Mass
// Transfer 18:1323, laminar form, air at the film temperature; mass transfer
// by the Chilton–Colburn analogy [formulas from memory].
func StillAir(w UprightWall, surfaceC, airC float64) (Coefficient, error) {
	s := &surface
	nan := Coefficient{math.NaN(), math.NaN(), math.NaN()}
	for _, t := range [...]float64{surfaceC, airC} {
		if !(t >= s.lowest && t <= s.highest) {
			return nan, &RangeError{"still air", t, s.lowest, s.highest}
		}
	}
	if !(w.HeightM > 0) || !(w.Emissivity >= 0 && w.Emissivity <= 1) || !(w.HumidityFraction >= 0 && w.HumidityFraction <= 1) {
		return nan, fmt.Errorf("still air: not a wall: %+v", w)
	}
	ts, ta := surfaceC+s.zero, airC+s.zero
	film := (ts + ta) / 2
	nu := s.viscosity * math.Pow(film/s.zero, s.nuPower)
	k := s.k * math.Pow(film/s.zero, s.kPower)
	ra := s.gravity * math.Abs(ta-ts) / film * math.Pow(w.HeightM, 3) / (nu * nu) * s.prandtl
	if ra > s.rayleigh {
		return nan, fmt.Errorf("still air: Rayleigh number %.2g of a wall of %g m is beyond laminar flow", ra, w.HeightM)
	}
	nusselt := 0.68 + 0.670*math.Pow(ra, 0.25)/math.Pow(1+math.Pow(0.492/s.prandtl, 9./16), 4./9)
	c := Coefficient{
		ConvectionWPerM2K: nusselt * k / w.HeightM,
		RadiationWPerM2K:  w.Emissivity * s.stefanBoltzmann * (ts*ts + ta*ta) * (ts + ta),
	}
	latent := s.evaporate
	if surfaceC < 0 {
		latent = s.sublime
	}
	settles := w.HumidityFraction*vapourPressure(airC, false)/(s.vapourGas*ta) - vapourPressure(surfaceC, surfaceC < 0)/(s.vapourGas*ts)
	if settles > 0 && airC > surfaceC {
		transfer := c.ConvectionWPerM2K / (s.density * s.zero / film * s.heat * math.Pow(s.lewis, 2./3))
		c.LatentWPerM2K = transfer * latent * settles / (airC - surfaceC)
	}
	return c, nil
}

// vapourPressure is the saturation pressure over water or ice at t °C, in Pa,
// by the Magnus formulas of WMO-No. 8 (2008), annex 4.B [from memory]; within
// 0.5 % of IAPWS from −45 to 60 °C.
func vapourPressure(t float64, ice bool) float64 {
	if ice {
		return 611.2 * math.Exp(22.46*t/(272.62+t))
	}
	return 611.2 * math.Exp(17.62*t/(243.12+t))
}
