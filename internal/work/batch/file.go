package batch

import (
	"bytes"
	"errors"
	"path/filepath"
	"strings"

	"gopkg.in/yaml.v3"

	"ripplewright/internal/form/echo"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/form/setting"
	"ripplewright/internal/form/yamltext"
)

// The bounds of a file. A batch with its forecast has some 1500 bytes.
const (
	MaxSize    = 2 << 20 // bytes
	MaxEntry   = 32 << 10
	MaxEntries = 2000
)

// The lines between which an entry stands: YAML's own marks of a document's begin and
// end. An entry whose end is not there was cut off as it was written. What is added
// after such a one closes it with cutOff before its end, so that nobody ever takes it
// for whole.
const (
	begin  = "---"
	end    = "..."
	cutOff = "# cut off"
)

const heading = "# Batches, in the order in which they were written down; an entry ends with three dots.\n"

// PathOf returns where the batches of the design file at path are kept: beside it.
func PathOf(path string) string {
	ext := filepath.Ext(path)
	return strings.TrimSuffix(path, ext) + ".batches.yaml"
}

// Notebook is what a file holds.
type Notebook struct {
	Batches []Batch // in the order of their first entries, later entries put in
	Off     []string
	CutOff  []int // lines at which entries begin that were cut off: kept, but not read
}

// Find returns the batch of that name.
func (n *Notebook) Find(id string) (Batch, bool) {
	for _, b := range n.Batches {
		if b.ID == id {
			return b, true
		}
	}
	return Batch{}, false
}

// FileError says what is wrong with a file of batches.
type FileError struct {
	Name string
	Line int    // from 1; 0: the file as a whole
	Path string // the key, "" for none
	Err  error
}

// Words are the place and what is wrong there.
func (e *FileError) Words() error {
	return flaw.InFile(e.Name, e.Line, flaw.At(echo.Plain(e.Path), e.Err))
}

func (e *FileError) Error() string { return e.Words().Error() }

func (e *FileError) Unwrap() error { return e.Err }

// Decode reads the text of a file of that name. The error is a *FileError.
func Decode(name string, data []byte) (Notebook, error) {
	if len(data) > MaxSize {
		return Notebook{}, &FileError{Name: name, Err: flaw.New("is longer than %d bytes; begin a new file of batches", MaxSize)}
	}
	var n Notebook
	at := map[string]int{}
	entries, stray := split(data)
	if stray > 0 {
		return n, &FileError{Name: name, Line: stray, Err: flaw.New("an entry begins with a line of three dashes")}
	}
	if len(entries) > MaxEntries {
		return n, &FileError{Name: name, Line: entries[MaxEntries].line, Err: flaw.New("the file has more than %d entries; begin a new one", MaxEntries)}
	}
	for i, e := range entries {
		if e.cut || !e.ended && i == len(entries)-1 {
			n.CutOff = append(n.CutOff, e.line)
			continue
		}
		if !e.ended {
			return Notebook{}, &FileError{Name: name, Line: e.line, Err: flaw.New("the entry does not end with a line of three dots")}
		}
		if err := n.add(name, e, at); err != nil {
			return Notebook{}, err
		}
	}
	return n, nil
}

// chunk is the text of one entry.
type chunk struct {
	line       int // of its three dashes
	text       []byte
	ended, cut bool
}

// split cuts a file into its entries. stray is the line of a text outside of any.
func split(data []byte) (entries []chunk, stray int) {
	open := false
	line := 0
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	for len(data) > 0 {
		line++
		text := data
		if i := bytes.IndexByte(data, '\n'); i >= 0 {
			text = data[:i+1]
		}
		data = data[len(text):]
		plain := string(bytes.TrimRight(text, " \t\r\n"))
		switch {
		case plain == begin, !open && plain != "" && strings.HasPrefix(begin, plain):
			entries, open = append(entries, chunk{line: line}), true
		case open && plain == end:
			entries[len(entries)-1].ended, open = true, false
		case open:
			e := &entries[len(entries)-1]
			e.text = append(e.text, text...)
			if plain != "" {
				e.cut = plain == cutOff
			}
		case plain != "" && plain[0] != '#':
			return entries, line
		}
	}
	return entries, 0
}

