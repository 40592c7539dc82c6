package card

import (
	"strings"

	"ripplewright/internal/food/label"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/draw/face"
	"ripplewright/internal/show/draw/typeset"
)

// The forms of a package with little to print on.
const (
	TabularDual  Form = "tabular_dual"  // Tabular with a second column, 21 CFR 101.9(e)(6)(ii), from memory
	SmallTabular Form = "small_tabular" // 21 CFR 101.9(j)(13)(ii)(A)(1)
	Linear       Form = "linear"        // a string of text, 21 CFR 101.9(j)(13)(ii)(A)(2)
	Simplified   Form = "simplified"    // fewer lines, where most are insignificant, 21 CFR 101.9(f)
)

// Limits of the small forms.
const (
	smallUpToIn2 = 40 // of surface to bear a label, 21 CFR 101.9(j)(13)(ii)(A)
)

// OnTub returns the forms that the US rules let a panel take on a tub, in the
// order in which they must be tried: the vertical one; where a face is not high
// enough for it ("approximately 3 in", 21 CFR 101.9(d)(11)(iii)), the broad one;
// where most of its lines are insignificant, the simplified one; where all that can
// bear a label is 40 square inches or less, the small broad one and, only if that does not fit
// either, the line.
func OnTub(l *label.Label, faceMM, areaIn2 float64) []Form {
	full, broad := Vertical, Tabular
	if l.Columns == "dual" {
		full, broad = Dual, TabularDual
	}
	forms := []Form{full}
	if list, _ := DrawOnTub(l, full, 0); list.H > faceMM {
		forms = append(forms, broad)
	}
	if l.Simple() != nil {
		forms = append(forms, Simplified)
	}
	if areaIn2 <= smallUpToIn2 {
		forms = append(forms, SmallTabular, Linear) // which need no second column
	}
	return forms
}

// DrawOnTub draws a US panel in a form, a line at most width mm long. least is the
// smallest type in it, pt.
func DrawOnTub(l *label.Label, form Form, width float64) (panel *draw.List, least float64) {
	switch form {
	case Simplified:
		if l = l.Simple(); l.Columns == "dual" {
			return usDualPanel(l, usDualWidth), usSmall
		}
		return usPanel(l, usWidth), usSmall
	case Tabular:
		return usTabularPanel(l), usSmall
	case TabularDual:
		return usTabularDualPanel(l), usSmall
	case SmallTabular:
		return usSmallTabularPanel(l), usSmall
	case Linear:
		return usLinearPanel(l, width), usSmall
	case Dual:
		return usDualPanel(l, usDualWidth), usSmall
	}
	return usPanel(l, usWidth), usSmall
}

// Least sizes of the small forms, pt: 21 CFR 101.9(d)(3) and (5).
const (
	smallCalories = 10.0
	smallNumber   = 14.0
	smallServings = 9.0
	smallHeading  = 11.0 // ours: larger than the rest, as (d)(2) wants
)

// shortAmount is a nutrient's amount and percentage in a line.
func shortAmount(n label.PanelLine) string {
	s := nameInShort(n)
	if n.DVText != "" {
		s += " (" + n.DVText + " DV)"
	}
	return s
}

// usLinearPanel sets the Nutrition Facts as a string of text.
func usLinearPanel(l *label.Label, width float64) *draw.List {
	p := &draw.List{W: width}
	st := facts(draw.Sans, usSmall)
	runs := []typeset.Run{{Text: "Nutrition Facts ", Style: facts(draw.SansBold, smallHeading)}}
	if l.ServingsText != "" {
		n := strings.TrimSuffix(l.ServingsText, " servings per container")
		runs = append(runs, typeset.Run{Text: "Servings: " + n + ", ", Style: facts(draw.Sans, smallServings)})
	}
	runs = append(runs,
		typeset.Run{Text: "Serv. size: " + l.ServingMeasure + ", ", Style: facts(draw.SansBold, smallServings)},
		typeset.Run{Text: "Amount per serving: ", Style: st},
		typeset.Run{Text: "Calories ", Style: facts(draw.SansBold, smallCalories)},
		typeset.Run{Text: amountOf(l.Lines[0]), Style: facts(draw.SansBold, smallNumber)})
	var rest []typeset.Run
	for i, n := range l.Lines[1:] {
		style := st
		if n.Bold {
			style = st.Bold()
		}
		if i > 0 {
			rest = append(rest, typeset.Run{Text: ", ", Style: st})
		}
		rest = append(rest, typeset.Run{Text: strings.ReplaceAll(shortAmount(n), " ", "\u00a0"), Style: style})
	}
	if l.NotSignificant != "" {
		rest = append(rest, typeset.Run{Text: ". " + strings.TrimSuffix(l.NotSignificant, "."), Style: st})
	}
	rest = append(rest, typeset.Run{Text: ".", Style: st})
	t := typeset.Stack(1.8, typeset.Paragraph(width-2*usPad, smallNumber+1, runs...), typeset.Paragraph(width-2*usPad, usSmall+1.4, rest...))
	p.Place(t, usPad, usPad+0.4, 1)
	p.H = t.H + 2*usPad + 1
	typeset.Frame(p, 0, 0, p.W, p.H, usBox, black)
	return p
}

