package card

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"ripplewright/internal/show/draw/typeset"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/check/market"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/label"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/draw/face"
	"ripplewright/internal/work/design"
)

// TestScriptsThatCannotBeSpelledAreMarked: set from the left, sign by sign, they
// would be wrong without a word.
func TestScriptsThatCannotBeSpelledAreMarked(t *testing.T) {
	for name, want := range map[string]string{"Мёд и орех": "", "Μέλι": "", "Cre\u0300me": "", "דבש": "דבש", "عسل": "عسل", "蜂蜜": "蜂蜜", "x\u0302\u0323y": "\u0323\u0302", "🍯\u200d": "🍯"} {
		d := market.Hazelnut()
		d.Name = name
		lacks := Lacking(d, evaluated(t, d))
		if want == "" {
			assert.Empty(t, lacks, name)
			continue
		}
		require.Len(t, lacks, 1, name)
		assert.Equal(t, "name", lacks[0].Path)
		assert.ElementsMatch(t, []rune(want), lacks[0].Letters, name)
	}
}

// foreign has a letter that no font has in every text that is printed, each
// another.
func foreign(t *testing.T) design.Design {
	d := market.Hazelnut()
	d.Name, d.Notes = "Honey and 柚", "Bring the 子 first."
	d.Dense.Lines[4].Note = "burnt 蜜"
	d.Dense.Lines = append(d.Dense.Lines, design.Line{Ingredient: "crunch", Grams: 20})
	d.Own = []*ingredient.Ingredient{{ID: "crunch", Name: "Quay 果", KitchenName: "our 仁", CommonName: "nut 糖", Parts: "sugar 塩", Own: true}}
	return d
}

func TestLettersThatTheFontsLackAreNamedWhereTheyStand(t *testing.T) {
	d := foreign(t)
	r := evaluated(t, d)
	got := map[string]string{}
	named := ""
	for _, l := range Lacking(d, r) {
		got[l.Path] = string(l.Letters)
		named += string(l.Letters)
		assert.Contains(t, l.String(), string(l.Letters))
	}
	assert.Equal(t, map[string]string{
		"name": "柚", "notes": "子", "dense.lines[4].note": "蜜",
		"ingredients[0].name": "果", "ingredients[0].kitchen_name": "仁", "ingredients[0].common_name": "糖", "ingredients[0].parts": "塩",
	}, got)

	l, err := label.For(r.Food(d), label.US, label.Options{})
	require.NoError(t, err)
	got = map[string]string{}
	for _, k := range LackingOnLabel(d, r, l) {
		got[k.Path] = string(k.Letters)
	}
	assert.Equal(t, map[string]string{"ingredients[0].kitchen_name": "仁", "ingredients[0].common_name": "糖", "ingredients[0].parts": "塩"}, got, "the notes under the panel have the kitchen name")

	o := Options{Region: label.US, Paper: A4}
	pages := append(cardPages(context.Background(), d, r, contentOf(d, r, o), o), labelSheet(l, usTabularPanel(l)))
	for _, c := range face.Missing(strings.Join(texts(pages), "")) {
		assert.Contains(t, named, string(c), "what is drawn is named")
	}
}

func TestLettersThatTheFontsLackAreMarkedInTheFile(t *testing.T) {
	if testing.Short() {
		t.Skip("a sweep, of which the race detector takes long")
	}
	d := foreign(t)
	r := evaluated(t, d)
	dir := t.TempDir()
	for _, name := range []string{"card.pdf", "card.png", "card.md"} {
		require.NoError(t, Write(filepath.Join(dir, name), d, r, Options{}))
	}
	data, err := os.ReadFile(filepath.Join(dir, "card.pdf"))
	require.NoError(t, err)
	lines := textOf(t, data)
	assert.Contains(t, lines, "Honey and □")
	assert.Contains(t, lines, "burnt □")
	assert.Empty(t, face.Missing(strings.Join(lines, "")))
	data, err = os.ReadFile(filepath.Join(dir, "card.md"))
	require.NoError(t, err)
	assert.Contains(t, string(data), "柚", "words need no font")

	l, err := label.For(r.Food(d), label.US, label.Options{})
	require.NoError(t, err)
	for _, name := range []string{"label.pdf", "label.png", "label.txt"} {
		require.NoError(t, WriteLabel(filepath.Join(dir, name), l, ""))
	}
	data, err = os.ReadFile(filepath.Join(dir, "label.pdf"))
	require.NoError(t, err)
	assert.Contains(t, squeezed(strings.Join(textOf(t, data), "")), "(sugar□)")
}

// TestTheLibraryCanBePrinted looks at every name and every sign the card uses.
func TestTheLibraryCanBePrinted(t *testing.T) {
	for _, in := range market.Library(t).All() {
		for _, words := range printedOf(in) {
			assert.Empty(t, face.Missing(typeset.Plain(words)), words)
		}
	}
	assert.Empty(t, face.Missing("−–°·×•…≤≥½⅓⅔¼¾⅛‡\u2009\u00a0äéßøčžα"+string(face.Mark)))
}

// texts returns every text on the pages.
func texts(pages []*draw.List) []string {
	var out []string
	for _, p := range pages {
		for _, w := range p.Texts {
			out = append(out, w.S)
		}
	}
	return out
}
