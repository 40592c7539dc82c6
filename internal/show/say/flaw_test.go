package say_test

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/form/flaw"
	"ripplewright/internal/show/say"
	"ripplewright/internal/show/tongue"
	"ripplewright/internal/work/designfile"
)

// told are errors with their German.
var told = []struct {
	err  error
	text string
}{
	{flaw.InLine(3, flaw.At("air_c", flaw.New("%s is not a number", `"hot"`))), `Zeile 3: air_c: "hot" ist keine Zahl`},
	{flaw.New("a list is expected here, not a %s", flaw.Word("group of keys")), "hier wird eine Liste erwartet, nicht: Gruppe von Schlüsseln"},
	{flaw.New("reading the design: %v", &fs.PathError{Op: "open", Path: "quay.yaml", Err: errors.New("permission denied")}), "Entwurf lesen: Öffnen von quay.yaml: keine Berechtigung"},
	{errors.Join(flaw.New("is empty"), flaw.New("is given twice")), "ist leer\nsteht zweimal da"},
	{errors.New("said elsewhere"), "said elsewhere"},
	{nil, ""},
}

func TestAFlawIsToldInTheLanguage(t *testing.T) {
	for _, c := range told {
		if c.err != nil {
			assert.Equal(t, c.err.Error(), say.Flaw(c.err), "in English it is its own text")
		}
	}
	require.True(t, tongue.Speak("de"))
	t.Cleanup(func() { tongue.Speak(tongue.English) })
	for _, c := range told {
		assert.Equal(t, c.text, say.Flaw(c.err))
	}
	_, err := os.ReadFile(filepath.Join(t.TempDir(), "none"))
	assert.Contains(t, say.Flaw(err), "Datei oder Ordner gibt es nicht")
}

// What is wrong with a file keeps file, line and key in every language.
func TestADesignsErrorsKeepTheirPlacesInEveryLanguage(t *testing.T) {
	_, err := designfile.Decode("quay.yaml", []byte("ripplewright: 1\nname: x\ntubs: {count: 2.5, volume_ml: 10}\nfoame: 1\ndense: []\nfoam: {lines: [{yolks: 2, grams: 3}]}\n"))
	require.Error(t, err)
	require.True(t, tongue.Speak("de"))
	t.Cleanup(func() { tongue.Speak(tongue.English) })
	assert.Equal(t, `quay.yaml:3: tubs.count: 2.5 ist keine ganze Zahl
quay.yaml:3: tubs.volume_ml: 10 mL liegt außerhalb von 30 bis 20000 mL
quay.yaml:4: foame: unbekannter Schlüssel; ist "foam" gemeint?
quay.yaml:5: dense: hier wird eine Gruppe von Schlüsseln erwartet, etwa lines
quay.yaml:6: foam.lines[0]: eine Anzahl yolks bekommt ihre Gramm aus der Eigröße; grams weglassen`, say.Flaw(err))
}
