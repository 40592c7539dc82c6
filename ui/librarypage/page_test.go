package librarypage

import (
	"image/png"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/assets"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/desk/larder"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/price"
	"ripplewright/internal/show/tongue"
	"ripplewright/internal/work/design"
	"ripplewright/internal/work/userdata"
	"ripplewright/ui/kit"
	"ripplewright/ui/page/pagetest"
	"ripplewright/ui/theme"
)

// shelfHost is a program that carries own ingredients in its design and does
// at once what is posted.
type shelfHost struct{ *pagetest.Host }

func (h *shelfHost) Commit(d design.Design, step string) {
	h.Host.Commit(d.WithOwn(h.With.Library(), h.Now), step)
}
func (h *shelfHost) Post(f func()) { f() }

func sources(t *testing.T) string {
	text, err := assets.Library.ReadFile("library/SOURCES.md")
	require.NoError(t, err)
	return string(text)
}

// library returns the page over the maker's file of that text, "" for none.
func library(t *testing.T, file string) (*Page, *shelfHost, string) {
	path := filepath.Join(t.TempDir(), "ingredients.yaml")
	if file != "" {
		require.NoError(t, os.WriteFile(path, []byte(file), 0o644))
	}
	h := &shelfHost{pagetest.NewHost(t, design.New())}
	shelf := userdata.NewShelf(h.With.Library(), path)
	h.With = model.New(shelf.Library())
	prices := userdata.NewPrices(filepath.Join(t.TempDir(), "prices.yaml"))
	p := New(h, Setup{Shelf: shelf, Prices: prices, Price: func(in *ingredient.Ingredient) { h.Said = "price of " + in.ID }, Sources: sources(t), ShowSources: func() { h.Said = "sources" },
		Use: func(l *ingredient.Library) { h.With = model.New(l).Priced(prices.Book()) }})
	h.Win.SetContent(p.Object())
	h.Win.Resize(fyne.NewSize(1280, 720))
	p.Show()
	return p, h, path
}

// figPack is invented: a paste that the stall Saltmarsh Quay buys in.
const figPack = `version: 1
ingredients:
  - id: fig_paste
    name: Fig paste
    pack: {per: 100 g, energy_kj: 1050, energy_kcal: 250, fat: 0.5, saturates: 0.1, carbohydrate: 55, sugars: 50, fibre: 7, protein: 2, salt: 0}
    allergens_eu: [sulphites]
`

// typed fills the field of that key.
func (e *editor) typed(t *testing.T, key, text string) {
	t.Helper()
	for x, f := range e.fields {
		if x.Key == key {
			f.entry.SetText(text)
			return
		}
	}
	t.Fatalf("no field %q", key)
}

func (e *editor) stands(key string) string {
	for x, f := range e.fields {
		if x.Key == key {
			return f.entry.Text
		}
	}
	return "no field " + key
}

func (p *Page) editing(t *testing.T, f *larder.Form) *editor {
	e := p.edit(f)
	require.Same(t, e.object, p.object.Objects[0])
	return e
}

// In German the German name finds, with its umlauts or without and despite a slip, and so
// does the record's own name.
func TestTypingFindsGermanNamesWhereGermanIsSpoken(t *testing.T) {
	require.True(t, tongue.Speak("de"))
	t.Cleanup(func() { tongue.Speak(tongue.English) })
	p, _, _ := library(t, "")
	for typed, want := range map[string]string{"Vollmilch": "milk_whole", "Eigelb": "egg_yolk", "Haselnüsse": "hazelnut", "haselnusse": "hazelnut", "Honnig": "honey", "Zucker": "sugar",
		"egg yolk": "egg_yolk", "glucose_syrup_de42": "glucose_syrup_de42"} {
		p.finder.Reset()
		test.Type(p.finder.Focusable(), typed)
		found := p.finder.Found()
		require.NotEmpty(t, found, typed)
		assert.Contains(t, found[0].ID, want, typed)
		assert.Equal(t, found[0].ID, p.chosen)
	}
	p.finder.Reset()
	test.Type(p.finder.Focusable(), "qqqqqqqq")
	assert.Empty(t, p.finder.Found())
	assert.Contains(t, pagetest.Texts(p.finder), "Nichts mit diesem Namen")
	p.finder.Reset()
	p.group.SetSelected("Ei")
	assert.Len(t, p.finder.Found(), 12)
}

