package written

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/form/fold"
)

// spooned are names that mean one thing by the spoon, and by weight may be a paste, a
// sugar or a powder. common practice, no source.
var spooned = map[string]string{"vanilla": "vanilla_extract"}

// drunk are names that by the cup or the millilitre are what is brewed of it.
var drunk = map[string]string{"tea": "tea_black_brewed", "black tea": "tea_black_brewed", "strong black tea": "tea_black_brewed", "strong tea": "tea_black_brewed"}

// plainWords are words of a name that leave the ingredient what it is.
var plainWords = words("fresh freshly squeezed organic good quality best cold chilled iced ice-cold warm hot lukewarm softened melted strained finely coarsely roughly chopped grated sifted " +
	"packed firmly lightly beaten pure free range filtered boiling ripe peeled pitted hulled sliced halved unsifted unpacked whisked lightly-beaten crushed clean my the uht raw shelled very cored stoned washed rinsed trimmed stemmed seeded deseeded skinned quartered diced cubed halve piece chunk cube flesh smooth creamy crunchy mashed pureed strong room temperature extra flaked slivered shaved shredded crumbled minced")

// bySize are words that tell how large the pieces are.
var bySize = words("large medium small big med lg lge lrg sm sml regular")

// heads are first words of a name turned round: "milk, whole".
var heads = words("milk cream sugar butter salt honey yolk white egg yogurt cocoa")

// changed are remarks that make another food of it.
var changed = words("frozen dried canned tinned sweetened unsweetened salted unsalted powdered smoked evaporated condensed flavoured flavored reduced dehydrated candied toasted roasted pasteurised pasteurized cultured clotted malted chip chips")

// remarks are those that do not, beside plainWords and what was done to it.
var remarks = words("divided optional cold warm room temp temperature temperate large medium small at in if needed sieve dice fridge use very overnight total each homemade local more extra fine coarse bought cubes piece pieces split well slightly gently up apart off thinly just barely no only leaf leaves acacia clover wildflower heather manuka leatherwood blossom eucalyptus normal regular standard ordinary ep solid pack cut soft skin skins on with weight mini stems stem bloom")

var (
	// apartFrom are numbers in a remark that tell nothing of how much is weighed: heat,
	// time, a price, a day, parts, and how old or far away something is.
	apartFrom = find(`(?i)[\d.,/-]+ ?(?:%|°|degrees?\b|[cf]\b|min|hours?\b|hrs?\b|h\b|sec|days?\b|weeks?\b|months?\b|years?\b|batches|parts|times|cm\b|mm\b|inch|in\.|kj|kcal|calor|bloom\b|(?:st|nd|rd|th)\b)|[$£€¥] ?[\d.,]+|[\d.,]+ ?(?:[$£€¥]|kr\b|p\b|eur\b|usd\b|gbp\b)|\bin half\b|\b(?:without|w/o) (?:the |any )?(?:stones?|pits?|skins?|shells?|seeds?|stalks?|stems?|core)\b|\b(?:sifted|sieved|strained|rinsed) twice\b|\btwice (?:sifted|sieved|strained)\b|^\d$|(?:in|into|note|no\.?|number|size|type|step|page|p\.|brand|at|to|of) \d+`)
	pieceOf   = find(`(?i)^(?:about |abt\.? |around |approx\.? |approximately |from |the juice of |juice of |roughly |ca\.? ?|~ ?)*(?:\d{1,2}(?:-\d{1,2})?(?: 1/2)?|[13]/[24](?: an?| of an?)?|half an?|half of an?|an?|one|two|three|four|five|six) (?:\pL+ )?(\pL+)(?: (?:of|from) \pL+)?$`)
	eggSize   = find(`(?i)\b(?:size )?\d{1,2}(?: ?(?:-|to) ?\d{1,2})? ?(?:(?:g|grams?|small|medium|large|jumbo|eggs?|yolks?|whites?)\b|ish\b)`)
	// scaled are words of a remark that make more or less of the amount.
	scaled = find(`(?i)\b(?:doubled?|tripled?|twice|triple|thrice|x ?\d|\d ?x|half|minus|less)\b`)
	// denied are words of a remark that take the food away or put another in its place.
	denied = find(`(?i)\b(?:omit(?:ted)?|skip(?:ped)?|without|instead|unless|substitut\w*|replac\w*|swap\w*|sub|not (?:needed|used|yet|in)|no longer|leave out|left out|used? (?:up )?\pL+ (?:here|instead|this time))\b`)
)

// unneeded finds what a remark says need not be: "ceremonial not needed".
var unneeded = find(`(?i)^\s*(\pL+)(?: \pL+)?(?: is)? not (?:needed|necessary|required|essential)[.!]*\s*$`)

