package written

import (
	"slices"
	"strings"

	"ripplewright/internal/form/fold"
)

// methods are words that a sentence of the method begins with. common practice, no source.
var methods = words("add allow arrange assemble bake beat blend blitz boil break bring brush chill chop churn coat combine continue cook cool core cover crack crush cut decorate dip dissolve " +
	"divide drain drizzle enjoy enrich fill finish fit fold freeze fry garnish grate grease grind heat hull infuse keep knead ladle layer leave let line lower macerate make mash measure melt " +
	"mix move pack pass peel pipe pit place poach pop pour preheat prepare press process pull pulse puree push put raise reduce refrigerate remove repeat rest return rinse ripple roast roll " +
	"rub run save scald scatter scoop scrape seal separate serve set shake shape share sieve sift simmer sit skim slice smooth soak spin spoon spread sprinkle squeeze stand start steep sterilise sterilize " +
	"flame torch mise age charge past pasteurise pasteurize homogenise homogenize mature bloom hydrate shear blast whack bung chuck stick shove pile plate pulse turn zap " +
	"stir stop store strain swirl take taste temper thaw thin tip toast top toss transfer try turn unmould use wait warm wash watch weigh whip whisk whizz wrap zest " +
	"mount bruise sweat nap nappe caramelise caramelize emulsify deglaze flambe marinate decant bottle glaze hang stew saute brown clarify discard submerge plunge immerse demold demould unmold loosen tap bang knock trim wipe dry portion tear twist pierce prick tie bundle lift dollop quenelle switch agitate rehydrate thicken candy crystallise crystallize " +
	"pastorizzare maturare omogeneizzare mantecare abbattere frullare setacciare sciogliere scaldare cuocere raffreddare pasteuriser maturer refroidir porter blanchir foisonner pasteurisieren erhitzen verrühren aufkochen abkühlen pasteurizar madurar calentar enfriar hervir " +
	"laisser faire mélanger fouetter cuire verser ajouter servir turbiner alles chauffer incorporer battre monter mescolare montare versare aggiungere servire mezclar batir verter añadir congelar")

// things are those of them that may be a food as well, "zest, grated" or "mature cheddar";
// behind the verb stands one of follows.
var (
	things  = words("zest peel mature toast spread mix ripple press stick core pit cover layer pack crumble roast crush stand age bloom spoon roll pulse brown dry candy bottle glaze mount stew tap tie")
	follows = words("the a an in into on up out off it them everything all any each both and for with over at until again through under well gently briefly together lightly slowly half your")
)

// tells are words that a remark on the whole begins with.
var tells = words("doubled tripled scaled fits edit update eta ps p.s tasted came worked froze turned went got mrs mr ms nutrition calories posted too ciao hi hello hey dear cheers love bye adapted adjust always can't cant do don't dont double-check enjoy equipment he i i'd i'm i've if inspired keeps makes never no none note notes once photo print recipe remember scale see she " +
	"thank thanks they tip tips until warning we when while you")

// points are words that begin such a remark, and a food that nobody weighed.
var points = words("after approximately based best easy everything from her here his it it's level my our per ready source such that the these this those your")

// talked are words of people who talk: a line with one of them that has no amount and no
// food is none of the recipe's.
var talked = words("who what which where why how i we u you ur your they he she it is are was were am be been has have had did do does doesn't don't didn't can could should would will won't " +
	"that's thats it's its what's here's there's let's ich wir du er sie ist sind war hat habe je j'ai tu il elle nous vous est c'est sono è è siamo")

// answered are words that an answer begins with.
var answered = words("nope nah yep yeah yup yes sure omg ugh hmm wow yay oops sorry haha lol true right exactly same perfect great nice good awesome")

// idled are words that alone say nothing: "ok so", "here goes".
var idled = words("ok okay so oh uh um hmm wait hang on one sec here goes we go anyway anyways that that's is all it done end of list thats it's lets let's see")

// first are words that may stand before the verb.
var first = words("then now finally meanwhile next first second lastly afterwards also just and step to please again once ok okay")

// pinched are amounts that are no measure.
var pinched = words("pinch pinches dash dashes drop drops splash knob knobs handful handfuls drizzle glug few some")

