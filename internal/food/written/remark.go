package written

import (
	"strings"

	"ripplewright/internal/food/ingredient"
)

// openers are words after which a remark is about what the food is for, where it comes from
// or how it is kept, whatever its words. common practice, no source.
var openers = words("so for about abt from at see buy ideally preferably my keeps helps stops prevents gives adds balances cuts makes lets save keep reserve freeze such like local reserving saving plus because since i")

// purposes are those after which even another food is only what this one is for.
var purposes = words("so for see my because since i keeps helps stops prevents gives adds balances cuts makes lets")

// glue are the words between those that are known.
var glue = words("& + level levelled leveled it bloom garnish serve dust decorate finish sprinkle coat dissolve pulp lumps bits spoonful gradually last later lemon lemons lime limes orange oranges fruit fruits half bit stiff pat firm through left cool freezer minutes minute hour hours quarters wedges slabs rounds strips shards ribbons matchsticks big thick thin bite-sized bite-size real thing stuff sort remove be back way day night before morning ahead again more twice once both sides only all straight size very and the a an then until as so too kind if you can will do it them while into to on with without by after before or smaller better bigger darkest lightest dark light ones one peaks pale smooth frothy foamy hot pit pits stone stones core cores stalk stalks seed seeds removed peel shell shells heat")

// tools are what a food is prepared with: any other thing behind "with" comes into it.
var tools = words("fork knife whisk spoon mortar blender stick pin hand hands care skin skins hammer sieve grater")

// accounted reports whether each word of a remark is known to leave the food, and how much
// of it there is, what the name says. One that is not is asked about: "coconut" behind sugar
// is another sugar, and "weighed with the leaves" no weight of the berries.
func (r *Reader) accounted(remark string, in *ingredient.Ingredient) bool {
	if assured.in(remark) || r.treated(remark) {
		return true
	}
	if wished.in(remark) && moreOrLess.in(remark) {
		return false
	}
	remark = graded.swap(wished.swap(ifAny.swap(heats.swap(remark, " "), ""), " "), " ")
	if in.Group == "nut_seed" {
		remark = toPaste.swap(remark, " ")
	}
	fields := strings.Fields(strings.ToLower(strings.Trim(remark, ".!?")))
	name := strings.ToLower(in.Name+" "+in.Kitchen()) + " " + keyOf(in.Name+" "+in.Kitchen())
	free := false
	for i, w := range fields {
		w = strings.Trim(w, ".,!;:'*")
		last := ""
		if i > 0 {
			last = strings.Trim(fields[i-1], ".,;:")
		}
		free = free && w != "but" || openers[w] || w == "not" && i == 0 && len(fields) > 1 && !digits.in(remark)
		switch {
		case strings.Contains(name, one(w)), proven(in, w), last == "no" && proven(in, without[w]), browned[w] && (in.Group == "nut_seed" || toToast[in.ID]):
		case free && purposes[strings.Trim(fields[0], ".,")]:
		case changed[w], packedIn[w], w == "can" && last == "a":
			return false
		case free, plainWords[w], plainWords[one(w)], remarks[w], tools[w]:
		case last == "with" && w != "a" && w != "the":
			return false
		case glue[w], w == "dry" && (last == "pat" || last == "patted"), strings.HasSuffix(w, "ly"), digits.in(w):
		case (strings.HasSuffix(w, "ed") || strings.HasSuffix(w, "en")) && !diverted[w]:
		default:
			return false
		}
	}
	return true
}

// toToast are foods beside nuts that are toasted once they are weighed and have no record of their
// own then.
var toToast = words("marshmallows oats_rolled")

// treated reports whether a remark tells a cook what to do with the food once it is weighed,
// "hydrate at 85 °C", and names no other.
func (r *Reader) treated(remark string) bool {
	verb := strings.ToLower(strings.Trim(strings.Fields(remark + " .")[0], ".,;:"))
	switch {
	case !treats[verb] || lessens.in(remark):
		return false
	case r.names.mentions(remark) || r.weighs(remark) || seasons.in(remark) || denied.in(remark) || scaled.in(remark) || howMuch.in(remark):
		return false
	}
	return !digits.in(apartFrom.swap(heats.swap(remark, " "), ""))
}

