package reduce

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce/colour"
)

// grown draws a separation from text, each letter k x k pixels: # is metal, a
// and b are enamels, a point is background.
func grown(k int, rows ...string) *Separation {
	s := NewSeparation(k*len(rows[0]), k*len(rows))
	s.Flats = []Flat{{ID: 0, Role: Metal}, {ID: 1, Role: Enamel}, {ID: 2, Role: Enamel}}
	for i := range s.Labels {
		if l := strings.IndexByte("#ab", rows[i/s.W/k][i%s.W/k]); l >= 0 {
			s.Labels[i], s.Beside[i] = uint8(l), uint8(l)
		}
	}
	return s
}

var openBox = []string{
	"....................",
	".##################.",
	".#................#.",
	".#................#.",
	".#................#.",
	".#..................", // the gap, one letter high
	".#................#.",
	".#................#.",
	".#................#.",
	".##################.",
	"....................",
}

func TestAGapInTheOutline(t *testing.T) {
	s := grown(4, openBox...)
	g, ok := s.GapAt(4*5, 4*6)
	require.True(t, ok)
	assert.True(t, g.Open)
	assert.InDelta(t, 4, g.Width, 1.1)
	assert.InDelta(t, 4*18.5, (g.X0+g.X1)/2, 3)
	assert.InDelta(t, 4*5.5, (g.Y0+g.Y1)/2, 2)
}

func TestNoGapWhereNothingIsClosedIn(t *testing.T) {
	s := grown(4, openBox...)
	_, ok := s.GapAt(1, 1)
	assert.False(t, ok, "the page itself")
	wide := grown(4, "............", ".#########..", ".#..........", ".#..........", ".#..........", ".#########..", "............")
	_, ok = wide.GapAt(4*4, 4*3)
	assert.False(t, ok, "a bay as wide as it is high")
	shut := grown(4, "......", ".####.", ".#aa#.", ".#aa#.", ".####.", "......")
	_, ok = shut.GapAt(4*2, 4*2)
	assert.False(t, ok, "a closed area")
	_, ok = shut.GapAt(-1, 900)
	assert.False(t, ok, "off the raster")
}

func TestAGapBetweenTwoAreas(t *testing.T) {
	s := grown(4,
		"..................",
		".################.",
		".#aaaaaa#aaaaaaa#.",
		".#aaaaaa#aaaaaaa#.",
		".#aaaaaa#aaaaaaa#.",
		".#aaaaaaaaaaaaaa#.",
		".#aaaaaa#aaaaaaa#.",
		".#aaaaaa#aaaaaaa#.",
		".#aaaaaa#aaaaaaa#.",
		".################.",
		"..................")
	for _, x := range []int{3, 12} {
		g, ok := s.GapAt(4*x, 4*3)
		require.True(t, ok)
		assert.False(t, g.Open)
		assert.InDelta(t, 4, g.Width, 1.1)
		assert.InDelta(t, 4*8.5, (g.X0+g.X1)/2, 3)
		assert.InDelta(t, 4*5.5, (g.Y0+g.Y1)/2, 2)
	}
}

// boxDrawing is a line drawing of a box with a gap, on white.
func boxDrawing(t *testing.T, gap float64) *Drawing {
	return drawingOf(t, rasterise(200, 160, rgb(t, "#ffffff"), shape{rgb(t, "#111111"), func(x, y float64) bool {
		in := x > 30 && x < 170 && y > 30 && y < 130
		inner := x > 38 && x < 162 && y > 38 && y < 122
		middle := x > 96 && x < 104
		open := x > 150 && y > 80-gap/2 && y < 80+gap/2
		return in && (!inner || middle) && !open
	}}))
}

