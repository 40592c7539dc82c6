package sticker

import (
	"strconv"
	"strings"

	"ripplewright/internal/food/label"
	"ripplewright/internal/food/onpack"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/draw/face"
	"ripplewright/internal/show/draw/typeset"
)

// terms are the words of the lines of an EU declaration.
var terms = map[string]string{"energy_kj": "energy", "fat": "fat", "saturates": "saturates", "carbohydrate": "carbohydrate", "sugars": "sugars",
	"polyols": "polyols", "starch": "starch", "fibre": "fibre", "protein": "protein", "salt": "salt"}

// named is a term in the label's languages, each once: "Fett / Matières grasses".
func (c *Content) named(term string) string {
	var all []string
	for _, lang := range c.Languages {
		w, _ := c.Words.In(lang, term)
		if !contains(all, w.Text) {
			all = append(all, w.Text)
		}
	}
	return strings.Join(all, "\u00a0/ ")
}

func contains(all []string, s string) bool {
	for _, a := range all {
		if a == s {
			return true
		}
	}
	return false
}

// amount is a figure with the decimal sign of the first language; where the
// languages differ the comma stands, which most of them have.
func (c *Content) amount(n label.PanelLine) string {
	sign := "."
	for _, lang := range c.Languages {
		if w, _ := c.Words.In(lang, "decimal_sign"); w.Text == "," {
			sign = ","
		}
	}
	s := n.Text
	if n.Incomplete {
		s += "*"
	}
	return strings.ReplaceAll(strings.Replace(s, ".", sign, 1), " ", "\u00a0")
}

// energy is the line of energy in both units, kJ first.
func (c *Content) energy() string {
	var kj, kcal string
	for _, n := range c.Panel.Lines {
		switch n.Key {
		case "energy_kj":
			kj = c.amount(n)
		case "energy_kcal":
			kcal = c.amount(n)
		}
	}
	return kj + "\u00a0/ " + kcal
}

// table draws the declaration per 100 g, w mm wide, its type pt; nil where a
// name or a figure has no room in a line.
func (c *Content) table(w, pt float64) *draw.List {
	st := typeset.Type(draw.Sans, pt, black)
	pad := 1.2
	p := &draw.List{W: w}
	title, per := c.named("nutrition_declaration"), c.named("per_100g")
	em := pt * point
	y := pad
	if st.Bold().Width(title)+st.Width(per)+2 > w-2*pad { // the head on lines of its own
		for _, line := range typeset.Wrapped([]typeset.Run{{Text: title, Style: st.Bold()}}, w-2*pad) {
			p.Place(typeset.OneLine(line), pad, y, 1)
			y += face.CapHeight*em + 0.42*em
		}
	} else {
		typeset.Write(p, pad, y+face.CapHeight*em, st.Bold(), title)
	}
	if st.Width(per) > w-2*pad {
		return nil
	}
	y += face.CapHeight * em
	typeset.WriteRight(p, w-pad, y, st, per)
	y += belowLine * em
	for _, n := range c.Panel.Lines {
		term, ok := terms[n.Key]
		if !ok {
			continue // kcal stands in the line of kJ
		}
		name, figure := c.named(term), c.amount(n)
		if n.Key == "energy_kj" {
			figure = c.energy()
		}
		left := pad + float64(n.Indent)*1.5
		room := w - pad - left - st.Width(figure) - 1
		if room < 12 {
			return nil
		}
		typeset.Fill(p, pad, y, w-2*pad, 0.1, black)
		lines := typeset.Wrapped([]typeset.Run{{Text: name, Style: st}}, room)
		for i, line := range lines {
			if y += face.CapHeight*em + 0.28*em; i > 0 {
				y += 0.1 * em
			}
			p.Place(typeset.OneLine(line), left, y-face.CapHeight*em, 1)
			if i == 0 {
				typeset.WriteRight(p, w-pad, y, st, figure)
			}
		}
		y += belowLine * em
	}
	p.H = y + pad*0.4
	typeset.Frame(p, 0, 0, w, p.H, 0.2, black)
	return c.noted(p, pt)
}

// belowLine is from a baseline of the table to the rule under it, of the type's size:
// what hangs below the letters and as much air as above them.
const belowLine = 0.36

