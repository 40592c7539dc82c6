package photo_test

import (
	"bytes"
	"context"
	"errors"
	"image"
	"image/png"
	"testing"

	"ripplewright/internal/answer/photo"
)

// Whatever a file holds, it is a picture within the limits or refused with a reason.
func FuzzDecode(f *testing.F) {
	small := image.NewGray(image.Rect(0, 0, 64, 64))
	var b bytes.Buffer
	if err := png.Encode(&b, small); err != nil {
		f.Fatal(err)
	}
	f.Add(b.Bytes())
	// A JPEG whose camera lay on its side: CIPA DC-008-2019, tag 0112.
	f.Add([]byte("\xff\xd8\xff\xe1\x00\x22Exif\x00\x00MM\x00\x2a\x00\x00\x00\x08\x00\x01\x01\x12\x00\x03\x00\x00\x00\x01\x00\x06\x00\x00\x00\x00\x00\x00"))
	f.Add([]byte("\xff\xd8\xff\xc2\x00\x11\x08\x40\x00\x40\x00\x03\x01\x22\x00\x02\x11\x01\x03\x11\x01"))
	f.Add(bomb(100_000, 100_000))
	f.Fuzz(func(t *testing.T, data []byte) {
		im, err := photo.Decode(context.Background(), bytes.NewReader(data))
		if err != nil {
			var why *photo.Refusal
			if !errors.As(err, &why) || why.Reason == photo.NoReason {
				t.Fatalf("refused without a reason: %v", err)
			}
			return
		}
		if b := im.Bounds(); b.Dx() > photo.MaxSide || b.Dy() > photo.MaxSide || b.Dx()*b.Dy() > photo.MaxPixels || b.Dx() < photo.MinSide || b.Dy() < photo.MinSide {
			t.Fatalf("%v was read", b)
		}
	})
}
