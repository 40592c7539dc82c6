package written

import (
	"slices"
	"strings"
	"unicode"

	"ripplewright/internal/form/customary"
)

// parts are what a line is made of.
type parts struct {
	sum      []amount // added together
	beside   []amount // the same again in other measures
	times    float64  // how often, 1 for once
	packs    bool     // the amounts are of one packet
	name     string
	notes    []string
	percent  float64 // −1: none
	upTo     float64 // of a range of percentages the upper end; 0: it is none
	doubt    Doubt
	whole    string  // what an amount was made from: "juice", "zest"
	each     bool    // the weight beside them is of one
	lettered bool    // the size of eggs is a letter
	behind   bool    // the amount ends the line, behind the name and all remarks: "hazelnuts, roasted 150 g"
	pieces   float64 // how many eggs the weight is said to be, 0: nobody says
}

// unpaired are the brackets that are left when those in pairs are taken out.
var unpaired = strings.NewReplacer("(", " ", ")", " ")

func parse(s string) parts {
	p := parts{times: 1, percent: -1}
	var inside []string
	s = group().ReplaceAllStringFunc(s, func(g string) string {
		inside = append(inside, strings.TrimSpace(g[1:len(g)-1]))
		return " "
	})
	s = unpaired.Replace(s)
	if m := fromOf.parts(s); m != nil {
		p.whole, s = strings.ToLower(m[1]), m[2]
	}
	if m := lastly.parts(s); m != nil {
		a, rest, ok := read(m[4])
		if ok && a.word != "" && (m[3] != "" && strings.TrimSpace(rest) == "" || isContainer(rest)) {
			s = m[2] + " x " + m[4] + " " + m[1] // "heavy cream 2 x 1 l", "condensed milk: 2 14-oz cans"
		}
	}
	main, tail := s, ""
	leading := percent.at(strings.TrimSpace(s))
	if _, _, ok := read(strings.TrimSpace(s)); !ok || leading != nil && leading[0] == 0 || strings.HasPrefix(strings.TrimSpace(s), "half-") {
		s = blanks.swap(dots.swap(s, " "), " ")
		main = s
		for _, at := range gap().FindAllStringIndex(s, -1) {
			end := times.swap(timesOf.swap(s[at[1]:], "$1$2"), "")
			if _, rest, ok := read(end); ok && strings.ContainsFunc(s[:at[0]], unicode.IsLetter) && (strings.TrimSpace(rest) == "" || rest[0] == ',') {
				main = strings.TrimSuffix(end, rest) + " " + s[:at[0]] + rest
				p.behind = strings.TrimSpace(rest) == "" && len(inside) == 0
				break
			}
			if a, rest, ok := read(end); ok && a.in.kind == mass && a.doubts == 0 && isPlain(rest) && strings.ContainsFunc(s[:at[0]], unicode.IsLetter) {
				main = strings.TrimSuffix(end, rest) + " " + s[:at[0]] + ", " + strings.TrimSpace(rest) // "mango 450 g peeled"
				break
			}
		}
	}
	if at := comma.at(main); at != nil {
		main, tail = main[:at[0]], strings.TrimLeft(main[at[0]:], ",;- ")
	}
	main = strings.TrimSpace(main)
	// A remark in front of the first amount: "2 x", "2 14-oz".
	p.amounts(main)
	for _, g := range inside {
		p.paren(g)
	}
	for _, t := range strings.FieldsFunc(tail, func(c rune) bool { return c == ',' || c == ';' }) {
		p.note(strings.TrimSpace(t))
	}
	if m := percent().FindStringSubmatchIndex(p.name); m != nil {
		p.percent = value(p.name[m[2]:m[3]])
		p.name = p.name[:m[0]] + " " + p.name[m[1]:]
	}
	p.name = strings.TrimSpace(blanks.swap(p.name, " "))
	for len(p.notes) > 0 && (p.name == "" && len(p.sum) > 0 || isPlain(p.name)) {
		p.name, p.notes = p.name+" "+p.notes[0], p.notes[1:] // "peeled, pitted peaches"
	}
	if at := purpose.at(p.name); at != nil && at[0] > 0 {
		p.notes = append(p.notes, strings.TrimSpace(p.name[at[0]:]))
		p.name = p.name[:at[0]]
	}
	if at := finish.at(p.name); at != nil {
		p.name = p.name[:at[0]]
	}
	return p
}

