package photo

import (
	"bufio"
	"bytes"
	"context"
	"encoding/binary"
	"image"
	"image/jpeg"
	"image/png"
	"io"
	"os"
)

// The limits of a picture.
const (
	MaxBytes  = 64 << 20
	MaxPixels = 50_000_000 // a telephone's finest
	MaxSide   = 30_000
	MinSide   = leastSide
)

// Open reads the picture of a file, JPEG or PNG, upright as it was taken. What is wrong
// with the picture is a *Refusal, with the file the error of reading it.
func Open(ctx context.Context, path string) (image.Image, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	info, err := f.Stat()
	switch {
	case err != nil:
		return nil, err
	case info.IsDir():
		return nil, refuse(NotAPicture)
	}
	return decoded(ctx, f, info.Size())
}

// Decode is Open of what r holds. It looks at the size before it decodes, and stops when
// ctx ends.
func Decode(ctx context.Context, r io.Reader) (image.Image, error) { return decoded(ctx, r, 0) }

// decoded is Decode of about so many bytes, for which room is made at once: a growing one
// would be held twice.
func decoded(ctx context.Context, r io.Reader, about int64) (image.Image, error) {
	room := bytes.NewBuffer(make([]byte, 0, min(max(about, 0), MaxBytes+1)+bytes.MinRead))
	if _, err := room.ReadFrom(io.LimitReader(held{ctx, r}, MaxBytes+1)); err != nil {
		return nil, err
	}
	data := room.Bytes()
	if len(data) > MaxBytes {
		return nil, refuse(TooManyBytes)
	}
	config, decode := jpeg.DecodeConfig, jpeg.Decode
	if bytes.HasPrefix(data, pngHead) {
		config, decode = png.DecodeConfig, png.Decode
	}
	c, err := config(bytes.NewReader(data))
	if err != nil {
		return nil, refuse(NotAPicture)
	}
	if most := mostPixels(data, c.ColorModel); c.Width > MaxSide || c.Height > MaxSide || c.Width*c.Height > most {
		too := sized(TooLarge, c.Width, c.Height)
		too.MostPixels = most
		return nil, too
	}
	if c.Width < MinSide || c.Height < MinSide {
		return nil, sized(TooSmall, c.Width, c.Height)
	}
	im, err := decode(held{ctx, bufio.NewReader(bytes.NewReader(data))})
	switch {
	case ctx.Err() != nil:
		return nil, ctx.Err()
	case err != nil:
		return nil, refuse(Broken)
	}
	return upright(im, orientation(data)), nil
}

// held is a reader that ends with its context.
type held struct {
	ctx context.Context
	r   io.Reader
}

func (h held) Read(p []byte) (int, error) {
	if err := h.ctx.Err(); err != nil {
		return 0, err
	}
	return h.r.Read(p)
}

// orientation returns how a JPEG's camera was held, 1 to 8, 1 where it does not say.
//
// Source: CIPA DC-008-2019 (Exif 2.32), tag 0112, Orientation; the TIFF header, 4.5.2.
func orientation(data []byte) int {
	for at := 2; at+4 <= len(data) && data[at] == 0xff; {
		marker, size := data[at+1], int(binary.BigEndian.Uint16(data[at+2:]))
		if marker == 0xda || size < 2 || at+2+size > len(data) {
			return 1
		}
		if body, ok := bytes.CutPrefix(data[at+4:at+2+size], []byte("Exif\x00\x00")); ok && marker == 0xe1 {
			return tiffOrientation(body)
		}
		at += 2 + size
	}
	return 1
}

func tiffOrientation(body []byte) int {
	if len(body) < 8 {
		return 1
	}
	var order binary.ByteOrder = binary.BigEndian
	if body[0] == 'I' {
		order = binary.LittleEndian
	}
	at := int64(order.Uint32(body[4:]))
	if at+2 > int64(len(body)) {
		return 1
	}
	entries := body[at+2:]
	for n := order.Uint16(body[at:]); n > 0 && len(entries) >= 12; n, entries = n-1, entries[12:] {
		if order.Uint16(entries) == 0x0112 {
			if o := int(order.Uint16(entries[8:])); o >= 1 && o <= 8 {
				return o
			}
			return 1
		}
	}
	return 1
}

// upright returns a picture as its camera was held.
func upright(im image.Image, orientation int) image.Image {
	if orientation == 1 {
		return im
	}
	return &turned{im, orientation}
}

// turned is a picture seen through its orientation.
type turned struct {
	image.Image
	as int
}

// Bounds implements image.Image.
func (t *turned) Bounds() image.Rectangle {
	b := t.Image.Bounds()
	if t.as >= 5 {
		return image.Rect(0, 0, b.Dy(), b.Dx())
	}
	return image.Rect(0, 0, b.Dx(), b.Dy())
}
