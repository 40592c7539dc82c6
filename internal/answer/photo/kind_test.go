package photo

import (
	"bytes"
	"context"
	"encoding/binary"
	"hash/crc32"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// large says in the header of a picture that it has so many pixels.
func large(data []byte, w, h int) []byte {
	data = bytes.Clone(data)
	if bytes.HasPrefix(data, pngHead) {
		binary.BigEndian.PutUint32(data[16:], uint32(w))
		binary.BigEndian.PutUint32(data[20:], uint32(h))
		binary.BigEndian.PutUint32(data[29:], crc32.ChecksumIEEE(data[12:29]))
		return data
	}
	at := bytes.Index(data, []byte{0xff, 0xc0})
	if at < 0 {
		at = bytes.Index(data, []byte{0xff, 0xc2})
	}
	binary.BigEndian.PutUint16(data[at+5:], uint16(h))
	binary.BigEndian.PutUint16(data[at+7:], uint16(w))
	return data
}

func encoded(t *testing.T, im image.Image, asPNG bool) []byte {
	t.Helper()
	var b bytes.Buffer
	if asPNG {
		require.NoError(t, png.Encode(&b, im))
	} else {
		require.NoError(t, jpeg.Encode(&b, im, nil))
	}
	return b.Bytes()
}

// What a kind of picture takes decides how many pixels of it are read.
func TestAPictureIsReadAsFarAsItsKindLeavesRoom(t *testing.T) {
	box := image.Rect(0, 0, 64, 64)
	plain := encoded(t, image.NewYCbCr(box, image.YCbCrSubsampleRatio420), false)
	progressive := bytes.Replace(plain, []byte{0xff, 0xc0}, []byte{0xff, 0xc2}, 1)
	for name, c := range map[string]struct {
		data  []byte
		model color.Model
		most  int // of 112 MiB, at most 50 million
	}{
		"a byte and a half a pixel": {plain, color.YCbCrModel, MaxPixels},
		"five times as many":        {progressive, color.YCbCrModel, 112 << 20 * 10 / 75},
		"grey":                      {encoded(t, image.NewGray(box), true), color.GrayModel, MaxPixels},
		"colours of 8 bits":         {encoded(t, image.NewNRGBA(box), true), color.NRGBAModel, 112 << 20 / 4},
		"colours of 16 bits":        {encoded(t, image.NewNRGBA64(box), true), color.NRGBA64Model, 112 << 20 / 8},
	} {
		most := mostPixels(c.data, c.model)
		assert.Equal(t, c.most, most, name)
		if most == MaxPixels {
			continue
		}
		side := 4000
		_, err := Decode(context.Background(), bytes.NewReader(large(c.data, side, most/side+1)))
		var refused *Refusal
		require.ErrorAs(t, err, &refused, name)
		assert.Equal(t, TooLarge, refused.Reason, name)
		assert.Equal(t, most, refused.MostPixels, name)
		_, err = Decode(context.Background(), bytes.NewReader(large(c.data[:len(c.data)/2], side, most/side)))
		require.ErrorAs(t, err, &refused, name)
		assert.NotEqual(t, TooLarge, refused.Reason, name)
	}
}
