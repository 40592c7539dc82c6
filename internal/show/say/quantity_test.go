package say

import (
	"math"
	"strings"
	"testing"
	"testing/quick"

	"github.com/stretchr/testify/assert"
)

var (
	metric = Style{}
	us     = Customary
	comma  = Style{Comma: true, Currency: "€"}
	nan    = math.NaN()
)

func TestQuantitiesReadAsAKitchenHasThem(t *testing.T) {
	for _, c := range []struct{ want, got string }{
		{"12.4", metric.Number(12.35001, 1)},
		{"12,4", comma.Number(12.4, 1)},
		{"−13.0", metric.Number(-13, 1)},
		{"0.0", metric.Number(-0.04, 1)},
		{"0", metric.Number(math.Copysign(0, -1), 0)},
		{"–", metric.Number(nan, 1)},
		{"–", metric.Number(math.Inf(-1), 1)},

		{"+0.4", metric.Signed(0.4, 1)},
		{"−0.4", metric.Signed(-0.4, 1)},
		{"0.0", metric.Signed(0.04, 1)},
		{"–", metric.Signed(math.Inf(1), 1)},
		{"+0,4", comma.Signed(0.4, 1)},
		{"−0.4 points", metric.Points(-0.4, 1)},
		{"+1 point", metric.Points(1, 0)},

		{"2.5", metric.Short(2.5, 1)},
		{"3", metric.Short(3.04, 1)},
		{"0", metric.Short(-0.01, 1)},
		{"20", metric.Short(20, 0)},

		{"9999", metric.Grouped(9999)},
		{"12\u2009345", metric.Grouped(12345)},
		{"−1\u2009234\u2009567", metric.Grouped(-1234567)},

		{"−18 °C", metric.Temperature(-18)},
		{"−9.5 °C", metric.Temperature(-9.5)},
		{"0 °C", metric.Temperature(-0.01)},
		{"0 °F", us.Temperature(-18)},
		{"244 °F", us.Temperature(118)},
		{"−13.0 °C", metric.TemperatureTo(-13, 1)},
		{"–", metric.TemperatureTo(nan, 1)},
		{"−14 to −9.5 °C", metric.TemperatureSpan(-14, -9.5)},
		{"−14 °C", metric.TemperatureSpan(-14, -14)},
		{"2 °C", metric.TemperatureStep(2)},
		{"4 °F", us.TemperatureStep(2)},

		{"0 min", metric.Duration(0)},
		{"45 min", metric.Duration(45)},
		{"99 min", metric.Duration(99.4)},
		{"1.7 h", metric.Duration(99.6)},
		{"3.1 h", metric.Duration(186)},
		{"3,1 h", comma.Duration(186)},
		{"10 h", metric.Duration(598)},
		{"31 h", metric.Duration(31 * 60)},
		{"–", metric.Duration(nan)},
		{"9 to 14 min", metric.DurationSpan(9, 14)},
		{"9 min", metric.DurationSpan(8.8, 9.2)},
		{"1.3 to 2.3 h", metric.DurationSpan(78, 138)},
		{"9 min or more", metric.DurationSpan(9, nan)},
		{"–", metric.DurationSpan(nan, nan)},
		{"1.7 h (1.3 to 2.3)", metric.DurationBand(100, 78, 138)},
		{"99 min (78 to 138)", metric.DurationBand(99, 78, 138)},
		{"1.7 h (1.3 or more)", metric.DurationBand(100, 78, nan)},
		{"0 min", metric.DurationBand(0, 0, 0)},

		{"4.5 g", metric.Mass(4.5)},
		{"10 g", metric.Mass(9.96)},
		{"750 g", metric.Mass(749.6)},
		{"12.35 kg", metric.Mass(12350)},
		{"150 kg", metric.Mass(150000)},
		{"–", metric.Mass(nan)},
		{"28 g (1.0 oz)", us.Mass(28.35)},
		{"454 g (16.0 oz)", us.Mass(453.6)},
		{"1000 g (2 lb 3.3 oz)", us.Mass(1000)},
		{"907 g (2 lb 0 oz)", us.Mass(907.18)},
		{"12.00 kg (26.5 lb)", us.Mass(12000)},
		{"0.5 g (0.02 oz)", us.Mass(0.5)},
		{"–", us.Mass(nan)},
		{"2.50 g (0.09 oz)", us.MassTo(2.5, 2)},
		{"31.25 g (1.1 oz)", us.MassAsWritten(31.25)},
		{"750 mL", metric.Volume(750)},
		{"12.4 L", metric.Volume(12400)},
		{"1.0 fl oz", us.Volume(29.57)},
		{"16.0 fl oz", us.Volume(473.2)},
		{"1 gal", us.Volume(3785)},
		{"2 cups", Style{Volumes: Cups}.Volume(473.18)},
		{"1 cup", Style{Volumes: Cups}.Volume(236.59)},
		{"0.21 cups", Style{Volumes: Cups}.Volume(50)},
		{"1 pint", Style{Volumes: Pints}.Volume(473.18)},
		{"1.59 pints", Style{Volumes: Pints}.Volume(750)},
		{"–", us.Volume(nan)},
		{"15.0 mL", metric.VolumeTo(15, 1)},
		{"0.51 fl oz", us.VolumeTo(15, 1)},
		{"8.8 lb/gal", us.Density(1.05)}, // 1.05 × 8.3454 lb, a gallon of water of 1 g/mL
		{"8.76 lb/gal", us.DensityTo(1.05, 3)},

		{"12.4 %", metric.Percent(12.4, 1)},
		{"–", metric.Percent(nan, 1)},
		{"5 to 10 %", metric.PercentSpan(5, 10, 0)},
		{"2.5 kPa", metric.Hardness(2.53)},
		{"25 kPa", metric.Hardness(25.3)},
		{"0.25 kPa", metric.Hardness(0.253)},
		{"1.2 to 4.8 kPa", metric.HardnessSpan(1.2, 4.8)},
		{"1.05 g/mL", metric.Density(1.05)},
		{"30 mm", metric.Length(30)},
		{"1.2 in", us.Length(30)},
		{"2.5 mm", metric.Thickness(2.51)},
		{"1200 m", metric.Altitude(1200)},
		{"3937 ft", us.Altitude(1200)},
		{"12.40", metric.Money(12.4)},
		{"€\u00a012,40", comma.Money(12.4)},

		{"1 tub", metric.Count(1, "tub", "tubs")},
		{"0 tubs", metric.Count(0, "tub", "tubs")},
		{"2 batches", metric.Count(2, "batch", "batches")},
		{"", List(nil)},
		{"a", List([]string{"a"})},
		{"a and b", List([]string{"a", "b"})},
		{"a, b and c", List([]string{"a", "b", "c"})},
		{"≥ 17.1 %", AtLeast("17.1 %")},
		{"hazelnut, milk", strings.Join(Allergens([]string{"tree_nut:hazelnut", "milk"}), ", ")},
		{"–", AtLeast(Unknown)},
	} {
		assert.Equal(t, c.want, c.got)
	}
}

