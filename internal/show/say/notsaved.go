package say

import (
	"errors"
	"io/fs"
	"syscall"
)

// CouldNotSave says why a design is not saved, and that nothing of it is lost.
func CouldNotSave(err error) string {
	why := "" // where the system's own words are plain enough, or the file's are about a line
	switch {
	case errors.Is(err, syscall.ENOSPC):
		why = T("The disk is full.") + " "
	case errors.Is(err, fs.ErrPermission), errors.Is(err, syscall.EROFS):
		why = T("Nothing may be written in that folder.") + " "
	case errors.Is(err, fs.ErrNotExist):
		why = T("The folder is not there any more.") + " "
	}
	return T("%sThe design is not saved. It stays in this window, and is kept as unsaved work; save it again, or under another name.\n%s", why, HarmlessLine(Sentence(Flaw(err))))
}
