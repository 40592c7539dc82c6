package ui

import (
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/check/astray"
	"ripplewright/internal/desk/places"
	"ripplewright/internal/food/label"
	"ripplewright/internal/show/say"
	"ripplewright/internal/show/tongue"
	"ripplewright/internal/work/design"
)

// sourced are the words of laws and of records' sources in the library.
var sourced = regexp.MustCompile(`^(Genannt|Vereinigte Staaten|Europäische Union[^:]*): |absent by nature of the food|^constants fitted to|^TEIL ZUTAT`)

// printed are what a label prints as the law or a standard has it: its panel, statements,
// lists and proposed name, in the language of the label, and the names of foods and claims
// after the mark that says whether they are met.
var printed = regexp.MustCompile(`^(Ingredients|Contains): .*|^\*The % Daily Value .*|^(?:less than 1g|per serving|Cholesterol|Sodium|Protein|Iron|Potassium)$|(^Ein wahrheitsgemäßer Name, englisch: ).*| — .*$|Code for Edible Ices|“[^”]*”|"[^"]*"`)

// inGerman speaks German for the length of a test.
func inGerman(t *testing.T) {
	require.True(t, speak("de"))
	t.Cleanup(func() { speak(tongue.English) })
}

// englishIn are the texts in sight that are English, but for the maker's own words
// and those of records' sources.
func (b *bed) englishIn(in fyne.CanvasObject) (out []string) {
	d := b.Design()
	own := append([]string{d.Name, d.Notes}, strings.Split(d.Notes, "\n")...)
	for _, p := range design.Parts {
		for _, l := range d.Lines(p) {
			own = append(own, l.Note)
		}
	}
	for _, in := range b.library().All() {
		own = append(own, in.Name)
	}
	for _, k := range cold.BuiltIn() {
		own = append(own, k.Name, k.About) // as its file has them, to be changed
	}
	for _, s := range label.Standards { // rules' names, which no translation has
		own = append(own, say.StandardName(s.ID))
	}
	begun := func(text string) bool { // a name or a note that is cut short or goes on below
		text = strings.TrimSuffix(strings.TrimSpace(text), "…")
		return slices.ContainsFunc(own, func(all string) bool {
			all = strings.Join(strings.Fields(all), " ")
			return text != "" && strings.HasSuffix(all, " "+text) || len(text) > 8 && strings.Contains(all, text)
		})
	}
	for _, text := range textsIn(in) {
		text = printed.ReplaceAllString(text, "$2")
		if !published.MatchString(text) && !sourced.MatchString(text) && !begun(text) && len(astray.English(text, own...)) > 0 {
			out = append(out, text)
		}
	}
	return out
}

// No text of a page is English where German is spoken.
func TestEveryPageSpeaksGerman(t *testing.T) {
	b := newBed(t)
	inGerman(t)
	b.inUnits(astray.Systems["comma"])
	for p := places.Place(0); int(p) < places.Count; p++ {
		object := b.standAt(p)
		for begun := time.Now(); time.Since(begun) < 700*time.Millisecond; time.Sleep(20 * time.Millisecond) {
			b.frame()
		}
		assert.Empty(t, b.englishIn(object), p.Name())
	}
}

// Nor is one of a dialog.
func TestEveryDialogSpeaksGerman(t *testing.T) {
	b := newBed(t)
	inGerman(t)
	b.inUnits(astray.Systems["comma"])
	seen := map[string]bool{}
	b.openAll(func(from string) {
		canvas := b.win.Canvas()
		for n := 0; canvas.Overlays().Top() != nil && n < 9; n++ {
			top := canvas.Overlays().Top()
			b.frame()
			assert.Empty(t, b.englishIn(top), "in a dialog from %s", from)
			seen[from] = true
			canvas.Overlays().Remove(top)
			b.frame()
		}
	})
	assert.GreaterOrEqual(t, len(seen), 25)
}

// The toolkit's dialog of files speaks German too, its places as well as what it can be told
// in words of ours, whatever the system's language is.
func TestTheDialogOfFilesSpeaksGerman(t *testing.T) {
	for _, locale := range []string{"en_GB.UTF-8", "de_AT.UTF-8", "fr_FR.UTF-8", "C", ""} {
		b := newBed(t)
		for _, name := range []string{"LC_ALL", "LC_MESSAGES", "LANGUAGE"} {
			t.Setenv(name, "")
		}
		t.Setenv("LANG", locale)
		inGerman(t)
		b.openDialog()
		b.frame()
		assert.Subset(t, textsIn(b.win.Canvas().Overlays().Top()), []string{"Öffnen", "Abbrechen", "Eigene Dateien", "(Ordner darüber)"}, locale)
		assert.Equal(t, "Versteckte Dateien zeigen", lang.L("Show Hidden Files"), locale)
	}
}

func TestANewDesignIsNamedInTheMakersLanguage(t *testing.T) {
	b := newBed(t)
	inGerman(t)
	b.startNew()
	assert.Equal(t, "Ohne Namen", b.Design().Name)
}

// The toolkit has no tables: their rows are told as a list.
func TestATableOfSourcesIsShownAsAList(t *testing.T) {
	assert.Equal(t, "Each row:\n\n- **USDA** 180 · a `record`\n- **own** a maker's\n\nTerms", untabled("Each row:\n\n| source | rows | dataset |\n|---|---|---|\n| USDA | 180 | a `record` |\n| own | | a maker's |\n\nTerms"))
}
