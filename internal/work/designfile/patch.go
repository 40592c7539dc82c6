package designfile

import (
	"slices"

	"gopkg.in/yaml.v3"

	"ripplewright/internal/work/design"
)

// patcher changes a tree that says design from until it says design to, and
// touches nothing else.
type patcher struct {
	from, to *design.Design
	err      error

	in      *inPlace // the text that the tree was read from; nil: nobody asks
	changes []change // of that text
	rebuilt bool     // the text cannot be changed in place
}

// put keeps a change of the text.
func (p *patcher) put(c change, ok bool) {
	p.changes = append(p.changes, c)
	p.rebuilt = p.rebuilt || !ok
}

func (p *patcher) document(n *yaml.Node) { p.section(n, root) }

// section patches the mapping m of section s.
func (p *patcher) section(m *yaml.Node, s *key) {
	for i, k := range s.keys {
		if v := valueOf(m, k.name); v != nil {
			p.value(v, k)
		} else if v := p.fresh(k); v != nil {
			p.insert(m, s, i, v)
		}
	}
}

// value patches the value v of key k.
func (p *patcher) value(v *yaml.Node, k *key) {
	switch k.kind {
	case oneSetting:
		p.set(v, settingValue(k.field, p.from), settingValue(k.field, p.to))
	case section:
		p.section(v, k)
	case lines:
		p.lines(v, p.from.Lines(k.part), p.to.Lines(k.part))
	case own:
		p.own(v, p.from.Own, p.to.Own)
	}
}

// set changes the scalar n from old to new.
func (p *patcher) set(n *yaml.Node, old, new value) {
	if old == new {
		return
	}
	if p.in != nil {
		p.put(p.in.replaced(n, new))
	}
	new.into(n)
}

// fresh returns the value of key k if it is not what leaving it out means.
func (p *patcher) fresh(k *key) *yaml.Node {
	switch k.kind {
	case oneSetting:
		defaults := design.Default()
		if v := settingValue(k.field, p.to); v != settingValue(k.field, &defaults) {
			return v.node()
		}
	case section:
		m := &yaml.Node{Kind: yaml.MappingNode}
		if k.oneLine {
			m.Style = yaml.FlowStyle
		}
		for _, c := range k.keys {
			if v := p.fresh(c); v != nil {
				m.Content = append(m.Content, wordNode(c.name), v)
			}
		}
		if len(m.Content) > 0 {
			return m
		}
	case lines:
		if list := p.to.Lines(k.part); len(list) > 0 {
			seq := &yaml.Node{Kind: yaml.SequenceNode}
			p.lines(seq, nil, list)
			return seq
		}
	case own:
		if len(p.to.Own) > 0 {
			seq := &yaml.Node{Kind: yaml.SequenceNode}
			p.own(seq, nil, p.to.Own)
			return seq
		}
	}
	return nil
}

// insert puts key i of section s with value v into the mapping m, behind the
// nearest key that stands before it in our order.
func (p *patcher) insert(m *yaml.Node, s *key, i int, v *yaml.Node) {
	at := 0
	for j := i - 1; j >= 0 && at == 0; j-- {
		for c := 0; c+1 < len(m.Content); c += 2 {
			if m.Content[c].Value == s.keys[j].name {
				at = c + 2
			}
		}
	}
	if p.in != nil {
		p.put(p.in.keyAdded(m, at, s.keys[i].name, v))
	}
	if len(m.Content) == 0 && !s.oneLine {
		m.Style &^= yaml.FlowStyle
	}
	m.Content = slices.Insert(m.Content, at, wordNode(s.keys[i].name), v)
}

// lines patches a list of lines. An item stays the item of its line through
// moves and changes, so that its comments do.
func (p *patcher) lines(seq *yaml.Node, from, to []design.Line) {
	of := match(from, to)
	oneLine := len(seq.Content) == 0 || seq.Content[len(seq.Content)-1].Style&yaml.FlowStyle != 0
	items := make([]*yaml.Node, len(to))
	for i, l := range to {
		if j := of[i]; j >= 0 {
			items[i] = seq.Content[j]
			p.item(items[i], pairsOf(from[j]), pairsOf(l))
			continue
		}
		items[i] = &yaml.Node{Kind: yaml.MappingNode}
		if oneLine {
			items[i].Style = yaml.FlowStyle
		}
		p.item(items[i], nil, pairsOf(l))
	}
	p.items(seq, items)
}

// items gives the list other items, of which some may be those that it has.
func (p *patcher) items(seq *yaml.Node, items []*yaml.Node) {
	if p.in != nil && p.in.has(seq) {
		p.listed(seq, items)
	}
	if len(seq.Content) == 0 && len(items) > 0 {
		seq.Style &^= yaml.FlowStyle
	}
	seq.Content = items
}

// listed puts down what changes in the text when the list gets other items.
func (p *patcher) listed(seq *yaml.Node, items []*yaml.Node) {
	if len(seq.Content) == 0 && len(items) > 0 {
		p.put(p.in.filled(seq, &yaml.Node{Kind: yaml.SequenceNode, Content: items}))
		return
	}
	kept := make([]*yaml.Node, 0, len(seq.Content))
	for _, item := range seq.Content {
		if slices.Contains(items, item) {
			kept = append(kept, item)
		} else {
			p.put(p.in.itemRemoved(seq, item))
		}
	}
	var before *yaml.Node
	for _, item := range items {
		switch {
		case len(kept) > 0 && item == kept[0]:
			before, kept = item, kept[1:]
		case p.in.has(item): // it moved
			p.rebuilt = true
		default:
			p.put(p.in.itemAdded(seq, before, item))
		}
	}
}

// pair is one key of a line with its value.
type pair struct {
	key   string
	value value
}

// item patches the mapping of one line.
func (p *patcher) item(m *yaml.Node, from, to []pair) {
	kept := m.Content[:0:0]
	for i := 0; i+1 < len(m.Content); i += 2 {
		name := m.Content[i].Value
		inFrom := slices.IndexFunc(from, func(q pair) bool { return q.key == name })
		inTo := slices.IndexFunc(to, func(q pair) bool { return q.key == name })
		switch {
		case inTo >= 0 && inFrom >= 0:
			p.set(m.Content[i+1], from[inFrom].value, to[inTo].value)
		case inTo >= 0: // an empty note until now
			p.set(m.Content[i+1], value{}, to[inTo].value)
		case inFrom < 0: // an empty note still
		default:
			p.rebuilt = true
			continue
		}
		kept = append(kept, m.Content[i], m.Content[i+1])
	}
	for _, q := range to {
		if valueOf(m, q.key) == nil {
			v := q.value.node()
			if p.in != nil && p.in.has(m) {
				p.put(p.in.keyAdded(m, len(m.Content), q.key, v))
			}
			kept = append(kept, wordNode(q.key), v)
		}
	}
	m.Content = kept
}
