package process

import "math"

// Killing is how long a tenfold reduction of Salmonella takes, D in minutes, by
// temperature: log-linear between points, and on beyond them by the slope of
// the last two.
type Killing struct {
	Name string
	At   []DPoint
}

// DPoint is one point of a Killing.
type DPoint struct{ C, Minutes float64 }

// The published data. Sugar makes the organism far tougher: a foam of cooked
// sugar is judged by the sugared sets, never by egg white's.
var (
	// Sugared87 and Sugared82 are S. Typhimurium DT104 in sugar solutions of
	// water activity 0.87 and 0.82, times of a 3-log reduction: Mattick et al.
	// 2001, Appl. Environ. Microbiol. 67:4128–4136, table 7.
	Sugared87 = Killing{"sugar solution, water activity 0.87", []DPoint{{55, 143.0 / 3}, {65, 9.5 / 3}, {74, 1.1 / 3}}}
	Sugared82 = Killing{"sugar solution, water activity 0.82", []DPoint{{55, 114.0 / 3}, {65, 9.7 / 3}, {74, 1.4 / 3}}}
	// AlbumenPlain and AlbumenSugar10 are egg white of pH 9.2, plain and with
	// 10 % sucrose, z 4.6 K: Garibaldi, Straka & Ijichi 1969, Appl. Microbiol.
	// 17:491–496 (abstract). Kept to show how far off they are.
	AlbumenPlain   = withZ("egg white", 55, 0.55, 4.6)
	AlbumenSugar10 = withZ("egg white with 10 % sucrose", 55, 1.2, 4.6)
	// SugaredYolk is egg yolk with 10 % sucrose, of the same paper.
	SugaredYolk = withZ("egg yolk with 10 % sucrose", 60, 4.0, 4.6)
)

func withZ(name string, c, d, z float64) Killing {
	return Killing{name, []DPoint{{c, d}, {c + z, d / 10}}}
}

// DMinutes returns the minutes of a tenfold reduction at t °C.
//
//	ln D = ln D₁ + (t − t₁)/(t₂ − t₁) ln(D₂/D₁),  the straight line of a z value
func (k Killing) DMinutes(t float64) float64 {
	i := 1
	for i < len(k.At)-1 && t > k.At[i].C {
		i++
	}
	a, b := k.At[i-1], k.At[i]
	f := (t - a.C) / (b.C - a.C)
	return math.Exp(math.Log(a.Minutes) + f*math.Log(b.Minutes/a.Minutes))
}

// LogReduction returns how many tenfold reductions the course comes to,
// ∫dt/D(T) by trapezia.
//
// Check: testdata/tables/lethality.csv.
func (k Killing) LogReduction(c Course) float64 {
	sum := 0.0
	for i := 1; i < len(c.C); i++ {
		sum += (1/k.DMinutes(c.C[i-1]) + 1/k.DMinutes(c.C[i])) / 2
	}
	return sum * c.StepMinutes
}
