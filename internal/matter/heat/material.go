package heat

import (
	"fmt"
	"math"
	"sort"
)

// MaterialError says which row of a material's tables cannot be used.
type MaterialError struct {
	Row    int     // counted from 0
	AtC    float64 // °C
	Reason string
}

func (e *MaterialError) Error() string {
	return fmt.Sprintf("material table, row %d (%g °C): %s", e.Row, e.AtC, e.Reason)
}

// RangeError says that a temperature was asked for that the material's tables
// do not cover. Nothing is extrapolated.
type RangeError struct {
	Of              string  // what the temperature belongs to
	AtC             float64 // °C
	LowestC, UpperC float64 // what the tables cover, °C
}

func (e *RangeError) Error() string {
	return fmt.Sprintf("%s: %.4g °C is outside the material's %.4g to %.4g °C", e.Of, e.AtC, e.LowestC, e.UpperC)
}

// Material is a homogeneous substance known by two curves over temperature T:
// volumetric enthalpy u(T) and conductivity k(T), both linear between the
// points given. It also holds their integral, the Kirchhoff potential
//
//	φ(T) = ∫ k dT, in W/m,
//
// whose differences are heat fluxes whatever k does in between. A Material is
// never changed after it is made, so any number of runs may share it.
type Material struct {
	t, u, k, phi []float64 // the given points; φ is 0 at the first

	low, perNode float64 // u of the first node of the grid; nodes per J/m³
	grid         []node  // uniform in u, one node per interval and one more
}

// node starts one interval of the uniform grid in u.
type node struct {
	phi, rise float64 // φ at the node, and its increase over the interval
}

// nodes is the number of intervals in a Material's uniform grid. Over 100 K of
// a frozen mix it puts the interpolation error of T below 0.005 K at the kink
// of the initial freezing point, and 64 KiB hold it.
const nodes = 4096

