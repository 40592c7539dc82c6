package say

import (
	"path/filepath"
	"time"
)

// What is said of unsaved work and of files that others change.
const (
	UnsavedWork    Message = "Unsaved work"
	UnsavedItem    Message = "Unsaved work…"
	UnsavedStep    Message = "unsaved work"
	UnsavedOpened  Message = "Opened the unsaved work; Undo goes back to what the file says."
	UnsavedNew     Message = "Opened the unsaved work: save it under a name."
	NoUnsaved      Message = "No unsaved work is waiting."
	NeverSaved     Message = "It was never saved."
	FileIsGone     Message = "Its file is no longer there, so it opens without one."
	FileIsBroken   Message = "Its file cannot be read as it is now, so it opens without one."
	FileSaysOther  Message = "The file has been changed since. Saving asks which of the two to keep."
	OtherThanFile  Message = "What it has that the file has not:"
	NothingDiffers Message = "Nothing differs."
	KeptAgain      Message = "Unsaved work is kept again."

	KeepMine    Message = "Keep mine"
	TakeTheirs  Message = "Take theirs"
	SeeBoth     Message = "See both"
	TheirsStep  Message = "change in the file"
	TookTheirs  Message = "Took what the file says; Undo goes back to yours."
	KeptMine    Message = "Kept yours. It replaces the file when you save."
	MineToThem  Message = "From yours to theirs"
	ThemInVain  Message = "The file cannot be read as it is now: %s"
	TheyDiffer  Message = "What the file has that yours has not:"
	TheySaySame Message = "It says the same as yours."

	TwoWindows Message = "Open in another window"
	CarryOn    Message = "Carry on"
	SaveAsItem Message = "Save as…"
)

// When is a moment as a person writes it, in the time of its zone.
func When(at time.Time) string { return stamp(at, "2 January 2006, 15:04") }

// LeftOn says whose unsaved work is found, and of when.
func LeftOn(name, path string, at time.Time) string {
	text := T("Ripplewright ended before “%s” was saved. Last changed on %s.", Harmless(name, Terminal), When(at))
	if path != "" {
		text += " " + T("Its file is %s.", Harmless(path, Terminal))
	}
	return text
}

// ChangedByOther says that another program, or another window, has changed a file.
func ChangedByOther(path string) string {
	return T("Another program or window has changed %s since you opened or saved it.", Harmless(filepath.Base(path), Terminal))
}

// OpenElsewhere says that another window has a design open too.
func OpenElsewhere(path string) string {
	return T("Another window has %s open. What is saved there is asked about here before anything is overwritten; under another name each keeps its own.", Harmless(filepath.Base(path), Terminal))
}

// Joined says that another window has opened a design that is open here.
func Joined(path string) string {
	return T("Another window has opened %s too. What is saved there is asked about here before anything is overwritten.", Harmless(filepath.Base(path), Terminal))
}

// NotKept says why unsaved work is not kept.
func NotKept(why error) string {
	return T("Unsaved work cannot be kept for the next start: %s. Save the design soon.", Harmless(Flaw(why), Terminal))
}
