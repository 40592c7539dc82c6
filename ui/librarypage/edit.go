package librarypage

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/show/say"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// editor is the form of one own ingredient, with a preview of what becomes
// known, estimated or stays unknown. Nothing is kept before Save.
type editor struct {
	page *Page
	from ingredient.Ingredient // what it began with
	old  string                // id of the own record it replaces, "" for a new one

	name, id *widget.Entry
	autoID   string // the id last made; it follows the name as long as nobody typed another
	lastName string
	group    *kit.Select
	us, eu   *widget.Entry
	parts    *widget.Entry
	compound *widget.Check
	standing *kit.Select

	isPack  bool
	per     *figureField
	fibre   *widget.RadioGroup
	pack    []*figureField // as ingredient.PackFigures
	columns []*figureField // those that the pack does not cover
	polyol  *kit.Select
	ticks   []*widget.Check // as allergenTicks
	spoons  []*figureField  // as spoonFields

	problem *widget.Label
	summary *widget.Label
	table   *kit.Figures
	says    *fyne.Container
	queued  bool
	object  fyne.CanvasObject
}

// figureField is an entry for a figure that may be left empty, which is
// unknown.
type figureField struct {
	name, unit string
	key        string // of the file
	column     ingredient.Column
	beside     bool // set by hand beside a pack that says otherwise
	entry      *widget.Entry
	note       *widget.Label // what is wrong with it
	began      string        // text and figure it began with
	cell       ingredient.Cell
}

const (
	withoutFibre = "Carbohydrate without fibre (EU, UK)"
	withFibre    = "Carbohydrate with fibre (US)"
	noPolyol     = "not known which"
)

func newFromPack(p *Page) *editor {
	in := ingredient.Ingredient{Group: ingredient.OwnSource, Source: ingredient.OwnSource, Own: true,
		Compound: true, Pack: &ingredient.Pack{PerG: 100, AvailableCarbohydrate: true}}
	return newEditor(p, in, "", "New ingredient from a pack")
}

func editorOf(p *Page, in *ingredient.Ingredient) *editor {
	return newEditor(p, *in, in.ID, "Edit "+in.Name)
}

func duplicateOf(p *Page, in *ingredient.Ingredient) *editor {
	copied := *in
	copied.Own = true
	if !in.Own {
		copied.Source, copied.SourceID = ingredient.OwnSource, copyOf+in.Source+" "+in.SourceID
	}
	copied.ID, copied.Name = p.freeID(in.ID+" mine"), in.Name+", mine"
	return newEditor(p, copied, "", "A copy of "+in.Name)
}

func newEditor(p *Page, in ingredient.Ingredient, old, title string) *editor {
	e := &editor{page: p, from: in, old: old, isPack: in.Pack != nil, says: container.NewVBox(), summary: page.Prose("")}
	e.problem = page.Bold("")
	e.problem.Importance = widget.DangerImportance
	e.problem.Hide()
	save := kit.NewButton("Save", e.save)
	save.Importance = widget.HighImportance
	cancel := kit.NewButton("Cancel", func() { p.back("") })
	form := page.Scrolled(e.form()...)
	var table fyne.CanvasObject
	e.table, table = newFigureTable()
	preview := page.Scrolled(page.Heading("What it comes to"), e.summary, table, e.says)
	split := container.NewHSplit(form, preview)
	split.Offset = 0.5
	name := page.Heading(title)
	name.Truncation = fyne.TextTruncateEllipsis
	e.object = container.NewBorder(
		container.NewVBox(container.NewBorder(nil, nil, nil, container.NewHBox(cancel, save), name), e.problem),
		nil, nil, nil, split)
	e.preview()
	return e
}

