package fastener

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// barred is a mark of upright strokes and gaps of given widths in cells.
func barred(high int, widths ...int) *sizing.Mark {
	var row []bool
	for i, n := range widths {
		for range n {
			row = append(row, i%2 == 0)
		}
	}
	var cells []bool
	for range high {
		cells = append(cells, row...)
	}
	m := sizing.NewMark(cells, len(row), high)
	return &m
}

func discMark(side int) *sizing.Mark {
	cells := make([]bool, side*side)
	for i := range cells {
		cells[i] = math.Hypot(float64(i%side)+0.5-float64(side)/2, float64(i/side)+0.5-float64(side)/2) < float64(side)/2
	}
	m := sizing.NewMark(cells, side, side)
	return &m
}

func own(t *testing.T, m *sizing.Mark) *ownMark {
	o, err := ownMarkOf(m)
	require.NoError(t, err)
	return o
}

// Upright bars are as wide as they were made: the narrowest of strokes and
// gaps alike tells.
func TestTheNarrowestStrokeOrGapTells(t *testing.T) {
	for _, c := range []struct {
		widths []int
		want   float64
	}{{[]int{5, 9, 12}, 5}, {[]int{12, 4, 12}, 4}, {[]int{6, 7, 9, 3, 8}, 3}, {[]int{10, 20, 10}, 10}} {
		o := own(t, barred(60, c.widths...))
		assert.True(t, o.holds(c.want), "%v", c.widths)
		assert.False(t, o.holds(c.want+0.5), "%v", c.widths)
		assert.InDelta(t, c.want, o.narrowest(30), 1e-9, "%v", c.widths)
	}
	// The corners of a block and the rim of a disc are not narrow.
	assert.True(t, own(t, barred(60, 60)).holds(30))
	assert.True(t, own(t, discMark(60)).holds(30))
	// A speck is, and so is a hole in a block.
	for _, on := range []bool{true, false} {
		cells := make([]bool, 50*50)
		for i := range cells {
			x, y := i%50, i/50
			small := x >= 8 && x < 10 && y >= 20 && y < 22
			cells[i] = small == on || on && x >= 20
		}
		m := sizing.NewMark(cells, 50, 50)
		assert.False(t, own(t, &m).holds(4), "on %v", on)
	}
}

// The slow twin: a disc rolled over every pixel by hand leaves the same
// pixels out, of shapes of chance.
func TestNarrownessIsThatOfARolledDisc(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 5))
	yes := 0
	for range 60 {
		const w, h = 40, 30
		shape, rest := make([]bool, w*h), make([]bool, w*h)
		for range 4 {
			x0, y0, bw, bh := 4+rng.IntN(20), 4+rng.IntN(12), 1+rng.IntN(12), 1+rng.IntN(10)
			for y := y0; y < min(h-4, y0+bh); y++ {
				for x := x0; x < min(w-4, x0+bw); x++ {
					shape[y*w+x] = true
				}
			}
		}
		for i := range rest {
			rest[i] = !shape[i]
		}
		r := 1.5 + float64(rng.IntN(5))/2
		got, want := narrower(shape, rest, w, h, r), rolled(shape, w, h, r)
		require.Equal(t, want, got, "r %v", r)
		if got {
			yes++
		}
	}
	assert.Greater(t, yes, 5)
	assert.Less(t, yes, 55)
}

func rolled(shape []bool, w, h int, r float64) bool {
	over := make([]bool, w*h)
	each := func(use func(x, y int)) {
		for y := range h {
			for x := range w {
				use(x, y)
			}
		}
	}
	each(func(x, y int) {
		fits := shape[y*w+x]
		each(func(u, v int) { fits = fits && (shape[v*w+u] || math.Hypot(float64(u-x), float64(v-y)) >= r) })
		if fits {
			each(func(u, v int) { over[v*w+u] = over[v*w+u] || math.Hypot(float64(u-x), float64(v-y)) < r })
		}
	})
	narrow := false
	flood := func(of func(i int) bool, use func(area, rolledOver int)) {
		seen := make([]bool, w*h)
		each(func(x, y int) {
			stack := []int{y*w + x}
			area, in := 0, 0
			for len(stack) > 0 {
				i := stack[len(stack)-1]
				stack = stack[:len(stack)-1]
				if seen[i] || !of(i) {
					continue
				}
				seen[i] = true
				area++
				if over[i] {
					in++
				}
				for dy := -1; dy <= 1; dy++ {
					for dx := -1; dx <= 1; dx++ {
						if u, v := i%w+dx, i/w+dy; u >= 0 && v >= 0 && u < w && v < h {
							stack = append(stack, v*w+u)
						}
					}
				}
			}
			if area > 0 {
				use(area, in)
			}
		})
	}
	flood(func(i int) bool { return shape[i] && !over[i] }, func(area, _ int) { narrow = narrow || float64(area) > 2*r*r })
	flood(func(i int) bool { return shape[i] }, func(_, in int) { narrow = narrow || in == 0 })
	return narrow
}

