package design

import (
	"fmt"
	"math"
	"reflect"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/food/ingredient"
)

// tub is a design with something in every list. Invented for the tests.
func tub() Design {
	d := New()
	d.Name = "Saltmarsh toffee ripple"
	d.Dense.Lines = []Line{{Ingredient: "milk_whole", Grams: 520}, {Ingredient: "egg_yolk", Count: 6, CountOf: Yolks}}
	d.Foam.Lines = []Line{{Ingredient: "egg_white", Count: 5, CountOf: Whites, Note: "at room temperature"}}
	d.Foam.Syrup.Lines = []Line{{Ingredient: "sugar", Grams: 180}, {Ingredient: "water", Grams: 60}}
	d.Own = []*ingredient.Ingredient{{ID: "samphire_toffee", Name: "Samphire toffee", Own: true}}
	return d
}

func TestOrdinaryDesignsHaveNoProblems(t *testing.T) {
	assert.Empty(t, Validate(New()))
	assert.Empty(t, Validate(tub()))
}

func TestValidateNamesThePlace(t *testing.T) {
	for _, c := range []struct {
		path   string
		change func(*Design)
	}{
		{"name", func(d *Design) { d.Name = "  " }},
		{"notes", func(d *Design) { d.Notes = "\xff" }},
		{"serving.temperature_c", func(d *Design) { d.Serving.TemperatureC = -25 }},
		{"serving.temperature_c", func(d *Design) { d.Serving.TemperatureC = math.NaN() }},
		{"tubs.count", func(d *Design) { d.Tubs.Count = 0 }},
		{"tubs.volume_ml", func(d *Design) { d.Tubs.VolumeML = math.Inf(1) }},
		{"tubs.shape", func(d *Design) { d.Tubs.Shape = "bucket" }},
		{"blend.strokes", func(d *Design) { d.Blend.Strokes = 25 }},
		{"blend.stroke_depth_percent", func(d *Design) { d.Blend.DepthPercent = 9 }},
		{"blend.handle_mm", func(d *Design) { d.Blend.HandleMM = 41 }},
		{"blend.motion", func(d *Design) { d.Blend.Motion = "shake" }},
		{"blend.foam_colour", func(d *Design) { d.Blend.FoamColour = "#12345g" }},
		{"eggs.size", func(d *Design) { d.Eggs.Size = "XL" }},
		{"foam.syrup.weighed_g", func(d *Design) { d.Foam.Syrup.WeighedG = -1 }},
		{"dense.lines[0].grams", func(d *Design) { d.Dense.Lines[0].Grams = -1 }},
		{"dense.lines[0].grams", func(d *Design) { d.Dense.Lines[0].Grams = math.Inf(-1) }},
		{"dense.lines[0].ingredient", func(d *Design) { d.Dense.Lines[0].Ingredient = "" }},
		{"dense.lines[1].yolks", func(d *Design) { d.Dense.Lines[1].Count = math.NaN() }},
		{"dense.lines[1].ingredient", func(d *Design) { d.Dense.Lines[1].Ingredient = "milk_whole" }},
		{"dense.lines[1].grams", func(d *Design) { d.Dense.Lines[1].Grams = 3 }},
		{"foam.lines[0]", func(d *Design) { d.Foam.Lines[0].CountOf = "shells" }},
		{"foam.syrup.lines[1]", func(d *Design) { d.Foam.Syrup.Lines[1].Count = 2 }},
		{"ingredients[1].id", func(d *Design) { d.Own = append(d.Own, d.Own[0]) }},
		{"ingredients[0]", func(d *Design) { d.Own[0] = nil }},
	} {
		d := tub()
		c.change(&d)
		found := Validate(d)
		if assert.Len(t, found, 1, "%s: %v", c.path, found) {
			assert.Equal(t, c.path, found[0].Path)
			assert.Error(t, found[0].Err)
		}
	}
}

// leaves calls f with every settable value inside v that holds no others.
func leaves(v reflect.Value, name string, f func(name string, v reflect.Value)) {
	if v.Kind() == reflect.Array {
		for i := 0; i < v.Len(); i++ {
			leaves(v.Index(i), fmt.Sprintf("%s[%d]", name, i), f)
		}
		return
	}
	if v.Kind() != reflect.Struct {
		f(name, v)
		return
	}
	for i := 0; i < v.NumField(); i++ {
		leaves(v.Field(i), name+"."+v.Type().Field(i).Name, f)
	}
}

// alter changes v to something else, and slices in their last element.
func alter(t *testing.T, v reflect.Value) {
	switch v.Kind() {
	case reflect.String:
		v.SetString(v.String() + "x")
	case reflect.Int, reflect.Int64:
		v.SetInt(v.Int() + 1)
	case reflect.Float64:
		v.SetFloat(v.Float() + 1)
	case reflect.Bool:
		v.SetBool(!v.Bool())
	default:
		t.Fatalf("no test changes a %s", v.Type())
	}
}