// form makes the fields, the usual ones first.
func (e *editor) form() []fyne.CanvasObject {
	in := &e.from
	e.name, e.id = e.text(in.Name), e.text(in.ID)
	e.name.PlaceHolder = "as you call it"
	e.us, e.eu, e.parts = e.text(in.CommonName), e.text(in.CommonNameEU), e.text(in.Parts)
	e.parts.MultiLine, e.parts.Wrapping = true, fyne.TextWrapWord
	e.group = kit.NewSelect(e.groups(), nil)
	e.group.Selected = GroupWords(in.Group)
	e.group.OnChanged = mishap.With(func(string) { e.changed() })
	e.autoID, e.lastName = in.ID, in.Name

	objects := []fyne.CanvasObject{}
	add := func(o ...fyne.CanvasObject) { objects = append(objects, o...) }
	identity := widget.NewForm(widget.NewFormItem("Name", e.name), widget.NewFormItem("Id", e.id), widget.NewFormItem("Group", e.group))
	add(identity)
	more := widget.NewAccordion()
	more.MultiOpen = true
	fold := func(title string, o ...fyne.CanvasObject) {
		more.Append(widget.NewAccordionItem(title, container.NewVBox(o...)))
	}
	if e.isPack {
		usual, rest := e.packForm()
		add(page.Heading("What the pack says"), page.Prose("Leave empty what it does not say: unknown is not 0."), usual)
		fold("Kinds of sugar, minerals and more, if the pack says", rest)
	}
	columns := e.columnForm()
	if e.isPack {
		fold("More figures per 100 g, if you know them", columns)
	} else {
		add(page.Heading("Figures per 100 g"), page.Prose("Leave empty what is not known: unknown is not 0."), columns)
	}
	fold("Allergens", e.allergenForm())
	fold("On a label", e.labelForm())
	fold("Density and measures", e.spoonForm())
	add(more)
	return objects
}

func (e *editor) groups() []string {
	var names []string
	for _, g := range groupNames {
		names = append(names, g)
	}
	slices.Sort(names)
	return names
}

// text is an entry that tells of its change.
func (e *editor) text(s string) *widget.Entry {
	w := widget.NewEntry()
	w.Text = s
	w.OnChanged = mishap.With(func(string) { e.changed() })
	return w
}

// figure is a field that begins with cell.
func (e *editor) figure(key, name, unit string, cell ingredient.Cell) *figureField {
	f := &figureField{key: key, name: name, unit: unit, column: ingredient.NumColumns, cell: cell, note: widget.NewLabel("")}
	if cell.Known {
		f.began = strconv.FormatFloat(cell.Value, 'f', -1, 64)
	}
	f.entry = e.text(f.began)
	f.entry.PlaceHolder = "unknown"
	f.note.Importance, f.note.Wrapping = widget.DangerImportance, fyne.TextWrapWord
	f.note.Hide()
	return f
}

// read returns what is typed.
func (f *figureField) read() (ingredient.Cell, error) {
	s := strings.TrimSpace(f.entry.Text)
	switch {
	case f.entry.Text == f.began:
		return f.cell, nil
	case s == "":
		return ingredient.Cell{}, nil
	}
	v, err := kit.ParseNumber(s, f.unit)
	if err == nil && v < 0 {
		err = errors.New("is below 0")
	}
	return ingredient.Known(v), err
}

// complain says what is wrong with the field, nil for nothing.
func (f *figureField) complain(err error) {
	if err == nil {
		f.note.Hide()
		return
	}
	f.note.SetText(page.Sentence(err.Error()))
	f.note.Show()
}

// rows puts fields into a form.
func rows(fields ...*figureField) *widget.Form {
	form := widget.NewForm()
	for _, f := range fields {
		unit := container.New(&atLeast{em: 3.5}, widget.NewLabel(f.unit))
		form.Append(f.name, container.NewVBox(container.New(&capped{em: 14}, container.NewBorder(nil, nil, nil, unit, f.entry)), f.note))
	}
	return form
}

// usualPack are the figures that most packs give.
var usualPack = []string{"energy_kcal", "energy_kj", "fat", "saturates", "carbohydrate", "sugars", "fibre", "protein", "salt", "sodium_mg"}

func (e *editor) packForm() (usual, rest fyne.CanvasObject) {
	p := e.from.Pack
	e.per = e.figure("per", "Figures are per", "g", ingredient.Known(p.PerG))
	e.fibre = widget.NewRadioGroup([]string{withoutFibre, withFibre}, nil)
	e.fibre.Required, e.fibre.Selected = true, withoutFibre
	if !p.AvailableCarbohydrate {
		e.fibre.Selected = withFibre
	}
	e.fibre.OnChanged = mishap.With(func(string) { e.changed() })
	first, more := []*figureField{e.per}, []*figureField{}
	for _, x := range ingredient.PackFigures() {
		name := packWords(x)
		f := e.figure(x.Path, name, x.Unit, *x.At(p))
		e.pack = append(e.pack, f)
		if slices.Contains(usualPack, x.Path) {
			first = append(first, f)
		} else {
			more = append(more, f)
		}
	}
	return container.NewVBox(e.fibre, rows(first...)), rows(more...)
}

