package main

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// iced is the answer as a script reads it.
type iced struct {
	Custard, Foam struct {
		AfterFreezing float64                                    `json:"after_freezing_um"`
		Wall          float64                                    `json:"hardened_wall_um"`
		Core          float64                                    `json:"hardened_core_um"`
		Weeks         []struct{ Week, Wall_um, Core_um float64 } `json:"weeks"`
		Word          string
		Low           float64 `json:"low_um"`
		High          float64 `json:"high_um"`
	}
	BySteps []struct {
		Step  string
		Share float64
	} `json:"by_step"`
	Remedies []map[string]any
}

func TestTheIceAnswersAsTextAndJSON(t *testing.T) {
	k := newKitchen(t)
	code, out, err := k.run("", "ice", "quay.yaml")
	require.Equal(t, exitFine, code, err)
	assert.Contains(t, out, "What would help")
	assert.Contains(t, out, "Not in these figures")

	ask := func(args ...string) iced {
		code, out, err := k.run("", append([]string{"ice", "--json", "quay.yaml"}, args...)...)
		require.Equal(t, exitFine, code, err)
		var a iced
		require.NoError(t, json.Unmarshal([]byte(out), &a))
		return a
	}
	a := ask()
	require.Len(t, a.Custard.Weeks, 13)
	assert.Equal(t, a.Custard.Wall, a.Custard.Weeks[0].Wall_um)
	assert.Equal(t, a.Custard.Core, a.Custard.Weeks[0].Core_um)
	assert.Less(t, a.Custard.AfterFreezing, a.Custard.Wall)
	assert.True(t, a.Custard.Low < a.Custard.Weeks[12].Core_um && a.Custard.Weeks[12].Core_um < a.Custard.High)
	assert.Contains(t, []string{"fine", "smooth", "slightly coarse", "icy"}, a.Custard.Word)
	assert.NotEmpty(t, a.Foam.Word)
	assert.NotEmpty(t, a.Remedies)
	sum := 0.0
	for _, s := range a.BySteps {
		sum += s.Share
	}
	assert.InDelta(t, 1, sum, 1e-9)
	short, swinging := ask("--weeks", "3"), ask("--swing", "6")
	assert.Len(t, short.Custard.Weeks, 4)
	assert.Greater(t, swinging.Custard.Weeks[12].Wall_um, a.Custard.Weeks[12].Wall_um)
	assert.Equal(t, a.Custard.Wall, swinging.Custard.Wall)
}

func TestWeeksAndSwingsOutsideTheirRangesAreMisuse(t *testing.T) {
	k := newKitchen(t)
	for _, args := range [][]string{{"--weeks", "0"}, {"--weeks", "53"}, {"--swing", "-1"}, {"--swing", "11"}, {"--swing", "much"}} {
		code, _, err := k.run("", append([]string{"ice", "quay.yaml"}, args...)...)
		assert.Equal(t, exitUsage, code, "%v: %s", args, err)
	}
	code, _, err := k.run("", "ice", "quay.yaml", "--profile", "igloo")
	assert.Equal(t, exitInput, code)
	assert.Contains(t, err, "igloo")
}

// What a maker said of how icy batches ate, coarser than the law had it, makes the next
// answer coarser, by one factor on every size, and surer.
func TestTheIceLearnsFromHowBatchesAte(t *testing.T) {
	k := newKitchen(t)
	ask := func() (a iced, learnt map[string]any) {
		code, out, err := k.run("", "ice", "--json", "quay.yaml")
		require.Equal(t, exitFine, code, err)
		require.NoError(t, json.Unmarshal([]byte(out), &a))
		var more struct{ Learnt map[string]any }
		require.NoError(t, json.Unmarshal([]byte(out), &more))
		return a, more.Learnt
	}
	before, none := ask()
	assert.Nil(t, none)
	k.file("quay.batches.yaml", "---\nbatch: a\nate: {icy: slightly coarse}\nforecast: {ice_um: 34}\n...\n"+
		"---\nbatch: b\nate: {icy: slightly coarse}\nforecast: {ice_um: 34}\n...\n")
	after, learnt := ask()
	assert.EqualValues(t, 2, learnt["batches"])
	factor := learnt["factor"].(float64)
	assert.Greater(t, factor, 1.05)
	assert.InEpsilon(t, factor, after.Custard.Wall/before.Custard.Wall, 0.01)
	assert.Less(t, after.Custard.High/after.Custard.Low, before.Custard.High/before.Custard.Low)
	k.file("quay.batches.yaml", "---\nbatch: a\nate: {icy: slightly coarse}\nforecast: {ice_um: 34}\n...\n---\nbatch: learning\noff: [ice]\n...\n")
	off, none := ask()
	assert.Nil(t, none, "it is switched off")
	assert.Equal(t, before, off)

	k.file("quay.batches.yaml", "---\nbatch: a\nate: {icy: very}\n...\n")
	code, _, err := k.run("", "ice", "quay.yaml")
	assert.Equal(t, exitInput, code)
	assert.Contains(t, err, `quay.batches.yaml:3: ate.icy: "very" is not one of fine`)
}
