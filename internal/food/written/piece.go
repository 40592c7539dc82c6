package written

import (
	"strconv"
	"strings"

	"ripplewright/internal/food/ingredient"
)

// Pieces is what a count is of where its record weighs the whole one.
const Pieces = "pieces"

// soldAs are the measures of records that are one of what is sold by the piece, all alike. What
// is called a cookie or a cracker has a size by its brand.
var soldAs = [...]string{"cone", "ladyfinger", "regular"}

// otherSizes are words of a piece that is not as large as the record's.
var otherSizes = words("mini miniature tiny baby big huge giant jumbo thin double king bite")

// onePieceOf is what one whole piece weighs by its record: a fruit of the very size that the
// record weighs, or what is sold by the piece in one size. The size is "" for those.
func onePieceOf(in *ingredient.Ingredient, name string) (grams float64, size string, ok bool) {
	fields := strings.Fields(keyOf(name))
	for i, w := range fields {
		if full := shortSizes[w]; full != "" {
			w = full
		}
		if otherSizes[w] || shellWords[w] && size != "" {
			return 0, "", false
		}
		if shellWords[w] {
			if size = w; i > 0 && fields[i-1] == "extra" {
				size = "extra " + w
			}
		}
	}
	switch {
	case in.Group == "fruit" && size != "":
		grams = sizedFruit(in, size)
	case size == "" && (in.Group == "bakery" || in.ID == "marshmallows"):
		for _, piece := range soldAs {
			if all := recordMeasures(in, piece); len(all) == 1 && all[0].how == "" {
				grams = all[0].grams
			}
		}
	}
	return grams, size, grams > 0
}

// sizedFruit is what a fruit of a size weighs by its record, g, 0 where it has none.
func sizedFruit(in *ingredient.Ingredient, size string) float64 {
	for _, entry := range strings.Split(in.Measures, "; ") {
		if m := fruitOfSize.parts(entry); m != nil && m[1] == size {
			g, _ := strconv.ParseFloat(m[2], 64)
			return g
		}
	}
	return 0
}

// fruitOfSize finds a record's measure of one fruit of a size: "1 large (3-1/4 in dia) = 223 g".
var fruitOfSize = find(`^1 ((?:extra )?(?:small|medium|large))(?: \([^()]*\))? = ([\d.]+) g$`)

// frozenLater finds that a food was frozen after it was counted.
var frozenLater = find(`(?i)(?:(?:and|then|&|\+) )?\bfrozen\b`)

// fresh takes from a remark that the fruit is frozen, where it was counted by its size: what is
// bought frozen is not.
func (p *parts) fresh(note string, in *ingredient.Ingredient) string {
	if _, size, ok := onePieceOf(in, p.name); ok && size != "" && len(p.sum) > 0 && p.sum[0].in.kind == pieces {
		return frozenLater.swap(note, "")
	}
	return note
}

// ofFruit finds a remark that only one part of a fruit is meant: "1 lemon, just the zest".
var ofFruit = find(`(?i)^(?:only |just )?(?:the )?(?:(?:finely |coarsely )?grated )?(zest|rind|peel|juice)(?: only)?$`)

// fruitPart carries such a remark into the name.
func (p *parts) fruitPart() {
	if len(p.notes) != 1 || p.whole != "" || len(p.sum) == 0 || p.sum[0].in.kind != pieces {
		return
	}
	if m := ofFruit.parts(p.notes[0]); m != nil {
		p.whole, p.notes = strings.ToLower(m[1]), nil
	}
}

// partOfFruit is the last word of what is taken of a whole one, as the library calls it.
func partOfFruit(whole string) string {
	fields := strings.Fields(whole)
	if last := one(fields[len(fields)-1]); last != "rind" {
		return last
	}
	return "zest"
}
