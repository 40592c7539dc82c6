package main

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	checks "ripplewright/internal/check"
)

func TestCardsAndLabelsAreWhatTheirEndingSays(t *testing.T) {
	checks.Long(t)
	begins := map[string]string{".pdf": "%PDF-", ".png": "\x89PNG", ".svg": "<?xml", ".md": "# ", ".txt": ""}
	k := newKitchen(t)
	for command, endings := range map[string][]string{"card": {".pdf", ".png", ".svg", ".md"}, "label": {".pdf", ".png", ".svg", ".txt"}} {
		for _, ending := range endings {
			to := filepath.Join(k.dir, command+ending)
			code, out, err := k.run("", command, "quay.yaml", "-o", to, "--region", "eu")
			require.Equal(t, exitFine, code, "%s %s: %s", command, ending, err)
			assert.Empty(t, out)
			data, readErr := os.ReadFile(to)
			require.NoError(t, readErr)
			assert.True(t, bytes.HasPrefix(data, []byte(begins[ending])), "%s begins %.10q", to, data)
		}
	}
}

// 21 CFR 101.9(b)(12)(i): the container decides; the program refuses the rest
// and says why.
func TestLabelFormsFollowTheContainer(t *testing.T) {
	k := newKitchen(t)
	to := filepath.Join(k.dir, "label.png")
	for _, c := range []struct {
		form string
		code int
		says string
	}{
		{"vertical", exitInput, "second column per container"}, // 475 mL to a tub, 297 % of the reference amount
		{"tabular", exitInput, "second column per container"},
		{"dual", exitFine, ""},
		{"round", exitUsage, "vertical, tabular, dual"},
	} {
		code, _, err := k.run("", "label", "quay.yaml", "-o", to, "--form", c.form)
		assert.Equal(t, c.code, code, "%s: %s", c.form, err)
		assert.Contains(t, err, c.says)
	}
	code, _, _ := k.run("", "label", "quay.yaml", "--form", "dual")
	assert.Equal(t, exitUsage, code, "a form is about a drawing")
}

func TestLettersThatCardAndLabelLackAreNamedWithTheirLine(t *testing.T) {
	checks.Long(t)
	k := newKitchen(t)
	k.file("yuzu.yaml", quay+"ingredients: [{id: sugar, name: sugar, common_name: 柚子}]\n")
	for command, endings := range map[string][]string{"card": {".pdf", ".png", ".svg", ".md"}, "label": {".pdf", ".png", ".svg", ".txt"}} {
		for _, ending := range endings {
			to := filepath.Join(k.dir, command+ending)
			code, _, err := k.run("", command, "yuzu.yaml", "-o", to)
			require.Equal(t, exitFine, code, err)
			assert.FileExists(t, to)
			if ending == ".md" || ending == ".txt" {
				assert.NotContains(t, err, "□", "text has every letter")
			} else {
				assert.Contains(t, err, "yuzu.yaml:18: ingredients[0].common_name: the fonts of cards and labels lack “柚子” (U+67DA, U+5B50): □ stands in their place\n")
			}
		}
	}
}
