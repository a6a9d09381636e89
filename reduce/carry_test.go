package reduce

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce/colour"
)

// revisions draws two versions of one picture, the second at a size in px: its
// mark is moved and its lamp gone.
func revisions(t *testing.T, size int) (first, second *Drawing) {
	t.Helper()
	draw := func(size int, markX, markY, lamp float64) *Drawing {
		k := float64(size) / 200
		return drawingOf(t, rasterise(size, size, rgb(t, "#ffffff"), shape{rgb(t, "#2f5d7c"), disc(100*k, 100*k, 80*k)},
			shape{rgb(t, "#c8402f"), disc(markX*k, markY*k, 30*k)}, shape{rgb(t, "#f4d35e"), disc(130*k, 60*k, lamp*k)}))
	}
	return draw(200, 90, 110, 12), draw(size, 98, 114, 0)
}

// Names, roles and colours go with their flats, whatever the size of the new
// file; what the revision no longer has is said to be lost.
func TestCarryOver(t *testing.T) {
	for _, size := range []int{200, 320} {
		first, second := revisions(t, size)
		old, now := analysed(t, first), analysed(t, second)
		s := at(t, old, 3)
		ids := map[string]FlatID{}
		for _, f := range s.Flats {
			ids[f.RGB.Hex()] = f.ID
		}
		gold := rgb(t, "#d9a441")
		edits := []Edit{
			{Op: SetName, Flat: ids["#c8402f"], Name: "hull"},
			{Op: SetColour, Flat: ids["#2f5d7c"], RGB: &gold},
			{Op: SetRole, Flat: ids["#f4d35e"], Role: CutOut},
			{Op: Join, Flat: ids["#f4d35e"], With: ids["#c8402f"]},
			{Op: Split, Flat: ids["#c8402f"], X: 0.48, Y: 0.56, Count: 3},
			{Op: SetName, Flat: 3, Name: "the part split off"},
		}
		c := Carry(old, now, edits)
		require.Len(t, c.Edits, 4, "%d px", size)
		assert.Equal(t, []Edit{edits[2], edits[3]}, c.Lost)
		assert.InDelta(t, 0.06, c.Changed, 0.045)
		names := map[string]string{}
		for _, f := range at(t, now, 4, c.Edits...).Flats {
			names[f.Name] = f.RGB.Hex()
		}
		assert.Equal(t, "#c8402f", names["the part split off"])
		assert.Contains(t, names, colour.Name(gold))
	}
}

func TestCarryToTheSameDrawing(t *testing.T) {
	a := analysed(t, buoy(t, 200))
	edits := []Edit{{Op: SetName, Flat: 1, Name: "sky"}, {Op: SetLock, Flat: 2, Locked: true}}
	c := Carry(a, a, edits)
	assert.Equal(t, edits, c.Edits)
	assert.Empty(t, c.Lost)
	assert.Zero(t, c.Changed)
}

// A flat that the artist repainted in place is still that flat.
func TestCarryOverARepainting(t *testing.T) {
	draw := func(hex string) *Analysis {
		return analysed(t, drawingOf(t, rasterise(200, 200, rgb(t, "#ffffff"), shape{rgb(t, "#2f5d7c"), disc(100, 100, 80)}, shape{rgb(t, hex), disc(90, 110, 30)})))
	}
	c := Carry(draw("#c8402f"), draw("#3f9a55"), []Edit{{Op: SetName, Flat: 1, Name: "hull"}})
	assert.Len(t, c.Edits, 1)
	assert.Empty(t, c.Lost)
}

// A revision cropped to another canvas is laid by what is drawn.
func TestCarryToAnotherCanvas(t *testing.T) {
	draw := func(w, h int, dx float64) *Analysis {
		return analysed(t, drawingOf(t, rasterise(w, h, rgb(t, "#ffffff"), shape{rgb(t, "#2f5d7c"), disc(100-dx, 100, 80)}, shape{rgb(t, "#c8402f"), disc(90-dx, 110, 30)})))
	}
	across := []HandLine{{Points: [][2]float64{{0.2, 0.5}, {0.5, 0.5}}, Width: 0.03}}
	c := Carry(draw(300, 200, 0), draw(180, 200, 10), []Edit{{Op: Split, Flat: 1, X: 90.0 / 300, Y: 0.55, Lines: across}})
	assert.Less(t, c.Changed, 0.02)
	require.Len(t, c.Edits, 1)
	assert.InDelta(t, 80.0/180, c.Edits[0].X, 0.02)
	require.Len(t, c.Edits[0].Lines, 1)
	assert.InDelta(t, 140.0/180, c.Edits[0].Lines[0].Points[1][0], 0.02)
	assert.InDelta(t, 9.0/180, c.Edits[0].Lines[0].Width, 0.002)
}