func TestTypingFindsByNameByIDAndDespiteSlips(t *testing.T) {
	p, _, _ := library(t, "")
	for typed, want := range map[string]string{"glucose_syrup_de42": "glucose_syrup_de42", "hazlenut": "hazelnut", "crème fraiche": "creme_fraiche", "egg yolk": "egg_yolk"} {
		p.finder.Reset()
		test.Type(p.finder.Focusable(), typed)
		found := p.finder.Found()
		require.NotEmpty(t, found, typed)
		assert.Contains(t, found[0].ID, want, typed)
		assert.Equal(t, found[0].ID, p.chosen)
	}
	p.finder.Reset()
	p.group.SetSelected("Egg")
	require.Len(t, p.finder.Found(), 12)
}

func TestWhatIsKnownOfAnIngredientIsTold(t *testing.T) {
	p, _, _ := library(t, "")
	p.choose("glucose_syrup_de42")
	assert.Contains(t, pagetest.Texts(p.detail), "Its longer sugars weigh 774 g/mol")
	p.choose("milk_whole")
	assert.Contains(t, pagetest.Texts(p.detail), "protein 4.27, fat 8.79, carbohydrate 3.87 kcal/g; protein is nitrogen × 6.38")
	assert.Contains(t, pagetest.Texts(p.detail), "count it as milk, cream or their solids")
}

func TestAnIngredientGoesIntoEachPhaseAsOneStep(t *testing.T) {
	p, h, _ := library(t, "")
	p.choose("honey")
	for name, part := range map[string]design.Part{"Custard": design.DensePart, "Foam": design.FoamPart, "Syrup": design.SyrupPart} {
		test.Tap(pagetest.Button(t, p.detail, name))
		assert.Equal(t, []design.Line{{Ingredient: "honey", Grams: 50}}, h.Now.Lines(part))
	}
	assert.Equal(t, []string{"addition of honey", "addition of honey", "addition of honey"}, h.Steps)
	p.choose("vanilla_extract")
	assert.Contains(t, pagetest.Texts(p.detail), "Add 5 g to")
}

func TestAPackBecomesAnIngredientThatTheProgramKnowsAtOnce(t *testing.T) {
	p, h, path := library(t, "")
	test.Type(p.finder.Focusable(), "yolk")
	test.Tap(pagetest.Button(t, p.object, "New from a pack…"))
	e := p.editing(t, larder.FromPack())
	e.name.SetText("Crème of figs (mill)")
	assert.Equal(t, "creme_of_figs_mill", e.id.Text, "the id follows the name")
	for key, v := range map[string]string{"energy_kj": "1050", "fat": "0,5", "saturates": "0.1", "carbohydrate": "55", "sugars": "50", "protein": "2", "salt": "0"} {
		e.typed(t, key, v)
	}
	assert.Contains(t, e.summary.Text, "1 of them estimated")
	e.ticks[slices.IndexFunc(e.ticks, func(c *kit.Check) bool { return c.Text == "Hazelnut" })].SetChecked(true)
	test.Tap(pagetest.Button(t, p.object, "Save"))

	require.Same(t, p.browse, p.object.Objects[0])
	found, _ := p.finder.Selected()
	assert.Equal(t, "creme_of_figs_mill", found.ID, "the old search does not hide it")
	assert.Equal(t, "creme_of_figs_mill", p.chosen)
	kept, ok := h.With.Library().Find("creme_of_figs_mill")
	require.True(t, ok, "no restart needed")
	assert.Equal(t, []string{"tree_nut:hazelnut"}, kept.AllergensUS)
	assert.Equal(t, []string{"nuts:hazelnut"}, kept.AllergensEU)
	assert.Contains(t, h.Said, path)
	test.Tap(pagetest.Button(t, p.detail, "Custard"))
	require.Len(t, h.Now.Own, 1, "the design carries it")
}

