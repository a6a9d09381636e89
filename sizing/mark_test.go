package sizing

import (
	"encoding/base64"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/sizing/unit"
)

const (
	ink   = uint32(0xff202020)
	paper = uint32(0xfff4f8fa)
)

// painted is a picture of text rows, side px for each letter: # is ink.
func painted(rows []string, side int, on, off uint32) (pix []uint32, w, h int) {
	w, h = len(rows[0])*side, len(rows)*side
	pix = make([]uint32, w*h)
	for i := range pix {
		pix[i] = off
		if rows[i/w/side][i%w/side] == '#' {
			pix[i] = on
		}
	}
	return pix, w, h
}

func rowsOf(t *testing.T, m Mark) []string {
	cells, err := m.Cells()
	require.NoError(t, err)
	rows := make([]string, m.H)
	for i, on := range cells {
		rows[i/m.W] += map[bool]string{true: "#", false: "."}[on]
	}
	return rows
}

var flagRows = []string{
	"..................",
	".################.",
	".#..............#.",
	".#####..........#.",
	".################.",
	".#................",
	"..................",
}

// What is drawn is cropped to and kept, dark on light, light on dark and of one
// tone on a clear ground alike.
func TestAMarkIsReadHoweverItIsDrawn(t *testing.T) {
	want := []string{"################", "#..............#", "#####..........#", "################", "#..............."}
	for name, c := range map[string][2]uint32{
		"dark on light": {ink, paper}, "light on dark": {paper, ink}, "dark on clear": {ink, 0}, "light on clear": {paper, 0},
	} {
		pix, w, h := painted(flagRows, 1, c[0], c[1])
		m, err := ReadMark(pix, w, h)
		require.NoError(t, err, name)
		assert.Equal(t, want, rowsOf(t, m), name)
	}
	// On a clear ground a light fill inside dark lines is no stroke.
	pix, w, h := painted(flagRows, 1, ink, 0)
	pix[2*w+5] = paper
	m, err := ReadMark(pix, w, h)
	require.NoError(t, err)
	assert.Equal(t, want, rowsOf(t, m))
}

// A large picture comes down to the most cells: each letter of these rows is
// 40 px, and eight cells.
func TestALargeMarkIsBroughtDown(t *testing.T) {
	pix, w, h := painted(flagRows, 40, ink, paper)
	m, err := ReadMark(pix, w, h)
	require.NoError(t, err)
	assert.Equal(t, [2]int{128, 40}, [2]int{m.W, m.H})
	for y, row := range rowsOf(t, m) {
		for x := range row {
			require.Equal(t, flagRows[1+y/8][1+x/8], row[x], "%d %d", x, y)
		}
	}
}

// RFC 4648, section 10: "foobar" is Zm9vYmFy; the cells are its bits.
func TestAMarksRowsAreBitsInBase64(t *testing.T) {
	m := Mark{W: 8, H: 6, Rows: "Zm9vYmFy"}
	cells, err := m.Cells()
	require.NoError(t, err)
	for i, on := range cells {
		assert.Equal(t, "foobar"[i/8]>>(7-i%8)&1 == 1, on)
	}
	assert.Equal(t, m, NewMark(cells, 8, 6))
	odd := NewMark([]bool{true, false, true, false, true, false, true, true, true, true}, 5, 2)
	assert.Equal(t, []string{"#.#.#", ".####"}, rowsOf(t, odd))
}

func TestWhatIsNoMarkIsRefusedInWords(t *testing.T) {
	full := base64.StdEncoding.EncodeToString([]byte{255, 255})
	for _, bad := range []Mark{
		{}, {W: 129, H: 1, Rows: full}, {W: 8, H: 3, Rows: full}, {W: 8, H: -2, Rows: full}, {W: 8, H: 2, Rows: "?"},
		{W: 8, H: 2, Rows: "AAA="}, {W: 8, H: 2, Rows: full, Height: 21}, {W: 8, H: 2, Rows: full, Least: -1},
		{W: 8, H: 2, Rows: full, Height: unit.MM(math.NaN())},
	} {
		_, err := bad.Cells()
		var r *reduce.Refusal
		if assert.ErrorAs(t, err, &r, "%v", bad) {
			assert.NotEmpty(t, r.Do)
		}
	}
	hairs := make([]string, 300)
	for i := range hairs {
		hairs[i] = strings.Repeat("#.......", 40)
	}
	for says, rows := range map[string][]string{
		"Nothing stands out": {strings.Repeat(".", 40)}, "only 3 by 1 px": {"..###..", "......."}, "too fine": hairs,
	} {
		pix, w, h := painted(rows, 1, ink, paper)
		_, err := ReadMark(pix, w, h)
		assert.ErrorContains(t, err, says)
	}
	_, err := ReadMark(make([]uint32, 400), 20, 20)
	assert.ErrorContains(t, err, "Nothing stands out", "all of it is clear")
}
