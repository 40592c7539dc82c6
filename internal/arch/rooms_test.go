package arch

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var quoted = regexp.MustCompile("`([^`]+)`")

// section returns the lines of the table that follows heading in DEVELOPERS.md.
func section(t *testing.T, heading string) []string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(top, "DEVELOPERS.md"))
	require.NoError(t, err)
	_, rest, ok := strings.Cut(string(text), heading+"\n|---|---|\n")
	require.True(t, ok, "DEVELOPERS.md has no table headed %s", heading)
	table, _, _ := strings.Cut(rest, "\n\n")
	return strings.Split(table, "\n")
}

// rooms returns the packages that a row of the table names: by path, by the last
// part of a path of internal, or, with …, by how a path begins and ends.
func rooms(t *testing.T, row string) []string {
	t.Helper()
	first, _, _ := strings.Cut(strings.TrimPrefix(row, "|"), "|")
	var found []string
	for _, m := range quoted.FindAllStringSubmatch(first, -1) {
		before := len(found)
		head, tail, many := strings.Cut(m[1], "…")
		for _, l := range layers {
			switch {
			case many && l.path != head+tail && strings.HasPrefix(l.path, head) && strings.HasSuffix(l.path, tail),
				l.path == m[1], floorOf(l.path) != "" && l.path == "internal/"+floorOf(l.path)+"/"+m[1], l.path == "internal/"+m[1]:
				found = append(found, l.path)
			}
		}
		assert.Greater(t, len(found), before, "DEVELOPERS.md knows a package %s, and the table of layers does not", m[1])
	}
	return found
}

// The table of rooms, the table of layers and the folders tell the same story:
// each package stands in all three, in the rooms once, under its own floor, and
// the floors come in their order.
func TestEveryRoomStandsInTheTableOnceUnderItsFloor(t *testing.T) {
	listing := everything(t, false)
	seen := map[string]int{}
	var headings []string
	floor := ""
	for _, row := range section(t, "| package | what it knows |") {
		if name, ok := strings.CutPrefix(row, "| **"); ok {
			floor, _, _ = strings.Cut(name, "**")
			headings = append(headings, floor)
			continue
		}
		for _, room := range rooms(t, row) {
			seen[room]++
			assert.Contains(t, listing, room, "there is no such folder")
			if of := floorOf(room); of != "" {
				assert.Equal(t, of, floor, "%s stands in the table of rooms on a floor that is not its own", room)
			} else {
				assert.NotContains(t, floors, floor, "%s stands on no floor", room)
			}
		}
	}
	assert.Equal(t, floors, headings[:min(len(floors), len(headings))], "the floors of the table of rooms")
	for _, l := range layers {
		assert.Contains(t, listing, l.path, "the table of layers has a row for what is no folder")
		if strings.HasPrefix(l.path, "cmd/") || l.path == "assets" || strings.HasSuffix(l.path, "/pagetest") {
			continue // said above the table
		}
		assert.Equal(t, 1, seen[l.path], "%s in the table of rooms", l.path)
	}
}

// floorOf returns the floor that a package stands on, "" of none.
func floorOf(path string) string {
	if parts := strings.Split(path, "/"); len(parts) > 2 && parts[0] == "internal" && slices.Contains(floors, parts[1]) {
		return parts[1]
	}
	return ""
}

// Whoever asks where to change something is sent to a place that is there.
func TestWhereToChangeIsAPlace(t *testing.T) {
	for _, row := range section(t, "| … | here |") {
		_, where, _ := strings.Cut(strings.TrimPrefix(row, "|"), "|")
		places := 0
		dir := ""
		for _, m := range quoted.FindAllStringSubmatch(where, -1) {
			name := m[1]
			if !strings.ContainsAny(name, "/.") || strings.ContainsAny(name, " …") || strings.Contains(name, "Default") {
				continue // a word, a command, a name in the code
			}
			found := false
			for _, in := range []string{"", dir, "internal/show", "internal/food", "internal/answer"} {
				path := filepath.Join(top, in, name)
				info, err := os.Stat(path)
				if err != nil {
					continue
				}
				found = true
				if rel := strings.TrimPrefix(filepath.ToSlash(path), top+"/"); info.IsDir() {
					dir = rel
				} else {
					dir = filepath.Dir(rel)
				}
				break
			}
			assert.True(t, found, "%s is nowhere, and is where to change%s", name, row)
			places++
		}
		if !strings.Contains(where, "…") {
			assert.Positive(t, places, "no place in%s", row)
		}
	}
}
