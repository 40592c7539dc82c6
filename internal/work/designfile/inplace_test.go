package designfile

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/work/design"
)

// spaced has blank lines, comments and aligned columns where a file written
// anew would lose them.
const spaced = `# The stall's own.

ripplewright: 1
name:   Quay          # as on the board

notes: |
  One.
  # not a comment

  Two.

serving:   {temperature_c:  -13}     # cold
dense:

  # the farm's
  lines:
    - {ingredient: milk_whole,  grams:  520}   # warm

    # in two goes
    - ingredient: sugar
      grams: 80      # pale

  stove_loss_percent:  6    # a wide pan
  # to do: weigh it

foam:
  lines: []
  syrup:
    lines:
    - {ingredient: sugar, grams: 180}
    # slowly
    - {ingredient: water, grams: 60}

# the end
`

func TestAllOtherBytesStay(t *testing.T) {
	jam, err := ingredient.FromPack("quay_jam", "Jam", ingredient.Pack{PerG: 100, Carbohydrate: ingredient.Known(60)})
	require.NoError(t, err)
	for name, c := range map[string]struct {
		change   func(design.Design) design.Design
		old, new string
	}{
		"a value": {func(d design.Design) design.Design { d.Serving.TemperatureC = -9.5; return d }, "-13", "-9.5"},
		"a setting of a group in brackets": {func(d design.Design) design.Design { d.Tubs.Count = 9; return d },
			"# cold\n", "# cold\ntubs: {count: 9}\n"},
		"a setting of a group on lines": {func(d design.Design) design.Design { d.Dense.OverrunPercent = 25; return d },
			"# a wide pan\n", "# a wide pan\n  overrun_percent: 25\n"},
		"a setting of a group within": {func(d design.Design) design.Design { d.Foam.Syrup.WeighedG = 214; return d },
			"grams: 60}\n", "grams: 60}\n    weighed_g: 214\n"},
		"a line added": {func(d design.Design) design.Design {
			return d.WithLineAdded(design.SyrupPart, design.Line{Ingredient: "honey", Grams: 5, Note: "a, b"})
		}, "grams: 60}\n", "grams: 60}\n    - {ingredient: honey, grams: 5, note: \"a, b\"}\n"},
		"a line removed": {func(d design.Design) design.Design { return d.WithLineRemoved(design.SyrupPart, 1) },
			"    # slowly\n    - {ingredient: water, grams: 60}\n", ""},
		"lines where none were": {func(d design.Design) design.Design {
			d = d.WithLineAdded(design.FoamPart, design.Line{Ingredient: "egg_white", Grams: 90})
			return d.WithLineAdded(design.FoamPart, design.Line{Ingredient: "salt", Grams: 1})
		}, "  lines: []\n", "  lines:\n    - {ingredient: egg_white, grams: 90}\n    - {ingredient: salt, grams: 1}\n"},
		"a note in brackets": {func(d design.Design) design.Design {
			return d.WithLine(design.DensePart, 0, design.Line{Ingredient: "milk_whole", Grams: 520, Note: "warm"})
		}, "520}", "520, note: warm}"},
		"a note on lines": {func(d design.Design) design.Design {
			return d.WithLine(design.DensePart, 1, design.Line{Ingredient: "sugar", Grams: 80, Note: "pale"})
		}, "# pale\n", "# pale\n      note: pale\n"},
		"another text of several lines": {func(d design.Design) design.Design { d.Notes = "A.\nB."; return d },
			"|\n  One.\n  # not a comment\n\n  Two.\n", "|-\n  A.\n  B.\n"},
		"a key and a line at one place": {func(d design.Design) design.Design {
			d.Foam.Syrup.WeighedG = 214
			return d.WithLineAdded(design.SyrupPart, design.Line{Ingredient: "honey", Grams: 5})
		}, "grams: 60}\n", "grams: 60}\n    - {ingredient: honey, grams: 5}\n    weighed_g: 214\n"},
		"a text of one line": {func(d design.Design) design.Design { d.Notes = "A."; return d },
			"|\n  One.\n  # not a comment\n\n  Two.\n", "A.\n"},
		"an ingredient of one's own": {func(d design.Design) design.Design { d.Own = []*ingredient.Ingredient{jam}; return d },
			"    - {ingredient: water, grams: 60}\n",
			"    - {ingredient: water, grams: 60}\ningredients:\n  - id: quay_jam\n    name: Jam\n    group: own\n    source: own\n    pack:\n      per: 100 g\n      carbohydrate_with_fibre: true\n      carbohydrate: 60\n"},
	} {
		for _, end := range []string{"\n", "\r\n", "\r", "\u0085", "\u2028", "\u2029"} {
			if strings.Contains(c.new, "|-") && len(end) == len("\u2028") {
				continue // within text these are signs of it
			}
			text := strings.ReplaceAll(spaced, "\n", end)
			f, err := Decode("x", []byte(text))
			require.NoError(t, err, "%s, %q", name, end)
			got, err := f.Encode(c.change(f.Design))
			require.NoError(t, err, "%s, %q", name, end)
			require.Contains(t, spaced, c.old)
			want := strings.ReplaceAll(strings.Replace(spaced, c.old, c.new, 1), "\n", end)
			assert.Equal(t, want, string(got), "%s, %q", name, end)
		}
	}
}

