package written

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"ripplewright/internal/food/ingredient"
)

// Reader reads lines for one library and one size of eggs.
type Reader struct {
	names *names
	eggs  Eggs
}

// New returns a reader of lines that name what lib has, by its names and those of
// kitchens; eggs without a size are of the class eggs.
func New(lib *ingredient.Library, eggs Eggs) *Reader { return &Reader{newNames(lib), eggs} }

// mostLine is how long a line may be, bytes; what is longer is no line of a recipe.
const mostLine = 400

// Read returns the lines of text that say something: empty ones, headings and
// remarks on the whole are passed over.
func (r *Reader) Read(text string) []Said {
	var all []Said
	in := whole{american: customarily.in(text), dashed: len(dashed().FindAllString(text, 2)) > 1}
	in.shares = shares(text)
	in.inStep = inStep(text)
	in.inGrams = allGrams.in(text)
	in.ringed = len(ring().FindAllString(text, 2)) > 1
	in.lone = len(item().FindAllString(text, 2)) == 1
	in.rows, in.items = running(row, text), running(item, text)
	setApart := aloneOnTop.in(text)
	in.talkers, in.thousand = r.talkers(text), r.thousand(text)
	in.above = &[]listed{}
	lines := strings.FieldsFunc(text, func(c rune) bool { return c == '\n' || c == '\r' || c == '\u2028' })
	for i, raw := range lines {
		if head, ok := tabled(raw, lines[i+1:]); ok {
			in.table = head
		} else if _, sign := cellsOf(raw); sign == "" {
			in.table = table{} // what is below the rows has a head of its own, or none
		}
		l, ok := r.line(raw, in)
		if ok = ok && !numberOfPage(lines, i); ok && !(i == 0 && len(lines) > 2 && (r.titled(&l) || setApart && r.entitles(&l, lines[1:]))) {
			all = append(all, l)
			*in.above = append(*in.above, r.list(l.Text))
		}
	}
	return all
}

// Line reads one line; false for a heading or nothing.
func (r *Reader) Line(text string) (Said, bool) { return r.line(text, whole{}) }

// running reports whether the numbers that a pattern finds at the heads of lines are
// 1, 2 and so on.
func running(head pattern, text string) bool {
	found := head().FindAllStringSubmatch(text, -1)
	for i, m := range found {
		if n, err := strconv.Atoi(m[1]); err != nil || n != i+1 {
			return false
		}
	}
	return len(found) > 1
}

// whole is what the whole of a text tells of each of its lines.
type whole struct {
	american bool // it measures in cups or quarts: a pint is that of the US
	rows     bool // its tables begin with the number of the row
	items    bool // its lines are numbered
	inStep   bool // its tables end in the shares of the whole, without a sign
	inGrams  bool // it says that its bare numbers are grams
	ringed   bool // its lines begin with the letter that a round bullet is pasted as
	table    table
	lone     bool      // one line alone begins with a number and a point
	above    *[]listed // the lines above that weigh something
	shares   bool      // it gives shares of the whole before the weights
	talkers  map[string]bool
	thousand string // the sign that parts its thousands, "" for none that is proven
	dashed   bool   // its lines begin with dashes that touch the number: none is a minus
}

var (
	customarily = find(`(?im)cup|quart|\bqts?\b|[\d\x{00BC}-\x{00BE}\x{2150}-\x{215E}]\s*c(?:\.|\s)`)
	row         = find(`(?m)^\s*(\d{1,3})\t\s*\d`)
	item        = find(`(?m)^\s*\(?(\d{1,2})[.)]\s+\S`)
	pointed     = find(`^\s*\d\.\s+\d`) // "1. 5 tsp" is the first line of a list, or 1.5
	dashed      = find(`(?m)^\s*-\d`)
	ring        = find(`(?m)^\s*o\s+([\d\x{00BC}-\x{00BE}\x{2150}-\x{215E}])`)
)

