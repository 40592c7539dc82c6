package say

import (
	"math"
	"testing"
	"testing/quick"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/work/design"
)

// NIST SP 811 (2008), Appendix B.8: 1 in = 25.4 mm, 1 ft = 0.3048 m, 1 US fl oz =
// 29.573 53 mL, 1 ft³ = 28.316 85 L, 1 lb = 0.453 592 4 kg, 1 Btu/(h·ft²·°F) =
// 5.678 263 W/(m²·K), 1 lb/gal (US) = 119.8264 kg/m³.
func TestGaugesAreThoseOfTheTables(t *testing.T) {
	for _, c := range []struct {
		unit        string
		file, shown float64
		sign        string
	}{
		{"mm", 25.4, 1, "in"}, {"m", 0.3048, 1, "ft"}, {"mL", 29.57353, 1, "fl oz"}, {"L", 28.31685, 1, "cu ft"}, {"kg", 0.4535924, 1, "lb"},
		{"W/(m² K)", 5.678263, 1, "Btu/(h ft² °F)"}, {"m² K/W", 1, 5.678263, "h ft² °F/Btu"}, {"g/mL", 0.1198264, 1, "lb/gal"}, {"cm²", 6.4516, 1, "in²"},
		{"°C", -40, -40, "°F"}, {"°C", 100, 212, "°F"}, {"K", 5, 9, "°F"}, {"g", 7, 7, "g"}, {"%", 7, 7, "%"}, {"min", 7, 7, "min"},
	} {
		g := us.Gauge(c.unit)
		assert.Equal(t, c.sign, g.Unit, c.unit)
		assert.InEpsilon(t, c.shown, g.Shown(c.file), 1e-6, c.unit)
		plain := metric.Gauge(c.unit)
		assert.Equal(t, c.file, plain.Shown(c.file))
		assert.Equal(t, c.file, plain.Kept(c.file))
	}
	assert.Equal(t, "°C", metric.Gauge("K").Unit)
}

// What is shown and typed back is the same to the digits shown; what is shown and
// not touched is what it was, since nobody asks Kept.
func TestRoundTripsLoseNothing(t *testing.T) {
	units := []string{"°C", "K", "mL", "mm", "cm²", "m", "L", "kg", "g/mL", "g", "W/(m² K)", "m² K/W"}
	styles := []Style{metric, us, comma, {Volumes: Cups}, {Volumes: Pints, Comma: true}}
	trip := func(v float64) bool {
		v = math.Mod(v, 20000)
		for _, s := range styles {
			for _, unit := range units {
				g := s.Gauge(unit)
				for places := range 4 {
					text := g.Plain(v, places)
					typed := plainNumber(swapComma(text))
					if again := g.Plain(g.Kept(typed), places); again != text {
						t.Errorf("%s: %g shows %q, and typed back %q", unit, v, text, again)
						return false
					}
				}
			}
		}
		return true
	}
	require.NoError(t, quick.Check(trip, nil))
}

func swapComma(s string) string {
	b := []rune(s)
	for i := range b {
		if b[i] == ',' {
			b[i] = '.'
		}
	}
	return string(b)
}

func TestStepsOfAHandAreRound(t *testing.T) {
	for _, c := range []struct {
		s           Style
		unit        string
		step, shown float64
	}{
		{metric, "°C", 0.5, 0.5}, {us, "°C", 0.5, 1}, {us, "mL", 10, 0.5}, {us, "m", 10, 50}, {us, "g", 5, 5}, {Style{Volumes: Cups}, "mL", 10, 0.05},
	} {
		assert.InDelta(t, c.shown, c.s.Gauge(c.unit).Step(c.step), 1e-12, c.unit)
	}
}

func TestAnotherUnitMayBeTyped(t *testing.T) {
	for _, c := range []struct {
		s      Style
		unit   string
		number float64
		typed  string
		kept   float64
	}{
		{metric, "g", 8, "oz", 226.79619}, {metric, "°C", 160, "°F", 71.111111}, {us, "°C", 71, "C", 71}, {us, "mL", 473, " mL", 473},
		{metric, "mL", 2, "cups", 473.17647}, {us, "°C", 32, "", 0}, {us, "g", 1, "KG", 1000},
	} {
		kept, ok := c.s.Gauge(c.unit).Take(c.number, c.typed)
		assert.True(t, ok)
		assert.Equal(t, c.kept, kept, "%g %s", c.number, c.typed)
	}
	for _, wrong := range [][2]string{{"g", "mL"}, {"°C", "g"}, {"%", "g"}, {"g", "stone"}} {
		_, ok := metric.Gauge(wrong[0]).Take(1, wrong[1])
		assert.False(t, ok, wrong)
	}
}

func TestFixedTextsFollowTheUnits(t *testing.T) {
	for _, c := range []struct{ text, metric, us string }{
		{"below {88 to 90 °C} it thins", "below 88 to 90 °C it thins", "below 190 to 194 °F it thins"},
		{"a freezer of {100 L}", "a freezer of 100 L", "a freezer of 3.5 cu ft"},
		{"{−18 °C}", "−18 °C", "0 °F"},
		{"{2.5 cm} of it", "2.5 cm of it", "0.984 in of it"},
		{"{5 g}", "5 g", "5 g (0.18 oz)"},
		{"no {braces} here", "no {braces} here", "no {braces} here"},
	} {
		assert.Equal(t, c.metric, metric.Text(c.text))
		assert.Equal(t, c.us, us.Text(c.text))
	}
	assert.Equal(t, "2,5 cm", comma.Text("{2.5 cm}"))
}

func TestChoicesOfUnitsAreKeptInWords(t *testing.T) {
	for _, s := range []Style{metric, us, {Comma: true}, {Volumes: Pints, Scale: Fahrenheit}, {Volumes: Cups, Weights: WithOunces}} {
		var again Style
		for _, c := range UnitChoices() {
			again = c.In(again, c.Of(s))
			assert.Equal(t, s, c.In(s, "furlongs"), "an unknown word changes nothing")
		}
		assert.Equal(t, s, again)
	}
}

// Each setting of a design has a unit that a US kitchen reads otherwise, or one
// that is the same everywhere.
func TestNoSettingIsLeftMetric(t *testing.T) {
	same := map[string]bool{"": true, "%": true, "g": true, "min": true, "g/g": true, "per kg": true}
	for _, f := range design.Fields() {
		assert.True(t, same[f.Unit] || us.Gauge(f.Unit).Unit != f.Unit, "%s, %s", f.Path, f.Unit)
	}
}