// packWords names a figure of a pack.
func packWords(x ingredient.PackFigure) string {
	switch x.Path {
	case "energy_kj":
		return "Energy"
	case "salt":
		return "Salt"
	}
	return columnWords(x.Column)
}

// columnForm holds the figures of the record itself: all, or for a pack those
// that it has not or that somebody has set beside it.
func (e *editor) columnForm() fyne.CanvasObject {
	made := e.fromPack()
	for _, r := range columnRows {
		c, cell := r.column, e.from.Cell(r.column)
		if e.isPack && cell == made.Cell(c) {
			if slices.ContainsFunc(ingredient.PackFigures(), func(x ingredient.PackFigure) bool { return x.Column == c }) {
				continue
			}
			cell = ingredient.Cell{} // what the pack gives here is an estimate, in the preview
		}
		f := e.figure(c.String(), columnWords(c), c.Unit(), cell)
		f.column, f.beside = c, e.isPack && e.from.Cell(c) != made.Cell(c)
		e.columns = append(e.columns, f)
	}
	e.polyol = kit.NewSelect([]string{noPolyol}, nil)
	for _, s := range mix.Polyols {
		e.polyol.Options = append(e.polyol.Options, s.String())
	}
	e.polyol.Selected = noPolyol
	if e.from.Polyol != 0 {
		e.polyol.Selected = e.from.Polyol.String()
	}
	e.polyol.OnChanged = mishap.With(func(string) { e.changed() })
	form := rows(e.columns...)
	form.Append("The sugar alcohol is", e.polyol)
	return form
}

// fromPack is what the pack it began with makes, or nothing.
func (e *editor) fromPack() *ingredient.Ingredient {
	if e.isPack {
		if in, err := ingredient.FromPack("own", "own", *e.from.Pack); err == nil {
			return in
		}
	}
	return &ingredient.Ingredient{}
}

// allergenTicks are the allergens of the law as packs name them, with the
// library's words: 21 USC 321(qq) and Annex II of Regulation (EU) No 1169/2011.
var allergenTicks = [...]struct{ name, us, eu string }{
	{"Milk", "milk", "milk"}, {"Egg", "egg", "eggs"}, {"Wheat", "wheat", "gluten_cereals:wheat"},
	{"Barley", "", "gluten_cereals:barley"}, {"Rye", "", "gluten_cereals:rye"}, {"Oats", "", "gluten_cereals:oats"},
	{"Soy", "soy", "soybeans"}, {"Peanut", "peanut", "peanuts"}, {"Sesame", "sesame", "sesame"},
	{"Almond", "tree_nut:almond", "nuts:almond"}, {"Hazelnut", "tree_nut:hazelnut", "nuts:hazelnut"}, {"Walnut", "tree_nut:walnut", "nuts:walnut"},
	{"Cashew", "tree_nut:cashew", "nuts:cashew"}, {"Pecan", "tree_nut:pecan", "nuts:pecan"}, {"Pistachio", "tree_nut:pistachio", "nuts:pistachio"},
	{"Macadamia", "tree_nut:macadamia", "nuts:macadamia"}, {"Brazil nut", "tree_nut:brazil nut", "nuts:brazil nut"}, {"Sulphites", "", "sulphites"},
	{"Fish", "fish", "fish"}, {"Crustaceans", "crustacean", "crustaceans"}, {"Molluscs", "", "molluscs"},
	{"Celery", "", "celery"}, {"Mustard", "", "mustard"}, {"Lupin", "", "lupin"},
}

func (e *editor) allergenForm() fyne.CanvasObject {
	grid := container.NewGridWithColumns(3)
	for _, a := range allergenTicks {
		tick := kit.NewCheck(a.name, func(bool) { e.changed() })
		tick.Checked = a.us != "" && slices.Contains(e.from.AllergensUS, a.us) || slices.Contains(e.from.AllergensEU, a.eu)
		e.ticks = append(e.ticks, tick)
		grid.Add(tick)
	}
	return container.NewVBox(page.Prose("Tick what the pack names. Add its “may contain” to your label yourself."), grid)
}