// add puts an entry into the notebook.
func (n *Notebook) add(name string, e chunk, at map[string]int) error {
	fail := func(line int, path string, err error) error {
		return &FileError{Name: name, Line: e.line + line, Path: path, Err: err}
	}
	if len(e.text) > MaxEntry {
		return fail(0, "", flaw.New("the entry is longer than %d bytes", MaxEntry))
	}
	node, err := yamltext.Parse(e.text)
	var fault *yamltext.Fault
	if errors.As(err, &fault) {
		return fail(fault.Line, "", fault.Err)
	}
	if err != nil || node == nil {
		return fail(0, "", flaw.New("the entry is empty"))
	}
	if bare := unmarked(node); bare != nil {
		return fail(bare.Line, "", flaw.New("names with & and * are not read here"))
	}
	var first Batch
	var tree *setting.TreeError
	if _, err := setting.Read(entries[:1], only(node, entries[0].Path), &first); errors.As(err, &tree) {
		return fail(tree.Line, tree.Path, tree.Err)
	}
	if first.ID == "" {
		return fail(node.Line, entries[0].Path, flaw.New("must be there: it says which batch this is"))
	}
	i, known := at[first.ID]
	var b Batch
	if known {
		b = n.Batches[i]
	}
	b.Off = nil
	lines, err := setting.Read(entries, node, &b)
	if errors.As(err, &tree) {
		return fail(tree.Line, tree.Path, tree.Err)
	}
	b.Words = strings.TrimSpace(b.Words)
	if path, wrong := b.Problem(); wrong != nil {
		return fail(max(lines[path], 1), path, wrong)
	}
	if b.Off != nil {
		n.Off = b.Off
		if len(b.Off) == 1 && b.Off[0] == Nothing {
			n.Off = nil
		}
	}
	switch {
	case known:
		n.Batches[i] = b
	case !b.empty():
		at[b.ID] = len(n.Batches)
		n.Batches = append(n.Batches, b)
	}
	return nil
}

// Nothing in Off turns everything on again.
const Nothing = "nothing"

// empty reports whether an entry is of no batch: it turns something off or on.
func (b Batch) empty() bool {
	b.ID, b.When, b.Version, b.Off = "", "", "", nil
	for _, f := range entries {
		if f.Text(&b) != "" {
			return false
		}
	}
	return true
}

// unmarked returns what n has of names and their uses, nil for nothing.
func unmarked(n *yaml.Node) *yaml.Node {
	if n.Anchor != "" || n.Kind == yaml.AliasNode {
		return n
	}
	for _, c := range n.Content {
		if bad := unmarked(c); bad != nil {
			return bad
		}
	}
	return nil
}

// only returns n with nothing but that key.
func only(n *yaml.Node, key string) *yaml.Node {
	out := &yaml.Node{Kind: n.Kind, Line: n.Line}
	if n.Kind == yaml.MappingNode {
		for i := 0; i+1 < len(n.Content); i += 2 {
			if n.Content[i].Value == key {
				out.Content = append(out.Content, n.Content[i], n.Content[i+1])
			}
		}
	}
	return out
}

// DecodeEntry reads the text of one entry, without dashes and dots, as a maker types
// it. Its batch need not have a name. The error is a *FileError.
func DecodeEntry(name string, data []byte) (Batch, error) {
	var b Batch
	if len(data) > MaxEntry {
		return b, &FileError{Name: name, Err: flaw.New("is longer than %d bytes", MaxEntry)}
	}
	node, err := yamltext.Parse(data)
	var fault *yamltext.Fault
	if errors.As(err, &fault) {
		return b, &FileError{Name: name, Line: fault.Line, Err: fault.Err}
	}
	if node == nil {
		return b, &FileError{Name: name, Err: flaw.New("is empty")}
	}
	if bare := unmarked(node); bare != nil {
		return b, &FileError{Name: name, Line: bare.Line, Err: flaw.New("names with & and * are not read here")}
	}
	lines, err := setting.Read(entries, node, &b)
	var tree *setting.TreeError
	if errors.As(err, &tree) {
		return b, &FileError{Name: name, Line: tree.Line, Path: tree.Path, Err: tree.Err}
	}
	b.Words = strings.TrimSpace(b.Words)
	named := b
	if named.ID == "" {
		named.ID = "?"
	}
	if path, wrong := named.Problem(); wrong != nil {
		return b, &FileError{Name: name, Line: lines[path], Path: path, Err: wrong}
	}
	return b, nil
}

// Encode returns the text of an entry as it is added to a file.
func Encode(b Batch) ([]byte, error) {
	b.Words = strings.TrimSpace(b.Words)
	if path, wrong := b.Problem(); wrong != nil {
		return nil, &FileError{Name: "batch", Path: path, Err: wrong}
	}
	var out bytes.Buffer
	out.WriteString(begin + "\n")
	e := yaml.NewEncoder(&out)
	e.SetIndent(2)
	if err := e.Encode(setting.Node(entries, &b)); err != nil {
		return nil, err
	}
	if err := e.Close(); err != nil {
		return nil, err
	}
	if out.Len() > MaxEntry {
		return nil, &FileError{Name: "batch", Err: flaw.New("is longer than %d bytes", MaxEntry)}
	}
	out.WriteString(end + "\n")
	return out.Bytes(), nil
}