var (
	// Bullets, rings, squares and ticked boxes, by number: they are read and never written.
	box       = find(`^\s*(?:(?:\([ xX]?\)|[-*+>#?\x{2022}\x{2023}\x{2192}\x{00B7}\x{25A0}\x{25A1}\x{25A2}\x{25AA}\x{25CB}\x{25CF}\x{25E6}\x{2610}\x{2611}\x{2713}]+|\p{So}+\x{FE0F}?)\s*)+`)
	ordinal   = find(`^\s*\d{1,2}[.)]\s+((?:an?\s|half|[\d~.]|[a-z]+\s\d).*)$`)
	group     = find(`\(([^()]*)\)`)
	comma     = find(`,(?:\D|$)|;| - (?:\D|$)| -$`)
	dots      = find(`\s*(?:\.{2,}|…+|[=:\t])+\s*|\s+-\s+`)
	blanks    = find(`\s+`)
	serving   = find(`(?i)^(?:makes|serves|feeds|yields?|servings?|nutrition|calories|kcal|prep|preparation|total|summe|gesamt|time|for the|ingredients?|method|directions?|instructions?)\b|^cook(?:[ :]|$)`)
	opening   = find(`(?i)^(?:for the|ingredients?|method|directions?|instructions?|cook)\b`) // behind them a line may go on: "For the syrup: 200 g sugar"
	allergens = find(`(?i)^(?:allergens?|contains|may contain)\s*:`)
	claims    = find(`(?i)^(?:labels?|claims?|diets?|dietary|suitable for|storage|store|shelf life)\s*:`) // "Label: gluten free, vegan"
	greeting  = find(`(?i)^with (?:the |our |my |all )?(?:(?:best|kind|warm|many) )?(?:compliments|thanks|regards|wishes|greetings)\b`)
	ruled     = find(`^\s*[-=*~#]{2,}[^\d]*[-=*~#]{2,}\s*$`) // "-- espuma --"
	// "TEST 3", "x3 for Saturday", "5 stars", "(for 12 portions)", "vanilla v7"
	numberedTitle = find(`(?i)^(?:(?:test|trial|batch|version|attempt|round|page|sheet|formula|table|figure|no\.?)(?: (?:no|nr|number)\.?)? ?#?\d|x ?\d+\b|\d(?:[.,/]\d)? ?stars?[ !.]*$|\(?for \d+ (?:portions?|people|persons?|servings?|guests?|tubs?)\b)|\bv ?\d{1,2}(?: - [^\d]*)?$`)
	// A page's rating, the size of what is churned in, a day, and what a trial does without.
	rated    = find(`(?i)^\(?\d(?:[.,]\d+)?(?: ?/ ?5| out of 5)?(?: stars?)? ?(?:from|by|based on|[-,(])? ?\d[\d.,]*k? (?:votes?|ratings?|reviews?|stars?)\)?$`)
	machine  = find(`(?i)\bfor (?:an?|the|my|our|your) \d+(?:[.,]\d+)?[ -]?(?:l|lit(?:er|re)s?|qts?|quarts?|cups?|pints?|inch|cm)\b\.? (?:freezer|machine|churn|maker|pan|tin|dish|mou?ld|bowl)s?$`)
	dated    = find(`(?i)\s*\b(?:\d{1,2}(?:st|nd|rd|th)? (?:jan|feb|mar|apr|may|june?|july?|aug|sept?|oct|nov|dec)[a-z]*\.?(?: \d{2,4})?|\d{1,2}[./]\d{1,2}[./]\d{2,4})$`)
	lacking  = find(`(?i)\s*\((?:no|without|w/o) [^()\d]*\)`)
	amountIn = find(`\([^()]*\)|\d+(?:[.,]\d+)? ?(?:k?g|ml|l|lbs?|oz)\b`)
	headed   = find(`^\(\d+\)\s`)                                       // "(2) 400 g tins" may be two, or the second line
	minus    = find(`^\s*(?:\x{2212}\s?\d|[\x{2717}\x{2718}\x{274C}])`) // a bullet is another sign; crossed out
	bound    = find(`(?:^|\s)[<>\x{2264}\x{2265}]\d[^<>]*$`)
	wonder   = find(`\S\s*\(?\?+\)?\s*$`) // "100 g sugar?"
	marked   = find("[*_`]{2,}|(^|\\s)[_`]|[_`](\\s|$)")
	halfs    = find(`(?i)\bhalf[\s-]*(?:&|n|'n'?)[\s-]*half\b`)
	finish   = find(`(?i)\s+(?:to taste|to (?:finish|serve|swirl|ripple|drizzle|top|garnish|decorate|dust|coat|sprinkle|fold in|stir in)|as needed|for \w+ing)\s*$`)
	digits   = find(`\d`)
	more     = find(`(?i)^(?:plus|and|\+|with)\s+(?:more|extra|some|a little|a bit)`)
	joined   = find(`(?i)^\s*(?:(?:plus|and|&)\s+|\+\s*)`)
	either   = find(`(?i)\s(?:or|oder|ou)\s|[a-z] ?/ ?[a-z]|[a-z] ?(?:\+|&|\band) ?\d`)
	choices  = find(`(?i)\bor\b|/`)
	fromOf   = find(`(?i)^(?:the )?((?:(?:finely |coarsely )?grated )?(?:zest|peel|rind)|juice|pulp|juice and zest|(?:egg )?(?:whites?|yolks?|yellows?))\s+(?:of|from)\s+(.*)$`)
	times    = find(`^\s*(?:[xX]\s+|[xX]$|\*\s*)`)
	timesOf  = find(`^(\s*)[xX](\d)`) // "2x100 g"; an X before letters is a size
	gap      = find(`[\s:=-]+`)
	titles   = words("anglaise gelato sorbet semifreddo parfait granita kulfi coulis couli sherbet crumble brittle pudding bombe mousse nougat sundae torte fondue base custard foam meringue ripple swirl topping recipe")
	layout   = words("crust glaze ganache compote dough batter assembly decoration decorations finish extras swirls layer layers us customary metric imperial trial test notes note version final part a b c d e i ii iii qty quantity unit item amount weight name custard foam meringue ripple swirl ribbon base topping ingredient the for dense light part ice cream frozen dessert tub price cost sauce filling to serve garnish optional recipe recept rezept recette ricetta receta mix")
)

