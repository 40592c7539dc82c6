package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/emersion/go-ical"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The calendar is read back by another library than the one that wrote it.
func TestThePlansCalendarIsReadByAnother(t *testing.T) {
	out := filepath.Join(t.TempDir(), "day.ics")
	code, stdout, stderr := newKitchen(t).run("", "plan", "quay.yaml", "--serve-at", "2026-11-29T15:00:00+01:00", "-o", out)
	require.Equal(t, exitFine, code, stdout+stderr)
	f, err := os.Open(out)
	require.NoError(t, err)
	defer f.Close()
	c, err := ical.NewDecoder(f).Decode()
	require.NoError(t, err)
	events := c.Events()
	require.Greater(t, len(events), 8)
	serve := time.Date(2026, 11, 29, 14, 0, 0, 0, time.UTC)
	seen := map[string]bool{}
	for _, e := range events {
		id, err := e.Props.Text(ical.PropUID)
		require.NoError(t, err)
		assert.False(t, seen[id], id)
		seen[id] = true
		from, err := e.DateTimeStart(time.UTC)
		require.NoError(t, err)
		to, err := e.DateTimeEnd(time.UTC)
		require.NoError(t, err)
		assert.False(t, to.Before(from))
		assert.False(t, to.After(serve))
	}
}

func TestAPlanFromBothEnds(t *testing.T) {
	for _, flag := range []string{"--serve-at", "--start-at"} {
		code, stdout, stderr := newKitchen(t).run("", "plan", "quay.yaml", flag, "2026-11-28T09:30:00Z", "--json")
		require.Equal(t, exitFine, code, stderr)
		var day struct {
			Begins, Serves time.Time
			Tasks          []struct {
				Code         string
				Begins, Ends time.Time
			}
		}
		require.NoError(t, json.Unmarshal([]byte(stdout), &day))
		asked := time.Date(2026, 11, 28, 9, 30, 0, 0, time.UTC)
		if flag == "--serve-at" {
			assert.False(t, day.Serves.After(asked))
		} else {
			assert.False(t, day.Begins.Before(asked))
		}
		assert.NotEmpty(t, day.Tasks)
	}
}

func TestAPlanWantsOneTime(t *testing.T) {
	for _, args := range [][]string{
		{"plan", "quay.yaml"},
		{"plan", "quay.yaml", "--serve-at", "Sunday"},
		{"plan", "quay.yaml", "--serve-at", "2026-11-29T15:00:00Z", "--start-at", "2026-11-28T15:00:00Z"},
		{"plan", "quay.yaml", "--serve-at", "2026-11-29T15:00:00Z", "-o", "day.pdf"},
	} {
		code, _, _ := newKitchen(t).run("", args...)
		assert.Equal(t, exitUsage, code, args)
	}
}