// enough finds that as much is taken as is needed, in the languages that recipes here are
// copied from: "panna montata q.b." common practice, no source.
var enough = find(`(?i)(?:^|[\s,(])(?:q\. ?b\.?|qb|q\. ?s\.?|c\. ?s\.?|quanto basta|a piacere|al gusto|cantidad suficiente|(?:selon|à votre|au) goût|quantum satis|nach (?:geschmack|belieben|bedarf)|etwas|naar smaak|efter smak)(?:$|[\s,;)])`)

var (
	stepNo     = find(`(?i)^(?:step )?\d{1,2}[.):]\s+`)
	heats      = find(`(?i)\b\d{2,3}(?:-\d{2,3})? ?(?:°|º|degrees?\b)? ?[cf]\b|\b\d{2,3} ?(?:°|º|degrees?\b)`)
	numberLast = find(`\pL[^\d]*\s\d{1,5}(?:[.,]\d+)?$`)
	setTo      = find(`(?i)\b(?:at|to|on|speed|page|pp?\.?|for|by|in|about|until|till|level|gas|mark|step|than|of|x|power|setting|no\.?|chapter|every|over|under|below|above) \d{1,5}(?:[.,]\d+)?$`)
	// takesTime finds how long a step takes: "8 to 10 min".
	takesTime = find(`(?i)\b\d{1,3}(?: ?(?:-|to) ?\d{1,3})? ?(?:min(?:ute)?s?|hours?|hrs?|h|secs?|seconds?)\b`)
	timed     = find(`(?i)^\s*-?(?:to \d+ ?)?(?:sec|min(?:s|utes?)?\b|hour|hr|h\b|day|star|portion|person|people|serving|guest|kid|night|evening|morning|week|month|time|cm\b|mm\b|inch|in\b|%)`)
	seasons   = find(`(?i)\b(?:to taste|as needed|to serve|for \w+ing|to finish|optional|if)\b`)
)

// prose reports whether s is a sentence of the method, or a remark on the whole, that has
// no amount of any food: nothing in it is weighed.
func (r *Reader) prose(s string) bool {
	s = strings.TrimSpace(stepNo.swap(strings.Trim(s, "~ "), ""))
	s = strings.TrimLeft(s, "! ")
	if cells, sign := cellsOf(s); sign != "" && slices.ContainsFunc(cells, bareCell.in) {
		return false // a row of a table: "skim milk; 540"
	}
	s = cellMark.swap(s, " ")
	fields := strings.Fields(strings.ToLower(s))
	for len(fields) > 1 && (first[strings.Trim(fields[0], ".,:;!?")] || strings.HasSuffix(fields[0], "ly") || strings.HasSuffix(fields[0], "ly,")) {
		fields = fields[1:]
	}
	if len(fields) == 0 || r.weighs(s) || boxed(s) || enough.in(s) {
		return false
	}
	if r.startsWithFood(fields) {
		return false // "skim milk"
	}
	for i, w := range fields[1:] {
		if (w == "then" || strings.HasSuffix(w, ",")) && i+2 < len(fields) && methods[fold.Text(strings.Trim(fields[i+2], ".,"))] && degrees.in(s) {
			return true // "syrup to 118 °C, pour"
		}
	}
	switch at := fold.Text(strings.Trim(fields[0], ".,:;!")); {
	case !slices.ContainsFunc(strings.Fields(strings.ToLower(s)), func(w string) bool { return !idled[strings.Trim(w, ".,:;!")] }):
		return strings.Contains(s, " ")
	case len(fields) == 1:
		return methods[at] && strings.ContainsAny(s, ".!")
	case things[at]:
		return follows[strings.Trim(fields[1], ".,:;!")] || heats.in(s) || takesTime.in(s) || timed.in(numberless.swap(strings.Join(fields[1:], " "), ""))
	case ranked.in(s) && !r.names.mentions(s):
		return true // "2nd prize"
	case methods[at]:
		return fields[1] != "of" && fields[1] != "de" && fields[1] != "di" && !(numberLast.in(s) && !setTo.in(s)) // "puree de fraise 500"
	case slices.Contains(fields, "forget") && r.names.mentions(s):
		return false // "don't forget the salt" may be all that tells of it
	case checked.in(s):
		return !r.names.mentions(s)
	case tells[at]:
		return !measuresFirst(fields[1]) // "I cup" is a scan of "1 cup"
	case answered[at] && len(fields) > 1 && !seasons.in(s) && !r.names.mentions(s) && !r.names.foreigner(s):
		return true // "nope, just a whisk"
	case len(fields) < 2 && !talked[at] || seasons.in(s) || r.names.mentions(s) || r.names.foreigner(s):
		return false
	case slices.ContainsFunc(fields, func(w string) bool { return talked[strings.Trim(w, ".,:;!?")] }):
		return true
	case len(fields) < 3:
		return false
	}
	return len(fields) > 3 && points[strings.Trim(fields[0], ".,:;!")] || strings.HasSuffix(s, ".")
}

