// Package ice answers how big the ice crystals of a phase grow along a history
// of temperatures.
//
// Sizes are mean diameters d, µm; histories are kept as y = d³, µm³, which
// ripening raises by a rate that only temperature and mix decide. Temperatures
// are °C, times minutes, rates µm³ a day; ice shares are of all the water.
//
// # What is computed
//
// Large crystals grow at the cost of small ones as fast as water gets through
// the syrup between them (Lifshitz, Slyozov and Wagner). The syrup is that of
// the freezing curve; no constant was fitted to a crystal's size. That the
// mobility of the water decides, and not that of the sugar alone, is the
// finding of van Westen & Groot 2018, Cryst. Growth Des. (doi
// 10.1021/acs.cgd.8b00038).
//
// # What is not
//
// Breakage by a beater, crystals that grow together, and what yolk or starch do
// to the ice: no figure was found. Gums count by one published factor. The rate
// is known to a factor of Uncertain, a size in storage to about 1.3 where it is
// known at the start, and laboratories differ by 2 to 3 on like products: sizes
// compare two ways with one recipe, and are no measurement.
package ice

import (
	"math"

	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/matter/solution"
	"ripplewright/internal/matter/water"
)

// Uncertain is the factor by which a rate may be larger or smaller: interfacial
// tension 1.15, the shell around a crystal 1.5, water in syrups other than
// sucrose's 1.6, the spread of sizes 2.5 upward. Two products of one laboratory
// differ by 2 to 15 at one temperature (Sinclair et al. 2025,
// testdata/tables/ice_crystal_published.csv).
const Uncertain = 3

// GumSlows is by how much a stabiliser slows the rate: Mo et al. 2019, Crystals
// 9:321 (abstract: diffusion between the crystals 1.2 times as slow).
const GumSlows = 1.2

// UntriedC is the temperature, °C, above which the law was not looked at: the shell
// of crystals in so much water is a guess.
const UntriedC = -2.5

// The floor. Measured growth goes on in the deep cold where the law's dies out:
// at −28.9 °C six growths are −1264 to 3035 µm³ a day, median 615 (Sinclair et
// al. 2025); from −23.3 °C down no effect of temperature within 39 weeks (Buyck,
// Baer & Choi 2011, J. Dairy Sci. 94:2213, abstract). 100 is a compromise of
// ours. The custard has it; of a foam nothing was measured.
const (
	FloorFromC = -23
	floorRate  = 100 // µm³ a day
)

// The constants of ripening. Tension: 0.033 N/m, from memory, 0.029 is in use
// as well. A sucrose molecule's radius is set so that Stokes and Einstein give
// 5.2e-10 m²/s in water at 25 °C (from memory).
const (
	tension      = 0.033   // N/m between ice and syrup
	latent       = 333.5e3 // J/kg
	iceKgM3      = 917.0   // kg/m³
	boltzmann    = 1.380649e-23
	sugarRadius  = 0.47e-9  // m
	sugarDensity = 1.6      // g/mL, dissolved
	saltMass     = 30.0     // g per mol of the minerals' particles
	mostIce      = 0.75     // of the volume, where the shell's formula is held
	perDay       = 86400e18 // µm³ a day in a m³/s
)

// curvature is 2γT₀/(ρL), K m: by how much a crystal of 1 m radius melts lower.
const curvature = 2 * tension * water.ZeroC / (iceKgM3 * latent)

// Law is the growth of crystals in one phase. Build it with Of; it is never
// changed afterwards and any number of histories may share it.
type Law struct {
	body        *phase.Body
	slow        float64
	water       float64 // g
	bound       float64 // g of it
	solutes     float64 // g of all that is dissolved
	mol         float64 // of particles in it
	saccharides float64 // g
	asThick     float64 // g of sucrose that thicken as much
	floor       float64 // µm³ a day below FloorFromC

	top   float64 // °C of the table's first point, the freezing point
	table []point
}

// point is one of the law's table: rate, µm³ a day, and ice share.
type point struct{ rate, ice float64 }

// tableStep is the table's step, K. With it histories are within 0.1 % of the
// law's own.
const tableStep = 0.1

// coldest is where the table ends, °C; colder is taken as cold.
const coldest = -45

// Of returns the law of b, its rate divided by slow: 1, or GumSlows.
func Of(b *phase.Body, slowFactor float64) *Law {
	m := b.Mix
	none := solution.NewSorption(m, solution.Bound{})
	l := &Law{body: b, slow: slowFactor, water: m.Grams[mix.Water], bound: b.BoundWaterG(), mol: none.IdealG / water.MolarMass, saccharides: m.SaccharidesG()}
	l.solutes = saltMass*m.IonMol + l.saccharides + m.FruitAcidG()
	for _, s := range [...]mix.Species{mix.Ethanol, mix.SodiumChloride, mix.PotassiumChloride} {
		l.solutes += m.Grams[s]
	}
	l.asThick = solution.SucroseAsThickPercent(m.WithWater(0)) / 100 * l.saccharides
	l.top = b.FreezingPointC
	if !l.Freezes() {
		return l
	}
	if b.Role == phase.Dense {
		l.floor = math.Min(floorRate, l.State(math.Min(FloorFromC, l.top)).UM3PerDay)
	}
	n := int(math.Max(0, math.Ceil((l.top-coldest)/tableStep))) + 2
	l.table = make([]point, n)
	for i := range l.table {
		// Just below the freezing point, where there is ice to speak of.
		s := l.State(l.top - math.Max(float64(i), 1e-6)*tableStep)
		l.table[i] = point{l.atLeast(s.AtC, s.UM3PerDay), s.IceFraction}
	}
	return l
}

