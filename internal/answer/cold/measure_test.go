package cold

import (
	"math"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/check/market"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/work/design"
)

// A core measured in a freezer lies between what it went in at and the air; of a
// tub that scooped well only the minutes are asked.
func TestAMeasurementIsOfWhatCanBe(t *testing.T) {
	assert.True(t, Measurement{Kind: CoreAt, CoreC: -15, StartC: -5}.Between(-18))
	assert.False(t, Measurement{Kind: CoreAt, CoreC: -5, StartC: -5}.Between(-18))
	assert.False(t, Measurement{Kind: CoreAt, CoreC: -18, StartC: -5}.Between(-18))
	assert.True(t, Measurement{Kind: ScoopedWell}.Between(-18))
	assert.Len(t, MeasurementFields(CoreAt), 3)
	require.Len(t, MeasurementFields(ScoopedWell), 1)
	for path, c := range map[string]struct {
		may, not []float64
		why      string
	}{
		"start_c": {[]float64{-30, 4, 40}, []float64{-31, 41}, "from the trade's hardening room to a bowl that is still warm"},
		"core_c":  {[]float64{-40, -15, 0}, []float64{-41, 0.5}, "in a freezer, frozen"},
		"minutes": {[]float64{1, 300, 6000}, []float64{0.5, 6100}, "a minute to four days and a bit"},
	} {
		for _, f := range MeasurementFields(CoreAt) {
			if f.Path != path {
				continue
			}
			check := func(v float64) string {
				var m Measurement
				*f.Of(&m).(*float64) = v
				return flaw.Text(f.Check(&m))
			}
			for _, v := range c.may {
				assert.Empty(t, check(v), "%s may be %g: %s", path, v, c.why)
			}
			for _, v := range c.not {
				assert.NotEmpty(t, check(v), "%s cannot be %g: %s", path, v, c.why)
			}
		}
	}
	assert.Equal(t, "scooped well after 12 min", Measurement{Kind: ScoopedWell, Minutes: 12.4}.String())
	assert.Equal(t, "core at -15 °C after 300 min from -5 °C", Measurement{Kind: CoreAt, CoreC: -15, StartC: -5, Minutes: 300}.String())
}

// An error of a profile names its line where there is one, and its key.
func TestAFieldErrorNamesWhatItKnows(t *testing.T) {
	assert.Equal(t, `line 7: kitchen profile "Quay": counter.air_c: too warm`, (&FieldError{7, "Quay", "counter.air_c", flaw.New("too warm")}).Error())
	assert.Equal(t, `kitchen profile "Quay": is no kitchen`, (&FieldError{Profile: "Quay", Err: flaw.New("is no kitchen")}).Error())
}

// A maker's own kitchen is found in the configuration folder, before a built-in
// one of its name; without a folder there are the built-in ones.
func TestOwnKitchensAreFoundInTheirFolder(t *testing.T) {
	dir := t.TempDir()
	t.Setenv("XDG_CONFIG_HOME", dir)
	t.Setenv("HOME", dir)
	path, err := ProfilesPath()
	require.NoError(t, err)
	require.True(t, filepath.IsAbs(path))
	own := Default()
	own.Name, own.Freezer.AirC = "Quay", -23
	require.NoError(t, SaveProfiles(path, []Profile{own}, nil))
	got, err := FindOwn("quay")
	require.NoError(t, err)
	assert.Equal(t, own, got)
	got, err = FindOwn("")
	require.NoError(t, err)
	assert.Equal(t, Default(), got)
	_, err = Find(nil, "")
	assert.Error(t, err, "of no kitchens there is no first")
}

// The foam waits for the custard, frozen or not: what it holds then decides
// what ready means, and whether its edge showed ice before.
func TestAFoamIsReadyWhenTheCustardIs(t *testing.T) {
	d := market.Honey()
	for _, sugar := range []float64{20, 60, 180} {
		d := d.WithGrams(design.SyrupPart, 0, sugar)
		r := evaluated(t, d)
		a := planned(t, d, Default())
		f := a.StillFreeze.Foam
		assert.Equal(t, a.StillFreeze.Dense.ReadyC, f.ReadyC)
		ice := r.Foam.Body.At(f.ReadyC).FrozenFraction
		assert.InDelta(t, ice, f.ReadyIceFraction, 1e-9)
		assert.Equal(t, ice == 0, f.Means == AsCustardBare, "%g g: %g", sugar, ice)
		assert.Equal(t, r.Foam.Body.FreezingPointC-0.5 < f.ReadyC, math.IsNaN(f.FirstIceMinutes.Value), "%g g", sugar)
	}
}

// The tub's enthalpy is its phases', each by its share of the volume.
func TestATubHoldsTheHeatOfItsPhases(t *testing.T) {
	r := evaluated(t, market.Honey())
	s, err := rippled(r)
	require.NoError(t, err)
	for _, c := range []float64{-18, -5, 10} {
		want := 0.6*r.Dense.Body.JPerM3(c) + 0.4*r.Foam.Body.JPerM3(c)
		assert.InEpsilon(t, want, s.enthalpy(c), 1e-9)
		a, _ := r.Dense.Body.WPerMK(c)
		b, _ := r.Foam.Body.WPerMK(c)
		assert.InEpsilon(t, phase.BruggemanWPerMK(a, b, 0.4), s.conductivity(c), 1e-9)
	}
}
