package ingredient

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode/utf8"

	"ripplewright/internal/form/echo"
	"ripplewright/internal/matter/mix"
)

// Standing says how the US frozen-dessert standards, 21 CFR part 135, see an
// ingredient.
type Standing string

// The standings. The zero Standing is any other ingredient.
const (
	Dairy      Standing = "dairy"       // counts as milkfat and nonfat milk solids
	Cultured   Standing = "cultured"    // of milk, but outside the standards' dairy list
	Cocoa      Standing = "cocoa"       // bulky flavour
	Fruit      Standing = "fruit"       // bulky flavour
	DriedFruit Standing = "dried_fruit" // bulky flavour, counted at its fresh weight
	Nut        Standing = "nut"         // bulky flavour
	// NotUSFibre marks a gum that is not on the dietary-fibre list of
	// 21 CFR 101.9(c)(6)(i), so that a US label counts it as carbohydrate only.
	NotUSFibre Standing = "not_us_fibre"
)

// FieldError says which figure of which record cannot be read.
type FieldError struct {
	Line  int    // in the file, from 1; 0 where there is no file
	ID    string // of the record, "" if it is not known yet
	Field string // the field's name in files, "" for the record as a whole
	Err   error
}

func (e *FieldError) Error() string {
	var b strings.Builder
	if e.Line > 0 {
		fmt.Fprintf(&b, "line %d: ", e.Line)
	}
	if e.ID != "" {
		fmt.Fprintf(&b, "ingredient %s: ", echo.Quoted(e.ID))
	}
	if e.Field != "" {
		fmt.Fprintf(&b, "%s: ", echo.Plain(e.Field))
	}
	b.WriteString(e.Err.Error())
	return b.String()
}

func (e *FieldError) Unwrap() error { return e.Err }

// field is one field of a record in a file. All three file forms (the source
// table, the embedded library, a maker's own) are driven by the list of
// fields, so that none can fall behind.
type field struct {
	name string
	set  func(in *Ingredient, s string) error
	get  func(in *Ingredient) string // "" leaves the field out
	kind kind
}

// kind is how a field is written where the form has types.
type kind uint8

const (
	text kind = iota
	number
	list // "; " separates the items
)

// fields lists the fields in file order.
var fields = makeFields()

// fieldNamed finds a field by its file name.
var fieldNamed = func() map[string]*field {
	m := make(map[string]*field, len(fields))
	for i := range fields {
		m[fields[i].name] = &fields[i]
	}
	return m
}()

// pureSpecies are what a record may be of that its columns cannot say. Inulin and
// polydextrose are fibre to a label and dissolve as higher saccharides.
var pureSpecies = []mix.Species{mix.Trehalose, mix.Allulose, mix.CitricAcid, mix.TartaricAcid, mix.HigherSaccharides}

