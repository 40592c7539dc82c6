package designfile

import (
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/form/setting"
	"ripplewright/internal/work/design"
)

// object is a part of a JSON Schema.
type object = map[string]any

// Schema returns the JSON Schema (draft 2020-12) of the design file, made from
// the same table that reads and checks it, so that an editor can complete and
// check a design. What ties two values together (an egg size to its system, a
// line to the library) is beyond it.
func Schema() []byte {
	return setting.Document("Ripplewright design, version 1", schemaOf(root))
}

// schemaOf describes the section s.
func schemaOf(s *key) object {
	properties, required := object{}, []string{}
	for _, k := range s.keys {
		switch k.kind {
		case version:
			properties[k.name] = object{"const": Version, "description": "version of this format"}
		case section:
			properties[k.name] = schemaOf(k)
		case lines:
			properties[k.name] = object{"type": "array", "maxItems": design.MaxLines, "items": lineSchema()}
		case own:
			properties[k.name] = object{"type": "array", "maxItems": design.MaxOwn, "items": ingredient.Schema()}
		case oneSetting:
			defaults := design.Default()
			properties[k.name] = k.field.Schema(&defaults)
		}
		if k.required {
			required = append(required, k.name)
		}
	}
	o := object{"type": "object", "properties": properties, "additionalProperties": false}
	if len(required) > 0 {
		o["required"] = required
	}
	return o
}

// lineSchema describes a line of a phase in its two forms.
func lineSchema() object {
	number := func(most float64) object { return object{"type": "number", "minimum": 0, "maximum": most} }
	common := func(p object) object {
		p[keyNote] = object{"type": "string"}
		p[keyPrice] = number(design.MaxPrice)
		return p
	}
	forms := []object{{"type": "object", "required": []string{keyIngredient, keyGrams}, "additionalProperties": false,
		"properties": common(object{keyIngredient: object{"type": "string", "minLength": 1}, keyGrams: number(design.MaxGrams)})}}
	for _, part := range [...]design.EggPart{design.WholeEggs, design.Yolks, design.Whites} {
		forms = append(forms, object{"type": "object", "required": []string{string(part)}, "additionalProperties": false,
			"properties": common(object{string(part): number(design.MaxCount)})})
	}
	return object{"oneOf": forms}
}
