package written

import (
	"slices"
	"strings"
	"sync"
	"unicode"
)

// A misspelt word is read as another where a slip of the fingers tells the two apart, two
// neighbouring letters swapped or one letter doubled or no longer doubled. One that is missing or
// changed may be of another food, sherry and cherry, pears and pearls: of those only the words of
// a list are read.

// misspellings are the common ones of a name, by the word that is meant. None is a word of a
// kitchen itself: "tarter", "liquer", "currents", "coco" and "almons" are none of them, as they may
// be a tarter apple, liquor, raisins of another kind, coconuts and salmon. common practice, no source.
var misspellings = func() map[string]string {
	all := map[string]string{}
	for meant, list := range map[string]string{
		"sugar": "suger sugur shugar", "yolk": "yoke yok yolke", "yolks": "yokes yoks yolkes", "mascarpone": "mascapone marscapone marscarpone mascaporne maskarpone",
		"cinnamon": "cinammon cinnimon cinnamin cinamin cinnomon", "chocolate": "choclate chocalate choclat chockolate", "raspberry": "rasberry rasbery rasperry", "raspberries": "rasberries rasberrys rasperries",
		"blueberry": "bluberry", "blueberries": "bluberries bluberrys", "avocado": "avacado", "avocados": "avacados avacadoes", "pineapple": "pinapple", "pistachio": "pistacio pistashio pistaccio",
		"pistachios": "pistacios pistashios pistaccios", "vanilla": "vannila vinilla venilla", "cardamom": "cardamon cardamum cardomom cardomon", "condensed": "condenced", "evaporated": "evaperated evapourated",
		"sweetened": "sweetend", "unsweetened": "unsweetend", "yogurt": "yogart yogert yougurt", "gelatin": "gelitin geletin", "coconut": "cocoanut cocunut cocanut", "vinegar": "vineger vinager",
		"marshmallow": "marshmellow", "marshmallows": "marshmellows", "pumpkin": "pumkin", "graham": "grahm", "pomegranate": "pomegranite", "xanthan": "xanthum", "molasses": "mollases", "whipping": "wipping",
		"powdered": "powderd", "bourbon": "burbon", "ricotta": "riccota", "desiccated": "dessicated",
	} {
		for _, w := range strings.Fields(list) {
			all[w] = meant
		}
	}
	return all
}()

// leastLetters is how long a word has to be before a slip in it is taken for one: short words
// are like too many.
const leastLetters = 5

// longMeasure is how long the word for a measure has to be to be read so: "teaspon".
const longMeasure = 8

// otherWords are words, and foods of other tongues, that a slip away are those of a food's name.
var otherWords = words("ample caned cartoon crema desert diary filing forms leeches loses profs purse reeds roost sherd slated slats supper")

// familiar are the words that the reader knows in any place, beside those of names.
var familiar = sync.OnceValue(func() map[string]bool {
	all := map[string]bool{}
	for _, list := range []map[string]bool{plainWords, bySize, changed, remarks, openers, glue, tools, packedIn, diverted, layout, titles, methods, tells, points, talked, first, follows, pinched,
		unsure, hedges, filledBy, sizeWords, otherSizes, blocks, browned, toProve, smallWords, notSpeakers, amends, sorts(), otherWords} {
		for w := range list {
			all[w] = true
		}
	}
	for w := range measures {
		all[w] = true
	}
	for name := range foreign() {
		for _, w := range strings.Fields(name) {
			all[w] = true
		}
	}
	return all
})

// letters finds a word.
var letters = find(`\pL+`)

// respelt returns a line with the words put right that are a slip away from one word of a name,
// and those words as they are read.
func (n *names) respelt(text string) (fair string, read []string) {
	fair = letters().ReplaceAllStringFunc(text, func(w string) string {
		meant := n.slip(strings.ToLower(w))
		if meant == "" {
			return w
		}
		read = append(read, meant)
		return meant
	})
	return fair, read
}

// slip returns the one word of a name that w is a slip away from, or a common misspelling of; ""
// where it is known itself or there is none, or several.
func (n *names) slip(w string) (meant string) {
	known := func(other string) bool {
		m := measures[other]
		return n.words[one(other)] || len(other) >= longMeasure && (m.kind == mass || m.kind == volume)
	}
	if strings.ContainsFunc(w, func(c rune) bool { return c > unicode.MaxASCII }) || n.words[one(w)] || familiar()[w] || familiar()[one(w)] {
		return ""
	}
	if meant = misspellings[w]; meant != "" && n.words[one(meant)] {
		return meant
	}
	if meant = ""; len(w) < leastLetters {
		return ""
	}
	for _, other := range slips(w) {
		switch {
		case !known(other) || meant != "" && one(other) == one(meant):
		case meant != "":
			return ""
		default:
			meant = other
		}
	}
	return meant
}

// slips are the words that a slip of the fingers makes w of.
func slips(w string) (all []string) {
	for i := range len(w) {
		all = append(all, w[:i]+w[i:i+1]+w[i:])
		if i+1 == len(w) {
			break
		}
		if w[i] == w[i+1] {
			all = append(all, w[:i]+w[i+1:])
			continue
		}
		swapped := []byte(w)
		swapped[i], swapped[i+1] = w[i+1], w[i]
		all = append(all, string(swapped))
	}
	return slices.Compact(all)
}
