package label

// PanelColumn is a column of a panel, with the shares of a day beside its amounts.
type PanelColumn struct {
	Per   string // "per serving"
	Share string // "% DV" or "% RI"; "" where the rules give no share
	Lines []PanelLine
}

// PanelColumns returns the columns of l as they stand from the left.
func (l *Label) PanelColumns() []PanelColumn {
	first, second := PanelColumn{"per serving", "% DV", l.Lines}, PanelColumn{"per " + l.SecondColumn, "% DV", l.Second}
	if l.Region == EU {
		first = PanelColumn{"per 100 g", "", l.Lines} // the reference intake is of a portion
		second.Share = "% RI"
	}
	switch {
	case len(l.Second) != len(l.Lines):
		return []PanelColumn{first}
	case l.Region == US && l.SecondColumn != PerContainer:
		first.Per = "per container"
		return []PanelColumn{second, first} // the container holds more
	}
	return []PanelColumn{first, second}
}

// ShareText is the share of line i, "" where the column has none.
func (c PanelColumn) ShareText(i int) string {
	if c.Share == "" {
		return ""
	}
	return c.Lines[i].DVText
}

// ServingSize is the line of a US panel, in the law's words.
func (l *Label) ServingSize() string { return "Serving size " + l.ServingMeasure }