// measuresFirst reports whether s goes on with a measure, as "2. cups" does.
func measuresFirst(s string) bool { _, name, _ := unit(s); return name != "" && name != "a" }

// heading reports whether s names no ingredient: a title, a yield, a rule.
func (r *Reader) heading(s string) bool {
	if !strings.ContainsFunc(s, func(c rune) bool { return unicode.IsLetter(c) || unicode.IsDigit(c) }) || strings.HasSuffix(s, ":") || serving.in(s) && !(opening.in(s) && r.weighs(s)) {
		return true
	}
	if m := group.parts(s); m != nil && serving.in(m[1]) && !digits.in(group.swap(s, "")) {
		return true // "Ribbon (makes about 2 cups)"
	}
	if r.beside(s) {
		return true
	}
	if (claims.in(s) || greeting.in(s)) && !digits.in(s) && !r.weighs(s) && !r.names.mentions(s) {
		return true
	}
	if (numberedTitle.in(s) || allergens.in(s)) && !r.weighs(s) {
		return true
	}
	if rated.in(s) || machine.in(s) && r.names.untold(machine.swap(s, "")) {
		return true
	}
	if bare := dated.swap(lacking.swap(s, ""), ""); bare != s && r.names.untold(bare) {
		return true // "Trial B (no sucrose) 23 Mar"
	}
	if digits.in(s) {
		return !digits.in(group.swap(s, "")) && onlyLayout(keyOf(amountIn.swap(s, ""))) && !r.names.mentions(s)
	}
	key := keyOf(strings.Trim(s, "-= "))
	if _, food := r.names.all[key]; food {
		return false // "cream" by itself is a line without an amount
	}
	fields := strings.Fields(key)
	if len(fields) > 1 && (titles[fields[len(fields)-1]] || strings.HasSuffix(key, "ice cream")) && !r.forPart(fields) {
		return true
	}
	if cells := cellEnd().Split(s, -1); len(cells) > 1 && slices.ContainsFunc(cells, func(c string) bool { return onlyLayout(keyOf(c)) }) && !r.names.mentions(s) {
		return true // a table's head
	}
	return onlyLayout(key)
}

// untold reports whether a text is a heading's words, and no food by itself, as "cream" is.
func (n *names) untold(s string) bool {
	_, food := n.all[keyOf(s)]
	return !food && onlyLayout(keyOf(s))
}

// onlyLayout reports whether a text has words of headings and no other.
func onlyLayout(key string) bool {
	fields := strings.Fields(key)
	return len(fields) > 0 && !slices.ContainsFunc(fields, func(w string) bool { return !layout[w] })
}

// forPart reports whether words name a food and what it is for: "sugar for the topping".
func (r *Reader) forPart(fields []string) bool {
	at := slices.Index(fields, "for")
	if at < 1 {
		return false
	}
	_, _, food := r.names.look(strings.Join(fields[:at], " "), "")
	return food
}

// line reads a line as it is written, and one that is not taken so without its slips of the
// fingers.
func (r *Reader) line(text string, in whole) (Said, bool) {
	l, ok := r.spelt(text, in)
	if !ok || l.Taken() {
		return l, ok
	}
	if fair, read := r.names.respelt(text); len(read) > 0 {
		if other, ok := r.spelt(fair, in); ok && other.Taken() {
			other.Text, other.ReadAs = l.Text, strings.Join(read, ", ")
			return other, true
		}
	}
	return l, true
}

