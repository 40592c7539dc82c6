package written

import "strings"

// What stands on pages, sheets and letters beside the lines of a recipe, and weighs nothing.
// common practice, no source.
var (
	// The buttons and plates of a page: "Jump to Video", "Cook mode", "Course: Dessert".
	button = find(`(?i)^(?:(?:jump|skip|scroll|go|back) to (?:the )?(?:recipe|video|comments?|reviews?|top|content|instructions?|method)|(?:print|pin|save|share|rate|email|bookmark)(?: (?:it|this|the|recipe|page|now))*|cook mode|prevent your screen|(?:leave|write|add) an? (?:comment|review|rating|note)|(?:watch|play)(?: the)? video|advertisements?|sponsored|affiliate links?|(?:de)?select all|add to (?:cart|basket|collection|favou?rites)|[123½]x(?: [123½]x)+|read more|click here|see (?:notes?|video)|log ?in|subscribe)\b[^\d]*$`)
	plate  = find(`(?i)^(?:subject|to|cc|sent|re|fwd?|betreff|author|source|from|adapted from|recipe (?:by|from)|by|via|credit|course|cuisine|keywords?|tags?|category|difficulty|level|rating|equipment|tools|chef|made by|tested by|date|season|occasion|diet|(?:selling |sale )?prices?|rrp)\s*:\s*\S`)

	// The end of a letter: "Best, F.", "love from Nan".
	signed = find(`(?i)^(?:all the best|(?:(?:with )?(?:best|kind|warm|kindest|warmest) )?(?:best|cheers|love|yours|regards|wishes|thanks|thank you|hugs|kisses|x{1,3}|xo(?:xo)*|sincerely|cheerio|ciao|bye|bon app[eé]tit|good luck|enjoy)(?: (?:truly|sincerely|again|always|and (?:kisses|love|hugs|thanks)|so much|in advance|to you(?: all)?))*)(?:[,.!-]+\s*| from |\s*$)(?:\pL[\pL.'-]*[ ]?){0,3}[.!]*$`)

	// A row that adds the weights up: "Sum 1007.5", "Subtotal | 900 g | 100 %".
	summed = find(`(?i)^(?:sum|sub-?totals?|grand total|totals?|tot\.?|\x{03A3}|\x{2211}|all together|altogether)\b?[\s:=|;,-]*(?:[\d.,]+ ?(?:k?g|m?l|lbs?|oz|%|pcs)?[\s|;,/()-]*)*$`)

	// Words that a page is found by, and a name with kisses.
	hashed  = find(`^\s*(?:[#@][\pL\d_.]+[\s,]*)+$`)
	starred = find(`^\s*[\x{2605}\x{2606}\x{2665}\x{2661}\x{2764}\x{2726}\x{2744}]+\s*[^\d]*[\x{2605}\x{2606}\x{2665}\x{2661}\x{2764}\x{2726}\x{2744}]\x{FE0F}?\s*$`)
	kisses  = find(`(?i)^(?:x{2,4}|xo(?:xo)+) \pL+$`)
	kissed  = find(`(?i)^(?:xx+|xoxo)[\s.!]*$|^[\s>-]*\pL+(?: \pL+)? (?:x{1,4}|xoxo)[\s.!]*$`)

	// For how many what follows is, and what a mix is measured by: "for 2 pints you need", "Overrun 35%".
	needed   = find(`(?i)\bfor (?:about |ca\.? |around )?\d[\d./ ]* ?(?:pints?|quarts?|qts?|l|lit(?:er|re)s?|kg|people|tubs?|servings?|portions?)\b,? (?:you|u|we|i)(?:'ll| will)? (?:need|take|want|use)\b[^\d]*$`)
	measured = find(`(?i)^(?:overrun|\x{00B0}?brix|ph|pac|pod|npac|afp|total solids|msnf|snf|(?:draw|extraction|serving|storage) temp(?:erature)?)\b[\s:=~]*[-\x{2013}]?\d+(?:[.,]\d+)? ?(?:%|\x{00B0} ?[cf]?|[cf]|\x{00B0}?(?:brix|bx))?$`)

	// The page of a book.
	paged = find(`(?i)^(?:p|pg|pp|page|seite|pag|no|nr)\.? ?\d{1,3}$`)
	bare  = find(`^\s*(?:\d{2,3}|[-\x{2013}\x{2014}] ?\d{1,3} ?[-\x{2013}\x{2014}])\s*$`)

	// The day of a sheet, and who wrote at what time: "date 03/11", "Mom 3:02 PM".
	onDay  = find(`(?i)^(?:date|dated|datum|made|churned|printed|updated|revised)(?: on)?\s*:?\s*\d{1,4}[./-]\d{1,2}(?:[./-]\d{2,4})?$`)
	atTime = find(`(?i)^[^\d]{0,40}\b(?:(?:today|yesterday)?,? ?(?:at )?)\d{1,2}:\d{2}(?::\d{2})?[ \x{00A0}\x{202F}]?(?:[ap]\.?m\.?)?$`)

	// What is to be bought again.
	bought = find(`(?i)^(?:(?:must|need to|have to|to|remember to|don't forget to|todo:?|to do:?) )?(?:(?:re)?(?:buy|order|get|pick up) (?:some )?more|restock|running (?:low|out) (?:on|of)|(?:almost |nearly |all )?out of|ran out of)\s`)

	// What is round the freezer and in no mix, what is meant for the next batch, how it sold, and the
	// number of a mould.
	packed   = find(`(?i)^(?:(?:crushed|cracked|cubed) )?(?:ice (?:and|&|\+) (?:(?:rock|coarse|ice cream) )?salt|(?:rock|ice cream) salt(?: (?:and|&|\+) (?:crushed )?ice)?),? (?:for|to pack|around|round)(?: (?:in|into|the|your|crank|ice cream|outside of))* (?:freezer|crank|bucket|churn|machine|packing|freezing)[.!]*$`)
	nextTime = find(`(?i)^\(?(?:(?:a )?(?:bit|little|touch|tad|lot|much|way) )?(?:more|less|fewer|no|try|maybe|use|add|cut|halve|double)\b[^\d]*\bnext time\b[\s.!)]*$`)
	soldOut  = find(`(?i)^\(?(?:all )?sold out\b`)
	mould    = find(`(?i)^(?:mou?ld|ring|nozzle|scoop|disher)s? (?:(?:no\.?|nr\.?|number|size|#) ?)?\d+(?:[,;:]? \d+ ?(?:ml|cl|cm|mm|fl oz|oz))?(?:[,;][^\d]*)?$`)

	// A batch with a letter: "Batch A choc - Sat market".
	numbersFood = find(`(?:^|[\s/|,;:-])\d+(?:[.,/]\d+)?\s*\pL`)
	lettered    = find(`(?i)^(?:batch|trial|test|version|sheet|formula|card|round|attempt)\s+[A-H]\b`)
)

