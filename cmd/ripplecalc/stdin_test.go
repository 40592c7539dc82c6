package main

import (
	checks "ripplewright/internal/check"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Every command that takes the file of a design takes - for it, and answers as for the
// file; what is kept beside a file has no place beside standard input, and says so.
func TestEveryCommandReadsADesignFromStandardInput(t *testing.T) {
	checks.Long(t)
	k := newKitchen(t)
	k.file("warmer.yaml", strings.Replace(quay, "temperature_c: -12", "temperature_c: -11", 1))
	more := map[string][]string{"card": {"-o", k.path("card.pdf")}, "plan": {"--serve-at", "2026-11-28T18:00:00+01:00"}, "diff": {"warmer.yaml"}, "compare": {"warmer.yaml"}}
	for _, c := range commands() {
		switch c.name {
		case "start", "validate", "ingredients", "schema", "completion", "man", "help", "photo": // they take none, or a picture beside it
			continue
		case "version", "batch":
			code, _, errs := k.run(quay, c.name, "list", "-")
			assert.Equal(t, exitUsage, code, c.name)
			assert.Contains(t, errs, "standard input", c.name)
			continue
		case "lines":
			code, out, errs := k.run("100 g sugar\n", "lines", "-")
			require.Equal(t, exitFine, code, errs)
			assert.Contains(t, out, `"ingredient":"sugar"`)
			continue
		}
		wantCode, want, errs := k.run("", append([]string{c.name, "quay.yaml"}, more[c.name]...)...)
		require.Less(t, wantCode, exitUsage, "%s: %s", c.name, errs)
		code, got, errs := k.run(quay, append([]string{c.name, "-"}, more[c.name]...)...)
		assert.Equal(t, wantCode, code, "%s: %s", c.name, errs)
		assert.Equal(t, unnamed(want), unnamed(got), c.name)
	}
}

// unnamed is an answer without the lines that name its file, and what underlines them.
func unnamed(text string) string {
	var kept []string
	for _, line := range strings.Split(text, "\n") {
		if line = strings.Join(strings.Fields(line), " "); !strings.Contains(line, ".yaml") && !strings.Contains(line, "(-)") && !strings.Contains(line, "standard input") && strings.Trim(line, "-= ") != "" && !strings.HasPrefix(line, "-:") && line != "-" {
			kept = append(kept, line)
		}
	}
	return strings.Join(kept, "\n")
}
