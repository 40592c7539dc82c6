package price

import (
	"strings"
	"unicode/utf8"

	"ripplewright/internal/form/echo"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/form/setting"
)

// The limits are there to catch slips of the finger.
const (
	Most        = 1e6 // of a price
	mostHolds   = 1e6 // g, mL or pieces in a pack
	MaxCurrency = 8   // characters
)

// Fields returns what a file and an editor say of a pack. Its At gives a
// *float64 or *string. The caller must not change it.
func Fields() []setting.Field[Pack] { return fields }

// The paths of the fields that say what a pack holds.
const (
	PackG  = "pack_g"
	PackML = "pack_ml"
	Pieces = "pieces"
	PieceG = "piece_g" // of one of them
)

var fields = []setting.Field[Pack]{
	{Path: "ingredient", About: "its id", Wrong: notID, Of: func(p *Pack) any { return &p.Ingredient }},
	{Path: "price", About: "what a pack costs", Max: Most, Of: func(p *Pack) any { return &p.Price }},
	{Path: PackG, About: "what it holds, by weight", Unit: "g", Max: mostHolds, Of: func(p *Pack) any { return &p.Grams }},
	{Path: PackML, About: "or by volume", Unit: "mL", Max: mostHolds, Of: func(p *Pack) any { return &p.ML }},
	{Path: Pieces, About: "or by the piece, as eggs", Max: mostHolds, Of: func(p *Pack) any { return &p.Pieces }},
	{Path: PieceG, About: "one piece as it goes into the bowl; eggs have their size", Unit: "g", Max: mostHolds, Of: func(p *Pack) any { return &p.PieceG }},
	{Path: "note", About: "where it is bought, or anything to remember", Wrong: notText, Of: func(p *Pack) any { return &p.Note }},
}

// FieldError says what is wrong with a pack.
type FieldError struct {
	Line       int    // in the file, from 1; 0: not from a file
	Ingredient string // its id, "" if it is not known
	Field      string // as in a file
	Err        error
}

// Words are the place and what is wrong there.
func (e *FieldError) Words() error {
	err := flaw.At(echo.Plain(e.Field), e.Err)
	if e.Ingredient != "" {
		err = flaw.New("price of %s: %v", echo.Quoted(e.Ingredient), err)
	}
	return flaw.InLine(e.Line, err)
}

func (e *FieldError) Error() string { return e.Words().Error() }

func (e *FieldError) Unwrap() error { return e.Err }

// Check returns the first thing wrong with p, a *FieldError, or nil.
func (p Pack) Check() error {
	wrong := func(field string, err error) error {
		return &FieldError{Ingredient: p.Ingredient, Field: field, Err: err}
	}
	for _, f := range fields {
		if err := f.Check(&p); err != nil {
			return wrong(f.Path, err)
		}
	}
	holds := 0
	for _, v := range [...]float64{p.Grams, p.ML, p.Pieces} {
		if v > 0 {
			holds++
		}
	}
	switch {
	case holds == 0:
		return wrong("", flaw.New("say what the pack holds: %s, %s or %s", PackG, PackML, Pieces))
	case holds > 1:
		return wrong("", flaw.New("say what the pack holds: %s, %s or %s, only one of them", PackG, PackML, Pieces))
	case p.PieceG > 0 && p.Pieces == 0:
		return wrong(PieceG, flaw.New("is of a pack that is counted in %s", Pieces))
	case p.Pieces > 0 && p.PieceG == 0 && p.Ingredient != Eggs:
		return wrong(PieceG, flaw.New("is needed: what one piece brings into the bowl"))
	}
	return nil
}

// NotCurrency says what is wrong with the sign of a currency, nil for nothing.
func NotCurrency(s string) error {
	switch n := utf8.RuneCountInString(s); {
	case n > MaxCurrency:
		return flaw.New("%d characters are more than the %d that a currency may have", n, MaxCurrency)
	case strings.ContainsFunc(s, func(r rune) bool { return r < ' ' || r == 0x7f }):
		return flaw.New("must be plain characters")
	}
	return notText(s)
}

func notID(s string) error {
	if strings.TrimSpace(s) == "" {
		return flaw.New("must not be empty")
	}
	return notText(s)
}

func notText(s string) error {
	if !utf8.ValidString(s) {
		return flaw.New("must be UTF-8 text")
	}
	return nil
}
