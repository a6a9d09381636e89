package reduce

import "image"

// light is the light on the paper in a raster of cells, as encoded levels of
// each channel in parts of finer.
type light struct {
	w, h int
	at   [][3]int32
}

// finer is how many parts a level has where light is reckoned: whole levels
// would drift with every step of the way under a drawing.
const finer = 64

// The blurs that spread the sheet's light under the drawing and then smooth it:
// half of a bell each, from its middle, in parts of bellSum. Whole numbers, so
// that every machine agrees.
var (
	wideBell   = []int64{126, 121, 106, 86, 64, 44, 28}
	narrowBell = []int64{196, 180, 141, 93}
)

const bellSum = 1024

// knownFrom is the weight, of a bell both ways, from which a blurred value is
// taken as known: a fifth of what lies round it was.
const knownFrom = bellSum * bellSum / 5

// spread carries the sheet's light under the drawing: blurring the sheet with
// its weight, again and again, until every cell has a value, and once more to
// smooth the whole.
func spread(m *image.RGBA, sheet []bool) *light {
	l := &light{w: m.Rect.Dx(), h: m.Rect.Dy(), at: make([][3]int32, len(sheet))}
	known := make([]bool, len(sheet))
	left := 0
	for i, in := range sheet {
		if known[i] = in; !in {
			left++
			continue
		}
		for c := range 3 {
			l.at[i][c] = int32(m.Pix[4*i+c]) * finer
		}
	}
	for left > 0 {
		soft, weight := l.soften(known, wideBell)
		before := left
		for i, w := range weight {
			if !known[i] && w >= knownFrom {
				l.at[i], known[i] = soft[i], true
				left--
			}
		}
		if left == before {
			break
		}
	}
	l.at, _ = l.soften(known, narrowBell)
	return l
}

// soften blurs what is known along rows and then along columns, and says with
// what weight each cell is known after it.
func (l *light) soften(known []bool, bell []int64) (at [][3]int32, weight []int64) {
	sums := make([][4]int64, len(l.at)) // the channels, and their weight
	for i, v := range l.at {
		if known[i] {
			sums[i] = [4]int64{int64(v[0]), int64(v[1]), int64(v[2]), 1}
		}
	}
	sums = blurred(sums, l.w, l.h, 1, l.w, bell)
	sums = blurred(sums, l.h, l.w, l.w, 1, bell)
	at, weight = make([][3]int32, len(sums)), make([]int64, len(sums))
	for i, s := range sums {
		if weight[i] = s[3]; s[3] > 0 {
			for c := range 3 {
				at[i][c] = int32((s[c] + s[3]/2) / s[3])
			}
		}
	}
	return at, weight
}

// blurred blurs lines of n cells that lie step apart, one line next after the
// other; what lies off the raster has no weight.
func blurred(from [][4]int64, n, lines, step, next int, bell []int64) [][4]int64 {
	to := make([][4]int64, len(from))
	for line := range lines {
		for k := range n {
			sum := &to[line*next+k*step]
			for j := max(0, k-len(bell)+1); j < min(n, k+len(bell)); j++ {
				v, part := &from[line*next+j*step], bell[max(k-j, j-k)]
				for c := range sum {
					sum[c] += part * v[c]
				}
			}
		}
	}
	return to
}
