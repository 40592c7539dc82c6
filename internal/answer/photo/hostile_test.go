package photo_test

import (
	"bytes"
	"context"
	"encoding/binary"
	"hash/crc32"
	"image"
	"image/color"
	"image/gif"
	"image/jpeg"
	"image/png"
	"math/rand"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/photo"
	"ripplewright/internal/matter/ripple"
)

func reasonOf(t *testing.T, err error) photo.Reason {
	t.Helper()
	var r *photo.Refusal
	require.ErrorAs(t, err, &r)
	return r.Reason
}

func encoded(t *testing.T, im image.Image) []byte {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, jpeg.Encode(&b, im, nil))
	return b.Bytes()
}

// bomb is a PNG that says it is w by h and holds nothing of it.
func bomb(w, h uint32) []byte {
	head := []byte("IHDR\x00\x00\x00\x00\x00\x00\x00\x00\x08\x02\x00\x00\x00")
	binary.BigEndian.PutUint32(head[4:], w)
	binary.BigEndian.PutUint32(head[8:], h)
	out := append([]byte("\x89PNG\r\n\x1a\n\x00\x00\x00\x0d"), head...)
	return binary.BigEndian.AppendUint32(out, crc32.ChecksumIEEE(head))
}

func TestFilesThatAreNoPicturesAreRefused(t *testing.T) {
	whole := encoded(t, image.NewGray(image.Rect(0, 0, 300, 200)))
	var moving bytes.Buffer
	require.NoError(t, gif.Encode(&moving, image.NewPaletted(image.Rect(0, 0, 300, 200), color.Palette{color.Black, color.White}), nil))
	for name, x := range map[string]struct {
		data []byte
		want photo.Reason
	}{
		"nothing":    {nil, photo.NotAPicture},
		"words":      {[]byte("ripplewright: 1\ndense: {}\n"), photo.NotAPicture},
		"cut off":    {whole[:len(whole)*2/3], photo.Broken},
		"head alone": {whole[:30], photo.NotAPicture},
		"GIF":        {moving.Bytes(), photo.NotAPicture},
		"PNG bomb":   {bomb(100_000, 100_000), photo.TooLarge},
		"wide bomb":  {bomb(60000, 50), photo.TooLarge},
		"empty PNG":  {bomb(400, 400), photo.Broken},
		"one pixel":  {encoded(t, image.NewGray(image.Rect(0, 0, 1, 1))), photo.TooSmall},
	} {
		_, err := photo.Decode(context.Background(), bytes.NewReader(x.data))
		assert.Equal(t, x.want, reasonOf(t, err), name)
	}
}

func TestAFolderAndAMissingFileAreNamed(t *testing.T) {
	dir := t.TempDir()
	_, err := photo.Open(context.Background(), dir)
	assert.Equal(t, photo.NotAPicture, reasonOf(t, err))
	_, err = photo.Open(context.Background(), filepath.Join(dir, "none.jpg"))
	assert.ErrorIs(t, err, os.ErrNotExist)
	assert.ErrorContains(t, err, "none.jpg")
}

func TestReadingAPictureEndsWithItsContext(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	stop()
	_, err := photo.Decode(ctx, bytes.NewReader(encoded(t, image.NewGray(image.Rect(0, 0, 300, 200)))))
	assert.ErrorIs(t, err, context.Canceled)
}

var stripes = photo.Request{
	Outline: photo.Outline{{X: 20, Y: 20}, {X: 420, Y: 20}, {X: 420, Y: 320}, {X: 20, Y: 320}},
	Dense:   photo.Point{X: 80, Y: 170}, Foam: photo.Point{X: 40, Y: 170}, Tub: ripple.BoxTub(100, 60, 0, 75),
}

// striped paints upright ribbons of period pixels, half foam, in two colours.
func striped(period int, foam, dense color.RGBA) *image.RGBA {
	im := image.NewRGBA(image.Rect(0, 0, 440, 340))
	for j := range 340 {
		for i := range 440 {
			c := dense
			if (i-20+10*period)%period < period/2 {
				c = foam
			}
			im.SetRGBA(i, j, c)
		}
	}
	return im
}

