package batch_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/check/market"
	"ripplewright/internal/work/batch"
	"ripplewright/internal/work/design"
)

// full is a batch with something in every entry.
func full(t *testing.T) batch.Batch {
	b := batch.Batch{}
	for i, f := range batch.Entries() {
		word := map[string]string{"batch": "quay-1", "when": "2026-11-28 09:40", "version": "00ff", "made": "2026-11-28",
			"best_before": "2027-02-26", "weighed": "dense sucrose 118 g; foam.syrup sucrose 200.5 g", "custard.stirs_min": "30; 60.5",
			"photographs": "cut 1.jpg; ../b.png", "words": "Windy.\n---\n...\n\"quoted\" # no comment", "off": "ice"}[f.Path]
		switch {
		case word != "":
		case f.Choices != nil:
			word = f.Choices[i%len(f.Choices)]
		case f.Unit != "":
			word = "100"
			if f.Max < 100 {
				word = "-5"
			}
			if f.Max < 100 && f.Min > -5 {
				word = "20"
			}
		default:
			word = "L26332"
		}
		require.Empty(t, f.Set(&b, word), f.Path)
		require.NotEmpty(t, f.Text(&b), f.Path)
	}
	path, wrong := b.Problem()
	require.Empty(t, wrong, path)
	return b
}

func TestAFileIsReadAsItWasWritten(t *testing.T) {
	path := filepath.Join(t.TempDir(), "oat.batches.yaml")
	one, two := full(t), batch.Batch{ID: "quay-2", Made: "2026-12-01"}
	require.NoError(t, batch.Append(path, one, nil))
	require.NoError(t, batch.Append(path, two, nil))
	got, err := batch.Load(path)
	require.NoError(t, err)
	one.Off = nil // the file's, no batch's
	want := full(t)
	assert.Equal(t, want.Off, got.Off)
	require.Len(t, got.Batches, 2)
	got.Batches[0].Off = nil
	assert.Equal(t, []batch.Batch{one, two}, got.Batches)
	assert.Empty(t, got.CutOff)
}

func TestALaterEntryAddsToItsBatch(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a.batches.yaml")
	require.NoError(t, batch.Append(path, batch.Batch{ID: "1", Made: "2026-11-28", FreezerC: batch.Of(-18)}, nil))
	require.NoError(t, batch.Append(path, batch.Batch{ID: "2", Made: "2026-11-29"}, nil))
	before, err := os.ReadFile(path)
	require.NoError(t, err)
	require.NoError(t, batch.Append(path, batch.Batch{ID: "1", FreezerC: batch.Of(-17), Ate: batch.Ate{Icy: "smooth"}}, nil))
	after, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.True(t, strings.HasPrefix(string(after), string(before)), "nothing is rewritten")
	n, err := batch.Load(path)
	require.NoError(t, err)
	require.Len(t, n.Batches, 2)
	assert.Equal(t, batch.Batch{ID: "1", Made: "2026-11-28", FreezerC: batch.Of(-17), Ate: batch.Ate{Icy: "smooth"}}, n.Batches[0])
}

func TestOffHoldsUntilItIsSaidOtherwise(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a.batches.yaml")
	for _, c := range []struct{ off, want []string }{
		{[]string{"ice", "hardness"}, []string{"ice", "hardness"}}, {nil, []string{"ice", "hardness"}}, {[]string{batch.Nothing}, nil},
	} {
		require.NoError(t, batch.Append(path, batch.Batch{ID: "learning", Off: c.off}, nil))
		n, err := batch.Load(path)
		require.NoError(t, err)
		assert.Equal(t, c.want, n.Off)
		assert.Empty(t, n.Batches, "a switch is no batch")
	}
}

// Wherever a power cut ends the last entry, the others are read, the torn one is told
// of, and what is added later is read too.
func TestATornEntryIsToldOfAndKept(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "a.batches.yaml")
	require.NoError(t, batch.Append(path, batch.Batch{ID: "whole", Made: "2026-11-28"}, nil))
	first, err := os.ReadFile(path)
	require.NoError(t, err)
	require.NoError(t, batch.Append(path, batch.Batch{ID: "torn", FreezerC: batch.Of(-18.25), Words: "wörds"}, nil))
	both, err := os.ReadFile(path)
	require.NoError(t, err)
	for n := len(first) + 1; n < len(both)-1; n++ {
		torn := string(both[:n])
		require.NoError(t, os.WriteFile(path, []byte(torn), 0o644))
		got, err := batch.Load(path)
		require.NoError(t, err, "%q", torn)
		assert.Len(t, got.Batches, 1)
		assert.Equal(t, []int{strings.Count(string(first), "\n") + 1}, got.CutOff)

		require.NoError(t, batch.Append(path, batch.Batch{ID: "next", Made: "2026-11-30"}, nil))
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		assert.True(t, strings.HasPrefix(string(text), torn), "kept")
		got, err = batch.Load(path)
		require.NoError(t, err)
		require.Len(t, got.Batches, 2)
		assert.Equal(t, "next", got.Batches[1].ID)
		assert.Len(t, got.CutOff, 1)
	}
}

