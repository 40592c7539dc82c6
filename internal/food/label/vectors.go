package label

import (
	"encoding/csv"
	"fmt"
	"io"
	"strconv"
)

// CheckRounding declares every amount of a table of rounding rules
// (testdata/tables/label_rounding.csv) and compares the text with what the
// table calls lawful. Wrong holds a sentence for each that differs.
func CheckRounding(table io.Reader) (right, total int, wrong []string, err error) {
	r := csv.NewReader(table)
	r.Comment = '#'
	header, err := r.Read()
	if err != nil {
		return 0, 0, nil, fmt.Errorf("rounding table: %w", err)
	}
	at := map[string]int{}
	for i, name := range header {
		at[name] = i
	}
	for _, name := range [...]string{"id", "nutrient", "amount", "declared", "alt_declared"} {
		if _, ok := at[name]; !ok {
			return 0, 0, nil, fmt.Errorf("rounding table: it has no column %q", name)
		}
	}
	for {
		row, err := r.Read()
		if err == io.EOF {
			return right, total, wrong, nil
		}
		if err != nil {
			return right, total, wrong, fmt.Errorf("rounding table: %w", err)
		}
		total++
		id, nutrient := row[at["id"]], row[at["nutrient"]]
		amount, err := strconv.ParseFloat(row[at["amount"]], 64)
		if err != nil {
			return right, total, wrong, fmt.Errorf("rounding table: %s: %w", id, err)
		}
		got, err := Declare(nutrient, amount)
		switch want, other := row[at["declared"]], row[at["alt_declared"]]; {
		case err != nil:
			wrong = append(wrong, fmt.Sprintf("%s: %v", id, err))
		case got == want || other != "" && got == other:
			right++
		default:
			wrong = append(wrong, fmt.Sprintf("%s: %s %v is declared %q, lawful is %q", id, nutrient, amount, got, want))
		}
	}
}
