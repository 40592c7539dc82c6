package main

import (
	"bytes"
	"context"
	"fmt"
	"math"
	"runtime"
	"strings"
	"sync"

	"github.com/spf13/pflag"

	"ripplewright/internal/answer/balance"
	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/show/report"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
)

var evaluateCommand = &command{
	name:  "evaluate",
	usage: "evaluate FILE... [--json] [--at C]",
	short: "Computes every figure of one or more designs",
	long: `
Text also says how long a tub stays out of the freezer in the design's kitchen.
FILE is a design file; "-" reads standard input. With --json each design is one
line with one JSON object (see "ripplecalc help json"), in the order of the
files. A file with an error is named on standard error and the others go on; the
exit code is then 1.

  --at C    the temperature in °C, −40 to 0, instead of the file's
  --json    JSON instead of text
`,
	least: 1,
	most:  -1,
	flags: evaluateFlags,
}

func evaluateFlags(c *command, flags *pflag.FlagSet) action {
	asJSON := flags.Bool("json", false, "")
	at := flags.Float64("at", math.NaN(), "")
	return func(s *shell, files []string) error {
		given := false
		flags.Visit(func(f *pflag.Flag) { given = given || f.Name == "at" })
		switch {
		case given && math.IsNaN(*at): // which parses
			return c.misused("--at takes a temperature in °C")
		case given && !(*at >= model.ColdestC && *at <= model.WarmestC):
			of := func(t float64) string { return report.Reads.Short(t, 1) }
			return c.misused("--at %s °C is outside %s to %s °C", of(*at), of(model.ColdestC), of(model.WarmestC))
		}
		b, err := openBench()
		if err != nil {
			return err
		}
		sw := sweep{bench: b, shell: s, json: *asJSON, at: *at}
		return sw.run(files)
	}
}

// sweep evaluates many files.
type sweep struct {
	bench *bench
	shell *shell
	json  bool
	at    float64 // °C; NaN: each file's own
}

// answer is what one file comes to.
type answer struct {
	text []byte
	err  error
}

// run evaluates the files on all processors and answers in their order.
func (w *sweep) run(files []string) error {
	answers := make([]chan answer, len(files))
	for i := range answers {
		answers[i] = make(chan answer, 1)
	}
	next := make(chan int)
	var workers sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), len(files)) {
		workers.Add(1)
		go func() {
			defer workers.Done()
			for i := range next {
				answers[i] <- w.one(files[i])
			}
		}()
	}
	go func() {
		for i := range files {
			next <- i
		}
		close(next)
	}()
	defer workers.Wait()

	var worst error
	for i := range files {
		a := <-answers[i]
		if a.err != nil {
			worst = worse(worst, w.shell.report(a.err))
			continue
		}
		if i > 0 && !w.json {
			fmt.Fprintln(w.shell.out)
		}
		w.shell.out.Write(a.text) // the buffer keeps its first error for the end
	}
	return worst
}

// worse returns the error that stands for the worse of what was and a new exit
// code.
func worse(was error, code int) error {
	if was != nil && was != errReported {
		return was
	}
	if code == exitFault {
		return &faultError{flaw.New("some designs could not be computed")}
	}
	return errReported
}

// one evaluates one file, whatever happens.
func (w *sweep) one(name string) (a answer) {
	a.err = guard(func() error {
		f, err := w.bench.load(w.shell, name)
		if err != nil {
			return err
		}
		d := f.Design
		if !math.IsNaN(w.at) {
			d.Serving.TemperatureC = w.at
		}
		bench, err := w.bench.taughtBy(f, name)
		if err != nil {
			return err
		}
		r, err := bench.evaluateAt(f, d.Serving.TemperatureC)
		if err != nil {
			return err
		}
		found := balance.Mend(context.Background(), bench.Model, d, &r, balance.Locks{})
		e := report.Evaluate(name, d, &r, &found)
		if !w.json || found.Warmer() {
			if kitchen, unknown := kitchenOf(f, name, ""); unknown == nil { // else the command cold says why
				e = w.timed(e, d, &r, &found, kitchen)
			}
		}
		var text bytes.Buffer
		if w.json {
			err = report.WriteJSON(&text, e, false)
		} else {
			var page strings.Builder
			err = e.WriteText(&page)
			text.WriteString(say.HarmlessPage(page.String()))
		}
		if err != nil {
			return &faultError{err}
		}
		a.text = text.Bytes()
		return nil
	})
	return a
}

// timed tells how long the tubs of remedies stay out in a kitchen, and in a text that of
// d itself: a tenth of a second, which is not for the thousands of a sweep by JSON.
func (w *sweep) timed(e report.Evaluation, d design.Design, r *model.Result, found *balance.Remedies, in cold.Profile) report.Evaluation {
	_ = found.TimeOut(context.Background(), in)
	if w.json {
		return e
	}
	times, err := cold.Plan(context.Background(), d, r, in, cold.Options{NoPictures: true})
	if err != nil {
		return e
	}
	return e.Timed(&times)
}
