package batch

import (
	"errors"
	"io/fs"

	"ripplewright/internal/form/flaw"
	"ripplewright/internal/form/schemaline"
	"ripplewright/internal/work/atomicfile"
)

// Load reads the batches at path; a file that is not there holds none. What is wrong
// inside is a *FileError.
func Load(path string) (Notebook, error) {
	data, err := read(path)
	if err != nil {
		return Notebook{}, err
	}
	return Decode(path, data)
}

func read(path string) ([]byte, error) {
	data, _, err := atomicfile.Read(path, MaxSize)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, flaw.New("batches: %v", err)
	}
	return data, nil
}

// Append adds an entry at the end of the file at path, which it makes if it is not
// there, with the line that names its schema, and brings it to the disk. Not a byte of what is there changes; what a lost
// program left of an entry is closed as cut off. A file that cannot be read, or would
// not be with b in it, is left alone.
func Append(path string, b Batch, schemas schemaline.Schemas) error {
	was, err := read(path)
	if err != nil {
		return err
	}
	text, err := Encode(b)
	if err != nil {
		return err
	}
	n, err := Decode(path, was)
	if err != nil {
		return err
	}
	more := text
	switch entries, _ := split(was); {
	case len(was) == 0:
		more = append(schemas.Head([]byte(heading), schemaline.Batches), text...)
	case len(entries) > 0 && !entries[len(entries)-1].ended:
		more = append([]byte("\n"+cutOff+"\n"+end+"\n"), text...)
	case was[len(was)-1] != '\n':
		more = append([]byte("\n"), text...)
	}
	now, err := Decode(path, append(append([]byte{}, was...), more...))
	if err != nil {
		return err
	}
	if len(now.CutOff) != len(n.CutOff) {
		return &FileError{Name: path, Err: flaw.New("the entry would not be read back; please report this")}
	}
	return atomicfile.Append(path, int64(len(was)), more)
}

// ReadEntry reads the file of one entry that somebody typed, for DecodeEntry.
func ReadEntry(path string) ([]byte, error) {
	data, _, err := atomicfile.Read(path, MaxEntry)
	if err != nil {
		return nil, flaw.New("entry: %v", err)
	}
	return data, nil
}