// treats are verbs by which nothing comes to a food or goes from it, lessens finds words by which
// something does.
var (
	treats  = words("hydrate sift sieve warm melt whip whisk wash rinse chill chop heat bring scald temper beat soften dissolve infuse freeze stir")
	lessens = find(`(?i)\b(?:down|thirds?|quarters?|half|halve|reduc\w*|off|out|away|part)\b`)
)

// assured finds remarks that only say the amount once more.
var assured = find(`(?i)^(?:(?:yes|yep|yup|yeah|really|seriously|honestly|sic|correct|true|exactly|no joke|no kidding|no typo|not a typo|trust me|i know|that much|all of it|that's right|that is right|you read (?:that|it) right|it's a lot|it is a lot|that's a lot)\b[\s,.!]*)+$`)

var (
	// ifAny finds the end of a remark that only wishes for what it says, graded the grades
	// of syrups and eggs, toPaste what is done to nuts after they were weighed.
	ifAny      = find(`(?i)\bif (?:(?:you|u|ya|we|i) (?:can )?(?:get|find|have|like|want|got)(?: (?:it|some|them|any|one))?(?: (?:spare|left|over|left over|handy|to hand))?|possible|available|liked|desired|wanted)[.!]*$`)
	wished     = find(`(?i)\b(?:must|should|ought to|have to|has to|needs? to) be\b`)
	moreOrLess = find(`(?i)\b(?:more|less|fewer|double|half)\b`)
	graded     = find(`(?i)\bgrade (?:aa?|b|c)\b(?:,? (?:very|light|medium|dark|golden|amber))*`)
	toPaste    = find(`(?i)\b(?:ground|blended|blitzed|processed|pounded|crushed|whizzed)(?: up)?(?: (?:very )?(?:finely|coarsely|fine))? (?:to|into) (?:an? )?(?:(?:fine|smooth|coarse|rough|oily) )?(?:paste|powder|meal|flour|crumbs|butter|dust)\b|\b(?:finely|coarsely) ground$|^ground$`)

	tinned   = find(`(?i)\b(?:cans?|tins?|jars?)\b`)
	cartoned = find(`(?i)\b(?:cartons?|bottles?|packs?|packets?|tubs?)\b`)
)

// preserved reports whether what a food is sold in makes another one of it: fruit in tins
// and jars is cooked in a syrup, eggs in cartons are pasteurised.
func preserved(l *Said, in *ingredient.Ingredient) bool {
	if eggParts[in.ID] != "" {
		return cartoned.in(l.Text) && l.Basis != Counted
	}
	name := strings.ToLower(in.Name)
	return in.Group == "fruit" && in.DensityKind == "bulk" && tinned.in(l.Text) && !strings.Contains(name, "canned") && !strings.Contains(name, "dried") && !strings.Contains(name, "raisin")
}

// without are the words for a food that has none of it.
var without = map[string]string{"salt": "unsalted", "sugar": "unsweetened"}

// tail finds words behind a name that begin a remark: "butter in cubes".
var tail = find(`(?i)\s(?:with|in|to|from|at|without|by|on|so|if|\pL+ed)\s`)

// tailed parts a name that none has from a remark behind it, where what is before that is
// a food's.
func (r *Reader) tailed(name string) (food, remark string, ok bool) {
	for _, at := range tail().FindAllStringIndex(name, -1) {
		food, remark = name[:at[0]], strings.TrimSpace(name[at[0]:])
		if _, _, known := r.names.look(food, ""); known {
			return food, remark, true
		}
	}
	return name, "", false
}

// packedIn are what a food is sold in that is another one there, and what is left of it.
var packedIn = words("tin tins cans carton concentrate juice syrup brine oil")

// diverted are participles that change how much is weighed, or what.
var diverted = words("weighed measured topped thinned diluted stretched reserved mixed ground combined blended whole-wheat skimmed infused flavoured flavored spiked filled stuffed coated enriched fortified bleached instead wooden golden swollen")
