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

// Leave ends the program by quit, for the window's thread. The toolkit can wait for itself
// as it ends (2.7.1: for an event that comes while its queue is emptied), and the program
// would stay without a window, its page of the journal taken: where quit does not end it,
// it ends all the same.
func (k *Keeper) Leave(quit func()) {
	go func() {
		select {
		case <-k.closed:
		case <-time.After(patience):
			_ = k.Close()
			os.Exit(0)
		}
	}()
	quit()
}