// isPlain reports whether a name is nothing but what was done to the food.
func isPlain(name string) bool {
	fields := strings.Fields(strings.ToLower(name))
	return len(fields) > 0 && !slices.ContainsFunc(fields, func(w string) bool { return !plainWords[w] && !sizeWords[w] && w != "and" })
}

func value(s string) float64 { v, _, _, _ := number(s); return v }

// amounts reads the amounts that main begins with; the rest is the name.
func (p *parts) amounts(main string) {
	if percent.at(main) != nil && percent.at(main)[0] == 0 {
		p.name = main
		return
	}
	a, rest, ok := read(main)
	if !ok {
		p.name = main
		return
	}
	if m := percent.at(strings.TrimSpace(rest)); m != nil && m[0] == 0 && a.word == "" {
		p.name = main
		return
	}
	rest = timesOf.swap(rest, "${1}x $2")
	if x := times.of(rest); x != "" && a.word == "" {
		if b, after, ok := read(rest[len(x):]); ok {
			p.times, a, rest, p.packs = a.n, b, after, true
		} else {
			rest = rest[len(x):]
			if u, name, after := unit(rest); name != "" && u.kind != vague {
				a.in, a.word, rest = u, name, after
			}
		}
	} else if b, after, ok := read(strings.TrimSpace(rest)); ok && a.word == "" && b.in.size > 0 && b.doubts != Vague {
		u, name, _ := unit(after)
		if held := name != "" && u.kind == container; !held && !partOf.in(main) {
			p.doubt = Apart // "half 100 g", "one fifty g", "2  1 cup"
		}
		p.times, a, rest, p.packs = a.n, b, after, true
	}
	if a.word == "" && strings.HasPrefix(strings.ToLower(strings.TrimSpace(rest)), "the ") {
		a.doubts = Vague // "half the whites"
	}
	p.sum = append(p.sum, a)
	for {
		if m := joined.of(rest); m != "" {
			if b, after, ok := read(rest[len(m):]); ok && b.word != "" {
				p.sum, rest = append(p.sum, b), after
				continue
			}
		}
		t := strings.TrimSpace(rest)
		if b, after, ok := read(t); ok && a.in.size == customary.PoundG && b.in.kind == ounce && len(p.sum) == 1 {
			p.sum, rest = append(p.sum, b), after // "1 lb 2 oz"
			continue
		}
		if strings.HasPrefix(t, "/") || strings.HasPrefix(t, "|") || strings.HasPrefix(t, "=") {
			if b, after, ok := read(strings.TrimSpace(t[1:])); ok && b.word != "" {
				p.beside, rest = append(p.beside, b), after
				continue
			}
		}
		break
	}
	rest = strings.TrimSpace(rest)
	if u, name, after := unit(rest); (u.kind == container || blocks[strings.ToLower(name)]) && name != "" && (p.packs || p.times != 1 || a.word != "" && (a.in.kind == mass || a.in.kind == volume || a.in.kind == ounce)) {
		rest = after
	}
	name := strings.TrimSpace(strings.TrimPrefix(strings.TrimSpace(rest), "of "))
	if at := plus.at(name); at != nil {
		p.note(strings.TrimSpace(name[at[0]:]))
		name = name[:at[0]]
	}
	if m := lastAmount.parts(name); m != nil && (a.word != "" || eggs.in(m[1])) {
		if b, rest, ok := read(m[2]); ok && b.doubts == 0 && b.in.size > 0 && strings.TrimSpace(rest) == "" {
			name, p.beside = strings.TrimRight(m[1], " ,-"), append(p.beside, b) // "1 can condensed milk 14oz"
		}
	}
	p.name = name
}

// lastAmount finds an amount that a name ends in.
var lastAmount = find(`^(\pL.*?)[\s,]+(\d[\d.,/]* ?\pL{1,6}\.?)$`)

// share takes a percentage, or a range of them, that stands in a remark.
func (p *parts) share(s string) bool {
	m := percent.parts(s)
	if m == nil || p.percent >= 0 {
		return false
	}
	p.percent = value(m[1])
	if m := percents.parts(s); m != nil {
		p.percent, p.upTo = value(m[1]), value(m[2])
	}
	return true
}

