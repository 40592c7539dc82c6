package say

import "ripplewright/internal/answer/model"

// HardnessLearnt says what batches have moved the custard's hardness by, "" where they
// have not.
func HardnessLearnt(s Style, t model.Taught) string {
	if !t.Known() {
		return ""
	}
	return T("Your batches have shown this custard to be %s times as hard as the law says (%s). That is in its figures, its word and the verdict; a batch may still be harder or softer by a factor of %s.", s.Number(t.HarderFactor, 2), s.Count(t.Readings, "reading", "readings"), s.Number(t.ScatterFactor, 1))
}
