package yamltext

import (
	"bytes"
	"strings"

	"gopkg.in/yaml.v3"
)

// hideMarks puts another sign of the same length, which the text does not have,
// for the byte order marks within it, and returns that sign. Where its buffer
// happens to begin with a mark, the parser drops the first sign of every line
// in it; what a text says would depend on its length.
func hideMarks(text []byte) (hidden []byte, sign string) {
	body := bytes.TrimPrefix(text, mark)
	if !bytes.Contains(body, mark) {
		return text, ""
	}
	r := '\ue000' // the private signs of Unicode
	for ; r < '\uf8ff' && bytes.ContainsRune(body, r); r++ {
	}
	hidden = append(hidden, text[:len(text)-len(body)]...)
	return append(hidden, bytes.ReplaceAll(body, mark, []byte(string(r)))...), string(r)
}

// showMarks undoes hideMarks in a tree.
func showMarks(n *yaml.Node, sign string) {
	if sign == "" {
		return
	}
	for _, s := range [...]*string{&n.Value, &n.Tag, &n.Anchor, &n.HeadComment, &n.LineComment, &n.FootComment} {
		*s = strings.ReplaceAll(*s, sign, string(mark))
	}
	for _, c := range n.Content {
		showMarks(c, sign)
	}
}

// Document returns the first document of a text, as Parse reads it.
func Document(text []byte) (*yaml.Node, error) {
	hidden, sign := hideMarks(text)
	var doc yaml.Node
	if err := decode(yaml.NewDecoder(bytes.NewReader(hidden)), &doc); err != nil {
		return nil, err
	}
	showMarks(&doc, sign)
	return &doc, nil
}
