package benchview

import (
	"strings"

	"ripplewright/internal/answer/balance"
	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/show/say"
)

// Mood is how a judgement weighs.
type Mood uint8

// The moods.
const (
	Neutral Mood = iota
	Good
	Caution
	Wrong
)

// Judgement is the verdict of the open design, or what stands in its way, as the
// strip over the bench tells it.
type Judgement struct {
	Mood       Mood
	Word       string // one or two words
	Sentence   string
	Suggestion string // "" where none is needed
}

// Judged returns the judgement of r; err is why there is none. found and c are
// nil until remedies and the times in the cold are known.
func Judged(s say.Style, r *model.Result, found *balance.Remedies, c *cold.Answer, err error) Judgement {
	if err != nil {
		first, more, _ := strings.Cut(say.Flaw(err), "\n")
		j := Judgement{Mood: Wrong, Word: say.T("Not computed"), Sentence: first}
		if more != "" {
			j.Suggestion = say.AndMore(1 + strings.Count(more, "\n"))
		}
		return j
	}
	if r.Dense.WrittenG == 0 && r.Foam.WrittenG == 0 {
		return Judgement{Word: say.T("Begin"), Sentence: say.BeginHere.String()}
	}
	j := Judgement{Mood: Good, Word: say.T("Ready"), Sentence: say.Verdict(s, r.Verdict), Suggestion: say.Advice(s, r.Verdict, found, c)}
	if because := r.Verdict.Because; because != nil {
		j.Sentence = say.Cause(s, *because)
	}
	if learnt := say.TaughtShort(s, r); learnt != "" {
		j.Sentence += " " + learnt
	}
	if !r.Verdict.Good {
		j.Mood, j.Word = Caution, say.T("Adjust")
	}
	for _, w := range r.Warnings {
		if w.Severity == model.Serious {
			j.Mood, j.Word = Wrong, say.T("Look again")
			if j.Suggestion == "" {
				j.Suggestion = say.Warning(s, w)
			}
		}
	}
	return j
}
