package tongue

import (
	"embed"
	"encoding/json"
	"fmt"
	"io/fs"
	"strings"
	"sync"

	"github.com/nicksnyder/go-i18n/v2/i18n"
	"golang.org/x/text/language"
)

// Files holds the catalogue: active.en.json, which is generated from the sources,
// and AREA.LANGUAGE.json of the others.
//
//go:embed catalogue
var Files embed.FS

// A Named is a language: its tag and what it calls itself.
type Named struct{ Tag, Name string }

// Languages are those of the catalogue.
var Languages = []Named{{English, "English"}, {"de", "Deutsch"}}

var loaded sync.Map // of a tag, its texts

// of returns the texts of a language, false where there are none.
func of(tag string) (map[Message]string, bool) {
	if texts, ok := loaded.Load(tag); ok {
		return texts.(map[Message]string), true
	}
	texts, err := Texts(tag)
	if err != nil || len(texts) == 0 {
		return nil, false
	}
	loaded.Store(tag, texts)
	return texts, true
}

// Texts reads every message of a language. An error names the file.
func Texts(tag string) (map[Message]string, error) {
	bundle := i18n.NewBundle(language.English)
	bundle.RegisterUnmarshalFunc("json", json.Unmarshal)
	names, err := fs.Glob(Files, "catalogue/*."+tag+".json")
	if err != nil {
		return nil, err
	}
	texts := map[Message]string{}
	for _, name := range names {
		data, err := Files.ReadFile(name)
		if err != nil {
			return nil, err
		}
		file, err := bundle.ParseMessageFileBytes(data, name)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", name, err)
		}
		for _, m := range file.Messages {
			if !strings.HasPrefix(m.ID, about) {
				texts[Message(m.ID)] = m.Other
			}
		}
	}
	return texts, nil
}

// about begins the name of what a file says of itself, since JSON has no comments.
const about = "@"

// ByLocale is the language for a locale of the system, "de_AT.UTF-8": English
// where the catalogue has none for it.
func ByLocale(locale string) string {
	tag, _, _ := strings.Cut(strings.ToLower(locale), ".")
	tag, _, _ = strings.Cut(strings.ReplaceAll(tag, "-", "_"), "_")
	for _, l := range Languages {
		if l.Tag == tag {
			return tag
		}
	}
	return English
}
