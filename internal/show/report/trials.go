package report

import (
	"io"
	"strings"
	"time"

	"ripplewright/internal/answer/balance"
	"ripplewright/internal/show/say"
)

// Trials is how well the searches of package balance do on designs of a seed.
type Trials struct {
	Seed                 int64
	RoundTrips, Remedies balance.Trial
}

// MarshalJSON returns one object with round_trips and remedies.
func (t Trials) MarshalJSON() ([]byte, error) {
	return object{{"seed", t.Seed}, {"round_trips", trialObject(&t.RoundTrips)}, {"remedies", trialObject(&t.Remedies)}}.MarshalJSON()
}

func trialObject(t *balance.Trial) object {
	missed := []object{}
	for i := range t.Missed {
		m := &t.Missed[i]
		missed = append(missed, object{{"case", m.Case}, {"family", m.Family}, {"fault", m.Fault}, {"wishes", outcomeObjects(m.Outcomes)}, {"unmet", list(m.Cautions)}})
	}
	ms := func(percent int) Number { return Number(1e3 * took(t, percent).Seconds()) }
	return object{{"cases", t.Cases}, {"met", t.Met}, {"named", t.Named}, {"p50_ms", ms(50)}, {"p95_ms", ms(95)}, {"max_ms", ms(100)}, {"missed", missed}}
}

// took is the time within which so many per cent of the cases were done.
func took(t *balance.Trial, percent int) time.Duration {
	if len(t.Took) == 0 {
		return 0
	}
	return t.Took[(len(t.Took)-1)*percent/100]
}

// WriteText writes it as a page for a terminal.
func (t Trials) WriteText(w io.Writer) error {
	p := &page{w: w}
	for _, x := range [...]struct {
		of    *balance.Trial
		words func(say.Style, *balance.Trial) string
	}{{&t.RoundTrips, say.RoundTrips}, {&t.Remedies, say.Remedies}} {
		p.line("%s", x.words(Reads, x.of))
		p.line("  %s", say.TrialTook(Reads, took(x.of, 50), took(x.of, 95), took(x.of, 100)))
		for i := range x.of.Missed {
			m := &x.of.Missed[i]
			p.line("  %d: %s", m.Case, strings.TrimSpace(m.Family+", "+m.Fault+" "+strings.Join(m.Cautions, ", ")))
			for k := range m.Outcomes {
				p.line("     %s", say.Outcome(Reads, &m.Outcomes[k]))
			}
		}
	}
	return p.err
}
