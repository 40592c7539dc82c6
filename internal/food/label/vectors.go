package label

import (
	"errors"
	"fmt"

	"ripplewright/internal/form/published"
)

// CheckRounding declares every amount of a table of rounding rules
// (testdata/tables/label_rounding.csv) and compares the text with what the
// table calls lawful. Wrong holds a sentence for each that differs.
func CheckRounding(table []published.Row) (right, total int, wrong []string, err error) {
	for _, row := range table {
		var cell [4]string
		var unread error
		for i, column := range [...]string{"id", "nutrient", "declared", "alt_declared"} {
			cell[i], err = row.Text(column)
			unread = errors.Join(unread, err)
		}
		amount, err := row.Number("amount")
		if err = errors.Join(unread, err); err != nil {
			return right, total, wrong, err
		}
		total++
		id, nutrient, want, other := cell[0], cell[1], cell[2], cell[3]
		got, err := Declare(nutrient, amount)
		switch {
		case err != nil:
			wrong = append(wrong, fmt.Sprintf("%s: %v", id, err))
		case got == want || other != "" && got == other:
			right++
		default:
			wrong = append(wrong, fmt.Sprintf("%s: %s %v is declared %q, lawful is %q", id, nutrient, amount, got, want))
		}
	}
	return right, total, wrong, nil
}
