package designfile

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/work/design"
)

// designs is the folder of the invented designs.
const designs = "../../../testdata/designs/"

func readTestFile(t testing.TB, name string) []byte {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(designs, name))
	require.NoError(t, err)
	return data
}

func TestDecodeReadsWhatTheFileSays(t *testing.T) {
	f, err := Decode("hazelnut.yaml", readTestFile(t, "hazelnut.yaml"))
	require.NoError(t, err)
	want := design.New()
	want.Name = "Hazelnut and burnt honey"
	want.Notes = "Browned at the quay.\nKeep the spoon warm.\n"
	want.Blend.Strokes = 12
	want.Eggs = design.EggSize{System: "EU", Size: "L"}
	want.Dense.Lines = []design.Line{
		{Ingredient: "milk_whole", Grams: 520},
		{Ingredient: "egg_yolk", Count: 6, CountOf: design.Yolks, Note: "save the whites"},
		{Ingredient: "hazelnut_paste_quay", Grams: 80.5},
	}
	want.Foam.Lines = []design.Line{{Ingredient: "egg_white", Count: 5, CountOf: design.Whites}}
	want.Foam.Syrup.Lines = []design.Line{{Ingredient: "sugar", Grams: 180}, {Ingredient: "water", Grams: 60}}
	want.Own = f.Design.Own
	assert.Equal(t, want, f.Design)
	require.Len(t, f.Design.Own, 1)
	assert.Equal(t, "Hazelnut paste of the quay", f.Design.Own[0].Name)
	assert.Equal(t, 17, f.Line("dense.lines[2].grams"))
	assert.Equal(t, 17, f.Line("dense.lines[2].note"), "the nearest key around")
	assert.Equal(t, 0, f.Line("kitchen.altitude_m"))
}

func TestAPriceIsKnownOnlyWhereItIsWritten(t *testing.T) {
	const text = `ripplewright: 1
dense: {lines: [{ingredient: sugar, grams: 100, price_per_kg: 1.25}, {yolks: 6, price_per_kg: 0}, {ingredient: salt, grams: 1}]}
foam: {}
`
	f, err := Decode("priced.yaml", []byte(text))
	require.NoError(t, err)
	l := f.Design.Dense.Lines
	assert.Equal(t, ingredient.Known(1.25), l[0].Price)
	assert.Equal(t, ingredient.Known(0), l[1].Price, "free is not unknown")
	assert.Equal(t, ingredient.Cell{}, l[2].Price)

	d := f.Design
	l = slices.Clone(l)
	l[2].Price, l[1].Price = ingredient.Known(0.6), ingredient.Cell{}
	again, err := f.Encode(d.WithLines(design.DensePart, l))
	require.NoError(t, err)
	g, err := Decode("priced.yaml", again)
	require.NoError(t, err)
	assert.Equal(t, l, g.Design.Dense.Lines)

	for bad, want := range map[string]string{
		"-1": "x:2: dense.lines[0].price_per_kg: −1 per kg is outside 0 to 1000000 per kg", "1.25 €": "x:2: dense.lines[0].price_per_kg: ",
	} {
		_, err := Decode("x", []byte(strings.Replace(text, "1.25", bad, 1)))
		assert.ErrorContains(t, err, want)
	}
}

func TestLeftOutKeysHaveTheirDefaults(t *testing.T) {
	f, err := Decode("small.yaml", []byte("ripplewright: 1\ndense: {}\nfoam: {}\n"))
	require.NoError(t, err)
	assert.True(t, f.Design.Equal(design.Default()))
}

func TestByteOrderMarkAndWindowsLineEndsAreFine(t *testing.T) {
	text := append([]byte("\xef\xbb\xbf"), bytes.ReplaceAll(readTestFile(t, "hazelnut.yaml"), []byte("\n"), []byte("\r\n"))...)
	f, err := Decode("windows.yaml", text)
	require.NoError(t, err)
	plain, err := Decode("unix.yaml", readTestFile(t, "hazelnut.yaml"))
	require.NoError(t, err)
	assert.True(t, f.Design.Equal(plain.Design))
}

