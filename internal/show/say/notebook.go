package say

import (
	"math"
	"strings"

	"ripplewright/internal/answer/learn"
	"ripplewright/internal/answer/process"
	"ripplewright/internal/work/batch"
)

// measured names what is measured of a batch, by its place in the notebook's file.
var measured = map[string]Message{
	"syrup.water_boils_c": "boiling water", "syrup.weighed_g": "syrup", "syrup.reading_c": "syrup's reading", "custard.weighed_g": "cooked custard",
	"foam.whites_c": "foam after the pour", "foam.cup_g": "cup of foam", "custard.cup_g": "cup of custard", "freezer_c": "freezer",
	"scooped.core_c": "middle straight out", "scooped.after_min": "time out until it scooped", "scooped.ring_c": "edge as it scooped", "ate.hardness": "how hard", "ate.icy": "how icy",
	"cut.foam_percent": "foam of the cut", "cut.ribbon_mm": "mean ribbon of the cut", "cut.thickest_mm": "thickest tenth of its ribbons",
	"ate.sweetness": "how sweet", "ate.sandy": "how sandy", "ate.ripple": "ripple", "room_c": "room",
}

// BatchMeasured names a measurement.
func BatchMeasured(path string) string { return measured[path].String() }

// BatchValue is a measurement or its forecast as a quantity.
func BatchValue(s Style, path string, v float64) string {
	if !known(v) {
		return Unknown
	}
	switch path {
	case "syrup.water_boils_c", "freezer_c", "scooped.core_c", "scooped.ring_c", "syrup.reading_c":
		return s.TemperatureTo(v, 1)
	case "foam.whites_c", "room_c":
		return s.TemperatureTo(v, 0)
	case "scooped.after_min":
		return s.Duration(v)
	case "cut.foam_percent":
		return s.Percent(v, 1)
	case "cut.ribbon_mm", "cut.thickest_mm":
		return s.Thickness(v)
	case "ate.hardness":
		return s.Hardness(v)
	case "ate.icy":
		return s.Crystal(v)
	}
	return s.MassTo(BatchShown(s, path, v), 0)
}

// BatchShown is a number of the notebook's file as the maker reads it: a cup's weight is
// that of the maker's cup, as at the stove.
func BatchShown(s Style, path string, v float64) float64 {
	switch {
	case strings.HasSuffix(path, "_c"):
		return s.Degrees(v)
	case strings.HasSuffix(path, "_mm"):
		return s.Gauge("mm").Shown(v)
	}
	return BatchGauge(s, path, "g").Shown(v)
}

// BatchGauge is how a number of the notebook is shown and typed.
func BatchGauge(s Style, path, unit string) Gauge {
	switch path {
	case "foam.cup_g":
		return ReadingGauge(s, process.FoamCupG, unit)
	case "custard.cup_g":
		return ReadingGauge(s, process.CustardCupG, unit)
	}
	return s.Gauge(unit)
}

// BatchGot is what was measured: a word with what it stands for.
func BatchGot(s Style, p *learn.Pair) string {
	text := BatchValue(s, p.Path, p.Measured)
	switch {
	case p.Word != "" && p.Path == "ate.icy":
		text = BatchWord(p.Word) + ", " + s.CrystalSpan(p.Low, p.High)
	case p.Word != "":
		text = BatchWord(p.Word) + ", " + s.HardnessSpan(p.Low, p.High)
	}
	if p.Slip {
		text = T("%s, a slip?", text)
	}
	return text
}

// BatchTitle heads a batch: its name, day and version.
func BatchTitle(b *batch.Batch) string {
	text := b.ID
	if b.Made != "" && !strings.HasPrefix(b.ID, b.Made) {
		text = T("%s, made %s", text, b.Made)
	}
	if b.Version != "" {
		text = T("%s, version %s", text, b.Version)
	}
	return text
}

// BatchPairHeads head the measurements of a batch.
func BatchPairHeads() []string { return []string{"", T("forecast"), T("measured")} }

