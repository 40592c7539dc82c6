package ingredient

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"gopkg.in/yaml.v3"

	"ripplewright/internal/form/flaw"
	"ripplewright/internal/form/setting"
)

// Pack is what the nutrition declaration of a bought ingredient says, in g
// (energy kcal or kJ, minerals mg, vitamin D µg) per PerG grams. A figure the
// pack does not give is unknown.
type Pack struct {
	PerG float64 // 100, or the grams of the serving that the figures are for

	EnergyKcal, EnergyKJ,
	Fat, Saturates, TransFat, CholesterolMG,
	Carbohydrate, Sugars, AddedSugars, Polyols, Starch, Fibre,
	Protein, Salt, SodiumMG,
	VitaminDUG, CalciumMG, IronMG, PotassiumMG Cell

	// The kinds of sugar, where the pack or its maker tells them.
	Sucrose, Glucose, Fructose, Lactose, Maltose Cell

	// AvailableCarbohydrate tells that Carbohydrate is without fibre, as in
	// the EU and the UK; a US pack's is with fibre.
	AvailableCarbohydrate bool
}

// PackFigure is one figure of a pack.
type PackFigure struct {
	setting.Field[Pack]        // Max is per 100 g
	Column              Column // of the record that it becomes; NumColumns: none as it stands
}

// PackFigures returns the figures of a pack in a label's order. Salt is an EU
// figure and sodium a US one; a pack gives one of them.
func PackFigures() []PackFigure { return packFigures }

var packFigures = []PackFigure{
	asColumn(Energy, "energy_kcal", func(p *Pack) *Cell { return &p.EnergyKcal }),
	packFigure(NumColumns, "energy_kj", "energy in kJ", "kJ", Energy.largest()*kJPerKcal, func(p *Pack) *Cell { return &p.EnergyKJ }),
	asColumn(Fat, "fat", func(p *Pack) *Cell { return &p.Fat }),
	asColumn(SaturatedFat, "saturates", func(p *Pack) *Cell { return &p.Saturates }),
	asColumn(TransFat, "trans_fat", func(p *Pack) *Cell { return &p.TransFat }),
	asColumn(CholesterolMG, "cholesterol_mg", func(p *Pack) *Cell { return &p.CholesterolMG }),
	asColumn(Carbohydrate, "carbohydrate", func(p *Pack) *Cell { return &p.Carbohydrate }),
	asColumn(TotalSugars, "sugars", func(p *Pack) *Cell { return &p.Sugars }),
	asColumn(AddedSugars, "added_sugars", func(p *Pack) *Cell { return &p.AddedSugars }),
	asColumn(Sucrose, "sucrose", func(p *Pack) *Cell { return &p.Sucrose }),
	asColumn(Glucose, "glucose", func(p *Pack) *Cell { return &p.Glucose }),
	asColumn(Fructose, "fructose", func(p *Pack) *Cell { return &p.Fructose }),
	asColumn(Lactose, "lactose", func(p *Pack) *Cell { return &p.Lactose }),
	asColumn(Maltose, "maltose", func(p *Pack) *Cell { return &p.Maltose }),
	asColumn(Polyols, "polyols", func(p *Pack) *Cell { return &p.Polyols }),
	asColumn(Starch, "starch", func(p *Pack) *Cell { return &p.Starch }),
	asColumn(Fibre, "fibre", func(p *Pack) *Cell { return &p.Fibre }),
	asColumn(Protein, "protein", func(p *Pack) *Cell { return &p.Protein }),
	packFigure(NumColumns, "salt", "salt", "g", 100, func(p *Pack) *Cell { return &p.Salt }),
	asColumn(SodiumMG, "sodium_mg", func(p *Pack) *Cell { return &p.SodiumMG }),
	asColumn(VitaminDUG, "vitamin_d_ug", func(p *Pack) *Cell { return &p.VitaminDUG }),
	asColumn(CalciumMG, "calcium_mg", func(p *Pack) *Cell { return &p.CalciumMG }),
	asColumn(IronMG, "iron_mg", func(p *Pack) *Cell { return &p.IronMG }),
	asColumn(PotassiumMG, "potassium_mg", func(p *Pack) *Cell { return &p.PotassiumMG }),
}