func TestWhatCannotBeKeptIsSaidAtItsFieldAndLosesNothing(t *testing.T) {
	p, _, path := library(t, figPack)
	before, err := os.ReadFile(path)
	require.NoError(t, err)
	e := p.editing(t, larder.FromPack())
	e.name.SetText("Fig paste")
	assert.Equal(t, "fig_paste_2", e.id.Text)
	for _, c := range []struct{ key, text, want string }{
		{"fat", "much", `Fat: "much" is not a number.`},
		{"fat", "-1", "Fat: −1 g is outside 0 to 100 g."},
		{"fat", "160", "Fat: 160 g in 100 g is more than there can be."},
		{"density", "0", "Density: is 0; leave it out where there is none."},
		{"per", "", "Figures are per: 0 g is outside 1 to 1000 g."},
	} {
		old := map[string]string{"fat": "3", "density": "", "per": "100"}[c.key]
		e.typed(t, c.key, c.text)
		e.save()
		assert.Equal(t, c.want, e.problem.Text)
		assert.True(t, e.problem.Visible())
		assert.Same(t, e.object, p.object.Objects[0], "the form stays open")
		e.typed(t, c.key, old)
		assert.False(t, e.problem.Visible())
	}
	e.id.SetText("fig_paste")
	e.save()
	assert.Equal(t, "Id: is already another ingredient's.", e.problem.Text)
	e.id.SetText("Fig paste")
	e.save()
	assert.Contains(t, e.problem.Text, "may hold only")
	e.id.SetText("x")
	e.name.SetText(" ")
	e.save()
	assert.Equal(t, "Name: is missing.", e.problem.Text)
	after, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, before, after)
}

func TestACopyOfALibraryRowIsOnesOwn(t *testing.T) {
	p, h, _ := library(t, "")
	in, ok := p.shelves.All.Find("milk_whole")
	require.True(t, ok)
	e := p.editing(t, larder.FormLike(in, p.shelves))
	assert.Equal(t, "milk_whole_mine", e.id.Text)
	e.name.SetText("Milk of the quay")
	e.typed(t, "trans_fat", "0.2")
	e.typed(t, "calcium_mg", "")
	e.save()
	kept, ok := h.With.Library().Find("milk_of_the_quay")
	require.True(t, ok, e.problem.Text)
	assert.Equal(t, "own", kept.Source)
	assert.Equal(t, "after USDA SR28 NDB 01077", kept.SourceID)
	assert.Equal(t, ingredient.Known(0.2), kept.Cell(ingredient.TransFat))
	assert.False(t, kept.Cell(ingredient.CalciumMG).Known)
	assert.Equal(t, in.Cell(ingredient.Lactose), kept.Cell(ingredient.Lactose))
	assert.Equal(t, ingredient.Dairy, kept.Standing)
	assert.Equal(t, in.AllergensUS, kept.AllergensUS)
}

func TestEditingOnesOwnShowsWhatWasTypedAndReachesTheDesign(t *testing.T) {
	p, h, path := library(t, figPack)
	p.choose("fig_paste")
	test.Tap(pagetest.Button(t, p.detail, "Custard"))
	require.Len(t, h.Now.Own, 1)
	kept, _ := p.shelves.All.Find("fig_paste")
	e := p.editing(t, larder.FormOf(kept))
	assert.Equal(t, "0.5", e.stands("fat"))
	unchanged, err := e.form.Made()
	require.NoError(t, err)
	assert.True(t, unchanged.Equal(kept), "opening a form changes nothing")
	e.typed(t, "sugars", "48")
	e.save()
	assert.Equal(t, ingredient.Known(48), h.Now.Own[0].Cell(ingredient.TotalSugars))
	assert.Equal(t, "new figures of Fig paste", h.Steps[len(h.Steps)-1])
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Contains(t, string(text), "sugars: 48")

	p.remove(kept)
	test.Tap(pagetest.Button(t, h.Win.Canvas().Overlays().Top(), "Delete"))
	_, ok := h.With.Library().Find("fig_paste")
	assert.False(t, ok)
	require.Len(t, h.Now.Own, 1, "the design keeps its copy")
	assert.Contains(t, pagetest.Texts(p.detail), "not among your own")
	test.Tap(pagetest.Button(t, p.detail, "Save it as mine"))
	_, ok = h.With.Library().Find("fig_paste")
	assert.True(t, ok)
}

