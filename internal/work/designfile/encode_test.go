package designfile

import (
	"bytes"
	"math"
	"math/rand"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/work/design"
)

func hazelnut(t testing.TB) *File {
	t.Helper()
	f, err := Decode("hazelnut.yaml", readTestFile(t, "hazelnut.yaml"))
	require.NoError(t, err)
	return f
}

// changed returns hazelnut.yaml with each old text replaced by the new one
// behind it.
func changed(t testing.TB, oldNew ...string) string {
	t.Helper()
	text := string(readTestFile(t, "hazelnut.yaml"))
	for i := 0; i < len(oldNew); i += 2 {
		require.Contains(t, text, oldNew[i])
		text = strings.Replace(text, oldNew[i], oldNew[i+1], 1)
	}
	return text
}

func TestAnUnchangedDesignIsWrittenByteForByte(t *testing.T) {
	f := hazelnut(t)
	got, err := f.Encode(f.Design)
	require.NoError(t, err)
	assert.Equal(t, string(readTestFile(t, "hazelnut.yaml")), string(got))
}

func TestChangedValuesChangeNothingElse(t *testing.T) {
	f := hazelnut(t)
	d := f.Design.WithGrams(design.DensePart, 0, 532.1)
	d.Serving.TemperatureC = -14.5
	d.Name = "Hazelnut: burnt"
	d.Batch.Basis = design.BasisTubs
	d.Foam.OverrunPercent = 280
	d.Dense.Lines[1].Note = "save the whites, please"
	got, err := f.Encode(d)
	require.NoError(t, err)
	assert.Equal(t, changed(t,
		"grams: 520}", "grams: 532.1}", "-13", "-14.5", "Hazelnut and burnt honey", `"Hazelnut: burnt"`,
		"overrun_percent: 300", "overrun_percent: 280", "note: save the whites", `note: "save the whites, please"`,
	), string(got))
}

func TestValuesChangeInPlaceUnderWindowsLineEnds(t *testing.T) {
	text := "\xef\xbb\xbf" + strings.ReplaceAll(changed(t), "\n", "\r\n")
	f, err := Decode("x", []byte(text))
	require.NoError(t, err)
	got, err := f.Encode(f.Design.WithGrams(design.SyrupPart, 0, 200))
	require.NoError(t, err)
	assert.Equal(t, strings.Replace(text, "grams: 180", "grams: 200", 1), string(got))

	got, err = f.Encode(f.Design.WithLineRemoved(design.SyrupPart, 1))
	require.NoError(t, err)
	assert.NotContains(t, strings.ReplaceAll(string(got), "\r\n", ""), "\n")
}

// tight closes up the spaces before a comment, which a rewritten tree does
// not keep.
func tight(s string) string {
	for strings.Contains(s, "  #") && strings.Contains(s, "}  ") {
		s = strings.ReplaceAll(s, "}  ", "} ")
	}
	return strings.ReplaceAll(s, "honey     #", "honey #")
}

func TestCommentsStayWithTheLinesThatRemain(t *testing.T) {
	f := hazelnut(t)
	const milk = "    - {ingredient: milk_whole, grams: 520}    # from the farm on the hill\n"
	const yolks = "    - {yolks: 6, note: save the whites}\n"
	const paste = "    # paste last, off the heat\n    - {ingredient: hazelnut_paste_quay, grams: 80.5}\n"
	const salt = "    - {ingredient: salt, grams: 1.5}\n"
	for name, c := range map[string]struct {
		to   design.Design
		want string
	}{
		"added":        {f.Design.WithLineAdded(design.DensePart, design.Line{Ingredient: "salt", Grams: 1.5}), milk + yolks + paste + salt},
		"removed":      {f.Design.WithLineRemoved(design.DensePart, 1), milk + paste},
		"moved":        {f.Design.WithLineMoved(design.DensePart, 2, 0), paste + milk + yolks},
		"moved, other": {f.Design.WithLineMoved(design.DensePart, 0, 2).WithGrams(design.DensePart, 2, 500), yolks + paste + strings.Replace(milk, "520", "500", 1)},
		"weighed": {f.Design.WithGrams(design.DensePart, 1, 102),
			milk + "    - {note: save the whites, ingredient: egg_yolk, grams: 102}\n" + paste},
		"replaced": {f.Design.WithLine(design.DensePart, 2, design.Line{Ingredient: "salt", Grams: 1.5, Note: "x"}),
			milk + yolks + strings.Replace(paste, "hazelnut_paste_quay, grams: 80.5", "salt, grams: 1.5, note: x", 1)},
	} {
		got, err := f.Encode(c.to)
		require.NoError(t, err)
		want := changed(t, milk+yolks+paste, c.want)
		if strings.Contains("moved, other; weighed", name) {
			want = tight(want)
		}
		assert.Equal(t, want, string(got), name)
	}
}

