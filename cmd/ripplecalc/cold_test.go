package main

import (
	"encoding/json"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestTheColdAnswersAsTextAndJSON(t *testing.T) {
	k := newKitchen(t)
	code, out, err := k.run("", "cold", "quay.yaml")
	require.Equal(t, exitFine, code, err)
	assert.Contains(t, out, "Hardening: ")

	code, out, err = k.run("", "cold", "--json", "quay.yaml")
	require.Equal(t, exitFine, code, err)
	var all map[string]any
	require.NoError(t, json.Unmarshal([]byte(out), &all))
	for _, key := range []string{"harden", "still_freeze", "serving_window", "storage"} {
		assert.IsType(t, map[string]any{}, all[key], key)
	}
	for _, key := range []string{"core_to_c", "hours"} {
		assert.Contains(t, all["harden"], key)
	}
	for _, key := range []string{"from_minutes", "to_minutes", "ring_c", "core_c"} {
		assert.Contains(t, all["serving_window"], key)
	}
}

func TestAKitchenNobodyKnowsIsAnInputError(t *testing.T) {
	code, _, err := newKitchen(t).run("", "cold", "quay.yaml", "--profile", "igloo")
	assert.Equal(t, exitInput, code)
	assert.Contains(t, err, "igloo")
}

func TestAnOwnKitchenThatCannotBeReadIsAnInputError(t *testing.T) {
	k := newKitchen(t)
	k.file("config/ripplewright/profiles.yaml", "profiles: much\n")
	code, _, err := k.run("", "cold", "quay.yaml")
	assert.Equal(t, exitInput, code)
	assert.Contains(t, err, "profiles.yaml")
}

// One question has one answer: how long a tub stays out is the same sentence in
// evaluate, in the steps and in the cold.
func TestHowLongATubStaysOutIsSaidAlike(t *testing.T) {
	k := newKitchen(t)
	demo, err := os.ReadFile("../../assets/demos/hazelnut.yaml")
	require.NoError(t, err)
	k.file("good.yaml", string(demo))
	line := func(args ...string) string {
		code, out, stderr := k.run("", args...)
		require.Equal(t, exitFine, code, stderr)
		for _, l := range strings.Split(out, "\n") {
			if i := strings.Index(l, "Leave it out "); i >= 0 {
				text, _, _ := strings.Cut(l[i:], ":")
				return text
			}
		}
		return out
	}
	want := line("evaluate", "good.yaml")
	assert.Regexp(t, `^Leave it out \d+ (to \d+ )?min$`, want)
	assert.Equal(t, want, line("process", "good.yaml"))
}
