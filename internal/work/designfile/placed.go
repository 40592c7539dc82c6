package designfile

import (
	"bytes"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"
)

// replaced changes the value n.
func (w *inPlace) replaced(n *yaml.Node, to value) (change, bool) {
	from, ok := w.start(n)
	if !ok {
		return change{}, false
	}
	s := w.spots[n]
	key := w.keyOf(n)
	if s.style&(yaml.LiteralStyle|yaml.FoldedStyle) != 0 {
		if key == nil || strings.Contains(w.text(n.Line), "#") { // a comment behind the sign of the style
			return change{}, false
		}
		end := w.lines.End(w.lastLine(n, key.Column))
		return change{from: from, to: end, text: w.inLines(to, key)}, true
	}
	end, ok := w.end(n)
	if !ok {
		return change{}, false
	}
	text := to.inline()
	alone := strings.TrimSpace(string(w.raw[end:w.lines.End(w.lines.Of(end))])) == ""
	if key != nil && alone {
		text = w.inLines(to, key)
	}
	if end < len(w.raw) && w.raw[end] == '#' && !to.number { // a comment begins here
		text = strconv.Quote(to.text)
	}
	return change{from: from, to: end, text: text}, true
}

// keyOf returns the key of value n in a group without brackets, or nil.
func (w *inPlace) keyOf(n *yaml.Node) *yaml.Node {
	s := w.spots[n]
	if s.up == nil || s.up.Kind != yaml.MappingNode || w.spots[s.up].style&yaml.FlowStyle != 0 {
		return nil
	}
	return w.order[s.index-1]
}

// inLines returns the value as it is written behind a key, several lines as
// several lines.
func (w *inPlace) inLines(v value, key *yaml.Node) string {
	end := w.breakOf(key.Line)
	if v.number || !v.readsWellInLines() || len(end) == len("\u2028") { // that one would be part of the text
		return v.inline()
	}
	head, text := "|-", v.text
	if strings.HasSuffix(text, "\n") {
		head, text = "|", text[:len(text)-1]
	}
	indent := strings.Repeat(" ", key.Column-1+2)
	for _, l := range strings.Split(text, "\n") {
		head += end
		if l != "" {
			head += indent + l
		}
	}
	return head
}

// keyAdded adds the key of that name with the value v to the group m, behind
// the key that stands before place at in m, or else the first.
func (w *inPlace) keyAdded(m *yaml.Node, at int, name string, v *yaml.Node) (change, bool) {
	if m.Kind != yaml.MappingNode || !w.has(m) {
		return change{}, false
	}
	var before *yaml.Node // the value of that key
	for i := 0; i+1 < len(m.Content); i += 2 {
		if w.has(m.Content[i+1]) && (before == nil || i < at) {
			before = m.Content[i+1]
		}
	}
	added := &yaml.Node{Kind: yaml.MappingNode, Content: []*yaml.Node{wordNode(name), v}}
	if w.spots[m].style&yaml.FlowStyle != 0 {
		return w.behind(m, before, added)
	}
	if before == nil {
		return change{}, false
	}
	return w.below(before, w.spots[m].content[0].Column, added)
}

// itemAdded adds an item to the list, behind the item before.
func (w *inPlace) itemAdded(list, before, item *yaml.Node) (change, bool) {
	added := &yaml.Node{Kind: yaml.SequenceNode, Content: []*yaml.Node{item}}
	switch {
	case !w.has(list), before == nil:
		return change{}, false
	case w.spots[list].style&yaml.FlowStyle != 0:
		return w.behind(list, before, added)
	}
	return w.below(before, list.Column, added)
}

// filled writes the items of added for a list that was written as [].
func (w *inPlace) filled(list, added *yaml.Node) (change, bool) {
	key := w.keyOf(list)
	from, ok := w.start(list)
	end, closed := w.end(list)
	if key == nil || !ok || !closed || strings.TrimSpace(w.text(key.Line)) != key.Value+": []" {
		return change{}, false
	}
	text, ok := w.written(added, key.Column+2, w.breakOf(key.Line))
	return change{from: from - len(" "), to: end, text: w.breakOf(key.Line) + text}, ok
}

// behind adds what is in added within the brackets of m, behind the value
// before or, if that is nil, as the first.
func (w *inPlace) behind(m, before, added *yaml.Node) (change, bool) {
	added.Style = yaml.FlowStyle
	text, ok := w.written(added, 1, "\n")
	if !ok || strings.Contains(text, "\n") {
		return change{}, false
	}
	text = text[1 : len(text)-1]
	if before == nil {
		at, ok := w.start(m)
		return change{from: at + 1, to: at + 1, text: text}, ok && len(w.spots[m].content) == 0
	}
	at, ok := w.end(before)
	return change{from: at, to: at, text: ", " + text}, ok
}

// below adds what is in added, in that column, on lines below the value before.
func (w *inPlace) below(before *yaml.Node, column int, added *yaml.Node) (change, bool) {
	line := w.lastLine(before, column)
	end := w.breakOf(line)
	text, ok := w.written(added, column, end)
	at := w.lines.Start(line + 1)
	if at == w.lines.End(line) { // the file ends here
		return change{at, at, end + text, column}, ok
	}
	return change{at, at, text + end, column}, ok
}

// itemRemoved takes an item of a list without brackets away, with the comment
// right above it.
func (w *inPlace) itemRemoved(list, item *yaml.Node) (change, bool) {
	if !w.has(item) || w.spots[list].style&yaml.FlowStyle != 0 {
		return change{}, false
	}
	first := item.Line
	for strings.HasPrefix(strings.TrimLeft(w.text(first-1), " "), "#") {
		first--
	}
	return change{from: w.lines.Start(first), to: w.lines.Start(w.lastLine(item, list.Column) + 1)}, true
}

// written returns a tree as text in that column, each line but the last with
// that break.
func (w *inPlace) written(n *yaml.Node, column int, end string) (string, bool) {
	var b bytes.Buffer
	e := yaml.NewEncoder(&b)
	e.SetIndent(2)
	if e.Encode(n) != nil || e.Close() != nil {
		return "", false
	}
	all := strings.Split(strings.TrimSuffix(b.String(), "\n"), "\n")
	for i, l := range all {
		if l != "" && n.Style&yaml.FlowStyle == 0 {
			all[i] = strings.Repeat(" ", column-1) + l
		}
	}
	return strings.Join(all, end), true
}