// line sets the declaration as a paragraph.
func (c *Content) line(w, pt float64) *draw.List {
	st := typeset.Type(draw.Sans, pt, black)
	runs := []typeset.Run{{Text: c.named("nutrition_declaration") + " ", Style: st.Bold()}, {Text: c.named("per_100g") + ": ", Style: st}}
	for i, n := range c.Panel.Lines {
		term, ok := terms[n.Key]
		if !ok {
			continue
		}
		figure := c.amount(n)
		if n.Key == "energy_kj" {
			figure = c.energy()
		}
		if i > 0 {
			runs = append(runs, typeset.Run{Text: "; ", Style: st})
		}
		runs = append(runs, typeset.Run{Text: c.named(term) + " " + figure, Style: st})
	}
	return c.noted(hanging(typeset.Paragraph(w, textLead*pt, runs...), pt), pt)
}

// Words beside the colours, so that nothing is told by colour alone.
var levels = map[onpack.Colour]struct {
	word string
	fill draw.Colour
}{
	onpack.Green: {"low", draw.RGB(0xbfdcae)},
	onpack.Amber: {"medium", draw.RGB(0xf6d28b)},
	onpack.Red:   {"high", draw.RGB(0xf0a79c)},
}

// traffic draws the front of pack, nil where there is none or no room for it.
func (c *Content) traffic(w, least float64) *draw.List {
	if len(c.FrontOfPack) == 0 || c.Panel == nil {
		return nil
	}
	pt := size(least)
	st := typeset.Type(draw.Sans, pt, black)
	n := len(c.FrontOfPack) + 1
	cell := (w - float64(n-1)*0.8) / float64(n)
	p := &draw.List{W: w}
	line := 1.25 * pt * point
	texts := [][]string{{c.named("energy"), c.second("energy_kj"), c.second("energy_kcal"), c.energyRI()}}
	fills := []draw.Colour{draw.RGB(0xe8e8e8)}
	for _, f := range c.FrontOfPack {
		name := strings.ToUpper(f.Nutrient[:1]) + f.Nutrient[1:]
		texts = append(texts, []string{name, c.second(f.Nutrient), levels[f.Colour].word, f.RI()})
		fills = append(fills, levels[f.Colour].fill)
	}
	for i, rows := range texts {
		x := float64(i) * (cell + 0.8)
		typeset.Fill(p, x, 0, cell, 4*line+1.4, fills[i])
		for k, s := range rows {
			one := st
			if k == 0 {
				one = st.Bold()
			}
			if one.Width(s) > cell-0.6 {
				return nil
			}
			typeset.WriteCentre(p, x+cell/2, float64(k+1)*line+0.3, one, s)
		}
	}
	p.H = 4*line + 1.4
	foot := typeset.Text(w, 1.2*pt, st, c.FrontPortion)
	p.Place(foot, 0, p.H+1, 1)
	p.H += 1 + foot.H + 0.3*pt*point
	return p
}

// energyRI is the share of an adult's reference intake of energy in the portion.
func (c *Content) energyRI() string {
	for _, n := range c.Panel.Second {
		if n.Key == "energy_kj" {
			return strings.ReplaceAll(n.DVText, " ", "")
		}
	}
	return ""
}

// second is a figure of the portion.
func (c *Content) second(key string) string {
	for _, n := range c.Panel.Second {
		if n.Key == key {
			return c.amount(n)
		}
	}
	return ""
}

// FrontOf returns the UK's voluntary front of pack of a declaration, from its
// declared figures, and the words under it.
func FrontOf(l *label.Label) (figures []onpack.FrontFigure, foot string) {
	for _, nutrient := range onpack.FrontNutrients() {
		for _, n := range l.Lines {
			if n.Key != nutrient {
				continue
			}
			per100, err := strconv.ParseFloat(strings.TrimPrefix(strings.TrimSuffix(n.Text, " g"), "<"), 64)
			if err != nil {
				return nil, ""
			}
			if f, ok := onpack.Front(nutrient, per100, l.ServingG); ok {
				figures = append(figures, f)
			}
		}
	}
	foot = "Per " + l.ServingMeasure + ", with % of an adult's reference intake. Typical values per 100 g: energy "
	var kj, kcal string
	for _, n := range l.Lines {
		switch n.Key {
		case "energy_kj":
			kj = n.Text
		case "energy_kcal":
			kcal = n.Text
		}
	}
	return figures, foot + strings.ReplaceAll(kj+" / "+kcal, " ", "\u00a0")
}
