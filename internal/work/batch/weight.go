package batch

import (
	"fmt"
	"strconv"
	"strings"

	"ripplewright/internal/form/echo"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/work/design"
)

// Weight is a line that was weighed otherwise than the design has it, g of the whole
// batch.
type Weight struct {
	Part       design.Part
	Ingredient string
	Grams      float64
}

// String is the weight as the file has it.
func (w Weight) String() string {
	return fmt.Sprintf("%s %s %s g", w.Part, w.Ingredient, strconv.FormatFloat(w.Grams, 'f', -1, 64))
}

// ParseWeight reads "dense sucrose 118 g".
func ParseWeight(s string) (Weight, error) {
	words := strings.Fields(s)
	if len(words) == 4 && words[3] == "g" {
		words = words[:3]
	}
	if len(words) != 3 {
		return Weight{}, flaw.New("%s is not a part, an ingredient and grams, as in dense sucrose 118 g", echo.Quoted(s))
	}
	w := Weight{Ingredient: words[1]}
	known := false
	for _, p := range design.Parts {
		if p.String() == words[0] {
			w.Part, known = p, true
		}
	}
	if !known {
		return Weight{}, flaw.New("%s is not one of dense, foam, foam.syrup", echo.Quoted(words[0]))
	}
	g, err := strconv.ParseFloat(strings.TrimSuffix(words[2], "g"), 64)
	if err != nil || !(g >= 0 && g <= design.MaxGrams) {
		return Weight{}, flaw.New("%s is not a number of grams from 0 to %.0f", echo.Quoted(words[2]), design.MaxGrams)
	}
	w.Grams = g
	return w, nil
}

// Weights returns what differs. b has no Problem.
func (b *Batch) Weights() []Weight {
	var out []Weight
	for _, s := range b.Weighed {
		if w, err := ParseWeight(s); err == nil {
			out = append(out, w)
		}
	}
	return out
}
