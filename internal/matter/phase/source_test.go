package phase

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"ripplewright/internal/check"
	"ripplewright/internal/matter/mix"
)

// Janovskii & Archangelskii 1928 as in Bubnik et al. 1995, Sugar Technologists
// Manual (from memory): cp = 4.1868 − 0.0297 B + 4.6e-5 B·P + 7.5e-5 B·t,
// kJ/(kg K), with B % of solids of the purity P = 100 %. Ours rises less with the
// temperature, so the bar is 3 % and hot syrups are left out.
func TestHeatOfASyrupIsThatOfTheSugarTechnologists(t *testing.T) {
	for _, percent := range []float64{30, 45, 60} {
		for _, at := range []float64{5, 20, 40} {
			var m mix.Mix
			m.Grams[mix.Water], m.Grams[mix.Sucrose] = 100-percent, percent
			b := body(m, 0, Foam)
			want := 4.1868 - 0.0297*percent + 4.6e-5*percent*100 + 7.5e-5*percent*at
			assert.InEpsilon(t, want, b.JPerGK(at), 0.03, "%g %% at %g °C", percent, at)
		}
	}
}

// phase_properties.csv: the same components and rules by a separate program,
// for the same mixes at the same share of ice.
func TestConductivityIsTheSeparatePrograms(t *testing.T) {
	made := map[string]struct {
		m       mix.Mix
		overrun float64
		role    Role
	}{
		"custard":  {recipe(60, 19.7, 0, 15, 4.5, 0.8, 0.007456), 0, Dense},
		"foam 2:1": {recipe(37.9, 58.3, 0, 0, 3.4, 0.4, 0.0061858), 0.72 / 0.28, Foam},
	}
	compared := 0
	for _, r := range check.Table(t, "phase_properties") {
		x, ok := made[r.Text("phase")]
		frozen := r.Num("ice_per_water")
		if !ok || frozen <= 0.05 {
			continue
		}
		b := body(x.m, x.overrun, x.role)
		at := b.FrozenAtC(frozen)
		if !(at > -30) {
			continue
		}
		want := r.Num("k_W_mK")
		got, _ := b.WPerMK(at)
		assert.InEpsilon(t, want, got, 0.02, "%v", r)
		compared++
	}
	assert.Greater(t, compared, 20)
}

// The band ends where the word scale says that a spoon needs force, of either
// phase, and the custard's begins where it says "soft enough to spoon".
func TestAPhaseStopsEatingWellWhereTheWordSaysForce(t *testing.T) {
	for _, r := range []Role{Dense, Foam} {
		b := r.Band()
		assert.Equal(t, "scoopable", WordFor(0.999*b.FirmKPa).Name)
		assert.Equal(t, "firm", WordFor(1.001*b.FirmKPa).Name)
	}
	assert.Equal(t, "soft", WordFor(1.001*Dense.Band().SoftKPa).Name)
	assert.Equal(t, "very soft", WordFor(1.001*Foam.Band().SoftKPa).Name)
}
