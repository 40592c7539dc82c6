package keeping

import (
	"os"
	"os/exec"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/work/journal"
)

// A program that is left ends, also where its loop does not.
func TestAProgramThatIsLeftEnds(t *testing.T) {
	const left = "RIPPLEWRIGHT_LEFT_IN"
	if folder := os.Getenv(left); folder != "" {
		k := Open(journal.At(folder), func(error) {}, func() {}, func() {}, func() {})
		k.Leave(func() {})
		time.Sleep(time.Minute)
		os.Exit(7)
	}
	folder := t.TempDir()
	c := exec.Command(os.Args[0], "-test.run=^"+t.Name()+"$")
	c.Env = append(os.Environ(), left+"="+folder)
	out, err := c.CombinedOutput()
	require.NoError(t, err, string(out))
	assert.Equal(t, 0, c.ProcessState.ExitCode())
}

// One that ends in time is left alone.
func TestAProgramThatEndsInTimeIsLeftAlone(t *testing.T) {
	k := Open(journal.At(t.TempDir()), func(error) {}, func() {}, func() {}, func() {})
	quit := false
	k.Leave(func() { quit = true })
	assert.True(t, quit)
	require.NoError(t, k.Close())
}
