package mask

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// drawn turns text into labels: . is 0, other letters are labels of their own.
func drawn(picture string) (label []uint8, w, h int) {
	rows := strings.Fields(picture)
	for _, r := range rows {
		for _, c := range []byte(r) {
			if c == '.' {
				c = 0
			}
			label = append(label, c)
		}
	}
	return label, len(rows[0]), len(rows)
}

func ridgeText(picture string) string {
	label, w, h := drawn(picture)
	out := []byte(strings.Repeat(".", w*h))
	for _, p := range Ridge(label, Connect(label, w, h, skipZero), skipZero) {
		out[int(p.Y)*w+int(p.X)] = '*'
	}
	var rows []string
	for y := 0; y < h; y++ {
		rows = append(rows, string(out[y*w:y*w+w]))
	}
	return strings.Join(rows, "\n")
}

func TestCentrelineOfBars(t *testing.T) {
	require.Equal(t, strings.TrimSpace(`
...........
...........
...******..
...........
...........`), ridgeText(`
...........
.#########.
.#########.
.#########.
...........`))
	require.Equal(t, strings.TrimSpace(`
.....
..*..
..*..
..*..
.....`), ridgeText(`
.....
..#..
..#..
..#..
.....`), "one pixel wide")
}

func TestCentrelinesOfTwoLabelsSideBySide(t *testing.T) {
	got := ridgeText(`
............
.aaaaaaaaaa.
.aaaaaaaaaa.
.aaaaaaaaaa.
.bbbbbbbbbb.
.bbbbbbbbbb.
.bbbbbbbbbb.
............`)
	rows := strings.Split(got, "\n")
	require.Contains(t, rows[2], "*****")
	require.Contains(t, rows[5], "*****")
	require.NotContains(t, rows[3]+rows[4], "*")
}

// A slanted edge is a stair of pixels; its steps are no lines.
func TestNoCentrelineAlongASlantedEdge(t *testing.T) {
	const w, h = 80, 80
	for _, slope := range []float64{0, 0.1, 0.3, 0.5, 0.8, 1} {
		label := make([]uint8, w*h)
		for i := range label {
			if float64(i/w) > 20+slope*float64(i%w)*0.7 {
				label[i] = 1
			}
		}
		for _, p := range Ridge(label, Connect(label, w, h, skipZero), skipZero) {
			nearRim := min(p.X, p.Y, w-1-p.X, h-1-p.Y) < 3
			require.True(t, p.D2 > 9 || nearRim, "slope %.1f: (%d,%d) at %d", slope, p.X, p.Y, p.D2)
		}
	}
}
