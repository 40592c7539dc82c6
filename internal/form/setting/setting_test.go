package setting_test

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gopkg.in/yaml.v3"

	"ripplewright/internal/form/flaw"
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
		"name: a\nname: b":  {Line: 2, Path: "name", Err: flaw.New("is given twice")},
		"air: {heat: 3}":    {Line: 1, Path: "air.heat", Err: flaw.New("is no setting"), Unknown: true},
		"air: 3":            {Line: 1, Path: "air", Err: flaw.New("must be keys and values")},
		"air: {air_c: hot}": {Line: 1, Path: "air.air_c", Err: flaw.New("%s is not a number", `"hot"`)},
		"rack: [low]":       {Line: 1, Path: "rack", Err: flaw.New("must be a single value")},
	} {
		var doc yaml.Node
		require.NoError(t, yaml.Unmarshal([]byte(text), &doc))
		_, err := setting.Read(fields, doc.Content[0], &oven{})
		var got *setting.TreeError
		require.True(t, errors.As(err, &got), text)
		assert.Equal(t, want, *got, text)
	}
	assert.EqualError(t, fields[1].Check(&oven{AirC: 301}), "301 °C is outside 0 to 300 °C")
	assert.EqualError(t, fields[1].Check(&oven{AirC: math.NaN()}), "must be a finite number")
	assert.EqualError(t, fields[2].Check(&oven{Rack: "mid"}), `"mid" is not one of low, high`)
}

type unsure struct {
	n     float64
	known bool
}

func (u *unsure) Get() (float64, bool)      { return u.n, u.known }
func (u *unsure) Put(n float64, known bool) { *u = unsure{n, known} }

type colour int

func (c *colour) Word() string        { return [...]string{"", "red", "blue"}[*c] }
func (c *colour) PutWord(word string) { *c = map[string]colour{"red": 1, "blue": 2}[word] }

type shut bool

func (s *shut) On() bool     { return !bool(*s) }
func (s *shut) Turn(on bool) { *s = shut(!on) }

type jar struct {
	Fat    unsure
	PerG   float64
	Count  int
	Seed   int64
	Hot    bool
	Closed shut
	Words  []string
	Lid    colour
	Label  string
}

var jarFields = []setting.Field[jar]{
	{Path: "fat", Unit: "g", Max: 100, Optional: true, Of: func(j *jar) any { return &j.Fat }},
	{Path: "per", Unit: "g", Min: 1, Max: 1000, WithUnit: true, Of: func(j *jar) any { return &j.PerG }},
	{Path: "count", Min: 1, Max: 9, Of: func(j *jar) any { return &j.Count }},
	{Path: "seed", Of: func(j *jar) any { return &j.Seed }},
	{Path: "hot", Optional: true, Of: func(j *jar) any { return &j.Hot }},
	{Path: "open", Optional: true, Of: func(j *jar) any { return &j.Closed }},
	{Path: "words", Optional: true, Of: func(j *jar) any { return &j.Words }},
	{Path: "lid", Choices: []string{"red", "blue"}, Optional: true, Of: func(j *jar) any { return &j.Lid }},
	{Path: "label", Longest: 5, Optional: true, Of: func(j *jar) any { return &j.Label }},
	{Path: "weight", Unit: "g", Max: 9, Over: true, Optional: true, Of: func(j *jar) any { return &unsure{0, true} }},
}

func readJar(text string) (jar, error) {
	var doc yaml.Node
	if err := yaml.Unmarshal([]byte(text), &doc); err != nil {
		return jar{}, err
	}
	var j jar
	_, err := setting.Read(jarFields, doc.Content[0], &j)
	return j, err
}

func TestEveryKindOfValueIsReadAndWritten(t *testing.T) {
	full := jar{unsure{3.5, true}, 30, 4, -7, true, false, []string{"a b", "c"}, 2, "plum"}
	for _, j := range []jar{full, {PerG: 100, Count: 1, Closed: true}} {
		text, err := yaml.Marshal(setting.Node(jarFields[:9], &j))
		require.NoError(t, err)
		back, err := readJar(string(text))
		require.NoError(t, err, "%s", text)
		if !j.Closed.On() {
			back.Closed = true // what is left out is as it was, here open
		}
		assert.Equal(t, j, back, "%s", text)
	}
	text, err := yaml.Marshal(setting.Node(jarFields[:9], &full))
	require.NoError(t, err)
	assert.Equal(t, "fat: 3.5\nper: 30 g\ncount: 4\nseed: -7\nhot: true\nopen: true\nwords: [a b, c]\nlid: blue\nlabel: plum\n", string(text))

	j, err := readJar("fat: ~\nhot: 1\nper: 12\nwords: a b; c\nlid: ~")
	require.NoError(t, err)
	assert.Equal(t, jar{PerG: 12, Hot: true, Words: []string{"a b", "c"}}, j)
	j, err = readJar("fat: &x 3\nper: *x")
	require.NoError(t, err)
	assert.Equal(t, 3., j.PerG)
}

func TestWhatNoFieldTakesIsRefused(t *testing.T) {
	for text, want := range map[string]string{
		"fat: .nan": `fat: ".nan" is not a number`, "per: 30 ml": `per: "30 ml" is not a number`, "count: 2.5": `count: "2.5" is not a whole number`,
		"hot: perhaps": `hot: "perhaps" is neither true nor false`, "lid: green": `lid: "green" is not one of red, blue`,
		"words: [a;b]": "words: a list of words is expected here", "? [a]\n: b": ": a name is expected here", "seed: ~": `seed: "~" is not a whole number`,
	} {
		_, err := readJar(text)
		assert.EqualError(t, err, want)
	}
	check := func(path string, j jar) string {
		f, ok := setting.Find(jarFields, path)
		require.True(t, ok)
		return flaw.Text(f.Check(&j))
	}
	assert.Equal(t, "101 g is outside 0 to 100 g", check("fat", jar{Fat: unsure{101, true}}))
	assert.Empty(t, check("fat", jar{Fat: unsure{101, false}}), "what is unknown is not out of range")
	assert.Equal(t, "0 is outside 1 to 9", check("count", jar{}))
	assert.Equal(t, "is 0; leave it out where there is none", check("weight", jar{}))
	assert.Equal(t, "6 letters are more than the 5 that it may have", check("label", jar{Label: "größer"}))
	assert.Empty(t, check("label", jar{Label: "größe"}))
}

func TestAFieldSaysWhatItTakes(t *testing.T) {
	allowed := func(path string) string {
		f, _ := setting.Find(jarFields, path)
		return f.Allowed().String()
	}
	assert.Equal(t, "0 to 100 g", allowed("fat"))
	assert.Equal(t, "whole number from 1 to 9", allowed("count"))
	assert.Equal(t, "any whole number", allowed("seed"))
	assert.Equal(t, "true or false", allowed("open"))
	assert.Equal(t, "red | blue", allowed("lid"))
}