// paren takes what stands in brackets: another measure, a percentage or a remark.
func (p *parts) paren(g string) {
	if p.share(g) {
		return
	}
	if a, rest, ok := read(g); ok && len(p.sum) == 0 && a.word == "" && a.doubts == 0 && strings.TrimSpace(rest) == "" && eggs.in(p.name) {
		p.sum = append(p.sum, a) // "yolks (6)"
		return
	}
	p.each = p.each || each.in(g)
	g = inAll.swap(each.swap(g, ""), "")
	if orMany.in(g) {
		p.note(g) // "5 if small"
		return
	}
	if a, rest, ok := read(g); ok && a.in.kind == vague && a.word != "" && strings.TrimSpace(rest) == "" && len(p.sum) > 0 && p.sum[0].in.kind == mass {
		return // "1 g salt (a pinch)"
	}
	if m := counted.parts(g); m != nil && len(p.sum) > 0 && eggs.in(p.name) {
		p.pieces = value(m[1]) // "150 g egg whites (about 5)"
		return
	}
	for _, piece := range strings.FieldsFunc(strings.TrimPrefix(g, "or "), func(c rune) bool { return c == '/' || c == ';' || c == '=' }) {
		a, rest, ok := read(strings.TrimSpace(piece))
		if strings.ContainsRune(g, '/') && digits.in(g) && strings.Contains(g, "1/") {
			a, rest, ok = read(g)
		}
		if ok && a.in.kind == mass {
			rest = fleshed.swap(rest, "")
		}
		if ok && a.word != "" && a.in.kind != vague && strings.TrimSpace(rest) == "" && a.doubts == 0 {
			if len(p.sum) == 1 && p.sum[0].word == "" && p.times == 1 && startsContainer(p.name) {
				p.times, p.sum[0] = p.sum[0].n, a
				_, _, p.name = unit(p.name)
				p.name = strings.TrimPrefix(strings.TrimSpace(p.name), "of ")
			} else {
				p.beside = append(p.beside, a)
			}
			continue
		}
		p.note(g)
		return
	}
}

// blocks are pieces whose weight stands before them: "100 g bar".
var blocks = words("bar bars slice slices piece pieces")

var (
	// fleshed finds that what is weighed is what is eaten of it: "300 g flesh".
	fleshed   = find(`(?i)^\s*(?:of )?(?:flesh|leaves|pulp|meat|net|(?:when |once )?(?:peeled|pitted|stoned|hulled|trimmed|cleaned|shelled|prepared)(?: weight)?)$`)
	fleshOnly = find(`(?i)^(?:flesh|pulp|meat|peeled|pitted|stoned|prepared)(?: only| weight)?[\s:,-]*(\d[\d.,]* ?(?:k?g|oz))$`) // "flesh only - 300 g"
	plus      = find(`(?i)\s(?:plus\s|\+\s*(?:\d|extra|more|some)|(?:&|and)\s+\d)`)                                              // "1 cup sugar + 2 tbsp"
	partOf    = find(`(?i)^\S+ (?:\S+ )?of `)                                                                                    // "half of 300 g"
	each      = find(`(?i)\s*\b(?:each|apiece|a piece|per (?:piece|can|tin|bar|egg|yolk|white|packet|pack|envelope|sachet|stick|cookie|fruit))\b`)
	inAll     = find(`(?i),?\s*\b(?:in )?(?:total|all|altogether|all told)$`)
	purpose   = find(`(?i)\s+for (?:the \pL+|tops?|toppings?|decoration|decor|service|crunch|colou?r)$`)
	lessOr    = find(`(?i)^or (?:(?:a (?:little|bit|touch)|slightly|somewhat|even) )?(?:less|more)\b`)
	// What cannot be read, or is left to the tongue.
	torn = find(`(?i)\b(?:torn|illegible|unreadable|smudged|faded|stained|cut off|unclear|can't read|cannot read|not sure|i think|i guess|maybe|perhaps|probably)\b|\bmore to taste\b`)
	// Another number of the same, or two sizes: "or 5 if large", "from large or jumbo eggs".
	orMany    = find(`(?i)^(?:or )?\d+ (?:if|for|of|when|with)\b`)
	twoSizes  = find(`(?i)\b(?:small|medium|large|jumbo|xl)\b[- ](?:or|to|/) ?(?:extra |very |x-)?(?:small|medium|large|jumbo|xl)\b`)
	counted   = find(`(?i)^(?:about|abt\.?|around|approx\.?|approximately|ca\.?|circa|roughly|from|~|\s)*(\d{1,2})(?: ?(?:-|to|or) ?\d{1,2})?(?:[ -]?ish)?$`)
	wholeEggs = find(`(?i)\beggs?$`) // divided they are yolks and whites, or some now and some later
	eggs      = find(`(?i)\b(?:eggs?|yolks?|whites?)\b`)
	lastly    = find(`^(.*\pL.*?)[\s:,-]+(\d{1,3})(?:(\s*[x*]\s*|\s+X\s*)|\s+)(\d.*)$`)
)

