package kit

import (
	"math"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/desk/typed"
	"ripplewright/internal/show/say"
)

// A NumberField is a field for one number with its unit. What is typed counts when
// Enter is pressed or the field is left; a text that is no number, or is out of
// range, stays, with the reason under it, and nobody is told. Up and Down step
// the value, Page Up and Down by ten steps, Escape brings the old value back.
type NumberField struct {
	widget.BaseWidget

	Unit     string // of the value, and of Min, Max, Decimals and Step
	Min, Max float64
	Decimals int
	Step     float64 // of the arrow keys; 0 means one unit of the last decimal
	Digits   int     // room for so many signs; 0: for those of Min and Max
	Empties  bool    // emptied it is unknown, NaN; else the old value comes back
	Beside   string  // a unit that stands in fields above or below: its room is kept

	// OnChanged is told of each new value that a hand has settled.
	OnChanged func(float64)
	// Submits lets Return, once it has settled a value, give the answer of the
	// dialog that the field is in.
	Submits bool
	// OnShortcut is told of the shortcuts that editing a number has no use for.
	OnShortcut func(*desktop.CustomShortcut)

	value   float64
	gauge   say.Gauge // how the value is shown and typed
	entry   *numberEntry
	unit    *canvas.Text
	icon    *widget.Icon
	problem *canvas.Text
}

// NewNumberField returns a field for min..max with so many decimals, showing unknown.
func NewNumberField(unit string, min, max float64, decimals int) *NumberField {
	n := &NumberField{Unit: unit, Min: min, Max: max, Decimals: decimals, value: math.NaN(), gauge: say.Gauge{Unit: unit}}
	n.entry = newNumberEntry(n)
	n.unit = canvas.NewText(unit, theme.Color(theme.ColorNamePlaceHolder))
	n.icon = widget.NewIcon(theme.NewErrorThemedResource(theme.ErrorIcon()))
	n.problem = canvas.NewText("", theme.Color(theme.ColorNameError))
	n.icon.Hide()
	n.problem.Hide()
	n.ExtendBaseWidget(n)
	return n
}

// Reading has the value shown and typed as a gauge of the field's unit does.
func (n *NumberField) Reading(g say.Gauge) *NumberField {
	n.gauge = g
	n.unit.Text = n.sign()
	n.write()
	return n
}

// ReadAs keeps the number shown as it is, and takes it from now on for one that is read by
// another gauge.
func (n *NumberField) ReadAs(g say.Gauge) {
	shown := n.gauge.Shown(n.value)
	n.value = g.Kept(shown)
	n.Reading(g)
}

// LineUp gives fields that stand under each other one width, whatever their units.
func LineUp(fields ...*NumberField) {
	widest := ""
	for _, n := range fields {
		if room := func(s string) float32 { return fyne.MeasureText(s, theme.TextSize(), fyne.TextStyle{}).Width }; room(n.sign()) > room(widest) {
			widest = n.sign()
		}
	}
	for _, n := range fields {
		n.Beside = widest
	}
}

// sign is the unit as shown, with a weight's ounces where the maker reads them.
func (n *NumberField) sign() string {
	if n.Unit == "g" {
		return n.gauge.Reads.GramSign(n.gauge.Shown(n.value))
	}
	return n.gauge.Unit
}

// ShowValue puts v in the field, NaN as an empty one, and calls nobody back. While
// somebody is typing in the field, the text is left alone until they are done.
func (n *NumberField) ShowValue(v float64) {
	same := v == n.value || math.IsNaN(v) && math.IsNaN(n.value)
	n.value = v
	if n.entry.dirty || same && n.entry.Text == n.format() {
		return
	}
	n.write()
}

// ShowPlan shows v pale in the field while that is empty, NaN for nothing. It is no value
// until TakePlan.
func (n *NumberField) ShowPlan(v float64) {
	text := ""
	if !math.IsNaN(v) && v >= n.Min && v <= n.Max {
		text = n.gauge.Plain(v, n.Decimals)
	}
	if n.entry.PlaceHolder != text {
		n.entry.SetPlaceHolder(text)
	}
}

