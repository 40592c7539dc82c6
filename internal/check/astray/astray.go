// Package astray finds what a text tells otherwise than its reader chose: a unit of
// the other system, the other decimal sign, a weight without its ounces.
package astray

import (
	"regexp"
	"strings"

	"ripplewright/internal/show/say"
)

// The systems in which every text is looked at: metric, that of the US, and metric
// with a decimal comma and money with a sign.
var Systems = map[string]say.Style{"metric": say.Usual, "us": say.Customary, "comma": {Comma: true, Currency: "€"}}

const number = `(?:^|[^\w.,])[−-]?\d+(?:[.,]\d+)?`

var (
	metric = regexp.MustCompile(`°C|\bmL\b|\bmm\b|\bcm\b|cm²|[0-9] ?(m|L|K|km|dL|cL)\b|g/mL|g/cm³|W/\(m|kg/m³|kJ/`)
	us     = regexp.MustCompile(`°F|\boz\b|[0-9] ?cups?\b|[0-9] in([.,;:)]|$| wide| deep)|\blbs?\b|[0-9] ft\b|pints?\b|gal\b|Btu`)
	// inBoth stands in every system: a published figure beside what it is in °C, and
	// sections of regulations.
	inBoth  = regexp.MustCompile(`71 °C \(160 °F\)|\b\d+ CFR [\d.]+|\b\d+[.-]\d{3}\.\d+|\b\d{3}\.\d{3}\b|§ ?[\d.]+|\d+:\d+`)
	grams   = regexp.MustCompile(`\d (k?g)\b( \([\d., lboz]+\)|, [\d., ]*(?:oz|lb))?`)
	point   = regexp.MustCompile(number[:len(number)-len(`(?:[.,]\d+)?`)] + `\.\d+`)
	comma   = regexp.MustCompile(number[:len(number)-len(`(?:[.,]\d+)?`)] + `,\d+`)
	perGram = regexp.MustCompile(`(?:for|per|of|in|a|each) (?:100|1|a) g\b|[\d.,]+ g [a-z ]*to 100 g of[^:]*:`)
)

// In returns what of a text is not as s has it.
func In(text string, s say.Style) []string {
	text = inBoth.ReplaceAllString(plain(text), "")
	wrongUnit, wrongSign := us, comma
	if s.Volumes != say.Millilitres || s.Scale == say.Fahrenheit {
		wrongUnit = metric
	}
	if s.Comma {
		wrongSign = point
	}
	return append(wrongUnit.FindAllString(text, -1), wrongSign.FindAllString(text, -1)...)
}

func plain(text string) string { return strings.ReplaceAll(text, "\u00a0", " ") }

// Bare returns the weights of a text that stand without the ounces that s has beside
// them. What is told for 100 g, or for one, is no weight of anything.
func Bare(text string, s say.Style) (out []string) {
	if s.Weights != say.WithOunces {
		return nil
	}
	for _, m := range grams.FindAllStringSubmatch(perGram.ReplaceAllString(plain(text), ""), -1) {
		if !strings.Contains(m[2], "oz") && !strings.Contains(m[2], "lb") {
			out = append(out, m[0])
		}
	}
	return out
}