func packFigure(c Column, path, about, unit string, most float64, at func(*Pack) *Cell) PackFigure {
	return PackFigure{setting.Field[Pack]{Path: path, About: about, Unit: unit, Max: most, Optional: true,
		Of: func(p *Pack) any { return at(p) }}, c}
}

func asColumn(c Column, path string, at func(*Pack) *Cell) PackFigure {
	return packFigure(c, path, c.Words(), c.Unit(), c.largest(), at)
}

// most is the most that a pack can say of the figure in that many grams: a pack
// rounds up.
func (f PackFigure) most(grams float64) float64 { return f.Max * grams / 100 * 1.02 }

// PerField is the setting of the grams that a pack's figures are for.
var PerField = setting.Field[Pack]{Path: "per", About: "grams that the figures are for", Unit: "g", Min: 1, Max: 1000, WithUnit: true,
	Of: func(p *Pack) any { return &p.PerG }}

// packFields is all that stands in a file under pack.
var packFields = func() []setting.Field[Pack] {
	fs := []setting.Field[Pack]{PerField,
		{Path: "carbohydrate_with_fibre", About: "its carbohydrate includes the fibre, as on a US pack", Optional: true,
			Of: func(p *Pack) any { return (*withFibre)(&p.AvailableCarbohydrate) }}}
	for _, f := range packFigures {
		fs = append(fs, f.Field)
	}
	return fs
}()

// withFibre is Pack.AvailableCarbohydrate, which a file says the other way.
type withFibre bool

func (w *withFibre) On() bool { return !bool(*w) }

func (w *withFibre) Turn(on bool) { *w = withFibre(!on) }

// At returns the figure's place in p.
func (f PackFigure) At(p *Pack) *Cell { return f.Of(p).(*Cell) }

// kJPerKcal is the thermochemical calorie, exact by definition.
const kJPerKcal = 4.184

// SaltPerSodium is g of salt per g of sodium, Regulation (EU) No 1169/2011,
// Annex I, item 11.
const SaltPerSodium = 2.5

// FromPack returns an ingredient with the figures of a pack, per 100 g. What
// the pack does not state stays unknown, but for figures that Derived names:
// energy from kJ, carbohydrate with fibre, sodium from salt, and water by
// difference. Ash stays unknown: the salt is some of it, and an ash of that
// size would bound calcium, iron and potassium, of which the pack says nothing.
func FromPack(id, name string, p Pack) (*Ingredient, error) {
	in := &Ingredient{Name: name, Source: OwnSource, Group: OwnSource, Own: true}
	in.ID = id
	if field, err := p.check(); err != nil {
		return nil, &FieldError{ID: id, Field: field, Err: err}
	}
	p.fill(in)
	return in.finish(0, nil)
}

// check refuses a declaration that cannot be one, and says which field of a
// file is at fault.
func (p *Pack) check() (field string, err error) {
	if err := PerField.Check(p); err != nil {
		return "pack: per", err
	}
	for _, f := range packFigures {
		cell := *f.At(p)
		switch {
		case !cell.Known:
		case !(cell.Value >= f.Min):
			return "pack: " + f.Path, f.Check(p)
		case !(cell.Value <= f.most(p.PerG)):
			return "pack: " + f.Path, flaw.New("%s %s in %s g is more than there can be", setting.Number(cell.Value), f.Unit, setting.Number(p.PerG))
		}
	}
	for _, x := range [...]struct {
		field string
		what  flaw.Word
		parts []Cell
		whole float64
	}{
		{"pack", "fat, carbohydrate and protein", []Cell{p.Fat, p.Carbohydrate, p.Protein}, p.PerG},
		{"pack: saturates", "the fatty acids", []Cell{p.Saturates, p.TransFat}, p.Fat.Or(p.PerG)},
		{"pack: sugars", "sugars, polyols and starch", []Cell{p.Sugars, p.Polyols, p.Starch}, p.Carbohydrate.Or(p.PerG)},
		{"pack: sugars", "the kinds of sugar", []Cell{p.Sucrose, p.Glucose, p.Fructose, p.Lactose, p.Maltose}, p.Sugars.Or(p.PerG)},
		{"pack: added_sugars", "the added sugars", []Cell{p.AddedSugars}, p.Sugars.Or(p.PerG)},
	} {
		sum := 0.0
		for _, c := range x.parts {
			sum += c.Or(0)
		}
		if sum > 1.02*x.whole+1.5 { // each figure is rounded to 0.5 g or so
			return x.field, flaw.New("%s sum to %s g in %s g", x.what, setting.Number(sum), setting.Number(x.whole))
		}
	}
	return "", nil
}

