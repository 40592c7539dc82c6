package rippleview

import (
	"fmt"
	"image/color"
	"math"
	"strings"

	"ripplewright/internal/answer/tub"
	"ripplewright/internal/matter/ripple"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
)

// Colour reads "#rrggbb"; what is none is black.
func Colour(hex string) color.NRGBA {
	c := color.NRGBA{A: 255}
	if _, err := fmt.Sscanf(hex, "#%02x%02x%02x", &c.R, &c.G, &c.B); err != nil {
		return color.NRGBA{A: 255}
	}
	return c
}

// Hex writes a colour as a design file has it.
func Hex(c color.Color) string {
	v := color.NRGBAModel.Convert(c).(color.NRGBA)
	return fmt.Sprintf("#%02x%02x%02x", v.R, v.G, v.B)
}

// TypedHex returns the colour that someone typed, with or without its sign, in
// either case of letters; ok is false where it is none.
func TypedHex(text string) (hex string, ok bool) {
	hex = strings.ToLower(strings.TrimSpace(text))
	if !strings.HasPrefix(hex, "#") {
		hex = "#" + hex
	}
	return hex, len(hex) == 7 && Hex(Colour(hex)) == hex
}

// FoodNames are the foods that colour a phase, in the maker's language.
func FoodNames() []string {
	var names []string
	for _, f := range tub.Foods() {
		names = append(names, say.Of(f.Name))
	}
	return names
}

// FoodColour is the colour that a food gives the foam, or the custard; "" of a food
// that is not known.
func FoodColour(name string, foam bool) string {
	for _, f := range tub.Foods() {
		if say.Of(f.Name) == name {
			return of(f, foam)
		}
	}
	return ""
}

// FoodOf names the food of a colour, say.OwnColour where it is no food's.
func FoodOf(hex string, foam bool) string {
	name := say.OwnColour.String()
	for _, f := range tub.Foods() {
		if of(f, foam) == strings.ToLower(hex) {
			name = say.Of(f.Name)
		}
	}
	return name
}

func of(f tub.Food, foam bool) string {
	if foam {
		return f.Foam
	}
	return f.Dense
}

// alikeLightness is the difference of lightness under which two phases run together
// at arm's length: our own choice.
const alikeLightness = 15

// TooAlike says that the phases are hard to tell apart by colour, "" if they are not
// or d is not valid.
func TooAlike(s say.Style, d design.Design) string {
	if len(design.Validate(d)) > 0 {
		return ""
	}
	style := tub.Style(d)
	apart := math.Abs(ripple.Lightness(style.Foam) - ripple.Lightness(style.Dense))
	if apart >= alikeLightness {
		return ""
	}
	return say.TooAlike(s, apart, alikeLightness)
}
