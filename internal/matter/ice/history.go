package ice

import "math"

// Moment is one point of a temperature history, which runs by line from point to
// point.
type Moment struct{ AtMinutes, C float64 }

// nucleates is the ice share up to which new crystals still form without a beat,
// and below which a beat counts for nothing: too few crystals to part. Our own.
const nucleates = 0.1

// finest is the longest stretch of a history taken in one piece, K.
const finest = 0.25

const perMinute = 1 / 1440. // days

// BeatenUM3 returns y after a history in which a beater keeps the crystals apart
// and new ones forming, so that the mean only ripens: y + share·∫ rate dt, share
// of the clock. A scraped wall sheds fresh seeds all the time, and the mean age
// is half: share ½ (an assumption).
func (l *Law) BeatenUM3(y, fraction float64, path []Moment) float64 {
	for i := 1; i < len(path); i++ {
		l.pieces(path[i-1], path[i], func(a, b point, days float64) {
			y += fraction * (a.rate + b.rate) / 2 * days
		})
	}
	return y
}

// StillUM3 returns y after a history at rest. Colder, ice grows on the crystals
// that there are,
//
//	dy/dt = (y/x) dx/dt + rate,
//
// x being the ice share; up to a tenth of the water new ones still form. Warmer,
// the smallest go, which ripening already counts, so y never falls.
func (l *Law) StillUM3(y float64, path []Moment) float64 {
	for i := 1; i < len(path); i++ {
		l.pieces(path[i-1], path[i], func(a, b point, days float64) {
			// y/x, one over the number of crystals, rises by rate/x alone.
			if b.ice > a.ice && a.ice >= nucleates {
				y = b.ice * (y/a.ice + (a.rate/a.ice+b.rate/b.ice)/2*days)
				return
			}
			grown := 1.0
			if b.ice > nucleates && b.ice > a.ice {
				grown = b.ice / nucleates
			}
			y = y*grown + (a.rate+b.rate)/2*days
		})
	}
	return y
}

// pieces walks from one moment to the next in steps of at most finest.
func (l *Law) pieces(from, to Moment, piece func(a, b point, days float64)) {
	n := math.Max(1, math.Ceil(math.Abs(to.C-from.C)/finest))
	days := (to.AtMinutes - from.AtMinutes) * perMinute / n
	a := l.at(from.C)
	for i := 1.0; i <= n; i++ {
		b := l.at(from.C + i/n*(to.C-from.C))
		piece(a, b, days)
		a = b
	}
}

// swingPoints are the points of a sine at which a swing's mean is taken: as good
// as exact for the law's curve.
const swingPoints = 24

// StoredUM3PerDay returns the mean rate at t with the product itself swinging ±a K
// about it, µm³ a day. A swing works through the mean of a steep curve; what the
// melting of small crystals adds is small (van Westen & Groot 2018, Cryst.
// Growth Des. 18:4952, abstract; 1 + 0.012 a², at most 1.3, from a simulation of
// 20 000 spheres of our own). Where a swing reaches the freezing point the rate
// is held at the one just below.
func (l *Law) StoredUM3PerDay(t, swingK float64) float64 {
	if swingK <= 0 {
		return l.held(t)
	}
	sum := 0.0
	for i := range swingPoints {
		sum += l.held(t + swingK*math.Cos(math.Pi*(float64(i)+0.5)/swingPoints))
	}
	return sum / swingPoints * math.Min(1.3, 1+0.012*swingK*swingK)
}

// held is the rate at t, or just below the freezing point if t is above.
func (l *Law) held(t float64) float64 { return l.at(math.Min(t, l.top-1e-6)).rate }

// ExtraUM3 returns what a spell away from t °C adds to y beyond staying there, µm³.
func (l *Law) ExtraUM3(t float64, path []Moment) float64 {
	sum, rest := 0.0, l.held(t)
	for i := 1; i < len(path); i++ {
		a, b := path[i-1], path[i]
		sum += ((l.held(a.C)+l.held(b.C))/2 - rest) * (b.AtMinutes - a.AtMinutes) * perMinute
	}
	return sum
}

// ThawedFactor returns by what factor d grows when a place stored at one temperature
// warms to another once and freezes again, with the narrowest and the broadest
// population: exp(c·max(0, ε − 0.1)/3), ε the share of its ice that melts. c, 2.6
// (1.1 to 4), is from a simulation of ours of about 25 minutes in the warm and
// six hours of freezing, whose ripening it contains. ok is false where all of the
// ice goes: what freezes back is a new, unbeaten freezing.
func (l *Law) ThawedFactor(storedC, warmestC float64) (factor, least, most float64, ok bool) {
	before := l.IceFraction(storedC)
	if before <= 0 {
		return 1, 1, 1, true
	}
	lost := math.Max(0, 1-l.IceFraction(warmestC)/before-0.1) / 3
	return math.Exp(2.6 * lost), math.Exp(1.1 * lost), math.Exp(4 * lost), l.IceFraction(warmestC) > 0
}
