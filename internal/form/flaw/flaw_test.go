package flaw_test

import (
	"errors"
	"io/fs"
	"testing"

	"github.com/stretchr/testify/assert"

	"ripplewright/internal/form/flaw"
)

func TestAFlawReadsInEnglishAndKeepsItsCauses(t *testing.T) {
	cause := flaw.New("%s is outside %s to %s", "301", "0", "300")
	err := flaw.InLine(4, flaw.At("air_c", cause))
	assert.EqualError(t, err, "line 4: air_c: 301 is outside 0 to 300")
	assert.ErrorIs(t, err, cause)
	assert.ErrorIs(t, flaw.New("reading the design: %v", &fs.PathError{Op: "open", Path: "x", Err: fs.ErrNotExist}), fs.ErrNotExist)
	assert.EqualError(t, flaw.New("100 % of it"), "100 % of it", "no format without arguments")
	assert.EqualError(t, flaw.New("a list, not a %s", flaw.Word("group")), "a list, not a group")

	var at *flaw.Flaw
	assert.True(t, errors.As(err, &at))
	assert.Equal(t, 4, at.Args[0])
}

func TestWithoutAPlaceAnErrorStandsAlone(t *testing.T) {
	err := errors.New("is empty")
	assert.Equal(t, err, flaw.InLine(0, err))
	assert.Equal(t, err, flaw.At("", err))
	assert.Equal(t, err, flaw.First(nil, err, nil))
	assert.NoError(t, flaw.First(nil, nil))
	assert.NoError(t, flaw.All())
	assert.EqualError(t, flaw.All(err, err), "is empty\nis empty")
	assert.Empty(t, flaw.Text(nil))
	assert.Equal(t, "is empty", flaw.Text(err))
}
