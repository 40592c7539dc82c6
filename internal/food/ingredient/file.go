package ingredient

import (
	"bufio"
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"io"
	"io/fs"
	"strconv"

	"ripplewright/internal/form/flaw"
	"ripplewright/internal/form/setting"
)

// Open reads the library that the program carries, library/ingredients.jsonl of
// the given files, which assets.Library is.
func Open(files fs.FS) (*Library, error) {
	f, err := files.Open("library/ingredients.jsonl")
	if err != nil {
		return nil, err
	}
	defer f.Close()
	lib, err := Read(f)
	if err != nil {
		return nil, flaw.New("library: %v", err)
	}
	return lib, nil
}

// Read reads a library: one JSON object a line, whose keys are the fields'
// names and whose values are numbers or text. A key left out is unknown. An
// error is a *FieldError naming line and field, or r's own.
func Read(r io.Reader) (*Library, error) {
	var all []*Ingredient
	seen := map[string]int{}
	lines := bufio.NewScanner(r)
	lines.Buffer(nil, 1<<20)
	n := 0
	for lines.Scan() {
		n++
		if len(bytes.TrimSpace(lines.Bytes())) == 0 {
			continue
		}
		in, err := readObject(lines.Bytes(), n)
		if err != nil {
			return nil, err
		}
		if first, twice := seen[in.ID]; twice {
			return nil, &FieldError{n, in.ID, "id", flaw.New("is already that of line %d", first)}
		}
		seen[in.ID] = n
		all = append(all, in)
	}
	if err := lines.Err(); err != nil {
		return nil, flaw.New("line %d: %v", n+1, err)
	}
	return NewLibrary(all), nil
}

// readObject reads line n of a library.
func readObject(line []byte, n int) (*Ingredient, error) {
	d := json.NewDecoder(bytes.NewReader(line))
	d.UseNumber()
	var given map[string]any
	if err := d.Decode(&given); err != nil {
		return nil, &FieldError{Line: n, Err: flaw.New("is not a JSON object: %v", err)}
	}
	if d.InputOffset() < int64(len(bytes.TrimRight(line, " \t\r"))) {
		return nil, &FieldError{Line: n, Err: flaw.New("goes on after the JSON object")}
	}
	in := new(Ingredient)
	for _, f := range fields { // in their order, so that an error knows the id
		value, ok := given[f.Path]
		if !ok {
			continue
		}
		delete(given, f.Path)
		text, ok := value.(string)
		switch v := value.(type) {
		case json.Number:
			text, ok = string(v), true
		case bool:
			text, ok = strconv.FormatBool(v), true
		}
		if !ok {
			return nil, &FieldError{n, in.ID, f.Path, flaw.New("%v is neither a number nor text", value)}
		}
		if err := set(in, f, text, n); err != nil {
			return nil, err
		}
	}
	for name := range given {
		return nil, &FieldError{n, in.ID, name, errUnknownField}
	}
	return in.finish(n, nil)
}

// Write writes the ingredients in the form that Read reads.
func Write(w io.Writer, list []*Ingredient) error {
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	for _, in := range list {
		b.Reset()
		for i, f := range fields {
			s := f.Text(in)
			if s == "" {
				continue
			}
			if i > 0 {
				b.WriteByte(',')
			} else {
				b.WriteByte('{')
			}
			fmt.Fprintf(&b, "%q:", f.Path)
			if kind := f.Kind(); kind == setting.KindNumber || kind == setting.KindFlag {
				b.WriteString(s)
				continue
			}
			if err := enc.Encode(s); err != nil {
				return err
			}
			b.Truncate(b.Len() - 1) // Encode ends the line
		}
		b.WriteString("}\n")
		if _, err := w.Write(b.Bytes()); err != nil {
			return err
		}
	}
	return nil
}

// ReadTable reads the source table: comment lines that start with #, a header
// of field names, then one ingredient a row. An empty cell is unknown. An
// error is a *FieldError naming line and field, or a *csv.ParseError.
func ReadTable(r io.Reader) ([]*Ingredient, error) {
	t := csv.NewReader(r)
	t.Comment = '#'
	header, err := t.Read()
	if err != nil {
		return nil, flaw.New("header of the ingredient table: %v", err)
	}
	columns := make([]setting.Field[Ingredient], len(header))
	for i, name := range header {
		var ok bool
		if columns[i], ok = setting.Find(fields, name); !ok {
			return nil, &FieldError{Line: 1, Field: strconv.Quote(name), Err: errUnknownField}
		}
	}
	var all []*Ingredient
	seen := map[string]bool{}
	for {
		row, err := t.Read()
		if err == io.EOF {
			return all, nil
		}
		if err != nil {
			return nil, err
		}
		in := new(Ingredient)
		line, _ := t.FieldPos(0)
		for i, s := range row {
			line, _ := t.FieldPos(i)
			if err := set(in, columns[i], s, line); err != nil {
				return nil, err
			}
		}
		if in, err = in.finish(line, nil); err != nil {
			return nil, err
		}
		if seen[in.ID] {
			return nil, &FieldError{line, in.ID, "id", flaw.New("is already taken")}
		}
		seen[in.ID] = true
		all = append(all, in)
	}
}
