// Package chime sounds when a timer has come to its end, by whatever the system
// has for playing a file, and by the terminal's bell where it has nothing.
package chime

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"time"
)

// The sound: three strokes of a small bell, each falling away.
const (
	samplesPerS = 22050
	strokes     = 3
	strokeS     = 0.45
	strokeHz    = 1760
	loud        = 0.6 // of what the file can hold
	fallS       = 0.12
)

// longest is how long a player is waited for.
const longest = 10 * time.Second

// players are the commands that play a file, the first that is there is asked; %s
// is the file's name.
func players(system string) [][]string {
	switch system {
	case "darwin":
		return [][]string{{"afplay", "%s"}}
	case "windows":
		return [][]string{{"powershell", "-NoProfile", "-Command", "(New-Object Media.SoundPlayer '%s').PlaySync()"}}
	}
	return [][]string{{"pw-play", "%s"}, {"paplay", "%s"}, {"aplay", "-q", "%s"}}
}

// Ring sounds once and returns when it has. It may take seconds: call it apart.
func Ring() {
	if file, err := write(); err == nil {
		defer func() { _ = os.Remove(file) }()
		if play(players(runtime.GOOS), file, exec.LookPath, run) {
			return
		}
	}
	bell(os.Stderr)
}

// bell rings that of the terminal which the program was started from, if any.
func bell(w io.Writer) { _, _ = io.WriteString(w, "\a") }

// play has the first player that is there play the file, the next where it fails,
// and reports whether one did.
func play(players [][]string, file string, find func(string) (string, error), run func(name string, args ...string) error) bool {
	for _, p := range players {
		name, err := find(p[0])
		if err != nil {
			continue
		}
		args := make([]string, len(p)-1)
		for i, a := range p[1:] {
			args[i] = a
			if bytes.Contains([]byte(a), []byte("%s")) {
				args[i] = fmt.Sprintf(a, file)
			}
		}
		if run(name, args...) == nil {
			return true
		}
	}
	return false
}

func run(name string, args ...string) error {
	c := exec.Command(name, args...)
	if err := c.Start(); err != nil {
		return err
	}
	late := time.AfterFunc(longest, func() { _ = c.Process.Kill() })
	defer late.Stop()
	return c.Wait()
}

// write puts the sound into a file of its own.
func write() (name string, err error) {
	f, err := os.CreateTemp("", "ripplewright-*.wav")
	if err != nil {
		return "", err
	}
	name = filepath.Clean(f.Name())
	_, err = f.Write(wave())
	if closed := f.Close(); err == nil {
		err = closed
	}
	if err != nil {
		_ = os.Remove(name)
	}
	return name, err
}

// wave is the sound as a RIFF file of 16-bit samples, one channel (Microsoft and
// IBM 1991, Multimedia Programming Interface and Data Specifications 1.0, "Wave").
func wave() []byte {
	var pcm bytes.Buffer
	n := int(math.Round(strokeS * samplesPerS))
	for i := range strokes * n {
		t := float64(i%n) / samplesPerS
		v := loud * math.Exp(-t/fallS) * math.Sin(2*math.Pi*strokeHz*t)
		_ = binary.Write(&pcm, binary.LittleEndian, int16(math.Round(v*math.MaxInt16)))
	}
	var out bytes.Buffer
	put := func(v any) { _ = binary.Write(&out, binary.LittleEndian, v) }
	out.WriteString("RIFF")
	put(uint32(36 + pcm.Len()))
	out.WriteString("WAVEfmt ")
	put(uint32(16))
	put(uint16(1)) // samples as they are
	put(uint16(1)) // channels
	put(uint32(samplesPerS))
	put(uint32(2 * samplesPerS)) // bytes a second
	put(uint16(2))               // bytes a frame
	put(uint16(16))              // bits a sample
	out.WriteString("data")
	put(uint32(pcm.Len()))
	out.Write(pcm.Bytes())
	return out.Bytes()
}
