package written

import (
	"slices"
	"strings"
)

// What stands around a line in messages, on pages and in shops' lists, and says nothing
// of how much is weighed.
var (
	tag       = find(`</?[a-zA-Z][^<>]{0,80}>`)
	framed    = find(`<(\d[^<>]*)>`)
	eaten     = find(`[\x{1F32D}-\x{1F37F}\x{1F950}-\x{1F96F}\x{1F9C0}-\x{1F9CB}\x{1FAD0}-\x{1FADB}]`)
	emoji     = find(`[\x{1F000}-\x{1FAFF}\x{2600}-\x{260F}\x{2612}\x{2614}-\x{2712}\x{2714}-\x{2716}\x{2719}-\x{274B}\x{274D}-\x{27BF}\x{2B50}\x{FE0F}\x{200D}]+`)
	keycap    = find(`^\s*\d\x{FE0F}?\x{20E3}`)
	address   = find(`\(?\bhttps?://\S+`)
	energy    = find(`(?i)[,;]?\s*\(?\b[\d.,]+ ?(?:kcal|kj|cal(?:ories)?)\b(?: ?(?:/|per) ?\d+ ?(?:g|ml))?\)?`)
	cost      = find(`(?i)\s+(?:[-\x{2013}\x{2014}] ?)?(?:[£$€¥] ?[\d.,]+|[\d.,]+ ?[£$€¥])(?: ?(?:/|per|a|an) ?(?:k?g|m?l|lit(?:er|re)|lb|oz|pound|kilo|pc|piece|can|tin|pack|tray|box)|,? (?:each|ea|apiece))?\.?\s*$`)
	please    = find(`(?i)[\s,]+(?:pls|plz|please|thanks|thx|ta|xx?|lol|lmao|haha|sorry|soz|oops|whoops|ok|okay|btw|tbh|fyi|obvs|obviously|yum+|m{2,}|[:;]-?[)D]|<3)[\s.!]*$`)
	clock     = find(`(?i)^\s*[\[(]?\d{1,2}:\d{2}(?::\d{2})?(?:[ \x{00A0}\x{202F}]?[ap]\.?m\b\.?)?[\])]?\s*`)
	stamp     = find(`(?i)^\s*[\[(]?\d{1,4}[./-]\d{1,2}[./-]\d{1,4},? +(?:at )?\d{1,2}[:.]\d{2}(?::\d{2})?(?:[ \x{00A0}\x{202F}]?[ap]\.?m\.?)?[\])]?(?: ?[-\x{2013}:] )?\s*`) // a chat's, with its date
	sender    = find(`^~?\s*(\pL[\pL .'\x{2019}-]{0,30}):\s+`)
	fillers   = find(`(?i)^(?:(?:and|so|oh|ok|okay|k|then|plus|also|you|we|i|need|needs|used|use|add|get|with|will)[\s,]+)+(\d|(?:an?|half|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)\s)`)
	itsSo     = find(`(?i)^(?:(?:and|so|oh|ok|okay|then)[\s,]+)*it'?s\s+(\d)`)
	speaker   = find(`^(\pL{2,15}):\s*(\d.*|(?i:an?|half|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)\s.*)$`)
	talker    = find(`(?m)^\s*(\pL{2,15}(?: \pL{1,15})?):[ \t]+`)
	component = find(`^(\pL{3,15}(?: \pL{3,15})?):\s+(\pL.*\d.*|\d.*)$`)
	promised  = find(`(?i)^ingredients?\b([^\d:]*):?\s*(\d.*)$`)
	partFirst = find(`(?i)^for (?:the |each )?\pL[\pL -]{1,30}:\s*(\d.*)$`)
	forMany   = find(`(?i)\b(?:makes|serves|for|yields?|about|approx)\b`)
	spoonOf   = find(`(?i)\b(tea|table)[ -]spoon`)
	swiss     = find(`\b(\d{1,3})['\x{2019}](\d{3})\b`)
	unitHead  = find(`(?i)^(\pL.*\D)\b(gr|g|grams?|kg|ml|cl)\.? (\d+(?:[.,]\d+)?)$`) // "sugar gr. 110"
	number0   = find(`(?i)\s(?:n\.|n\x{00B0}|no\.) ?(\d{1,2})$`)
	packsOf   = find(`^(\pL[^\d]*?)[\s,]+(\d[\d.,]* ?(?:g|kg|ml|cl|l|oz)) ?x ?(\d{1,2})(?: (?:packs?|packets?|cartons?|tins?|cans?|bottles?))?$`)
	dozen     = find(`(?i)^\s*(?:a )?dozen\s+`)
	shorts    = find(`(?i)\b(wh|hvy|gran|van|extr|choc|evap|cond|brn|sug|dk|pwd|pwdr|cornst|lem|cin|br|envs?)\.(\s|$)`)
	pastEggs  = find(`(?i)\b(eggs?|yolks?|whites?),? past\b\.?`)
	bareShort = find(`(?i)\b(choc|hvy|brn|pwd|pwdr|dk)(\s|,|$)`)
	glued     = find(`^(\d+(?:[.,]\d+)?)(g|kg|ml)(\pL{4,}.*)$`)
	ofSize    = find(`(?i)^(.*\b(?:eggs?|yolks?|whites?)\b.*?)[\s.,:-]+(?:x ?)?(\d{1,2}(?: (?:small|medium|large|jumbo))?)$`)
)

// notSpeakers are words before a colon that change what a line says.
var notSpeakers = words("price prices cost costs rrp sum total subtotal option alternative alternatively variation instead or not without double triple half max min maximum minimum reduce reduced increase lower raise replace swap change correction corrected lean rich scale scaled was were old omit skip none no optional rest left leftover per each about extra more less minus plus of step day batch yield makes small medium large big single mini")