// boxed reports whether s begins with so many cans or packets: what is in them may be called
// anything.
func boxed(s string) bool {
	a, rest, ok := read(s)
	if ok && a.word == "" && !timed.in(rest) {
		_, rest = word(rest) // "1 unopened can"
		u, name, _ := unit(rest)
		return name != "" && u.kind == container && !vessel.in(rest)
	}
	return ok && a.in.kind == container && !vessel.in(a.word+" "+rest)
}

var (
	degrees    = find(`\d ?(?:°|º|[Dd]eg)|\b\d{3} ?[CF]\b`) // and no "12 c cream, whip"
	numberless = find(`^\d+(?:-\d+)? ?`)
	checked    = find(`\b[Cc]heck with \p{Lu}`) // "sweeten more?? check with Jo"
	ranked     = find(`(?i)^\d{1,2}(?:st|nd|rd|th)\b`)
)

// startsWithFood reports whether the first word is of a food's name, and no verb: "skim milk".
func (r *Reader) startsWithFood(fields []string) bool {
	if !methods[fields[0]] {
		return false
	}
	for n := 2; n <= min(len(fields), 4); n++ {
		if _, food := r.names.all[keyOf(strings.Trim(strings.Join(fields[:n], " "), ".,:;!"))]; food {
			return true
		}
	}
	return false
}

// crowd finds for how many a title is.
var crowd = find(`(?i)\([^()]*\)|\s*[-,]?\s*(?:makes|yields?)(?: about| approx\.?)? [\d./ ]+ ?\pL+\.?\s*$|\s*[-,x]?\s*(?:serves|for|makes)? ?\d+ ?(?:pax|covers?|portions?|people|servings?|persons?|tubs?)?\s*$`)

// mine finds whose a title's dish is: "cookies and cream, my version".
var mine = find(`(?i)[\s,:(-]+(?:my|our|\pL+'s|an?|the|another)?\s*(?:\pL+\s)?(?:version|way|take|style|edition|remix)\)?$`)

// batchOf finds the title of a sheet, and how much is made: "BATCH 14 - FIOR DI LATTE - 10 kg".
var batchOf = find(`(?i)^(?:test|trial|batch|version|formula|recipe|card|sheet) ?(?:no\.? ?|#)?\d+\b[^\d]*[-,:(] ?\d+(?:[.,]\d+)? ?(?:kg|l|lit(?:er|re)s?|lbs?|gal(?:lons?)?|qts?|quarts?)\)?$`)

// told finds how a title goes on: "peach ice cream, the way Aunt Ruth did it".
var told = find(`(?i)\s*(?:,|-)\s*(?:the way|the one|just like|just as|like|as|from|after|by|à la|inspired|adapted)\b.*$`)

// dishes are words of what is eaten, that a title has and a line hardly: "Rocky road".
var dishes = words("road split pop lassi stracciatella cheesecake brownie pie tart trifle pavlova alaska float shake milkshake lolly lollipop popsicle paleta honeycomb hokey spumoni cassata tartufo zabaglione zabaione " +
	"affogato tiramisu creamsicle mess froyo cannoli baklava glace horchata barfait eclair profiterole swirl")

