package setting_test

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gopkg.in/yaml.v3"

	"ripplewright/internal/form/setting"
)

type oven struct {
	Name string
	AirC float64
	Rack string
}

var fields = []setting.Field[oven]{
	{Path: "name", About: "what it is called", Of: func(o *oven) any { return &o.Name }},
	{Path: "air.air_c", About: "its air", Unit: "°C", Min: 0, Max: 300, Of: func(o *oven) any { return &o.AirC }},
	{Path: "rack", Choices: []string{"low", "high"}, Of: func(o *oven) any { return &o.Rack }},
}

func TestATableChecksReadsAndWrites(t *testing.T) {
	o := oven{"Quay", 180, "low"}
	for _, f := range fields {
		assert.Empty(t, f.Check(&o), f.Path)
	}
	data, err := yaml.Marshal(setting.Node(fields, &o))
	require.NoError(t, err)
	var doc yaml.Node
	require.NoError(t, yaml.Unmarshal(data, &doc))
	var back oven
	lines, err := setting.Read(fields, doc.Content[0], &back)
	require.NoError(t, err)
	assert.Equal(t, o, back)
	assert.Equal(t, 3, lines["air.air_c"])
}

func TestWhatIsWrongIsSaidWithItsPlace(t *testing.T) {
	for text, want := range map[string]setting.TreeError{
		"name: a\nname: b":  {2, "name", "is given twice"},
		"air: {heat: 3}":    {1, "air.heat", "is no setting"},
		"air: 3":            {1, "air", "must be keys and values"},
		"air: {air_c: hot}": {1, "air.air_c", `"hot" is not a number`},
		"rack: [low]":       {1, "rack", "must be a single value"},
	} {
		var doc yaml.Node
		require.NoError(t, yaml.Unmarshal([]byte(text), &doc))
		_, err := setting.Read(fields, doc.Content[0], &oven{})
		var got *setting.TreeError
		require.True(t, errors.As(err, &got), text)
		assert.Equal(t, want, *got, text)
	}
	assert.Equal(t, "301 °C is outside 0 to 300 °C", fields[1].Check(&oven{AirC: 301}))
	assert.Equal(t, "must be a finite number", fields[1].Check(&oven{AirC: math.NaN()}))
	assert.Equal(t, `"mid" is not one of low, high`, fields[2].Check(&oven{Rack: "mid"}))
}