// works finds that something else would do as well: "frozen also works", "bottled ok".
var works = find(`(?i)^\s*(?:or )?(\pL[\pL-]*)(?: ones?| is| are| will| would| also)* (?:ok|okay|fine|works?|good|do|alright|acceptable)(?: too| as well| also)?[.!]*\s*$`)

// spare are words of what would do, beside those that make another food of it.
var spare = words("bottled bought store-bought shop-bought any homemade jarred")

// spared is a remark without what need not be, where that is a sort of the food or what it may
// be as well.
func spared(note string, in *ingredient.Ingredient) string {
	if m := works.parts(note); m != nil && (changed[strings.ToLower(m[1])] || plainWords[strings.ToLower(m[1])] || spare[strings.ToLower(m[1])]) {
		return ""
	}
	if m := unneeded.parts(note); m != nil && (proven(in, strings.ToLower(m[1])) || plainWords[strings.ToLower(m[1])]) {
		return ""
	}
	return note
}

// unheard reports whether a remark may change how much is weighed, or whether anything
// is: a number that is neither the heat nor the time, "doubled", "leave out".
func unheard(note string, in *ingredient.Ingredient) bool {
	if m := pieceOf.parts(note); m != nil && strings.Contains(strings.ToLower(in.Name), one(strings.ToLower(m[1]))) {
		return false // "120 ml lemon juice (3-4 lemons)"
	}
	note = apartFrom.swap(note, "")
	if scaled.in(note) && !more.in(note) || denied.in(note) {
		return true
	}
	if eggParts[in.ID] != "" {
		note = eggSize.swap(note, "") // "53-63 g" is a size
	}
	return digits.in(note)
}

// browned are remarks that may name another record.
var browned = words("roasted toasted")

type meaning struct {
	ids     []string
	loose   bool // of unsure volume
	perhaps bool // or something that no library has
}

// names are what the words of a line may mean.
type names struct {
	lib  *ingredient.Library
	all  map[string]meaning
	keys []string // of all, in order

	words map[string]bool // that the names are of
}

func newNames(lib *ingredient.Library) *names {
	n := &names{lib: lib, all: map[string]meaning{}, words: map[string]bool{}}
	kitchen, common := map[string][]string{}, map[string][]string{}
	put := func(to map[string][]string, name, id string) {
		if key := keyOf(name); key != "" && !slices.Contains(to[key], id) {
			to[key] = append(to[key], id)
		}
	}
	bare := find(`\s*\([^)]*\)`)
	for _, in := range lib.All() {
		put(kitchen, in.KitchenName, in.ID)
		put(kitchen, in.Name, in.ID)
		id := strings.Split(in.ID, "_")
		if last := id[len(id)-1]; !heads[last] { // "chocolate_milk" is no chocolate milk
			put(kitchen, strings.Join(id, " "), in.ID)
		}
		if in.CommonName != "" && !in.Compound {
			put(common, bare.swap(in.CommonName, ""), in.ID)
		}
	}
	for key, ids := range common {
		n.all[key] = meaning{ids: ids}
	}
	for key, ids := range kitchen {
		n.all[key] = meaning{ids: ids}
	}
	for _, c := range called {
		m := meaning{ids: strings.FieldsFunc(c[1], func(r rune) bool { return r == ' ' || r == '~' || r == '?' }), loose: strings.Contains(c[1], "~"), perhaps: strings.Contains(c[1], "?")}
		for _, name := range strings.Split(c[0], ";") {
			n.all[keyOf(name)] = m
		}
	}
	for key, m := range n.all { // an alias of what this library lacks
		m.ids = slices.DeleteFunc(slices.Clone(m.ids), func(id string) bool { _, ok := lib.Find(id); return !ok })
		if n.all[key] = m; len(m.ids) == 0 {
			delete(n.all, key)
		}
	}
	for key := range n.all {
		n.keys = append(n.keys, key)
		for _, w := range strings.FieldsFunc(key, func(c rune) bool { return !unicode.IsLetter(c) }) {
			n.words[w] = true
		}
	}
	slices.Sort(n.keys)
	return n
}

// keyOf is a name as names are compared: folded, one of each thing.
func keyOf(name string) string {
	name = strings.ReplaceAll(fold.Text(name), "pasteuris", "pasteuriz")
	fields := strings.FieldsFunc(name, func(r rune) bool { return r == ' ' || r == '/' || r == '.' || r == '\'' || r == '’' || r == '\t' })
	for i, w := range fields {
		fields[i] = one(w)
	}
	return strings.Join(fields, " ")
}

// one is the singular of w, as far as comparing needs it.
func one(w string) string {
	switch {
	case w == "leaves":
		return "leaf"
	case len(w) > 4 && strings.HasSuffix(w, "ies"):
		return w[:len(w)-3] + "y"
	case len(w) > 4 && strings.HasSuffix(w, "oes"):
		return w[:len(w)-2]
	case len(w) > 2 && strings.HasSuffix(w, "s") && !strings.HasSuffix(w, "ss"):
		return w[:len(w)-1]
	}
	return w
}

