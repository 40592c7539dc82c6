package designfile

import (
	"strings"

	"ripplewright/internal/form/setting"
	"ripplewright/internal/work/design"
)

// Version is the version of the format that this package reads and writes.
const Version = 1

// key is one key of the format.
type key struct {
	name string
	path string
	kind keyKind

	field    setting.Field[design.Design] // of a setting
	part     design.Part                  // of a list of lines
	keys     []*key                       // of a section, in the order we write them
	required bool
	oneLine  bool // a section that we write as {…}
}

type keyKind uint8

const (
	oneSetting keyKind = iota
	section
	lines
	own
	version
)

// root is the whole format. Settings come from design.Fields; only what is no
// setting is named here.
var root = makeRoot()

func makeRoot() *key {
	r := &key{kind: section}
	r.add("ripplewright", version).required = true
	for _, f := range design.Fields() {
		switch f.Path {
		case "dense.stove_loss_percent":
			r.add("dense.lines", lines).part = design.DensePart
		case "foam.syrup.cook_temperature_c":
			r.add("foam.lines", lines).part = design.FoamPart
		case "foam.syrup.weighed_g":
			r.add("foam.syrup.lines", lines).part = design.SyrupPart
		}
		r.add(f.Path, oneSetting).field = f
	}
	r.add("ingredients", own)
	for _, name := range [...]string{"dense", "foam"} {
		k := r.child(name)
		k.required, k.oneLine = true, false
	}
	r.child("foam").child("syrup").oneLine = false
	return r
}

// add adds the key at path, and the sections on the way, and returns it.
func (k *key) add(path string, kind keyKind) *key {
	at := k
	names := strings.Split(path, ".")
	for i, name := range names {
		next := at.child(name)
		if next == nil {
			next = &key{name: name, path: strings.Join(names[:i+1], "."), kind: section, oneLine: true}
			at.keys = append(at.keys, next)
		}
		at = next
	}
	at.kind = kind
	return at
}

// child returns the key of that name in section k, or nil.
func (k *key) child(name string) *key {
	for _, c := range k.keys {
		if c.name == name {
			return c
		}
	}
	return nil
}

// names returns the names of the keys in section k.
func (k *key) names() []string {
	names := make([]string, len(k.keys))
	for i, c := range k.keys {
		names[i] = c.name
	}
	return names
}

// find returns the path of a key of that name anywhere below k, or "".
func (k *key) find(name string) string {
	for _, c := range k.keys {
		if c.name == name {
			return c.path
		}
		if p := c.find(name); p != "" {
			return p
		}
	}
	return ""
}

// The keys of one line.
const (
	keyIngredient = "ingredient"
	keyGrams      = "grams"
	keyNote       = "note"
	keyPrice      = "price_per_kg"
)

var lineKeys = []string{keyIngredient, keyGrams,
	string(design.WholeEggs), string(design.Yolks), string(design.Whites), keyNote, keyPrice}
