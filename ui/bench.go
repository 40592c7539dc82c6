package ui

import (
	"math"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"ripplewright/internal/answer/balance"
	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/desk/mending"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// bench is the first page: custard, tub and foam side by side over the
// temperature rail.
type bench struct {
	w       *Window
	verdict *kit.VerdictStrip
	dense   *column
	foam    *column
	tub     *tubColumn
	rail    *kit.Rail
	railOf  railData
	cold    *coldLine
	mender  *mending.Mender
	mend    *kit.Button
	strip   fyne.CanvasObject // the verdict, and beside it the button to mend
	object  fyne.CanvasObject
}

func newBench(w *Window) *bench {
	b := &bench{w: w, verdict: kit.NewVerdictStrip(), rail: kit.NewRail()}
	b.cold = newColdLine(w, b.showVerdict)
	b.mender = mending.New(w.Post, b.showVerdict)
	b.mend = kit.NewButton(say.Mend, b.remedies)
	b.mend.Disable()
	b.strip = container.NewBorder(nil, nil, nil, w.hints.Wrap(b.mend, say.MendHint), b.verdict)
	b.dense = newColumn(w, "Custard", design.DensePart)
	b.foam = newColumn(w, "Foam", design.FoamPart)
	b.tub = newTubColumn(w)
	b.rail.OnChanged = func(c float64) { w.Preview(serveAt(w.Design(), c)) }
	b.rail.OnChangeEnded = func(c float64) { w.Commit(serveAt(w.Design(), c), "serving temperature") }
	rail := w.hints.Wrap(b.rail, say.RailHint)
	b.object = container.New(overRail{}, container.New(thirds{}, b.dense.object, b.tub.object, b.foam.object),
		container.NewBorder(nil, b.cold.label, nil, nil, rail))
	return b
}

func serveAt(d design.Design, c float64) design.Design {
	d.Serving.TemperatureC = c
	return d
}

// show brings the bench up to date with the session.
func (b *bench) show() {
	d := b.w.Design()
	r, err := b.w.Session.Result()
	b.dense.show(d, r)
	b.foam.show(d, r)
	b.tub.show(d, r)
	b.rail.ShowRail(b.railOf.view(d, r))
	if err == nil {
		b.cold.show(d, r)
		b.mender.Show(b.w.Model(), d, r)
	}
	b.verdict.ShowVerdict(verdictView(r, b.mender.Found(), b.cold.answer, err))
	b.showMend()
}

// showVerdict shows the verdict again, with the times in the cold that are known
// by now.
func (b *bench) showVerdict() {
	r, err := b.w.Session.Result()
	b.verdict.ShowVerdict(verdictView(r, b.mender.Found(), b.cold.answer, err))
	b.showMend()
}

// verdictView puts the verdict, or what stands in its way, into the strip; found
// and c are nil until remedies and the times in the cold are known.
func verdictView(r *model.Result, found *balance.Remedies, c *cold.Answer, err error) kit.VerdictView {
	if err != nil {
		first, more, _ := strings.Cut(err.Error(), "\n")
		v := kit.VerdictView{Severity: kit.Wrong, Word: "Not computed", Sentence: first}
		if more != "" {
			v.Suggestion = say.AndMore(1 + strings.Count(more, "\n"))
		}
		return v
	}
	if r.Dense.WrittenG == 0 && r.Foam.WrittenG == 0 {
		return kit.VerdictView{Severity: kit.Note, Word: "Begin", Sentence: say.BeginHere}
	}
	v := kit.VerdictView{Severity: kit.Good, Word: "Ready", Sentence: say.Verdict(page.Reads, r.Verdict), Suggestion: say.Advice(page.Reads, r.Verdict, found, c)}
	if because := r.Verdict.Because; because != nil {
		v.Sentence = say.Cause(page.Reads, *because)
	}
	if !r.Verdict.Good {
		v.Severity, v.Word = kit.Caution, "Adjust"
	}
	for _, w := range r.Warnings {
		if w.Severity == model.Serious {
			v.Severity, v.Word = kit.Wrong, "Look again"
			if v.Suggestion == "" {
				v.Suggestion = say.Warning(page.Reads, w)
			}
		}
	}
	return v
}

// railPoints is how many temperatures the rail's curves have.
const railPoints = 121

// railData keeps the rail's slices from frame to frame.
type railData struct {
	ts     []float64
	states []phase.State
	words  []kit.HardnessWord
	curves [2]kit.RailPhase
}

func (x *railData) view(d design.Design, r *model.Result) kit.RailView {
	if x.ts == nil {
		x.ts = model.RailC(railPoints)
		above := 0.0
		for _, w := range phase.Words {
			x.words = append(x.words, kit.HardnessWord{Above: above, Name: w.Name})
			above = w.BelowKPa
		}
		for i := range x.curves {
			x.curves[i].Hardness, x.curves[i].Ice = make([]float64, railPoints), make([]float64, railPoints)
		}
	}
	for i, p := range [...]*model.Phase{&r.Dense, &r.Foam} {
		c := &x.curves[i]
		c.Name = [...]string{"Custard", "Foam"}[i]
		x.states = model.Curve(&p.Body, x.ts, x.states)
		for k, s := range x.states {
			c.Hardness[k], c.Ice[k] = p.Body.HardnessKPa(&s), s.IceVolumeFraction
			if p.WrittenG == 0 {
				c.Hardness[k], c.Ice[k] = math.NaN(), math.NaN()
			}
		}
		c.Scoop, c.Note = spanOf(p.Scoop), ""
		if !p.Scoop.OK {
			c.Note = say.NowhereHere
			if !p.Felt() {
				c.Note = say.HowHard
			}
		}
		if p.WrittenG == 0 {
			c.Scoop, c.Note = kit.Reach{}, say.NoLines
		}
	}
	return kit.RailView{Temperatures: x.ts, Dense: x.curves[0], Foam: x.curves[1],
		Both: spanOf(r.Blend.Both), Words: x.words, Serving: d.Serving.TemperatureC, Reads: page.Reads}
}

func spanOf(s model.ScoopRange) kit.Reach {
	if !s.OK {
		return kit.Reach{}
	}
	return kit.Reach{From: s.FromC, To: s.ToC}
}
