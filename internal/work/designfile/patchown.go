package designfile

import (
	"slices"

	"gopkg.in/yaml.v3"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/work/design"
)

// match returns for each line of to the place of the line of from that it
// was, or −1: the same line first, then the same ingredient, then, if no line
// was added or removed, the same place.
func match(from, to []design.Line) []int {
	of := make([]int, len(to))
	used := make([]bool, len(from))
	for i := range of {
		of[i] = -1
	}
	claim := func(same func(a, b design.Line) bool) {
		take := func(i, j int) {
			if of[i] < 0 && !used[j] && same(from[j], to[i]) {
				of[i], used[j] = j, true
			}
		}
		for i := range to {
			if i < len(from) {
				take(i, i)
			}
		}
		for i := range to {
			for j := 0; j < len(from) && of[i] < 0; j++ {
				take(i, j)
			}
		}
	}
	claim(func(a, b design.Line) bool { return a == b })
	claim(func(a, b design.Line) bool { return a.Ingredient == b.Ingredient })
	if len(from) == len(to) {
		for i := range to {
			if of[i] < 0 && !used[i] {
				of[i], used[i] = i, true
			}
		}
	}
	return of
}

// pairsOf returns the keys that l is written with.
func pairsOf(l design.Line) []pair {
	var list []pair
	if l.CountOf != "" {
		list = append(list, pair{string(l.CountOf), numberValue(l.Count)})
	} else {
		list = append(list, pair{keyIngredient, value{text: l.Ingredient}}, pair{keyGrams, numberValue(l.Grams)})
	}
	if l.Note != "" {
		list = append(list, pair{keyNote, value{text: l.Note}})
	}
	if l.Price.Known {
		list = append(list, pair{keyPrice, numberValue(l.Price.Value)})
	}
	return list
}

// own patches the list of own ingredients.
func (p *patcher) own(seq *yaml.Node, from, to []*ingredient.Ingredient) {
	items := make([]*yaml.Node, len(to))
	for i, in := range to {
		j := slices.IndexFunc(from, func(o *ingredient.Ingredient) bool { return o.ID == in.ID })
		if j >= 0 && from[j].Equal(in) {
			items[i] = seq.Content[j]
			continue
		}
		n, err := ingredient.ToYAML(in)
		if err != nil {
			p.err = err
			return
		}
		if j >= 0 {
			adopt(n, seq.Content[j])
		}
		items[i] = n
	}
	p.items(seq, items)
}

// adopt gives the new mapping n the order, style and comments of old.
func adopt(n, old *yaml.Node) {
	n.Style = old.Style
	n.HeadComment, n.LineComment, n.FootComment = old.HeadComment, old.LineComment, old.FootComment
	var ordered []*yaml.Node
	for i := 0; i+1 < len(old.Content); i += 2 {
		k, v := old.Content[i], old.Content[i+1]
		new := valueOf(n, k.Value)
		if new == nil {
			continue
		}
		if new.Kind == yaml.ScalarNode && v.Kind == yaml.ScalarNode && new.Value == v.Value {
			new = v
		} else {
			new.HeadComment, new.LineComment, new.FootComment = v.HeadComment, v.LineComment, v.FootComment
		}
		ordered = append(ordered, k, new)
	}
	for i := 0; i+1 < len(n.Content); i += 2 {
		if valueOf(old, n.Content[i].Value) == nil {
			ordered = append(ordered, n.Content[i], n.Content[i+1])
		}
	}
	n.Content = ordered
}

// wordNode returns a key.
func wordNode(name string) *yaml.Node {
	return &yaml.Node{Kind: yaml.ScalarNode, Tag: "!!str", Value: name}
}
