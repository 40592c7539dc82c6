package main

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// loggedBatch is a batch as a script reads it.
type loggedBatch struct {
	Batch    string
	Made     string
	FreezerC *float64 `json:"freezer_c"`
	RoomC    *float64 `json:"room_c"`
	Words    string
	Pairs    []struct {
		Path, Word                    string
		Expected, Measured, Low, High float64
		Slip                          bool
	}
}

func ask[T any](k kitchen, in string, args ...string) (out T) {
	code, text, err := k.run(in, args...)
	require.Equal(k.t, exitFine, code, "%v: %s", args, err)
	require.NoError(k.t, json.Unmarshal([]byte(text), &out), text)
	return out
}

func TestABatchIsWrittenDownListedAndLearntFrom(t *testing.T) {
	k := newKitchen(t)
	type added struct {
		File  string
		Batch loggedBatch
		Ask   []struct{ Path, Sentence string }
	}
	a := ask[added](k, "", "batch", "add", "quay.yaml", "freezer_c=-16.5", "ate.icy=icy", "batch=quay-1", "made=2026-11-01", "--json")
	assert.Equal(t, k.path("quay.batches.yaml"), a.File)
	assert.Equal(t, -16.5, *a.Batch.FreezerC)
	assert.Nil(t, a.Batch.RoomC, "what nobody measured is not zero")
	require.Len(t, a.Batch.Pairs, 2)
	assert.Equal(t, "freezer_c", a.Batch.Pairs[0].Path)
	assert.Equal(t, -18., a.Batch.Pairs[0].Expected)
	assert.Equal(t, "icy", a.Batch.Pairs[1].Word)
	assert.NotEmpty(t, a.Ask)

	was, err := os.ReadFile(k.path("quay.batches.yaml"))
	require.NoError(t, err)
	second := ask[added](k, "room_c: 24\nwords: |\n  Windy, \"=SUM(A1)\"\n", "batch", "add", "quay.yaml", "--entry", "-", "words==1+1", "--json")
	assert.NotEqual(t, "quay-1", second.Batch.Batch, "it is a new one")
	ask[added](k, "", "batch", "add", "quay.yaml", "batch=quay-1", "freezer_c=-17", "--json")
	now, err := os.ReadFile(k.path("quay.batches.yaml"))
	require.NoError(t, err)
	assert.True(t, strings.HasPrefix(string(now), string(was)), "nothing is rewritten")

	list := ask[struct {
		Batches []loggedBatch
		Off     []string
	}](k, "", "batch", "list", "quay.yaml", "--json")
	require.Len(t, list.Batches, 2)
	assert.Equal(t, -17., *list.Batches[0].FreezerC)
	assert.Equal(t, "2026-11-01", list.Batches[0].Made)

	code, text, errs := k.run("", "batch", "list", "quay.yaml", "--csv")
	require.Equal(t, exitFine, code, errs)
	rows := strings.Split(strings.TrimSpace(text), "\n")
	require.Len(t, rows, 3)
	heads := strings.Split(rows[0], ",")
	assert.Equal(t, "-17", strings.Split(rows[1], ",")[slices.Index(heads, "freezer_c")])
	assert.Contains(t, rows[2], ",'=1+1,", "no spreadsheet computes it")

	type lesson struct {
		Batches int
		Factors []struct {
			Factor, Unit     string
			On               bool
			Value, Low, High float64
			Left             float64 `json:"width_left"`
			Data             []struct{ Batch, Path string }
		}
		Next map[string]struct{ Low, Value, High float64 }
	}
	l := ask[lesson](k, "", "batch", "learn", "quay.yaml", "--json")
	assert.Equal(t, 2, l.Batches)
	for _, f := range l.Factors {
		switch f.Factor {
		case "freezer":
			assert.Greater(t, f.Value, 0., "it was warmer than the kitchen says")
			assert.Less(t, f.Left, 1.)
			require.Len(t, f.Data, 1)
			assert.Equal(t, "quay-1", f.Data[0].Batch)
		case "foam_air":
			assert.Equal(t, 1., f.Left)
			assert.Empty(t, f.Data)
		}
	}
	assert.Greater(t, l.Next["minutes_out"].High, l.Next["minutes_out"].Low)
	off := ask[lesson](k, "", "batch", "learn", "quay.yaml", "--off", "freezer", "--json")
	for _, f := range off.Factors {
		assert.Equal(t, f.Factor != "freezer", f.On, f.Factor)
		assert.True(t, f.Factor != "freezer" || f.Left == 1)
	}
	for _, words := range [][]string{{"list"}, {"learn"}, {"learn", "--off", "nothing"}} {
		code, out, err := k.run("", append([]string{"batch", words[0], "quay.yaml"}, words[1:]...)...)
		assert.Equal(t, exitFine, code, err)
		assert.NotEmpty(t, out)
	}
}

