package coldview

import (
	"fmt"
	"slices"
	"strings"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/desk/kitchens"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/form/setting"
	"ripplewright/internal/show/say"
)

// A Group is settings of a kitchen under one heading.
type Group struct {
	Name   string // "" for the kitchen itself
	Fields []setting.Field[cold.Profile]
}

var groupNames = map[string]say.Message{
	"": "", "freezer": "The freezer", "counter": "The counter", "refrigerator": "The refrigerator",
	"package": "The tub's wall and lid", "layer": "Freezing a phase",
	"stove": "The stove and the probe", "bowl": "The mixing bowl", "churn": "The churn", "cook": "The cook",
}

// KitchenGroups returns all settings of a kitchen, those of one group together, in
// the order in which groups first come.
func KitchenGroups() []Group {
	var groups []Group
	at := map[string]int{}
	for _, f := range cold.Fields() {
		key, _, inner := strings.Cut(f.Path, ".")
		if !inner {
			key = ""
		}
		i, ok := at[key]
		if !ok {
			i = len(groups)
			at[key] = i
			groups = append(groups, Group{Name: groupNames[key].String()})
		}
		groups[i].Fields = append(groups[i].Fields, f)
	}
	return groups
}

// TypedDecimals is how many decimals of a setting are typed.
func TypedDecimals(f setting.Field[cold.Profile]) int {
	if f.Max <= 5 {
		return 3
	}
	return 1
}

// A KitchenForm is a kitchen as it is being edited.
type KitchenForm struct {
	Kitchen cold.Profile
	Was     string // the name it is kept under; "": a new one
}

// SetNumber makes the number at path what was typed; an error in reading it names
// the setting.
func (f *KitchenForm) SetNumber(field setting.Field[cold.Profile], v float64, wrong error) error {
	if wrong != nil {
		return flaw.New("%s: %v", field.About, wrong)
	}
	*field.At(&f.Kitchen).(*float64) = v
	return nil
}

// Keep writes the kitchen to the book, or returns what is wrong with it.
func (f *KitchenForm) Keep(book *kitchens.Book) error {
	if !strings.EqualFold(f.Kitchen.Name, f.Was) {
		taken := func(k cold.Profile) bool { return strings.EqualFold(k.Name, f.Kitchen.Name) }
		if slices.ContainsFunc(book.All(), taken) {
			return flaw.New("there is already a kitchen of that name")
		}
	}
	if err := f.Kitchen.Validate(); err != nil {
		return err
	}
	return book.Keep(f.Kitchen, f.Was)
}

// FreeName is name with a number that no kitchen has.
func FreeName(book *kitchens.Book, name string) string {
	for n := 2; ; n++ {
		try := fmt.Sprintf("%s %d", name, n)
		if _, err := book.Find(try); err != nil {
			return try
		}
	}
}
