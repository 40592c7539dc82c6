package setting

// Schema returns the part of a JSON Schema (draft 2020-12) that describes the
// field, with its default in byDefault; nil: it has none.
func (f Field[T]) Schema(byDefault *T) map[string]any {
	o := map[string]any{"description": f.About}
	if f.Unit != "" {
		o["description"] = f.About + ", " + f.Unit
	}
	switch f.Kind() {
	case KindNumber:
		f.bounds(o, "number")
	case KindWhole:
		if _, any := f.Of(new(T)).(*int64); any {
			o["type"] = "integer"
			break
		}
		f.bounds(o, "integer")
	case KindFlag:
		o["enum"] = []any{true, false, 1, 0}
	case KindList:
		o["type"], o["items"] = []string{"array", "string", "null"}, map[string]any{"type": "string"}
	case KindText:
		f.words(o)
	}
	if byDefault != nil {
		o["default"] = f.plain(byDefault)
	}
	return o
}

func (f Field[T]) bounds(o map[string]any, kind string) {
	types := []string{kind}
	if f.WithUnit {
		types = append(types, "string")
	}
	if _, maybe := f.Of(new(T)).(Maybe); maybe {
		types = append(types, "null")
	}
	o["type"] = oneOrMore(types)
	o["maximum"] = f.Max
	if f.Over {
		o["exclusiveMinimum"] = f.Min
	} else {
		o["minimum"] = f.Min
	}
}

func (f Field[T]) words(o map[string]any) {
	types := []string{"string"}
	if f.Optional {
		types = append(types, "null")
	}
	o["type"] = oneOrMore(types)
	if f.Pattern != "" {
		o["pattern"] = f.Pattern
	}
	if f.Longest > 0 {
		o["maxLength"] = f.Longest
	}
	if f.Choices != nil {
		words := make([]any, 0, len(f.Choices)+2)
		for _, w := range f.Choices {
			words = append(words, w)
		}
		if f.Optional {
			words = append(words, "", nil)
		}
		o["enum"] = words
	}
}

func oneOrMore(types []string) any {
	if len(types) == 1 {
		return types[0]
	}
	return types
}

// plain returns the field's value in v as JSON has it.
func (f Field[T]) plain(v *T) any {
	switch x := f.Of(v).(type) {
	case *float64:
		return *x
	case *int:
		return *x
	case *int64:
		return *x
	case *bool:
		return *x
	case Switch:
		return x.On()
	case Maybe:
		if number, known := x.Get(); known {
			return number
		}
		return nil
	case *[]string:
		return *x
	}
	return f.Text(v)
}