func TestADesignWithOtherFiguresIsSaidAndCanBeMended(t *testing.T) {
	p, h, _ := library(t, figPack)
	kept, _ := p.shelves.All.Find("fig_paste")
	h.Now.Own = []*ingredient.Ingredient{kept.With(ingredient.Fat, ingredient.Known(1))}
	h.Now = h.Now.WithLineAdded(design.DensePart, design.Line{Ingredient: "fig_paste", Grams: 50})
	p.Show()
	p.choose("fig_paste")
	assert.Contains(t, pagetest.Texts(p.detail), "This design has other figures for it than you have saved")
	test.Tap(pagetest.Button(t, p.detail, "Use mine in the design"))
	p.Show()
	assert.NotContains(t, pagetest.Texts(p.detail), "other figures")
	assert.Same(t, kept, h.Now.Own[0])
}

func TestAFileBrokenByHandIsToldOfAndLeftAlone(t *testing.T) {
	broken := strings.Replace(figPack, "pack:", "pakc:", 1)
	p, h, path := library(t, broken)
	for _, part := range []string{path, "line 5", `"fig_paste"`, "pakc"} {
		assert.Contains(t, p.fault.text.Text, part)
	}
	assert.True(t, p.fault.box.Visible())
	e := p.editing(t, larder.FromPack())
	e.name.SetText("Date paste")
	e.save()
	assert.Contains(t, e.problem.Text, path)
	assert.Contains(t, e.problem.Text, "line 5")
	assert.Contains(t, e.problem.Text, "pakc")
	now, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, broken, string(now))
	p.back("")

	require.NoError(t, os.WriteFile(path, []byte(figPack), 0o644))
	test.Tap(pagetest.Button(t, p.fault.box, "Read it again"))
	assert.False(t, p.fault.box.Visible())
	_, ok := h.With.Library().Find("fig_paste")
	assert.True(t, ok)
}

// TestLibraryFitsItsWindow lays the page out in large text within what a window
// of 1280 × 860 leaves it. With RIPPLEWRIGHT_LOOK set to a folder it leaves
// pictures there, also in other dresses.
func TestLibraryFitsItsWindow(t *testing.T) {
	dresses := map[string]theme.Options{"light150": {Variant: theme.Light, TextScale: 1.5}}
	if os.Getenv("RIPPLEWRIGHT_LOOK") != "" {
		dresses["light"], dresses["dark"] = theme.Options{Variant: theme.Light}, theme.Options{Variant: theme.Dark}
	}
	for dress, options := range dresses {
		app := test.NewTempApp(t)
		app.Settings().SetTheme(theme.New(options))
		p, h, path := library(t, figPack)
		shows := map[string]func(){
			"row":  func() { p.choose("cashew") },
			"own":  func() { p.choose("fig_paste") },
			"pack": func() { p.edit(larder.FromPack()) },
			"edit": func() { in, _ := p.shelves.All.Find("fig_paste"); p.edit(larder.FormOf(in)) },
			"copy": func() { in, _ := p.shelves.All.Find("milk_whole"); p.edit(larder.FormLike(in, p.shelves)) },
			"differs": func() {
				h.Now.Own = []*ingredient.Ingredient{larder.Named(p.setup.Shelf.Own(), "fig_paste").With(ingredient.Fat, ingredient.Known(1))}
				p.Show()
				p.choose("fig_paste")
			},
			"open": func() {
				p.edit(larder.FromPack())
				for _, a := range pagetest.All[*widget.Accordion](p.Object()) {
					a.OpenAll()
				}
			},
			"broken": func() {
				require.NoError(t, os.WriteFile(path, []byte(strings.Replace(figPack, "pack:", "pakc:", 1)), 0o644))
				p.setup.Shelf.Read()
				p.Show()
			},
		}
		for name, show := range shows {
			require.NoError(t, os.WriteFile(path, []byte(figPack), 0o644))
			p.setup.Shelf.Read()
			h.Now.Own = nil
			p.back("")
			show()
			least := p.Object().MinSize()
			assert.LessOrEqual(t, least.Width, float32(1270), "%s %s", name, dress)
			assert.LessOrEqual(t, least.Height, float32(640), "%s %s", name, dress)
			if dir := os.Getenv("RIPPLEWRIGHT_LOOK"); dir != "" {
				f, err := os.Create(filepath.Join(dir, "library_"+name+"_"+dress+".png"))
				require.NoError(t, err)
				h.Win.Resize(fyne.NewSize(1280, 700))
				if os.Getenv("PAGE_TALL") != "" {
					h.Win.Resize(fyne.NewSize(1280, 1700))
				}
				require.NoError(t, png.Encode(f, h.Win.Canvas().Capture()))
				require.NoError(t, f.Close())
			}
		}
	}
}

