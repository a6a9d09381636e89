package reduce

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func differing(t *testing.T, old, now *Analysis) *Difference {
	t.Helper()
	d, err := Differ(old, now)
	require.NoError(t, err)
	require.Len(t, d.At, d.W*d.H)
	return d
}

func (d *Difference) at(x, y float64) bool {
	return d.At[int(y*float64(d.H))*d.W+int(x*float64(d.W))]
}

// A mark that moved and a lamp that went are marked, and nothing else,
// whatever the size of the new file.
func TestDifferMarksWhatChanged(t *testing.T) {
	for _, size := range []int{200, 320} {
		first, second := revisions(t, size)
		d := differing(t, analysed(t, first), analysed(t, second))
		assert.True(t, d.at(0.65, 0.30), "the lamp, %d px", size)
		assert.True(t, d.at(0.63, 0.58), "where the mark has come to")
		assert.True(t, d.at(0.31, 0.52), "where it has gone from")
		assert.False(t, d.at(0.46, 0.56), "where it was and is")
		assert.False(t, d.at(0.5, 0.85))
		assert.False(t, d.at(0.02, 0.02))
		assert.Equal(t, 3, d.Places)
		assert.InDelta(t, 0.06, d.Share, 0.03)
	}
}

// Drawn again at another size, the same art has not changed.
func TestTheSameArtDoesNotDiffer(t *testing.T) {
	a := analysed(t, buoy(t, 240))
	for _, px := range []int{240, 300, 500} {
		d := differing(t, a, analysed(t, buoy(t, px)))
		assert.Zero(t, d.Places, "%d px", px)
		assert.Zero(t, d.Share)
	}
}

// A colour of its place that is plainly another is a change, all over; the same
// colour saved a little otherwise is none.
func TestAnotherColourIsAChange(t *testing.T) {
	draw := func(hex string) *Analysis {
		return analysed(t, drawingOf(t, rasterise(200, 200, rgb(t, "#ffffff"), shape{rgb(t, "#2f5d7c"), disc(100, 100, 80)}, shape{rgb(t, hex), disc(90, 110, 30)})))
	}
	old := draw("#c8402f")
	d := differing(t, old, draw("#3f9a55"))
	assert.Equal(t, 1, d.Places)
	assert.True(t, d.at(0.45, 0.55))
	assert.False(t, d.at(0.8, 0.5))
	assert.InDelta(t, 30.0*30/(80*80), d.Share, 0.01)
	assert.Zero(t, differing(t, old, draw("#ca4331")).Places)
}

// What is new outside the old outline is a change too; all of it is where
// nothing is alike.
func TestDifferOutsideTheOldOutline(t *testing.T) {
	draw := func(more ...shape) *Analysis {
		return analysed(t, drawingOf(t, rasterise(200, 200, rgb(t, "#ffffff"), append([]shape{{rgb(t, "#2f5d7c"), disc(80, 100, 60)}}, more...)...)))
	}
	d := differing(t, draw(), draw(shape{rgb(t, "#c8402f"), disc(165, 100, 20)}))
	assert.Equal(t, 1, d.Places)
	assert.True(t, d.at(0.82, 0.5))
	whole := analysed(t, drawingOf(t, rasterise(100, 100, rgb(t, "#2f5d7c"), shape{rgb(t, "#c8402f"), disc(50, 50, 20)})))
	d = differing(t, draw(), whole)
	assert.Positive(t, d.Places)
	assert.LessOrEqual(t, d.Share, 1.0)
}
