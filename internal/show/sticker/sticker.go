// Package sticker lays out the label of a tub on its faces, in mm, at letters no
// smaller than the rules ask, and draws it. What does not fit is refused, never
// shrunk below them.
package sticker

import (
	"math"
	"slices"
	"strings"

	"ripplewright/internal/food/label"
	"ripplewright/internal/food/onpack"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/show/draw"
)

// Content is what stands on a tub.
type Content struct {
	Place     onpack.Place
	Tub       onpack.Tub
	Languages []string
	Elements  []onpack.Element
	Panel     *label.Label // of the place's region; drawn where nutrition is filled
	Words     onpack.Words
	Brand     string // the maker's name for the flavour, "" for none

	NominalML    float64              // the quantity declared
	FrontOfPack  []onpack.FrontFigure // the UK's voluntary colours; nil: none
	FrontPortion string               // what they are per
	Lid          bool                 // a label for the lid too
	Article      string               // a checked 13-digit number, "" for none

	// Inquiries is where a customer asks for the nutrition of a package too small for
	// a panel: an address or a telephone number.
	Inquiries string
}

// Box is one element in its place on a face.
type Box struct {
	Key      onpack.Key
	At       draw.Rect
	LetterMM float64 // height of its smallest letters, as the rule measures them
	LeastMM  float64 // what the rule asks
	Rule     string  // the section
	Form     Form    // of a nutrition panel

	list *draw.List
}

// Face is one face of a tub's label.
type Face struct {
	Name              string // front, information
	WidthMM, HeightMM float64
	LeastMM           float64 // the least height of its letters: capitals of a net quantity apart
	Boxes             []Box
	Round             bool   // the lid of a round tub
	Wrap              bool   // one piece with the others, around the tub
	Why               string // why it does not fit, "" where it does

	share float64 // of the way around the tub, where it wraps
}

// Fits reports whether all that is due stands on the face.
func (f Face) Fits() bool { return f.Why == "" }

// ErrRoom says that what is due does not fit on the tub at lawful letters.
var ErrRoom = flaw.New("the label does not fit on this tub")

// ErrSheet says that a sheet of paper cannot take the labels.
var ErrSheet = flaw.New("the labels do not go on this paper")

// What is kept free of the wall, mm, or of a low one as a share of its height.
// Decided here.
const (
	rimMM     = 6.0
	baseMM    = 4.0
	rimShare  = 0.1
	baseShare = 0.07
	marginMM  = 2.5
	gapMM     = 2.0
	overlapMM = 8.0 // of a wrap
	lidEdgeMM = 4.0
)

// Shares of the way around a tub: the front is the US principal display panel,
// 40 % of the circumference (21 CFR 101.1), the rest is for information. On a
// cone a rectangle up to a third reads flat (decided here).
const (
	frontShare = 0.4
	flatShare  = 1. / 3
)

// frontShares are those of a wrap's front that are tried: what is printed on the
// front may take less than its whole panel.
var frontShares = []float64{frontShare, flatShare, 0.28}

// rim and base are what is kept free of a tub's wall, mm.
func rim(t onpack.Tub) float64  { return min(rimMM, rimShare*t.HeightMM) }
func base(t onpack.Tub) float64 { return min(baseMM, baseShare*t.HeightMM) }

// area is a rectangle on the wall.
type area struct {
	name  string
	w, h  float64
	share float64 // of the way around, where it is part of a wrap
}

// a layout is a front with its areas for information.
type layout struct {
	front area
	info  []area
	wrap  bool // one piece around the tub
}

// layouts returns how the faces may lie on a tub, the most wanted first: patches
// that read flat before a wrap of a cone, which is a sector of a ring.
func layouts(t onpack.Tub) []layout {
	h := t.HeightMM - rim(t) - base(t)
	switch {
	case t.Box():
		front := area{name: "front", w: t.LengthMM, h: h}
		side, back := area{name: "information", w: t.BreadthMM, h: h}, area{name: "information", w: t.LengthMM, h: h}
		return []layout{{front: front, info: []area{side}}, {front: front, info: []area{back}}}
	case t.TopMM == t.BottomMM:
		round := t.RoundMM()
		var all []layout
		for _, front := range frontShares {
			all = append(all, layout{area{"front", front * round, h, front}, []area{{"information", (1 - front) * round, h, 1 - front}}, true})
		}
		return all
	}
	w := flatShare * math.Pi * min(t.TopMM, t.BottomMM)
	patch := area{name: "front", w: w, h: inRing(t, w)}
	info := area{name: "information", w: patch.w, h: patch.h}
	all := []layout{{front: patch, info: []area{info}}, {front: patch, info: []area{info, info}}}
	onCone := func(name string, share float64) area {
		w := chord(t, share)
		return area{name, w, inRing(t, w), share}
	}
	all = append(all, layout{onCone("front", frontShare), []area{onCone("information", 1-frontShare)}, true})
	for _, front := range frontShares {
		for _, panel := range []float64{0.7, 0.72, 0.74, 0.76, 0.78, 0.8} { // a narrower rectangle may be higher
			rest := 1 - front
			all = append(all, layout{onCone("front", front), []area{onCone("nutrition", panel*rest), onCone("information", (1-panel)*rest)}, true})
		}
	}
	return all
}

