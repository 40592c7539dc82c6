package photo

import (
	"bytes"
	"encoding/binary"
	"image/color"
)

// mostDecoded is how many bytes a decoded picture may take; with its file, and what it
// takes to read it, that stays under a quarter of a gigabyte.
const mostDecoded = 112 << 20

// mostPixels returns how many pixels of a picture of such a kind are read, by its header:
// a decoder holds a whole picture, in bytes that its kind decides.
func mostPixels(data []byte, model color.Model) int {
	per := jpegBytes(data)
	if bytes.HasPrefix(data, pngHead) {
		per = pngBytes(data, model)
	}
	return min(MaxPixels, int(mostDecoded/per))
}

var pngHead = []byte("\x89PNG")

// pngBytes is how many bytes a pixel of a PNG takes, decoded; an interlaced one has half of
// it once more while its last pass is read (W3C, PNG specification, 8.2: Adam7).
func pngBytes(data []byte, model color.Model) float64 {
	per := 4.0
	switch model {
	case color.GrayModel:
		per = 1
	case color.Gray16Model:
		per = 2
	case color.RGBA64Model, color.NRGBA64Model:
		per = 8
	default:
		if _, ok := model.(color.Palette); ok {
			per = 1
		}
	}
	const interlace = 28 // its place in the header
	if len(data) > interlace && data[interlace] != 0 {
		per *= 1.5
	}
	return per
}

// jpegBytes is how many bytes a pixel of a JPEG takes, decoded: a byte for each sample, and
// four more for its coefficient where the picture is progressive, which a decoder holds to
// the end.
//
// Source: ITU-T T.81 (1992), table B.1, markers SOF0 to SOF2, and B.2.2, frame header.
func jpegBytes(data []byte) float64 {
	const whole = 3 // of what is not found, each component at each pixel
	for at := 2; at+4 <= len(data) && data[at] == 0xff; {
		marker, size := data[at+1], int(binary.BigEndian.Uint16(data[at+2:]))
		if marker == 0xff { // filling
			at++
			continue
		}
		if size < 2 || at+2+size > len(data) {
			break
		}
		if body := data[at+4 : at+2+size]; marker >= 0xc0 && marker <= 0xc2 && len(body) >= 6 && len(body) >= 6+3*int(body[5]) {
			per := samples(body[6 : 6+3*int(body[5])])
			if marker == 0xc2 {
				per *= 5
			}
			return per
		}
		at += 2 + size
	}
	return whole
}

// samples is how many samples a pixel has, by the sampling factors of the components; four
// components are put together in a picture of four bytes a pixel.
func samples(components []byte) float64 {
	sum, across, down := 0, 1, 1
	for i := 0; i+3 <= len(components); i += 3 {
		h, v := int(components[i+1]>>4), int(components[i+1]&15)
		sum += h * v
		across, down = max(across, h), max(down, v)
	}
	per := float64(sum) / float64(across*down)
	if len(components) == 12 {
		per += 4
	}
	return max(per, 1)
}
