// Package schemafile keeps the JSON Schemas of a maker's files where editors of text on
// this machine find them. A file names that of its kind in its first line, and an editor
// that knows the convention checks and completes the file. On a machine without it the
// line is a comment that leads nowhere.
package schemafile

import (
	"bytes"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"sync"

	"ripplewright/internal/answer/balance"
	"ripplewright/internal/answer/cold"
	"ripplewright/internal/form/schemaline"
	"ripplewright/internal/work/atomicfile"
	"ripplewright/internal/work/batch"
	"ripplewright/internal/work/designfile"
	"ripplewright/internal/work/userdata"
)

// Schema is the schema of one kind of file.
type Schema struct {
	Kind schemaline.Kind
	Text func() []byte // draft 2020-12, made from the table that reads the kind
}

// All returns the schema of each kind. The caller must not change it.
func All() []Schema { return all }

var all = []Schema{
	{schemaline.Design, designfile.Schema},
	{schemaline.Batches, batch.Schema},
	{schemaline.Kitchens, cold.ProfilesSchema},
	{schemaline.Prices, userdata.PricesSchema},
	{schemaline.Ingredients, userdata.IngredientsSchema},
	{schemaline.Wishes, balance.WishSchema},
}

// Here returns where the schemas are on this machine. They are looked for when a file
// first needs one.
func Here() schemaline.Schemas {
	known := map[schemaline.Kind]func() string{}
	for _, s := range all {
		known[s.Kind] = sync.OnceValue(func() string { return s.reference(program()) })
	}
	return func(k schemaline.Kind) string {
		if at, ok := known[k]; ok {
			return at()
		}
		return ""
	}
}

// program is the path of this program, "" where the system does not tell.
func program() string {
	path, err := os.Executable()
	if err != nil {
		return ""
	}
	if real, err := filepath.EvalSymlinks(path); err == nil {
		path = real
	}
	return path
}

// reference is the address by which a file names its schema. It is that of the
// package's, beside the program, which is the same on every machine that has the package
// and tells nothing of the user; else that of a copy in the user's data folder, brought
// up to date, for a program that was not installed. "" where there can be none.
func (s Schema) reference(program string) string {
	name := filepath.Join("schema", string(s.Kind)+".schema.json")
	if installed := filepath.Join(filepath.Dir(program), "..", "share", "ripplewright", name); program != "" {
		if info, err := os.Stat(installed); err == nil && info.Mode().IsRegular() {
			return address(installed)
		}
	}
	path, err := userdata.DataPath(name, "the schemas of files")
	if err != nil {
		return ""
	}
	schema := s.Text()
	if now, _, err := atomicfile.Read(path, int64(len(schema))+1); err == nil && bytes.Equal(now, schema) {
		return address(path)
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return ""
	}
	if err := atomicfile.Write(path, schema); err != nil {
		return ""
	}
	return address(path)
}

// address is the path as a URL (RFC 8089), in which no sign ends the line's word.
func address(path string) string {
	if abs, err := filepath.Abs(path); err == nil {
		path = abs
	}
	path = filepath.ToSlash(path)
	if !strings.HasPrefix(path, "/") { // a drive's letter
		path = "/" + path
	}
	return (&url.URL{Scheme: "file", Path: path}).String()
}
