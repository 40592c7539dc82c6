package ingredient

import (
	"errors"
	"fmt"
	"strings"

	"gopkg.in/yaml.v3"
)

// Pack is what the nutrition declaration of a bought ingredient says, in g
// (sodium mg, energy kcal) per PerG grams. A figure the pack does not give is
// unknown.
type Pack struct {
	PerG float64 // 100, or the grams of the serving that the figures are for

	EnergyKcal, Fat, Saturates, TransFat, CholesterolMG,
	Carbohydrate, Sugars, AddedSugars, Polyols, Fibre, Protein,
	Salt, SodiumMG Cell

	// AvailableCarbohydrate tells that Carbohydrate is without fibre, as in
	// the EU and the UK; a US pack's is with fibre.
	AvailableCarbohydrate bool
}

// packFields are the names in files. Salt is an EU figure and sodium a US one;
// a pack gives one of them.
var packFields = [...]struct {
	name string
	at   func(*Pack) *Cell
}{
	{"energy_kcal", func(p *Pack) *Cell { return &p.EnergyKcal }},
	{"fat", func(p *Pack) *Cell { return &p.Fat }},
	{"saturates", func(p *Pack) *Cell { return &p.Saturates }},
	{"trans_fat", func(p *Pack) *Cell { return &p.TransFat }},
	{"cholesterol_mg", func(p *Pack) *Cell { return &p.CholesterolMG }},
	{"carbohydrate", func(p *Pack) *Cell { return &p.Carbohydrate }},
	{"sugars", func(p *Pack) *Cell { return &p.Sugars }},
	{"added_sugars", func(p *Pack) *Cell { return &p.AddedSugars }},
	{"polyols", func(p *Pack) *Cell { return &p.Polyols }},
	{"fibre", func(p *Pack) *Cell { return &p.Fibre }},
	{"protein", func(p *Pack) *Cell { return &p.Protein }},
	{"salt", func(p *Pack) *Cell { return &p.Salt }},
	{"sodium_mg", func(p *Pack) *Cell { return &p.SodiumMG }},
}

// SaltPerSodium is g of salt per g of sodium, Regulation (EU) No 1169/2011,
// Annex I, item 11.
const SaltPerSodium = 2.5

// FromPack returns an ingredient with the figures of a pack, per 100 g. What
// the pack does not state stays unknown, but for three figures that Derived
// names: carbohydrate with fibre, sodium from salt, and water by difference.
// Ash stays unknown: the salt is some of it, and an ash of that size would
// bound calcium, iron and potassium, of which the pack says nothing.
func FromPack(id, name string, p Pack) (*Ingredient, error) {
	in := &Ingredient{Name: name, Source: OwnSource, Group: OwnSource, Own: true}
	if err := setID(in, id); err != nil {
		return nil, &FieldError{ID: id, Field: "id", Err: err}
	}
	if err := p.check(); err != nil {
		return nil, &FieldError{ID: id, Field: "pack", Err: err}
	}
	p.fill(in)
	return in.finish(0)
}

// check refuses a declaration that cannot be one.
func (p *Pack) check() error {
	if !(p.PerG >= 1 && p.PerG <= 1000) {
		return fmt.Errorf("the figures are per %s g, which is outside 1–1000", format(p.PerG))
	}
	for _, f := range packFields {
		c := Column(0)
		switch {
		case f.name == "energy_kcal":
			c = Energy
		case strings.HasSuffix(f.name, "_mg"):
			c = SodiumMG
		}
		if cell := *f.at(p); cell.Known && !(cell.Value >= 0 && cell.Value <= c.largest()*p.PerG/100*1.02) {
			return fmt.Errorf("%s %s per %s g is more than there can be", f.name, format(cell.Value), format(p.PerG))
		}
	}
	sum := 0.0
	for _, c := range [...]Cell{p.Fat, p.Carbohydrate, p.Protein} {
		sum += c.Or(0)
	}
	if sum > 1.02*p.PerG+1.5 { // each figure is rounded to 0.5 g or so
		return fmt.Errorf("fat, carbohydrate and protein sum to %s g in %s g", format(sum), format(p.PerG))
	}
	return nil
}

// fill sets the figures of in from a pack that check has passed.
func (p *Pack) fill(in *Ingredient) {
	k := 100 / p.PerG
	at := func(c Cell) Cell {
		if !c.Known {
			return c
		}
		return Known(min(c.Value*k, 1e5))
	}
	in.Cells[Energy] = at(p.EnergyKcal)
	in.Cells[Fat] = at(p.Fat)
	in.Cells[SaturatedFat] = at(p.Saturates)
	in.Cells[TransFat] = at(p.TransFat)
	in.Cells[CholesterolMG] = at(p.CholesterolMG)
	in.Cells[Carbohydrate] = at(p.Carbohydrate)
	in.Cells[TotalSugars] = at(p.Sugars)
	in.Cells[AddedSugars] = at(p.AddedSugars)
	in.Cells[Polyols] = at(p.Polyols)
	in.Cells[Fibre] = at(p.Fibre)
	in.Cells[Protein] = at(p.Protein)
	in.Cells[SodiumMG] = at(p.SodiumMG)

	how := []string{fmt.Sprintf("all: the pack's figures per %s g, rounded as a pack rounds", format(p.PerG))}
	if p.AvailableCarbohydrate && p.Carbohydrate.Known && p.Fibre.Known {
		in.Cells[Carbohydrate] = Known(in.Cells[Carbohydrate].Value + in.Cells[Fibre].Value)
		how = append(how, "carbohydrate: the pack's available carbohydrate + fibre")
	} else if p.AvailableCarbohydrate && p.Carbohydrate.Known {
		in.WithoutFibre = true
		how = append(how, "carbohydrate: the pack's, without the fibre, which it does not give")
	}
	salt := at(p.Salt)
	switch {
	case p.Salt.Known && !p.SodiumMG.Known:
		in.Cells[SodiumMG] = Known(salt.Value * 1000 / SaltPerSodium)
		how = append(how, "sodium_mg: salt / 2.5 (Regulation (EU) No 1169/2011, Annex I)")
	case p.SodiumMG.Known && !p.Salt.Known:
		salt = Known(in.Cells[SodiumMG].Value * SaltPerSodium / 1000)
	}
	if p.Fat.Known && p.Carbohydrate.Known && p.Protein.Known {
		rest := 100 - in.Cells[Fat].Value - in.Cells[Carbohydrate].Value - in.Cells[Protein].Value - salt.Or(0)
		in.Cells[Water] = Known(max(0, rest))
		how = append(how, "water: estimate by difference, 100 - fat - carbohydrate - protein - salt")
	}
	in.Derived = strings.Join(how, "; ")
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
				err = fmt.Errorf("%q is neither true nor false", s)
			}
		default:
			at := packCell(p, key.Value)
			switch {
			case at == nil:
				err = errors.New("is no figure of a pack")
			case err == nil && s != "":
				at.Value, err = parse(s, 1e5)
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
	if err := p.check(); err != nil {
		return nil, &FieldError{Line: m.Line, Field: "pack", Err: err}
	}
	return p, nil
}

func packCell(p *Pack, name string) *Cell {
	for _, f := range packFields {
		if f.name == name {
			return f.at(p)
		}
	}
	return nil
}
