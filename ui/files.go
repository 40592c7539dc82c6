package ui

import (
	"errors"
	"os"
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/storage"
	"fyne.io/fyne/v2/storage/repository"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/designfile"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// Extension of design files.
const designExtension = ".yaml"

// pathChooser stands before the toolkit's file repository. Its save dialog
// opens, and so empties, the file chosen before anything is written; we only
// want the path, so a writer here touches nothing.
type pathChooser struct {
	repository.WritableRepository
	repository.HierarchicalRepository
	repository.ListableRepository
	base repository.Repository
}

type nothing struct{ uri fyne.URI }

func (n nothing) Write(p []byte) (int, error) { return len(p), nil }
func (n nothing) Close() error                { return nil }
func (n nothing) URI() fyne.URI               { return n.uri }

func (p *pathChooser) Exists(u fyne.URI) (bool, error)                { return false, nil } // choosePath asks, in the maker's language
func (p *pathChooser) Reader(u fyne.URI) (fyne.URIReadCloser, error)  { return p.base.Reader(u) }
func (p *pathChooser) CanRead(u fyne.URI) (bool, error)               { return p.base.CanRead(u) }
func (p *pathChooser) Destroy(s string)                               { p.base.Destroy(s) }
func (p *pathChooser) Writer(u fyne.URI) (fyne.URIWriteCloser, error) { return nothing{u}, nil }
func (p *pathChooser) CanWrite(u fyne.URI) (bool, error)              { return true, nil }

// chooseOnly makes the file dialogs choose paths and nothing else.
func chooseOnly() {
	u := storage.NewFileURI("/")
	base, err := repository.ForURI(u)
	if err != nil {
		return
	}
	if _, done := base.(*pathChooser); done {
		return
	}
	w, ok1 := base.(repository.WritableRepository)
	h, ok2 := base.(repository.HierarchicalRepository)
	l, ok3 := base.(repository.ListableRepository)
	if ok1 && ok2 && ok3 {
		repository.Register("file", &pathChooser{w, h, l, base})
	}
}

// choosePath asks where to save, adds the extension if none was typed, and asks
// before a file is replaced: whoever gets the path need not ask again.
func (w *Window) choosePath(name, extension string, then func(path string)) {
	chooseOnly()
	dg := dialog.NewFileSave(chosen(w, func(out fyne.URIWriteCloser) {
		path := out.URI().Path()
		out.Close()
		if filepath.Ext(path) == "" {
			path += extension
		}
		if at, err := os.Stat(path); err != nil || at.IsDir() { // whoever writes there says why not
			then(path)
			return
		}
		kit.Confirm(w.win, say.ReplaceFile.String(), say.Exists(filepath.Base(path)), say.Replace.String(), func() { then(path) })
	}), w.win)
	dg.SetFileName(name)
	w.showFiles(dg, say.SaveAsItem.String())
	kit.NameByEscape(w.win.Canvas())
}

// showFiles shows a dialog of files under a title, large enough to read their names, in the
// folder of the open design.
func (w *Window) showFiles(dg *dialog.FileDialog, title string) {
	dg.SetTitleText(strings.TrimSuffix(title, "…")) // the toolkit's own is put together of two words, as English does
	if p := w.Session.Path(); p != "" {
		if l, err := storage.ListerForURI(storage.NewFileURI(filepath.Dir(p))); err == nil {
			dg.SetLocation(l)
		}
	}
	dg.SetView(dialog.ListView)
	dg.Resize(page.Room(w.win.Canvas(), 64, 43))
	dg.Show()
	kit.NamePlaces(w.win.Canvas(), placeName)
	kit.OnFolderNew(w.win.Canvas(), func() { w.newFolder(dg) })
	kit.FocusFiles(w.win.Canvas())
}

// lastFolder is the preference in which the toolkit's file dialog keeps the folder
// that it shows, which it tells nobody else.
const lastFolder = "fyne:fileDialogLastFolder"

// newFolder asks for the name of a folder within the one that dg shows, makes it
// and shows it.
func (w *Window) newFolder(dg *dialog.FileDialog) {
	here, err := storage.ParseURI(w.App.Preferences().String(lastFolder))
	if err != nil {
		w.problem(err)
		return
	}
	name := kit.NewTextField()
	var ask *dialog.CustomDialog
	do := func() {
		ask.Hide()
		if name.Text == "" {
			return
		}
		path := filepath.Join(here.Path(), name.Text)
		if err := os.MkdirAll(path, 0o750); err != nil {
			w.problem(err)
			return
		}
		if l, err := storage.ListerForURI(storage.NewFileURI(path)); err == nil {
			dg.SetLocation(l)
		}
	}
	name.OnSubmitted = mishap.With(func(string) { do() })
	ask = kit.Ask(w.win, say.NewFolder.String(), widget.NewForm(widget.NewFormItem(say.NameField.String(), name)),
		kit.Answer{Name: say.Cancel.String(), Role: kit.ByEscape}, kit.Answer{Name: say.NewFolder.String(), Role: kit.ByReturn, Do: do})
	w.win.Canvas().Focus(name)
}

// chosen is what a file dialog calls: do gets the file, if one was chosen.
func chosen[F interface {
	comparable
	URI() fyne.URI
}](w *Window, do func(F)) func(F, error) {
	return func(file F, err error) {
		var none F
		switch {
		case err != nil:
			w.problem(err)
		case file != none:
			mishap.Do(func() { do(file) })
		}
	}
}

func (w *Window) openDialog() { w.pickDesign(w.open) }

// pickDesign asks for a design's file.
func (w *Window) pickDesign(then func(path string)) {
	dg := dialog.NewFileOpen(chosen(w, func(in fyne.URIReadCloser) {
		path := in.URI().Path()
		in.Close()
		then(path)
	}), w.win)
	dg.SetFilter(storage.NewExtensionFileFilter([]string{designExtension, ".yml"}))
	w.showFiles(dg, say.T("Open…"))
}

// pickPicture asks for a picture's file.
func (w *Window) pickPicture(then func(path string)) {
	dg := dialog.NewFileOpen(chosen(w, func(in fyne.URIReadCloser) {
		path := in.URI().Path()
		in.Close()
		then(path)
	}), w.win)
	dg.SetFilter(storage.NewExtensionFileFilter([]string{".jpg", ".jpeg", ".png", ".JPG", ".JPEG", ".PNG"}))
	w.showFiles(dg, say.T("Open…"))
}

// open reads the design at path; an error leaves everything as it is.
func (w *Window) open(path string) {
	if err := w.Session.Open(path); err != nil {
		w.problem(err)
		return
	}
	w.remember(w.Session.Path())
	w.elsewhere = ""
	w.Say(say.Opened(path))
	w.event("opened %s", path)
}

// save writes the design to its file, then calls then if it is not nil.
func (w *Window) save(then func()) {
	if w.Session.Path() == "" {
		w.saveAs(then)
		return
	}
	w.saveTo("", false, then)
}

func (w *Window) saveAs(then func()) {
	name := page.FileTitle(w.Design())
	if p := w.Session.Path(); p != "" {
		name = strings.TrimSuffix(filepath.Base(p), filepath.Ext(p))
	}
	w.choosePath(name+designExtension, designExtension, func(path string) { w.saveTo(path, true, then) })
}

func (w *Window) saveTo(path string, force bool, then func()) {
	err := w.Session.Save(path, force)
	var changed *designfile.ChangedOnDiskError
	switch {
	case errors.As(err, &changed):
		w.askWhose(func() { w.saveTo(path, false, then) })
	case err != nil:
		w.event("problem %v", err)
		kit.Tell(w.win, say.DidNotWork.String(), say.CouldNotSave(err))
	default:
		w.remember(w.Session.Path())
		w.Say(say.Saved(w.Session.Path()))
		if why := w.Session.NoBackup(); why != nil {
			w.Say(say.BackupMissing(w.Session.Path(), why))
		}
		w.event("saved %s", w.Session.Path())
		w.keeper.Settle()
		if then != nil {
			then()
		}
	}
}

// problem shows an error; a file's names file, line and key.
func (w *Window) problem(err error) {
	w.event("problem %v", err)
	kit.Tell(w.win, say.DidNotWork.String(), say.Sentence(say.Flaw(err)))
}

// unlessUnsaved does next at once, or asks first if something would be lost.
func (w *Window) unlessUnsaved(next func()) {
	if !w.Session.Dirty() {
		next()
		return
	}
	var dg *dialog.CustomDialog
	dg = kit.Ask(w.win, say.SaveChanges.String(), widget.NewLabel(w.Session.Title()),
		kit.Answer{Name: say.Cancel.String(), Role: kit.ByEscape},
		kit.Answer{Name: say.Discard.String(), Role: kit.ByHand, Do: func() { dg.Hide(); next() }},
		kit.Answer{Name: say.Save.String(), Role: kit.ByReturn, Do: func() { dg.Hide(); w.save(next) }})
}

// close asks about unsaved changes and quits.
func (w *Window) close() {
	w.unlessUnsaved(func() {
		w.keeper.Look(w.Session)
		w.keeper.Settle() // saved, or let go of
		w.event("closed")
		w.win.SetCloseIntercept(nil)
		w.quit()
	})
}
