package written

import (
	"regexp"
	"sync"
)

// A pattern is a regular expression that is compiled when it is first asked: a program
// that reads no recipe compiles none.
type pattern func() *regexp.Regexp

// find returns the pattern of a regular expression.
func find(expr string) pattern {
	return sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(expr) })
}

// in reports whether s has the pattern.
func (p pattern) in(s string) bool { return p().MatchString(s) }

// of returns the first of s that the pattern finds, "" for none.
func (p pattern) of(s string) string { return p().FindString(s) }

// at returns where the first of s begins and ends that the pattern finds, nil for none.
func (p pattern) at(s string) []int { return p().FindStringIndex(s) }

// parts returns the first of s that the pattern finds and its groups, nil for none.
func (p pattern) parts(s string) []string { return p().FindStringSubmatch(s) }

// swap puts other for all of s that the pattern finds.
func (p pattern) swap(s, other string) string { return p().ReplaceAllString(s, other) }