// NewMaterial builds a material from points in order of rising temperature:
// temperature in °C, volumetric enthalpy in J/m³ from any zero, conductivity in
// W/(m K). Two points or more are needed, all finite, temperature and enthalpy
// strictly rising and conductivity positive; otherwise the error is a
// *MaterialError. A substance that freezes at one temperature is given a narrow
// range instead (0.05 K does).
func NewMaterial(temperatureC, jPerM3, wPerMK []float64) (*Material, error) {
	n := len(temperatureC)
	if n < 2 || len(jPerM3) != n || len(wPerMK) != n {
		return nil, fmt.Errorf("material table of %d temperatures, %d enthalpies and %d conductivities: want as many of each and at least 2", n, len(jPerM3), len(wPerMK))
	}
	m := &Material{
		t:   append([]float64(nil), temperatureC...),
		u:   append([]float64(nil), jPerM3...),
		k:   append([]float64(nil), wPerMK...),
		phi: make([]float64, n),
	}
	for i := range m.t {
		switch {
		case !finite(m.t[i]) || !finite(m.u[i]) || !finite(m.k[i]):
			return nil, &MaterialError{i, m.t[i], "not a finite number"}
		case m.k[i] <= 0:
			return nil, &MaterialError{i, m.t[i], "conductivity is not positive"}
		case i == 0:
			continue
		case m.t[i] <= m.t[i-1]:
			return nil, &MaterialError{i, m.t[i], "temperature does not rise"}
		case m.u[i] <= m.u[i-1]:
			return nil, &MaterialError{i, m.t[i], "enthalpy does not rise"}
		}
		m.phi[i] = m.phi[i-1] + (m.k[i]+m.k[i-1])/2*(m.t[i]-m.t[i-1])
	}
	m.sample()
	return m, nil
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

// sample fills the uniform grid.
func (m *Material) sample() {
	m.low = m.u[0]
	width := (m.u[len(m.u)-1] - m.low) / nodes
	m.perNode = 1 / width
	m.grid = make([]node, nodes+1)
	i := 0
	for n := range m.grid {
		u := m.low + float64(n)*width
		for i < len(m.u)-2 && u > m.u[i+1] {
			i++
		}
		t := m.t[i] + (u-m.u[i])/(m.u[i+1]-m.u[i])*(m.t[i+1]-m.t[i])
		m.grid[n].phi = m.potentialIn(i, t)
		if n > 0 {
			m.grid[n-1].rise = m.grid[n].phi - m.grid[n-1].phi
		}
	}
	m.grid[nodes].rise = m.grid[nodes-1].rise
}

// potentialIn is φ(t) in the interval that begins at point i.
func (m *Material) potentialIn(i int, t float64) float64 {
	s := t - m.t[i]
	return m.phi[i] + s*(m.k[i]+s/2*(m.k[i+1]-m.k[i])/(m.t[i+1]-m.t[i]))
}

// RangeC returns the temperatures that the material's tables cover, °C.
func (m *Material) RangeC() (lowest, highest float64) { return m.t[0], m.t[len(m.t)-1] }

// covers returns a *RangeError unless the tables cover t.
func (m *Material) covers(of string, t float64) error {
	if lowest, highest := m.RangeC(); !(t >= lowest && t <= highest) {
		return &RangeError{of, t, lowest, highest}
	}
	return nil
}

// JPerM3 returns the volumetric enthalpy at t °C, in J/m³, or NaN outside
// Range.
func (m *Material) JPerM3(t float64) float64 {
	i, ok := interval(m.t, t)
	if !ok {
		return math.NaN()
	}
	return m.u[i] + (t-m.t[i])/(m.t[i+1]-m.t[i])*(m.u[i+1]-m.u[i])
}

// TemperatureC returns the temperature in °C at which the volumetric enthalpy is
// u J/m³, or NaN outside the tables. It undoes Enthalpy.
func (m *Material) TemperatureC(jPerM3 float64) float64 {
	i, ok := interval(m.u, jPerM3)
	if !ok {
		return math.NaN()
	}
	return m.t[i] + (jPerM3-m.u[i])/(m.u[i+1]-m.u[i])*(m.t[i+1]-m.t[i])
}

// PotentialWPerM returns the Kirchhoff potential at t °C, in W/m, which is 0 at the
// lowest temperature of the tables, or NaN outside Range.
func (m *Material) PotentialWPerM(t float64) float64 {
	i, ok := interval(m.t, t)
	if !ok {
		return math.NaN()
	}
	return m.potentialIn(i, t)
}

// interval finds the i with x[i] <= v <= x[i+1].
func interval(x []float64, v float64) (int, bool) {
	n := len(x)
	if !(v >= x[0] && v <= x[n-1]) {
		return 0, false
	}
	return min(max(sort.SearchFloat64s(x, v)-1, 0), n-2), true
}

// potentials sets phi[i] to φ at u[i] by the uniform grid.
func (m *Material) potentials(phi, u []float64) {
	grid := (*[nodes + 1]node)(m.grid)
	phi = phi[:len(u)]
	for i, v := range u {
		x := (v - m.low) * m.perNode
		n := clampNode(x)
		g := &grid[n]
		phi[i] = g.phi + (x-float64(n))*g.rise
	}
}

// potentialsAndSlopes sets phi[i] to φ at u[i], and slope[i] to dφ/du there.
func (m *Material) potentialsAndSlopes(phi, slope, u []float64) {
	grid := (*[nodes + 1]node)(m.grid)
	phi, slope = phi[:len(u)], slope[:len(u)]
	for i, v := range u {
		x := (v - m.low) * m.perNode
		n := clampNode(x)
		g := &grid[n]
		phi[i] = g.phi + (x-float64(n))*g.rise
		slope[i] = g.rise * m.perNode
	}
}

// clampNode returns the grid interval that holds x. Runs never start outside
// the tables and conduction creates no new extremes, so clamping only catches
// the small overshoot of an intermediate stage.
func clampNode(x float64) int {
	n := int(x)
	if uint(n) > nodes {
		if x < 0 {
			return 0
		}
		return nodes
	}
	return n
}