func TestFillGivesAnAreaItsColour(t *testing.T) {
	a := analysed(t, boxDrawing(t, 0))
	red, sea := rgb(t, "#d23b2f"), rgb(t, "#2a9d8f")
	left := Edit{Op: Fill, X: 60.0 / 200, Y: 0.5, RGB: &red, Count: 1}
	right := Edit{Op: Fill, X: 130.0 / 200, Y: 0.5, RGB: &sea, Count: 2}
	s := at(t, a, 3, left, right)
	assert.Equal(t, red, s.Flats[s.Labels[80*200+60]].RGB)
	assert.Equal(t, sea, s.Flats[s.Labels[80*200+130]].RGB)
	again := at(t, a, 3, left, Edit{Op: Fill, X: 130.0 / 200, Y: 0.5, RGB: &red, Count: 2})
	assert.Equal(t, again.Labels[80*200+60], again.Labels[80*200+130], "the same colour is the same flat")
	metal := at(t, a, 3, Edit{Op: Fill, X: 130.0 / 200, Y: 0.5, Role: Metal, Count: 1})
	assert.Equal(t, Metal, metal.Flats[metal.Labels[80*200+130]].Role)
	assert.Equal(t, Enamel, metal.Flats[metal.Labels[80*200+60]].Role)
}

// A fill never floods the page; with the gap cut off it fills what is behind.
func TestFillOfAnOpenArea(t *testing.T) {
	a := analysed(t, boxDrawing(t, 8))
	sea := rgb(t, "#2a9d8f")
	fill := Edit{Op: Fill, X: 130.0 / 200, Y: 0.5, RGB: &sea, Count: 1}
	s := at(t, a, 2, fill)
	assert.Equal(t, at(t, a, 2).Labels, s.Labels, "nothing is flooded")

	g, ok := s.GapAt(130, 80)
	require.True(t, ok)
	assert.True(t, g.Open)
	assert.InDelta(t, 8, g.Width, 1.5)
	fill.Gap = &[4]float64{g.X0 / 200, g.Y0 / 160, g.X1 / 200, g.Y1 / 160}
	s = at(t, a, 2, fill)
	assert.Equal(t, sea, s.Flats[s.Labels[80*200+130]].RGB)
	assert.Equal(t, None, s.Labels[80*200+190], "outside stays outside")
	area := 0
	for _, l := range s.Labels {
		if l != None && s.Flats[l].RGB == (colour.RGB8)(sea) {
			area++
		}
	}
	assert.InDelta(t, (162-104)*(122-38), area, 120)
}

// A fill keeps to its side of a line drawn by hand, whose ends reach the
// drawn lines by half its width only; taking the line away leaves no seam.
func TestFillKeepsToItsSideOfALineDrawnByHand(t *testing.T) {
	a := analysed(t, boxDrawing(t, 0))
	red, sea := rgb(t, "#d23b2f"), rgb(t, "#2a9d8f")
	across := HandLine{Points: [][2]float64{{107.0 / 200, 0.5}, {0.65, 0.45}, {159.0 / 200, 0.55}}, Width: 8.0 / 200}
	upper := Edit{Op: Fill, X: 0.65, Y: 50.0 / 160, RGB: &red, Count: 1, Lines: []HandLine{across}}
	s := at(t, a, 3, upper)
	assert.Equal(t, red, s.Flats[s.Labels[50*200+130]].RGB)
	assert.Equal(t, rgb(t, "#ffffff"), s.Flats[s.Labels[110*200+130]].RGB)
	lower := Edit{Op: Fill, X: 0.65, Y: 110.0 / 160, RGB: &sea, Count: 2, Lines: []HandLine{across}}
	s = at(t, a, 3, upper, lower)
	for y := 45; y < 116; y++ {
		assert.Contains(t, []colour.RGB8{red, sea}, s.Flats[s.Labels[y*200+130]].RGB, "row %d", y)
	}
	split := Edit{Op: Split, X: 0.65, Y: 50.0 / 160, Count: 1, Lines: []HandLine{across}}
	s = at(t, a, 3, split)
	assert.NotEqual(t, s.Labels[50*200+130], s.Labels[110*200+130], "a split keeps to its side too")
	dot := Edit{Op: Fill, X: 0.65, Y: 50.0 / 160, RGB: &red, Count: 1, Lines: []HandLine{{Points: across.Points[:1], Width: 1}, {}}}
	s = at(t, a, 3, dot)
	assert.Equal(t, red, s.Flats[s.Labels[110*200+130]].RGB, "a dot closes nothing")
}

