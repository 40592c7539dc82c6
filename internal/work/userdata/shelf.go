package userdata

import (
	"bytes"
	"slices"

	"gopkg.in/yaml.v3"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/form/echo"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/form/schemaline"
)

// Shelf is the built-in library with the maker's own ingredients on top, which
// live in a file. It belongs to one goroutine.
//
// A file that cannot be read, having been broken by hand, is left alone: the
// shelf then has no own ingredients, says why, and refuses to write.
type Shelf struct {
	path string // "" where there is no configuration folder
	base *ingredient.Library
	own  []*ingredient.Ingredient
	err  error

	watch   func(before, after *ingredient.Ingredient)
	schemas schemaline.Schemas
}

// NameSchemas has the file name its JSON Schema for editors of text when it is next written.
func (s *Shelf) NameSchemas(schemas schemaline.Schemas) { s.schemas = schemas }

// Watch has f told of every change by Put and Remove, after it was made: nil stands for
// an ingredient that was not there, or is there no more.
func (s *Shelf) Watch(f func(before, after *ingredient.Ingredient)) { s.watch = f }

// Turn makes the change from before to after, as to take another back, and tells nobody
// who watches.
func (s *Shelf) Turn(before, after *ingredient.Ingredient) error {
	switch {
	case before != nil:
		return s.change(before.ID, after)
	case after != nil:
		return s.change(after.ID, after)
	}
	return nil
}

// NewShelf returns the shelf of base and the own ingredients in the file at
// path, and reads them. Err tells of a file that cannot be read.
func NewShelf(base *ingredient.Library, path string) *Shelf {
	s := &Shelf{base: base, path: path}
	s.Read()
	return s
}

// Path is where the file is, or would be.
func (s *Shelf) Path() string { return s.path }

// Err says why the own ingredients are left out, naming file, line and field;
// nil if they are not.
func (s *Shelf) Err() error { return s.err }

// Base returns the built-in library.
func (s *Shelf) Base() *ingredient.Library { return s.base }

// Own returns the maker's own ingredients. The caller must not change it.
func (s *Shelf) Own() []*ingredient.Ingredient { return s.own }

// Library returns the built-in library with the own ingredients, which win.
func (s *Shelf) Library() *ingredient.Library { return s.base.With(s.own) }

// Read reads the file again, as after a change by hand.
func (s *Shelf) Read() {
	if s.path == "" {
		return
	}
	s.own, s.err = LoadIngredients(s.path)
}

// Put keeps in, in place of the own ingredient with the id old; "" adds it.
// The id must not be another's, own or built in. After an error, which names
// the field, file and shelf are as they were.
func (s *Shelf) Put(in *ingredient.Ingredient, old string) error {
	if in.ID != old {
		if _, taken := s.Library().Find(in.ID); taken {
			return &ingredient.FieldError{ID: in.ID, Field: "id", Err: flaw.New("is already another ingredient's")}
		}
	}
	if old == "" {
		old = in.ID
	}
	return s.watched(old, in)
}

// Remove takes the own ingredient of that id off the shelf and out of the
// file.
func (s *Shelf) Remove(id string) error { return s.watched(id, nil) }

func (s *Shelf) watched(id string, in *ingredient.Ingredient) error {
	var before *ingredient.Ingredient
	if i := slices.IndexFunc(s.own, func(o *ingredient.Ingredient) bool { return o.ID == id }); i >= 0 {
		before = s.own[i]
	}
	if err := s.change(id, in); err != nil {
		return err
	}
	if s.watch != nil {
		s.watch(before, in)
	}
	return nil
}

// change writes the file anew with in for id, nil for nothing. It changes what
// the file holds now, which another hand may have written since.
func (s *Shelf) change(id string, in *ingredient.Ingredient) error {
	if s.path == "" {
		return flaw.New("own ingredients: this system names no folder for settings")
	}
	old, err := Read(s.path, whatIngredients)
	if err != nil {
		return err
	}
	data, list, err := edit(old, id, in)
	if err != nil {
		return flaw.New("own ingredients in %s: %v", s.path, err)
	}
	if err := Write(s.path, whatIngredients, s.schemas.Head(data, schemaline.Ingredients)); err != nil {
		return err
	}
	s.own, s.err = list, nil
	return nil
}

// edit returns the text of a file with in for the ingredient of that id, and
// what it then holds. The rest of the text, with its comments, stays.
func edit(data []byte, id string, in *ingredient.Ingredient) ([]byte, []*ingredient.Ingredient, error) {
	list, err := Decode(data)
	if err != nil {
		return nil, nil, err
	}
	at := slices.IndexFunc(list, func(o *ingredient.Ingredient) bool { return o.ID == id })
	var node *yaml.Node
	switch {
	case in == nil && at < 0:
		return nil, nil, flaw.New("there is no ingredient %s", echo.Quoted(id))
	case in == nil:
		list = slices.Delete(list, at, at+1)
	default:
		if node, err = ingredient.ToYAML(in); err != nil {
			return nil, nil, err
		}
		if at < 0 {
			list = append(list, in)
		} else {
			list[at] = in
		}
	}
	text, err := Splice(data, keyIngredients, at, node)
	if err == nil {
		var got []*ingredient.Ingredient
		if got, err = Decode(text); err == nil && slices.EqualFunc(got, list, func(a, b *ingredient.Ingredient) bool {
			return a.ID == b.ID && (b == in || a.Equal(b))
		}) {
			return text, got, nil
		}
	}
	// An empty file, or a form that no patch fits: the whole is written anew.
	if text, err = Encode(list); err != nil {
		return nil, nil, err
	}
	got, err := Decode(text)
	return text, got, err
}

// Splice puts node in place of item at of the list under key in data, a file of the
// maker's own, at its end for −1; a nil node takes the item out. Comments stay.
func Splice(data []byte, key string, at int, node *yaml.Node) ([]byte, error) {
	var doc yaml.Node
	if err := yaml.Unmarshal(data, &doc); err != nil {
		return nil, err
	}
	seq := under(&doc, key)
	if seq == nil || seq.Kind != yaml.SequenceNode {
		return nil, flaw.New("there is no list of %s", key)
	}
	switch {
	case at < 0:
		if len(seq.Content) == 0 {
			seq.Style &^= yaml.FlowStyle
		}
		seq.Content = append(seq.Content, node)
	case node == nil:
		seq.Content = slices.Delete(seq.Content, at, at+1)
	default:
		old := seq.Content[at]
		node.HeadComment, node.LineComment, node.FootComment = old.HeadComment, old.LineComment, old.FootComment
		seq.Content[at] = node
	}
	return encode(&doc)
}

// under returns what stands under a key of the document, nil if nothing does.
func under(doc *yaml.Node, key string) *yaml.Node {
	if len(doc.Content) != 1 || doc.Content[0].Kind != yaml.MappingNode {
		return nil
	}
	pairs := doc.Content[0].Content
	for i := 0; i+1 < len(pairs); i += 2 {
		if pairs[i].Value == key {
			return pairs[i+1]
		}
	}
	return nil
}

func encode(v any) ([]byte, error) {
	var b bytes.Buffer
	e := yaml.NewEncoder(&b)
	e.SetIndent(2)
	err := e.Encode(v)
	return b.Bytes(), err
}
