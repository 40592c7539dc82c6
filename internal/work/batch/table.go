package batch

import (
	"encoding/csv"
	"io"
	"strings"
	"unicode"
)

// WriteCSV writes the batches as a table for a spreadsheet: a row each, a column for
// every setting of the file, its path as the head; what is not known is empty. Words
// that a spreadsheet would compute are marked as words by an apostrophe.
func WriteCSV(w io.Writer, n *Notebook) error {
	out := csv.NewWriter(w)
	var columns []Entry
	var heads []string
	for _, f := range entries {
		if f.Path != "off" {
			columns, heads = append(columns, f), append(heads, f.Path)
		}
	}
	if err := out.Write(heads); err != nil {
		return err
	}
	for i := range n.Batches {
		row := make([]string, len(columns))
		for k, f := range columns {
			row[k] = f.Text(&n.Batches[i])
			if f.Unit == "" {
				row[k] = onlyWords(row[k])
			}
		}
		if err := out.Write(row); err != nil {
			return err
		}
	}
	out.Flush()
	return out.Error()
}

// onlyWords is a text in one line, with nothing in it that steers what shows it.
func onlyWords(s string) string {
	s = strings.Map(func(r rune) rune {
		switch {
		case unicode.IsSpace(r):
			return ' '
		case !unicode.IsGraphic(r) || unicode.Is(unicode.Cf, r):
			return -1
		}
		return r
	}, s)
	if s != "" && strings.ContainsRune("=+-@", rune(s[0])) {
		return "'" + s
	}
	return s
}