func TestWhatIsWrongIsToldByFileLineAndKey(t *testing.T) {
	for text, want := range map[string]string{
		"---\nbatch: a\nfreezer: -18\n...\n":                 "b.yaml:3: freezer: is no setting",
		"---\nbatch: a\nfreezer_c: cold\n...\n":              `b.yaml:3: freezer_c: "cold" is not a number`,
		"---\nbatch: a\nmade: 2026-11-28\nroom_c: 99\n...\n": "b.yaml:4: room_c: 99 °C is outside 5 to 45 °C",
		"---\nbatch: a\nmade: yesterday\n...\n":              "b.yaml:3: made: \"yesterday\" is not a date such as 2006-01-02",
		"---\nmade: 2026-11-28\n...\n":                       "b.yaml:2: batch: must be there: it says which batch this is",
		"---\nbatch: a\nate: {icy: very}\n...\n":             `b.yaml:3: ate.icy: "very" is not one of fine, smooth, slightly coarse, icy`,
		"---\nbatch: a\nweighed: [cream 3]\n...\n":           `b.yaml:3: weighed: "cream 3" is not a part, an ingredient and grams, as in dense sucrose 118 g`,
		"---\nbatch: a\n---\nbatch: b\n...\n":                "b.yaml:1: the entry does not end with a line of three dots",
		"batch: a\n":                                         "b.yaml:1: an entry begins with a line of three dashes",
		"---\nbatch: &x a\nwords: *x\n...\n":                 "b.yaml:2: names with & and * are not read here",
		"---\nbatch: a\nbatch: b\n...\n":                     "b.yaml:3: batch: is given twice",
		"---\nbatch: [a\n...\n":                              "b.yaml:2: ",
		"---\n...\n":                                         "b.yaml:1: the entry is empty",
		"---\nbatch: a\ncustard: {stirs_min: [soon]}\n...\n": `b.yaml:3: custard.stirs_min: "soon" is not a number of minutes from 0 to 6000`,
	} {
		_, err := batch.Decode("b.yaml", []byte(text))
		var wrong *batch.FileError
		require.ErrorAs(t, err, &wrong, text)
		assert.True(t, strings.HasPrefix(err.Error(), want), "%q: %v", text, err)
	}
}

func TestAVersionIsOfWhatTheDesignSays(t *testing.T) {
	d := market.Plain()
	was := batch.VersionOf(&d)
	assert.Regexp(t, "^[0-9a-f]{12}$", was)
	d.Notes = "a note"
	assert.Equal(t, was, batch.VersionOf(&d))
	seen := map[string]bool{was: true}
	for _, change := range []func(*design.Design){
		func(d *design.Design) { d.Serving.TemperatureC++ },
		func(d *design.Design) { *d = d.WithGrams(design.DensePart, 0, 1234) },
		func(d *design.Design) { *d = d.WithLineMoved(design.DensePart, 0, 1) },
	} {
		c := d
		change(&c)
		v := batch.VersionOf(&c)
		assert.False(t, seen[v])
		seen[v] = true
	}
}

func TestASyrupIsWeighedLessItsPan(t *testing.T) {
	assert.Equal(t, batch.Of(300), batch.Syrup{WeighedG: batch.Of(800), PanG: batch.Of(500)}.MassG())
	assert.Equal(t, batch.Of(300), batch.Syrup{WeighedG: batch.Of(300), PanG: batch.Of(0)}.MassG())
	assert.False(t, batch.Syrup{WeighedG: batch.Of(800)}.MassG().Known, "nobody knows what the pan weighs")
	assert.False(t, batch.Syrup{WeighedG: batch.Of(300), PanG: batch.Of(800)}.MassG().Known)
}

func TestPathOf(t *testing.T) {
	assert.Equal(t, filepath.Join("a", "quay.batches.yaml"), batch.PathOf(filepath.Join("a", "quay.yaml")))
}
