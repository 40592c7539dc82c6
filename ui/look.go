package ui

import (
	"maps"
	"slices"

	"ripplewright/internal/desk/preferences"
	"ripplewright/ui/theme"
	"ripplewright/ui/tubpage"
)

// Preferences: nothing of value lives in them.
const (
	prefDark     = "look.dark"
	prefContrast = "look.contrast"
	prefScale    = "look.scale"
	prefRecent   = "recent"
	mostRecent   = 8
)

// Preferences says what kind of value each key of the preferences has.
func Preferences() map[string]preferences.Kind {
	all := map[string]preferences.Kind{prefDark: preferences.Text, prefContrast: preferences.YesNo,
		prefScale: preferences.Count, prefRecent: preferences.Texts}
	maps.Copy(all, tubpage.Preferences())
	maps.Copy(all, unitPreferences())
	return all
}

func (w *Window) restoreLook() {
	p := w.App.Preferences()
	w.look = theme.Options{HighContrast: p.Bool(prefContrast), TextScale: float32(p.FloatWithFallback(prefScale, 1))}
	switch p.String(prefDark) {
	case "dark":
		w.look.Variant = theme.Dark
	case "light":
		w.look.Variant = theme.Light
	}
	w.App.Settings().SetTheme(theme.New(w.look))
}

func (w *Window) applyLook() {
	p := w.App.Preferences()
	p.SetString(prefDark, map[theme.Variant]string{theme.Dark: "dark", theme.Light: "light"}[w.look.Variant])
	p.SetBool(prefContrast, w.look.HighContrast)
	p.SetFloat(prefScale, float64(w.look.TextScale))
	w.App.Settings().SetTheme(theme.New(w.look))
	w.menus.mark()
	w.event("look dark=%t scale=%g", w.look.Variant == theme.Dark, w.look.TextScale)
}

func (w *Window) recent() []string { return w.App.Preferences().StringList(prefRecent) }

func (w *Window) remember(path string) {
	list := slices.DeleteFunc(w.recent(), func(p string) bool { return p == path })
	list = append([]string{path}, list...)
	w.App.Preferences().SetStringList(prefRecent, list[:min(len(list), mostRecent)])
}
