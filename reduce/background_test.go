package reduce

import (
	"bytes"
	"fmt"
	"image"
	"image/jpeg"
	"math"
	"math/rand"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce/colour"
)

// inks of the small drawings in this file.
var inks = map[rune]uint32{
	'.': 0xffffffff, // white paper
	' ': 0x00000000, // clear
	'#': 0xff402010, // dark line
	'o': 0xffffffff, // white paint: the same as paper
	'r': 0xff2030d0, // red
	'y': 0xff80f0fa, // yellow
	'k': 0xff181210, // a dark ground
	'h': 0x80402010, // half clear
}

// draw reads a small drawing from text and enlarges each letter to n x n px.
func draw(t *testing.T, n int, rows ...string) *Drawing {
	t.Helper()
	w, h := len([]rune(rows[0]))*n, len(rows)*n
	pix := make([]uint32, w*h)
	for y := range h {
		for x := range w {
			ink, ok := inks[[]rune(rows[y/n])[x/n]]
			require.True(t, ok, "unknown letter in row %d", y/n)
			pix[y*w+x] = ink
		}
	}
	d, err := NewDrawing(w, h, pix)
	require.NoError(t, err)
	return d
}

// backOf prints a ground as text, one letter for n x n px: b background,
// d drawing, s soft, ? when the n x n px differ.
func backOf(g *Ground, w, n int) []string {
	var rows []string
	for y := 0; y < len(g.Back)/w; y += n {
		var row strings.Builder
		for x := 0; x < w; x += n {
			v := g.Back[y*w+x]
			letter := map[uint8]string{255: "b", 0: "d"}[v]
			if letter == "" {
				letter = "s"
			}
			for k := range n * n {
				if g.Back[(y+k/n)*w+x+k%n] != v {
					letter = "?"
				}
			}
			row.WriteString(letter)
		}
		rows = append(rows, row.String())
	}
	return rows
}

func TestGroundOfSmallDrawings(t *testing.T) {
	for _, c := range []struct {
		name   string
		choice GroundChoice
		rows   []string
		found  GroundChoice
		want   []string
	}{
		{"enclosed paper stays", GroundAuto,
			[]string{"........", ".#####..", ".#ooo#..", ".#ooo#..", ".#####..", "........"}, GroundPaper,
			[]string{"bbbbbbbb", "bdddddbb", "bdddddbb", "bdddddbb", "bdddddbb", "bbbbbbbb"}},
		{"a line held by corners does not leak", GroundAuto,
			[]string{".......", "...#...", "..#o#..", ".#ooo#.", "..#o#..", "...#...", "......."}, GroundPaper,
			[]string{"bbbbbbb", "bbbdbbb", "bbdddbb", "bdddddb", "bbdddbb", "bbbdbbb", "bbbbbbb"}},
		{"a drawing that touches the edge keeps its outline", GroundAuto,
			[]string{"....##....", "...#rr#...", "..#rrrr#..", ".#rrrrrr#.", "#rrrrrrrr#"}, GroundPaper,
			[]string{"bbbbddbbbb", "bbbddddbbb", "bbddddddbb", "bddddddddb", "dddddddddd"}},
		{"white paint enclosed at the very edge is no background", GroundAuto,
			[]string{"........", "..####..", "..#oo#..", "..#oo#..", "..####.."}, GroundPaper,
			[]string{"bbbbbbbb", "bbddddbb", "bbddddbb", "bbddddbb", "bbddddbb"}},
		{"transparency goes before paper", GroundAuto,
			[]string{"        ", " ###### ", " #....# ", " #.  .# ", " ###### ", "        "}, GroundClear,
			[]string{"bbbbbbbb", "bddddddb", "bddddddb", "bddbbddb", "bddddddb", "bbbbbbbb"}},
		{"half clear is half background", GroundAuto,
			[]string{"     ", " hhh ", " h#h ", " h#h ", " hhh ", "     "}, GroundClear,
			[]string{"bbbbb", "bsssb", "bsdsb", "bsdsb", "bsssb", "bbbbb"}},
		{"a dark ground is paper too", GroundAuto,
			[]string{"kkkkkk", "kyyyyk", "kykkyk", "kyyyyk", "kkkkkk"}, GroundPaper,
			[]string{"bbbbbb", "bddddb", "bddddb", "bddddb", "bbbbbb"}},
		{"a painted sky is not paper", GroundAuto,
			[]string{"rrrrrrrr", "rrryyrrr", "rrryyrrr", "kkkkkkkk", "kkkkkkkk", "kkkkkkkk"}, GroundNone,
			[]string{"dddddddd", "dddddddd", "dddddddd", "dddddddd", "dddddddd", "dddddddd"}},
		{"a colour on three corners and half the border is not paper", GroundAuto,
			[]string{"rrrrrryy", "rrryyryy", "kkkyyyyy", "kkkyyyyy", "kkkyyyyy", "kkyyyyyr", "rkkyyyyr", "rkkkyyyr"}, GroundNone,
			[]string{"dddddddd", "dddddddd", "dddddddd", "dddddddd", "dddddddd", "dddddddd", "dddddddd", "dddddddd"}},
		{"clear corners of a cropped drawing are the background", GroundAuto,
			[]string{" oooooooooo ", "oooooooooooo", "oooo##oooooo", "oooo##oooooo", "oooooooooooo", " oooooooooo "}, GroundClear,
			[]string{"bddddddddddb", "dddddddddddd", "dddddddddddd", "dddddddddddd", "dddddddddddd", "bddddddddddb"}},
		{"clear wanted where nothing is clear", GroundClear,
			[]string{"......", "..##..", "..##..", "......"}, GroundNone,
			[]string{"dddddd", "dddddd", "dddddd", "dddddd"}},
		{"none wanted", GroundNone,
			[]string{"......", "..##..", "..##..", "......"}, GroundNone,
			[]string{"dddddd", "dddddd", "dddddd", "dddddd"}},
		{"paper wanted on a clear sheet with a paper margin", GroundPaper,
			[]string{"        ", " ...... ", " .####. ", " .#oo#. ", " .####. ", " ...... ", "........"}, GroundPaper,
			[]string{"bbbbbbbb", "bbbbbbbb", "bbddddbb", "bbddddbb", "bbddddbb", "bbbbbbbb", "bbbbbbbb"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			const n = 6
			d := draw(t, n, c.rows...)
			g, err := FindGround(d, c.choice)
			require.NoError(t, err)
			assert.Equal(t, c.found, g.Found)
			assert.Equal(t, c.want, backOf(g, d.W, n))
			assert.NotEmpty(t, g.Note)
		})
	}
}

