package say

import (
	"strconv"
	"time"
)

// What is said of earlier saves and of versions.
const (
	EarlierItem    = "Earlier saves…"
	EarlierHead    = "Earlier saves"
	NoEarlier      = "No save of this design is kept yet."
	VersionsItem   = "Versions…"
	VersionsHead   = "Versions"
	NoVersions     = "No version of this design is kept yet. Keep one from the File menu."
	KeepVersion    = "Keep a version…"
	KeepVersionAct = "Keep"
	SaveFirst      = "Save the design first: its versions are kept beside its file."
	VersionNote    = "Note"
	VersionHint    = "for example: as everyone liked it"
	GoBack         = "Go back to it"
	GoBackTo       = "Go back to"
	ComparedWith   = "Compared with"
	AsItIsNow      = "the design as it is now"
	WentBack       = "Went back; Undo brings what was there before."
	VersionKept    = "A version is kept beside the design's file."
	BackTo         = "return to "
)

// SavedAt names a save, the number of saves ago, by its moment.
func SavedAt(number int, at time.Time) string {
	return strconv.Itoa(number) + ", " + at.Format("2 January 2006, 15:04:05")
}

// VersionTitle names a version: its number, its moment, its note or its batch.
func VersionTitle(number int, at time.Time, note, batch string) string {
	text := strconv.Itoa(number) + ", " + When(at)
	if note != "" {
		text += ": " + Harmless(note, Terminal)
	}
	if batch != "" {
		text += " (batch " + Harmless(batch, Terminal) + ")"
	}
	return text
}

// BackupMissing says why a save has no backup.
func BackupMissing(path string, why error) string {
	return Saved(path) + ", but no backup of it is kept: " + Harmless(why.Error(), Terminal)
}

// NoVersionOf says that a design has no versions.
func NoVersionOf(file string) string { return "No version of " + file + " is kept yet." }

// BeforeGoingBack is the note on what a design said before it went back to a version.
func BeforeGoingBack(number int) string {
	return "before going back to version " + strconv.Itoa(number)
}
