package say

import (
	"time"

	"ripplewright/internal/answer/balance"
)

// RoundTrips says in how many cases a design's own figures were found again.
func RoundTrips(s Style, t *balance.Trial) string {
	return T("Round trips: three to five figures of a good design, of eight kinds of recipe, are asked for from grams up to 25 %% off, in half of them with whole eggs; met within half a per cent or 0.1 K, without a caution, in %s of %s.", s.Number(float64(t.Met), 0), s.Number(float64(t.Cases), 0))
}

// Remedies says how many bad designs the first remedy mends.
func Remedies(s Style, t *balance.Trial) string {
	return T("Remedies: the first one makes %s of %s bad designs good in one step; of %s others it names what cannot be met.", s.Number(float64(t.Met), 0), s.Number(float64(t.Cases), 0), s.Number(float64(t.Named), 0))
}

// TrialTook says how long half of the cases took at most, 19 in 20, and all.
func TrialTook(s Style, half, most, all time.Duration) string {
	ms := func(d time.Duration) string { return s.Number(1e3*d.Seconds(), 1) }
	return T("Half took %s ms at most, 19 in 20 %s ms, all %s ms.", ms(half), ms(most), ms(all))
}
