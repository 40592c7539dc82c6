package ingredient

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"gopkg.in/yaml.v3"

	"ripplewright/internal/form/echo"
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

// PackField is one figure of a pack.
type PackField struct {
	Name   string  // in files
	Unit   string  // g, mg, µg, kcal, kJ
	Column Column  // of the record that it becomes; NumColumns: none as it stands
	most   float64 // per 100 g
	at     func(*Pack) *Cell
}

// At returns the figure's place in p.
func (f PackField) At(p *Pack) *Cell { return f.at(p) }

// PackFields returns the figures of a pack in a label's order. Salt is an EU
// figure and sodium a US one; a pack gives one of them.
func PackFields() []PackField { return packFields }

var packFields = makePackFields()

func makePackFields() []PackField {
	of := func(c Column, name string, at func(*Pack) *Cell) PackField {
		return PackField{name, c.Unit(), c, c.largest(), at}
	}
	return []PackField{
		of(Energy, "energy_kcal", func(p *Pack) *Cell { return &p.EnergyKcal }),
		{"energy_kj", "kJ", NumColumns, Energy.largest() * kJPerKcal, func(p *Pack) *Cell { return &p.EnergyKJ }},
		of(Fat, "fat", func(p *Pack) *Cell { return &p.Fat }),
		of(SaturatedFat, "saturates", func(p *Pack) *Cell { return &p.Saturates }),
		of(TransFat, "trans_fat", func(p *Pack) *Cell { return &p.TransFat }),
		of(CholesterolMG, "cholesterol_mg", func(p *Pack) *Cell { return &p.CholesterolMG }),
		of(Carbohydrate, "carbohydrate", func(p *Pack) *Cell { return &p.Carbohydrate }),
		of(TotalSugars, "sugars", func(p *Pack) *Cell { return &p.Sugars }),
		of(AddedSugars, "added_sugars", func(p *Pack) *Cell { return &p.AddedSugars }),
		of(Sucrose, "sucrose", func(p *Pack) *Cell { return &p.Sucrose }),
		of(Glucose, "glucose", func(p *Pack) *Cell { return &p.Glucose }),
		of(Fructose, "fructose", func(p *Pack) *Cell { return &p.Fructose }),
		of(Lactose, "lactose", func(p *Pack) *Cell { return &p.Lactose }),
		of(Maltose, "maltose", func(p *Pack) *Cell { return &p.Maltose }),
		of(Polyols, "polyols", func(p *Pack) *Cell { return &p.Polyols }),
		of(Starch, "starch", func(p *Pack) *Cell { return &p.Starch }),
		of(Fibre, "fibre", func(p *Pack) *Cell { return &p.Fibre }),
		of(Protein, "protein", func(p *Pack) *Cell { return &p.Protein }),
		{"salt", "g", NumColumns, 100, func(p *Pack) *Cell { return &p.Salt }},
		of(SodiumMG, "sodium_mg", func(p *Pack) *Cell { return &p.SodiumMG }),
		of(VitaminDUG, "vitamin_d_ug", func(p *Pack) *Cell { return &p.VitaminDUG }),
		of(CalciumMG, "calcium_mg", func(p *Pack) *Cell { return &p.CalciumMG }),
		of(IronMG, "iron_mg", func(p *Pack) *Cell { return &p.IronMG }),
		of(PotassiumMG, "potassium_mg", func(p *Pack) *Cell { return &p.PotassiumMG }),
	}
}

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
	if err := setID(in, id); err != nil {
		return nil, &FieldError{ID: id, Field: "id", Err: err}
	}
	if field, err := p.check(); err != nil {
		return nil, &FieldError{ID: id, Field: field, Err: err}
	}
	p.fill(in)
	return in.finish(0)
}

// check refuses a declaration that cannot be one, and says which field of a
// file is at fault.
func (p *Pack) check() (field string, err error) {
	if !(p.PerG >= 1 && p.PerG <= 1000) {
		return "pack: per", fmt.Errorf("the figures are per %s g, which is outside 1–1000", format(p.PerG))
	}
	for _, f := range packFields {
		if cell := *f.at(p); cell.Known && !(cell.Value >= 0 && cell.Value <= f.most*p.PerG/100*1.02) {
			return "pack: " + f.Name, fmt.Errorf("%s %s in %s g is more than there can be", format(cell.Value), f.Unit, format(p.PerG))
		}
	}
	for _, x := range [...]struct {
		field, what string
		parts       []Cell
		whole       float64
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
			return x.field, fmt.Errorf("%s sum to %s g in %s g", x.what, format(sum), format(x.whole))
		}
	}
	return "", nil
}

