package designfile

import (
	"strings"
	"unicode/utf8"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/work/design"
)

// example is the file shown by Format. Invented, like the stall.
const example = `ripplewright: 1
name: Hazelnut and burnt honey       # from Saltmarsh Quay, a stall we made up
notes: ""
serving: {temperature_c: -13}
tubs: {count: 4, volume_ml: 500, fill_percent: 96}
blend: {foam_volume_percent: 40, strokes: 12}
batch: {basis: tubs}
dense:
  lines:
    - {ingredient: milk_whole, grams: 520}
    - {yolks: 6, note: save the whites}
  stove_loss_percent: 6
  overrun_percent: 20
foam:
  lines:
    - {whites: 5}
  syrup:
    cook_temperature_c: 118
    lines:
      - {ingredient: sugar, grams: 180}
      - {ingredient: water, grams: 60}
  overrun_percent: 300
`

// Format describes the format on one page of plain text: every key with what
// it means, its unit, range and default, and an example that Decode reads; in the
// language in which tell tells remarks.
func Format(tell func(*flaw.Remark) string) string {
	var b strings.Builder
	b.WriteString(tell(flaw.Say(`THE DESIGN FILE, VERSION %d

A design is a YAML file, UTF-8, at most %d bytes. Comments (# ...) and the order
of keys are yours and survive a save. ripplewright, dense and foam must be
there; any other key may be left out and then has its default.

`, Version, MaxSize)))
	b.WriteString(example)
	b.WriteString("\n" + tell(flaw.Say("KEYS (in brackets what holds if the key is left out)")) + "\n\n")
	writeKeys(&b, root, tell)
	b.WriteString(tell(flaw.Say(`
LINES

{ingredient: ID, grams: N}   ID of the library or of your own; N from 0 to %s g
{eggs: N}  {yolks: N}  {whites: N}   counted; N from 0 to %s, halves allowed; the
                             grams follow from eggs.system and eggs.size
A line may have a note: {ingredient: sugar, grams: 180, note: finely ground}
and, in older files, a price per kg that holds for every line of the same
ingredient without one: {ingredient: sugar, grams: 180, price_per_kg: 1.2}
It counts where your own prices (ripplecalc help prices) know none.

YOUR OWN INGREDIENTS

A list of groups with id, name and the figures of the library (per 100 g; what
is left out is unknown, not zero), or those of a pack under pack:

ingredients:
  - id: fig_paste
    name: Fig paste
    pack: {per: 100 g, fat: 0.5, carbohydrate: 55, sugars: 50, protein: 2, salt: 0.05}

A pack may give, in g unless the name ends in kcal, kj, mg or ug, for the grams
in per:
%sIts carbohydrate is without fibre, as in the EU and the UK; a US pack says
carbohydrate_with_fibre: true. A figure beside the pack, per 100 g, wins.
Saving copies into the file what its lines name of your own library, so that it
opens elsewhere; where both have an id, the file's figures win and the program
says so. The copy goes with the last line that names it. All that a record may
say (ripplecalc schema tells what each is, its unit and range):
%s
HOW STRICT IT IS

Numbers are written 520, -13 or 0.5: no unit, comma, exponent, quotes or hex;
counts without a point. Text that reads as a number or true/false, and colours,
need quotes. Unknown or doubled keys, values of the wrong type or out of range,
YAML anchors, aliases and tags, and a second document are errors; all are
reported at once, with file, line and key.
`, numberValue(design.MaxGrams).text, numberValue(design.MaxCount).text, packKeys(), recordKeys())))
	return b.String()
}

// keyColumn is how wide the column of keys is, lineWidth how long a line may be.
const (
	keyColumn = 31
	lineWidth = 100
)

// writeKeys writes what each key below s means, its values and its default.
func writeKeys(b *strings.Builder, s *key, tell func(*flaw.Remark) string) {
	defaults := design.Default()
	for _, k := range s.keys {
		switch k.kind {
		case version:
			writeKey(b, k.path, tell(flaw.Say("version of this format")), tell(flaw.Say("%d, required", Version)), "")
		case section:
			writeKeys(b, k, tell)
		case lines:
			writeKey(b, k.path, tell(flaw.Say(map[design.Part]flaw.Message{
				design.DensePart: "what goes into the custard", design.FoamPart: "what the syrup is beaten into",
				design.SyrupPart: "what is boiled and poured into the foam",
			}[k.part])), tell(flaw.Say("list of lines")), "[]")
		case own:
			writeKey(b, k.path, tell(flaw.Say("your own ingredients that the lines name")), tell(flaw.Say("list of ingredients")), "[]")
		case oneSetting:
			v := settingValue(k.field, &defaults)
			writeKey(b, k.path, tell(flaw.Say(flaw.Message(k.field.About))), tell(k.field.Allowed()), v.inline())
		}
	}
}

// writeKey writes one key, folded.
func writeKey(b *strings.Builder, name, means, values, byDefault string) {
	text := means + ": " + values
	if byDefault != "" {
		text += " [" + byDefault + "]"
	}
	b.WriteString(pad(name, keyColumn))
	at := keyColumn
	for _, word := range strings.Fields(text) {
		n := utf8.RuneCountInString(word) + 1
		if at+n > lineWidth {
			b.WriteString("\n" + pad("", keyColumn))
			at = keyColumn
		}
		b.WriteString(" " + word)
		at += n
	}
	b.WriteByte('\n')
}

// packKeys lists the figures of a pack.
func packKeys() string {
	var names []string
	for _, f := range ingredient.PackFigures() {
		names = append(names, f.Path)
	}
	return nameLines(names)
}

// recordKeys lists the fields of a record.
func recordKeys() string {
	var names []string
	for _, f := range ingredient.Fields() {
		names = append(names, f.Path)
	}
	return nameLines(names)
}

// nameLines sets names in lines of text.
func nameLines(names []string) string {
	var b strings.Builder
	line := "   "
	for _, name := range names {
		if len(line)+len(name) > 78 {
			b.WriteString(line + "\n")
			line = "   "
		}
		line += " " + name
	}
	return b.String() + line + "\n"
}

// pad fills s up with spaces to n characters.
func pad(s string, n int) string {
	return s + strings.Repeat(" ", max(0, n-utf8.RuneCountInString(s)))
}
