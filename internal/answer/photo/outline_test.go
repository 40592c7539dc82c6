package photo

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestOutlinesAreFourPlaces(t *testing.T) {
	o, err := ParseOutline(" 12,40  880,55.5 860,700 20,690\n")
	require.NoError(t, err)
	assert.Equal(t, Outline{{12, 40}, {880, 55.5}, {860, 700}, {20, 690}}, o)
	for _, bad := range []string{"", "1,2 3,4 5,6", "1,2 3,4 5,6 7", "1,2 3,4 5,6 7,x", "1,2 3,4 5,6 7,nan", "1,2 3,4 5,6 7,1e9", "1;2 3;4 5;6 7;8", "1,2 3,4 5,6 7,8 9,10"} {
		_, err := ParseOutline(bad)
		assert.Error(t, err, bad)
	}
}

func FuzzParseOutline(f *testing.F) {
	for _, s := range []string{"12,40 880,55 860,700 20,690", "1,2", "", "0,0 0,0 0,0 0,0", "1e308,1 -1,+Inf 0x1p3,1 5,5", "\x00,\xff"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		o, err := ParseOutline(s)
		if err != nil {
			return
		}
		if o.check(4000, 3000) != nil {
			return
		}
		m := o.straightens(false)
		for i, c := range [4][2]float64{{0, 0}, {1, 0}, {1, 1}, {0, 1}} {
			x, y := m.at(c[0], c[1])
			if !(math.Hypot(x-o[i].X, y-o[i].Y) < 1e-6) {
				t.Fatalf("corner %d of %q lies at %g,%g", i, s, x, y)
			}
		}
	})
}

func TestStraighteningGoesThereAndBack(t *testing.T) {
	o := Outline{{130, 90}, {880, 60}, {930, 700}, {90, 640}}
	for _, rim := range []bool{false, true} {
		m := o.straightens(rim)
		for _, p := range [][2]float64{{0, 0}, {0.3, 0.9}, {1, 1}, {0.5, 0.5}} {
			u, v := m.back(m.at(p[0], p[1]))
			assert.InDelta(t, p[0], u, 1e-9)
			assert.InDelta(t, p[1], v, 1e-9)
		}
	}
	// Places on a rim are the middles of the sides of the box around it.
	m := o.straightens(true)
	for i, p := range [4][2]float64{{0.5, 0}, {1, 0.5}, {0.5, 1}, {0, 0.5}} {
		x, y := m.at(p[0], p[1])
		assert.InDelta(t, o[i].X, x, 1e-9)
		assert.InDelta(t, o[i].Y, y, 1e-9)
	}
}

// By Ottosson 2020, linear light mixes and OKLab's lightness does not: a mixture of half
// of each lies nearer the lighter colour.
func TestMixturesAreOfLight(t *testing.T) {
	p := phases{dense: lab{0.3, 0.02, 0.03}, foam: lab{0.95, 0.01, 0.02}}
	m := p.mixed()
	assert.InDelta(t, 0, m.share(0), 1e-5)
	assert.InDelta(t, 1, m.share(1), 1e-5)
	assert.Less(t, m.share(0.5), 0.4)
	for i := 1; i <= 100; i++ {
		assert.Greater(t, m.share(float64(i)/100), m.share(float64(i-1)/100))
	}
}
