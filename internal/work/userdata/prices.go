package userdata

import (
	"errors"
	"slices"

	"gopkg.in/yaml.v3"

	"ripplewright/internal/food/price"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/form/schemaline"
	"ripplewright/internal/form/setting"
	"ripplewright/internal/form/yamltext"
)

// whatPrices names the file in errors; keyPrices and keyCurrency are its keys.
const (
	whatPrices  = "prices"
	keyPrices   = "prices"
	keyCurrency = "currency"
)

// PricesPath returns where a maker's prices are kept: prices.yaml in
// ripplewright's part of the user's configuration folder.
func PricesPath() (string, error) { return Path("prices.yaml", whatPrices) }

// LoadPrices reads the file at path. A file that is not there knows no price.
// What is wrong inside one is a *price.FieldError or a *yamltext.Fault with
// its line; nothing is returned then, so that saving cannot lose a price.
func LoadPrices(path string) (price.Book, error) {
	data, err := Read(path, whatPrices)
	if err != nil {
		return price.Book{}, err
	}
	b, err := DecodePrices(data)
	if err != nil {
		return price.Book{}, flaw.New("prices in %s: %v", path, err)
	}
	return b, nil
}

// OwnPrices returns the maker's prices, none on a machine without a
// configuration folder. Errors are those of LoadPrices.
func OwnPrices() (price.Book, error) {
	path, err := PricesPath()
	if err != nil {
		return price.Book{}, nil
	}
	return LoadPrices(path)
}

// DecodePrices reads the text of the file: version, currency and a list under
// prices.
func DecodePrices(data []byte) (price.Book, error) {
	currency := ""
	nodes, err := yamltext.Listed(data, version, keyPrices, yamltext.Word{Key: keyCurrency, Value: &currency, Wrong: price.NotCurrency})
	if err != nil {
		return price.Book{}, err
	}
	var packs []price.Pack
	seen := map[string]bool{}
	for _, n := range nodes {
		p, err := decodePack(n)
		if err != nil {
			return price.Book{}, err
		}
		if seen[p.Ingredient] {
			return price.Book{}, &price.FieldError{Line: n.Line, Ingredient: p.Ingredient, Field: "ingredient", Err: flaw.New("has a price already")}
		}
		seen[p.Ingredient] = true
		packs = append(packs, p)
	}
	return price.NewBook(currency, packs), nil
}

func decodePack(n *yaml.Node) (price.Pack, error) {
	var p price.Pack
	lines, err := setting.Read(price.Fields(), n, &p)
	var tree *setting.TreeError
	if errors.As(err, &tree) {
		return price.Pack{}, &price.FieldError{Line: tree.Line, Ingredient: p.Ingredient, Field: tree.Path, Err: tree.Err}
	}
	fail := func(e *price.FieldError) (price.Pack, error) {
		if e.Line = lines[e.Field]; e.Line == 0 {
			e.Line = n.Line
		}
		return price.Pack{}, e
	}
	if lines["price"] == 0 && p.Ingredient != "" {
		return fail(&price.FieldError{Ingredient: p.Ingredient, Field: "price", Err: flaw.New("is missing")})
	}
	for _, f := range price.Fields() {
		if v, ok := f.At(&p).(*float64); ok && *v == 0 && lines[f.Path] > 0 && f.Path != "price" {
			return fail(&price.FieldError{Ingredient: p.Ingredient, Field: f.Path, Err: flaw.New("must be more than 0")})
		}
	}
	var wrong *price.FieldError
	if errors.As(p.Check(), &wrong) {
		return fail(wrong)
	}
	return p, nil
}

// EncodePrices returns the text that DecodePrices reads.
func EncodePrices(b price.Book) ([]byte, error) {
	packs := b.Packs()
	nodes := make([]*yaml.Node, len(packs))
	for i := range packs {
		nodes[i] = packNode(packs[i])
	}
	text, err := encode(struct {
		Version  int          `yaml:"version"`
		Currency string       `yaml:"currency,omitempty"`
		Prices   []*yaml.Node `yaml:"prices"`
	}{version, b.Currency, nodes})
	return append([]byte("# What a pack costs and holds. An ingredient left out has no price, which is not the same as free.\n"), text...), err
}

// packNode is a pack as the file has it: what it does not hold is left out.
func packNode(p price.Pack) *yaml.Node {
	all := setting.Node(price.Fields(), &p)
	n := &yaml.Node{Kind: yaml.MappingNode, Style: yaml.FlowStyle}
	for i := 0; i+1 < len(all.Content); i += 2 {
		if key := all.Content[i].Value; key == "price" || key == "ingredient" || all.Content[i+1].Value != "0" {
			n.Content = append(n.Content, all.Content[i], all.Content[i+1])
		}
	}
	return n
}