// chord is the width of a rectangle that takes a share of a cone's way around, at
// the lower edge of what is printed.
func chord(t onpack.Tub, share float64) float64 {
	inner, _, degrees := t.Sector()
	return 2 * (inner + edgeOf(t)) * math.Tan(share*degrees*math.Pi/360)
}

// edgeOf is what is kept free at the narrow end of a cone.
func edgeOf(t onpack.Tub) float64 {
	if t.BottomMM > t.TopMM {
		return rim(t)
	}
	return base(t)
}

// inRing is the height of a rectangle of width w in the wall of a cone rolled out:
// its corners touch the wide edge.
func inRing(t onpack.Tub, w float64) float64 {
	inner, outer, _ := t.Sector()
	free := outer - (rim(t) + base(t) - edgeOf(t))
	return max(0, math.Sqrt(max(0, free*free-w*w/4))-inner-edgeOf(t))
}

// Faces lays out the label. The panel takes the first of its forms that has room on
// any layout. The error is ErrRoom with what misses its place, and the faces are
// those of the first try.
func Faces(c Content) ([]Face, error) {
	var first []Face
	all := layouts(c.Tub)
	for _, form := range c.forms() {
		for _, on := range all {
			info, ok := c.information(on.info, form)
			if !ok && first != nil {
				continue
			}
			faces, fits := c.layOut(on, info)
			if fits {
				return faces, nil
			}
			if first == nil {
				first = faces
			}
		}
	}
	var why []string
	for _, f := range first {
		if !f.Fits() {
			why = append(why, f.Name+": "+f.Why)
		}
	}
	return first, flaw.New("%v: %s", ErrRoom, strings.Join(why, "; "))
}

// layOut joins the front and the lid to the faces of information, and reports
// whether all has room on them.
func (c *Content) layOut(on layout, info []Face) (faces []Face, fits bool) {
	faces = append([]Face{c.front(on.front)}, info...)
	for i, a := range append([]area{on.front}, on.info...) {
		faces[i].Wrap, faces[i].share = on.wrap, a.share
	}
	if c.Lid {
		faces = append(faces, c.lid())
	}
	return faces, !slices.ContainsFunc(faces, func(f Face) bool { return !f.Fits() })
}

// element returns a filled element.
func (c *Content) element(key onpack.Key) (onpack.Element, bool) {
	i := slices.IndexFunc(c.Elements, func(e onpack.Element) bool { return e.Key == key && e.State == onpack.Filled })
	if i < 0 {
		return onpack.Element{}, false
	}
	return c.Elements[i], true
}

// usLetterMM is the least height of a lower-case o on US panels: 1/16 inch, 21
// CFR 101.2(c).
const usLetterMM = 25.4 / 16

// least is the least height of lower-case letters and its rule.
func (c *Content) least() (mm float64, rule string) {
	if c.Place == onpack.US {
		return usLetterMM, "21 CFR 101.2(c): a lower-case o of 1/16 inch"
	}
	if mm = c.Tub.XHeightMM(); mm < 1.2 {
		return mm, "Reg. (EU) No 1169/2011, Art 13(3): an x of 0.9 mm"
	}
	return mm, "Reg. (EU) No 1169/2011, Art 13(2): an x of 1.2 mm"
}

// quantityMM is the least height of the figures of the net quantity.
func (c *Content) quantityMM() (mm float64, rule string) {
	if c.Place == onpack.US {
		return onpack.USFigureMM(c.Tub.PanelIn2()), "21 CFR 101.7(i)"
	}
	return onpack.FigureMM(c.NominalML), "Directive 76/211/EEC, Annex I"
}

// size is the size of type in pt at which lower-case letters are mm high.
func size(mm float64) float64 { return mm / xHeight / point }
