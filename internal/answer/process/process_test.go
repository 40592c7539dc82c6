package process_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"ripplewright/internal/answer/process"
	"ripplewright/internal/check"
	"ripplewright/internal/matter/water"
)

func TestHotSyrupAndWhitesMeetAsTabled(t *testing.T) {
	for _, row := range check.Table(t, "meringue_mixing") {
		h := process.Hot{
			SyrupG: row.Num("syrup_g_per_100g_white"), SyrupC: row.Num("T_syrup_C"), SolidsPercent: 100 * row.Num("w"),
			WhitesG: 100, WhitesC: 20, WhitesJPerGK: 3.90,
		}
		row.Printed(h.MixedC(), "T_adiabatic_C")
		h.BowlJPerK, h.BowlC = 0.6*600*0.50, 22
		row.Printed(h.MixedC(), "T_with_bowl_C")
	}
}

func TestTheHeatOfTheHotMixCloses(t *testing.T) {
	h := process.Hot{SyrupG: 228, SyrupC: 118, SolidsPercent: 87.8, WhitesG: 100, WhitesC: 20, WhitesJPerGK: 3.9, BowlJPerK: 180, BowlC: 22, LossWPerK: 0.9, AirC: 22}
	c, lost := h.Poured(1.5, 12)
	bare := h
	bare.BowlJPerK = 0
	heat := process.SyrupJPerGK(h.SolidsPercent, (h.SyrupC+bare.MixedC())/2)
	in := h.SyrupG*heat*h.SyrupC + h.WhitesG*h.WhitesJPerGK*h.WhitesC + h.BowlJPerK*h.BowlC
	out := (h.SyrupG*heat + h.WhitesG*h.WhitesJPerGK + h.BowlJPerK) * c.C[len(c.C)-1]
	assert.InEpsilon(t, in, out+lost, 1e-9)

	h.LossWPerK = 0
	c, lost = h.Poured(1.5, 12)
	assert.Zero(t, lost)
	assert.InDelta(t, h.MixedC(), c.C[len(c.C)-1], 1e-9, "without loss the bowl comes to rest")
}

// The tabled history: 20 °C to the peak in 90 s, then a decay, 900 s by 1 s.
func TestLethalityIsAsTabled(t *testing.T) {
	for _, row := range check.Table(t, "lethality") {
		peak := row.Num("T_peak_C")
		c := process.Course{StepMinutes: 1.0 / 60}
		for s := 0; s <= 900; s++ {
			v := 20 + (peak-20)*float64(s)/90
			if s > 90 {
				v = 22 + (peak-22)*math.Exp(-float64(s-90)/1100)
			}
			c.C = append(c.C, v)
		}
		for column, k := range map[string]process.Killing{"logred_A": process.AlbumenPlain, "logred_B": process.AlbumenSugar10, "logred_C": process.Sugared87} {
			want := row.Num(column)
			_, digits, _ := strings.Cut(row.Text(column), ".")
			assert.InDelta(t, want, k.LogReduction(c), math.Max(0.5*math.Pow(10, -float64(len(digits)))*1.02, 1e-4*want), "%s at %g °C", column, peak)
		}
	}
}

func TestTheSameSyrupBoilsCoolerUphillAsTabled(t *testing.T) {
	for _, row := range check.Table(t, "altitude") {
		row.Printed(process.SameSyrupC(118, process.SeaLevel, water.AirPa(row.Num("z_m"))), "T_same_syrup_as_118C")
	}
}

func TestATimedBoilFindsItsFlame(t *testing.T) {
	flame := process.FlameW(240, 35, 96, 4)
	assert.InDelta(t, 4*60*flame, 240*2.9*96+35*2230, 1e-6)
}

func TestACourseIsReadBetweenItsSteps(t *testing.T) {
	c := process.Course{StepMinutes: 1, C: []float64{20, 60, 50, 40, 30}}
	assert.Equal(t, 60.0, c.PeakC())
	assert.InDelta(t, 15.0/40+1+0.5, c.AboveMinutes(45), 1e-12)
	assert.InDelta(t, 3.5, c.BelowMinutes(35), 1e-12)
	assert.True(t, math.IsNaN(c.BelowMinutes(10)))
}