func TestALineOfAValueIsNoComment(t *testing.T) {
	text := "ripplewright: 1\ndense: {lines: []}\nfoam: {lines: []}\nnotes: \"one\n  # two\n\n  # three\"\n# end\n"
	f, err := Decode("x", []byte(text))
	require.NoError(t, err)
	d := f.Design
	d.Serving.TemperatureC = -9
	got, err := f.Encode(d)
	require.NoError(t, err)
	assert.Equal(t, strings.Replace(text, "three\"\n", "three\"\nserving: {temperature_c: -9}\n", 1), string(got))
}

func TestACommentBelowATextOfSeveralLinesStays(t *testing.T) {
	text := changed(t, "  Keep the spoon warm.\n", " # Keep it\n")
	f, err := Decode("x", []byte(text))
	require.NoError(t, err)
	d := f.Design
	d.Notes = "Other."
	got, err := f.Encode(d)
	require.NoError(t, err)
	assert.Equal(t, strings.Replace(text, "|\n  Browned at the quay.\n", "Other.\n", 1), string(got))
}

func TestACommentRightBehindQuotesStays(t *testing.T) {
	text := changed(t, "Hazelnut and burnt honey     # as", "'Hazelnut'# as")
	f, err := Decode("x", []byte(text))
	require.NoError(t, err)
	d := f.Design
	d.Name = "Walnut"
	got, err := f.Encode(d)
	require.NoError(t, err)
	assert.Equal(t, strings.Replace(text, "'Hazelnut'", `"Walnut"`, 1), string(got))
}

// A mark in a comment, and ends of lines of several kinds, once cost comments
// when a key was added.
func TestAKeyIsAddedBetweenOddEndsOfLines(t *testing.T) {
	for _, text := range []string{
		changed(t, "last, off the heat", "last, of\ufefff the heat", "allergens_eu: [nuts]\n", "allergens_eu: [nuts]\r\r\n"),
		strings.ReplaceAll(changed(t, "save the whites}\n", "save the whites}\r\r\n\u2028"), "\n    ", "\u2028    "),
	} {
		f, err := Decode("x", []byte(text))
		require.NoError(t, err)
		d := f.Design
		d.Kitchen.AltitudeM = 700
		got, err := f.Encode(d)
		require.NoError(t, err)
		assert.Equal(t, strings.Replace(text, "size: L}\n", "size: L}\nkitchen: {altitude_m: 700}\n", 1), string(got))
	}
}
