package written

import (
	"math"
	"slices"
	"strconv"
	"strings"
)

// A table is what the head of a pasted table tells of the columns below it.
type table struct {
	head   string // its line, "" for none
	cells  int
	weight int             // the column of bare weights, -1 for none
	unit   string          // of them
	aside  map[int]bool    // columns of prices and of shares of the whole: they weigh nothing
	whole  map[string]bool // weights whose point or comma the shares prove to part thousands
}

var (
	cellMark   = find(`[\t;|]`)
	nameHead   = find(`(?i)^(?:ingredients?|name|item|product|component|raw material|zutat(?:en)?|rohstoff|produkt|bezeichnung)$`)
	weightHead = find(`(?i)^(?:(?:weight|wt|amount|qty|quantity|mass|menge|gewicht|batch|base|recipe|mix|trial|test|formula)\.?(?: \w{1,2})?\s*(?:in )?)?[(\[]?(g|gr|grams?|grammes?|gramm|kg)[)\]]?(?: ?(?:/|per) ?(?:1 ?)?(?:kg|k|1000 ?g|batch|tub|l|lit(?:er|re))(?: (?:of )?mix)?)?$`)
	shareHead  = find(`(?i)^(?:[(\[]?%[)\]]?|% of (?:total|mix|batch|whole)|shares?(?: ?\(?%\)?)?|percent(?:age)?|anteil(?: ?\(?%\)?)?)$`)
	costHead   = find(`(?i)\b(?:costs?|prices?|preis|kosten|eur|usd|gbp)\b|[€$£]`)
	bareCell   = find(`^\d[\d.,]*$`)
	massUnit   = find(`(?i)^(?:k?g|kgs|gr|grams?|kilos?)$`)
	rowHead    = find(`(?i)^(?:no\.?|nr\.?|#|pos\.?|row|line|step|id)$`)
	massCell   = find(`^(\d[\d.,]*) ?(?:g|kg)$`)
)

// cellsOf parts a row of a table, and tells by what sign; one cell for any other line.
func cellsOf(line string) (cells []string, sign string) {
	if framed := strings.TrimSpace(line); strings.HasPrefix(framed, "|") {
		line = strings.Trim(framed, "| ")
	}
	if sign = cellMark.of(line); sign == "" {
		return []string{line}, ""
	}
	cells = strings.Split(strings.TrimRight(line, "\r"), sign)
	for i, c := range cells {
		cells[i] = strings.TrimSpace(c)
	}
	return cells, sign
}

// tabled reads a line as the head of a table, and what the rows below prove of it; false
// for any other line.
func tabled(line string, below []string) (t table, ok bool) {
	cells, sign := cellsOf(line)
	t = table{head: line, cells: len(cells), weight: -1, aside: map[int]bool{}}
	named, weights, shares := false, 0, -1
	for c, cell := range cells {
		m := weightHead.parts(cell)
		named = named || nameHead.in(cell)
		switch {
		case m != nil:
			weights++
			t.weight, t.unit = c, "g"
			if strings.EqualFold(m[1], "kg") {
				t.unit = "kg"
			}
		case costHead.in(cell), c == 0 && rowHead.in(cell):
			t.aside[c] = true
		case shareHead.in(cell):
			shares = c
		}
	}
	if sign == "" || !named && (cells[0] != "" || weights == 0) {
		return table{}, false
	}
	if weights > 1 {
		t.weight = -1 // of two batches nobody knows which
	}
	if shares >= 0 && t.prove(below, shares) {
		t.aside[shares] = true
	}
	return t, true
}