func TestMessagesNameFileLineAndKey(t *testing.T) {
	const head = "ripplewright: 1\n"
	const tail = "dense: {lines: []}\nfoam: {lines: []}\n"
	dense := func(item string) string { return head + "foam: {}\ndense:\n  lines:\n    - " + item + "\n" }
	for _, c := range []struct {
		in   string
		kind Kind
		want string
	}{
		{head + "servin: {temperature_c: -13}\n" + tail, UnknownKey, `x:2: servin: unknown key; did you mean "serving"?`},
		{head + "strokes: 3\n" + tail, UnknownKey, `x:2: strokes: unknown key here; did you mean blend.strokes?`},
		{head + "colourway: 3\n" + tail, UnknownKey, `x:2: colourway: unknown key; known here are ripplewright, name, notes, serving, tubs, blend, batch, eggs, kitchen, model, label, dense, foam, ingredients`},
		{dense("{ingredient: sugar, gramms: 3, grams: 2}"), UnknownKey, `x:5: dense.lines[0].gramms: unknown key; did you mean "grams"?`},
		{head + "name: A\nname: B\n" + tail, DuplicateKey, `x:3: name: duplicate key; it is already on line 2`},
		{dense("{ingredient: sugar, grams: 3, grams: 2}"), DuplicateKey, `x:5: dense.lines[0].grams: duplicate key; it is already on line 5`},

		{dense("{ingredient: sugar, grams: 520g}"), WrongType, `x:5: dense.lines[0].grams: "520g": write the number alone, 520; its unit is always g`},
		{dense("{ingredient: sugar, grams: 0.5 kg}"), WrongType, `x:5: dense.lines[0].grams: "0.5 kg": write the number alone, in g`},
		{dense("{yolks: 6 pcs}"), WrongType, `x:5: dense.lines[0].yolks: "6 pcs": write the number alone: 6`},
		{dense("\n        ingredient: sugar\n        grams: 80,5"), WrongType, `x:7: dense.lines[0].grams: 80,5: write a decimal point: 80.5`},
		{dense("{ingredient: sugar, grams: 80,5}"), UnknownKey, `x:5: dense.lines[0].5: unknown key; if it is what follows a comma in a number, write a decimal point: 80.5`},
		{dense("{ingredient: sugar, grams: 1_000}"), WrongType, `x:5: dense.lines[0].grams: 1_000: write the digits alone: 1000`},
		{dense("{ingredient: sugar, grams: .nan}"), WrongType, `x:5: dense.lines[0].grams: .nan is not a finite number`},
		{dense("{ingredient: sugar, grams: -.inf}"), WrongType, `x:5: dense.lines[0].grams: -.inf is not a finite number`},
		{dense("{ingredient: sugar, grams: 1e3}"), WrongType, `x:5: dense.lines[0].grams: 1e3: write the number out, without an exponent`},
		{dense("{ingredient: sugar, grams: 0x10}"), WrongType, `x:5: dense.lines[0].grams: 0x10: write the number in decimal, without a leading 0`},
		{dense("{ingredient: sugar, grams: .5}"), WrongType, `x:5: dense.lines[0].grams: .5: write a digit before the point: 0.5`},
		{dense(`{ingredient: sugar, grams: "5"}`), WrongType, `x:5: dense.lines[0].grams: "5" is in quotes; write the number without them`},
		{dense("{ingredient: sugar, grams: }"), WrongType, `x:5: dense.lines[0].grams: has no value; a number is expected here`},
		{dense("{ingredient: sugar, grams: [5]}"), WrongType, `x:5: dense.lines[0].grams: a number is expected here, not a list`},
		{dense("{ingredient: sugar, grams: plenty}"), WrongType, `x:5: dense.lines[0].grams: "plenty" is not a number`},
		{head + "tubs: {count: 1.0}\n" + tail, WrongType, `x:2: tubs.count: 1.0: write the whole number without a point: 1`},
		{head + "tubs: {count: 1.5}\n" + tail, WrongType, `x:2: tubs.count: 1.5 is not a whole number`},
		{head + "tubs: {count: 0x10}\n" + tail, WrongType, `x:2: tubs.count: 0x10: write the number in decimal, without a leading 0`},
		{head + "tubs: {count: 99999999999999999999}\n" + tail, WrongType, `x:2: tubs.count: 99999999999999999999 is too large a number`},
		{head + "name: 12\n" + tail, WrongType, `x:2: name: 12 is read as a number; put it in quotes: "12"`},
		{head + "name: true\n" + tail, WrongType, `x:2: name: true is read as true or false; put it in quotes: "true"`},
		{head + "notes:\n" + tail, WrongType, `x:2: notes: has no value; write "" for none`},
		{head + "name: [a]\n" + tail, WrongType, `x:2: name: text is expected here, not a list`},
		{head + "serving: -13\n" + tail, WrongType, `x:2: serving: a group of keys is expected here, such as temperature_c`},
		{head + "dense: {lines: }\nfoam: {}\n", WrongType, `x:2: dense.lines: has no value; write [] for none`},
		{head + "dense: {lines: {}}\nfoam: {}\n", WrongType, `x:2: dense.lines: a list is expected here, not a group of keys`},
		{dense("sugar"), WrongType, `x:5: dense.lines[0]: a line is written {ingredient: milk_whole, grams: 520}, or {yolks: 6}`},
		{"- a\n", WrongType, `x:1: a design file begins with the line ripplewright: 1`},

		{head + "batch: {basis: bowls}\n" + tail, Invalid, `x:2: batch.basis: "bowls" is not one of tubs, as_written`},
		{head + "tubs: {shape: bucket}\n" + tail, Invalid, `x:2: tubs.shape: "bucket" is not one of round, shallow, rectangle`},
		{head + "blend: {motion: shake}\n" + tail, Invalid, `x:2: blend.motion: "shake" is not one of plunge, fold, eight, drag, mixed`},
		{head + "blend:\n  strokes: 25\n" + tail, Invalid, `x:3: blend.strokes: 25 is outside 0 to 24`},
		{head + "serving: {temperature_c: 4}\n" + tail, Invalid, `x:2: serving.temperature_c: 4 °C is outside −24 to −4 °C`},
		{head + "eggs: {size: M}\n" + tail, Invalid, `x:2: eggs.size: no US egg size is called "M"; known are peewee, small, medium, large, extra large, jumbo`},
		{head + "eggs: {system: EU}\n" + tail, Invalid, `x:2: eggs.size: no EU egg size is called "large"; known are S, M, L, XL`},
		{dense("{ingredient: sugar, grams: -5}"), Invalid, `x:5: dense.lines[0].grams: −5 g is outside 0 to 1000000 g`},
		{dense(`{ingredient: "", grams: 5}`), Invalid, `x:5: dense.lines[0].ingredient: must not be empty`},
		{dense("{yolks: 3, whites: 2}"), Invalid, `x:5: dense.lines[0]: a line counts only one of yolks, whites`},
		{dense("{yolks: 3, ingredient: egg_yolk}"), Invalid, `x:5: dense.lines[0]: a line has an ingredient with grams or a count of yolks, not both`},
		{dense("{eggs: 3, grams: 150}"), Invalid, `x:5: dense.lines[0]: a count of eggs takes its grams from the egg size; leave grams out`},
		{tail + "ripplewright: 1\ningredients:\n  - id: a\n    name: A\n    fat: some\n", Invalid, `x:7: ingredients[0].fat: "some" is not a number`},
		{tail + "ripplewright: 1\ningredients:\n  - {id: a, name: A}\n  - {id: a, name: B}\n", Invalid, `x:6: ingredients[1].id: there is already an ingredient "a"`},

		{dense("{ingredient: sugar}"), MissingKey, `x:5: dense.lines[0].grams: is missing`},
		{dense("{grams: 3}"), MissingKey, `x:5: dense.lines[0].ingredient: is missing`},
		{tail, MissingKey, `x: ripplewright: is missing`},
		{head + "foam: {}\n", MissingKey, `x: dense: is missing`},

		{head + "name: &a A\n" + tail, NotAllowed, `x:2: name: the anchor &a is not allowed; write the value out`},
		{head + "name: !!str 5\n" + tail, NotAllowed, `x:2: name: the tag !!str is not allowed; write the value alone`},
		{head + tail + "---\nripplewright: 1\n", NotAllowed, `x:4: a second document begins here; a file holds one design`},
		{"ripplewright: 2\nnew: thing\n", UnknownVersion, `x:1: ripplewright: this is format version 2; this program reads version 1`},
		{"ripplewright: 1.0\n" + tail, WrongType, `x:1: ripplewright: 1.0: write the whole number without a point: 1`},

		{"", Unreadable, `x: the file is empty`},
		{"# only a comment\n", Unreadable, `x: the file is empty`},
		{head + "name: Caf\xe9\n" + tail, Unreadable, `x:2: not UTF-8 text; save the file as UTF-8`},
	} {
		_, err := Decode("x", []byte(c.in))
		var e *Error
		if assert.ErrorAs(t, err, &e, "%s", c.in) {
			assert.Equal(t, c.want, e.Error(), "%s", c.in)
			assert.Equal(t, c.kind, e.Problems[0].Kind, "%s", c.in)
		}
	}
}