func TestKeysAreAddedOnlyForWhatIsNotTheDefault(t *testing.T) {
	f := hazelnut(t)
	d := f.Design
	d.Blend.Seed = 7
	d.Kitchen = design.Kitchen{AltitudeM: 1200, Profile: "market hall"}
	d.Foam.Syrup.WeighedG = 214.5
	got, err := f.Encode(d)
	require.NoError(t, err)
	assert.Equal(t, changed(t,
		"strokes: 12}", "strokes: 12, seed: 7}",
		"size: L}\n", "size: L}\nkitchen: {altitude_m: 1200, profile: market hall}\n",
		"grams: 60}\n", "grams: 60}\n    weighed_g: 214.5\n"), string(got))
}

func TestTextIsQuotedWhereItMustBe(t *testing.T) {
	f := hazelnut(t)
	for _, name := range []string{"12", "true", "null", "~", "a: b", "a #b", " a ", "- a", "{a}", "2020-01-01", "caf\u00e9", "a\tb", "a\nb",
		"\"", "'", "\\", "=", "<<", "0x10", "\u2028", "\ufeff", "\x01", "😀", "yes", "a\n  b\n", "\n\na", "a \nb", "a\r\nb", "...", "---", "%a", "@a"} {
		for _, file := range []*File{f, {}} {
			d := f.Design
			d.Name, d.Notes, d.Label.Portion = "n"+name, name, name
			d = d.WithLineAdded(design.DensePart, design.Line{Ingredient: "sugar", Note: name})
			text, err := file.Encode(d)
			require.NoError(t, err, "%q", name)
			got, err := Decode("x", text)
			require.NoError(t, err, "%q\n%s", name, text)
			require.True(t, got.Design.Equal(d), "%q\n%s", name, text)
			if file.raw != nil {
				assert.Contains(t, string(text), "# printed on the jar", "%q", name)
			}
		}
	}
}

func TestNotesAreWrittenInLines(t *testing.T) {
	d := design.New()
	d.Notes = "Browned at the quay.\nKeep the spoon warm."
	text, err := (&File{}).Encode(d)
	require.NoError(t, err)
	assert.Contains(t, string(text), "notes: |-\n  Browned at the quay.\n  Keep the spoon warm.\n")
}

func TestNumbersAreWrittenAsPeopleWriteThem(t *testing.T) {
	for v, want := range map[float64]string{520: "520", 0.1: "0.1", -13: "-13", 1e6: "1000000", 1e-7: "0.0000001",
		math.Copysign(0, -1): "0", 80.25: "80.25"} {
		assert.Equal(t, value{want, true}, numberValue(v))
	}
}

func TestANewDesignIsWrittenAsTheExampleIs(t *testing.T) {
	f, err := Decode("example", []byte(example))
	require.NoError(t, err)
	text, err := (&File{}).Encode(f.Design)
	require.NoError(t, err)
	assert.Equal(t, strings.Replace(example, "       # from Saltmarsh Quay, a stall we made up", "", 1), string(text))

	text, err = (*File).Encode(&File{}, design.New())
	require.NoError(t, err)
	assert.Equal(t, skeleton, string(text))
}

func TestAChangedOwnIngredientKeepsItsComments(t *testing.T) {
	f := hazelnut(t)
	d := f.Design
	paste := *d.Own[0]
	paste.Name = "Paste of roasted hazelnuts"
	d.Own = []*ingredient.Ingredient{&paste}
	text, err := f.Encode(d)
	require.NoError(t, err)
	for _, kept := range []string{"# What the pack says.", "# printed on the jar", "name: Paste of roasted hazelnuts\n", "# The end.", "# paste last"} {
		assert.Contains(t, string(text), kept)
	}
	got, err := Decode("x", text)
	require.NoError(t, err)
	assert.True(t, got.Design.Equal(d))

	d.Own = nil
	text, err = f.Encode(d)
	require.NoError(t, err)
	assert.Contains(t, string(text), "ingredients: []")
}

func TestADesignThatCouldNotBeOpenedIsNotWritten(t *testing.T) {
	d := design.New().WithLineAdded(design.FoamPart, design.Line{Ingredient: "sugar", Grams: math.NaN()})
	_, err := (&File{Name: "x.yaml"}).Encode(d)
	var e *Error
	require.ErrorAs(t, err, &e)
	assert.EqualError(t, err, "x.yaml: foam.lines[0].grams: must be a finite number")
}

