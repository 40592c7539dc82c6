package written

import (
	"regexp"
	"strings"
)

// What stands around a line in messages, on pages and in shops' lists, and says nothing
// of how much is weighed.
var (
	tag      = regexp.MustCompile(`</?[a-zA-Z][^<>]{0,80}>`)
	framed   = regexp.MustCompile(`<(\d[^<>]*)>`)
	eaten    = regexp.MustCompile(`[\x{1F32D}-\x{1F37F}\x{1F950}-\x{1F96F}\x{1F9C0}-\x{1F9CB}\x{1FAD0}-\x{1FADB}]`)
	emoji    = regexp.MustCompile(`[\x{1F000}-\x{1FAFF}\x{2600}-\x{260F}\x{2612}\x{2614}-\x{2712}\x{2714}-\x{2716}\x{2719}-\x{274B}\x{274D}-\x{27BF}\x{2B50}\x{FE0F}\x{200D}]+`)
	keycap   = regexp.MustCompile(`^\s*\d\x{FE0F}?\x{20E3}`)
	address  = regexp.MustCompile(`\(?\bhttps?://\S+`)
	energy   = regexp.MustCompile(`(?i)[,;]?\s*\(?\b[\d.,]+ ?(?:kcal|kj|cal(?:ories)?)\b(?: ?(?:/|per) ?\d+ ?(?:g|ml))?\)?`)
	cost     = regexp.MustCompile(`\s+(?:[£$€¥] ?[\d.,]+|[\d.,]+ ?[£$€¥])\s*$`)
	please   = regexp.MustCompile(`(?i)[\s,]+(?:pls|plz|please|thanks|thx|ta|xx?|lol|haha)\s*$`)
	clock    = regexp.MustCompile(`^\s*[\[(]?\d{1,2}:\d{2}(?::\d{2})?[\])]?\s*`)
	fillers  = regexp.MustCompile(`(?i)^(?:(?:and|so|oh|ok|okay|k|then|plus|also|you|we|i|need|needs|used|use|add|get|with|will)[\s,]+)+(\d|an?\s|half\s)`)
	speaker  = regexp.MustCompile(`^(\pL{2,15}):\s*(\d.*)$`)
	promised = regexp.MustCompile(`(?i)^ingredients?\b[^\d:]*:?\s*(\d.*)$`)
	spoonOf  = regexp.MustCompile(`(?i)\b(tea|table)[ -]spoon`)
	swiss    = regexp.MustCompile(`\b(\d{1,3})['\x{2019}](\d{3})\b`)
	unitHead = regexp.MustCompile(`(?i)^(\pL.*\D)\b(gr|g|grams?|kg|ml|cl)\.? (\d+(?:[.,]\d+)?)$`) // "sugar gr. 110"
	number0  = regexp.MustCompile(`(?i)\s(?:n\.|n\x{00B0}|no\.) ?(\d{1,2})$`)
	packsOf  = regexp.MustCompile(`^(\pL[^\d]*?)[\s,]+(\d[\d.,]* ?(?:g|kg|ml|cl|l|oz)) ?x ?(\d{1,2})(?: (?:packs?|packets?|cartons?|tins?|cans?|bottles?))?$`)
	dozen    = regexp.MustCompile(`(?i)^\s*(?:a )?dozen\s+`)
	shorts   = regexp.MustCompile(`(?i)\b(wh|hvy|gran|van|extr|choc|evap|cond|brn)\.(\s)`)
	glued    = regexp.MustCompile(`^(\d+(?:[.,]\d+)?)(g|kg|ml)(\pL{4,}.*)$`)
	ofSize   = regexp.MustCompile(`(?i)^(.*\b(?:eggs?|yolks?|whites?)\b.*?)[\s.,:-]+(?:x ?)?(\d{1,2}(?: (?:small|medium|large|jumbo))?)$`)
)

// notSpeakers are words before a colon that change what a line says.
var notSpeakers = words("sum total subtotal option alternative alternatively variation instead or not without double triple half max min maximum minimum reduce reduced increase lower raise replace swap change correction corrected lean rich scale scaled was were old omit skip none no optional rest left leftover per each about extra more less minus plus of step day batch yield makes")

// full are words that are cut short with a point. common practice, no source.
var full = map[string]string{"wh": "whole", "hvy": "heavy", "gran": "granulated", "van": "vanilla", "extr": "extract", "choc": "chocolate", "evap": "evaporated", "cond": "condensed", "brn": "brown"}

// quiet takes from a line what is said around it.
func (r *Reader) quiet(s string) string {
	s = keycap.ReplaceAllString(s, "")
	s = framed.ReplaceAllString(tag.ReplaceAllString(s, " "), "$1")
	s = strings.NewReplacer("{", "(", "}", ")", "\"", "", "“", "", "”", "").Replace(emoji.ReplaceAllString(s, " "))
	s = strings.TrimSpace(address.ReplaceAllString(s, ""))
	s = strings.TrimSpace(cost.ReplaceAllString(energy.ReplaceAllString(s, ""), ""))
	for please.MatchString(s) {
		s = please.ReplaceAllString(s, "")
	}
	s = clock.ReplaceAllString(s, "")
	if m := promised.FindStringSubmatch(s); m != nil {
		s = m[1]
	}
	if m := speaker.FindStringSubmatch(s); m != nil && !notSpeakers[strings.ToLower(m[1])] && !changed[strings.ToLower(m[1])] && !serving.MatchString(s) {
		if _, food := r.names.all[keyOf(m[1])]; !food {
			if a, rest, ok := read(m[2]); ok && a.doubts == 0 && strings.TrimSpace(rest) != "" {
				s = m[2]
			}
		}
	}
	s = swiss.ReplaceAllString(spoonOf.ReplaceAllString(s, "${1}spoon"), "$1$2")
	s = number0.ReplaceAllString(unitHead.ReplaceAllString(s, "$1 $3 $2"), " $1")
	s = packsOf.ReplaceAllString(s, "$3 x $2 $1")
	s = shorts.ReplaceAllStringFunc(s, func(short string) string {
		return full[strings.ToLower(strings.TrimRight(short, ". "))] + " "
	})
	s = dozen.ReplaceAllString(s, "12 ")
	s = fillers.ReplaceAllString(s, "$1")
	if m := glued.FindStringSubmatch(s); m != nil {
		if w, _ := word(m[2] + m[3]); measures[strings.ToLower(w)] == (measure{}) {
			s = m[1] + " " + m[2] + " " + m[3]
		}
	}
	return strings.TrimSpace(s)
}

// eggsBehind turns a line round that ends in how many eggs, and how large: "egg whites, 4 large".
func eggsBehind(s string) string {
	if m := ofSize.FindStringSubmatch(s); m != nil && !digits.MatchString(m[1]) {
		return m[2] + " " + m[1]
	}
	return s
}