func TestTheLibraryIsReachedByKeyboard(t *testing.T) {
	p, h, _ := library(t, figPack)
	p.choose("fig_paste")
	reach := func(n int) map[fyne.Focusable]bool {
		reached := map[fyne.Focusable]bool{}
		for i := 0; i < n; i++ {
			test.FocusNext(h.Win.Canvas())
			reached[h.Win.Canvas().Focused()] = true
		}
		return reached
	}
	reached := reach(30)
	assert.True(t, reached[p.finder.Focusable()])
	assert.True(t, reached[p.group])
	for _, name := range []string{"New from a pack…", "Sources and terms", "Custard", "Foam", "Syrup", "Duplicate and edit…", "Edit…", "Delete…", "Price…"} {
		assert.True(t, reached[pagetest.Button(t, p.Object(), name)], name)
	}
	e := p.editing(t, larder.FromPack())
	reached = reach(40)
	for _, f := range []fyne.Focusable{e.name, e.id, e.fields[e.form.Per].entry, e.fields[e.form.Pack[0]].entry, pagetest.Button(t, p.Object(), "Save"), pagetest.Button(t, p.Object(), "Cancel")} {
		assert.True(t, reached[f])
	}
}

// BenchmarkChoose is a step of the arrow keys through the list.
func BenchmarkChoose(b *testing.B) {
	h := &shelfHost{pagetest.NewHost(b, design.New())}
	shelf := userdata.NewShelf(h.With.Library(), "")
	p := New(h, Setup{Shelf: shelf, Use: func(*ingredient.Library) {}})
	h.Win.SetContent(p.Object())
	h.Win.Resize(fyne.NewSize(1280, 720))
	p.Show()
	b.ResetTimer()
	for i := 0; i < b.N; i++ {
		p.choose([...]string{"cashew", "milk_whole"}[i%2])
	}
}

// The price is invented.
func TestAnIngredientTellsItsPriceWhichFollowsItsId(t *testing.T) {
	p, h, _ := library(t, figPack)
	p.choose("fig_paste")
	assert.Contains(t, pagetest.Texts(p.detail), "No price yet.")
	test.Tap(pagetest.Button(t, p.detail, "Price…"))
	assert.Equal(t, "price of fig_paste", h.Said)

	require.NoError(t, p.setup.Prices.Put(price.Pack{Ingredient: "fig_paste", Price: 4.5, Grams: 500}))
	h.With = h.With.Priced(p.setup.Prices.Book())
	p.Show()
	assert.Contains(t, pagetest.Texts(p.detail), "A pack: 4.50 for 500 g.")

	fig := *larder.Named(p.shelves.Kept, "fig_paste")
	fig.ID = "fig_mill"
	require.NoError(t, p.keep(&fig, "fig_paste"))
	p.back("fig_mill")
	assert.Contains(t, pagetest.Texts(p.detail), "A pack: 4.50 for 500 g.")
	_, still := p.setup.Prices.Book().Find("fig_paste")
	assert.False(t, still)
}
