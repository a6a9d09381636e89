package reduce

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce/colour"
)

func oblong(x0, y0, x1, y1 float64) func(x, y float64) bool {
	return func(x, y float64) bool { return x > x0 && x < x1 && y > y0 && y < y1 }
}

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
		assert.Equal(t, []LostEdit{{edits[2], NoSuchFlat}, {edits[3], NoSuchFlat}}, c.Lost)
		names := map[string]string{}
		for _, f := range at(t, now, 4, c.Edits...).Flats {
			names[f.Name] = f.RGB.Hex()
		}
		assert.Equal(t, "#c8402f", names["the part split off"])
		assert.Contains(t, names, colour.Short(colour.Name(gold)))
	}
}

func TestCarryToTheSameDrawing(t *testing.T) {
	a := analysed(t, buoy(t, 200))
	edits := []Edit{{Op: SetName, Flat: 1, Name: "sky"}, {Op: SetLock, Flat: 2, Locked: true}}
	c := Carry(a, a, edits)
	assert.Equal(t, edits, c.Edits)
	assert.Empty(t, c.Lost)
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
	require.Len(t, c.Edits, 1)
	assert.InDelta(t, 80.0/180, c.Edits[0].X, 0.02)
	require.Len(t, c.Edits[0].Lines, 1)
	assert.InDelta(t, 140.0/180, c.Edits[0].Lines[0].Points[1][0], 0.02)
	assert.InDelta(t, 9.0/180, c.Edits[0].Lines[0].Width, 0.002)
}

// Flats are counted by what an edit did in the old drawing: one that does not
// fit made its flat there, one that joined a colour made none.
func TestCarryCountsTheFlatsThatEditsMade(t *testing.T) {
	first, second := revisions(t, 320)
	old, now := analysed(t, first), analysed(t, second)
	hex := func(h string) *colour.RGB8 { c := rgb(t, h); return &c }
	made := FlatID(len(old.leaves))
	edits := []Edit{
		{Op: Fill, X: 0.65, Y: 0.3, RGB: hex("#c8402f"), Count: 3},   // the lamp becomes red, which is there
		{Op: Split, X: 0.65, Y: 0.3, Count: 2},                       // and then one of its own
		{Op: SetName, Flat: made, Name: "lamp", Count: 3},            // which is named
		{Op: Fill, X: 0.46, Y: 0.56, RGB: hex("#2a9d8f"), Count: 3},  // the mark becomes a new colour
		{Op: SetName, Flat: made + 1, Name: "weed", Count: 3},        // which is named too
		{Op: Fill, X: 0.46, Y: 0.56, RGB: hex("#2f5d7c"), Count: 3},  // and joins the ground,
		{Op: Split, X: 0.46, Y: 0.56, RGB: hex("#f4d35e"), Count: 2}, // of which all becomes yellow
		{Op: SetName, Flat: made + 2, Name: "the whole", Count: 3},
	}
	require.Equal(t, "weed", flatAt(at(t, old, 4, edits[:5]...), 0.46, 0.56).Name)
	require.Equal(t, "the whole", flatAt(at(t, old, 4, edits...), 0.46, 0.56).Name)

	c := Carry(old, now, edits)
	assert.Equal(t, []LostEdit{{edits[0], AnotherThere}, {edits[1], AnotherThere}, {edits[2], NoSuchFlat}}, c.Lost)
	require.Len(t, c.Edits, 5)
	assert.Equal(t, FlatID(len(now.leaves)), c.Edits[1].Flat)
	assert.Equal(t, "weed", flatAt(at(t, now, 4, c.Edits[:2]...), 0.46, 0.56).Name)
	assert.Equal(t, "the whole", flatAt(at(t, now, 4, c.Edits...), 0.46, 0.56).Name)
}

// The revision has the colour already that a fill made in the drawing before:
// what was said of the new flat is said of that one.
func TestCarryAFillThatTheArtistDrewMeanwhile(t *testing.T) {
	draw := func(hex string) *Analysis {
		return analysed(t, drawingOf(t, rasterise(200, 200, rgb(t, "#ffffff"), shape{rgb(t, "#16181d"), disc(100, 100, 90)},
			shape{rgb(t, "#2f5d7c"), oblong(40, 60, 95, 140)}, shape{rgb(t, hex), oblong(105, 60, 160, 140)})))
	}
	old, now := draw("#2f5d7c"), draw("#c8402f")
	red := rgb(t, "#c8402f")
	edits := []Edit{{Op: Fill, X: 0.66, Y: 0.5, RGB: &red, Role: Enamel, Count: 1}, {Op: SetName, Flat: FlatID(len(old.leaves)), Name: "hull", Count: 2}}
	require.Equal(t, "hull", flatAt(at(t, old, 2, edits...), 0.66, 0.5).Name)
	c := Carry(old, now, edits)
	assert.Empty(t, c.Lost)
	assert.Equal(t, "hull", flatAt(at(t, now, 2, c.Edits...), 0.66, 0.5).Name)
}

// What no longer fits says why.
func TestLostEditsSayWhy(t *testing.T) {
	gapped := func(gap float64) *Analysis {
		black, white := rgb(t, "#000000"), rgb(t, "#ffffff")
		return analysed(t, drawingOf(t, rasterise(200, 200, white, shape{black, disc(100, 100, 70)}, shape{white, disc(100, 100, 60)}, shape{white, oblong(150, 100-gap/2, 180, 100+gap/2)})))
	}
	red := rgb(t, "#d23b2f")
	old := gapped(0)
	edits := []Edit{
		{Op: Fill, X: 0.5, Y: 0.5, RGB: &red, Count: 1},
		{Op: SetName, Flat: FlatID(len(old.leaves)), Name: "hull", Count: 1},
		{Op: Split, Flat: 0, X: 0.5, Y: 0.16, Count: 1},
	}
	if whole := Carry(old, old, edits); assert.Empty(t, whole.Lost) {
		assert.Equal(t, edits, whole.Edits)
	}
	c := Carry(old, gapped(12), edits)
	assert.Equal(t, []LostEdit{{edits[0], RunsOut}, {edits[1], NoSuchFlat}}, c.Lost)
	shrunk := analysed(t, drawingOf(t, rasterise(200, 200, rgb(t, "#ffffff"), shape{rgb(t, "#000000"), disc(100, 100, 40)})))
	for _, l := range Carry(old, shrunk, edits).Lost {
		if l.Op == Split {
			assert.Equal(t, NothingThere, l.Why)
		}
	}
}

// Each version may be looked at closer in a part of its own: places go by the
// canvas that both have.
func TestCarryOverBetweenPartsOfACanvas(t *testing.T) {
	first, second := revisions(t, 200)
	first.Part, second.Part = Part{0.1, 0.2, 0.3, 0.5}, Part{0.1, 0.2, 0.3, 0.5}
	old, now := analysed(t, first), analysed(t, second)
	assert.Equal(t, Laid{KX: 1, KY: 1}, layOn(old, now))

	now.part = Part{0.2, 0.2, 0.6, 0.8} // twice as large, and begun a tenth further right
	l := layOn(old, now)
	x, y := l.At(0.75, 0.5) // 0.25, 0.35 of the canvas
	assert.InDelta(t, 0.125, x, 1e-12)
	assert.InDelta(t, 0.25, y, 1e-12)
}