// Whose dish it is, "Aunt Carol's butter pecan", of which making, "v3", "wk 23", and how much
// is made, "5 L mix".
var (
	whose    = find(`\b\p{Lu}\pL*'s?\s+\pL`)
	flavours = find(`(?i)\b(?:butter pecan|rum (?:and |& |'?n'? )?raisin|rocky road|cookies? (?:and|&|'?n'?) cream|mint choc\w*(?: chip)?|choc\w* chip|french vanilla|salted caramel|key lime|maple walnut|(?:peaches|strawberries) (?:and|&) cream|fior di latte|eton mess|crème brûlée|creme brulee|panna cotta)\b`)
	family   = find(`(?i)\s(?:from|by|like|of) (?:(?:my|our|the|dear|old) )?(?:cousin|aunt|auntie|aunty|tante|uncle|mom|mum|mama|mother|dad|papa|gran|granny|grandma|grandpa|nan|nana|nonna|oma|opa|babcia|abuela|sister|brother|neighbou?r|friend|colleague)\b`)
	animals  = find(`(?i)\b(?:goat|sheep|cow|ewe|buffalo|baker|brewer|confectioner|lady|ladie)s?'`)
	making   = find(`(?i)\bv ?\d{1,2}\b|\bscaled\b|\b(?:take|attempt|try|version|ver\.?|mk) ?\d{1,2}\b|\b\d(?:st|nd|rd|th) (?:try|attempt|go|batch|version|time|test)\b|\b(?:wk|week) ?\d{1,2}\b|\b(?:mon|tues?|wed|thu|thurs?|fri|sat|sun)(?:day)?\b`)
	bulk     = find(`(?i)[\s/,(-]+(?:for )?(?:about |ca\.? )?\d+(?:[.,]\d+)? ?(?:l|lit(?:er|re)s?|kg|qts?|quarts?|gal(?:lon)?s?) (?:of )?(?:mix|base|batch|total|yield|finished)\)?$`)
	people   = find(`(?i)\s*\((?:makes|serves|for|yields?)\b[^()]*\)|\s*[-,x(]?\s*(?:(?:serves|for|makes) ?\d+|\d+ ?(?:pax|covers?|portions?|people|servings?|persons?|tubs?)\)?)\s*$`)
	ofTwo    = find(`(?i)^(\p{L}[\pL ]*?) (?:&|and|\+) (\pL[\pL ]*)$`)
	thatOne  = find(`(?i)\s-\s(?:the|my|our)\s\pL[\pL ]*\sone\)?$`)
)

// dish reports whether a first line without an amount is the name of a dish.
func (r *Reader) dish(l *Said) bool {
	s := tidy(making.swap(people.swap(bulk.swap(tidy(l.Text), ""), ""), ""))
	if l.Taken() || s == "" || r.weighs(s) || seasons.in(s) || enough.in(s) || pinched[strings.ToLower(strings.Fields(s)[0])] {
		return false
	}
	if making.in(l.Text) || thatOne.in(tidy(l.Text)) {
		return true
	}
	if l.Ingredient != nil || digits.in(s) {
		return false
	}
	if bulk.in(tidy(l.Text)) || family.in(s) || flavours.in(s) && capitals(strings.Fields(s)[:1]) {
		return true
	}
	if at := whose.at(s); at != nil && !animals.in(s) && !r.names.mentions(s[at[1]-1:]) {
		return true
	}
	if strings.ContainsAny(s, ",;") {
		return false
	}
	if m := ofTwo.parts(s); m != nil && capitals(strings.Fields(s)[:1]) && r.names.mentions(m[1]) && r.names.mentions(m[2]) && !strings.Contains(keyOf(s), "pepper") {
		return true
	}
	return slices.ContainsFunc(strings.Fields(keyOf(s)), func(w string) bool { return dishes[w] })
}

// aloneOnTop finds that a blank line stands below the first, and none between others; howMuch words
// that tell of an amount without a measure.
var (
	aloneOnTop = find(`^\s*\S[^\n]*\n[ \t\r]*\n\s*\S[^\n]*\n[ \t]*\S`)
	howMuch    = find(`(?i)\b(?:little|lots?|some|enough|few|bit|tip|rest|handful|whole|much|many|glass|spoon|cup|piece|strip)\b`)
)

// entitles reports whether a first line, with a blank one below it, is a title: its words have a
// capital first and no amount, they are no food's name as they stand, and two and more of the lines
// below have an amount.
func (r *Reader) entitles(l *Said, below []string) bool {
	s := tidy(people.swap(tidy(l.Text), ""))
	fields := strings.Fields(s)
	if l.Ingredient != nil || len(fields) == 0 || len(fields) > mostTitle || !capitals(fields[:1]) || strings.ContainsAny(s, ",;:()") || digits.in(s) || howMuch.in(s) {
		return false
	}
	if r.weighs(s) || seasons.in(s) || enough.in(s) || r.names.foreigner(s) {
		return false
	}
	weighed := 0
	for _, line := range below {
		if r.weighs(tidy(line)) {
			weighed++
		}
	}
	return weighed > 1
}

// mostTitle is how many words a title has. common practice, no source.
const mostTitle = 8