func TestEqualSeesEveryField(t *testing.T) {
	d, count := tub(), 0
	leaves(reflect.ValueOf(&d).Elem(), "Design", func(name string, v reflect.Value) {
		count++
		changed := tub()
		// The same leaf of a fresh design, found by walking to the same place.
		n := 0
		leaves(reflect.ValueOf(&changed).Elem(), "Design", func(_ string, w reflect.Value) {
			if n++; n != count {
				return
			}
			if w.Kind() != reflect.Slice {
				alter(t, w)
				return
			}
			if w.Type() == reflect.TypeOf([]Line(nil)) {
				leaves(w.Index(w.Len()-1), name, func(inner string, x reflect.Value) {
					old := reflect.New(x.Type()).Elem()
					old.Set(x)
					alter(t, x)
					assert.False(t, changed.Equal(tub()), "Equal overlooks %s", inner)
					x.Set(old)
				})
			}
			w.Set(w.Slice(0, w.Len()-1))
		})
		assert.False(t, changed.Equal(tub()), "Equal overlooks %s", name)
	})
	assert.True(t, d.Equal(tub()))

	other := tub()
	other.Own[0].Name = "Sea lavender toffee"
	assert.False(t, other.Equal(tub()), "Equal overlooks what an own ingredient is")
}

func TestFieldsReachEverySetting(t *testing.T) {
	d := tub()
	reached := map[uintptr]string{}
	for _, f := range Fields() {
		p := reflect.ValueOf(f.At(&d)).Pointer()
		assert.Empty(t, reached[p], "%s and %s are the same value", reached[p], f.Path)
		reached[p] = f.Path
		assert.NotEmpty(t, f.About, f.Path)
		same, ok := FieldAt(f.Path)
		assert.True(t, ok)
		assert.Equal(t, f.Path, same.Path)
	}
	leaves(reflect.ValueOf(&d).Elem(), "Design", func(name string, v reflect.Value) {
		if v.Kind() != reflect.Slice {
			assert.NotEmpty(t, reached[v.Addr().Pointer()], "no field reaches %s", name)
		}
	})
	_, ok := FieldAt("serving.temperature")
	assert.False(t, ok)
}

func TestDefaultsLieInTheirRanges(t *testing.T) {
	d := New()
	for _, f := range Fields() {
		if v, ok := f.At(&d).(*float64); ok {
			assert.Less(t, f.Min, f.Max, f.Path)
			assert.GreaterOrEqual(t, *v, f.Min, f.Path)
			assert.LessOrEqual(t, *v, f.Max, f.Path)
		}
		assert.False(t, strings.HasSuffix(f.Path, "percent") && f.Unit != "%", f.Path)
	}
}

func TestWithMethodsShareNoMemory(t *testing.T) {
	for name, change := range map[string]func(Design) Design{
		"WithLines":       func(d Design) Design { return d.WithLines(DensePart, d.Dense.Lines) },
		"WithLine":        func(d Design) Design { return d.WithLine(DensePart, 0, Line{Ingredient: "cream_heavy", Grams: 1}) },
		"WithGrams":       func(d Design) Design { return d.WithGrams(DensePart, 1, 90) },
		"WithLineAdded":   func(d Design) Design { return d.WithLineAdded(DensePart, Line{Ingredient: "salt", Grams: 1}) },
		"WithLineRemoved": func(d Design) Design { return d.WithLineRemoved(DensePart, 1) },
		"WithLineMoved":   func(d Design) Design { return d.WithLineMoved(DensePart, 1, 0) },
	} {
		d := tub()
		d.Dense.Lines = append(make([]Line, 0, 16), d.Dense.Lines...) // spare room that an append could land in
		changed := change(d)
		for i := range changed.Dense.Lines {
			changed.Dense.Lines[i].Note = "scribbled"
		}
		spare := d.Dense.Lines[:cap(d.Dense.Lines)]
		assert.Equal(t, Line{}, spare[len(d.Dense.Lines)], "%s wrote behind the lines", name)
		assert.True(t, d.Equal(tub()), "%s changed the original", name)
	}
}

func TestLinesMoveAndCountsBecomeGrams(t *testing.T) {
	d := tub().WithLineMoved(SyrupPart, 0, 1)
	require.Len(t, d.Foam.Syrup.Lines, 2)
	assert.Equal(t, "water", d.Foam.Syrup.Lines[0].Ingredient)

	d = tub().WithGrams(DensePart, 1, 102)
	assert.Equal(t, Line{Ingredient: "egg_yolk", Grams: 102}, d.Dense.Lines[1])
	assert.Empty(t, Validate(d))
}
