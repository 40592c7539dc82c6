package written

import (
	"regexp"
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"

	"ripplewright/internal/food/egg"
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
	american := strings.Contains(text, "cup") || strings.Contains(text, "quart")
	for _, raw := range strings.FieldsFunc(text, func(c rune) bool { return c == '\n' || c == '\r' || c == '\u2028' }) {
		if l, ok := r.line(raw, american); ok {
			all = append(all, l)
		}
	}
	return all
}

// Line reads one line; false for a heading or nothing.
func (r *Reader) Line(text string) (Said, bool) { return r.line(text, false) }

var fractions = strings.NewReplacer("½", " 1/2", "⅓", " 1/3", "⅔", " 2/3", "¼", " 1/4", "¾", " 3/4", "⅕", " 1/5", "⅖", " 2/5", "⅗", " 3/5", "⅘", " 4/5",
	"⅙", " 1/6", "⅚", " 5/6", "⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8", "⅑", " 1/9", "⅒", " 1/10", "⅐", " 1/7")

var signs = strings.NewReplacer("⁄", "/", "×", "x", "–", "-", "—", "-", "−", "-", "‐", "-", "‑", "-", "’", "'", "‘", "'", "\ufeff", "", "\u200b", "", "\u00ad", "", "[", "(", "]", ")")

var (
	// Bullets, rings, squares and ticked boxes, by number: they are read and never written.
	box     = regexp.MustCompile(`^\s*(?:\([ xX]?\)|[-*+>#\x{2022}\x{00B7}\x{25A0}\x{25A1}\x{25A2}\x{25AA}\x{25CB}\x{25CF}\x{25E6}\x{2610}\x{2611}\x{2713}]+)+\s*`)
	ordinal = regexp.MustCompile(`^\s*\d{1,2}[.)]\s+((?:an?\s|half|[\d~.]|[a-z]+\s\d).*)$`)
	group   = regexp.MustCompile(`\(([^()]*)\)`)
	comma   = regexp.MustCompile(`,(?:\D|$)|;| - | -$`)
	dots    = regexp.MustCompile(`\s*(?:\.{2,}|…+|[=:\t])+\s*|\s+-\s+`)
	blanks  = regexp.MustCompile(`\s+`)
	serving = regexp.MustCompile(`(?i)^(?:makes|serves|yields?|servings?|prep|cook|total|time|for the|ingredients?|method|directions?|instructions?)\b`)
	digits  = regexp.MustCompile(`\d`)
	more    = regexp.MustCompile(`(?i)^(?:plus|and|\+|with)\s+(?:more|extra|some|a little|a bit)`)
	joined  = regexp.MustCompile(`(?i)^\s*(?:plus|and|\+|&)\s+`)
	either  = regexp.MustCompile(`(?i)\s(?:or|oder|ou)\s|[a-z]/[a-z]`)
	fromOf  = regexp.MustCompile(`(?i)^(juice|zest|peel|grated zest|juice and zest|whites?|yolks?)\s+(?:of|from)\s+(.*)$`)
	times   = regexp.MustCompile(`^\s*[xX*]\s*`)
	gap     = regexp.MustCompile(`[\s:=-]+`)
	titles  = words("base custard foam meringue ripple swirl topping recipe")
	layout  = words("custard foam meringue ripple swirl base topping ingredient the for dense light part ice cream frozen dessert sauce filling to serve garnish optional recipe mix")
)

// tidy is a line without bullets, in one form of each sign.
func tidy(text string) string {
	s := norm.NFKC.String(fractions.Replace(text))
	s = signs.Replace(s)
	s = strings.Map(func(c rune) rune {
		if unicode.IsControl(c) && c != '\t' {
			return ' '
		}
		return c
	}, s)
	s = box.ReplaceAllString(strings.ToValidUTF8(s, ""), "")
	if m := ordinal.FindStringSubmatch(s); m != nil && !measuresFirst(m[1]) {
		s = m[1]
	}
	return strings.TrimSpace(s)
}

// measuresFirst reports whether s goes on with a measure, as "2. cups" does.
func measuresFirst(s string) bool { _, name, _ := unit(s); return name != "" && name != "a" }

// heading reports whether s names no ingredient: a title, a yield, a rule.
func (r *Reader) heading(s string) bool {
	if !strings.ContainsFunc(s, func(c rune) bool { return unicode.IsLetter(c) || unicode.IsDigit(c) }) || strings.HasSuffix(s, ":") || serving.MatchString(s) {
		return true
	}
	if digits.MatchString(s) {
		return false
	}
	fields := strings.Fields(keyOf(strings.Trim(s, "-= ")))
	if len(fields) > 1 && titles[fields[len(fields)-1]] {
		return true
	}
	for _, w := range fields {
		if !layout[w] {
			return false
		}
	}
	return true
}