// A line that ends short of the next leaves a gap, whose ends lie anywhere on
// the edge of the line: the cut across it and the line hold together.
func TestFillIsHeldByALineAndAGapAtItsEnd(t *testing.T) {
	a := analysed(t, boxDrawing(t, 0))
	red := rgb(t, "#d23b2f")
	short := HandLine{Points: [][2]float64{{116.0 / 200, 80.0 / 160}, {161.0 / 200, 80.0 / 160}}, Width: 8.0 / 200}
	for _, y := range []float64{77.5, 80.5, 82.5} {
		fill := Edit{Op: Fill, X: 0.65, Y: 50.0 / 160, RGB: &red, Count: 1, Lines: []HandLine{short}, Gap: &[4]float64{103.5 / 200, y / 160, 114.5 / 200, y / 160}}
		s := at(t, a, 3, fill)
		assert.Equal(t, red, s.Flats[s.Labels[50*200+130]].RGB)
		assert.Equal(t, rgb(t, "#ffffff"), s.Flats[s.Labels[110*200+130]].RGB, "the gap is cut at row %g", y)
	}
}

// A line erased between two areas makes them one: a fill takes both sides, and
// one drawn again after it parts them as before.
func TestFillCrossesALineThatWasErased(t *testing.T) {
	a := analysed(t, drawingOf(t, rasterise(200, 160, rgb(t, "#ffffff"), shape{rgb(t, "#16181d"), oblong(20, 20, 180, 140)},
		shape{rgb(t, "#d23b2f"), oblong(28, 28, 96, 132)}, shape{rgb(t, "#d23b2f"), oblong(104, 28, 172, 132)})))
	sea := rgb(t, "#2a9d8f")
	erased := HandLine{Points: [][2]float64{{0.5, 0.1}, {0.5, 0.9}}, Width: 12.0 / 200, Erased: true}
	drawn := HandLine{Points: [][2]float64{{0.5, 0.1}, {0.5, 0.9}}, Width: 8.0 / 200}
	for _, c := range []struct {
		lines []HandLine
		both  bool
		what  string
	}{
		{nil, false, "the line stands"},
		{[]HandLine{erased}, true, "it is erased"},
		{[]HandLine{drawn, erased}, true, "it was drawn over and then erased"},
		{[]HandLine{erased, drawn}, false, "it was drawn again"},
		{[]HandLine{{Points: [][2]float64{{0.5, 0.5}}, Width: 12.0 / 200, Erased: true}}, true, "a dot is erased"},
		{[]HandLine{{Points: erased.Points, Width: 2.0 / 200, Erased: true}}, false, "less than its width is erased"},
	} {
		for _, op := range []Op{Fill, Split} {
			s := at(t, a, 2, Edit{Op: op, X: 0.3, Y: 0.5, RGB: &sea, Count: 1, Lines: c.lines})
			require.Equal(t, sea, flatAt(s, 0.3, 0.5).RGB, c.what)
			assert.Equal(t, c.both, flatAt(s, 0.7, 0.5).RGB == sea, "%s: %s", op, c.what)
			assert.Equal(t, Metal, flatAt(s, 0.5, 0.5).Role, "%s: what is erased is erased when it is struck", op)
		}
	}
}

// Where the outline itself was erased, a fill would run out and floods nothing.
func TestFillDoesNotFloodThroughAnErasedOutline(t *testing.T) {
	a := analysed(t, boxDrawing(t, 0))
	sea := rgb(t, "#2a9d8f")
	before := at(t, a, 2)
	g := Edit{Op: Fill, X: 0.02, Y: 0.02, RGB: &sea, Count: 1, Lines: []HandLine{{Points: [][2]float64{{0.5, 0}, {0.5, 1}}, Width: 0.05, Erased: true}}}
	assert.Equal(t, before.Labels, at(t, a, 2, g).Labels)
}