func TestGroundNamesThePaper(t *testing.T) {
	g, err := FindGround(draw(t, 6, "kkkk", "kyyk", "kyyk", "kkkk"), GroundAuto)
	require.NoError(t, err)
	assert.Equal(t, colour.RGB8{R: 0x10, G: 0x12, B: 0x18}, g.RGB)
	assert.Contains(t, g.Note, "dark background")
}

func TestNoneLaysClearOnWhite(t *testing.T) {
	d := draw(t, 4, "    ", " hh ", " rr ", "    ")
	g, err := FindGround(d, GroundNone)
	require.NoError(t, err)
	assert.Equal(t, uint32(0xffffffff), g.Levelled.Pix[0])
	assert.Equal(t, inks['r'], g.Levelled.Pix[8*16+8])
	assert.Equal(t, uint32(0), d.Pix[0], "the drawing itself is left alone")
}

func TestRefusesNothingToSee(t *testing.T) {
	for name, c := range map[string]struct {
		rows []string
		says string
	}{
		"clear all over":            {[]string{"    ", "    "}, "transparent all over"},
		"one colour":                {[]string{"rrrr", "rrrr"}, "one colour all over"},
		"one colour, half clear":    {[]string{"hhhh", "hhhh"}, "one colour all over"},
		"blank sheet, two specks":   {},
		"a clear file with a speck": {},
	} {
		t.Run(name, func(t *testing.T) {
			var d *Drawing
			says := c.says
			switch {
			case c.rows != nil:
				d = draw(t, 8, c.rows...)
			case strings.HasPrefix(name, "blank"):
				d = draw(t, 40, "..", "..")
				d.Pix[1000], d.Pix[3000], says = inks['#'], inks['#'], "blank sheet"
			default:
				d = draw(t, 40, "  ", "  ")
				d.Pix[1000], says = inks['#'], "Almost nothing"
			}
			_, err := FindGround(d, GroundAuto)
			var r *Refusal
			require.ErrorAs(t, err, &r)
			assert.Contains(t, r.What, says)
			assert.NotEmpty(t, r.Do)
		})
	}
}

func TestOneColourWithAShapeIsADrawing(t *testing.T) {
	_, err := FindGround(draw(t, 8, "    ", " ## ", " ## ", "    "), GroundAuto)
	assert.NoError(t, err)
}

// slowFlood is the obvious twin of flood: one pixel at a time from the border.
func slowFlood(pix []uint32, w, h int, near box) []uint8 {
	back := make([]uint8, w*h)
	var stack []int
	try := func(i int) {
		if back[i] == 0 && (pix[i]>>24 <= clearAlpha || near.holds(pix[i])) {
			back[i] = 255
			stack = append(stack, i)
		}
	}
	for _, i := range borderOf(w, h) {
		try(i)
	}
	for len(stack) > 0 {
		i := stack[len(stack)-1]
		stack = stack[:len(stack)-1]
		if i%w > 0 {
			try(i - 1)
		}
		if i%w < w-1 {
			try(i + 1)
		}
		if i >= w {
			try(i - w)
		}
		if i+w < w*h {
			try(i + w)
		}
	}
	return back
}

