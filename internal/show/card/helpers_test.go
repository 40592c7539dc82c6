package card

import (
	"bytes"
	"compress/zlib"
	"context"
	"io"
	"regexp"
	"strings"
	"testing"
	"unicode/utf16"

	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/work/design"
)

// crowded is a design with a long name, long notes and many lines.
func crowded(t testing.TB) design.Design {
	d := market.Hazelnut()
	d.Name = "Saltmarsh Quay harvest supper: toasted hazelnut, brown butter, burnt heather honey and smoked sea salt with a lemon-thyme ripple"
	d.Notes = strings.Repeat("Toast the nuts on the day and keep them dry until the last fold. ", 12)
	d.Tubs = design.Tubs{Count: 24, VolumeML: 5000, FillPercent: 95, Shape: design.ShapeRectangle}
	n := 0
	for _, in := range market.Library(t).All() {
		switch in.Group {
		case "dairy", "cocoa_chocolate", "nut_seed":
			if n++; n%3 == 0 && n < 70 {
				d.Dense.Lines = append(d.Dense.Lines, design.Line{Ingredient: in.ID, Grams: 7, Note: "stirred in with the last of the cream"})
			}
		}
	}
	return d
}

// forty is a design of forty lines, twenty to a phase, each with a note.
func forty(t testing.TB) design.Design {
	d := market.Hazelnut()
	d.Name = "Everything from the shelf"
	d.Dense.Lines, d.Foam.Lines = nil, nil
	n := 0
	for _, in := range market.Library(t).All() {
		if n++; n%5 != 0 {
			continue
		}
		line := design.Line{Ingredient: in.ID, Grams: 10 + float64(n), Note: "bring it to the bench in good time"}
		switch {
		case len(d.Dense.Lines) < 20:
			d.Dense.Lines = append(d.Dense.Lines, line)
		case len(d.Foam.Lines) < 18:
			d.Foam.Lines = append(d.Foam.Lines, line)
		}
	}
	require.Equal(t, 40, len(d.Dense.Lines)+len(d.Foam.Lines)+len(d.Foam.Syrup.Lines))
	return d
}

// timed is the cold of a design in the ordinary kitchen.
func timed(t testing.TB, d design.Design, r *model.Result) *cold.Answer {
	a, err := cold.Plan(context.Background(), d, r, cold.Default(), cold.Options{NoPictures: true})
	require.NoError(t, err)
	return &a
}

// textOf reads the words of a PDF back, line by line as they were set, from its
// own streams: fpdf writes them as UTF-16.
func textOf(t testing.TB, pdf []byte) []string {
	var out []string
	for rest := pdf; ; {
		i := bytes.Index(rest, []byte("stream\n"))
		if i < 0 {
			return out
		}
		rest = rest[i+len("stream\n"):]
		end := bytes.Index(rest, []byte("\nendstream"))
		require.GreaterOrEqual(t, end, 0)
		z, err := zlib.NewReader(bytes.NewReader(rest[:end]))
		rest = rest[end+len("\nendstream"):]
		if err != nil {
			continue // a picture, or a font
		}
		content, err := io.ReadAll(z)
		require.NoError(t, err)
		for _, m := range shown.FindAllSubmatch(content, -1) {
			raw := escape.ReplaceAllFunc(m[1], func(e []byte) []byte {
				if e[1] == 'r' {
					return []byte{'\r'}
				}
				return e[1:]
			})
			units := make([]uint16, len(raw)/2)
			for i := range units {
				units[i] = uint16(raw[2*i])<<8 | uint16(raw[2*i+1])
			}
			out = append(out, string(utf16.Decode(units)))
		}
	}
}

var (
	shown  = regexp.MustCompile(`(?s)\(((?:\\.|[^\\)])*)\) ?Tj`)
	escape = regexp.MustCompile(`(?s)\\.`)
)

func evaluated(t testing.TB, d design.Design) *model.Result {
	r, err := model.New(market.Library(t)).Evaluate(d)
	require.NoError(t, err)
	return &r
}
