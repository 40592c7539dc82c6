package batch

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"

	"gopkg.in/yaml.v3"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/form/setting"
	"ripplewright/internal/work/design"
)

// VersionOf returns a short name of what a design says, twelve hexadecimal digits:
// the same for the same settings, lines and own ingredients, however its file is
// laid out. Its notes do not count: writing one makes no other dessert.
func VersionOf(d *design.Design) string {
	h := sha256.New()
	for _, f := range design.Fields() {
		if f.Path != "notes" {
			fmt.Fprintf(h, "%s=%q\n", f.Path, f.Text(d))
		}
	}
	for _, p := range design.Parts {
		for _, l := range d.Lines(p) {
			fmt.Fprintf(h, "%s %q %v %v %q\n", p, l.Ingredient, l.Grams, l.Count, l.CountOf)
		}
	}
	for _, in := range d.Own {
		n, err := ingredient.ToYAML(in)
		if err != nil {
			n = setting.WordNode(in.ID)
		}
		text, _ := yaml.Marshal(n)
		fmt.Fprintf(h, "%s\n", text)
	}
	return hex.EncodeToString(h.Sum(nil))[:12]
}