func TestFloodAgreesWithItsSlowTwin(t *testing.T) {
	seed := time.Now().UnixNano()
	t.Logf("seed %d", seed)
	rng := rand.New(rand.NewSource(seed))
	near := tolerance(white, 5)
	for range 300 {
		w, h := 1+rng.Intn(24), 1+rng.Intn(24)
		density := rng.Float64()
		pix := make([]uint32, w*h)
		for i := range pix {
			pix[i] = inks['.']
			if rng.Float64() < density {
				pix[i] = inks['#']
			}
		}
		got := make([]uint8, w*h)
		flood(got, pix, w, h, near)
		require.Equal(t, slowFlood(pix, w, h, near), got, "%d x %d", w, h)
	}
}

func TestBorderHoldsEachPixelOnce(t *testing.T) {
	for _, s := range [][2]int{{1, 1}, {1, 5}, {5, 1}, {2, 2}, {3, 4}, {7, 5}} {
		w, h := s[0], s[1]
		seen := map[int]int{}
		for _, i := range borderOf(w, h) {
			seen[i]++
		}
		for i := range w * h {
			edge := i%w == 0 || i%w == w-1 || i/w == 0 || i/w == h-1
			assert.Equal(t, edge, seen[i] == 1, "pixel %d of %v", i, s)
		}
	}
}

// ringPic draws a dark ring, red inside, white at its heart, on paper.
func ringPic(side int, paper uint32) (d *Drawing, inside func(i int) float64) {
	pix := make([]uint32, side*side)
	c := float64(side) / 2
	radius := func(i int) float64 { return math.Hypot(float64(i%side)+0.5-c, float64(i/side)+0.5-c) / c }
	for i := range pix {
		switch r := radius(i); {
		case r < 0.2:
			pix[i] = inks['.']
		case r < 0.55:
			pix[i] = inks['r']
		case r < 0.62:
			pix[i] = inks['#']
		default:
			pix[i] = paper
		}
	}
	d, _ = NewDrawing(side, side, pix)
	return d, radius
}

// wrong counts pixels more than edge (share of the half side) away from the
// ring's outline that are on the wrong side.
func wrong(g *Ground, radius func(int) float64, edge float64) int {
	n := 0
	for i, b := range g.Back {
		r := radius(i)
		if math.Abs(r-0.62) > edge && (r > 0.62) != (b == 255) {
			n++
		}
	}
	return n
}

// throughJPEG stains a drawing with the standard library's encoder.
func throughJPEG(t *testing.T, d *Drawing, quality int) *Drawing {
	t.Helper()
	img := image.NewNRGBA(image.Rect(0, 0, d.W, d.H))
	for i, p := range d.Pix {
		img.Pix[4*i], img.Pix[4*i+1], img.Pix[4*i+2], img.Pix[4*i+3] = uint8(p), uint8(p>>8), uint8(p>>16), uint8(p>>24)
	}
	var buf bytes.Buffer
	require.NoError(t, jpeg.Encode(&buf, img, &jpeg.Options{Quality: quality}))
	back, err := jpeg.Decode(&buf)
	require.NoError(t, err)
	pix := make([]uint32, d.W*d.H)
	for i := range pix {
		r, g, b, _ := back.At(i%d.W, i/d.W).RGBA()
		pix[i] = r>>8 | g>>8<<8 | b>>8<<16 | 0xff000000
	}
	out, err := NewDrawing(d.W, d.H, pix)
	require.NoError(t, err)
	return out
}

func TestGroundOfStainedPictures(t *testing.T) {
	for _, quality := range []int{95, 80, 50, 30} {
		for name, paper := range map[string]uint32{"white": inks['.'], "cream": 0xffd8ecf4, "dark": inks['k']} {
			t.Run(fmt.Sprintf("%s at %d", name, quality), func(t *testing.T) {
				d, radius := ringPic(320, paper)
				g, err := FindGround(throughJPEG(t, d, quality), GroundAuto)
				require.NoError(t, err)
				require.Equal(t, GroundPaper, g.Found)
				far := wrong(g, radius, 2.0/160)
				if quality >= 80 {
					assert.Zero(t, far, "pixels beyond two of the edge")
				}
				assert.LessOrEqual(t, far, d.W*d.H/300, "a coarse file may blur its edge, no more")
			})
		}
	}
}

func BenchmarkFindGround(b *testing.B) {
	clean, _ := ringPic(1581, inks['.']) // 2.5 megapixels
	for _, c := range []struct {
		name string
		d    *Drawing
	}{{"clean", clean}, {"photo", byLamp(clean, 0.4, 4, 1)}} {
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				if _, err := FindGround(c.d, GroundAuto); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