// fill sets the figures of in from a pack that check has passed.
func (p *Pack) fill(in *Ingredient) {
	kept := *p
	in.Pack = &kept
	k := 100 / p.PerG
	for _, f := range packFigures {
		if cell := *f.At(p); cell.Known && f.Column < NumColumns {
			in.Cells[f.Column] = Known(min(cell.Value*k, f.Max))
		}
	}
	how := []string{fmt.Sprintf("all: the pack's figures per %s g, rounded as a pack rounds", setting.Number(p.PerG))}
	if p.EnergyKJ.Known && !p.EnergyKcal.Known {
		in.Cells[Energy] = Known(min(p.EnergyKJ.Value*k/kJPerKcal, Energy.largest()))
		how = append(how, "energy_kcal: the pack's kJ / 4.184")
	}
	if p.AvailableCarbohydrate && p.Carbohydrate.Known {
		if p.Fibre.Known {
			in.Cells[Carbohydrate] = Known(min(in.Cells[Carbohydrate].Value+in.Cells[Fibre].Value, 100))
			how = append(how, "carbohydrate: the pack's available carbohydrate + fibre")
		} else {
			in.WithoutFibre = true
			how = append(how, "carbohydrate: the pack's, without the fibre, which it does not give")
		}
	}
	salt := p.Salt.Or(0) * k
	switch {
	case p.Salt.Known && !p.SodiumMG.Known:
		in.Cells[SodiumMG] = Known(salt * 1000 / SaltPerSodium)
		how = append(how, "sodium_mg: salt / 2.5 (Regulation (EU) No 1169/2011, Annex I)")
	case p.SodiumMG.Known && !p.Salt.Known:
		salt = in.Cells[SodiumMG].Value * SaltPerSodium / 1000
	}
	if p.Fat.Known && p.Carbohydrate.Known && p.Protein.Known {
		rest := 100 - in.Cells[Fat].Value - in.Cells[Carbohydrate].Value - in.Cells[Protein].Value - salt
		in.Cells[Water] = Known(max(0, rest))
		how = append(how, "water: estimate by difference, 100 - fat - carbohydrate - protein - salt")
	}
	in.Derived = strings.Join(how, "; ")
}

// Doubt returns the energy that a pack's figures make and what it says, and whether
// they are too far apart. The factors are those of Regulation (EU) No 1169/2011, Annex XIV; a fifth
// apart is more than rounding, and often a figure in the wrong field (common
// practice, no source).
func (p *Pack) Doubt() (makesKcal, saysKcal float64, doubted bool) {
	stated := p.EnergyKcal.Or(p.EnergyKJ.Or(0) / kJPerKcal)
	if stated == 0 || !p.Fat.Known || !p.Carbohydrate.Known || !p.Protein.Known {
		return 0, stated, false
	}
	carbohydrate := p.Carbohydrate.Value
	if !p.AvailableCarbohydrate {
		carbohydrate -= p.Fibre.Or(0)
	}
	made := 9*p.Fat.Value + 4*(carbohydrate-p.Polyols.Or(0)) + 4*p.Protein.Value + 2*p.Fibre.Or(0) + 2.4*p.Polyols.Or(0)
	return made, stated, math.Abs(made-stated) > 0.2*max(made, stated)+5
}

// packFromYAML reads the mapping under pack.
func packFromYAML(m *yaml.Node) (*Pack, error) {
	p := &Pack{PerG: 100, AvailableCarbohydrate: true}
	lines, err := setting.Read(packFields, m, p)
	var at *FieldError
	if err = fault(err, "", flaw.New("is no figure of a pack")); errors.As(err, &at) {
		at.Field = strings.TrimSuffix(keyPack+": "+at.Field, ": ")
		return nil, at
	}
	if field, err := p.check(); err != nil {
		at := &FieldError{Line: m.Line, Field: field, Err: err}
		if _, key, _ := strings.Cut(field, ": "); lines[key] > 0 {
			at.Line = lines[key]
		}
		return nil, at
	}
	return p, nil
}
