package sizing

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"

	"badgewright/reduce"
	"badgewright/sizing/unit"
)

// drawn reads a separation of one flat: '#' is enamel, 'o' a cut-out, '.' the
// background, '+' a pixel half of enamel and half of background.
func drawn(rows ...string) *reduce.Separation {
	s := reduce.NewSeparation(len(rows[0]), len(rows))
	s.Flats = []reduce.Flat{{ID: 0, Role: reduce.Enamel}, {ID: 1, Role: reduce.CutOut}}
	for y, row := range rows {
		for x, c := range row {
			i := y*s.W + x
			switch c {
			case '#':
				s.Labels[i], s.Beside[i] = 0, 0
			case 'o':
				s.Labels[i], s.Beside[i] = 1, 1
			case '+':
				s.Labels[i], s.Beside[i], s.Cover[i] = 0, reduce.None, 128
			}
		}
	}
	return s
}

func TestOutlineReachesTheTrueEdge(t *testing.T) {
	for _, c := range []struct {
		rows []string
		want [4]float64
	}{
		{[]string{"....", ".##.", "...."}, [4]float64{1, 1, 3, 2}},
		{[]string{"....", "+##+", "...."}, [4]float64{0.5, 1, 3.5, 2}},
		{[]string{"o##o", "...."}, [4]float64{1, 0, 3, 1}}, // a cut-out at the rim is no part of the pin
	} {
		box, ok := Outline(drawn(c.rows...))
		assert.True(t, ok)
		for k := range box {
			assert.InDelta(t, c.want[k], box[k], 0.01, "%v", c.rows)
		}
	}
	_, ok := Outline(drawn("..", "oo"))
	assert.False(t, ok)
}

func TestScaleForEachMeasure(t *testing.T) {
	box := [4]float64{10, 10, 310, 210} // 300 x 200 px
	for by, px := range map[SizeBy]float64{ByWidth: 300, ByHeight: 200, ByLongest: 300, ByMean: 250} {
		scale := ScaleFor(box, Size{MM: 25, By: by})
		assert.InDelta(t, px/25, float64(scale), 1e-12, by)
		b := Badge{Scale: scale, Outline: box}
		got := map[SizeBy]unit.MM{ByWidth: b.Width(), ByHeight: b.Height(), ByLongest: b.Longest(), ByMean: b.Mean()}[by]
		assert.InDelta(t, 25, float64(got), 1e-9, by)
	}
}

func TestSizesThatAreNoSizes(t *testing.T) {
	for _, mm := range []unit.MM{0, -3, 4.99, 151, unit.MM(math.NaN()), unit.MM(math.Inf(1))} {
		assert.Error(t, Size{MM: mm}.Check(), "%v", mm)
	}
	assert.NoError(t, Size{MM: 32}.Check())
}

func TestDefaultLimitsAreTheTradesUsualOnes(t *testing.T) {
	// common practice, no published source
	assert.Equal(t, unit.MM(0.20), DefaultLimits(Struck, Soft).Line)
	assert.Equal(t, unit.MM(0.25), DefaultLimits(Struck, Hard).Line)
	assert.Equal(t, unit.MM(0.30), DefaultLimits(Cast, Soft).Line)
	assert.Equal(t, unit.MM(0.35), DefaultLimits(Struck, Hard).Area)
	assert.Equal(t, unit.MM(1.2), DefaultLimits(Cast, Hard).CutOut)
}

func TestPlatingsHaveNamesOfTheirOwn(t *testing.T) {
	seen := map[PlatingID]bool{}
	for _, p := range Platings() {
		assert.False(t, seen[p.ID], p.ID)
		assert.NotEmpty(t, p.Name)
		seen[p.ID] = true
	}
}

// plainOutline looks at every pixel: the slow twin of Outline.
func plainOutline(s *reduce.Separation) (box [4]float64, ok bool) {
	solid := s.Solid()
	box = [4]float64{float64(s.W), float64(s.H), 0, 0}
	for i := range s.Labels {
		c := s.CoverOf(i, solid)
		if c < leastCover {
			continue
		}
		x, y := float64(i%s.W), float64(i/s.W)
		ok = true
		box = [4]float64{min(box[0], x+1-c), min(box[1], y+1-c), max(box[2], x+c), max(box[3], y+c)}
	}
	return box, ok
}

func TestOutlineIsThatOfEveryPixel(t *testing.T) {
	const seed = 7
	t.Logf("seed %d", seed)
	r := rand.New(rand.NewPCG(seed, seed))
	for range 2000 {
		s := reduce.NewSeparation(1+r.IntN(6), 1+r.IntN(6))
		s.Flats = []reduce.Flat{{Role: reduce.Enamel}, {Role: reduce.CutOut}}
		kinds := []uint8{0, 1, reduce.None, reduce.None}
		for i := range s.Labels {
			s.Labels[i], s.Beside[i] = kinds[r.IntN(4)], kinds[r.IntN(4)]
			s.Cover[i] = uint8(128 + r.IntN(128))
		}
		want, wantOK := plainOutline(s)
		got, ok := Outline(s)
		assert.Equal(t, wantOK, ok)
		if ok {
			assert.Equal(t, want, got)
		}
	}
}