// filledBy are remarks that a spoon or a cup holds more or less than it is.
var filledBy = words("heaped heaping rounded scant generous generously overflowing mounded shy brimming")

// isContainer reports whether s is the word for a container and no more.
func isContainer(s string) bool {
	u, name, rest := unit(s)
	return u.kind == container && name != "" && strings.TrimSpace(rest) == ""
}

func startsContainer(s string) bool { u, name, _ := unit(s); return u.kind == container && name != "" }

func (p *parts) note(t string) {
	if t == "" {
		return
	}
	if p.share(t) {
		return
	}
	if m := counted.parts(t); m != nil && len(p.sum) > 0 && p.sum[0].in.kind == mass && eggs.in(p.name) {
		p.pieces = value(m[1]) // a table's note: "egg yolks, 90 g, about 5"
		return
	}
	if m := fleshOnly.parts(t); m != nil {
		t = m[1]
	}
	if joined.in(t) && !more.in(t) && digits.in(t) {
		p.doubt = Apart
		switch a, rest, ok := read(t[len(joined.of(t)):]); {
		case ok && strings.TrimSpace(rest) != "":
			p.doubt = Either // "plus 3 yolks"
		case ok && a.word != "" && a.doubts == 0 && len(p.sum) > 0 && p.times == 1:
			p.sum, p.doubt = append(p.sum, a), 0 // "1/2 cup sugar plus 2 tablespoons"
			return
		}
	}
	if at := finish.at(" " + t); at != nil && at[0] == 0 && len(p.sum) > 0 && strings.HasPrefix(strings.ToLower(t), "or ") {
		p.doubt = Vague
	}
	if (lessOr.in(t) || torn.in(t)) && len(p.sum) > 0 {
		p.doubt = Vague
	}
	if filledBy[strings.ToLower(t)] && len(p.sum) > 0 && p.sum[0].in.kind == volume {
		p.doubt = Vague // "1 tsp salt, heaped"
	}
	if strings.EqualFold(t, "separated") || strings.EqualFold(t, "divided") && wholeEggs.in(p.name) && len(p.sum) > 0 && p.sum[0].in.kind == pieces {
		p.doubt = Separated
	}
	if orMany.in(t) || twoSizes.in(t) {
		p.doubt = Range
	}
	if len(p.sum) == 0 {
		a, rest, ok := read(t)
		rest = strings.TrimSpace(rest)
		if ok && a.word != "" && rest == "" {
			p.sum = append(p.sum, a)
			return
		}
		if ok && a.word == "" && a.doubts == 0 && sizeWords[strings.ToLower(rest)] && eggs.in(p.name) {
			p.sum, p.name = append(p.sum, a), p.name+" "+rest // "egg yolks, 6 large"
			return
		}
		if ok && a.word == "" && a.doubts == 0 && isPlain(rest) {
			p.sum = append(p.sum, a) // "bananas, 3 ripe"
			return
		}
	}
	if a, rest, ok := read(each.swap(t, "")); ok && a.word != "" && a.doubts == 0 && a.in.size > 0 && strings.TrimSpace(rest) == "" {
		p.each = p.each || each.in(t)
		p.beside = append(p.beside, a) // "100 g sugar, about 1/2 cup"
		return
	}
	p.notes = append(p.notes, t)
}