func makeFields() []field {
	fs := []field{
		{"id", setID, func(in *Ingredient) string { return in.ID }, text},
		textField("name", func(in *Ingredient) *string { return &in.Name }),
		textField("kitchen_name", func(in *Ingredient) *string { return &in.KitchenName }),
		textField("common_name", func(in *Ingredient) *string { return &in.CommonName }),
		textField("common_name_eu", func(in *Ingredient) *string { return &in.CommonNameEU }),
		textField("group", func(in *Ingredient) *string { return &in.Group }),
		textField("source", func(in *Ingredient) *string { return &in.Source }),
		textField("source_id", func(in *Ingredient) *string { return &in.SourceID }),
	}
	for c := Column(0); c < NumColumns; c++ {
		fs = append(fs, cellField(c.String(), c.largest(), func(in *Ingredient) *Cell { return &in.Cells[c] }))
	}
	return append(fs,
		positiveField("density", 3, func(in *Ingredient) *Cell { return &in.Density }),
		textField("density_kind", func(in *Ingredient) *string { return &in.DensityKind }),
		positiveField("g_per_cup", 1000, func(in *Ingredient) *Cell { return &in.GramsPerCup }),
		positiveField("g_per_tbsp", 100, func(in *Ingredient) *Cell { return &in.GramsPerTbsp }),
		positiveField("g_per_tsp", 50, func(in *Ingredient) *Cell { return &in.GramsPerTsp }),
		positiveField("g_per_fl_oz", 200, func(in *Ingredient) *Cell { return &in.GramsPerFlOz }),
		textField("measures", func(in *Ingredient) *string { return &in.Measures }),
		positiveField("nitrogen_factor", 10, func(in *Ingredient) *Cell { return &in.NitrogenFactor }),
		positiveField("atwater_protein", 10, func(in *Ingredient) *Cell { return &in.AtwaterProtein }),
		positiveField("atwater_fat", 10, func(in *Ingredient) *Cell { return &in.AtwaterFat }),
		positiveField("atwater_carbohydrate", 10, func(in *Ingredient) *Cell { return &in.AtwaterCarbohydrate }),
		listField("allergens_us", func(in *Ingredient) *[]string { return &in.AllergensUS }),
		listField("allergens_eu", func(in *Ingredient) *[]string { return &in.AllergensEU }),
		speciesField("polyol", func(in *Ingredient) *mix.Species { return &in.Polyol }, mix.Polyols[:]),
		speciesField("pure_salt", func(in *Ingredient) *mix.Species { return &in.PureSalt },
			[]mix.Species{mix.SodiumChloride, mix.PotassiumChloride}),
		speciesField("pure", func(in *Ingredient) *mix.Species { return &in.Pure }, pureSpecies),
		floatField("higher_molar_mass", 1e5, func(in *Ingredient) *float64 { return &in.HigherMolarMass }),
		floatField("higher_sweetness", 5, func(in *Ingredient) *float64 { return &in.HigherSweetness }),
		field{"standing", setStanding, func(in *Ingredient) string { return string(in.Standing) }, text},
		flagField("compound", func(in *Ingredient) *bool { return &in.Compound }),
		flagField("carbohydrate_without_fibre", func(in *Ingredient) *bool { return &in.WithoutFibre }),
		textField("parts", func(in *Ingredient) *string { return &in.Parts }),
		textField("derived", func(in *Ingredient) *string { return &in.Derived }),
		textField("notes", func(in *Ingredient) *string { return &in.Notes }),
	)
}

// MaxName is how many letters a name may have, so that a card or a label can
// hold it.
const MaxName = 200

// named are the fields that MaxName bounds; notes and sources may be long.
var named = map[string]bool{"name": true, "common_name": true, "common_name_eu": true, "kitchen_name": true, "group": true}

func textField(name string, at func(*Ingredient) *string) field {
	return field{name,
		func(in *Ingredient, s string) error {
			if n := utf8.RuneCountInString(s); named[name] && n > MaxName {
				return fmt.Errorf("%d letters are more than the %d that a name may have", n, MaxName)
			}
			*at(in) = s
			return nil
		},
		func(in *Ingredient) string { return *at(in) }, text}
}

func listField(name string, at func(*Ingredient) *[]string) field {
	return field{name,
		func(in *Ingredient, s string) error {
			*at(in) = nil
			for _, item := range strings.Split(s, ";") {
				if item = strings.TrimSpace(item); item != "" {
					*at(in) = append(*at(in), item)
				}
			}
			return nil
		},
		func(in *Ingredient) string { return strings.Join(*at(in), "; ") }, list}
}

func cellField(name string, largest float64, at func(*Ingredient) *Cell) field {
	return field{name,
		func(in *Ingredient, s string) error {
			if s == "" {
				*at(in) = Cell{}
				return nil
			}
			v, err := parse(s, largest)
			if err != nil {
				return err
			}
			*at(in) = Known(v)
			return nil
		},
		func(in *Ingredient) string {
			if c := *at(in); c.Known {
				return format(c.Value)
			}
			return ""
		}, number}
}

// positiveField is a cell of which zero makes no sense.
func positiveField(name string, largest float64, at func(*Ingredient) *Cell) field {
	f := cellField(name, largest, at)
	set := f.set
	f.set = func(in *Ingredient, s string) error {
		if err := set(in, s); err != nil {
			return err
		}
		if *at(in) == Known(0) {
			return errors.New("is 0; leave it out where there is none")
		}
		return nil
	}
	return f
}

