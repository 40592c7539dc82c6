package batch_test

import (
	"errors"
	"flag"
	"math/rand"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/work/batch"
)

var mutants = flag.Int("mutants", 1500, "how many mutated files of batches are read; the bar is 20000")

// written is a file of two batches as text.
func written(t testing.TB, b batch.Batch) string {
	one, err := batch.Encode(b)
	require.NoError(t, err)
	two, err := batch.Encode(batch.Batch{ID: "b2", Made: "2026-12-01", Ate: batch.Ate{Hardness: "soft"}})
	require.NoError(t, err)
	return "# ours\n" + string(one) + string(two)
}

// holds wants of any text a notebook that can be written again, or an error that names
// the file.
func holds(t testing.TB, text []byte) {
	n, err := batch.Decode("m.yaml", text)
	if err != nil {
		var wrong *batch.FileError
		if !errors.As(err, &wrong) || !strings.HasPrefix(err.Error(), "m.yaml") {
			t.Fatalf("%q: %v", text, err)
		}
		return
	}
	for _, b := range n.Batches {
		b.Off = nil
		again, err := batch.Encode(b)
		if err != nil && strings.Contains(err.Error(), "longer than") {
			continue // put together from many entries
		}
		require.NoError(t, err, "%q", text)
		got, err := batch.Decode("m.yaml", again)
		require.NoError(t, err, "%q", again)
		require.Equal(t, []batch.Batch{b}, got.Batches, "%q", text)
	}
}

func TestMutantsAreReadOrRefused(t *testing.T) {
	text := written(t, full(t))
	lines := strings.SplitAfter(text, "\n")
	r := rand.New(rand.NewSource(15))
	bits := []string{"---\n", "...\n", "# cut off\n", "\x00", "\xff", "\u2028", "\r", "&a ", "*a", "- ", "{", "]", "~", "1e999", "-", ": ", "\n", "\t", "!!binary ", "\u202e"}
	for range *mutants {
		m := append([]string{}, lines...)
		for range 1 + r.Intn(3) {
			i, j := r.Intn(len(m)), r.Intn(len(m))
			switch at := r.Intn(len(m[i]) + 1); r.Intn(6) {
			case 0:
				m[i] = m[j]
			case 1:
				m[i] += m[j]
			case 2:
				m[i] = ""
			case 3:
				m[i] = m[i][:at] + bits[r.Intn(len(bits))] + m[i][at:]
			case 4:
				m[i] = m[i][:at]
			case 5:
				if b := []byte(m[i]); at < len(b) {
					b[at] ^= 1 << r.Intn(8)
					m[i] = string(b)
				}
			}
		}
		holds(t, []byte(strings.Join(m, "")))
	}
}

func TestFilesAreBounded(t *testing.T) {
	for name, text := range map[string]string{
		"long":  strings.Repeat("x", batch.MaxSize+1),
		"many":  strings.Repeat("---\nbatch: a\n...\n", batch.MaxEntries+1),
		"wide":  "---\nbatch: a\nwords: " + strings.Repeat("w", batch.MaxEntry) + "\n...\n",
		"words": "---\nbatch: a\nwords: " + strings.Repeat("w", batch.MaxWords+1) + "\n...\n",
		"deep":  "---\nbatch: " + strings.Repeat("[", 5000) + "\n...\n",
		"list":  "---\nbatch: a\nphotographs: [" + strings.Repeat("a,", batch.MaxListed+1) + "]\n...\n",
	} {
		_, err := batch.Decode("m.yaml", []byte(text))
		assert.Error(t, err, name)
	}
}

func FuzzDecode(f *testing.F) {
	f.Add([]byte("---\nbatch: a\nfreezer_c: -18\n...\n---\nbatch: a\noff: [ice]\n..."))
	f.Add([]byte("---\nbatch: a\nate: {icy: fine}\n# cut off\n...\n"))
	f.Fuzz(func(t *testing.T, text []byte) { holds(t, text) })
}
