package say

import (
	"slices"
	"strings"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/work/compare"
	"ripplewright/internal/work/design"
)

// What heads the differences of two designs.
const (
	SameDesign       Message = "The designs are the same."
	LinesDiffer      Message = "Lines"
	SettingsDiffer   Message = "Settings"
	FiguresDiffer    Message = "Figures"
	FiguresDifferNot Message = "No figure differs in what can be read."
)

// becomes stands between what was and what is.
const becomes = " → "

// FromTo is what was beside what is: "300 → 280".
func FromTo(before, after string) string { return before + becomes + after }

// FigureChange is what a figure was and is, and what its band was and is where it has one:
// "Density: 0.84 → 0.75 g/mL (0.80 to 0.88 → 0.71 to 0.79 g/mL)". An empty band is none.
func FigureChange(name, was, is, from, to string) string {
	text := name + ": " + FromTo(was, is)
	if from == "" && to == "" {
		return text
	}
	none := func(band string) string {
		if band == "" {
			return Unknown
		}
		return band
	}
	return text + " (" + FromTo(none(from), none(to)) + ")"
}

// LineDifferences words what differs in the lines and the own ingredients; name
// gives an ingredient's name in the kitchen.
func LineDifferences(s Style, d compare.Differences, name func(id string) string) []string {
	var out []string
	for _, l := range d.Lines {
		what := Part(l.Part) + ": " + name(l.Ingredient())
		switch {
		case l.Before == nil:
			out = append(out, T("%s, added: %s", what, lineText(s, *l.After)))
		case l.After == nil:
			out = append(out, T("%s, removed: %s", what, lineText(s, *l.Before)))
		default:
			out = append(out, what+": "+lineChange(s, *l.Before, *l.After))
		}
	}
	for _, p := range d.Reordered {
		out = append(out, T("%s: the lines stand in another order", Part(p)))
	}
	for _, o := range d.Own {
		text := Message("own ingredient %s, other figures")
		switch {
		case o.Before == nil:
			text = "own ingredient %s, carried along"
		case o.After == nil:
			text = "own ingredient %s, no longer carried along"
		}
		out = append(out, T(text, ownName(o)))
	}
	return out
}

func ownName(o compare.Own) string {
	for _, in := range [...]*ingredient.Ingredient{o.After, o.Before} {
		if in != nil {
			return in.Name
		}
	}
	return o.ID
}

func lineAmount(s Style, l design.Line) string {
	if l.Count > 0 {
		return s.Short(l.Count, 4) + " " + Of(string(l.CountOf))
	}
	return s.MassAsWritten(l.Grams)
}

func lineText(s Style, l design.Line) string {
	text := lineAmount(s, l)
	if l.Note != "" {
		text += ", " + l.Note
	}
	return text
}

func lineChange(s Style, a, b design.Line) string {
	var parts []string
	if x, y := lineAmount(s, a), lineAmount(s, b); x != y {
		parts = append(parts, FromTo(x, y))
	}
	if a.Note != b.Note {
		parts = append(parts, T("note %s", FromTo(quotedOrNone(a.Note), quotedOrNone(b.Note))))
	}
	if a.Price != b.Price {
		parts = append(parts, T("another price"))
	}
	if len(parts) == 0 {
		return T("written in another way")
	}
	return strings.Join(parts, "; ")
}

func quotedOrNone(text string) string {
	if text == "" {
		return T("none")
	}
	return T("“%s”", text)
}

// SettingDifference words a setting that differs: "foam, overrun: 300 → 280 %".
func SettingDifference(s Style, x compare.Setting) string {
	return SettingName(x.Field.Path) + ": " + SettingChange(s, x)
}

// SettingName is a setting's place in words, without its unit.
func SettingName(path string) string {
	for _, unit := range [...]string{"_percent", "_ml", "_c", "_mm", "_m", "_g"} {
		if rest, ok := strings.CutSuffix(path, unit); ok {
			return Place(rest)
		}
	}
	return Place(path)
}