// titled reports whether the first line of a text is its title: it names a dish, or each of
// its words has a capital and none is a food's; and it has no amount.
func (r *Reader) titled(l *Said) bool {
	s := tidy(told.swap(crowd.swap(l.Text, ""), ""))
	fields := strings.Fields(s)
	if lettered.in(s) && !digits.in(l.Text) || r.dish(l) {
		return true
	}
	if bulk := batchOf.of(tidy(l.Text)); bulk != "" && l.Ingredient == nil && !r.names.mentions(bulk) {
		return true
	}
	if l.Ingredient == nil && mine.in(tidy(l.Text)) && !digits.in(s) && !r.weighs(s) {
		return true
	}
	if l.Ingredient != nil || l.Doubt != Unknown && l.Doubt != Other || len(fields) < 2 || digits.in(s) || strings.ContainsAny(s, ",;") || seasons.in(s) || r.weighs(s) {
		return false
	}
	key := keyOf(s)
	if strings.HasSuffix(key, " sauce") && capitals(fields) {
		return true
	}
	if strings.Contains(key, "ice cream") || slices.ContainsFunc(strings.Fields(key), func(w string) bool { return titles[w] }) {
		return true
	}
	_, foreigner := r.names.abroad(s)
	return foreigner == "" && !r.names.mentions(s) && capitals(fields)
}

// capitals reports whether each word has a capital.
func capitals(fields []string) bool {
	return !slices.ContainsFunc(fields, func(w string) bool { return strings.ToLower(w[:1]) == w[:1] })
}

// vessel finds what an amount is the size of, "6 qt. freezer"; held, that something is in it.
var (
	vessel = find(`(?i)^[\s-]*(?:(?:jam|jelly|honey|mason|kilner|coffee|pickle) (?:jars?|pots?)\b|milk pans?\b|butter dish|egg cups?\b|sugar thermometers?\b|pastry brush|(?:(?:ice cream|loaf|mixing|metal|glass|plastic|large|sauce|springform|cake|pudding|electric|crank) )*(?:freezers?|bowls?|machines?|churns?|pans?|(?:loaf|cake|bread|baking|roasting|muffin) tins?|dish(?:es)?|mou?lds?|containers?|makers?|saucepans?|ramekins?|terrines?)\b)`)
	held   = find(`(?i)^\s*(?:\S+ ){1,2}(?:of|with) `)
)

// weighs reports whether s has an amount of something: a measure behind a number, a number
// before a food, a pinch.
func (r *Reader) weighs(s string) bool {
	fields := strings.Fields(heats.swap(s, " "))
	for i, w := range fields {
		w = strings.ToLower(strings.Trim(w, ".,;:()"))
		if pinched[w] || w == "taste" && i > 0 && strings.EqualFold(fields[i-1], "to") {
			return true
		}
		a, rest, ok := read(strings.TrimLeft(strings.Join(fields[i:], " "), "("))
		switch {
		case ok && a.in.kind == vague && strings.ContainsAny(w[:min(1, len(w))], "0123456789") && r.names.heads(rest):
			return true // "soak 4 leaves gelatine"
		case !ok || a.in.kind == vague || vessel.in(rest) && !held.in(rest):
		case a.in.kind != pieces && a.in.kind != container:
			return true
		case a.in.kind == container:
			if strings.HasPrefix(strings.TrimSpace(rest), "of ") {
				return true
			}
		default:
			if !timed.in(rest) && r.names.mentions(rest) {
				return true
			}
		}
	}
	return false
}

// heads reports whether s begins with a food.
func (n *names) heads(s string) bool {
	fields := strings.Fields(strings.TrimPrefix(strings.TrimSpace(s), "of "))
	for i := 1; i <= min(4, len(fields)); i++ {
		if _, ok := n.all[keyOf(strings.Trim(strings.Join(fields[:i], " "), ".,;:!?()"))]; ok {
			return true
		}
	}
	return false
}

// mentions reports whether a food is named anywhere in s.
func (n *names) mentions(s string) bool {
	fields := strings.FieldsFunc(keyOf(s), func(c rune) bool { return strings.ContainsRune(" ,;:!?()", c) })
	for i, w := range fields {
		fields[i] = one(w) // "yolks:" has its sign off only here
	}
	for i := range fields {
		for j := i + 1; j <= min(len(fields), i+4); j++ {
			if _, ok := n.all[strings.Join(fields[i:j], " ")]; ok {
				return true
			}
		}
	}
	return false
}