func TestABatchThatCannotBeIsRefused(t *testing.T) {
	k := newKitchen(t)
	for _, c := range []struct {
		args []string
		in   string
		code int
		want string
	}{
		{[]string{"add", "quay.yaml", "freezer_c=warm"}, "", exitUsage, "freezer_c"},
		{[]string{"add", "quay.yaml", "freezer_c=40"}, "", exitUsage, "freezer_c: 40 °C is outside"},
		{[]string{"add", "quay.yaml", "icy=very"}, "", exitUsage, "icy"},
		{[]string{"add", "quay.yaml", "forecast.ice_um=3"}, "", exitUsage, "forecast.ice_um"},
		{[]string{"add", "quay.yaml", "windy"}, "", exitUsage, "KEY=VALUE"},
		{[]string{"add", "quay.yaml", "weighed=dense saffron 3 g"}, "", exitInput, "saffron"},
		{[]string{"add", "-", "freezer_c=-18"}, "", exitUsage, "standard input"},
		{[]string{"add", "quay.yaml", "--entry", "-"}, "a: 1\nate: {icy: very}\n", exitInput, "-:1: a: is no setting"},
		{[]string{"learn", "quay.yaml", "--off", "luck"}, "", exitUsage, "luck"},
		{[]string{"mend", "quay.yaml"}, "", exitUsage, "mend"},
		{nil, "", exitUsage, "no file given"},
		{[]string{"list", "quay.yaml", "--off", "ice"}, "", exitUsage, "list knows no --off"},
		{[]string{"learn", "quay.yaml", "freezer_c=-18"}, "", exitUsage, "one argument too many"},
	} {
		code, _, err := k.run(c.in, append([]string{"batch"}, c.args...)...)
		assert.Equal(t, c.code, code, "%v: %s", c.args, err)
		assert.Contains(t, err, c.want, "%v", c.args)
		assert.NoFileExists(t, k.path("quay.batches.yaml"), "%v", c.args)
	}
	k.file("quay.batches.yaml", "---\nbatch: a\nroom_c: 99\n...\n")
	for _, verb := range []string{"add", "list", "learn"} {
		code, _, err := k.run("", "batch", verb, "quay.yaml")
		assert.Equal(t, exitInput, code)
		assert.Contains(t, err, "quay.batches.yaml:3: room_c: 99 °C is outside 5 to 45 °C", verb)
	}
}

// Batches from a freezer that was warmer than the kitchen says reach every answer that
// the kitchen is in, and how sure it is.
func TestWhatIsLearntReachesEveryAnswer(t *testing.T) {
	k := newKitchen(t)
	type chilled struct {
		Storage struct {
			AtC float64 `json:"at_c"`
		}
	}
	type sampled struct {
		Spread map[string]struct{ Low, High float64 }
	}
	wide := func(s sampled) float64 {
		b := s.Spread["custard_hardness_kpa"]
		return b.High / b.Low
	}
	was, sureWas := ask[chilled](k, "", "cold", "quay.yaml", "--json"), ask[sampled](k, "", "sure", "quay.yaml", "--kitchens", "200", "--json")
	text := ""
	for _, id := range []string{"a", "b", "c", "d", "e"} {
		text += "---\nbatch: " + id + "\nfreezer_c: -15\nate: {hardness: firm}\nforecast: {freezer_c: -18, hardness_kpa: 7}\n...\n"
	}
	k.file("quay.batches.yaml", text)
	now, sureNow := ask[chilled](k, "", "cold", "quay.yaml", "--json"), ask[sampled](k, "", "sure", "quay.yaml", "--kitchens", "200", "--json")
	assert.Greater(t, now.Storage.AtC, was.Storage.AtC+1)
	assert.Less(t, wide(sureNow), 0.8*wide(sureWas))
}