// What is said of a notebook.
const (
	NotebookTitle    Message = "The notebook"
	NotebookBriefly  Message = "Notebook"
	NoBatches        Message = "No batch is written down yet."
	NothingMeasured  Message = "Nothing was measured that a forecast speaks of."
	NoSlips          Message = "No measurement looks like a slip."
	LearntNothing    Message = "nothing yet"
	LearntOff        Message = "not learnt"
	BatchOtherDesign Message = "The design has changed since this batch: its forecast stays the one of its day."
	AskedMost        Message = "What to measure next time"
	NotebookNoFile   Message = "save the design first: its batches are written beside its file"
	NotebookTeaches  Message = "What the batches teach"
	NotebookHistory  Message = "Forecast and measured"
	NotebookLog      Message = "A batch"
	NotebookNew      Message = "A new batch"
	NotebookWrite    Message = "Write it down"
	NotebookExport   Message = "Export table…"
	NotebookLearn    Message = "Learn this"
	NotebookForecast Message = "forecast"
	SlipName         Message = "a slip?"
	BatchAxis        Message = "batch"
	DensityAxis      Message = "how likely"
	BeforeBatches    Message = "before any batch"
	KnownNow         Message = "now"
	EachByItself     Message = "each reading by itself, with its error"
	NotebookMore     Message = "More to note"
	NotebookLess     Message = "Only the few"
	NotebookClear    Message = "Clear"
	NotebookPlanned  Message = "as planned"
	NotebookSelect   Message = "(Select one)"
	NotebookPicture  Message = "Add a picture…"
	NotebookAbout    Message = "Fill in what you have; leave the rest empty. Pale is what the design expects: it is noted only once you say that it was as planned. What is kept at a reading in the kitchen stands here already."
	AskedNothing     Message = "No further measurement would narrow the next forecast to speak of."
)

// BatchWritten says where a batch was written down.
func BatchWritten(file string) string { return T("Written down in %s.", file) }

// BatchesCutOff tells of entries that were cut off as they were written.
func BatchesCutOff(s Style, lines []int) string {
	if len(lines) == 0 {
		return ""
	}
	var at []string
	for _, n := range lines {
		at = append(at, s.Number(float64(n), 0))
	}
	if len(at) == 1 {
		return T("The entry at line %s was cut off as it was written; it is kept, but not read.", at[0])
	}
	return T("The entries at lines %s were cut off as they were written; they are kept, but not read.", List(at))
}

// learnt names what is learnt, as what its value is of.
var learnt = [learn.NumFactors]Message{
	learn.Probe: "thermometer shows too much by", learn.SyrupSolids: "syrup's solids beyond the thermometer's", learn.StoveLoss: "custard loses more on the stove by",
	learn.CustardAir: "custard's overrun, of the design's", learn.FoamAir: "foam's overrun, of the design's", learn.FreezerK: "freezer is warmer by",
	learn.Counter: "warming in the room, of the model's", learn.Hardness: "custard's hardness, of the law's", learn.Ice: "ice crystals, of the law's",
	learn.Mixing: "mean ribbon as you stir, of the computed cut's",
}

// Learnt names a factor.
func Learnt(f learn.Factor) string { return learnt[f].String() }

// LearntValue is a factor's value: degrees, points or a ratio.
func LearntValue(s Style, f learn.Factor, v float64) string {
	switch {
	case f.IsRatio():
		return s.with(s.Number(100*v, 0), "%")
	case f == learn.Probe || f == learn.FreezerK:
		k, unit := v, "K"
		if s.Scale == Fahrenheit {
			k, unit = v*1.8, "°F"
		}
		return s.with(s.Signed(k, 1), unit)
	}
	return s.Points(v, 1)
}

// LearntBand is where a factor lies in 8 of 10 cases.
func LearntBand(s Style, f learn.Factor, low, high float64) string {
	return T("%s to %s", LearntValue(s, f, low), LearntValue(s, f, high))
}

// LearntHeads head the table of what was learnt.
func LearntHeads() []string {
	return []string{"", T("before any batch"), T("now"), T("8 in 10"), T("width left"), T("from")}
}

// LearntRow is a factor's row of that table.
func LearntRow(s Style, p *learn.Posterior, f learn.Factor) []string {
	prior := learn.Prior()
	low, _, high := prior.Factors[f].Band(f)
	row := []string{Learnt(f), LearntBand(s, f, low, high)}
	switch n := p.Counts(f); {
	case p.Off[f]:
		return append(row, LearntOff.String(), Unknown, Unknown, Unknown)
	case !p.Learnt(f):
		return append(row, LearntNothing.String(), Unknown, Unknown, Unknown)
	default:
		low, v, high := p.Factors[f].Band(f)
		from := s.Count(n, "reading", "readings")
		if n == 0 {
			from = T("the others")
		}
		return append(row, LearntValue(s, f, v), LearntBand(s, f, low, high), s.Percent(100*p.Narrower(f), 0), from)
	}
}

