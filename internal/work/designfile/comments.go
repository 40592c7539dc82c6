package designfile

import (
	"strings"

	"gopkg.in/yaml.v3"

	"ripplewright/internal/form/yamltext"
	"ripplewright/internal/work/design"
)

// commentsLost returns how many words of the comments in f are not in next,
// 0 if lines went, with which theirs go.
func (f *File) commentsLost(next *File) int {
	for _, p := range design.Parts {
		if len(next.Design.Lines(p)) < len(f.Design.Lines(p)) {
			return 0
		}
	}
	if len(next.Design.Own) < len(f.Design.Own) {
		return 0
	}
	left := map[string]int{}
	for _, w := range commentWords(next.raw) {
		left[w]++
	}
	lost := 0
	for _, w := range commentWords(f.raw) {
		if left[w]--; left[w] < 0 {
			lost++
		}
	}
	return lost
}

// commentWords returns the words of the comments of a text that can be read.
func commentWords(text []byte) []string {
	doc, err := yamltext.Document(yamltext.Unix(text))
	if err != nil {
		return nil
	}
	var words []string
	each(doc, func(n *yaml.Node) {
		words = append(words, strings.Fields(n.HeadComment+" "+n.LineComment+" "+n.FootComment)...)
	})
	return words
}