// allergens returns the words of what is ticked, after those that no tick
// stands for.
func (e *editor) allergens(began []string, word func(i int) string) []string {
	var out []string
	for _, a := range began {
		known := false
		for i := range allergenTicks {
			known = known || word(i) == a
		}
		if !known {
			out = append(out, a)
		}
	}
	for i, tick := range e.ticks {
		if tick.Checked && word(i) != "" {
			out = append(out, word(i))
		}
	}
	return out
}

// standings are the classes of 21 CFR part 135 for people.
var standings = [...]struct {
	standing ingredient.Standing
	name     string
}{
	{"", "nothing in particular"}, {ingredient.Dairy, "milk, cream or their solids"}, {ingredient.Cultured, "cultured milk"},
	{ingredient.Cocoa, "cocoa or chocolate"}, {ingredient.Fruit, "fruit"}, {ingredient.DriedFruit, "dried fruit"}, {ingredient.Nut, "nuts"},
	{ingredient.NotUSFibre, "a gum that is no fibre in the US"},
}

func (e *editor) labelForm() fyne.CanvasObject {
	e.compound = kit.NewCheck("It has ingredients of its own", func(bool) { e.changed() })
	e.compound.Checked = e.from.Compound
	e.standing = kit.NewSelect(nil, func(string) { e.changed() })
	for _, s := range standings {
		e.standing.Options = append(e.standing.Options, s.name)
		if s.standing == e.from.Standing {
			e.standing.Selected = s.name
		}
	}
	return widget.NewForm(widget.NewFormItem("Name, US", e.us), widget.NewFormItem("Name, EU and UK", e.eu),
		widget.NewFormItem("", e.compound), widget.NewFormItem("They are", e.parts), widget.NewFormItem("US rules see", e.standing))
}

// spoonFields are the weights of measures.
var spoonFields = [...]struct {
	key, name, unit string
	at              func(*ingredient.Ingredient) *ingredient.Cell
}{
	{"density", "Density", "g/mL", func(in *ingredient.Ingredient) *ingredient.Cell { return &in.Density }},
	{"g_per_cup", "1 US cup", "g", func(in *ingredient.Ingredient) *ingredient.Cell { return &in.GramsPerCup }},
	{"g_per_tbsp", "1 tablespoon", "g", func(in *ingredient.Ingredient) *ingredient.Cell { return &in.GramsPerTbsp }},
	{"g_per_tsp", "1 teaspoon", "g", func(in *ingredient.Ingredient) *ingredient.Cell { return &in.GramsPerTsp }},
}

func (e *editor) spoonForm() fyne.CanvasObject {
	for _, s := range spoonFields {
		e.spoons = append(e.spoons, e.figure(s.key, s.name, s.unit, *s.at(&e.from)))
	}
	return rows(e.spoons...)
}

// followName makes the id from the name, until somebody types another.
func (e *editor) followName() {
	if e.id.Text != e.autoID || e.name.Text == e.lastName {
		return
	}
	e.lastName = e.name.Text
	e.autoID = e.page.freeID(e.name.Text)
	e.id.SetText(e.autoID)
}

// freeID makes an id that no ingredient has yet.
func (p *Page) freeID(name string) string {
	id := idFor(name)
	free := id
	for n := 2; id != ""; n++ {
		if _, taken := p.all.Find(free); !taken {
			break
		}
		free = fmt.Sprintf("%s_%d", id, n)
	}
	return free
}

// changed asks for a new preview, once for all that happens at one time.
func (e *editor) changed() {
	if e.queued || e.object == nil {
		return
	}
	e.queued = true
	e.page.host.Post(func() {
		e.queued = false
		if e.old == "" {
			e.followName()
		}
		e.preview()
	})
}