// SettingChange is what a setting was and is, in the form of its unit: "300 → 280 %".
func SettingChange(s Style, x compare.Setting) string {
	a, b, unit := settingText(s, x, &x.Before), settingText(s, x, &x.After), s.Gauge(x.Field.Unit).Unit
	if unit == "" {
		return FromTo(a, b)
	}
	return s.with(FromTo(a, b), unit)
}

func settingText(s Style, x compare.Setting, d *design.Design) string {
	switch v := x.Field.At(d).(type) {
	case *float64:
		return s.Gauge(x.Field.Unit).Plain(*v, settingDigits)
	case *int:
		return s.Short(float64(*v), 0)
	case *string:
		return settingWords(x.Field.Path, oneLine(*v, mostOfWords))
	}
	return x.Field.Text(d)
}

// settingWords is a setting that is no number: what is chosen by the name that it has where it
// is chosen, and in quotes what a maker has written.
func settingWords(path, words string) string {
	var choices []Choice
	switch path {
	case "tubs.shape":
		choices = Shapes()
	case "blend.layout":
		choices = Layouts()
	case "blend.motion":
		choices = Motions()
	case "batch.basis":
		choices = Bases()
	case "blend.dense_colour", "blend.foam_colour", "eggs.system", "label.energy_method":
		return words
	case "eggs.size":
		return Of(words)
	case "kitchen.profile":
		return quotedOrNone(Of(words))
	}
	if i := slices.IndexFunc(choices, func(c Choice) bool { return c.Value == words }); i >= 0 {
		return choices[i].Name
	}
	return quotedOrNone(words)
}

// settingDigits are the decimals of a setting that differs.
const settingDigits = 4

// mostOfWords is how much of a text that differs is repeated.
const mostOfWords = 60

// DifferencesIn words all that two designs differ in but their figures, a line each.
func DifferencesIn(s Style, d compare.Differences, name func(id string) string) []string {
	out := LineDifferences(s, d, name)
	for _, x := range d.Settings {
		out = append(out, SettingDifference(s, x))
	}
	return out
}

// DiffersMark stands before what is not the same in all designs side by side.
const DiffersMark = "≠"

// DifferingName is the name of a row, with the mark where it differs and its room
// where not.
func DifferingName(name string, differs bool) string {
	if differs {
		return DiffersMark + " " + name
	}
	return "   " + name
}

// SettingText is what a setting is in a design, without its unit.
func SettingText(s Style, x compare.Setting) string { return settingText(s, x, &x.After) }

// Where designs are laid side by side.
const (
	CompareItem    Message = "Compare…"
	CompareTitle   Message = "Side by side"
	CompareAdd     Message = "Another file…"
	CompareOnly    Message = "Only what differs"
	CompareSame    Message = "They are the same."
	CompareOpen    Message = "The open design"
	CompareLegend  Message = DiffersMark + " marks what is not the same in all."
	CompareAsSaved Message = "As last saved"
	StartItem      Message = "New from…"
	StartTitle     Message = "Start from something"
	StartFoam      Message = "With foam"
	StartOwnFoam   Message = "its own"
	StartBase      Message = "From"
	StartTubs      Message = "Tubs"
	StartEach      Message = "Each"
	StartDo        Message = "Start"
	StartHint      Message = "Each is weighed out for the tubs you have."
)

// StartBaseName and StartDemoName tell bases and demos apart in one list.
func StartBaseName(name string) string { return T("base: %s", startWord(strings.ToLower(name))) }

// StartFoamName is a foam's.
func StartFoamName(name string) string { return startWord(name) }

// startWords are the names of our bases and foams.
var startWords = map[string]Message{"milk and yolk": "milk and yolk", "rich": "rich¦a base", "dairy-free": "dairy-free", "plain": "plain¦a foam", "honey": "honey", "brown sugar": "brown sugar"}

func startWord(name string) string {
	if m, ok := startWords[name]; ok {
		return m.String()
	}
	return Of(name)
}

// StartDemoName is a demo's.
func StartDemoName(name string) string { return T("demo: %s", name) }

// CompareTakeOut takes a design out of those side by side.
func CompareTakeOut(name string) string { return T("Take out %s", name) }
