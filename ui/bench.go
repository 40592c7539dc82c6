package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"ripplewright/internal/answer/balance"
	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/desk/benchview"
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
	railOf  benchview.Rail
	cold    *coldLine
	mender  *mending.Mender
	mend    *kit.Button
	strip   fyne.CanvasObject // the verdict, and beside it the button to mend
	object  fyne.CanvasObject

	remedyTexts []func() // of the dialog of remedies shown last: each says again what is known by now
}

func newBench(w *Window) *bench {
	b := &bench{w: w, verdict: kit.NewVerdictStrip(), rail: kit.NewRail()}
	b.cold = newColdLine(w, b.showVerdict)
	b.mender = w.mender
	b.mend = kit.NewButton(say.Mend.String(), b.remedies)
	b.mend.Disable()
	why := kit.NewButton(say.WhyButton.String(), w.askWhy)
	b.strip = container.NewBorder(nil, nil, nil, container.NewHBox(w.hints.Wrap(why, say.WhyHint.String()), w.hints.Wrap(b.mend, say.MendHint.String())), b.verdict)
	b.dense = newColumn(w, say.T("Custard"), design.DensePart)
	b.foam = newColumn(w, say.T("Foam"), design.FoamPart)
	b.tub = newTubColumn(w)
	b.rail.OnChanged = func(c float64) { w.Preview(serveAt(w.Design(), c)) }
	b.rail.OnChangeEnded = func(c float64) { w.Commit(serveAt(w.Design(), c), say.T("serving temperature")) }
	rail := w.hints.Wrap(b.rail, say.RailHint.String())
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
	b.rail.ShowRail(railView(&b.railOf, d, r))
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

// moods are how a judgement weighs, as the strip shows it.
var moods = [...]kit.Weight{benchview.Neutral: kit.Note, benchview.Good: kit.Good, benchview.Caution: kit.Caution, benchview.Wrong: kit.Wrong}

// verdictView hands a judgement to the strip.
func verdictView(r *model.Result, found *balance.Remedies, c *cold.Answer, err error) kit.VerdictView {
	j := benchview.Judged(page.Reads, r, found, c, err)
	return kit.VerdictView{Severity: moods[j.Mood], Word: j.Word, Sentence: j.Sentence, Suggestion: j.Suggestion}
}

// hardnessWords are the rail's.
func hardnessWords() (words []kit.HardnessWord) {
	above := 0.0
	for _, w := range phase.Words {
		words = append(words, kit.HardnessWord{Above: above, Name: say.Of(w.Name)})
		above = w.BelowKPa
	}
	return words
}

// railView hands the rail what it shows.
func railView(x *benchview.Rail, d design.Design, r *model.Result) kit.RailView {
	x.Follow(r)
	of := func(p *benchview.RailPhase) kit.RailPhase {
		return kit.RailPhase{Name: p.Name, Hardness: p.HardnessKPa, Ice: p.IceVolumeFraction, Scoop: spanOf(p.Scoop), Note: p.Note}
	}
	var both kit.Reach
	if r.Dense.InTub() && r.Foam.InTub() {
		both = spanOf(r.Blend.Both)
	}
	return kit.RailView{Temperatures: x.AtC, Dense: of(&x.Dense), Foam: of(&x.Foam),
		Both: both, Words: hardnessWords(), Serving: d.Serving.TemperatureC, Reads: page.Reads}
}

func spanOf(s model.ScoopRange) kit.Reach {
	if !s.OK {
		return kit.Reach{}
	}
	return kit.Reach{From: s.FromC, To: s.ToC}
}
