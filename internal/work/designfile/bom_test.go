package designfile

import (
	"bytes"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
)

// A byte order mark within a comment is a sign like any other: it moves no line
// and no comment goes with it.
func TestAByteOrderMarkWithinACommentLosesNone(t *testing.T) {
	r := rand.New(rand.NewSource(3))
	tried := 0
	for i, data := range originals(t) {
		if end := breaks[i%len(breaks)]; end != "\n" {
			data = bytes.ReplaceAll(data, []byte("\n"), []byte(end))
		}
		for at := bytes.IndexByte(data, '#'); at >= 0; {
			for _, off := range []int{1, 2, 5} {
				if at+off > len(data) {
					continue
				}
				text := append(append(append([]byte{}, data[:at+off]...), "\ufeff"...), data[at+off:]...)
				f, err := Decode("mark", text)
				if err != nil {
					continue
				}
				d, path := another(r, f.Design)
				out, err := f.Encode(d)
				if !assert.NoError(t, err, "%s of %q", path, text) {
					return
				}
				tried++
				if before, after := comments(text), comments(out); !holds(after, before) {
					t.Errorf("%s of %q\nwere %q\nare %q", path, text[max(0, at-60):min(len(text), at+80)], before, after)
					return
				}
			}
			next := bytes.IndexByte(data[at+1:], '#')
			if next < 0 {
				break
			}
			at += 1 + next
		}
	}
	assert.Greater(t, tried, 50)
}