// PlanShown reports whether the field is empty but for what ShowPlan shows.
func (n *NumberField) PlanShown() bool { return n.entry.Text == "" && n.entry.PlaceHolder != "" }

// TakePlan settles what ShowPlan shows, as if a hand had typed it.
func (n *NumberField) TakePlan() {
	if n.PlanShown() {
		n.entry.SetText(n.entry.PlaceHolder)
		n.settle()
	}
}

// Value is the last value shown or settled.
func (n *NumberField) Value() float64 { return n.value }

// Problem is what is wrong with the text in the field, or nil.
func (n *NumberField) Problem() error {
	_, err := n.read()
	return err
}

// Focusable is the part of the widget that takes the keyboard.
func (n *NumberField) Focusable() fyne.Focusable { return n.entry }

// Enable lets the field be changed.
func (n *NumberField) Enable() { n.entry.Enable() }

// Disable shows the field as not to be changed.
func (n *NumberField) Disable() { n.entry.Disable() }

// Disabled reports whether the field cannot be changed.
func (n *NumberField) Disabled() bool { return n.entry.Disabled() }

func (n *NumberField) format() string {
	if math.IsNaN(n.value) {
		return ""
	}
	return n.gauge.Plain(n.value, n.Decimals)
}

// put shows v even over what is being typed: another hand, the slider's, is at work.
func (n *NumberField) put(v float64) {
	n.value = v
	n.write()
}

func (n *NumberField) write() {
	n.entry.dirty = false
	n.entry.show(n.format())
	if sign := n.sign(); sign != n.unit.Text {
		n.unit.Text = sign
		n.unit.Refresh()
	}
	n.complain(nil)
}

func (n *NumberField) read() (float64, error) {
	if !n.entry.dirty {
		return n.value, nil
	}
	return typed.Within(n.entry.Text, n.gauge, n.Min, n.Max, n.Decimals)
}

// settle takes what has been typed, if it can be taken.
func (n *NumberField) settle() {
	if !n.entry.dirty {
		return
	}
	if strings.TrimSpace(n.entry.Text) == "" {
		if n.Empties {
			n.take(math.NaN())
		}
		n.write()
		return
	}
	v, err := n.read()
	if err != nil {
		n.complain(err)
		return
	}
	n.take(v)
}

func (n *NumberField) take(v float64) {
	same := v == n.value || math.IsNaN(v) && math.IsNaN(n.value)
	n.value = v
	n.write()
	if !same && n.OnChanged != nil {
		mishap.Do(func() { n.OnChanged(v) })
	}
}

func (n *NumberField) complain(err error) {
	text := ""
	if err != nil {
		text = say.Flaw(err)
	}
	if text == n.problem.Text {
		return
	}
	n.problem.Text = text
	n.problem.Hidden, n.icon.Hidden = err == nil, err == nil
	n.Refresh()
}

// stepper steps what is shown.
func (n *NumberField) stepper() stepper {
	step := n.gauge.Step(n.Step)
	if step <= 0 {
		step = math.Pow(10, -float64(n.gauge.Places(n.Decimals)))
	}
	return stepper{min: n.gauge.Shown(n.Min), max: n.gauge.Shown(n.Max), step: step}
}

// CreateRenderer implements fyne.Widget.
func (n *NumberField) CreateRenderer() fyne.WidgetRenderer {
	n.ExtendBaseWidget(n)
	r := &numberRenderer{n: n}
	r.Refresh()
	return r
}

type numberRenderer struct {
	n     *NumberField
	rooms rooms
	room  float32 // for them
}

// rooms is what the room for value and unit depends on. The toolkit asks for a least size
// several times a frame.
type rooms struct {
	unit, beside, shown string
	min, max            float64
	decimals, digits    int
	gauge               say.Gauge
	text, of            float32 // the theme's size of text and the unit's, which follows later
}