// prove reports whether the numbers in a column are to the weights all in one relation, so
// that they are shares of the whole and no fat of milk. A weight that is in step only as
// thousands is of thousands.
func (t *table) prove(lines []string, shares int) bool {
	type pair struct {
		text          string
		weight, share float64
		grouped       bool
	}
	var rows []pair
	weights, parts := 0.0, 0.0
	for _, line := range lines {
		cells, sign := cellsOf(line)
		if _, next := tabled(line, nil); next || sign == "" {
			break
		}
		if len(cells) <= shares || len(cells) > t.cells {
			continue
		}
		text, unit := "", 1.0
		for c, cell := range cells {
			if m := massCell.parts(cell); m != nil && c != shares {
				text = m[1]
			} else if bareCell.in(cell) && c != shares && c+1 < len(cells) && massUnit.in(cells[c+1]) {
				if text = cell; strings.HasPrefix(strings.ToLower(cells[c+1]), "k") {
					unit = 1000
				}
			} else if c == t.weight && bareCell.in(cell) {
				text = cell
			}
		}
		share := strings.TrimSpace(strings.TrimSuffix(cells[shares], "%"))
		if text == "" || !bareCell.in(share) {
			continue
		}
		w, rest, grouped, ok := number(text)
		if !ok || rest != "" || !(w > 0) || !(value(share) > 0) {
			continue
		}
		w *= unit
		rows = append(rows, pair{text: text, weight: w, share: value(share), grouped: grouped})
		if !grouped {
			weights, parts = weights+w, parts+value(share)
		}
	}
	if len(rows) < 3 || !(parts > 0) {
		return false
	}
	step := weights / parts
	near := func(weight, share float64) bool {
		return math.Abs(weight/step-share) <= max(apartShare*share, leastShare)
	}
	t.whole = map[string]bool{}
	for _, r := range rows {
		switch {
		case near(r.weight, r.share):
		case r.grouped && near(1000*r.weight, r.share):
			t.whole[r.text] = true
		default:
			t.whole = nil
			return false
		}
	}
	return true
}

// leastShare is what the smallest shares may be off by their rounding, of a hundred.
const leastShare = 0.1

// row gives a row below the head its measure, and takes from it what weighs nothing.
func (r *Reader) row(t *table, line string) string {
	cells, sign := cellsOf(line)
	if t.head == "" || sign == "" || len(cells) > t.cells {
		return line
	}
	var kept []string
	few := ""
	for c, cell := range cells {
		if t.aside[c] && (cell == "" || share.in(cell) || price.in(cell) || bareCell.in(cell)) {
			continue
		}
		bare := c == t.weight && bareCell.in(cell)
		if m := massCell.parts(cell); m != nil && t.whole[m[1]] || bare && t.whole[cell] {
			cell = strings.NewReplacer(",", "", ".", "").Replace(cell)
		}
		switch n, err := strconv.Atoi(cell); {
		case bare && err == nil && n <= fewEggs && t.unit == "g" && slices.ContainsFunc(cells, r.countable):
			few = "?" // six yolks, or 6 g
		case bare:
			cell += " " + t.unit
		}
		kept = append(kept, cell)
	}
	return strings.Join(kept, sign) + few
}

// fewEggs is how many pieces a bare number may count even where all numbers are grams.
const fewEggs = 20

var (
	// allGrams finds a line that says of all bare numbers that they are grams, lastBare a
	// line that ends in one.
	allGrams = find(`(?im)^\W*(?:(?:all|everything|(?:amount|number|weight|quantit|measure|measurement)(?:s|ies))(?: (?:is|are|it|of it|given|measured|weighed|listed|below|here|amounts|numbers|weights|quantities|measures|measurements))* )?in (?:g|gr|grams?|grammes?)\b[\s\pP]*(?:sorry|please|pls|thanks|here|only|of course|as always)?[\s\pP]*$`)
	lastBare = find(`^(\W*\pL[^\d;|\t]*?)[\s:-]+(\d+(?:[.,]\d+)?)\s*$`)
)

// onePiece is from what weight on, g, a kitchen counts a food as it grows.
const onePiece = 10

// countable reports whether a name is of what a kitchen counts, as eggs and bananas.
func (r *Reader) countable(name string) bool {
	m, _, ok := r.names.look(tidy(name), "")
	if !ok {
		return eggs.in(name)
	}
	in, _ := r.names.lib.Find(m.ids[0])
	_, _, sold := onePieceOf(in, "")
	return in.Group == "egg" || sold || lightest(in) >= onePiece
}

// grammed gives a line that ends in a bare number its measure, where the text says that
// all are grams: those of foods, and of pieces only where they are too many to be counted.
func (r *Reader) grammed(line string) string {
	m := lastBare.parts(line)
	if m == nil {
		return line
	}
	if _, _, ok := r.names.look(tidy(m[1]), ""); !ok {
		return line
	}
	if value(m[2]) <= fewEggs && r.countable(m[1]) {
		return line + "?"
	}
	return m[1] + " " + m[2] + " g"
}
