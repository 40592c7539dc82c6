package main

import (
	"encoding/json"
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
