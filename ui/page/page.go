// Package page is the contract between the window and its secondary pages, each
// one click away from the bench and a package of its own, and what the pages
// share to be laid out alike.
//
// A page reads the design and its result from a Host and hands changes back to
// it; it computes nothing but by calling the packages under internal, off the
// window's thread where that takes more than a few milliseconds.
package page

import (
	"fyne.io/fyne/v2"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/work/design"
)

// Host is what a page knows of the program around it. All methods are called on
// the window's thread.
type Host interface {
	// Design returns the current design.
	Design() design.Design
	// Result returns its latest result, never nil.
	Result() *model.Result
	// Model returns the model in use, with its library.
	Model() *model.Model
	// Preview replaces the design while a hand still moves something; Commit
	// when it rests, as one step of undo with that name.
	Preview(design.Design)
	Commit(d design.Design, step string)
	// Post runs f on the window's thread, from any goroutine.
	Post(f func())
	// Window is where dialogs go.
	Window() fyne.Window
	// Say puts a line into the status line.
	Say(string)
	// Export asks where to write a file, offering name, whose extension is the
	// one given to a path typed without, and calls write with the path chosen,
	// off the window's thread. It says what came of it, and asks before a file
	// is replaced. write must take all it needs by value.
	Export(name string, write func(path string) error)
}

// Page is one secondary page.
type Page interface {
	// Object is the page's content, made once.
	Object() fyne.CanvasObject
	// Show brings the page up to date. The host calls it when the page comes
	// into view, and once a frame when the design has changed while it is.
	Show()
	// Leave stops whatever runs for the page. The host calls it when the page
	// goes out of view.
	Leave()
}