// fullFat is what tells a food of milk from a leaner one; where there is no leaner one it
// tells nothing.
var fullFat = find(`^(?:full[- ](?:fat|cream)|plain) `)

// prepared reports whether each "and" of a name joins what was done to the food, "peeled
// and cored pears", and no other food.
func prepared(name string) bool {
	fields, joins := strings.Fields(strings.ToLower(name)), false
	for i, w := range fields {
		joins = joins || w == "and"
		if w == "and" && (i == 0 || i+1 == len(fields) || !plainWords[fields[i-1]] || !plainWords[fields[i+1]]) {
			return false
		}
	}
	return joins
}

// ofOrder turns a name round that puts the kind behind an "of", as other tongues do: "oil of
// olive extra virgin", "milk of cow whole". Sugar of cane is white in one kitchen and brown in
// another.
func ofOrder(fields []string) (keys []string) {
	if len(fields) < 3 || fields[1] != "of" || fields[0] == "sugar" {
		return nil
	}
	kind := slices.DeleteFunc(slices.Clone(fields[2:]), func(w string) bool { return fields[0] == "milk" && w == "cow" })
	for i := range kind {
		turned := append(slices.Clone(kind[i:]), kind[:i]...)
		keys = append(keys, strings.Join(append(turned, fields[0]), " "))
	}
	return keys
}

// look returns what name means. note may turn it round, "milk", "whole": turned
// tells that it did.
func (n *names) look(name, note string) (m meaning, turned, ok bool) {
	fields := strings.Fields(keyOf(name))
	fields = slices.DeleteFunc(fields, func(w string) bool { return w == "and" && prepared(name) })
	kept := slices.DeleteFunc(slices.Clone(fields), func(w string) bool { return plainWords[w] || bySize[w] || w == "of" })
	keys := []string{strings.Join(fields, " ")}
	if strings.Contains(keys[0], "-") { // "whole-milk yogurt"
		keys = append(keys, strings.ReplaceAll(keys[0], "-", " "))
	}
	for i := 1; i < len(fields) && plainWords[fields[i-1]]; i++ { // "grated fresh ginger" is fresh ginger
		keys = append(keys, strings.Join(fields[i:], " "))
	}
	first := keyOf(note)
	if full := fullFat.swap(keys[len(keys)-1], ""); full != keys[len(keys)-1] {
		keys = append(keys, full)
	}
	keys = append(keys, strings.Join(kept, " "))
	for _, key := range append(keys, ofOrder(fields)...) {
		m, ok := n.all[key]
		if round, turns := n.all[first+" "+key]; turns && !ok && first != "" && key != "" {
			return round, true, true // "tartar, cream of"
		}
		if !ok {
			continue
		}
		if round, ok := n.all[first+" "+key]; ok && first != "" && !browned[first] {
			return round, true, true
		}
		return m, false, true
	}
	if last := len(fields) - 1; last > 0 { // "egg yolk pasteurised"
		if m, ok := n.all[fields[last]+" "+strings.Join(fields[:last], " ")]; ok && !browned[fields[last]] {
			return m, false, true
		}
	}
	if len(kept) > 1 && heads[kept[0]] {
		m, ok = n.all[strings.Join(append(slices.Clone(kept[1:]), kept[0]), " ")]
	}
	if !ok && len(kept) > 2 && len(kept) < 5 && heads[kept[0]] {
		m, ok = n.anyOrder(kept)
	}
	return m, false, ok
}

// anyOrder returns what words mean in another order, "milk condensed sweet", where all the
// orders that are known mean one thing.
func (n *names) anyOrder(fields []string) (m meaning, ok bool) {
	for _, key := range orders(fields) {
		switch other, known := n.all[key]; {
		case !known:
		case !ok:
			m, ok = other, true
		case !slices.Equal(m.ids, other.ids):
			return meaning{}, false
		}
	}
	return m, ok
}

// orders are all the orders of a few words.
func orders(fields []string) (all []string) {
	if len(fields) == 1 {
		return fields
	}
	for i, w := range fields {
		rest := append(slices.Clone(fields[:i]), fields[i+1:]...)
		for _, tail := range orders(rest) {
			all = append(all, w+" "+tail)
		}
	}
	return all
}