// Freezes reports whether the phase can hold ice beside a syrup at all.
func (l *Law) Freezes() bool { return l.mol > 0 && !math.IsNaN(l.top) && l.top > coldest }

// FreezingPointC returns the phase's, °C; NaN where it never freezes.
func (l *Law) FreezingPointC() float64 { return l.top }

// State is what the rate rests on at one temperature.
type State struct {
	AtC               float64 // °C
	IceFraction       float64 // of all the water
	IceVolumeFraction float64 // φ, of ice and syrup
	ShellFactor       float64 // f, how much nearer a crystal's neighbours bring its supply
	SolutesFraction   float64 // w, mass share in the free syrup
	PerSolute         float64 // mol of free water per mol of solute
	WaterM2PerS       float64 // D of water in the syrup, m²/s
	SugarM2PerS       float64 // D of sucrose in it, m²/s
	MobilityM2PerSK   float64 // A, m²/(s K)
	UM3PerDay         float64 // µm³ a day, without the floor; 0 without ice
}

// State returns the law's state at t, −45 to 0 °C.
//
//	rate = 8·(4/9) f (2γT₀/ρL) A
//	A = (d ln a_ice/dT)(1 − w)(D_w + (n_w/n_s) D_s)
//	f = 1/(1 − φ^⅓)
//
// The thermodynamic factor of the syrup's mutual diffusion cancels against that
// of the ice curve's slope. f is the shell of a sphere in its own cell, an
// assumption: a constant 2.5 gives the 18 stored sizes 0.80 times as large.
func (l *Law) State(t float64) State {
	s := State{AtC: t, ShellFactor: 1}
	ice := l.body.IceG(t)
	if !(ice > 0) || l.mol <= 0 {
		return s
	}
	s.IceFraction = ice / l.water
	liquid := l.water - ice
	free := math.Max(liquid-l.bound, 1e-9)
	volume := ice / (iceKgM3 / 1000)
	s.IceVolumeFraction = volume / (volume + liquid + l.saccharides/sugarDensity)
	s.ShellFactor = 1 / (1 - math.Cbrt(math.Min(s.IceVolumeFraction, mostIce)))
	s.SolutesFraction = l.solutes / (l.solutes + free)
	s.PerSolute = free / water.MolarMass / l.mol
	s.WaterM2PerS = waterDiffusion(-math.Expm1(water.LnIceActivity(t)), t)
	percent := 0.0
	if l.saccharides > 0 {
		percent = 100 * l.asThick / (l.saccharides + free)
	}
	s.SugarM2PerS = boltzmann * (t + water.ZeroC) / (6 * math.Pi * solution.ViscosityPaS(percent, t) * sugarRadius)
	s.MobilityM2PerSK = water.LnIceActivityPerK(t) * (1 - s.SolutesFraction) * (s.WaterM2PerS + s.PerSolute*s.SugarM2PerS)
	s.UM3PerDay = 8 * 4. / 9 * s.ShellFactor * curvature * s.MobilityM2PerSK * perDay / l.slow
	return s
}

// UM3PerDay returns by how much the mean diameter's cube grows at t with the ice
// staying, µm³ a day; 0 where there is no ice. Below FloorFromC the custard's
// does not fall under the floor.
func (l *Law) UM3PerDay(t float64) float64 { return l.atLeast(t, l.State(t).UM3PerDay) }

func (l *Law) atLeast(t, rate float64) float64 {
	if t < FloorFromC && rate > 0 {
		return math.Max(rate, l.floor)
	}
	return rate
}

// IndexRatio returns the rate at t over that at −18 °C; NaN without ice there.
func (l *Law) IndexRatio(t float64) float64 { return l.UM3PerDay(t) / l.UM3PerDay(-18) }

// at reads rate and ice share from the table; without ice both are 0.
func (l *Law) at(t float64) point {
	if !(t < l.top) || l.table == nil {
		return point{}
	}
	u := math.Min((l.top-t)/tableStep, float64(len(l.table)-1)-1e-9)
	i := int(u)
	a, b := l.table[i], l.table[i+1]
	f := u - float64(i)
	return point{a.rate + f*(b.rate-a.rate), a.ice + f*(b.ice-a.ice)}
}

// IceFraction returns the share of the water that is ice at t, 0 to 1.
func (l *Law) IceFraction(t float64) float64 { return l.at(t).ice }

// waterDiffusion returns the diffusion coefficient of water in a sucrose syrup
// whose water activity is 1 − b, at t °C, m²/s. 160 to 313 K.
//
// Source: Zobrist et al. 2011, Phys. Chem. Chem. Phys. 13:3514 (coefficients
// read in two public encodings, the paper itself not). Check: 1.96594e-12 m²/s
// beside ice at −18 °C.
func waterDiffusion(b, t float64) float64 {
	t0 := 127.9 * (1 + 0.4514*b - 0.51*math.Pow(b, 1.7))
	return math.Exp(-math.Ln10 * (7 + 0.175*(1-46.46*b) + 262.867*(1+10.53*b-0.3*b*b)/(t+water.ZeroC-t0)))
}