func TestAliasesAreRefusedWithoutBeingFollowed(t *testing.T) {
	for _, name := range []string{"aliases.yaml", "bomb.yaml"} {
		_, err := Decode(name, readTestFile(t, name))
		var e *Error
		require.ErrorAs(t, err, &e)
		assert.Equal(t, NotAllowed, e.Problems[0].Kind)
	}
}

func TestSyntaxErrorsNameTheLineThatBreaks(t *testing.T) {
	good := strings.Split(strings.TrimSuffix(string(readTestFile(t, "hazelnut.yaml")), "\n"), "\n")
	for line, text := range map[int]string{
		7:  "serving: {temperature_c: -13",
		8:  "tubs: {count: 4, volume_ml: 500]",
		9:  "\tblend: {strokes: 12}",
		13: "  - lines: - x",
	} {
		broken := append([]string(nil), good...)
		broken[line-1] = text
		_, err := Decode("x", []byte(strings.Join(broken, "\n")+"\n"))
		assert.ErrorContains(t, err, fmt.Sprintf("x:%d: not readable as YAML: ", line))
	}
}

func TestAllProblemsAreReportedAtOnceInOrder(t *testing.T) {
	_, err := Decode("broken.yaml", readTestFile(t, "broken.yaml"))
	want := strings.TrimSpace(`
broken.yaml:4: nmae: unknown key; did you mean "name"?
broken.yaml:5: serving.temperature_c: 13 °C is outside −24 to −4 °C
broken.yaml:6: tubs.count: 4.0: write the whole number without a point: 4
broken.yaml:8: batch.basis: "tub" is not one of tubs, as_written
broken.yaml:12: dense.lines[0].grams: "520g": write the number alone, 520; its unit is always g
broken.yaml:13: dense.lines[1].grams: is missing
broken.yaml:14: dense.lines[2].gramms: unknown key; did you mean "grams"?
broken.yaml:14: dense.lines[2].grams: is missing
broken.yaml:20: foam.overrun_percent: 80,5: write a decimal point: 80.5`)
	require.EqualError(t, err, want)
}