// LearntHow says what the bands are.
const LearntHow Message = "Each band holds 8 of 10 kitchens of which as much is known. A published constant never moves; what is learnt is of this kitchen and this recipe. " +
	"Hardness, freezer, room, probe and ice count in every forecast. What stove, air and syrup came to counts in the chances, in the next batch's forecast and in the band of every figure and time that rests on it; weights, label and the figures themselves stay those of the recipe as it is written. To have them there too, put what you measured into the design."

// Slip names a measurement that is not believed.
func Slip(s Style, b *batch.Batch, o *learn.Observation) string {
	_, v, _ := o.In()
	return T("Batch %s, %s: by itself it says %s %s, which fits none of the others. It hardly counts; look whether it was written down right.", b.ID, BatchMeasured(o.Path), Learnt(o.Of), LearntValue(s, o.Of, v))
}

// asks say how a measurement is taken.
var asks = map[string]Message{
	"syrup.water_boils_c": "Hold the probe in boiling water", "syrup.weighed_g": "Weigh the pan with the boiled syrup", "custard.weighed_g": "Weigh the cooked custard",
	"custard.cup_g": "Weigh a level {cup} of the half-frozen custard", "foam.cup_g": "Weigh a level {cup} of the foam",
	"freezer_c": "Read a thermometer in the freezer", "scooped.core_c": "Probe the middle of the tub straight out of the freezer", "scooped.after_min": "Time the tub from the freezer until its edge scoops",
	"scooped.ring_c": "Time the tub and probe its outer centimetre as it scoops", "ate.hardness": "Say how hard the custard was, as eaten",
}

// Ask says what one measurement would be worth.
func Ask(s Style, q *learn.Question) string {
	left := func(f float64) string { return s.Percent(100*f, 0) }
	cup, _ := s.levelCup()
	do := strings.Replace(asks[q.Path].String(), anyCup, cup, 1)
	minutes, hardness := q.MinutesLeftFraction < 0.995, q.HardnessLeftFraction < 0.995
	switch {
	case minutes && hardness:
		return T("%s: the band of the time out is then %s as wide, that of the hardness %s.", do, left(q.MinutesLeftFraction), left(q.HardnessLeftFraction))
	case minutes:
		return T("%s: the band of the time out is then %s as wide.", do, left(q.MinutesLeftFraction))
	}
	return T("%s: the band of the hardness is then %s as wide.", do, left(q.HardnessLeftFraction))
}

// NextBatch says what is expected of the next one, with what is learnt; "" where
// nothing is.
func NextBatch(s Style, p *learn.Posterior, f *batch.Forecast) []string {
	var out []string
	if low, v, high := p.Minutes(f); !math.IsNaN(v) {
		out = append(out, T("Next time its edge scoops after %s.", s.DurationBand(v, low, high)))
	}
	if low, v, high := p.HardnessKPa(f); !math.IsNaN(v) {
		out = append(out, T("The custard is then about %s hard as eaten (%s).", s.Hardness(v), s.HardnessSpan(low, high)))
	}
	return out
}

// BatchAxisOf titles the axis of a measurement, with its unit.
func BatchAxisOf(s Style, path string) string {
	unit := "g"
	switch path {
	case "syrup.water_boils_c", "syrup.reading_c", "freezer_c", "room_c", "scooped.core_c", "scooped.ring_c", "foam.whites_c":
		unit = s.Degree()
	case "scooped.after_min":
		unit = "min"
	case "cut.foam_percent":
		unit = "%"
	case "cut.ribbon_mm", "cut.thickest_mm":
		unit = s.Gauge("mm").Unit
	case "ate.hardness":
		unit = "kPa"
	case "ate.icy":
		unit = "µm"
	}
	return WithUnit(measured[path].String(), unit)
}

// LearntAxis titles the axis of a factor, with its unit.
func LearntAxis(s Style, f learn.Factor) string {
	switch {
	case f.IsRatio():
		return WithUnit(Learnt(f), "%")
	case f == learn.Probe || f == learn.FreezerK:
		return WithUnit(Learnt(f), "K")
	}
	return WithUnit(Learnt(f), T("points"))
}

