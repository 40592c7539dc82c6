package onpack

import (
	"errors"
	"fmt"
)

var errArticle = errors.New("an article number is 13 digits")

// CheckDigit returns the last digit of a 13-digit article number from its first
// twelve: weights 1 and 3 from the left, modulo 10 (secondary pages).
func CheckDigit(twelve string) (int, error) {
	if len(twelve) != 12 {
		return 0, errArticle
	}
	sum := 0
	for i, r := range twelve {
		if r < '0' || r > '9' {
			return 0, errArticle
		}
		sum += int(r-'0') * (1 + 2*(i%2))
	}
	return (10 - sum%10) % 10, nil
}

// CheckArticle says what is wrong with a 13-digit article number that a maker
// has typed. Numbers are licensed to their makers: none is ever made up here.
func CheckArticle(number string) error {
	if len(number) != 13 {
		return errArticle
	}
	want, err := CheckDigit(number[:12])
	if err != nil {
		return err
	}
	if got := int(number[12] - '0'); got != want {
		return fmt.Errorf("the last digit of an article number is computed from the others: it would be %d", want)
	}
	return nil
}