func TestAnErrorsTextStaysShort(t *testing.T) {
	_, err := Decode("x", []byte("ripplewright: 1\ndense: {}\nfoam: {}\n"+manyKeys(2000)))
	var e *Error
	require.ErrorAs(t, err, &e)
	assert.Len(t, e.Problems, maxFaults, "no more are looked for")
	assert.Equal(t, shown+1, strings.Count(e.Error(), "\n")+1)
	assert.True(t, strings.HasSuffix(e.Error(), "x: and more; nothing beyond these was looked for"))
	_, err = Decode("x", []byte("ripplewright: 1\ndense: {}\nfoam: {}\n"+manyKeys(120)))
	assert.True(t, strings.HasSuffix(err.Error(), "x: and 70 more"))
}

func manyKeys(n int) string {
	var b strings.Builder
	for i := 0; i < n; i++ {
		fmt.Fprintf(&b, "zzzzzzzzzz%d: 0\n", i)
	}
	return b.String()
}

func TestTooLongFilesAreNotParsed(t *testing.T) {
	_, err := Decode("x", bytes.Repeat([]byte("#"), MaxSize+1))
	assert.EqualError(t, err, fmt.Sprintf("x: the file is longer than %d bytes; this is no design", MaxSize))
}

func TestAFileCutShortIsNoticed(t *testing.T) {
	whole := readTestFile(t, "short.yaml")
	whole = whole[:bytes.LastIndexByte(whole[:len(whole)-1], '\n')] // without the last key no cut may pass
	last := bytes.LastIndex(whole, []byte("  syrup:"))
	for n := 0; n < len(whole); n++ {
		_, err := Decode("x", whole[:n])
		if n >= last && whole[n-1] == '\n' {
			continue // a shorter design that is whole; nothing tells
		}
		assert.Error(t, err, "cut after %d bytes: %s", n, whole[max(0, n-20):n])
	}
	_, err := Decode("x", []byte("ripplewright: 1\ndense: {lines: []"))
	assert.Error(t, err)
	_, err = Decode("x", []byte("ripplewright: 1\ndense: {lines: []}"))
	assert.EqualError(t, err, "x: foam: is missing; the last line has no end, so the file may have been cut short")
}

