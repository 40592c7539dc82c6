package card

import (
	"encoding/json"
	"encoding/xml"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/net/html"

	"ripplewright/internal/check/astray"
	"ripplewright/internal/check/market"
	"ripplewright/internal/food/label"
	"ripplewright/internal/work/design"
)

// Properties that schema.org has for these types, its own and those of the types above
// them; from memory, of those that a recipe may use.
var schema = map[string][]string{
	"Recipe": {"name", "description", "url", "image", "identifier", "author", "datePublished", "inLanguage", "keywords", "text", "version", "license",
		"cookTime", "cookingMethod", "nutrition", "recipeCategory", "recipeCuisine", "recipeIngredient", "recipeInstructions", "recipeYield", "suitableForDiet",
		"prepTime", "performTime", "totalTime", "estimatedCost", "step", "supply", "tool", "yield"},
	"HowToStep": {"name", "description", "url", "image", "text", "position", "itemListElement", "tool", "supply"},
	"NutritionInformation": {"servingSize", "calories", "carbohydrateContent", "cholesterolContent", "fatContent", "fiberContent", "proteinContent",
		"saturatedFatContent", "sodiumContent", "sugarContent", "transFatContent", "unsaturatedFatContent"},
}

// checkType fails for a property that the type of a JSON-LD object does not have.
func checkType(t *testing.T, of map[string]any) {
	t.Helper()
	kind, _ := of["@type"].(string)
	known, ok := schema[kind]
	require.True(t, ok, "type %q", kind)
	for key, value := range of {
		if strings.HasPrefix(key, "@") {
			continue
		}
		assert.Contains(t, known, key, kind)
		switch v := value.(type) {
		case map[string]any:
			checkType(t, v)
		case []any:
			for _, x := range v {
				if o, ok := x.(map[string]any); ok {
					checkType(t, o)
				}
			}
		}
	}
}

func phoneOf(t *testing.T, d design.Design, o Options) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "card.html")
	require.NoError(t, Write(path, d, evaluated(t, d), o))
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	return string(data)
}

// recipeIn reads the recipe out of a page as another program does.
func recipeIn(t *testing.T, page string) map[string]any {
	t.Helper()
	_, rest, ok := strings.Cut(page, `<script type="application/ld+json">`)
	require.True(t, ok)
	data, _, ok := strings.Cut(rest, "</script>")
	require.True(t, ok)
	var out map[string]any
	require.NoError(t, json.Unmarshal([]byte(data), &out))
	return out
}

func TestThePhonePageHasTheRecipeAsData(t *testing.T) {
	d := market.Hazelnut()
	for _, region := range []label.Region{label.US, label.EU} {
		got := recipeIn(t, phoneOf(t, d, Options{Region: region}))
		assert.Equal(t, "https://schema.org", got["@context"])
		assert.Equal(t, "Recipe", got["@type"])
		checkType(t, got)
		assert.Equal(t, d.Name, got["name"])
		assert.Len(t, got["recipeIngredient"], len(d.Dense.Lines)+len(d.Foam.Lines)+len(d.Foam.Syrup.Lines))
		steps := got["recipeInstructions"].([]any)
		assert.Greater(t, len(steps), 5)
		for i, s := range steps {
			step := s.(map[string]any)
			assert.EqualValues(t, i+1, step["position"])
			assert.NotEmpty(t, step["text"])
		}
		for _, key := range []string{"prepTime", "totalTime"} { // ISO 8601
			assert.Regexp(t, regexp.MustCompile(`^PT\d+H[0-5]?\dM$`), got[key])
		}
		facts := got["nutrition"].(map[string]any)
		assert.Regexp(t, `^\d+ calories$`, facts["calories"])
		assert.Regexp(t, `^\d+(\.\d+)?\s?g$`, facts["fatContent"])
		if region == label.EU {
			assert.Equal(t, "100 g", facts["servingSize"])
		} else {
			assert.NotContains(t, facts, "transFatContent", "the hazelnuts' is unknown: no figure is at least one")
		}
	}
}