// batchFields name the fields in which a batch is written down.
var batchFields = map[string]Message{
	"made": "Made on", "syrup.water_boils_c": "Water boils at", "syrup.reading_c": "Syrup came off at", "syrup.weighed_g": "Pan and syrup", "syrup.pan_g": "Pan alone",
	"custard.weighed_g": "Cooked custard", "foam.whites_c": "Whites after the pour", "foam.cup_g": "Cup of foam", "custard.cup_g": "Cup of custard",
	"freezer_c": "Freezer", "room_c": "Room", "scooped.core_c": "Its middle, straight out", "scooped.after_min": "Scooped after", "scooped.ring_c": "Its edge then", "ate.hardness": "Hardness",
	"ate.icy": "Icy", "ate.sweetness": "Sweetness", "ate.sandy": "Sandy", "ate.ripple": "Ripple", "words": "Words", "photographs": "Pictures",
	"weighed": "Weighed otherwise", "custard.stirs_min": "Stirred after", "best_before": "Best before", "lot": "Lot", "ate.after_days": "Eaten after", "ate.at_c": "Eaten at",
}

// BatchField names a field.
func BatchField(path string) string { return batchFields[path].String() }

// BatchHint is what a field expects; "" for nothing.
func BatchHint(s Style, path string, f *batch.Forecast) string {
	m := map[string]batch.Measured{
		"syrup.water_boils_c": f.WaterBoilsC, "syrup.weighed_g": f.SyrupG, "custard.weighed_g": f.CustardG, "foam.whites_c": f.FoamC,
		"foam.cup_g": f.FoamCupG, "custard.cup_g": f.CustardCupG, "freezer_c": f.FreezerC, "scooped.core_c": f.FreezerC, "scooped.after_min": f.ScoopedMinutes,
		"ate.hardness": f.HardnessKPa, "ate.icy": f.IceUM,
		"cut.foam_percent": f.CutFoamPercent, "cut.ribbon_mm": f.CutRibbonMM, "cut.thickest_mm": f.CutThickestMM,
	}[path]
	if !m.Known {
		return ""
	}
	value := BatchValue(s, path, m.Value)
	if path == "syrup.weighed_g" {
		return T("forecast %s of syrup", value)
	}
	return T("forecast %s", value)
}

// plainWords are those of the plain scales that have other meanings elsewhere.
var plainWords = map[string]Message{"not sweet enough": "not sweet enough", "a little less sweet": "a little less sweet", "right": "right¦as it should be",
	"a little too sweet": "a little too sweet", "too sweet": "too sweet", "not at all": "not at all¦sandy", "a little": "a little¦sandy", "clearly": "clearly¦sandy",
	"lost": "lost¦a ripple", "faint": "faint¦a ripple", "too coarse": "too coarse¦a ripple"}

// BatchWord is a word of a scale, which its file has in English.
func BatchWord(word string) string {
	if m, ok := plainWords[word]; ok {
		return m.String()
	}
	return Of(word)
}

// BatchExpects is the word that a forecast expects of a scale, which nobody has chosen.
func BatchExpects(word string) string { return T("(%s)", word) }

// BatchSaid says that a batch was written down, and why no version of its design is kept
// if none is.
func BatchSaid(id string, noVersion error) string {
	text := T("Batch %s is written down.", HarmlessLine(id))
	if noVersion != nil {
		text += " " + T("No version of the design is kept for it: %s.", HarmlessLine(noVersion.Error()))
	}
	return text
}

// NotebookWrong says that the file of batches cannot be read.
func NotebookWrong(err error) string {
	return T("The notebook is left out: %s.", Flaw(err))
}

// SlipsOf names all slips; "" for none.
func SlipsOf(s Style, batches []batch.Batch, p *learn.Posterior) string {
	var out []string
	for _, o := range p.Slips() {
		out = append(out, Slip(s, &batches[o.Batch], &o))
	}
	return strings.Join(out, "\n")
}

// NextBatchText is NextBatch as one text.
func NextBatchText(s Style, p *learn.Posterior, f *batch.Forecast) string {
	return strings.Join(NextBatch(s, p, f), " ")
}

// mostAsked is how many measurements are proposed at once.
const mostAsked = 3

// AskText proposes what to measure, the most telling first.
func AskText(s Style, list []learn.Question) string {
	if len(list) == 0 {
		return AskedNothing.String()
	}
	var out []string
	for i := range list[:min(mostAsked, len(list))] {
		out = append(out, Ask(s, &list[i]))
	}
	return strings.Join(out, "\n")
}

// BatchPairName names a measurement of one batch in a list of many.
func BatchPairName(b *batch.Batch, q *learn.Pair) string { return b.ID + ": " + BatchMeasured(q.Path) }

// NotebookFile is the name offered for the table of all batches.
const NotebookFile = "batches.csv"