// beside reports whether a line stands on a page, a sheet or a letter beside the recipe and weighs
// nothing.
func (r *Reader) beside(s string) bool {
	switch {
	case summed.in(s), paged.in(s), needed.in(s), measured.in(s):
		return true
	case onDay.in(s), nextTime.in(s), packed.in(s), isWares(s):
		return true
	case mould.in(s):
		return !r.names.mentions(s)
	case soldOut.in(s):
		return !r.weighs(s) && !r.names.mentions(s)
	case atTime.in(s):
		return !r.names.mentions(s)
	case plate.in(s):
		return !digits.in(s) || !r.weighs(s) && !r.names.mentions(s)
	case r.weighs(s) || enough.in(s):
		return false
	case button.in(s):
		return true
	case bought.in(s):
		return !seasons.in(s) && !digits.in(s)
	case lettered.in(s):
		return !r.names.mentions(s) && !numbersFood.in(s) && !r.names.foreigner(lettered.swap(s, ""))
	}
	return strings.Contains(s, " ") && (signed.in(s) || kisses.in(s)) && !r.names.mentions(s) && !r.names.foreigner(s)
}

// wares are what is bought beside foods, and beside wares of what: "paper napkins, lids". The words
// that are measures as well, a cup or a tub, are wares only beside others. common practice, no source.
var (
	wares   = words("napkin lid straw label sticker glove foil parchment wrapper cling clingfilm toothpick skewer apron towel")
	wareToo = words("spoon cup tub pot bowl stick scoop bag box bottle container paper plastic wooden waxed small mini and for the of film wrap more extra clean")
)

// isWares reports whether s is a list of wares and nothing else.
func isWares(s string) bool {
	some := false
	for _, w := range strings.FieldsFunc(keyOf(s), func(c rune) bool { return strings.ContainsRune(" ,;&+", c) }) {
		some = some || wares[w]
		if !wares[w] && !wareToo[w] {
			return false
		}
	}
	return some
}

// numberOfPage reports whether a line is the number of a page that was copied with it: the first
// or the last of several, and no part of the amount below it.
func numberOfPage(lines []string, i int) bool {
	if len(lines) < 3 || i > 0 && i < len(lines)-1 || !bare.in(lines[i]) {
		return false
	}
	return i > 0 || !quotien.in(strings.TrimSpace(fractions.Replace(lines[1])))
}