// usSmallTabularPanel draws the broad form at the least sizes, with the
// abbreviations: heading and calories at the left, nutrients in two columns.
func usSmallTabularPanel(l *label.Label) *draw.List {
	const pitch = 8.4 * typeset.Point
	st := facts(draw.Sans, usSmall)
	p := &draw.List{}
	head := max(facts(draw.SansBold, smallHeading).Width("Nutrition Facts"), 24)
	if w := facts(draw.Sans, smallServings).Width(shortServings(l)); w > head {
		head = w
	}
	head = max(head, facts(draw.SansBold, smallServings).Width(l.ServingMeasure))
	col := 0.0
	for _, n := range l.Lines[1:] {
		col = max(col, st.Bold().Width(nameInShort(n))+2.5*float64(n.Indent)*0.6+3+st.Bold().Width(n.DVText))
	}
	y := usPad + face.CapHeight*smallHeading*typeset.Point
	typeset.Write(p, usPad, y, facts(draw.SansBold, smallHeading), "Nutrition Facts")
	line := func(size float64, f draw.Face, s string) {
		if s != "" {
			y += size * typeset.Point * 1.12
			typeset.Write(p, usPad, y, facts(f, size), s)
		}
	}
	line(smallServings, draw.Sans, shortServings(l))
	line(smallServings, draw.SansBold, "Serv. size:")
	line(smallServings, draw.SansBold, l.ServingMeasure)
	y += smallNumber * typeset.Point
	typeset.Write(p, usPad, y, facts(draw.SansBold, smallCalories), "Calories")
	typeset.WriteRight(p, usPad+head, y, facts(draw.SansBold, smallNumber), amountOf(l.Lines[0]))
	y += usSmall * typeset.Point * 1.2
	typeset.Write(p, usPad, y, st, "per serving")

	rows := (len(l.Lines) - 1 + 1) / 2
	x := usPad + head + 2.5
	top := usPad + 2.4
	for k := range 2 {
		left := x + float64(k)*(col+2.5)
		typeset.Write(p, left, usPad+face.CapHeight*usSmall*typeset.Point, st.Bold(), "Amount/serving")
		typeset.WriteRight(p, left+col, usPad+face.CapHeight*usSmall*typeset.Point, st.Bold(), "% DV")
	}
	for i, n := range l.Lines[1:] {
		left := x + float64(i/rows)*(col+2.5)
		edge := top + float64(i%rows)*pitch
		typeset.Fill(p, left, edge, col, usHair, black)
		base := edge + pitch - (pitch-face.XHeight*usSmall*typeset.Point)/2 + 0.1
		name := st
		if n.Bold {
			name = st.Bold()
		}
		typeset.Write(p, left+2.5*float64(n.Indent)*0.6, base, name, nameInShort(n))
		typeset.WriteRight(p, left+col, base, st.Bold(), n.DVText)
	}
	p.W = x + 2*col + 2.5 + usPad
	p.H = max(y, top+float64(rows)*pitch) + usPad
	if l.NotSignificant != "" {
		t := typeset.Text(p.W-2*usPad, usSmall+1.2, st, l.NotSignificant)
		p.Place(t, usPad, p.H, 1)
		p.H += t.H + usPad
	}
	typeset.Frame(p, 0, 0, p.W, p.H, usBox, black)
	return p
}

// nameInShort is a nutrient's abbreviated name and its amount.
func nameInShort(n label.PanelLine) string {
	if n.Key == "added_sugars" { // "Incl. 12g Added Sugars"
		return strings.Replace(amountOf(n), "Includes", n.ShortName(), 1)
	}
	return n.ShortName() + " " + amountOf(n)
}

func shortServings(l *label.Label) string {
	n, ok := strings.CutSuffix(l.ServingsText, " servings per container")
	if !ok {
		return ""
	}
	return n + " servings"
}