var cream, yolk = color.RGBA{240, 235, 220, 255}, color.RGBA{205, 150, 60, 255}

// Ribbons of 40 pixels, a quarter of a millimetre each, are 10 mm thick and half of the cut.
func TestStripesMeasureThemselves(t *testing.T) {
	q := stripes
	q.Picture = striped(80, cream, yolk)
	r, err := photo.Read(context.Background(), q)
	require.NoError(t, err)
	require.Nil(t, r.Thin)
	assert.InDelta(t, 0.5, r.FoamFraction.Value, 0.005)
	// Four of the five foam ribbons have two edges, the one at the wall has one.
	assert.InEpsilon(t, 2*0.5*100*75/(9*75.), r.FoamMeanMM.Value, 0.02)
	assert.InDelta(t, 0.25, r.PixelMM, 0.001)
	foam, in := r.Mask.At(photo.Point{X: 45, Y: 100})
	assert.True(t, in)
	assert.InDelta(t, 1, foam, 0.01)
	_, in = r.Mask.At(photo.Point{X: 5, Y: 5})
	assert.False(t, in)
}

func TestPicturesThatCannotBeReadAreRefusedWithTheReason(t *testing.T) {
	black := color.RGBA{4, 4, 4, 255}
	white := color.RGBA{255, 255, 255, 255}
	noise := striped(80, color.RGBA{150, 150, 150, 255}, color.RGBA{120, 120, 120, 255})
	r := rand.New(rand.NewSource(1))
	for i := range noise.Pix {
		if i%4 != 3 {
			noise.Pix[i] = uint8(min(max(int(noise.Pix[i])+int(60*r.NormFloat64()), 0), 255))
		}
	}
	for name, x := range map[string]struct {
		picture image.Image
		change  func(*photo.Request)
		want    photo.Reason
	}{
		"tiny":            {image.NewGray(image.Rect(0, 0, 1, 1)), nil, photo.TooSmall},
		"black":           {striped(80, black, black), nil, photo.TooDark},
		"one colour":      {striped(80, yolk, yolk), nil, photo.ColoursAlike},
		"the same spot":   {striped(80, cream, yolk), func(q *photo.Request) { q.Foam = q.Dense }, photo.ColoursAlike},
		"burnt out":       {striped(80, white, color.RGBA{255, 254, 200, 255}), nil, photo.Clipped},
		"grain":           {noise, nil, photo.Noisy},
		"another shape":   {striped(80, cream, yolk), func(q *photo.Request) { q.Tub = ripple.BoxTub(100, 60, 0, 20) }, photo.OutlineShape},
		"spot outside":    {striped(80, cream, yolk), func(q *photo.Request) { q.Foam = photo.Point{X: 5, Y: 5} }, photo.SpotOutside},
		"corner outside":  {striped(80, cream, yolk), func(q *photo.Request) { q.Outline[1].X = 900 }, photo.OutlineOutside},
		"crossed corners": {striped(80, cream, yolk), func(q *photo.Request) { q.Outline[0], q.Outline[1] = q.Outline[1], q.Outline[0] }, photo.OutlineCrossed},
		"a line":          {striped(80, cream, yolk), func(q *photo.Request) { q.Outline[2], q.Outline[3] = q.Outline[1], q.Outline[0] }, photo.OutlineCrossed},
		"a dot":           {striped(80, cream, yolk), func(q *photo.Request) { q.Outline = photo.Outline{{1, 1}, {9, 1}, {9, 9}, {1, 9}} }, photo.OutlineSmall},
		"a far corner": {striped(80, cream, yolk), func(q *photo.Request) {
			q.Outline[1], q.Outline[2] = photo.Point{X: 420, Y: 150}, photo.Point{X: 420, Y: 200}
		}, photo.OutlineSlanted},
	} {
		q := stripes
		q.Picture = x.picture
		if x.change != nil {
			x.change(&q)
		}
		_, err := photo.Read(context.Background(), q)
		require.Error(t, err, name)
		assert.Equal(t, x.want, reasonOf(t, err), name)
	}
}

