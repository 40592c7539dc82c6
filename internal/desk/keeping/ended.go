package keeping

import (
	"os"
	"os/signal"
	"syscall"
	"time"
)

// patience is how long a window may take to close before the program ends without it.
const patience = 2 * time.Second

// Ended has the work kept when the system asks the program to end: its terminal or its
// desktop goes, or somebody stops it. The window is then closed by quit, which asks
// nobody, and where that takes too long the program ends all the same. It heeds no
// signal that whoever started the program has it ignore.
func (k *Keeper) Ended(quit func()) {
	asked := make(chan os.Signal, 1)
	for _, s := range []os.Signal{os.Interrupt, syscall.SIGTERM, syscall.SIGHUP} {
		if !signal.Ignored(s) {
			signal.Notify(asked, s)
		}
	}
	go func() {
		defer signal.Stop(asked)
		select {
		case <-k.closed:
			return
		case <-asked:
		}
		_, _ = k.Flush() // which tells of an error
		go quit()
		select {
		case <-k.closed:
		case <-time.After(patience):
			os.Exit(1)
		}
	}()
}