// fieldWidth is room for the longest value and the entry's own padding.
func (r *numberRenderer) fieldWidth() float32 {
	n := r.n
	if n.Digits > 0 {
		return fyne.MeasureText(strings.Repeat("0", n.Digits), theme.TextSize(), fyne.TextStyle{}).Width + 2*theme.InnerPadding() + 2*theme.Padding()
	}
	w := fyne.MeasureText("0000.0", theme.TextSize(), fyne.TextStyle{}).Width // so that fields line up
	for _, v := range []float64{n.Min, n.Max} {
		w = fyne.Max(w, fyne.MeasureText(n.gauge.Plain(v, n.Decimals), theme.TextSize(), fyne.TextStyle{}).Width)
	}
	return w + 2*theme.InnerPadding() + 2*theme.Padding()
}

// widestG is a weight whose ounces need as much room as any of a recipe's lines.
const widestG = 850

// unitSize is room for the unit, and for the common short ones in any case.
func (r *numberRenderer) unitSize() fyne.Size {
	size := r.n.unit.MinSize()
	beside := []string{r.n.Beside}
	if r.n.Unit+r.n.Beside != "" {
		beside = append(beside, r.n.gauge.Reads.Degree())
	}
	if r.n.Unit == "g" {
		beside = append(beside, r.n.gauge.Reads.GramSign(widestG))
	}
	for _, unit := range beside {
		size.Width = fyne.Max(size.Width, fyne.MeasureText(unit, theme.TextSize(), fyne.TextStyle{}).Width)
	}
	return size
}

func (r *numberRenderer) Layout(size fyne.Size) {
	n := r.n
	field := n.entry.MinSize().Height
	unit := r.unitSize()
	gap := theme.Padding()
	n.entry.Move(fyne.NewPos(0, 0))
	n.entry.Resize(fyne.NewSize(size.Width-unit.Width-gap, field))
	n.unit.Move(fyne.NewPos(size.Width-unit.Width, (field-n.unit.MinSize().Height)/2))
	n.unit.Resize(unit)
	text := n.problem.MinSize()
	n.icon.Move(fyne.NewPos(0, field+1))
	n.icon.Resize(fyne.NewSize(text.Height, text.Height))
	n.problem.Move(fyne.NewPos(text.Height+gap, field+1))
	n.problem.Resize(text)
}

func (r *numberRenderer) MinSize() fyne.Size {
	n := r.n
	if now := (rooms{n.Unit, n.Beside, n.unit.Text, n.Min, n.Max, n.Decimals, n.Digits, n.gauge, theme.TextSize(), n.unit.TextSize}); now != r.rooms {
		r.rooms = now
		r.room = r.fieldWidth() + r.unitSize().Width + theme.Padding()
	}
	// The entry keeps its height itself, of the old look until it is shown in the new one:
	// a row that shares its columns is asked before that.
	size := fyne.NewSize(r.room, n.entry.MinSize().Height)
	if !n.problem.Hidden {
		text := n.problem.MinSize()
		size.Width = fyne.Max(size.Width, text.Width+text.Height+theme.Padding())
		size.Height += text.Height + 2
	}
	return size
}

func (r *numberRenderer) Refresh() {
	n := r.n
	n.unit.Text, n.unit.Color, n.unit.TextSize = n.sign(), theme.Color(theme.ColorNamePlaceHolder), theme.TextSize()
	n.problem.Color, n.problem.TextSize = theme.Color(theme.ColorNameError), theme.CaptionTextSize()
	n.unit.Refresh()
	n.problem.Refresh()
	n.icon.Refresh()
	if s := n.Size(); s.Width > 0 {
		r.Layout(s)
	}
}

func (r *numberRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.n.entry, r.n.unit, r.n.icon, r.n.problem}
}

func (r *numberRenderer) Destroy() {}
