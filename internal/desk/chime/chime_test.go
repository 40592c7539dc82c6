package chime

import (
	"bytes"
	"encoding/binary"
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The header is read back field by field, at the places that the RIFF form gives.
func TestTheSoundIsAWaveFileThatNobodyHasToClip(t *testing.T) {
	w := wave()
	le := binary.LittleEndian
	assert.Equal(t, "RIFF", string(w[:4]))
	assert.Equal(t, "WAVEfmt ", string(w[8:16]))
	assert.EqualValues(t, len(w)-8, le.Uint32(w[4:]))
	assert.EqualValues(t, 1, le.Uint16(w[20:]), "plain samples")
	assert.EqualValues(t, le.Uint32(w[24:])*uint32(le.Uint16(w[32:])), le.Uint32(w[28:]))
	require.Equal(t, "data", string(w[36:40]))
	assert.EqualValues(t, len(w)-44, le.Uint32(w[40:]))

	peak, crossings, last := 0.0, 0, 0.0
	seconds := float64(len(w)-44) / 2 / samplesPerS
	for i := 44; i < len(w); i += 2 {
		v := float64(int16(le.Uint16(w[i:])))
		peak = math.Max(peak, math.Abs(v))
		if v > 0 && last <= 0 {
			crossings++
		}
		last = v
	}
	assert.InDelta(t, loud*math.MaxInt16, peak, 0.05*math.MaxInt16)
	assert.InDelta(t, strokes*strokeS, seconds, 0.01)
	assert.InEpsilon(t, strokeHz*seconds, float64(crossings), 0.1, "it is a tone")
}

func TestTheFirstPlayerThatPlaysIsAsked(t *testing.T) {
	var asked []string
	find := func(name string) (string, error) {
		if name == "absent" {
			return "", errors.New("not there")
		}
		return "/bin/" + name, nil
	}
	run := func(name string, args ...string) error {
		asked = append(asked, append([]string{name}, args...)...)
		if name == "/bin/mute" {
			return errors.New("no device")
		}
		return nil
	}
	list := [][]string{{"absent", "%s"}, {"mute", "%s"}, {"plays", "-q", "play '%s' now"}, {"never", "%s"}}
	assert.True(t, play(list, "a.wav", find, run))
	assert.Equal(t, []string{"/bin/mute", "a.wav", "/bin/plays", "-q", "play 'a.wav' now"}, asked)
	assert.False(t, play(list[:2], "a.wav", find, run))

	var b bytes.Buffer
	bell(&b)
	assert.Equal(t, "\a", b.String())
	for _, system := range []string{"linux", "darwin", "windows", "freebsd"} {
		for _, p := range players(system) {
			assert.Contains(t, p[len(p)-1], "%s", system)
		}
	}
}
