// Package assets holds the files that the program carries within itself.
//
// Nothing in internal imports it: commands and tests open a file here and
// hand its contents inward.
package assets

import "embed"

// Library holds library/ingredients.jsonl, which ingredient.Read reads, and
// library/SOURCES.md, the datasets and their terms.
//
//go:embed library/ingredients.jsonl library/SOURCES.md
var Library embed.FS

// LabelWords holds label/words.csv, which onpack.ReadWords reads: the words of
// a food label in the languages of the places of sale, with their sources.
//
//go:embed label/words.csv
var LabelWords embed.FS
