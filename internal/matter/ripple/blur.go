package ripple

import "ripplewright/internal/matter/num"

// blur sets out to the foam's share, averaged over about radius pixels by two box
// filters each way. Beyond the wall and the picture's edge the nearest pixel of the
// row, or row of the picture, goes on.
func (r *Raster) blur(out []float32, radius float64, b *bench) {
	n := max(1, int(radius+0.5))
	num.Parallel((r.Height+stripe-1)/stripe, func(k int) {
		line := make([]float32, r.Width)
		for j := k * stripe; j < min((k+1)*stripe, r.Height); j++ {
			row := out[j*r.Width : (j+1)*r.Width]
			copy(row, r.FoamFractions[j*r.Width:])
			spread(row, r.InsideFractions[j*r.Width:(j+1)*r.Width])
			blurLine(line, row, n)
			blurLine(row, line, n)
		}
	})
	num.Parallel((r.Width+stripe-1)/stripe, func(k int) {
		from, to := k*stripe, min((k+1)*stripe, r.Width)
		blurColumns(b.spare, out, r.Width, from, to, n)
		blurColumns(out, b.spare, r.Width, from, to, n)
	})
}

// stripe is how many rows or columns are blurred at a time.
const stripe = 32

// spread carries the first and the last value inside the tub on to the row's ends.
func spread(row, inside []float32) {
	first, last := 0, len(row)-1
	for first < last && inside[first] == 0 {
		first++
	}
	for last > first && inside[last] == 0 {
		last--
	}
	for i := 0; i < first; i++ {
		row[i] = row[first]
	}
	for i := last + 1; i < len(row); i++ {
		row[i] = row[last]
	}
}

// blurLine sets out to in averaged over n elements on either side.
func blurLine(out, in []float32, n int) {
	per, last := 1/float32(2*n+1), len(in)-1
	sum := float32(0)
	for k := -n - 1; k < n; k++ {
		sum += in[min(max(k, 0), last)]
	}
	for i := range in {
		sum += in[min(i+n, last)] - in[max(i-n-1, 0)]
		out[i] = sum * per
	}
}

// blurColumns does for the columns from up to to what blurLine does for a line. It
// goes along the rows, as memory does.
func blurColumns(out, in []float32, width, from, to, n int) {
	per, last := 1/float32(2*n+1), len(in)/width-1
	row := func(j int) []float32 {
		j = min(max(j, 0), last) * width
		return in[j+from : j+to]
	}
	var sums [stripe]float32
	sum := sums[:to-from]
	for k := -n - 1; k < n; k++ {
		for i, v := range row(k) {
			sum[i] += v
		}
	}
	for j := 0; j <= last; j++ {
		more, less, line := row(j + n)[:len(sum)], row(j - n - 1)[:len(sum)], out[j*width+from : j*width+to][:len(sum)]
		for i, v := range sum {
			v += more[i] - less[i]
			sum[i], line[i] = v, v*per
		}
	}
}