// What batches teach of the hardness is in every answer about the design beside them.
func TestWhatBatchesTeachIsInEveryAnswer(t *testing.T) {
	if testing.Short() {
		t.Skip("a sweep, of which the race detector takes long")
	}
	k := newKitchen(t)
	hardness := func() (kPa, width float64, learnt any) {
		code, out, errs := k.run("", "evaluate", "--json", "quay.yaml")
		require.Equal(t, exitFine, code, errs)
		var got struct {
			Dense struct {
				Hardness float64
				Bands    struct{ Hardness struct{ Low, High float64 } }
			}
			Learnt any
		}
		require.NoError(t, json.Unmarshal([]byte(out), &got))
		return got.Dense.Hardness, math.Log(got.Dense.Bands.Hardness.High / got.Dense.Bands.Hardness.Low), got.Learnt
	}
	before, wide, nothing := hardness()
	assert.Nil(t, nothing)
	for range 3 {
		code, _, errs := k.run("", "batch", "add", "quay.yaml", "ate.hardness=very hard")
		require.Equal(t, exitFine, code, errs)
	}
	after, narrow, learnt := hardness()
	assert.Greater(t, after, 1.1*before)
	assert.Less(t, narrow, 0.9*wide)
	assert.Equal(t, 3., learnt.(map[string]any)["readings"])
	code, out, errs := k.run("", "evaluate", "quay.yaml")
	require.Equal(t, exitFine, code, errs)
	assert.Contains(t, out, "Your batches have shown this custard to be ")
	// What lays designs side by side has for all what the first one's batches teach, and a
	// version what its design's do.
	kept, err := filepath.Glob(filepath.Join(k.dir, "quay.versions", "*.yaml"))
	require.NoError(t, err)
	require.NotEmpty(t, kept)
	k.file("other.yaml", strings.Replace(quay, "name: ", "name: other ", 1))
	for first, want := range map[string]float64{"quay.yaml": after, "quay.versions/" + filepath.Base(kept[0]): after, "other.yaml": before} {
		second := "quay.yaml"
		if first == second {
			second = "other.yaml"
		}
		code, out, errs = k.run("", "compare", first, second, "--json")
		require.Equal(t, exitFine, code, errs)
		var table struct {
			Figures []struct {
				Key    string
				Values []any
			}
		}
		require.NoError(t, json.Unmarshal([]byte(out), &table))
		i := slices.IndexFunc(table.Figures, func(f struct {
			Key    string
			Values []any
		}) bool {
			return f.Key == "dense.hardness"
		})
		require.GreaterOrEqual(t, i, 0)
		for _, v := range table.Figures[i].Values {
			assert.InEpsilon(t, want, v, 1e-6, first)
		}
		code, out, errs = k.run("", "diff", first, second, "--json")
		require.Contains(t, []int{exitFine, exitDiffer}, code, errs)
		assert.NotContains(t, out, `"dense.hardness"`, "both by one law")
	}
	code, _, errs = k.run("", "batch", "learn", "quay.yaml", "--off", "hardness")
	require.Equal(t, exitFine, code, errs)
	again, _, _ := hardness()
	assert.Equal(t, before, again, "switched off")
}

