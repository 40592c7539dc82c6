package yamltext

import (
	"slices"
	"strconv"

	"gopkg.in/yaml.v3"

	"ripplewright/internal/form/echo"
	"ripplewright/internal/form/flaw"
)

// MaxListed is how many entries a file of the maker's own may list.
const MaxListed = 1000

// Word is a key of a file beside its list, with one value.
type Word struct {
	Key   string
	Value *string            // set where the file has it
	Wrong func(string) error // says what is wrong with it; nil: nothing can be
}

// Listed reads the form that a maker's own files have, a version, at most the
// one given, some words and a list under key, and returns the entries of the
// list. An empty text has none. The error is a *Fault.
func Listed(data []byte, version int, key string, words ...Word) ([]*yaml.Node, error) {
	known := "version, "
	for _, w := range words {
		known += w.Key + ", "
	}
	n, err := Parse(data)
	if n == nil || err != nil {
		return nil, err
	}
	if n.Kind != yaml.MappingNode {
		return nil, &Fault{Line: n.Line, Err: flaw.New("the file begins with version: %d and a list under %s:", version, key)}
	}
	var list []*yaml.Node
	seen := map[string]bool{}
	for i := 0; i+1 < len(n.Content); i += 2 {
		k, v := n.Content[i], n.Content[i+1]
		fail := func(format flaw.Message, args ...any) ([]*yaml.Node, error) {
			return nil, &Fault{Line: k.Line, Err: flaw.At(echo.Plain(k.Value), flaw.New(format, args...))}
		}
		switch {
		case seen[k.Value]:
			return fail("is given twice")
		case k.Value == "version":
			has, err := strconv.Atoi(v.Value)
			if v.Kind != yaml.ScalarNode || err != nil {
				return fail("%s is not a whole number", echo.Quoted(v.Value))
			}
			if has < 0 || has > version {
				return nil, &Fault{Line: k.Line, Newer: has > version, Err: flaw.New("version: the file has version %d, this program knows %d", has, version)}
			}
		case k.Value != key:
			i := slices.IndexFunc(words, func(w Word) bool { return w.Key == k.Value })
			if i < 0 {
				return fail("unknown key; known here are %s", known+key)
			}
			if wrong := words[i].read(v); wrong != nil {
				return fail("%v", wrong)
			}
		case v.Kind == yaml.ScalarNode && v.ShortTag() == "!!null":
		case v.Kind != yaml.SequenceNode:
			return fail("must be a list")
		case len(v.Content) > MaxListed:
			return fail("%d entries are more than the %d that a file may have", len(v.Content), MaxListed)
		default:
			list = v.Content
		}
		seen[k.Value] = true
	}
	return list, nil
}

// read sets the word to what v says, or says what is wrong with it.
func (w Word) read(v *yaml.Node) error {
	if v.Kind != yaml.ScalarNode {
		return flaw.New("must be a single value")
	}
	if w.Wrong != nil {
		if err := w.Wrong(v.Value); err != nil {
			return err
		}
	}
	*w.Value = v.Value
	return nil
}