// Prices is a maker's price book, which lives in a file. It belongs to one
// goroutine. A file broken by hand is left alone, as a Shelf leaves its own.
type Prices struct {
	path string // "" where there is no configuration folder
	book price.Book
	err  error

	schemas schemaline.Schemas
}

// NameSchemas has the file name its JSON Schema for editors of text when it is next written.
func (p *Prices) NameSchemas(schemas schemaline.Schemas) { p.schemas = schemas }

// NewPrices returns the prices in the file at path, and reads them. Err tells
// of a file that cannot be read.
func NewPrices(path string) *Prices {
	p := &Prices{path: path}
	p.Read()
	return p
}

// Path is where the file is, or would be.
func (p *Prices) Path() string { return p.path }

// Err says why there are no prices, naming file, line and field; nil if nothing
// is wrong.
func (p *Prices) Err() error { return p.err }

// Book returns the prices as they are now.
func (p *Prices) Book() price.Book { return p.book }

// Read reads the file again, as after a change by hand.
func (p *Prices) Read() {
	if p.path != "" {
		p.book, p.err = LoadPrices(p.path)
	}
}

// Put keeps a pack, in place of the one of that ingredient if there is one.
// After an error, which names the field, file and book are as they were.
func (p *Prices) Put(pack price.Pack) error {
	if err := pack.Check(); err != nil {
		return err
	}
	return p.change(func(data []byte, was []price.Pack) ([]byte, []price.Pack, error) {
		at := slices.IndexFunc(was, func(o price.Pack) bool { return o.Ingredient == pack.Ingredient })
		text, err := Splice(data, keyPrices, at, packNode(pack))
		if at < 0 {
			return text, append(was, pack), err
		}
		was[at] = pack
		return text, was, err
	})
}

// Remove forgets the price of an ingredient, if there is one.
func (p *Prices) Remove(id string) error {
	return p.change(func(data []byte, was []price.Pack) ([]byte, []price.Pack, error) {
		at := slices.IndexFunc(was, func(o price.Pack) bool { return o.Ingredient == id })
		if at < 0 {
			return data, was, nil
		}
		text, err := Splice(data, keyPrices, at, nil)
		return text, slices.Delete(was, at, at+1), err
	})
}

// Rename has the price of the ingredient old follow it to the id now, if it has
// one and there is none under that id.
func (p *Prices) Rename(old, now string) error {
	pack, ok := p.book.Find(old)
	if _, taken := p.book.Find(now); !ok || taken || old == now {
		return nil
	}
	pack.Ingredient = now
	return p.change(func(data []byte, was []price.Pack) ([]byte, []price.Pack, error) {
		at := slices.IndexFunc(was, func(o price.Pack) bool { return o.Ingredient == old })
		if at < 0 {
			return data, was, nil
		}
		text, err := Splice(data, keyPrices, at, packNode(pack))
		was[at] = pack
		return text, was, err
	})
}

// SetCurrency keeps the currency of all prices.
func (p *Prices) SetCurrency(sign string) error {
	if err := price.NotCurrency(sign); err != nil {
		return &price.FieldError{Field: keyCurrency, Err: err}
	}
	return p.write(func(data []byte, was price.Book) ([]byte, price.Book, error) {
		now := price.NewBook(sign, was.Packs())
		var doc yaml.Node
		if err := yaml.Unmarshal(data, &doc); err != nil {
			return nil, now, err
		}
		n := under(&doc, keyCurrency)
		if n == nil {
			return nil, now, flaw.New("there is no currency")
		}
		n.SetString(sign)
		text, err := encode(&doc)
		return text, now, err
	})
}

func (p *Prices) change(f func(data []byte, was []price.Pack) ([]byte, []price.Pack, error)) error {
	return p.write(func(data []byte, was price.Book) ([]byte, price.Book, error) {
		text, packs, err := f(data, was.Packs())
		return text, price.NewBook(was.Currency, packs), err
	})
}

// write changes what the file holds now, which another hand may have written
// since. f returns the text with its change patched in and the book that this
// must hold; where no patch fits, the whole is written anew.
func (p *Prices) write(f func(data []byte, was price.Book) ([]byte, price.Book, error)) error {
	if p.path == "" {
		return flaw.New("prices: this system names no folder for settings")
	}
	data, err := Read(p.path, whatPrices)
	if err != nil {
		return err
	}
	was, err := DecodePrices(data)
	if err != nil {
		return flaw.New("prices in %s: %v", p.path, err)
	}
	text, want, err := f(data, was)
	if got, wrong := DecodePrices(text); err != nil || wrong != nil || !got.Equal(want) {
		if text, err = EncodePrices(want); err != nil {
			return err
		}
	}
	if err := Write(p.path, whatPrices, p.schemas.Head(text, schemaline.Prices)); err != nil {
		return err
	}
	p.book, p.err = want, nil
	return nil
}
