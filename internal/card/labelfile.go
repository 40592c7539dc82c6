package card

import (
	"fmt"
	"path/filepath"
	"strings"

	"ripplewright/internal/atomicfile"
	"ripplewright/internal/label"
)

// labelDPI is that of a label's picture: its hairlines are then a pixel.
const labelDPI = 300

// WriteLabel puts a label into the file at path: a PDF or PNG at true size, or
// plain text, by the extension .pdf, .png or .txt. The file is replaced as a
// whole or not at all. Errors are those of Write.
func WriteLabel(path string, l *label.Label) error {
	return writeLabel(path, l, panelOf(l, labelWidth(l)))
}

// WriteTabularLabel is WriteLabel with the US panel laid out broad and low, for
// a package without three inches of height (21 CFR 101.9(d)(11)(iii)). It is
// for a single column; any other panel is drawn as WriteLabel does.
func WriteTabularLabel(path string, l *label.Label) error {
	if l.Region != label.US || l.Columns == "dual" {
		return WriteLabel(path, l)
	}
	return writeLabel(path, l, withNotes(usTabularPanel(l), l))
}

func writeLabel(path string, l *label.Label, panel *sheet) error {
	var data []byte
	var err error
	switch ext := strings.ToLower(filepath.Ext(path)); ext {
	case ".txt":
		data = labelText(l)
	case ".pdf", ".png":
		data, err = encoded(ext, []*sheet{labelSheet(l, panel)}, l.ProposedName, labelDPI)
	default:
		err = fmt.Errorf("write label %s: %w: .pdf, .png and .txt do", path, ErrExtension)
	}
	if err != nil {
		return err
	}
	return atomicfile.Write(path, data)
}

// labelWidth is the width of a label's panel, mm.
func labelWidth(l *label.Label) float64 {
	switch {
	case l.Region == label.EU:
		return 80
	case l.Columns == "dual":
		return usDualWidth
	}
	return usWidth
}

// labelSheet sets the whole label on a sheet cut to its size.
func labelSheet(l *label.Label, panel *sheet) *sheet {
	w := panel.w
	notes := append([]string{l.ColumnsWhy, "Energy: " + l.EnergyMethod}, l.Notes...)
	var why []*sheet
	for _, n := range notes {
		if n = plain(n); n != "" {
			why = append(why, text(w, 7.6, style{sans, 6, muted}, sentence(n)))
		}
	}
	all := stack(3.4,
		text(w, 14, style{sansBold, 12, black}, plain(l.ProposedName)),
		panel,
		statementOf(l, w, style{sans, 8, black}),
		stack(1.6, why...))
	s := &sheet{w: w + 16, h: all.h + 16}
	s.place(all, 8, 8)
	return s
}

// sentence makes s begin with a capital and end with a full stop.
func sentence(s string) string {
	s = strings.ToUpper(s[:1]) + s[1:]
	if strings.HasSuffix(s, ".") {
		return s
	}
	return s + "."
}

// labelText writes the label in plain text.
func labelText(l *label.Label) []byte {
	var b strings.Builder
	put := func(s string) {
		if s != "" {
			b.WriteString(s + "\n")
		}
	}
	put(l.ProposedName)
	b.WriteByte('\n')
	if l.Region == label.EU {
		put("Nutrition declaration")
		put(l.ServingsText)
	} else {
		put("Nutrition Facts")
		put(l.ServingsText)
		put("Serving size " + l.ServingMeasure)
	}
	b.WriteByte('\n')
	second := len(l.Second) == len(l.Lines)
	first := "per serving"
	if l.Region == label.EU {
		first = "per 100 g"
	}
	fmt.Fprintf(&b, "%-26s%14s%8s", "", first, shareHead(l, l.Region != label.EU))
	if second {
		fmt.Fprintf(&b, "%16s%8s", "per "+l.SecondColumn, shareHead(l, true))
	}
	b.WriteByte('\n')
	for i, n := range l.Lines {
		dv := n.DVText
		if l.Region == label.EU {
			dv = ""
		}
		fmt.Fprintf(&b, "%-26s%s%8s", strings.Repeat("  ", n.Indent)+n.Name, right(amountText(n), 14), dv)
		if second {
			fmt.Fprintf(&b, "%s%8s", right(amountText(l.Second[i]), 16), l.Second[i].DVText)
		}
		b.WriteByte('\n')
	}
	put(l.NotSignificant)
	b.WriteByte('\n')
	put(l.Footnote)
	for _, w := range l.Warnings {
		put(incompleteMark + " " + w)
	}
	b.WriteByte('\n')
	put(l.IngredientsText)
	put(l.Contains)
	b.WriteByte('\n')
	put(sentence(plain("Energy: " + l.EnergyMethod)))
	if l.ColumnsWhy != "" {
		put(sentence(plain(l.ColumnsWhy)))
	}
	for _, n := range l.Notes {
		put(n)
	}
	return []byte(b.String())
}

func shareHead(l *label.Label, show bool) string {
	switch {
	case !show:
		return ""
	case l.Region == label.EU:
		return "RI"
	}
	return "% DV"
}

func amountText(n label.Line) string {
	n.Text = strings.TrimSuffix(strings.TrimPrefix(n.Text, "Includes "), " Added Sugars")
	return amountOf(n)
}

// right pads s on the left to n signs.
func right(s string, n int) string {
	return strings.Repeat(" ", max(0, n-len([]rune(s)))) + s
}