// floatField is a figure whose zero means "not given".
func floatField(name string, largest float64, at func(*Ingredient) *float64) field {
	return field{name,
		func(in *Ingredient, s string) (err error) {
			*at(in) = 0
			if s != "" {
				*at(in), err = parse(s, largest)
			}
			return err
		},
		func(in *Ingredient) string {
			if v := *at(in); v != 0 {
				return format(v)
			}
			return ""
		}, number}
}

func speciesField(name string, at func(*Ingredient) *mix.Species, of []mix.Species) field {
	return field{name,
		func(in *Ingredient, s string) error {
			*at(in) = 0
			if s == "" {
				return nil
			}
			for _, sp := range of {
				if sp.String() == s {
					*at(in) = sp
					return nil
				}
			}
			return fmt.Errorf("%s is none of %v", echo.Quoted(s), of)
		},
		func(in *Ingredient) string {
			if sp := *at(in); sp != 0 {
				return sp.String()
			}
			return ""
		}, text}
}

func setID(in *Ingredient, s string) error {
	if s == "" {
		return errors.New("is missing")
	}
	for _, r := range s {
		if (r < 'a' || r > 'z') && (r < '0' || r > '9') && r != '_' {
			return fmt.Errorf("%s may hold only a–z, 0–9 and _", echo.Quoted(s))
		}
	}
	in.ID = s
	return nil
}

func setStanding(in *Ingredient, s string) error {
	switch st := Standing(s); st {
	case "", Dairy, Cultured, Cocoa, Fruit, DriedFruit, Nut, NotUSFibre:
		in.Standing = st
		return nil
	}
	return fmt.Errorf("%s is no standing", echo.Quoted(s))
}

// flagField is left out, or 0, where it is not so.
func flagField(name string, at func(*Ingredient) *bool) field {
	return field{name,
		func(in *Ingredient, s string) error {
			switch s {
			case "", "0", "false":
				*at(in) = false
			case "1", "true":
				*at(in) = true
			default:
				return fmt.Errorf("%s is neither 0 nor 1", echo.Quoted(s))
			}
			return nil
		},
		func(in *Ingredient) string {
			if *at(in) {
				return "1"
			}
			return ""
		}, number}
}

// parse reads a figure from 0 to largest.
func parse(s string, largest float64) (float64, error) {
	v, err := strconv.ParseFloat(s, 64)
	if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
		return 0, fmt.Errorf("%s is not a number", echo.Quoted(s))
	}
	if v < 0 || v > largest {
		return 0, fmt.Errorf("%s is outside 0–%s", echo.Plain(s), format(largest))
	}
	return v + 0, nil // −0 becomes 0
}

func format(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }

// largest is the most that 100 g of anything can hold, in c's unit.
func (c Column) largest() float64 {
	switch c.Unit() {
	case "kcal":
		return 910 // fat has 902 kcal, Handbook 74's largest factor (9.02)
	case "mg":
		return 1e5
	case "µg":
		return 1e8
	}
	return 100
}

// Checked returns in as a file would give it back, or the *FieldError that says
// which figure no file may hold.
func Checked(in *Ingredient) (*Ingredient, error) {
	node, err := ToYAML(in)
	if err != nil {
		return nil, &FieldError{Field: "id", Err: errors.New("is missing")}
	}
	return FromYAML(node)
}

// finish checks what a record must have and returns it.
func (in *Ingredient) finish(line int) (*Ingredient, error) {
	if in.ID == "" {
		return nil, &FieldError{Line: line, Field: "id", Err: errors.New("is missing")}
	}
	if in.Name == "" {
		return nil, &FieldError{Line: line, ID: in.ID, Field: "name", Err: errors.New("is missing")}
	}
	in.WithoutFibre = in.WithoutFibre && in.Cells[Carbohydrate].Known // else it tells nothing
	return in, nil
}