// A mark alone stands as high as usual where there is room, and its block is
// clear; above lettering it is part of the block.
func TestAMarkStandsInAFreeBlock(t *testing.T) {
	b, a, alone := stamped(t, disc(0, 0, 10), 45, sizing.Stamp{Mark: discMark(60)})
	assert.Equal(t, sizing.Holds, alone.Verdict, alone.Says)
	assert.Equal(t, [3]unit.MM{markUsual, markUsual, 0}, [3]unit.MM{alone.W, alone.H, alone.Height})
	assert.Empty(t, alone.Strokes())
	clearBlock(t, b, a, alone)

	b, a, both := stamped(t, disc(0, 0, 10), 45, sizing.Stamp{Lines: skerry.Lines, Mark: discMark(60)})
	assert.Equal(t, sizing.Holds, both.Verdict, both.Says)
	clearBlock(t, b, a, both)
	box := boxOf(both.Strokes())
	assert.InDelta(t, float64(both.H)/2, box[3]+float64(both.Stroke)/2, 0.02, "the lettering stands on the foot of the block")
	foot := float64(both.Mark.Height) - float64(both.H)/2
	assert.InDelta(t, markGap*float64(both.Height), box[1]-float64(both.Stroke)/2-foot, 0.03, "and clear of the mark")

	_, _, high := stamped(t, disc(0, 0, 10), 45, sizing.Stamp{Mark: &sizing.Mark{W: 8, H: 8, Rows: barred(8, 8).Rows, Height: 8}})
	assert.Equal(t, sizing.Holds, high.Verdict, "higher than usual, and there is room: %s", high.Says)
	_, _, giant := stamped(t, disc(0, 0, 10), 30, sizing.Stamp{Mark: &sizing.Mark{W: 8, H: 8, Rows: barred(8, 8).Rows, Height: 20}})
	assert.Equal(t, sizing.Fails, giant.Verdict)
	assert.Contains(t, giant.Says, "There is room for a mark of")
	_, _, none := stamped(t, disc(0, 0, 10), 8, sizing.Stamp{Mark: discMark(60)})
	assert.Contains(t, none.Says, "no room for this mark")
	assert.False(t, none.Struck())
}

// Strokes of 0.2 mm: common practice, no published source. A stroke of 2 cells
// in 60 is that at 6 mm.
func TestAMarkHasItsLimit(t *testing.T) {
	m := barred(60, 10, 10, 2, 10, 10)
	at := func(height, least unit.MM) *StampedMark {
		o := *m
		o.Height, o.Least = height, least
		_, _, s := stamped(t, disc(0, 0, 10), 60, sizing.Stamp{Mark: &o})
		assert.Equal(t, s.Mark.Holds, s.Verdict == sizing.Holds, s.Says)
		return s.Mark
	}
	assert.True(t, at(6, 0).Holds)
	low := at(3, 0)
	assert.False(t, low.Holds)
	assert.Equal(t, unit.MM(6), low.HoldsFrom)
	assert.Equal(t, " The mark is 3 mm high: strokes or gaps of it are narrower than 0.2 mm and may fill in or be lost; from 6 mm it holds.", low.says())
	assert.True(t, at(3, 0.1).Holds, "the maker's own limit takes its place")
	assert.Equal(t, unit.MM(9), at(6, 0.3).HoldsFrom)
}

func TestADamagedMarkIsRefused(t *testing.T) {
	z, b := shaped(t, disc(0, 0, 10), 36)
	a, err := z.Advise(b.Scale, wished(b, sizing.Iron, 1.5, 0))
	require.NoError(t, err)
	_, err = z.Stamp(b.Scale, &a, sizing.Stamp{Lines: []string{"a"}, Mark: &sizing.Mark{W: 8, H: 8, Rows: "AA=="}})
	assert.ErrorContains(t, err, "damaged")
}
