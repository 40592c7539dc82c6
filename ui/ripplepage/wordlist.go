package ripplepage

import (
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// wordList is a list for one word of the design.
type wordList struct {
	list    *kit.Select
	choices []say.Choice
	of      func(*design.Design) *string
}

// newWordList returns a list; change is told the step and how it changes a design.
func newWordList(step string, choices []say.Choice, change func(string, func(*design.Design)), of func(*design.Design) *string) wordList {
	c := wordList{kit.NewSelect(say.NamesOf(choices), func(name string) {
		change(step, func(d *design.Design) { *of(d) = say.ValueOf(choices, name) })
	}), choices, of}
	for _, o := range choices { // never seen, but it asks for the room of the longest
		if len(o.Name) > len(c.list.PlaceHolder) {
			c.list.PlaceHolder = o.Name
		}
	}
	return c
}

// show puts d's word on screen.
func (c wordList) show(d *design.Design) { page.ShowSelected(c.list, say.NameOf(c.choices, *c.of(d))) }
