package ui

import (
	"encoding/json"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/show/say"
	"ripplewright/internal/show/tongue"
	"ripplewright/ui/page"
)

// prefLanguage is the key of the language that the maker has chosen.
const prefLanguage = "language"

// restoreLanguage speaks what was said at the start, else what the maker has chosen,
// else what the system speaks.
func (w *Window) restoreLanguage() {
	for _, tag := range []string{w.Language, w.App.Preferences().String(prefLanguage), tongue.ByLocale(w.Locale)} {
		if tag != "" && speak(tag) {
			return
		}
	}
}

// speak chooses a language for the program and the toolkit.
func speak(tag string) bool {
	if !tongue.Speak(tag) {
		return false
	}
	words := map[string]string{}
	for id, m := range toolkit() {
		words[id] = m.String()
	}
	data, err := json.Marshal(words)
	if err != nil {
		return true // cannot be: they are texts
	}
	// The toolkit takes its language from the system: its words are put there, and where it
	// looks if the system names none that it can read, as "C".
	for _, locale := range [...]fyne.Locale{tongue.English, fyne.Locale(lang.SystemLocale().LanguageString())} {
		if err := lang.AddTranslationsForLocale(data, locale); err != nil {
			fyne.LogError("the toolkit keeps its own words", err)
		}
	}
	return true
}

// toolkit are the words of the toolkit's own dialogs and menus, by its names.
func toolkit() map[string]say.Message {
	return map[string]say.Message{"Advanced": "Advanced", "Cancel": "Cancel", "Confirm": "Confirm", "Copy": "Copy", "Create Folder": "Create Folder",
		"Cut": "Cut", "Enter filename": "Enter filename", "Error": "Error", "Favourites": "Favourites", "File": "File", "Folder": "Folder",
		"New Folder": "New Folder", "No": "No", "OK": "OK", "Open": "Open", "Paste": "Paste", "Quit": "Quit", "Redo": "Redo", "Save": "Save",
		"Select all": "Select all", "Show Hidden Files": "Show Hidden Files", "Undo": "Undo", "Yes": "Yes",
		"file.name": "Name", "file.parent": "Folder above"}
}

// placeName is what a place is called that the toolkit's file dialog offers; a drive keeps its name.
func placeName(place string) string {
	if m, ok := map[string]say.Message{"App Files": "Files of the program", "Computer": "Computer", "Desktop": "Desktop",
		"Documents": "Documents", "Downloads": "Downloads", "Home": "Home", "Movies": "Movies", "Music": "Music",
		"Pictures": "Pictures", "Videos": "Videos"}[place]; ok {
		return m.String()
	}
	return place
}

// askLanguage adds the choice of a language to a form; chosen is told one.
func askLanguage(form *widget.Form, chosen func(tag string)) {
	var names []string
	for _, l := range tongue.Languages {
		names = append(names, l.Name)
	}
	pick, show := page.SelectOf(names, func(i int) { chosen(tongue.Languages[i].Tag) })
	show(slices.IndexFunc(tongue.Languages, func(l tongue.Named) bool { return l.Tag == tongue.Language() }))
	form.Append(say.T("Language"), pick)
	form.Append("", page.Prose(say.LanguageAbout.String()))
}
