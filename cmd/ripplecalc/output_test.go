package main

import (
	"bytes"
	"os"
	"strings"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestNoAnswerReplacesADesignOrWhatItIsMadeOf(t *testing.T) {
	k := newKitchen(t)
	for _, ending := range []string{".png", ".pdf", ".svg", ".md", ".txt"} {
		for _, link := range []func(string, string) error{os.Symlink, os.Link} {
			out := k.path("out" + ending)
			os.Remove(out)
			require.NoError(t, link(k.path("quay.yaml"), out))
			for _, from := range []string{"quay.yaml", "rosehip.yaml"} {
				for _, words := range [][]string{{"card"}, {"label"}, {"ripple"}, {"label", "--reference", "quay.yaml"}} {
					code, _, err := k.run("", append(words, from, "-o", out)...)
					assert.NotZero(t, code, "%v %s %s", words, from, ending)
					assert.NotEmpty(t, err)
				}
			}
		}
	}
	text, err := os.ReadFile(k.path("quay.yaml"))
	require.NoError(t, err)
	assert.Equal(t, quay, string(text))

	code, _, said := k.run("", "card", "quay.yaml", "-o", k.path("out.md"))
	assert.Equal(t, exitUsage, code)
	assert.Contains(t, said, "is a file that this command reads")
	// A broken design is one as well.
	k.file("broken.yaml", "ripplewright: 1\nname: [\n")
	require.NoError(t, os.Symlink(k.path("broken.yaml"), k.path("cut.png")))
	_, _, said = k.run("", "ripple", "quay.yaml", "-o", k.path("cut.png"))
	assert.Contains(t, said, "holds a design")
}

// full is a disk without room.
type full struct{}

func (full) Write([]byte) (int, error) { return 0, syscall.ENOSPC }

func TestAFullDiskIsNotOurFault(t *testing.T) {
	k := newKitchen(t)
	for _, args := range [][]string{{"evaluate", k.path("quay.yaml"), "--json"}, {"help", "format"}, {"curve", k.path("quay.yaml")}, {"--version"}} {
		var said bytes.Buffer
		code := run(&shell{in: strings.NewReader(""), out: full{}, err: &said}, args)
		assert.Equal(t, exitInput, code)
		assert.Contains(t, said.String(), "no space left")
		assert.NotContains(t, said.String(), "fault")
	}
}

func TestWhatIsNoNumberIsRefused(t *testing.T) {
	k := newKitchen(t)
	for _, args := range []string{"evaluate quay.yaml --at NaN", "evaluate quay.yaml --at -nan", "evaluate quay.yaml --at inf", "curve quay.yaml --from nan", "curve quay.yaml --step inf",
		"card quay.yaml -o x.png --dpi nan"} {
		code, _, _ := k.run("", strings.Fields(args)...)
		assert.Equal(t, exitUsage, code, args)
	}
}

func TestAllErrorsOfAFileComeAtOnce(t *testing.T) {
	k := newKitchen(t)
	k.file("both.yaml", strings.Replace(strings.Replace(quay, "milk_whole", "milk_whloe", 1), "foam:", "  overrun_percent: 400\nfoam:", 1))
	for _, command := range []string{"check", "evaluate"} {
		code, _, said := k.run("", command, "both.yaml")
		assert.Equal(t, exitInput, code)
		assert.Contains(t, said, "milk_whloe")
		assert.Contains(t, said, "overrun_percent: 400")
	}
}