// One page that needs nothing else: it loads nothing and runs nothing.
func TestThePhonePageNeedsNothingElse(t *testing.T) {
	page := phoneOf(t, market.Hazelnut(), Options{})
	for _, s := range []string{"src=", "href=", "@import", "url("} {
		assert.NotContains(t, page, s)
	}
	assert.Equal(t, 1, strings.Count(page, "<script"))
	assert.Equal(t, 1, strings.Count(page, "://"), "the one address is the standard's name")
	d := market.Hazelnut()
	lines := len(d.Dense.Lines) + len(d.Foam.Lines) + len(d.Foam.Syrup.Lines)
	assert.Equal(t, lines+len(recipeIn(t, page)["recipeInstructions"].([]any)), strings.Count(page, `type="checkbox"`), "a box for each weight and step")
	assert.GreaterOrEqual(t, strings.Count(page, `inputmode="decimal"`), 5, "a field for each reading")
	short := phoneOf(t, d, Options{Parts: Steps})
	assert.NotContains(t, short, "Cautions")
	assert.Len(t, recipeIn(t, short)["recipeIngredient"], lines, "the data is always whole")
}

// Texts that somebody else wrote stay texts: no element, attribute or data of theirs.
func TestTextsAreHarmlessOnThePhonePage(t *testing.T) {
	plain := elements(t, phoneOf(t, market.Hazelnut(), Options{}))
	for _, bad := range []string{`</script><script>alert(1)</script>`, `<img src=x onerror=alert(1)>`, `"><b>x`, `</title><h1>`, `{{.Name}}`, "\u202etxt.exe", "<!--", `]]>`, `&lt;b&gt;`} {
		d := market.Hazelnut()
		d.Name = "Hazelnut " + bad
		d.Notes = bad + "\n\nnote"
		d.Dense.Lines[0].Note = bad
		page := phoneOf(t, d, Options{})
		got := elements(t, page)
		for name := range got {
			assert.Contains(t, plain, name, bad)
		}
		for _, name := range []string{"script", "img", "h1", "title", "b"} {
			assert.Equal(t, plain[name], got[name], "%s: %s", name, bad)
		}
		assert.NotContains(t, page, "\u202e")
		want := strings.TrimSpace(strings.ReplaceAll("Hazelnut "+bad, "\u202e", ""))
		assert.Equal(t, want, recipeIn(t, page)["name"])
	}
}

// elements counts the elements of a page.
func elements(t *testing.T, page string) map[string]int {
	t.Helper()
	out := map[string]int{}
	read := xml.NewDecoder(strings.NewReader(strings.TrimPrefix(page, "<!DOCTYPE html>")))
	read.Strict, read.AutoClose, read.Entity = false, slices.Concat(xml.HTMLAutoClose), xml.HTMLEntity
	for {
		token, err := read.Token()
		if err == io.EOF {
			return out
		}
		require.NoError(t, err)
		if e, ok := token.(xml.StartElement); ok {
			out[e.Name.Local]++
			for _, a := range e.Attr {
				assert.False(t, strings.HasPrefix(a.Name.Local, "on"), "%s of %s", a.Name.Local, e.Name.Local)
			}
		}
	}
}

// The page is HTML that closes what it opens, in order, and each field and box on it
// has a name for who cannot see it (HTML Living Standard, 13.1.2; WCAG 2.1, 4.1.2).
func TestThePhonePageIsWellFormedAndItsFieldsAreNamed(t *testing.T) {
	void := map[string]bool{"meta": true, "input": true, "br": true}
	for name, d := range market.Demos(t) {
		for _, style := range astray.Systems {
			read := html.NewTokenizer(strings.NewReader(phoneOf(t, d, Options{Style: style})))
			var open []string
			for read.Next() != html.ErrorToken {
				token := read.Token()
				switch token.Type {
				case html.StartTagToken:
					if !void[token.Data] {
						open = append(open, token.Data)
					}
					if token.Data == "input" {
						named := slices.Contains(open, "label") || slices.ContainsFunc(token.Attr, func(a html.Attribute) bool { return a.Key == "aria-label" && a.Val != "" })
						assert.True(t, named, "%s: %v", name, token)
					}
				case html.EndTagToken:
					if assert.NotEmpty(t, open, "%s: %v", name, token) {
						assert.Equal(t, open[len(open)-1], token.Data, name)
						open = open[:len(open)-1]
					}
				}
			}
			assert.ErrorIs(t, read.Err(), io.EOF)
			assert.Empty(t, open, name)
		}
	}
}
