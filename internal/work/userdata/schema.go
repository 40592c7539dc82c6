package userdata

import (
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/price"
	"ripplewright/internal/form/setting"
	"ripplewright/internal/form/yamltext"
)

// IngredientsSchema returns the JSON Schema (draft 2020-12) of the file of own
// ingredients, made from the table that reads it.
func IngredientsSchema() []byte {
	return setting.Document("Ripplewright own ingredients, version 1",
		setting.Listed(version, keyIngredients, yamltext.MaxListed, ingredient.Schema(), nil))
}

// PricesSchema returns the JSON Schema (draft 2020-12) of the file of prices, made from
// the table that reads it: a pack holds grams, millilitres or pieces, of which all but
// eggs have a weight.
func PricesSchema() []byte {
	pack := setting.Object(price.Fields(), nil)
	pack["required"] = []string{"ingredient", "price"}
	for _, f := range price.Fields() {
		if f.Kind() == setting.KindNumber && f.Path != "price" {
			part := setting.Part(pack, f.Path)
			delete(part, "minimum")
			part["exclusiveMinimum"] = 0
		}
	}
	holds := []any{}
	for _, path := range [...]string{price.PackG, price.PackML, price.Pieces} {
		holds = append(holds, map[string]any{"required": []string{path}})
	}
	pack["oneOf"] = holds
	pack["dependentRequired"] = map[string]any{price.PieceG: []string{price.Pieces}}
	eggs := map[string]any{"properties": map[string]any{"ingredient": map[string]any{"const": price.Eggs}}}
	pack["if"] = map[string]any{"required": []string{price.Pieces}, "not": eggs}
	pack["then"] = map[string]any{"required": []string{price.PieceG}}
	return setting.Document("Ripplewright prices, version 1",
		setting.Listed(version, keyPrices, yamltext.MaxListed, pack, map[string]any{
			keyCurrency: map[string]any{"type": []string{"string", "number"}, "maxLength": price.MaxCurrency, "description": "the sign of your money"}}))
}
