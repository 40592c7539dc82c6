package ingredient

import (
	"slices"

	"ripplewright/internal/form/echo"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/form/setting"
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

// MaxName is how many letters a name may have, so that a card or a label can
// hold it.
const MaxName = 200

// Fields returns every field of a record, in the order of files. All three file
// forms (the source table, the embedded library, a maker's own), their checks,
// their schema and what is typed in the window are driven by this table. The
// caller must not change it.
func Fields() []setting.Field[Ingredient] { return fields }

var fields = slices.Concat(
	[]setting.Field[Ingredient]{
		{Path: "id", About: "short name that lines use, unique", Pattern: "^[a-z0-9_]+$", Wrong: notID, Of: func(in *Ingredient) any { return &in.ID }},
		name("name", "full name", func(in *Ingredient) any { return &in.Name }, notMissing),
		name("kitchen_name", "what a cook calls it", func(in *Ingredient) any { return &in.KitchenName }, nil),
		name("common_name", "what a US list of ingredients calls it", func(in *Ingredient) any { return &in.CommonName }, nil),
		name("common_name_eu", "what a list of the EU or UK calls it", func(in *Ingredient) any { return &in.CommonNameEU }, nil),
		name("group", "shelf of the library", func(in *Ingredient) any { return &in.Group }, nil),
		plain("source", "where its figures come from", func(in *Ingredient) any { return &in.Source }),
		plain("source_id", "record of that source", func(in *Ingredient) any { return &in.SourceID }),
	},
	cells(),
	[]setting.Field[Ingredient]{
		measured("density", "weight of a millilitre", "g/mL", 3, func(in *Ingredient) *Cell { return &in.Density }),
		plain("density_kind", "liquid, or bulk as spooned", func(in *Ingredient) any { return &in.DensityKind }),
		measured("g_per_cup", "weight of a US cup", "g", 1000, func(in *Ingredient) *Cell { return &in.GramsPerCup }),
		measured("g_per_tbsp", "weight of a US tablespoon", "g", 100, func(in *Ingredient) *Cell { return &in.GramsPerTbsp }),
		measured("g_per_tsp", "weight of a US teaspoon", "g", 50, func(in *Ingredient) *Cell { return &in.GramsPerTsp }),
		measured("g_per_fl_oz", "weight of a US fluid ounce", "g", 200, func(in *Ingredient) *Cell { return &in.GramsPerFlOz }),
		plain("measures", "the source's own household measures", func(in *Ingredient) any { return &in.Measures }),
		measured("nitrogen_factor", "protein per nitrogen behind the protein", "g/g", 10, func(in *Ingredient) *Cell { return &in.NitrogenFactor }),
		measured("atwater_protein", "energy of its protein", "kcal/g", 10, func(in *Ingredient) *Cell { return &in.AtwaterProtein }),
		measured("atwater_fat", "energy of its fat", "kcal/g", 10, func(in *Ingredient) *Cell { return &in.AtwaterFat }),
		measured("atwater_carbohydrate", "energy of its carbohydrate", "kcal/g", 10, func(in *Ingredient) *Cell { return &in.AtwaterCarbohydrate }),
		plain("allergens_us", "allergens as US law names them", func(in *Ingredient) any { return &in.AllergensUS }),
		plain("allergens_eu", "allergens as EU law names them", func(in *Ingredient) any { return &in.AllergensEU }),
		substance("polyol", "which one its polyols are", func(in *Ingredient) *mix.Species { return &in.Polyol }, mix.Polyols[:]),
		substance("pure_salt", "which salt it is, if it is one", func(in *Ingredient) *mix.Species { return &in.PureSalt },
			[]mix.Species{mix.SodiumChloride, mix.PotassiumChloride}),
		substance("pure", "which substance it is, if none of its figures can say", func(in *Ingredient) *mix.Species { return &in.Pure }, pureSpecies),
		unless0("higher_molar_mass", "molar mass of its higher saccharides", "g/mol", 1e5, func(in *Ingredient) *float64 { return &in.HigherGPerMol }),
		unless0("higher_sweetness", "sweetness of its higher saccharides, sucrose 1", "", 5, func(in *Ingredient) *float64 { return &in.HigherSweetness }),
		{Path: "standing", About: "how the US frozen-dessert standards see it", Optional: true,
			Choices: []string{string(Dairy), string(Cultured), string(Cocoa), string(Fruit), string(DriedFruit), string(Nut), string(NotUSFibre)},
			Of:      func(in *Ingredient) any { return (*string)(&in.Standing) }},
		plain("compound", "it has ingredients of its own", func(in *Ingredient) any { return &in.Compound }),
		plain("carbohydrate_without_fibre", "its carbohydrate leaves its fibre out, which is unknown", func(in *Ingredient) any { return &in.WithoutFibre }),
		plain("parts", "its own ingredients, as the pack lists them", func(in *Ingredient) any { return &in.Parts }),
		plain("derived", "how each figure was made that is not the source's own", func(in *Ingredient) any { return &in.Derived }),
		plain("notes", "anything to remember", func(in *Ingredient) any { return &in.Notes }),
	})

// pureSpecies are what a record may be of that its columns cannot say. Inulin and
// polydextrose are fibre to a label and dissolve as higher saccharides.
var pureSpecies = []mix.Species{mix.Trehalose, mix.Allulose, mix.CitricAcid, mix.TartaricAcid, mix.HigherSaccharides}

// cells are the figures of the composition.
func cells() []setting.Field[Ingredient] {
	about := map[Column]string{
		Carbohydrate:       "carbohydrate, with its fibre",
		HigherSaccharides:  "saccharides of three units and more, of a starch syrup",
		AddedSugars:        "sugars that a US label calls added",
		MilkFat:            "fat that is of milk",
		MSNF:               "milk solids-not-fat, of its solids",
		EggYolkSolids:      "solids that are of egg yolk",
		CocoaSolidsFatFree: "fat-free solids that are of cocoa",
		CocoaButter:        "fat that is of cocoa",
	}
	fs := make([]setting.Field[Ingredient], NumColumns)
	for c := range NumColumns {
		what := about[c]
		if what == "" {
			what = c.Words()
		}
		fs[c] = setting.Field[Ingredient]{Path: c.String(), About: what + ", in 100 g", Unit: c.Unit(), Max: c.largest(), Optional: true,
			Of: func(in *Ingredient) any { return &in.Cells[c] }}
	}
	return fs
}

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

// plain is a field that a file may leave empty: text, a list or a flag.
func plain(path, about string, of func(*Ingredient) any) setting.Field[Ingredient] {
	return setting.Field[Ingredient]{Path: path, About: about, Optional: true, Of: of}
}

func name(path, about string, of func(*Ingredient) any, wrong func(string) error) setting.Field[Ingredient] {
	f := setting.Field[Ingredient]{Path: path, About: about, Longest: MaxName, Optional: wrong == nil, Wrong: wrong, Of: of}
	if wrong != nil {
		f.Pattern = "." // what notMissing lets pass
	}
	return f
}

// measured is a figure of which zero makes no sense.
func measured(path, about, unit string, most float64, of func(*Ingredient) *Cell) setting.Field[Ingredient] {
	return setting.Field[Ingredient]{Path: path, About: about, Unit: unit, Max: most, Over: true, Optional: true,
		Of: func(in *Ingredient) any { return of(in) }}
}

// unless0 is a figure whose zero means that it is not given.
func unless0(path, about, unit string, most float64, of func(*Ingredient) *float64) setting.Field[Ingredient] {
	return setting.Field[Ingredient]{Path: path, About: about, Unit: unit, Max: most, Optional: true,
		Of: func(in *Ingredient) any { return (*givenUnless0)(of(in)) }}
}

func substance(path, about string, of func(*Ingredient) *mix.Species, among []mix.Species) setting.Field[Ingredient] {
	choices := make([]string, len(among))
	for i, s := range among {
		choices[i] = s.String()
	}
	return setting.Field[Ingredient]{Path: path, About: about, Choices: choices, Optional: true,
		Of: func(in *Ingredient) any { return (*speciesWord)(of(in)) }}
}

func notMissing(s string) error {
	if s == "" {
		return flaw.New("is missing")
	}
	return nil
}

func notID(s string) error {
	for _, r := range s {
		if (r < 'a' || r > 'z') && (r < '0' || r > '9') && r != '_' {
			return flaw.New("%s may hold only a–z, 0–9 and _", echo.Quoted(s))
		}
	}
	return notMissing(s)
}

// Get and Put make a Cell a value of a setting.
func (c *Cell) Get() (value float64, known bool) { return c.Value, c.Known }

// Put sets the cell.
func (c *Cell) Put(value float64, known bool) { *c = Cell{value, known} }

type givenUnless0 float64

func (g *givenUnless0) Get() (float64, bool) { return float64(*g), *g != 0 }

func (g *givenUnless0) Put(v float64, _ bool) { *g = givenUnless0(v) }

type speciesWord mix.Species

func (s *speciesWord) Word() string {
	if *s == 0 {
		return ""
	}
	return mix.Species(*s).String()
}

func (s *speciesWord) PutWord(word string) {
	*s = 0
	for sp := range mix.NumSpecies {
		if sp.String() == word {
			*s = speciesWord(sp)
		}
	}
}

// set makes the field f of in what a file says on that line.
func set(in *Ingredient, f setting.Field[Ingredient], text string, line int) error {
	if err := f.Set(in, text); err != nil {
		return &FieldError{line, in.ID, f.Path, err}
	}
	return nil
}

// finish checks every field of in and returns it. lines are where fields stand;
// a record's others are named by its own line.
func (in *Ingredient) finish(line int, lines map[string]int) (*Ingredient, error) {
	for _, f := range fields {
		err := f.Check(in)
		if err == nil {
			continue
		}
		e := &FieldError{line, in.ID, f.Path, err}
		if at := lines[f.Path]; at > 0 {
			e.Line = at
		}
		if f.Path == "id" {
			e.ID = "" // the message repeats it
		}
		return nil, e
	}
	in.WithoutFibre = in.WithoutFibre && in.Cells[Carbohydrate].Known // else it tells nothing
	return in, nil
}

// Checked returns in as a file would give it back, or the *FieldError that says
// which figure no file may hold.
func Checked(in *Ingredient) (*Ingredient, error) {
	node, err := ToYAML(in)
	if err != nil {
		return nil, &FieldError{Field: "id", Err: flaw.New("is missing")}
	}
	return FromYAML(node)
}