// No quantity has a hyphen for a minus, a negative nought, or a unit without
// its number.
func TestNoQuantityReadsMinusNought(t *testing.T) {
	check := func(v float64) bool {
		for _, small := range []float64{v, math.Mod(v, 1), math.Mod(v, 1e-3), math.Mod(v, 1e5)} {
			for _, s := range []Style{metric, us, comma} {
				for _, q := range []string{s.Number(small, 1), s.Signed(small, 1), s.Short(small, 2), s.Temperature(small), s.TemperatureTo(small, 1),
					s.Mass(small), s.Duration(small), s.Percent(small, 0), s.Grouped(small), s.Points(small, 1)} {
					number, _, _ := strings.Cut(q, " ")
					if strings.Contains(q, "-") || strings.ContainsAny(number, "−+") && strings.Trim(number, "−+0.,") == "" {
						t.Errorf("%g reads %q", small, q)
						return false
					}
				}
			}
		}
		return true
	}
	assert.NoError(t, quick.Check(check, nil))
}

func TestTheEndsOfASpanShareTheirUnit(t *testing.T) {
	ends := func(a, b float64) bool {
		from, to := math.Mod(math.Abs(a), 3000), math.Mod(math.Abs(b), 3000)
		if from > to {
			from, to = to, from
		}
		text := metric.DurationSpan(from, to)
		return strings.Count(text, "min")+strings.Count(text, "h") == 1
	}
	assert.NoError(t, quick.Check(ends, nil))
}