// Five pans and five cups that came out otherwise than written: figures and weights stay,
// and every band that rests on them says so.
func TestWhatTheRecipeCameToIsInEveryBand(t *testing.T) {
	if testing.Short() {
		t.Skip("a sweep, of which the race detector takes long")
	}
	k := newKitchen(t)
	type band struct{ Low, High float64 }
	type evaluated struct {
		Foam struct {
			Density float64 `json:"density_g_per_ml"`
			Bands   struct {
				Freezes band  `json:"initial_freezing_point_c"`
				Density *band `json:"density_g_per_ml"`
			}
			Syrup struct {
				Solids float64 `json:"solids_percent"`
				Band   band    `json:"solids_percent_band"`
			}
		}
		Lines  any
		Learnt struct {
			HardnessFactor *float64 `json:"hardness_factor"`
			Recipe         []struct {
				Factor   string
				Readings int
			}
		}
	}
	type boiled struct {
		Syrup struct {
			Low  float64 `json:"solids_low_percent"`
			High float64 `json:"solids_high_percent"`
		}
	}
	type chilled struct {
		Harden struct {
			Hours float64
			Low   float64 `json:"hours_low"`
			High  float64 `json:"hours_high"`
		}
	}
	design := strings.Replace(quay, "foam:\n", "foam:\n  overrun_percent: 300\n", 1)
	k.file("quay.yaml", design)
	was, wasBoiled, wasCold := ask[evaluated](k, "", "evaluate", "quay.yaml", "--json"), ask[boiled](k, "", "process", "quay.yaml", "--json"), ask[chilled](k, "", "cold", "quay.yaml", "--json")
	require.NotNil(t, was.Foam.Bands.Density)
	text := ""
	for _, id := range []string{"a", "b", "c", "d", "e"} {
		text += "---\nbatch: " + id + "\nsyrup: {reading_c: 118, weighed_g: 97.7, pan_g: 0}\nfoam: {cup_g: 82}\n" +
			"forecast: {syrup_g: 100, syrup_solids_percent: 85, foam_cup_g: 70, foam_overrun_percent: 300}\n...\n"
	}
	k.file("quay.batches.yaml", text)
	now, nowBoiled, nowCold := ask[evaluated](k, "", "evaluate", "quay.yaml", "--json"), ask[boiled](k, "", "process", "quay.yaml", "--json"), ask[chilled](k, "", "cold", "quay.yaml", "--json")
	assert.Equal(t, was.Lines, now.Lines, "no weight moves")
	assert.Equal(t, was.Foam.Density, now.Foam.Density)
	assert.Equal(t, was.Foam.Syrup.Solids, now.Foam.Syrup.Solids)
	assert.Nil(t, now.Learnt.HardnessFactor)
	require.Len(t, now.Learnt.Recipe, 2)
	assert.Equal(t, 5, now.Learnt.Recipe[0].Readings)

	wide := func(b band) float64 { return b.High - b.Low }
	assert.Less(t, wide(now.Foam.Syrup.Band), 0.75*wide(was.Foam.Syrup.Band))
	assert.Less(t, wide(now.Foam.Bands.Freezes), wide(was.Foam.Bands.Freezes))
	solids := now.Foam.Syrup
	assert.Greater(t, solids.Band.High-solids.Solids, 2*(solids.Solids-solids.Band.Low), "lopsided to what they came to")
	require.NotNil(t, now.Foam.Bands.Density)
	assert.Greater(t, now.Foam.Bands.Density.High, 1.1*now.Foam.Density, "less air")
	assert.Equal(t, band(solids.Band), band{nowBoiled.Syrup.Low, nowBoiled.Syrup.High})
	assert.Less(t, nowBoiled.Syrup.High-nowBoiled.Syrup.Low, wasBoiled.Syrup.High-wasBoiled.Syrup.Low)
	assert.Equal(t, wasCold.Harden.Hours, nowCold.Harden.Hours)
	assert.NotEqual(t, wasCold.Harden, nowCold.Harden)

	code, out, errs := k.run("", "evaluate", "quay.yaml")
	require.Equal(t, exitFine, code, errs)
	assert.Contains(t, out, "Your batches came to ")
	assert.Contains(t, out, "of air in the foam, where the recipe has 300 %")
	code, _, errs = k.run("", "card", "quay.yaml", "-o", k.path("card.html"))
	require.Equal(t, exitFine, code, errs)
	card, err := os.ReadFile(k.path("card.html"))
	require.NoError(t, err)
	assert.Contains(t, string(card), "Your batches came to ")

	k.file("quay.batches.yaml", text+"---\nbatch: learning\noff: [syrup, foam_air]\n...\n")
	off := ask[evaluated](k, "", "evaluate", "quay.yaml", "--json")
	assert.Equal(t, was, off, "switched off, the published bands are back")
}