func (r *Reader) spelt(text string, in whole) (Said, bool) {
	l := Said{Text: strings.TrimSpace(text)}
	if in.table.head != "" && in.table.head == text || in.inGrams && allGrams.in(text) {
		return l, false
	}
	text = ungrouped(r.row(&in.table, text), in.thousand)
	if in.inStep {
		text = lastCell.swap(text, "$1")
	}
	if in.inGrams {
		text = r.grammed(text)
	}
	if in.ringed {
		text = ring.swap(text, "$1")
	}
	switch {
	case in.rows && row.in(text):
		text = text[strings.IndexByte(text, '\t')+1:]
	case in.items && item.in(text):
		text = text[strings.IndexAny(text, ".)")+1:]
	}
	s := tidy(r.quiet(text, in.talkers))
	switch {
	case s == "" && eaten.in(text): // drawn, not written
		l.Doubt = Unknown
		return l, true
	case s == "":
		return l, false
	case len(text) > mostLine:
		l.Doubt = Unknown
		return l, true
	case hashed.in(l.Text) || starred.in(l.Text) || kissed.in(l.Text) && !r.names.mentions(s) || ruled.in(text) || r.heading(s) || r.prose(s) || in.above != nil && (stepNo.in(l.Text) && r.again(s, *in.above) || r.worked(s, *in.above)):
		return l, false
	}
	if in.shares {
		s = sharing.swap(s, "$1")
	}
	p := parse(eggsBehind(unrow(byWeight.swap(s, ""))))
	if struck.in(text) || wonder.in(text) || headed.in(s) {
		p.doubt = Apart
	}
	if in.lone && pointed.in(text) {
		p.doubt = Apart
	}
	if bound.in(text) {
		p.doubt = Vague
	}
	if minus.in(text) || dashed.in(text) && !in.dashed {
		p.doubt = NoAmount
	}
	r.settle(&l, p, in.american)
	if l.Doubt != 0 && l.Doubt != NoMeasure && !l.Grams.Known {
		l.Grams = ingredient.Cell{}
	}
	return l, true
}

// cocoaOf is what chocolate is sold with, of a hundred, that is no dark one: milk chocolate with 25
// and more of cocoa, white with 20 and more of its butter (Directive 2000/36/EC, Annex I, A 4 and 5).
// common practice, no source, of the upper ends.
func cocoaOf(id string) (least, most float64) {
	switch id {
	case "chocolate_milk":
		return 25, 40
	case "chocolate_white":
		return 20, 36
	}
	return 1, 0
}

// hasPercent reports whether a percentage beside a food tells what its record has: its fat
// or its solids, as near as such are printed.
func (r *Reader) hasPercent(id string, percent float64) bool {
	if least, most := cocoaOf(id); percent >= least && percent <= most {
		return true
	}
	in, ok := r.names.lib.Find(id)
	fat, water := in.Cell(ingredient.Fat), in.Cell(ingredient.Water)
	return ok && (fat.Known && fat.Value > 1 && math.Abs(fat.Value-percent) <= min(2, fat.Value/4) || water.Known && math.Abs(100-water.Value-percent) <= 2)
}

// hasFat reports whether a percentage is a record's fat, as near as packs print it.
func (r *Reader) hasFat(id string, percent float64) bool {
	in, ok := r.names.lib.Find(id)
	fat := in.Cell(ingredient.Fat)
	return ok && percent >= 0 && fat.Known && math.Abs(fat.Value-percent) <= 1.5
}

// further reports whether a note weighs another food, as the second of "2 yolks, 1 egg"
// does; eggs beside what they weigh are no other.
func (r *Reader) further(note string, in *ingredient.Ingredient, sum []amount) bool {
	for _, other := range choices().Split(note, -1) {
		if m, _, found := r.names.look(strings.TrimSpace(other), ""); found && choices.in(note) && !strings.HasPrefix(note, "or ") && !slices.Contains(m.ids, in.ID) {
			return true // "bourbon, rum or brandy"
		}
	}
	a, rest, ok := read(strings.TrimPrefix(note, "or "))
	if rest = strings.TrimSpace(rest); !ok || rest == "" || a.in.kind == vague {
		return false
	}
	weighed := len(sum) > 0 && sum[0].word != ""
	m, _, found := r.names.look(strings.TrimPrefix(rest, "of "), "")
	return found && !(weighed && eggParts[in.ID] != "" && eggParts[m.ids[0]] != "") && !slices.Contains(m.ids, in.ID)
}
