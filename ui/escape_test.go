package ui

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/desk/keeping"
	"ripplewright/internal/desk/past"
	"ripplewright/internal/desk/places"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
	"ripplewright/ui/kit"
	"ripplewright/ui/page/pagetest"
	"ripplewright/ui/photodialog"
)

// tap presses the first button of the page in view that reads so.
func (b *bed) tap(at places.Place, text string) {
	b.turnTo(at)
	b.frame()
	for _, x := range pagetest.All[*kit.Button](b.shown().Object()) {
		if x.Text == text && !x.Disabled() {
			x.Tapped(nil)
			return
		}
	}
	b.t.Fatalf("no button %q on %s", text, at.Name())
}

// openers open every dialog of the program, by the functions that ask.
func (b *bed) openers() map[string]func() {
	path := filepath.Join(b.t.TempDir(), "cut.jpg")
	require.NoError(b.t, os.WriteFile(path, []byte("no picture"), 0o644))
	d := b.Design()
	changed := serveAt(d, -15)
	return map[string]func(){
		"askRecipe":    func() { b.askRecipe(design.DensePart, "250 g whole milk\n2 eggs") },
		"Ask":          func() { b.bench.dense.lists[0].price(0) }, // packprice
		"askWholeEggs": b.askWholeEggs,
		"openElsewhere": func() {
			b.elsewhere = ""
			b.openElsewhere()
		},
		"offer":    func() { b.offer([]keeping.Offer{{Work: changed, Says: d}}) },
		"askWhose": func() { b.askWhose(nil) },
		"seeBoth":  func() { b.seeBoth("Both", d, changed) },
		"remedies": func() { // once they are known, of whatever design is open by now
			require.True(b.t, b.happens(func() bool { f := b.bench.mender.Found(); return f != nil && f.First() != nil }))
			b.bench.remedies()
		},
		"text":        func() { b.text("Keys", "Tab") },
		"weighing":    b.bench.foam.syrupDialog,
		"askCompare":  b.askCompare,
		"askStart":    b.askStart,
		"editDesign":  b.editDesign,
		"AskHow":      b.askHow,
		"askUnits":    b.askUnits,
		"note":        func() { b.bench.dense.lists[0].note(0) },
		"pick":        func() { b.bench.dense.lists[0].pick(-1) },
		"menu":        func() { b.bench.dense.lists[0].menu(0, b.bench.dense.lists[0].rows[0].more) },
		"choosePath":  func() { b.saveAs(nil) },
		"pickDesign":  b.openDialog,
		"pickPicture": func() { b.pickPicture(func(string) {}) },
		"unlessUnsaved": func() {
			b.Commit(changed, "serving temperature")
			b.unlessUnsaved(func() {})
		},
		"askWhy": b.askWhy,
		"askPack": func() {
			b.tap(places.Ask, say.WishAdd.String())
			b.frame()
			b.win.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn}) // the first of the design's ingredients
			b.frame()
			require.Contains(b.t, b.dialogTexts(), say.WishPackHolds.String())
		},
		"show": func() { photodialog.Show(b.Window, photodialog.Setup{Told: b.event}, path) },
		"newFolder": func() {
			b.App.Preferences().SetString(lastFolder, "file://"+filepath.Dir(path))
			b.newFolder(nil)
		},
		"askPast":     func() { b.askPast("Earlier", []past.Moment{{Title: "first", Design: d}}) },
		"keepVersion": b.keepVersion,
		"calibrate":   func() { b.tap(places.Cold, "I have measured it…") },
		"editKitchen": func() { b.tap(places.Cold, "Edit…") },
		"AskColour":   func() { b.tapIcon(places.Ripple) },
		"Confirm":     func() { kit.Confirm(b.win, "Sure?", "It goes.", "Delete", func() {}) },
		"Tell":        func() { kit.Tell(b.win, "Look", "It is so.") },
	}
}

// tapIcon presses the last button with nothing but an icon.
func (b *bed) tapIcon(at places.Place) {
	b.turnTo(at)
	b.frame()
	all := pagetest.All[*kit.Button](b.shown().Object())
	for i := len(all) - 1; i >= 0; i-- {
		if all[i].Text == "" {
			all[i].Tapped(nil)
			return
		}
	}
}

// escape is the key as the toolkit gives it: to what has the keyboard, else to the window.
func (b *bed) escape() {
	e := &fyne.KeyEvent{Name: fyne.KeyEscape}
	if f := b.win.Canvas().Focused(); f != nil {
		f.TypedKey(e)
	} else {
		b.looseKey(e)
	}
	b.frame()
}

// tab is the key as the toolkit gives it: to what has the keyboard and wants it, else on
// to the next.
func (b *bed) tab() {
	if f, ok := b.win.Canvas().Focused().(fyne.Tabbable); ok && f.AcceptsTab() {
		b.win.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyTab})
	} else {
		test.FocusNext(b.win.Canvas())
	}
	b.frame()
}

// Escape closes every dialog from wherever the keyboard is in it, and nothing is changed.
// A field that is being typed in, or a list that is open, may take the first for itself.
func TestEscapeClosesEachDialogFromWhereverTheKeyboardIs(t *testing.T) {
	b := newBed(t)
	b.saveTo(filepath.Join(t.TempDir(), "own.yaml"), true, nil)
	b.Commit(serveAt(b.Design(), -22), "serving temperature") // something to mend
	require.True(t, b.happens(func() bool { return b.bench.mender.Found() != nil && b.bench.mender.Found().First() != nil }))
	for name, open := range b.openers() {
		for tabs := range 9 {
			b.turnTo(places.Bench)
			open()
			b.frame()
			if !assert.True(t, b.asking(), "%s opens", name) {
				break
			}
			before := b.Design()
			for range tabs {
				b.tab()
			}
			for presses := 0; b.asking() && presses < 3; presses++ {
				b.escape()
			}
			assert.False(t, b.asking(), "%s after %d tabs, on %T", name, tabs, b.win.Canvas().Focused())
			for b.asking() {
				b.win.Canvas().Overlays().Remove(b.win.Canvas().Overlays().Top())
			}
			assert.True(t, before.Equal(b.Design()), name)
		}
	}
}

// Every function that opens a dialog stands among the openers.
func TestEveryDialogIsTried(t *testing.T) {
	tried := newBed(t).openers()
	err := filepath.WalkDir(".", func(path string, d fs.DirEntry, err error) error {
		if err != nil || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") || path == filepath.Join("kit", "question.go") {
			return err
		}
		f, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.SkipObjectResolution)
		if err != nil {
			return err
		}
		for _, decl := range f.Decls {
			fn, ok := decl.(*ast.FuncDecl)
			if !ok {
				continue
			}
			ast.Inspect(fn, func(n ast.Node) bool {
				call, ok := n.(*ast.CallExpr)
				if !ok {
					return true
				}
				s, ok := call.Fun.(*ast.SelectorExpr)
				if !ok {
					return true
				}
				if of, ok := s.X.(*ast.Ident); ok && (of.Name == "dialog" && strings.HasPrefix(s.Sel.Name, "New") || of.Name == "kit" && s.Sel.Name == "Ask" || s.Sel.Name == "ShowPopUpMenuAtPosition") {
					assert.Contains(t, tried, fn.Name.Name, "%s opens a dialog in %s", fn.Name.Name, path)
				}
				return true
			})
		}
		return nil
	})
	require.NoError(t, err)
}