func (r *Reader) line(text string, american bool) (Said, bool) {
	l := Said{Text: strings.TrimSpace(text)}
	s := tidy(text)
	switch {
	case s == "":
		return l, false
	case len(text) > mostLine:
		l.Doubt = Unknown
		return l, true
	case r.heading(s):
		return l, false
	}
	p := parse(s)
	r.settle(&l, p, american)
	if l.Doubt != 0 && l.Doubt != NoMeasure && !l.Grams.Known {
		l.Grams = ingredient.Cell{}
	}
	return l, true
}

// parts are what a line is made of.
type parts struct {
	sum     []amount // added together
	beside  []amount // the same again in other measures
	times   float64  // how often, 1 for once
	packs   bool     // the amounts are of one packet
	name    string
	notes   []string
	percent float64 // −1: none
	doubt   Doubt
	whole   string // what an amount was made from: "juice", "zest"
}

func parse(s string) parts {
	p := parts{times: 1, percent: -1}
	var inside []string
	s = group.ReplaceAllStringFunc(s, func(g string) string {
		inside = append(inside, strings.TrimSpace(g[1:len(g)-1]))
		return " "
	})
	s = strings.NewReplacer("(", " ", ")", " ").Replace(s)
	if m := fromOf.FindStringSubmatch(s); m != nil {
		p.whole, s = strings.ToLower(m[1]), m[2]
	}
	main, tail := s, ""
	if _, _, ok := read(strings.TrimSpace(s)); !ok || strings.HasPrefix(strings.TrimSpace(s), "half-") {
		s = blanks.ReplaceAllString(dots.ReplaceAllString(s, " "), " ")
		main = s
		for _, at := range gap.FindAllStringIndex(s, -1) {
			end := times.ReplaceAllString(s[at[1]:], "")
			if _, rest, ok := read(end); ok && strings.ContainsFunc(s[:at[0]], unicode.IsLetter) && (strings.TrimSpace(rest) == "" || rest[0] == ',') {
				main = strings.TrimSuffix(end, rest) + " " + s[:at[0]] + rest
				break
			}
		}
	}
	if at := comma.FindStringIndex(main); at != nil {
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
	if m := percent.FindStringSubmatchIndex(p.name); m != nil {
		p.percent = value(p.name[m[2]:m[3]])
		p.name = p.name[:m[0]] + " " + p.name[m[1]:]
	}
	p.name = strings.TrimSpace(blanks.ReplaceAllString(p.name, " "))
	return p
}

func value(s string) float64 { v, _, _, _ := number(s); return v }

// amounts reads the amounts that main begins with; the rest is the name.
func (p *parts) amounts(main string) {
	if percent.FindStringIndex(main) != nil && percent.FindStringIndex(main)[0] == 0 {
		p.name = main
		return
	}
	a, rest, ok := read(main)
	if !ok {
		p.name = main
		return
	}
	if m := percent.FindStringIndex(strings.TrimSpace(rest)); m != nil && m[0] == 0 && a.word == "" {
		p.name = main
		return
	}
	if x := times.FindString(rest); x != "" && a.word == "" {
		if b, after, ok := read(rest[len(x):]); ok {
			p.times, a, rest, p.packs = a.n, b, after, true
		} else {
			rest = rest[len(x):]
		}
	} else if b, after, ok := read(strings.TrimSpace(rest)); ok && a.word == "" && b.in.size > 0 && b.doubts != Vague {
		p.times, a, rest, p.packs = a.n, b, after, true
	}
	p.sum = append(p.sum, a)
	for {
		if m := joined.FindString(rest); m != "" {
			if b, after, ok := read(rest[len(m):]); ok && b.word != "" {
				p.sum, rest = append(p.sum, b), after
				continue
			}
		}
		t := strings.TrimSpace(rest)
		if strings.HasPrefix(t, "/") || strings.HasPrefix(t, "|") || strings.HasPrefix(t, "=") {
			if b, after, ok := read(strings.TrimSpace(t[1:])); ok && b.word != "" {
				p.beside, rest = append(p.beside, b), after
				continue
			}
		}
		break
	}
	rest = strings.TrimSpace(rest)
	if u, name, after := unit(rest); u.kind == container && name != "" && (p.packs || p.times != 1) {
		rest = after
	}
	name := strings.TrimSpace(strings.TrimPrefix(strings.TrimSpace(rest), "of "))
	if i := strings.Index(strings.ToLower(name), " plus "); i > 0 {
		p.note(name[i+1:])
		name = name[:i]
	}
	p.name = name
}

// paren takes what stands in brackets: another measure, a percentage or a remark.
func (p *parts) paren(g string) {
	if m := percent.FindStringSubmatch(g); m != nil && p.percent < 0 {
		p.percent = value(m[1])
		return
	}
	for _, piece := range strings.FieldsFunc(g, func(c rune) bool { return c == '/' || c == ';' || c == '=' }) {
		a, rest, ok := read(strings.TrimSpace(piece))
		if strings.ContainsRune(g, '/') && digits.MatchString(g) && strings.Contains(g, "1/") {
			a, rest, ok = read(g)
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

func startsContainer(s string) bool { u, name, _ := unit(s); return u.kind == container && name != "" }

func (p *parts) note(t string) {
	if t == "" {
		return
	}
	if m := percent.FindStringSubmatch(t); m != nil && p.percent < 0 {
		p.percent = value(m[1])
		return
	}
	if joined.MatchString(t) && !more.MatchString(t) && digits.MatchString(t) {
		p.doubt = Apart
	}
	if strings.EqualFold(t, "separated") {
		p.doubt = Separated
	}
	if len(p.sum) == 0 {
		if a, rest, ok := read(t); ok && a.word != "" && strings.TrimSpace(rest) == "" {
			p.sum = append(p.sum, a)
			return
		}
	}
	p.notes = append(p.notes, t)
}

// settle finds the ingredient and the grams of p.
func (r *Reader) settle(l *Said, p parts, american bool) {
	l.Note = strings.Join(p.notes, ", ")
	name, size := r.sized(&p)
	if p.whole != "" {
		name += " " + one(strings.TrimPrefix(p.whole, "grated "))
	}
	l.Name = name
	m, turned, ok := r.names.look(name, strings.Join(p.notes[:min(1, len(p.notes))], ""))
	loose := m.loose
	if p.percent >= 0 {
		if q, far, fits := r.names.byPercent(name, p.percent); fits {
			m, ok = q, len(q.ids) > 0
			if far {
				l.Doubt = FarPercent
			}
		} else if !ok {
			l.Doubt = Unknown
		} else if len(m.ids) == 1 {
			l.Doubt = FarPercent
		}
	}
	if !ok {
		if l.Doubt = Unknown; either.MatchString(name) {
			l.Doubt = Either
		}
		if near, found := r.names.near(name); found {
			l.Meanings = near.ids
		}
		return
	}
	in, _ := r.names.lib.Find(m.ids[0])
	l.Ingredient, l.Meanings = in, m.ids
	if (len(m.ids) > 1 || m.perhaps) && l.Doubt == 0 {
		l.Doubt = Several
	}
	for i, note := range p.notes {
		if l.Doubt == 0 && !(turned && i == 0) && !harmless(note, in.Name+" "+in.Kitchen()) && !more.MatchString(note) {
			l.Doubt = Other
		}
	}
	for _, w := range strings.Fields(keyOf(l.Note)) {
		if _, other := r.names.all[w+" "+keyOf(in.Kitchen())]; browned[w] && other && (l.Doubt == 0 || l.Doubt == Other) {
			l.Doubt, l.Meanings = Several, append([]string{in.ID}, r.names.all[w+" "+keyOf(in.Kitchen())].ids...)
		}
	}
	if p.doubt != 0 && l.Doubt == 0 {
		l.Doubt = p.doubt
	}
	r.weigh(l, p, size, loose, american)
}

// sized takes the size of eggs out of the name, "" for none.
func (r *Reader) sized(p *parts) (name, size string) {
	fields := strings.Fields(p.name)
	var kept []string
	eggy := false
	for _, f := range fields {
		switch one(strings.ToLower(strings.Trim(f, "."))) {
		case "egg", "yolk", "white":
			eggy = true
		}
	}
	if !eggy {
		return p.name, ""
	}
	for i := 0; i < len(fields); i++ {
		f := strings.ToLower(strings.Trim(fields[i], "-."))
		switch {
		case f == "extra" && i+1 < len(fields) && strings.EqualFold(fields[i+1], "large"):
			size, i = "extra large", i+1
		case f == "extra-large" || f == "xl":
			size = "extra large"
		case f == "large" || f == "medium" || f == "small" || f == "jumbo" || f == "peewee":
			size = f
		case fields[i] == "L" || fields[i] == "M" || fields[i] == "S":
			size = map[string]string{"L": "large", "M": "medium", "S": "small"}[fields[i]]
		case f == "size" || f == "sized":
		default:
			kept = append(kept, fields[i])
		}
	}
	return strings.Join(kept, " "), size
}

// european are the names of sizes there.
var european = map[string]string{"small": "S", "medium": "M", "large": "L", "extra large": "XL"}

func (r *Reader) classOf(size string) (egg.Size, bool) {
	if size == "" {
		size = r.eggs.Size
	} else if strings.EqualFold(r.eggs.System, "EU") {
		size = european[size]
	}
	s, err := egg.Find(r.eggs.System, size)
	return s, err == nil
}
