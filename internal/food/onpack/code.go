package onpack

import (
	"slices"
	"strings"

	"ripplewright/internal/form/flaw"
)

var errArticle = flaw.New("an article number is 13 digits")

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
		return flaw.New("the last digit of an article number is computed from the others: it would be %d", want)
	}
	return nil
}

// The bars of an article number, by digit: the left half odd and even, and which
// is which by the first digit; the right half is the left's odd one inverted.
// ISO/IEC 15420, from memory.
var (
	oddBars = [10]string{"0001101", "0011001", "0010011", "0111101", "0100011", "0110001", "0101111", "0111011", "0110111", "0001011"}
	parity  = [10]string{"LLLLLL", "LLGLGG", "LLGGLG", "LLGGGL", "LGLLGG", "LGGLLG", "LGGGLL", "LGLGLG", "LGLGGL", "LGGLGL"}
)

// Bars returns the 95 modules of a 13-digit article number, '1' for dark.
func Bars(number string) (string, error) {
	if err := CheckArticle(number); err != nil {
		return "", err
	}
	inverted := func(s string) string {
		return strings.Map(func(r rune) rune { return '0' + '1' - r }, s)
	}
	reversed := func(s string) string {
		b := []byte(s)
		slices.Reverse(b)
		return string(b)
	}
	out := "101"
	for i, r := range number[1:7] {
		s := oddBars[r-'0']
		if parity[number[0]-'0'][i] == 'G' {
			s = reversed(inverted(s))
		}
		out += s
	}
	out += "01010"
	for _, r := range number[7:] {
		out += inverted(oddBars[r-'0'])
	}
	return out + "101", nil
}