// preview shows what the fields make so far.
func (e *editor) preview() {
	in, err := e.build("own", "own")
	e.complain(err)
	if err != nil {
		e.summary.SetText("Shown without the figure that cannot be read.")
		return
	}
	e.table.ShowFigures(figureRows(in))
	e.summary.SetText(tally(in))
	var doubts []string
	if in.Pack != nil {
		if d := in.Pack.Doubt(); d != "" {
			doubts = append(doubts, d)
		}
	}
	e.says.Objects = nil
	for _, part := range [...]struct {
		title string
		lines []string
	}{
		{"Look again", append(doubts, in.Inconsistencies()...)},
		{"What the freezing model assumes", say.Assumptions(page.Reads, in.Resolve().Assumed)},
		{"How figures are made", derivations(in)},
	} {
		if len(part.lines) > 0 {
			e.says.Add(page.Heading(part.title))
		}
		for _, l := range part.lines {
			e.says.Add(page.Prose(ended(l)))
		}
	}
	e.says.Refresh()
}

// complain shows what is wrong at the top and at its field.
func (e *editor) complain(err error) {
	for _, f := range e.fields() {
		f.complain(nil)
	}
	if err == nil {
		e.problem.Hide()
		return
	}
	text := err.Error()
	var at *ingredient.FieldError
	if errors.As(err, &at) {
		key := strings.TrimPrefix(at.Field, "pack: ")
		if at.Line == 0 { // of the form, not of the file
			text = strings.ReplaceAll(key, "_", " ") + ": " + at.Err.Error()
		}
		for _, f := range e.fields() {
			if f.key == key && at.Line == 0 {
				f.complain(at.Err)
				text = f.name + ": " + at.Err.Error()
			}
		}
	}
	e.problem.SetText(page.Sentence(text))
	e.problem.Show()
}

func (e *editor) fields() []*figureField {
	all := slices.Concat(e.pack, e.columns, e.spoons)
	if e.per != nil {
		all = append(all, e.per)
	}
	return all
}

// build returns the ingredient that the fields make. An error is a
// *ingredient.FieldError.
func (e *editor) build(id, name string) (*ingredient.Ingredient, error) {
	cells := map[*figureField]ingredient.Cell{}
	for _, f := range e.fields() {
		cell, err := f.read()
		if err != nil {
			return nil, &ingredient.FieldError{Field: f.key, Err: err}
		}
		cells[f] = cell
	}
	out := e.from
	if e.isPack {
		pack := ingredient.Pack{PerG: cells[e.per].Or(0), AvailableCarbohydrate: e.fibre.Selected == withoutFibre}
		for i, x := range ingredient.PackFigures() {
			*x.At(&pack) = cells[e.pack[i]]
		}
		in, err := ingredient.FromPack(id, name, pack)
		if err != nil {
			return nil, err
		}
		out.Pack, out.Cells, out.Derived, out.WithoutFibre = in.Pack, in.Cells, in.Derived, in.WithoutFibre
	}
	in := &out
	for _, f := range e.columns {
		if f.beside || f.cell != cells[f] {
			in = in.With(f.column, cells[f])
		}
	}
	final := *in
	final.ID, final.Name = id, name
	for i, s := range spoonFields {
		*s.at(&final) = cells[e.spoons[i]]
	}
	if final.Density.Known && final.DensityKind == "" {
		final.DensityKind = "bulk"
	}
	final.CommonName, final.CommonNameEU, final.Parts = strings.TrimSpace(e.us.Text), strings.TrimSpace(e.eu.Text), strings.TrimSpace(e.parts.Text)
	final.Compound = e.compound.Checked
	for _, s := range standings {
		if s.name == e.standing.Selected {
			final.Standing = s.standing
		}
	}
	final.AllergensUS = e.allergens(e.from.AllergensUS, func(i int) string { return allergenTicks[i].us })
	final.AllergensEU = e.allergens(e.from.AllergensEU, func(i int) string { return allergenTicks[i].eu })
	for key, words := range groupNames {
		if words == e.group.Selected {
			final.Group = key
		}
	}
	final.Polyol = 0
	for _, s := range mix.Polyols {
		if s.String() == e.polyol.Selected {
			final.Polyol = s
		}
	}
	return ingredient.Checked(&final)
}

// save keeps what the fields make, or says why not and keeps the fields.
func (e *editor) save() {
	in, err := e.build(strings.TrimSpace(e.id.Text), strings.TrimSpace(e.name.Text))
	if err == nil {
		err = e.page.keep(in, e.old)
	}
	e.complain(err)
	if err == nil {
		e.page.back(in.ID)
	}
}