func TestCheckNamesUnknownIngredients(t *testing.T) {
	lib := ingredient.NewLibrary([]*ingredient.Ingredient{
		{ID: "milk_whole"}, {ID: "egg_white"}, {ID: "sugar"}, {ID: "hazelnut_paste"},
	})
	f, err := Decode("hazelnut.yaml", readTestFile(t, "hazelnut.yaml"))
	require.NoError(t, err)
	err = Check(f, lib)
	var e *Error
	require.ErrorAs(t, err, &e)
	assert.EqualError(t, err, `hazelnut.yaml:15: dense.lines[1].yolks: no ingredient is named "egg_yolk"
hazelnut.yaml:27: foam.syrup.lines[1].ingredient: no ingredient is named "water"`)
	assert.Equal(t, UnknownIngredient, e.Problems[0].Kind)

	all := lib.With([]*ingredient.Ingredient{{ID: "egg_yolk"}, {ID: "water"}})
	assert.NoError(t, Check(f, all), "the file's own ingredients count")
}

func TestAMisspeltIngredientIsReportedBesideOtherProblems(t *testing.T) {
	lib := ingredient.NewLibrary([]*ingredient.Ingredient{{ID: "milk_whole"}, {ID: "sugar"}})
	_, err := DecodeWith("x", []byte(`ripplewright: 1
dense:
  lines: [{ingredient: milk_whloe, grams: 1}, {ingredient: jam, grams: 2}, {grams: 3}]
  overrun_percent: 151
foam: {}
ingredients: [{id: jam, name: Jam, fat: much}]
`), lib)
	assert.EqualError(t, err, `x:3: dense.lines[2].ingredient: is missing
x:3: dense.lines[0].ingredient: no ingredient is named "milk_whloe"; did you mean "milk_whole"?
x:4: dense.overrun_percent: 151 % is outside 0 to 150 %
x:6: ingredients[0].fat: "much" is not a number`)
}

func FuzzDecode(f *testing.F) {
	files, err := filepath.Glob(designs + "*.yaml")
	require.NoError(f, err)
	for _, path := range files {
		data, err := os.ReadFile(path)
		require.NoError(f, err)
		f.Add(data)
	}
	f.Add([]byte(example))
	f.Fuzz(func(t *testing.T, data []byte) {
		file, err := Decode("fuzz", data)
		if err != nil {
			var e *Error
			if !errors.As(err, &e) || len(e.Problems) == 0 {
				t.Fatalf("not a list of problems: %v", err)
			}
			return
		}
		if same, err := file.Encode(file.Design); err != nil || !bytes.Equal(same, data) {
			t.Fatalf("an unchanged design changed the file: %v", err)
		}
		for _, d := range []design.Design{
			file.Design.WithLineAdded(design.FoamPart, design.Line{Ingredient: "honey", Grams: 12.5}),
			{},
		} {
			if d.Name == "" { // the same values under another name, in a new file
				d = file.Design
				d.Name += "!"
				file = &File{}
			}
			text, err := file.Encode(d)
			if err != nil {
				t.Fatal(err)
			}
			again, err := Decode("again", text)
			if err != nil {
				t.Fatalf("%v\n%s", err, text)
			}
			if !again.Design.Equal(d) && !equalButForOwn(again.Design, d) {
				t.Fatalf("wrote\n%s\nfor %+v", text, d)
			}
		}
	})
}

func BenchmarkDecode(b *testing.B) {
	data := readTestFile(b, "hazelnut.yaml")
	for len(data) < 2048 {
		data = append(data, "# The stall at Saltmarsh Quay, which we made up, opens at ten.\n"...)
	}
	b.SetBytes(int64(len(data)))
	for i := 0; i < b.N; i++ {
		if _, err := Decode("x", data); err != nil {
			b.Fatal(err)
		}
	}
}
