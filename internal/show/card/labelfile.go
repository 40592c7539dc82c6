package card

import (
	"context"
	"fmt"
	"image"
	"path/filepath"
	"slices"
	"strings"

	"ripplewright/internal/form/flaw"
	"ripplewright/internal/show/draw/typeset"

	"ripplewright/internal/food/label"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/draw/raster"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/atomicfile"
)

// labelDPI is that of a label's picture, whose hairlines are then a pixel, unless
// it is so long that the picture would be too large.
const labelDPI = 300

// Form is how a panel is laid out.
type Form string

// The forms.
const (
	Vertical Form = "vertical" // one line under the other; the EU's table too
	Tabular  Form = "tabular"  // broad and low, for a package without three inches of height, 21 CFR 101.9(d)(11)(iii)
	Dual     Form = "dual"     // vertical with a second column, 21 CFR 101.9(e)(6)
)

// Forms returns the forms that the rules let the panel of l take, the usual one
// first. To be drawn with a second column that is the maker's choice, a label
// must have been computed with it: label.Options.SecondColumn.
func Forms(l *label.Label) []Form {
	switch {
	case l.Region != label.US:
		return []Form{Vertical}
	case l.Columns == "dual":
		return []Form{Dual}
	case l.SecondAllowed:
		return []Form{Vertical, Tabular, Dual}
	}
	return []Form{Vertical, Tabular}
}

// ErrForm says that the rules do not let a label take the form asked for.
var ErrForm = flaw.New("the panel may not take this form")

// WriteLabel puts a label into the file at path: a PDF, PNG or SVG at true size, or
// plain text, by the extension .pdf, .png, .svg or .txt. form is one of Forms, "" for
// the usual one. The file is replaced as a whole or not at all. Errors: ErrForm,
// and those of Write.
func WriteLabel(path string, l *label.Label, form Form) error {
	panel, err := formed(l, form)
	if err != nil {
		return flaw.New("write label %s: %v", path, err)
	}
	var data []byte
	switch ext := strings.ToLower(filepath.Ext(path)); ext {
	case ".txt":
		data = labelText(l)
	case ".pdf", ".png", ".svg":
		pages := []*draw.List{labelSheet(l, withNotes(panel, l))}
		data, err = encoded(ext, pages, l.ProposedName, min(labelDPI, finest(pages)))
	default:
		err = flaw.New("write label %s: %v: .pdf, .png, .svg and .txt do", path, ErrExtension)
	}
	if err != nil {
		return err
	}
	return atomicfile.Write(path, data)
}

// LabelPicture is what WriteLabel draws, with its sizes in mm.
type LabelPicture struct {
	image.Image
	WidthMM, HeightMM           float64 // of the file
	PanelWidthMM, PanelHeightMM float64 // of the panel's box alone
}

// RenderLabel returns the picture of a label at dpi dots per inch, 30 to 600.
// Errors are those of WriteLabel.
func RenderLabel(l *label.Label, form Form, dpi float64) (LabelPicture, error) {
	if err := checkDPI(dpi); err != nil {
		return LabelPicture{}, err
	}
	panel, err := formed(l, form)
	if err != nil {
		return LabelPicture{}, err
	}
	s := labelSheet(l, withNotes(panel, l))
	img, _, err := raster.Pages(context.Background(), []*draw.List{s}, min(dpi, finest([]*draw.List{s}))/inch)
	return LabelPicture{img, s.W, s.H, panel.W, panel.H}, err
}

// formed draws a panel in a form.
func formed(l *label.Label, form Form) (*draw.List, error) {
	allowed := Forms(l)
	if form == "" {
		form = allowed[0]
	}
	if !slices.Contains(allowed, form) {
		return nil, flaw.New("%v: %s, where the rules leave %s (%s)", ErrForm, form, formWords(allowed), l.ColumnsWhy)
	}
	switch {
	case form == Tabular:
		return usTabularPanel(l), nil
	case form == Dual && l.Columns != "dual":
		return nil, flaw.New("%v: %s, of a label without a second column", ErrForm, form)
	}
	return panelOf(l, labelWidth(l)), nil
}

func formWords(forms []Form) string {
	words := make([]string, len(forms))
	for i, f := range forms {
		words[i] = string(f)
	}
	return strings.Join(words, " or ")
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
func labelSheet(l *label.Label, panel *draw.List) *draw.List {
	w := panel.W
	notes := append([]string{say.Said(l.ColumnsWhy), say.EnergyBy(l.EnergyMethod)}, say.SaidAll(l.Notes)...)
	var why []*draw.List
	for _, n := range notes {
		if n = typeset.Plain(n); n != "" {
			why = append(why, typeset.Text(w, 7.6, typeset.Type(draw.Sans, 6, muted), say.Sentence(n)))
		}
	}
	all := typeset.Stack(3.4,
		typeset.Text(w, 14, typeset.Type(draw.SansBold, 12, black), typeset.Plain(l.ProposedName)),
		panel,
		statementOf(l, w, typeset.Type(draw.Sans, 8, black)),
		typeset.Stack(1.6, why...))
	s := &draw.List{W: w + 16, H: all.H + 16}
	s.Place(all, 8, 8, 1)
	return s
}

// labelText writes the label in plain text.
func labelText(l *label.Label) []byte {
	var b strings.Builder
	put := func(s string) {
		if s != "" {
			b.WriteString(say.HarmlessLine(s) + "\n")
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
		put(l.ServingSize())
	}
	b.WriteByte('\n')
	columns := l.PanelColumns()
	fmt.Fprintf(&b, "%-26s", "")
	for _, c := range columns {
		fmt.Fprintf(&b, "%16s%8s", c.Per, c.Share)
	}
	b.WriteByte('\n')
	for i, n := range l.Lines {
		fmt.Fprintf(&b, "%-26s", strings.Repeat("  ", n.Indent)+n.Name)
		for _, c := range columns {
			fmt.Fprintf(&b, "%s%8s", right(c.Lines[i].Marked(c.Lines[i].AmountText()), 16), c.ShareText(i))
		}
		b.WriteByte('\n')
	}
	put(l.NotSignificant)
	b.WriteByte('\n')
	put(l.Footnote)
	for i, w := range say.SaidAll(l.Warnings) {
		if i < l.Gaps {
			w = label.IncompleteMark + " " + w
		}
		put(w)
	}
	b.WriteByte('\n')
	put(l.IngredientsText)
	put(l.Contains)
	b.WriteByte('\n')
	put(typeset.Plain(say.EnergyBy(l.EnergyMethod)))
	if l.ColumnsWhy != nil {
		put(say.Sentence(typeset.Plain(say.Said(l.ColumnsWhy))))
	}
	for _, n := range say.SaidAll(l.Notes) {
		put(n)
	}
	return []byte(b.String())
}

// right pads s on the left to n signs.
func right(s string, n int) string {
	return strings.Repeat(" ", max(0, n-len([]rune(s)))) + s
}
