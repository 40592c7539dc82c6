package written

import (
	"slices"
	"strings"
	"sync"

	"ripplewright/internal/form/fold"
)

// A portion is an amount within a sentence, and the food behind it.
type portion struct {
	amount
	food string // as names are compared, "" for none that is known
	part bool   // "of the", "half the": it is taken from what stands elsewhere
}

// A listed line is one that stands above: its words and its amounts are read when a step first asks
// for them.
type listed struct {
	key      func() string // as names are compared
	portions func() []portion
}

// list keeps a line for the steps below it.
func (r *Reader) list(text string) listed {
	fair := sync.OnceValue(func() string { return tidy(text) })
	return listed{sync.OnceValue(func() string { return keyOf(fair()) }), sync.OnceValue(func() []portion { return r.portions(fair()) })}
}

// again reports whether s is a numbered step of the method whose amounts stand in lines above,
// each beside the same food, or are parts of what stands there: "whisk in 60 g of the sugar". A
// step that weighs anything else may be all that tells of it.
func (r *Reader) again(s string, above []listed) bool {
	if s = stepNo.swap(s, ""); !r.commands(s) {
		return false
	}
	all := r.portions(s)
	return len(all) > 0 && !slices.ContainsFunc(all, func(p portion) bool {
		return p.food == "" || !slices.ContainsFunc(above, func(line listed) bool { return line.has(p) })
	})
}

// worked reports whether s tells what is done to foods that lines above weigh, or to parts of
// them, and names no other amount: "sit peaches w/ half the sugar 1 hr", "raisins in the rum the
// night before".
func (r *Reader) worked(s string, above []listed) bool {
	weighed := func(food string) bool {
		_, known := r.names.all[food]
		return known && slices.ContainsFunc(above, func(l listed) bool { return l.has(portion{food: food, part: true}) && len(l.portions()) > 0 })
	}
	if m := soaked.parts(s); m != nil {
		return weighed(keyOf(m[1])) && weighed(keyOf(m[2]))
	}
	verb, _ := word(s)
	if denied.in(s) || seasons.in(s) || amends[strings.ToLower(verb)] || !r.commands(s) {
		return false
	}
	all := r.portions(s)
	return len(all) > 0 && !slices.ContainsFunc(all, func(p portion) bool { return !p.part || !weighed(p.food) })
}

// soaked finds what is put into what, and how long before.
var soaked = find(`(?i)^(?:the )?(\pL[\pL ]*?) (?:goes? |go )?(?:in|into|with|over|under) the (\pL[\pL ]*?) (?:the (?:night|day|evening|week) before|overnight|beforehand|in advance)[.!]*$`)

// amends are verbs that may change how much is weighed: "use half the sugar".
var amends = words("use take try reduce leave save keep make raise line scale")

// commands reports whether s begins with a verb of the kitchen, and no food.
func (r *Reader) commands(s string) bool {
	fields := strings.Fields(strings.ToLower(s))
	if len(fields) < 4 || r.startsWithFood(fields) {
		return false
	}
	verb := strings.Trim(fields[0], ".,:")
	return methods[fold.Text(verb)] && (!things[verb] || follows[fields[1]])
}

// has reports whether a line names a portion's food, and in the same amount where it is no part.
func (l listed) has(p portion) bool {
	if !strings.Contains(" "+l.key()+" ", " "+p.food+" ") {
		return false
	}
	return p.part || slices.ContainsFunc(l.portions(), func(other portion) bool { return other.n == p.n && other.in == p.in })
}

// portions are the amounts of a text, whatever stands between them.
func (r *Reader) portions(s string) (all []portion) {
	for s = strings.TrimSpace(heats.swap(s, " ")); s != ""; {
		a, rest, ok := read(strings.TrimLeft(s, "( "))
		if !ok || timed.in(rest) || vessel.in(rest) && !held.in(rest) || a.word == "" && !r.names.mentions(rest) {
			_, s, _ = strings.Cut(s, " ")
			continue
		}
		s = strings.TrimSpace(rest)
		p := portion{amount: a, part: strings.HasPrefix(s, "of the ") || a.word == "" && strings.HasPrefix(s, "the ")}
		food := strings.Fields(strings.TrimPrefix(strings.TrimPrefix(s, "of "), "the "))
		for n := min(4, len(food)); n > 0 && p.food == ""; n-- {
			key := keyOf(strings.Trim(strings.Join(food[:n], " "), ".,:;"))
			if _, known := r.names.all[key]; known {
				p.food = key
			}
		}
		if a.in.kind != vague || p.food != "" || pinched[strings.ToLower(a.word)] || strings.HasPrefix(s, "of ") { // and no "spoon by spoon"
			all = append(all, p)
		}
	}
	return all
}
