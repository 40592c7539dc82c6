// Package mishap is the net under the window: it catches a panic in a callback
// or a worker, so that the program goes on and the work can be kept.
//
// A process has one net. While nobody has asked to be told, nothing is caught:
// a test sees the panic itself.
package mishap

import (
	"fmt"
	"runtime"
	"runtime/debug"
	"strings"
	"sync/atomic"
	"time"

	"ripplewright/internal/form/flaw"
)

// A Mishap is a panic that was caught.
type Mishap struct {
	Value any
	Stack []byte
	At    time.Time
}

// ErrCaught is what Try returns of a panic: a sentence for who waits for an
// answer.
var ErrCaught = flaw.New("something went wrong inside the program")

var told atomic.Pointer[func(Mishap)]

// Tell has f told of every mishap, on the goroutine on which it happened, until
// forget is called.
func Tell(f func(Mishap)) (forget func()) {
	told.Store(&f)
	return func() { told.CompareAndSwap(&f, nil) }
}

// Try runs f. A panic is caught and told, and comes back as ErrCaught.
func Try(f func()) (err error) {
	tell := told.Load()
	if tell == nil {
		f()
		return nil
	}
	defer func() {
		if v := recover(); v != nil {
			err = ErrCaught
			(*tell)(Of(v))
		}
	}()
	f()
	return nil
}

// Answer is what f returns. After a panic, caught and told, it is ErrCaught, so
// that whoever waits hears of it.
func Answer[T any](f func() (T, error)) (v T, err error) {
	if caught := Try(func() { v, err = f() }); caught != nil {
		err = caught
	}
	return v, err
}

// Of is the mishap of a value that a deferred function has just recovered.
func Of(v any) Mishap { return Mishap{v, debug.Stack(), time.Now()} }

// Do runs f in the net.
func Do(f func()) { _ = Try(f) }

// Go runs f in the net on a goroutine of its own.
func Go(f func()) { go Do(f) }

// Func returns f in the net; nil stays nil.
func Func(f func()) func() {
	if f == nil {
		return nil
	}
	return func() { Do(f) }
}

// With returns f in the net; nil stays nil.
func With[T any](f func(T)) func(T) {
	if f == nil {
		return nil
	}
	return func(v T) { Do(func() { f(v) }) }
}

// Place is where it happened: the first line of the stack below the panic. A
// mishap that comes again has the same.
func (m Mishap) Place() string {
	lines := strings.Split(string(m.Stack), "\n")
	for i, l := range lines {
		if strings.HasPrefix(l, "panic(") && i+3 < len(lines) {
			at, _, _ := strings.Cut(strings.TrimSpace(lines[i+3]), " +0x")
			return at
		}
	}
	return ""
}

// valueLetters bounds what a report says of the value: it may hold a whole file.
const valueLetters = 300

// Report is what a maker may send: what happened and where, nothing of a recipe
// but what the panic itself says.
func (m Mishap) Report(version string) string {
	value := []rune(fmt.Sprint(m.Value))
	if len(value) > valueLetters {
		value = append(value[:valueLetters], '…')
	}
	var b strings.Builder
	fmt.Fprintf(&b, "Ripplewright %s on %s/%s, %s\n", version, runtime.GOOS, runtime.GOARCH, runtime.Version())
	fmt.Fprintf(&b, "%s\n\n%q\n\n%s", m.At.UTC().Format(time.RFC3339), string(value), m.Stack)
	return b.String()
}