// Stripes of two pixels are seen as a grey: their share is told, their thickness is not.
func TestRibbonsUnderThreePixelsHaveNoThickness(t *testing.T) {
	im := striped(4, cream, yolk)
	for j := 140; j < 200; j++ { // places to take the colours from
		for i := 40; i < 100; i++ {
			im.SetRGBA(i, j, cream)
			im.SetRGBA(i+60, j, yolk)
		}
	}
	q := stripes
	q.Picture, q.Foam, q.Dense = im, photo.Point{X: 70, Y: 170}, photo.Point{X: 130, Y: 170}
	r, err := photo.Read(context.Background(), q)
	require.NoError(t, err)
	require.NotNil(t, r.Thin)
	assert.Equal(t, photo.RibbonsThin, r.Thin.Reason)
	assert.InDelta(t, 0.5, r.FoamFraction.Value, 0.02)
	assert.NotEqual(t, r.FoamMeanMM.Value, r.FoamMeanMM.Value, "no number")
}

// A camera held upright writes its rows along the picture's height; the tag says so.
// CIPA DC-008-2019, tag 0112: the visual place of row 0 and column 0.
func TestPicturesStandUprightByTheirTag(t *testing.T) {
	const w, h = 64, 48
	stored := image.NewGray(image.Rect(0, 0, w, h))
	for j := range h {
		for i := range w {
			if i < 16 && j < 16 {
				stored.SetGray(i, j, color.Gray{255}) // row 0, column 0
			}
		}
	}
	plain := encoded(t, stored)
	for tag, corner := range map[uint16][2]int{1: {0, 0}, 2: {1, 0}, 3: {1, 1}, 4: {0, 1}, 5: {0, 0}, 6: {1, 0}, 7: {1, 1}, 8: {0, 1}} {
		for _, order := range []struct {
			name string
			binary.AppendByteOrder
		}{{"MM", binary.BigEndian}, {"II", binary.LittleEndian}} {
			tiff := []byte("Exif\x00\x00" + order.name)
			tiff = order.AppendUint16(tiff, 42)
			tiff = order.AppendUint32(tiff, 8)
			tiff = order.AppendUint16(tiff, 1)
			tiff = order.AppendUint16(tiff, 0x0112)
			tiff = order.AppendUint16(tiff, 3)
			tiff = order.AppendUint32(tiff, 1)
			tiff = order.AppendUint16(tiff, tag)
			tiff = order.AppendUint32(append(tiff, 0, 0), 0)
			data := append([]byte{0xff, 0xd8, 0xff, 0xe1}, byte((len(tiff)+2)>>8), byte(len(tiff)+2))
			data = append(append(data, tiff...), plain[2:]...)
			im, err := photo.Decode(context.Background(), bytes.NewReader(data))
			require.NoError(t, err)
			size := im.Bounds().Size()
			if tag >= 5 {
				assert.Equal(t, image.Pt(h, w), size, "%d", tag)
			} else {
				assert.Equal(t, image.Pt(w, h), size, "%d", tag)
			}
			r, _, _, _ := im.At(corner[0]*(size.X-1), corner[1]*(size.Y-1)).RGBA()
			assert.Greater(t, r, uint32(0xc000), "tag %d, %s", tag, order.name)
			r, _, _, _ = im.At((1-corner[0])*(size.X-1), (1-corner[1])*(size.Y-1)).RGBA()
			assert.Less(t, r, uint32(0x4000), "tag %d, %s", tag, order.name)
		}
	}
}

func TestPNGsAreRead(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, png.Encode(&b, striped(80, cream, yolk)))
	q := stripes
	var err error
	q.Picture, err = photo.Decode(context.Background(), &b)
	require.NoError(t, err)
	r, err := photo.Read(context.Background(), q)
	require.NoError(t, err)
	assert.InDelta(t, 0.5, r.FoamFraction.Value, 0.005)
}