// full are words that are cut short with a point. common practice, no source.
var full = map[string]string{"wh": "whole", "hvy": "heavy", "gran": "granulated", "van": "vanilla", "extr": "extract", "choc": "chocolate", "evap": "evaporated", "cond": "condensed", "brn": "brown", "sug": "sugar",
	"dk": "dark", "pwd": "powder", "pwdr": "powder", "cornst": "cornstarch", "lem": "lemon", "cin": "cinnamon", "br": "brown", "env": "envelope", "envs": "envelopes"}

// talkers are the names that two and more lines of a text begin with before a colon, as those of a
// chat do: no foods, and no words that change what a line says.
func (r *Reader) talkers(text string) map[string]bool {
	lines, all := map[string]int{}, map[string]bool{}
	for _, m := range talker().FindAllStringSubmatch(text, -1) {
		name := strings.ToLower(m[1])
		if lines[name]++; lines[name] > 1 && !r.changes(name) && !tells[name] && !layout[name] && !serving.in(name) {
			all[name] = true
		}
	}
	return all
}

// changes reports whether words before a colon are of a food, or change what the line says.
func (r *Reader) changes(name string) bool {
	name = strings.ToLower(name)
	return slices.ContainsFunc(strings.Fields(name), func(w string) bool { return notSpeakers[w] || changed[w] }) || r.names.mentions(name)
}

// unheaded takes from a line of a chat the name of who wrote it, unless nothing but an amount is
// behind it.
func unheaded(s string, talkers map[string]bool) string {
	m := talker.parts(s)
	if m == nil || !talkers[strings.ToLower(m[1])] {
		return s
	}
	said := s[len(m[0]):]
	if _, rest, ok := read(said); ok && strings.TrimSpace(rest) == "" {
		return s
	}
	return said
}

// braces are the brackets of other hands, and quotation marks.
var braces = strings.NewReplacer("{", "(", "}", ")", "\"", "", "“", "", "”", "")

// quiet takes from a line what is said around it.
func (r *Reader) quiet(s string, talkers map[string]bool) string {
	s = keycap.swap(s, "")
	s = framed.swap(tag.swap(s, " "), "$1")
	s = braces.Replace(emoji.swap(s, " "))
	s = strings.TrimSpace(address.swap(s, ""))
	s = strings.TrimSpace(cost.swap(energy.swap(s, ""), ""))
	for please.in(s) {
		s = please.swap(s, "")
	}
	s = unheaded(r.sent(s), talkers)
	if m := promised.parts(s); m != nil && !serving.in(strings.TrimPrefix(m[1], "(")) && !forMany.in(m[1]) {
		s = m[2]
	}
	if m := partFirst.parts(s); m != nil {
		s = m[1]
	}
	if m := speaker.parts(s); m != nil && !notSpeakers[strings.ToLower(m[1])] && !changed[strings.ToLower(m[1])] && !serving.in(s) {
		if _, food := r.names.all[keyOf(m[1])]; !food {
			if a, rest, ok := read(m[2]); ok && a.doubts == 0 && strings.TrimSpace(rest) != "" {
				s = m[2]
			}
		}
	}
	s = r.ofComponent(s)
	s = swiss.swap(spoonOf.swap(s, "${1}spoon"), "$1$2")
	s = number0.swap(unitHead.swap(s, "$1 $3 $2"), " $1")
	s = packsOf.swap(s, "$3 x $2 $1")
	s = shorts().ReplaceAllStringFunc(s, func(short string) string {
		return full[strings.ToLower(strings.TrimRight(short, ". "))] + " "
	})
	s = pastEggs.swap(s, "$1 pasteurized")
	s = bareShort().ReplaceAllStringFunc(s, func(short string) string {
		word := strings.TrimRight(short, " ,\t")
		return full[strings.ToLower(word)] + short[len(word):]
	})
	s = dozen.swap(s, "12 ")
	s = fillers.swap(itsSo.swap(s, "$1"), "$1")
	if m := glued.parts(s); m != nil {
		if w, _ := word(m[2] + m[3]); measures[strings.ToLower(w)] == (measure{}) {
			s = m[1] + " " + m[2] + " " + m[3]
		}
	}
	return strings.TrimSpace(s)
}

// components are the parts of a dish that a line may name before its food. common practice, no
// source.
var components = words("praline brittle crumble streusel nougatine croquant crust glaze ganache compote coulis couli dough batter sauce filling ribbon swirl ripple topping base custard foam meringue anglaise mousse sponge")

// ofComponent takes from a line the component before a colon where a food and its weight are behind
// it: "Praline: almonds 100 g".
func (r *Reader) ofComponent(s string) string {
	m := component.parts(s)
	if m == nil || r.names.mentions(m[1]) || !r.weighs(m[2]) || !r.names.mentions(m[2]) {
		return s
	}
	if slices.ContainsFunc(strings.Fields(keyOf(m[1])), func(w string) bool { return !components[w] }) {
		return s
	}
	return m[2]
}

// sent takes from a line of a chat when it was sent and who wrote it.
func (r *Reader) sent(s string) string {
	at := stamp.of(s)
	if at == "" {
		at = clock.of(s)
	}
	if at == "" {
		return s
	}
	s = s[len(at):]
	m := sender.parts(s)
	if m == nil || r.changes(m[1]) {
		return s
	}
	return s[len(m[0]):]
}

// eggsBehind turns a line round that ends in how many eggs, and how large: "egg whites, 4 large".
func eggsBehind(s string) string {
	if m := ofSize.parts(s); m != nil && !digits.in(m[1]) {
		return m[2] + " " + m[1]
	}
	return s
}
