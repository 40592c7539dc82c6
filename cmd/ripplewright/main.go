// Command ripplewright opens the window on a design.
//
//	ripplewright [--language en|de] [FILE]
//	ripplewright --version
package main

import (
	"fmt"
	"io/fs"
	"os"
	"path"
	"runtime/debug"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/app"
	"fyne.io/fyne/v2/lang"

	"ripplewright/assets"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/schemafile"
	"ripplewright/internal/answer/start"
	"ripplewright/internal/desk/chime"
	"ripplewright/internal/desk/keeping"
	"ripplewright/internal/desk/newest"
	"ripplewright/internal/desk/preferences"
	"ripplewright/internal/desk/rescue"
	"ripplewright/internal/desk/session"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/onpack"
	"ripplewright/internal/show/tongue"
	"ripplewright/internal/work/backups"
	"ripplewright/internal/work/batch"
	"ripplewright/internal/work/design"
	"ripplewright/internal/work/designfile"
	"ripplewright/internal/work/journal"
	"ripplewright/internal/work/userdata"
	"ripplewright/testdata"
	"ripplewright/ui"
	"ripplewright/ui/spare"
)

// Exit codes, as those of ripplecalc.
const (
	fine, atFault, usage, ours = 0, 1, 2, 3
)

func main() { os.Exit(run(os.Args[1:])) }

// garbage is how much of it there is, in bytes, before it is collected. What lives is 40 MB,
// and twice as much where large pictures are shown; a collection takes a few ms of the other
// processor.
const garbage = 12 << 20

// opening is the share of what lives, in percent, after which garbage is collected until the
// first frame is out: the little that there is then is not worth looking through again and
// again.
const opening = 400

func run(args []string) int {
	debug.SetGCPercent(opening)
	file, language := "", ""
	if len(args) > 1 && args[0] == "--language" {
		language, args = args[1], args[2:]
		if !tongue.Speak(language) {
			fmt.Fprintf(os.Stderr, "ripplewright: --language %q is none of en, de\n", language)
			return usage
		}
	}
	switch {
	case len(args) == 1 && args[0] == "--version":
		fmt.Println("ripplewright", version())
		return fine
	case len(args) > 1 || len(args) == 1 && len(args[0]) > 0 && args[0][0] == '-':
		fmt.Fprintln(os.Stderr, "usage: ripplewright [--language en|de] [FILE] | --version")
		return usage
	case len(args) == 1:
		file = args[0]
	}
	shelf, err := library()
	if err != nil {
		fmt.Fprintln(os.Stderr, "ripplewright:", err)
		return ours
	}
	demos, first, err := demos()
	if err != nil {
		fmt.Fprintln(os.Stderr, "ripplewright:", err)
		return ours
	}
	s := session.New(model.New(shelf.Library()), first)
	s.BackUp(backups.At(dataFolder("backups")))
	if file != "" {
		if err := s.Open(file); err != nil {
			fmt.Fprintln(os.Stderr, err)
			if err := shelf.Err(); err != nil {
				fmt.Fprintln(os.Stderr, "ripplewright: your own ingredients are left out:", err)
			}
			return atFault
		}
	}
	sources, _ := assets.Library.ReadFile("library/SOURCES.md")
	notices, err := preferable()
	if err != nil {
		fmt.Fprintln(os.Stderr, "ripplewright:", err)
		return atFault
	}
	words, err := onpack.OpenWords(assets.LabelWords)
	if err != nil {
		fmt.Fprintln(os.Stderr, "ripplewright:", err)
		return ours
	}
	flat()
	app.SetMetadata(fyne.AppMetadata{ID: ui.AppID, Name: "Ripplewright", Migrations: map[string]bool{"fyneDo": !asksForThread()}})
	a := app.NewWithID(ui.AppID)
	a.SetIcon(fyne.NewStaticResource("icon.png", assets.Icon))
	kept := journal.At(dataFolder("journal"))
	if old, err := userdata.Path("rescued", "rescued designs"); err == nil {
		keeping.Adopt(kept, old)
	}
	starts, err := start.Open(assets.Bases)
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		return ours
	}
	release := newest.Hold()
	begun := func() {
		spare.Bound(garbage)
		release()
	}
	window := ui.New(ui.Setup{App: a, Language: language, Locale: lang.SystemLocale().String(), Journal: kept, Drafts: batch.DraftsAt(dataFolder("drafts")), Rescue: rescue.At(dataFolder("reports")), Session: s, Demos: demos, Starts: starts, Tables: testdata.Tables, LabelWords: words,
		Sources: string(sources), Shelf: shelf, Schemas: schemafile.Here(), Version: version(), Notices: notices, Ring: chime.Ring, Events: events(), Begun: begun})
	if err := window.Run(); err != nil {
		fmt.Fprintln(os.Stderr, err)
		return ours
	}
	return fine
}

// asksForThread reports whether the toolkit is to ask of every call to it whether it comes
// from the window's thread, as a test wants. It writes out the stack for that, which takes half
// a millisecond of each frame of a drag.
func asksForThread() bool { return os.Getenv("RIPPLEWRIGHT_THREADS") == "ask" }

// dataFolder is a folder in which the program keeps things by itself, "" on a machine
// that names no place for it: what would be there is not kept then.
func dataFolder(name string) string {
	path, err := userdata.DataPath(name, name)
	if err != nil {
		return ""
	}
	return path
}

// preferable sees to it that the toolkit can read the preferences, and returns
// what the window is to say of them.
func preferable() ([]string, error) {
	said, err := preferences.Aside(preferences.Path(ui.AppID), ui.Preferences(), time.Now())
	if said == "" {
		return nil, err
	}
	return []string{said}, err
}

// library reads the built-in ingredients and the maker's own. Own ones that
// cannot be read are left out; the window says so.
func library() (*userdata.Shelf, error) {
	lib, err := ingredient.Open(assets.Library)
	if err != nil {
		return nil, err
	}
	path, err := userdata.IngredientsPath()
	if err != nil {
		path = "" // a machine without a folder for settings has none
	}
	return userdata.NewShelf(lib, path), nil
}

// demos reads the built-in designs, and which comes first.
func demos() (all []ui.Demo, first design.Design, err error) {
	entries, err := fs.ReadDir(assets.Demos, "demos")
	if err != nil {
		return nil, first, err
	}
	for _, e := range entries {
		name := path.Join("demos", e.Name())
		data, err := assets.Demos.ReadFile(name)
		if err != nil {
			return nil, first, err
		}
		f, err := designfile.Decode(e.Name(), data)
		if err != nil {
			return nil, first, err
		}
		all = append(all, ui.Demo{Name: f.Design.Name, Design: f.Design})
		if name == assets.FirstDemo {
			first = f.Design
		}
	}
	return all, first, nil
}

// events opens the log of effects that RIPPLEWRIGHT_EVENTS names, if any.
func events() *os.File {
	name := os.Getenv("RIPPLEWRIGHT_EVENTS")
	if name == "" {
		return nil
	}
	f, err := os.OpenFile(name, os.O_CREATE|os.O_APPEND|os.O_WRONLY, 0o644)
	if err != nil {
		fmt.Fprintln(os.Stderr, "ripplewright:", err)
		return nil
	}
	return f
}

// release is set by .ci/package from FyneApp.toml.
var release string

func version() string {
	if release != "" {
		return release
	}
	if i, ok := debug.ReadBuildInfo(); ok && i.Main.Version != "" {
		return i.Main.Version
	}
	return "(devel)"
}