// fill sets the figures of in from a pack that check has passed.
func (p *Pack) fill(in *Ingredient) {
	kept := *p
	in.Pack = &kept
	k := 100 / p.PerG
	for _, f := range packFields {
		if cell := *f.at(p); cell.Known && f.Column < NumColumns {
			in.Cells[f.Column] = Known(min(cell.Value*k, f.most))
		}
	}
	how := []string{fmt.Sprintf("all: the pack's figures per %s g, rounded as a pack rounds", format(p.PerG))}
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

// Doubt says that the pack's energy is not what its figures make, or "". The
// factors are those of Regulation (EU) No 1169/2011, Annex XIV; a fifth apart
// is more than rounding, and often a figure in the wrong field (common
// practice, no source).
func (p *Pack) Doubt() string {
	stated := p.EnergyKcal.Or(p.EnergyKJ.Or(0) / kJPerKcal)
	if stated == 0 || !p.Fat.Known || !p.Carbohydrate.Known || !p.Protein.Known {
		return ""
	}
	carbohydrate := p.Carbohydrate.Value
	if !p.AvailableCarbohydrate {
		carbohydrate -= p.Fibre.Or(0)
	}
	made := 9*p.Fat.Value + 4*(carbohydrate-p.Polyols.Or(0)) + 4*p.Protein.Value + 2*p.Fibre.Or(0) + 2.4*p.Polyols.Or(0)
	if math.Abs(made-stated) <= 0.2*max(made, stated)+5 {
		return ""
	}
	return fmt.Sprintf("fat, carbohydrate and protein make about %.0f kcal, the pack says %.0f: is a figure in the wrong field?", made, stated)
}

// packFromYAML reads the mapping under pack: per ("100 g" or "30 g"),
// carbohydrate_with_fibre (true on a US pack) and the figures.
func packFromYAML(m *yaml.Node) (*Pack, error) {
	if m.Kind != yaml.MappingNode {
		return nil, &FieldError{Line: m.Line, Field: "pack", Err: errors.New("is a mapping of names to figures")}
	}
	p := &Pack{PerG: 100, AvailableCarbohydrate: true}
	err := eachKey(m, func(key, value *yaml.Node) error {
		s, err := scalar(value)
		switch key.Value {
		case "per":
			if err == nil {
				p.PerG, err = parse(strings.TrimSpace(strings.TrimSuffix(s, "g")), 1000)
			}
		case "carbohydrate_with_fibre":
			switch {
			case err != nil:
			case s == "true" || s == "false":
				p.AvailableCarbohydrate = s == "false"
			default:
				err = fmt.Errorf("%s is neither true nor false", echo.Quoted(s))
			}
		default:
			at := packCell(p, key.Value)
			switch {
			case at == nil:
				err = errors.New("is no figure of a pack")
			case err == nil && s != "":
				at.Value, err = parse(s, 1e8)
				at.Known = true
			}
		}
		if err != nil {
			return &FieldError{value.Line, "", "pack: " + key.Value, err}
		}
		return nil
	})
	if err != nil {
		return nil, err
	}
	if field, err := p.check(); err != nil {
		return nil, &FieldError{Line: lineUnder(m, field), Field: field, Err: err}
	}
	return p, nil
}

// lineUnder returns the line of the key that field, "pack: KEY", names in m.
func lineUnder(m *yaml.Node, field string) int {
	_, key, _ := strings.Cut(field, ": ")
	for i := 0; i+1 < len(m.Content); i += 2 {
		if m.Content[i].Value == key {
			return m.Content[i].Line
		}
	}
	return m.Line
}

// toYAML returns the mapping that packFromYAML reads.
func (p *Pack) toYAML() *yaml.Node {
	m := &yaml.Node{Kind: yaml.MappingNode, Tag: "!!map"}
	add := func(key string, value *yaml.Node) {
		m.Content = append(m.Content, textNode(key), value)
	}
	add("per", textNode(format(p.PerG)+" g"))
	if !p.AvailableCarbohydrate {
		add("carbohydrate_with_fibre", &yaml.Node{Kind: yaml.ScalarNode, Tag: "!!bool", Value: "true"})
	}
	for _, f := range packFields {
		if cell := *f.at(p); cell.Known {
			add(f.Name, numberNode(format(cell.Value)))
		}
	}
	return m
}

func packCell(p *Pack, name string) *Cell {
	for _, f := range packFields {
		if f.Name == name {
			return f.at(p)
		}
	}
	return nil
}