// random returns a valid design that uses every setting.
func random(r *rand.Rand) design.Design {
	d := design.New()
	for _, f := range design.Fields() {
		if r.Intn(3) == 0 {
			continue
		}
		switch p := f.At(&d).(type) {
		case *float64:
			*p = math.Round((f.Min+r.Float64()*(f.Max-f.Min))*10) / 10
			if r.Intn(4) == 0 {
				*p = f.Min + r.Float64()*(f.Max-f.Min)
			}
			*p = math.Min(math.Max(*p, f.Min), f.Max)
		case *int:
			*p = int(f.Min) + r.Intn(int(f.Max-f.Min)+1)
		case *int64:
			*p = int64(r.Uint64())
		case *string:
			switch {
			case f.Choices != nil:
				*p = f.Choices[r.Intn(len(f.Choices))]
			case f.Path == "eggs.size": // follows from the system, below
			case f.Path == "label.durability":
				*p = []string{"90d", "6m", "18m"}[r.Intn(3)]
			case f.Format == "#rrggbb":
				*p = []string{"#a0b1C2", "#000000", "#123456"}[r.Intn(3)]
			default:
				*p = "n" + randomText(r)
			}
		}
	}
	d.Eggs.Size = map[string]string{"US": "extra large", "EU": "M"}[d.Eggs.System]
	for _, part := range []design.Part{design.DensePart, design.FoamPart, design.SyrupPart} {
		for n := r.Intn(5); n > 0; n-- {
			l := design.Line{Ingredient: []string{"sugar", "milk_whole", "null", "12", "sea salt"}[r.Intn(5)], Grams: float64(r.Intn(10000)) / 10}
			if r.Intn(3) == 0 {
				of := []design.EggPart{design.WholeEggs, design.Yolks, design.Whites}[r.Intn(3)]
				l = design.Line{Ingredient: of.IngredientID(), CountOf: of, Count: float64(r.Intn(20)) / 2}
			}
			if r.Intn(3) == 0 {
				l.Note = randomText(r)
			}
			d = d.WithLineAdded(part, l)
		}
	}
	for i, n := 0, r.Intn(3); i < n; i++ {
		in, err := ingredient.FromPack([]string{"quay_jam", "quay_malt"}[i], "Quay's own", ingredient.Pack{
			PerG: 100, Fat: ingredient.Known(float64(r.Intn(40))), Carbohydrate: ingredient.Known(float64(r.Intn(40)))})
		if err != nil {
			panic(err)
		}
		d.Own = append(d.Own, in)
	}
	return d
}

func randomText(r *rand.Rand) string {
	const signs = "abc  :#-\"'{}[],&*!|>%@\n\t\\é漢😀0."
	runes := []rune(signs)
	text := make([]rune, r.Intn(20))
	for i := range text {
		text[i] = runes[r.Intn(len(runes))]
	}
	return string(text)
}

func TestEveryDesignReadsBackFromAnyFileItIsWrittenTo(t *testing.T) {
	r := rand.New(rand.NewSource(20))
	f := hazelnut(t)
	for i := 0; i < 100; i++ {
		d := random(r)
		require.Empty(t, design.Validate(d))
		for _, from := range []*File{{}, hazelnut(t), f} {
			next, err := from.encode("x", d)
			require.NoError(t, err)
			got, err := Decode("x", next.raw)
			require.NoError(t, err, "%s", next.raw)
			require.True(t, got.Design.Equal(d), "%s", next.raw)
			f = next // a file with a long history of changes
		}
	}
}

func TestCommentsSurviveManyChanges(t *testing.T) {
	r := rand.New(rand.NewSource(21))
	for i := 0; i < 100; i++ {
		f := hazelnut(t)
		d := random(r)
		d.Dense.Lines = append(f.Design.Dense.Lines, d.Dense.Lines...) // lines with comments remain
		d.Own = f.Design.Own
		text, err := f.Encode(d)
		require.NoError(t, err)
		for _, c := range []string{"# For the stall", "# as on the board", "# from the farm on the hill", "# paste last, off the heat", "# What the pack says.", "# printed on the jar", "# The end."} {
			require.Equal(t, 1, strings.Count(string(text), c), "%s in\n%s", c, text)
		}
		require.False(t, bytes.Contains(text, []byte(gap)))
	}
}

func BenchmarkEncodeOneValue(b *testing.B) {
	f := hazelnut(b)
	for i := 0; i < b.N; i++ {
		if _, err := f.Encode(f.Design.WithGrams(design.DensePart, 0, float64(i%1000+1))); err != nil {
			b.Fatal(err)
		}
	}
}