// within returns what name means without the words that make another food of it:
// "frozen raspberries", "a few drops of lemon juice".
func (n *names) within(name string) (meaning, bool) {
	kept := slices.DeleteFunc(strings.Fields(strings.ToLower(name)), func(w string) bool {
		return changed[w] || toProve[one(w)] || w == "few" || w == "little" || w == "bit" || measures[w].kind == vague && measures[w] != measure{}
	})
	if m, _, ok := n.look(strings.Join(kept, " "), ""); ok {
		return m, ok
	}
	fields := strings.Fields(keyOf(name))
	for i := range fields { // what the words end in: "zest and juice of 2 limes"
		if m, ok := n.all[strings.Join(fields[i:], " ")]; ok && i > 0 {
			return m, true
		}
	}
	if at := tail.at(name); at != nil && at[0] > 0 {
		return n.within(name[:at[0]]) // "bit of sea salt on top"
	}
	return meaning{}, false
}

// begun returns what name begins with: "egg whites left from the custard".
func (n *names) begun(name string) (meaning, bool) {
	fields := strings.Fields(keyOf(name))
	for i := len(fields) - 1; i > 0; i-- {
		if m, ok := n.all[strings.Join(fields[:i], " ")]; ok {
			return m, true
		}
	}
	return meaning{}, false
}

// near returns the name most like words that is known, "" for none. Short words
// are like too many.
func (n *names) near(name string) (meaning, bool) {
	key := keyOf(name)
	if len(key) < 4 || len(key) > 40 {
		return meaning{}, false
	}
	m, ok := n.all[ingredient.Nearest(key, n.keys, min(3, max(2, (len(key)+1)/3)))]
	return m, ok
}

var percent = find(`(\d+(?:[.,]\d+)?)\s*(?:%|percent\b)(?:\s*(?:milk\s?fat|butter\s?fat|fat|cocoa solids|cocoa butter|cocoa|cacao|bf|mf|m\.g\.|vol\b\.?|abv|solids))?`)

var percents = find(`(\d+(?:[.,]\d+)?)\s*%?\s*(?:-|–|to)\s*(\d+(?:[.,]\d+)?)\s*(?:%|percent\b)`)

// leastWhole is from how much fat on, of a hundred, milk is a whole one and no leaner.
const leastWhole = 3.4

// byPercent returns the ingredient of a family whose fat, or cocoa, is nearest to v
// per cent; far tells that none is near.
func (n *names) byPercent(name string, v float64) (m meaning, far, ok bool) {
	family, column, most := "", ingredient.Fat, 1.5
	fields := strings.Fields(keyOf(name))
	exact := strings.Join(slices.DeleteFunc(slices.Clone(fields), func(w string) bool { return plainWords[w] }), " ")
	switch exact {
	case "cream", "whipping cream", "heavy cream", "single cream", "light cream", "cream heavy", "fresh cream", "heavy whipping cream", "cream whipping", "double cream", "pouring cream":
		family = "cream_"
	case "milk", "whole milk", "milk whole", "fresh milk", "reduced fat milk", "low fat milk", "lowfat milk":
		if family, most = "milk_", 0.3; v > leastWhole {
			most = 0.6 // whole milk has 3.5 % and more, as the cow gives it: Regulation (EU) 1308/2013, Annex VII, Part IV
		}
	case "rum", "dark rum", "white rum":
		return meaning{ids: []string{"rum_40"}}, false, v == 40
	case "vodka", "gin":
		return meaning{ids: []string{"whisky_bourbon_40"}}, false, v == 40
	case "whisky", "whiskey", "scotch", "scotch whisky", "bourbon", "irish whiskey":
		id := map[float64]string{40: "whisky_bourbon_40", 43: "whisky_43"}[v]
		return meaning{ids: []string{id}}, false, id != ""
	case "chocolate", "dark chocolate", "chocolate dark", "bittersweet chocolate", "couverture", "black chocolate", "dark couverture", "couverture dark":
		family = "chocolate_dark_"
	default:
		return meaning{}, false, false
	}
	if family == "chocolate_dark_" {
		for _, in := range n.lib.All() {
			lo, hi, isRange := strings.Cut(strings.TrimPrefix(in.ID, family), "_")
			low, err1 := strconv.ParseFloat(lo, 64)
			high, err2 := strconv.ParseFloat(hi, 64)
			if strings.HasPrefix(in.ID, family) && isRange && err1 == nil && err2 == nil && v >= low && v < high+1 {
				return meaning{ids: []string{in.ID}}, false, true
			}
		}
		return meaning{}, true, true
	}
	off := math.Inf(1)
	for _, in := range n.lib.All() {
		if !strings.HasPrefix(in.ID, family) && (family != "cream_" || in.ID != "half_and_half") || in.ID == "cream_cheese" || in.ID == "milk_goat" || in.Group != "dairy" || !in.Cell(column).Known {
			continue
		}
		if d := math.Abs(in.Cell(column).Value - v); d < off {
			m, off = meaning{ids: []string{in.ID}}, d
		}
	}
	return m, off > most, len(m.ids) > 0
}
