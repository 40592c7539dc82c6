package ingredient

// Nearest returns the first of words that is most like w, fewer than limit
// letters to change, add or drop away from it; "" if none is.
func Nearest(w string, words []string, limit int) string {
	best := ""
	for _, c := range words {
		if d := distance(w, c, limit); d < limit {
			best, limit = c, d
		}
	}
	return best
}

// distance is the edit distance of a and b, given up at limit.
func distance(a, b string, limit int) int {
	if d := len(a) - len(b); d >= limit || -d >= limit {
		return limit
	}
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := 1; i <= len(a); i++ {
		diag := row[0]
		row[0] = i
		for j := 1; j <= len(b); j++ {
			cost := diag
			if a[i-1] != b[j-1] {
				cost++
			}
			diag = row[j]
			row[j] = min(cost, row[j]+1, row[j-1]+1)
		}
	}
	return row[len(b)]
}
