package card

import (
	"bytes"
	_ "embed"
	"html/template"
	"strings"

	"ripplewright/internal/food/label"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/show/say"
	"ripplewright/internal/show/tongue"
)

//go:embed phone.html
var phoneHTML string

// phone is the page for a phone at the stove. The template escapes every text for its
// place.
var phone = template.Must(template.New("phone").Funcs(template.FuncMap{"next": func(i int) int { return i + 1 }}).Parse(phoneHTML))

// phonePart, phoneRow and phoneStep are what the page shows of a card's words.
type phonePart struct {
	Title, Note string
	Rows        []phoneRow
}

type phoneRow struct{ Weight, Ounces, Name, Measure, Note string }

type phoneStep struct {
	Title, Text string
	Blank       []string // what is asked for; a field stands between each two
}

// phoneHeads are what the page says of its own.
type phoneHeads struct {
	Check, Making, Notes, Figures, Rests, Cost, Nutrition, Cautions, Reading, Foot string
	Columns                                                                        []string
}

func newPhoneHeads() phoneHeads {
	return phoneHeads{
		Check: say.T("Check on the scale"), Making: say.T("How it is made"), Notes: say.T("Notes"), Figures: say.T("The figures"),
		Rests: say.T("What the verdict rests on"), Cost: say.T("What it costs"), Nutrition: say.T("Nutrition"), Cautions: say.T("Cautions"),
		Reading: say.T("reading"), Columns: []string{say.T("Custard"), say.T("Foam"), say.T("Tub")},
		Foot: say.T("Ripplewright. Computed figures; local code and licensed practice decide."),
	}
}

// phonePage writes the sections of a card as one page of HTML that needs nothing
// else: no script, no picture and no address.
func phonePage(c content, chosen Sections) ([]byte, error) {
	whole := c
	c = c.only(chosen)
	var page struct {
		Language                                      string
		Head                                          phoneHeads
		Recipe                                        recipeData
		Name, Strap, Makes, Serve, Verdict, Cost, Day string
		Parts                                         []phonePart
		Checks, Cautions                              []say.Titled
		Steps                                         []phoneStep
		Notes, Rests                                  []string
		Days                                          []say.DayRow
		Figures                                       [][]string
		PanelPer, PanelNote, List, Contains           string
		PanelNotes                                    []string
		Panel                                         [][]string
	}
	page.Language, page.Head, page.Recipe = tongue.Language(), newPhoneHeads(), recipeOf(whole)
	page.Name, page.Strap, page.Makes, page.Serve = flat(c.name), flat(c.strap), flat(c.makes), flat(say.T("Serve at %s", c.serve))
	page.Verdict, page.Cost = flat(c.verdict+" "+c.advice), flat(c.cost)
	for _, p := range c.parts {
		part := phonePart{Title: flat(p.title), Note: flat(p.total)}
		if p.note != "" {
			part.Note += ", " + flat(p.note)
		}
		for _, r := range p.rows {
			part.Rows = append(part.Rows, phoneRow{flat(r.grams + " " + r.unit), flat(r.ounces), flat(r.name), flat(r.measure), flat(r.note)})
		}
		page.Parts = append(page.Parts, part)
	}
	for i, s := range c.steps {
		step := phoneStep{Title: flat(s.Title), Text: flat(s.Text)}
		if c.blanks[i] != "" {
			step.Blank = strings.Split(flat(c.blanks[i]), say.BlankLine)
		}
		page.Steps = append(page.Steps, step)
	}
	for _, k := range c.checks {
		page.Checks = append(page.Checks, say.Titled{Title: flat(k.Title), Text: flat(k.Text)})
	}
	for _, k := range c.cautions {
		page.Cautions = append(page.Cautions, say.Titled{Title: flat(k.Title), Text: flat(k.Text)})
	}
	for _, n := range c.notes {
		page.Notes = append(page.Notes, flat(n))
	}
	for _, n := range append(c.rests, c.warnings...) {
		page.Rests = append(page.Rests, flat(n))
	}
	if page.Days = c.day; len(c.day) > 0 {
		page.Day = say.DayTitle(serveMinute)
	}
	for _, f := range c.figures {
		page.Figures = append(page.Figures, []string{f.name, f.dense, f.foam, f.tub})
	}
	page.PanelNote = flat(c.labelNote)
	if l := c.label; l != nil {
		page.PanelPer, page.List, page.Contains = flat(l.PanelColumns()[0].Per), flat(l.IngredientsText), flat(say.Said(l.Carries))
		for i, note := range say.SaidAll(l.Warnings) {
			if i == 0 && l.Gaps > 0 {
				note = label.IncompleteMark + " " + note
			}
			page.PanelNotes = append(page.PanelNotes, flat(note))
		}
		for _, n := range l.Lines {
			page.Panel = append(page.Panel, []string{flat(n.Name), n.Marked(n.AmountText()), n.DVText})
		}
	}
	var out bytes.Buffer
	if err := phone.Execute(&out, &page); err != nil {
		return nil, flaw.New("card: page for a phone: %v", err)
	}
	return out.Bytes(), nil
}
