package larder

import (
	"fmt"
	"slices"
	"strings"

	"ripplewright/internal/desk/typed"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/show/say"
)

// groupNames are the library's groups for people.
var groupNames = map[string]say.Message{
	"dairy": "Dairy", "egg": "Egg", "sugar_syrup": "Sugars and syrups", "fruit": "Fruit", "flavour": "Flavours",
	"nut_seed": "Nuts and seeds", "starch_thickener": "Starches and thickeners", "cocoa_chocolate": "Cocoa and chocolate",
	"bakery": "Bakery", "spirit": "Spirits", "fat_oil": "Fats and oils", "plant_milk": "Plant milks", "other": "Other¦group",
	ingredient.OwnSource: "My own",
}

// GroupName names a group of the library for people; an unknown one stays as it is.
func GroupName(group string) string {
	if name, ok := groupNames[group]; ok {
		return name.String()
	}
	return group
}

// A Choice is one of a few values, in words.
type Choice struct{ Name, Value string }

// GroupChoices are the groups that an ingredient of one's own may be in, by name.
func GroupChoices() []Choice {
	var all []Choice
	for key, name := range groupNames {
		all = append(all, Choice{name.String(), key})
	}
	slices.SortFunc(all, func(a, b Choice) int { return strings.Compare(a.Name, b.Name) })
	return all
}

// Titled is what an ingredient is called in a list: by what a cook calls it, with
// the full name of its record second, "" where that is the same.
func Titled(in *ingredient.Ingredient) (title, second string) {
	title = say.Capital(say.Kitchen(in))
	if !strings.EqualFold(in.Name, title) {
		second = in.Name
	}
	return title, second
}

// The choices above the library's groups.
const (
	AllGroups say.Message = "All groups"
	OwnGroup  say.Message = "My own and the design's"
)

// Shelves are the ingredients that there are: the library's, the maker's own and
// those that the design carries.
type Shelves struct {
	All    *ingredient.Library // the design's win, then the maker's own
	Kept   []*ingredient.Ingredient
	Design []*ingredient.Ingredient
}

// Groups are the names of the groups that there are.
func (s Shelves) Groups() []string {
	names := []string{AllGroups.String(), OwnGroup.String()}
	for _, in := range s.All.All() {
		if name := GroupName(in.Group); !in.Own && !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return names
}

// In returns what the group of that name holds, one's own first.
func (s Shelves) In(group string) []*ingredient.Ingredient {
	var own, rest []*ingredient.Ingredient
	for _, in := range s.All.All() {
		switch {
		case group != AllGroups.String() && !(group == OwnGroup.String() && in.Own) && group != GroupName(in.Group):
		case in.Own:
			own = append(own, in)
		default:
			rest = append(rest, in)
		}
	}
	return append(own, rest...)
}

// Named returns the ingredient of that id in a list, or nil.
func Named(list []*ingredient.Ingredient, id string) *ingredient.Ingredient {
	if i := slices.IndexFunc(list, func(in *ingredient.Ingredient) bool { return in.ID == id }); i >= 0 {
		return list[i]
	}
	return nil
}

// Whose says where an own ingredient is kept.
func (s Shelves) Whose(id string) string {
	if Named(s.Kept, id) == nil {
		return say.T("in this design only")
	}
	return say.T("my own")
}

// GroupOf names the group of an ingredient in the list.
func (s Shelves) GroupOf(in *ingredient.Ingredient) string {
	if in.Own {
		return s.Whose(in.ID)
	}
	return GroupName(in.Group)
}

// Origin is a record's id, group and source in a line.
func (s Shelves) Origin(in *ingredient.Ingredient) string {
	parts := []string{in.ID}
	if in.Group != ingredient.OwnSource {
		parts = append(parts, GroupName(in.Group))
	}
	if !in.Own {
		return strings.Join(append(parts, in.Source+", "+in.SourceID), " · ")
	}
	parts = append(parts, s.Whose(in.ID))
	if in.SourceID != "" {
		parts = append(parts, in.SourceID)
	}
	return strings.Join(parts, " · ")
}

// CopyState is how the design's copy of an ingredient stands to what the maker
// keeps.
type CopyState uint8

// The states.
const (
	CopySame  CopyState = iota // or there is none
	CopyAlone                  // the maker keeps none
	CopyDiffers
)

// Copy returns the state of the design's copy of the ingredient of that id.
func (s Shelves) Copy(id string) CopyState {
	carried, kept := Named(s.Design, id), Named(s.Kept, id)
	switch {
	case carried == nil || kept != nil && kept.Equal(carried):
		return CopySame
	case kept == nil:
		return CopyAlone
	}
	return CopyDiffers
}

// FreeID makes an id of a name that no ingredient has yet; it may be empty.
func (s Shelves) FreeID(name string) string {
	id := typed.ID(name)
	free := id
	for n := 2; id != ""; n++ {
		if _, taken := s.All.Find(free); !taken {
			break
		}
		free = fmt.Sprintf("%s_%d", id, n)
	}
	return free
}

// FirstGrams is what a new line weighs, g: little of what is strong.
func FirstGrams(in *ingredient.Ingredient) float64 {
	switch in.Group {
	case "flavour", "starch_thickener":
		return 5
	}
	return 50
}
