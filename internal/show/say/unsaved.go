package say

import (
	"path/filepath"
	"time"
)

// What is said of unsaved work and of files that others change.
const (
	UnsavedWork    = "Unsaved work"
	UnsavedItem    = "Unsaved work…"
	UnsavedStep    = "unsaved work"
	UnsavedOpened  = "Opened the unsaved work; Undo goes back to what the file says."
	UnsavedNew     = "Opened the unsaved work: save it under a name."
	NoUnsaved      = "No unsaved work is waiting."
	NeverSaved     = "It was never saved."
	FileIsGone     = "Its file is no longer there, so it opens without one."
	FileIsBroken   = "Its file cannot be read as it is now, so it opens without one."
	FileSaysOther  = "The file has been changed since. Saving asks which of the two to keep."
	OtherThanFile  = "What it has that the file has not:"
	NothingDiffers = "Nothing differs."
	KeptAgain      = "Unsaved work is kept again."

	KeepMine    = "Keep mine"
	TakeTheirs  = "Take theirs"
	SeeBoth     = "See both"
	TheirsStep  = "change in the file"
	TookTheirs  = "Took what the file says; Undo goes back to yours."
	KeptMine    = "Kept yours. It replaces the file when you save."
	MineToThem  = "From yours to theirs"
	ThemInVain  = "The file cannot be read as it is now: "
	TheyDiffer  = "What the file has that yours has not:"
	TheySaySame = "It says the same as yours."

	TwoWindows = "Open in another window"
	CarryOn    = "Carry on"
	SaveAsItem = "Save as…"
)

// When is a moment as a person writes it, in the time of its zone.
func When(at time.Time) string { return at.Format("2 January 2006, 15:04") }

// LeftOn says whose unsaved work is found, and of when.
func LeftOn(name, path string, at time.Time) string {
	text := "Ripplewright ended before “" + Harmless(name, Terminal) + "” was saved. Last changed on " + When(at) + "."
	if path != "" {
		text += " Its file is " + Harmless(path, Terminal) + "."
	}
	return text
}

// ChangedByOther says that another program, or another window, has changed a file.
func ChangedByOther(path string) string {
	return "Another program or window has changed " + Harmless(filepath.Base(path), Terminal) + " since you opened or saved it."
}

// OpenElsewhere says that another window has a design open too.
func OpenElsewhere(path string) string {
	return "Another window has " + Harmless(filepath.Base(path), Terminal) + " open. What is saved there is asked about here before anything is overwritten; under another name each keeps its own."
}

// NotKept says why unsaved work is not kept.
func NotKept(why error) string {
	return "Unsaved work cannot be kept for the next start: " + Harmless(why.Error(), Terminal) + ". Save the design soon."
}
