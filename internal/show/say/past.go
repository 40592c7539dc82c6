package say

import (
	"strconv"
	"time"
)

// What is said of earlier saves and of versions.
const (
	EarlierItem    Message = "Earlier saves…"
	EarlierHead    Message = "Earlier saves"
	NoEarlier      Message = "No save of this design is kept yet."
	VersionsItem   Message = "Versions…"
	VersionsHead   Message = "Versions"
	NoVersions     Message = "No version of this design is kept yet. Keep one from the File menu."
	KeepVersion    Message = "Keep a version…"
	KeepVersionAct Message = "Keep"
	SaveFirst      Message = "Save the design first: its versions are kept beside its file."
	VersionNote    Message = "Note"
	VersionHint    Message = "for example: as everyone liked it"
	GoBack         Message = "Go back to it"
	GoBackTo       Message = "Go back to"
	ComparedWith   Message = "Compared with"
	AsItIsNow      Message = "the design as it is now"
	WentBack       Message = "Went back; Undo brings what was there before."
	VersionKept    Message = "A version is kept beside the design's file."
	BackTo         Message = "return to %s"
)

// SavedAt names a save, the number of saves ago, by its moment.
func SavedAt(number int, at time.Time) string {
	return strconv.Itoa(number) + ", " + stamp(at, "2 January 2006, 15:04:05")
}

// VersionTitle names a version: its number, its moment, its note or its batch.
func VersionTitle(number int, at time.Time, note, batch string) string {
	text := strconv.Itoa(number) + ", " + When(at)
	if note != "" {
		text += ": " + Harmless(note, Terminal)
	}
	if batch != "" {
		text = T("%s (batch %s)", text, Harmless(batch, Terminal))
	}
	return text
}

// BackupMissing says why a save has no backup.
func BackupMissing(path string, why error) string {
	return T("%s, but no backup of it is kept: %s", Saved(path), Harmless(Flaw(why), Terminal))
}

// NoVersionOf says that a design has no versions.
func NoVersionOf(file string) string { return T("No version of %s is kept yet.", file) }

// BeforeGoingBack is the note on what a design said before it went back to a version.
func BeforeGoingBack(number int) string {
	return T("before going back to version %s", strconv.Itoa(number))
}
