// Package schemafile keeps the JSON Schema of the design file where editors of text on
// this machine find it. A new design names it in its first line, by the open convention
// of the YAML language server, and an editor that knows that checks and completes the
// file. On a machine without it the line is a comment that leads nowhere.
package schemafile

import (
	"bytes"
	"net/url"
	"os"
	"path/filepath"
	"strings"

	"ripplewright/internal/work/atomicfile"
	"ripplewright/internal/work/designfile"
	"ripplewright/internal/work/userdata"
)

// name is where the schema lies in a folder of shared data, and in the user's.
const name = "schema/design.schema.json"

// Reference is the address by which a new design names its schema. It is that of the
// package's, beside the program, which is the same on every machine that has the package
// and tells nothing of the user; else that of a copy in the user's data folder, brought
// up to date, for a program that was not installed. "" where there can be none.
func Reference() string {
	if program, err := os.Executable(); err == nil {
		if real, err := filepath.EvalSymlinks(program); err == nil {
			program = real
		}
		return reference(program)
	}
	return reference("")
}

func reference(program string) string {
	if installed := filepath.Join(filepath.Dir(program), "..", "share", "ripplewright", filepath.FromSlash(name)); program != "" {
		if info, err := os.Stat(installed); err == nil && info.Mode().IsRegular() {
			return address(installed)
		}
	}
	path, err := userdata.DataPath(filepath.FromSlash(name), "the schema of designs")
	if err != nil {
		return ""
	}
	schema := designfile.Schema()
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
