package arch

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var (
	// bare is an error in English words alone.
	bare = regexp.MustCompile(`(errors\.New|fmt\.Errorf)\([^\n]*`)
	// untold is the English text of an error.
	untold = regexp.MustCompile(`\b(err|wrong|why|fault|failed|problem)\.Error\(\)|%v[^\n]*, (err|wrong)\)`)
)

// speakFlaws are the floors whose errors a maker may read.
var speakFlaws = []string{"internal/form", "internal/food", "internal/work", "internal/answer", "internal/show", "internal/desk", "ui", "cmd/ripplecalc"}

// mayBeBare are the errors that no maker reads, or that are worded already.
var mayBeBare = map[string]string{
	"internal/form/flaw/":             "errors themselves",
	"internal/form/published/":        "tables of tests and checks",
	"internal/food/ingredient/publi":  "tables of tests and checks",
	"internal/answer/validate/":       "tables of checks",
	"internal/show/tongue/":           "the catalogue itself, which is compiled in",
	"internal/show/draw/":             "our own drawing",
	"internal/desk/rippleview/view":   "say words it",
	"internal/desk/notebook/book":     "say words it",
	"internal/desk/cutphoto/cutphoto": "say words it",
}

// mayBeTold are the places that take an error's English text: to compare it, or for
// those who mend the program.
var mayBeTold = map[string]string{
	"internal/form/flaw/":            "errors themselves",
	"internal/show/say/flaw.go":      "the one that tells errors",
	"internal/form/yamltext/parse":   "the parser's words, in English",
	"cmd/ripplecalc/command.go":      "the flag library's words, of which none is known to come through",
	"cmd/ripplecalc/run.go":          "a fault of ours",
	"ui/":                            "the log of events",
	"internal/desk/":                 "the log of events",
	"internal/work/designfile/encod": "a fault of ours",
	"internal/food/label/vectors":    "tables of checks",
}

// Every error that a maker may read is a flaw, and say tells it: so it is in the
// maker's language.
func TestErrorsAreFlawsAndSayTellsThem(t *testing.T) {
	if testing.Short() {
		t.Skip("one goroutine reads the sources: nothing for the race detector")
	}
	for dir, imports := range everything(t, false) {
		if !within(dir, speakFlaws) {
			continue
		}
		for file := range imports {
			text, err := os.ReadFile(filepath.Join(top, file))
			require.NoError(t, err)
			if !named(file, mayBeBare) {
				assert.Empty(t, bare.FindAllString(string(text), -1), "%s: let it be a flaw", file)
			}
			for _, line := range strings.Split(string(text), "\n") {
				if strings.Contains(line, "event(") || strings.Contains(line, "panic(") || strings.Contains(line, "fail(") || strings.Contains(line, "told(") || strings.Contains(line, "flaw.New(") || strings.Contains(line, "misused(") {
					continue
				}
				if !named(file, mayBeTold) || strings.Contains(line, ".Error()") && within(dir, []string{"ui", "internal/desk"}) {
					assert.NotRegexp(t, untold, line, "%s: let say.Flaw tell it", file)
				}
			}
		}
	}
}

func within(dir string, roots []string) bool {
	for _, r := range roots {
		if dir == r || strings.HasPrefix(dir, r+"/") {
			return true
		}
	}
	return false
}

func named(file string, list map[string]string) bool {
	for head := range list {
		if strings.HasPrefix(file, head) {
			return true
		}
	}
	return false
}
