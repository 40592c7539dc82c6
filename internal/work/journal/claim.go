package journal

import (
	"os"

	"ripplewright/internal/form/flaw"
)

// errHeld says that another window holds a page.
var errHeld = flaw.New("another window has it")

// claimed is a lock file that is held, which the end of the process lets go of.
type claimed struct{ file *os.File }

// release lets go of the lock and takes its file away.
func (c claimed) release() {
	if c.file != nil {
		letGo(c.file)
	}
}
