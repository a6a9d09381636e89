package reduce

import (
	"bytes"
	"errors"
	"image"
	"image/color"
	stddraw "image/draw"
	"image/jpeg"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce/colour"
	"badgewright/reduce/mask"
)

// shape is what a test picture is made of: a colour, and where it is.
type shape struct {
	rgb colour.RGB8
	in  func(x, y float64) bool
}

// rasterise paints shapes over one another, edges smoothed by 8 x 8 samples
// mixed in encoded sRGB, as rasterisers do.
func rasterise(w, h int, ground colour.RGB8, shapes ...shape) *image.RGBA {
	m := image.NewRGBA(image.Rect(0, 0, w, h))
	at := func(x, y float64) colour.RGB8 {
		for k := len(shapes) - 1; k >= 0; k-- {
			if shapes[k].in(x, y) {
				return shapes[k].rgb
			}
		}
		return ground
	}
	for y := range h {
		for x := range w {
			m.SetRGBA(x, y, smooth(at, float64(x), float64(y)))
		}
	}
	return m
}

// smooth averages one pixel: by 8 x 8 samples where its rim and middle do not
// agree.
func smooth(at func(x, y float64) colour.RGB8, x, y float64) color.RGBA {
	c, same := at(x+0.5, y+0.5), true
	for _, dy := range [3]float64{1. / 16, 0.5, 15. / 16} {
		for _, dx := range [3]float64{1. / 16, 0.5, 15. / 16} {
			same = same && at(x+dx, y+dy) == c
		}
	}
	if same {
		return color.RGBA{c.R, c.G, c.B, 255}
	}
	var r, g, b int
	for s := range 64 {
		c := at(x+(float64(s%8)+0.5)/8, y+(float64(s/8)+0.5)/8)
		r, g, b = r+int(c.R), g+int(c.G), b+int(c.B)
	}
	return color.RGBA{uint8((r + 32) / 64), uint8((g + 32) / 64), uint8((b + 32) / 64), 255}
}

func disc(cx, cy, r float64) func(x, y float64) bool {
	return func(x, y float64) bool { return (x-cx)*(x-cx)+(y-cy)*(y-cy) < r*r }
}

func ring(cx, cy, r, width float64) func(x, y float64) bool {
	in, out := disc(cx, cy, r-width/2), disc(cx, cy, r+width/2)
	return func(x, y float64) bool { return out(x, y) && !in(x, y) }
}

func drawingOf(t testing.TB, m *image.RGBA) *Drawing {
	t.Helper()
	pix := make([]uint32, len(m.Pix)/4)
	for i := range pix {
		pix[i] = uint32(m.Pix[4*i]) | uint32(m.Pix[4*i+1])<<8 | uint32(m.Pix[4*i+2])<<16 | uint32(m.Pix[4*i+3])<<24
	}
	d, err := NewDrawing(m.Rect.Dx(), m.Rect.Dy(), pix)
	require.NoError(t, err)
	return d
}

func analysed(t testing.TB, d *Drawing) *Analysis {
	t.Helper()
	g, err := FindGround(d, GroundAuto)
	require.NoError(t, err)
	a, err := Analyse(d, g, nil)
	require.NoError(t, err)
	return a
}

func rgb(t testing.TB, hex string) colour.RGB8 {
	t.Helper()
	c, err := colour.ParseHex(hex)
	require.NoError(t, err)
	return c
}

// buoy is an outlined drawing of four colours with an accent.
func buoy(t testing.TB, side int) *Drawing {
	s := float64(side) / 200
	return drawingOf(t, rasterise(side, side, rgb(t, "#ffffff"),
		shape{rgb(t, "#8fc7e8"), disc(100*s, 100*s, 80*s)},
		shape{rgb(t, "#d23b2f"), disc(100*s, 95*s, 45*s)},
		shape{rgb(t, "#f4efe2"), func(x, y float64) bool { return disc(100*s, 95*s, 45*s)(x, y) && y > 85*s && y < 105*s }},
		shape{rgb(t, "#1b1b1f"), ring(100*s, 95*s, 45*s, 5*s)},
		shape{rgb(t, "#1b1b1f"), ring(100*s, 100*s, 80*s, 5*s)},
		shape{rgb(t, "#1b1b1f"), func(x, y float64) bool { return x > 98*s && x < 102*s && y > 20*s && y < 50*s }},
		shape{rgb(t, "#ffd35a"), disc(100*s, 95*s, 5*s)},
	))
}

// stain takes a picture through JPEG and back.
func stain(t testing.TB, d *Drawing, quality int) *Drawing {
	t.Helper()
	m := image.NewRGBA(image.Rect(0, 0, d.W, d.H))
	for i, p := range d.Pix {
		m.Pix[4*i], m.Pix[4*i+1], m.Pix[4*i+2], m.Pix[4*i+3] = uint8(p), uint8(p>>8), uint8(p>>16), 255
	}
	var buf bytes.Buffer
	require.NoError(t, jpeg.Encode(&buf, m, &jpeg.Options{Quality: quality}))
	back, err := jpeg.Decode(&buf)
	require.NoError(t, err)
	stddraw.Draw(m, m.Rect, back, back.Bounds().Min, stddraw.Src)
	return drawingOf(t, m)
}

// wantFlats requires exactly these colours, each within a CIEDE2000 of it.
func wantFlats(t *testing.T, flats []Flat, within float64, hexes ...string) {
	t.Helper()
	var got []string
	for _, f := range flats {
		got = append(got, f.RGB.Hex())
	}
	require.Len(t, flats, len(hexes), "%v", got)
	for _, h := range hexes {
		best := 1e9
		for _, f := range flats {
			best = min(best, colour.CIEDE2000(rgb(t, h).Lab(), f.RGB.Lab()))
		}
		assert.LessOrEqual(t, best, within, "%s among %v", h, got)
	}
}

// suggested reduces to the suggested count.
func suggested(t *testing.T, a *Analysis) *Separation {
	t.Helper()
	n, why := a.Suggested()
	require.NotEmpty(t, why)
	s, err := a.Reduce(Options{Count: n})
	require.NoError(t, err)
	return s
}

func TestOutlinedDrawing(t *testing.T) {
	a := analysed(t, buoy(t, 400))
	n, why := a.Suggested()
	assert.Equal(t, 4, n)
	assert.Contains(t, why, "4 colours")
	require.True(t, a.Lined())
	s := suggested(t, a)
	want := map[string]Role{"#8fc7e8": Enamel, "#d23b2f": Enamel, "#f4efe2": Enamel, "#ffd35a": Enamel, "#1b1b1f": Metal}
	require.Len(t, s.Flats, len(want))
	for _, f := range s.Flats {
		assert.Equal(t, want[f.RGB.Hex()], f.Role, f.RGB.Hex())
	}
}

func TestJPEGDrawing(t *testing.T) {
	for quality, within := range map[int]float64{80: 2, 60: 3} {
		a := analysed(t, stain(t, buoy(t, 400), quality))
		require.True(t, a.Lined())
		wantFlats(t, suggested(t, a).Flats, within, "#8fc7e8", "#d23b2f", "#f4efe2", "#ffd35a", "#1b1b1f")
	}
}

// harbour is lineless: sky, sun, hull, and two close blues of sea.
func harbour(t testing.TB, side int) *Drawing {
	s := float64(side) / 200
	return drawingOf(t, rasterise(side, side, rgb(t, "#fbe3c0"),
		shape{rgb(t, "#f7a65a"), disc(140*s, 60*s, 25*s)},
		shape{rgb(t, "#2f5d7c"), func(x, y float64) bool { return y > 110*s+6*s*x/(200*s) }},
		shape{rgb(t, "#2a5373"), func(x, y float64) bool { return y > 160*s-5*s*x/(200*s) }},
		shape{rgb(t, "#c8402f"), func(x, y float64) bool { return y > 100*s && y < 130*s && x-y*0.5 > 20*s && x+y*0.5 < 150*s }},
	))
}

func TestLinelessDrawing(t *testing.T) {
	want := []string{"#fbe3c0", "#f7a65a", "#2f5d7c", "#2a5373", "#c8402f"}
	a := analysed(t, harbour(t, 400))
	assert.False(t, a.Lined(), "nothing to turn to metal")
	wantFlats(t, suggested(t, a).Flats, 0, want...)
	wantFlats(t, suggested(t, analysed(t, stain(t, harbour(t, 400), 80))).Flats, 2, want...)
}

func TestDarkBackground(t *testing.T) {
	d := drawingOf(t, rasterise(200, 200, rgb(t, "#12141c"),
		shape{rgb(t, "#e9c46a"), disc(100, 100, 60)}, shape{rgb(t, "#12141c"), disc(120, 85, 50)},
		shape{rgb(t, "#2a9d8f"), func(x, y float64) bool { return y > 165 && y < 185 && x > 40+y/10 && x < 150 }}))
	a := analysed(t, d)
	s := suggested(t, a)
	wantFlats(t, s.Flats, 0, "#e9c46a", "#2a9d8f")
	assert.Equal(t, None, s.Labels[0])
}

// A drawing on a clear ground: white art keeps its rim, which alpha alone shows.
func TestWhiteOnClearGround(t *testing.T) {
	d := drawingOf(t, rasterise(200, 200, rgb(t, "#ffffff"), shape{rgb(t, "#e8485a"), disc(100, 100, 40)}))
	for i := range d.Pix {
		x, y := float64(i%200)+0.5, float64(i/200)+0.5
		inside := 0
		for s := range 64 {
			if disc(100, 100, 80)(x-0.5+(float64(s%8)+0.5)/8, y-0.5+(float64(s/8)+0.5)/8) {
				inside++
			}
		}
		d.Pix[i] = d.Pix[i]&0xffffff | uint32(inside*255/64)<<24
	}
	s := suggested(t, analysed(t, d))
	wantFlats(t, s.Flats, 0, "#ffffff", "#e8485a")
	area := 0.0
	solid := s.Solid()
	for i := range s.Labels {
		area += s.CoverOf(i, solid)
	}
	assert.InDelta(t, math.Pi*80*80, area, 12, "the disc's area to a part of its rim's 500 pixels")
}

// Lines on white paper: what they enclose is enamel, what lies outside is not.
func TestUncolouredLineDrawing(t *testing.T) {
	d := drawingOf(t, rasterise(200, 200, rgb(t, "#ffffff"),
		shape{rgb(t, "#222222"), ring(100, 100, 70, 5)}, shape{rgb(t, "#222222"), ring(100, 100, 30, 5)},
		shape{rgb(t, "#222222"), func(x, y float64) bool { return math.Abs(y-100) < 2.5 && math.Abs(x-100) < 70 }}))
	a := analysed(t, d)
	require.True(t, a.Lined())
	s := suggested(t, a)
	wantFlats(t, s.Flats, 0, "#ffffff", "#222222")
	assert.Equal(t, None, s.Labels[0])
	assert.Equal(t, Enamel, s.Flats[s.Labels[50*200+100]].Role, "white between the rings")
	n, _ := a.Suggested()
	assert.Equal(t, 1, n)
}

func TestOneColour(t *testing.T) {
	a := analysed(t, drawingOf(t, rasterise(120, 120, rgb(t, "#ffffff"), shape{rgb(t, "#2a5373"), disc(60, 60, 40)})))
	for count := 1; count <= MaxCount; count++ {
		s, err := a.Reduce(Options{Count: count})
		require.NoError(t, err)
		wantFlats(t, s.Flats, 0, "#2a5373")
	}
	_, err := a.Reduce(Options{Count: 0})
	assert.Error(t, err)
	_, err = a.Reduce(Options{Count: MaxCount + 1})
	assert.Error(t, err)
}

// A line a pixel wide never reaches its colour, yet is given it, also where
// that colour is nowhere else.
func TestThinLineKeepsItsColour(t *testing.T) {
	for _, width := range []float64{1, 1.4, 2} {
		d := drawingOf(t, rasterise(300, 300, rgb(t, "#ffffff"),
			shape{rgb(t, "#8fc7e8"), disc(150, 150, 120)},
			shape{rgb(t, "#b0203a"), ring(150, 150, 80.3, width)}))
		wantFlats(t, suggested(t, analysed(t, d)).Flats, 6, "#8fc7e8", "#b0203a")
	}
}

func TestAccentSurvives(t *testing.T) {
	// an eye of 20 pixels in a drawing of 40,000, three dull blues round it
	d := drawingOf(t, rasterise(260, 260, rgb(t, "#ffffff"),
		shape{rgb(t, "#5a7a8c"), disc(130, 130, 115)},
		shape{rgb(t, "#56748a"), func(x, y float64) bool { return disc(130, 130, 115)(x, y) && y > 130 }},
		shape{rgb(t, "#4f6b80"), func(x, y float64) bool { return disc(130, 130, 115)(x, y) && y > 200 }},
		shape{rgb(t, "#f28c1e"), disc(110, 80, 2.6)}))
	a := analysed(t, d)
	s, err := a.Reduce(Options{Count: 2})
	require.NoError(t, err)
	wantFlats(t, s.Flats, 0, "#5a7a8c", "#f28c1e")
}

func TestEdgesAreNeverFlats(t *testing.T) {
	d := buoy(t, 300)
	for _, d := range []*Drawing{d, stain(t, d, 80), stain(t, d, 50)} {
		a := analysed(t, d)
		s, err := a.Reduce(Options{Count: MaxFlats, RolesOff: true})
		require.NoError(t, err)
		wantFlats(t, s.Flats, 4, "#8fc7e8", "#d23b2f", "#f4efe2", "#ffd35a", "#1b1b1f")
	}
}

// Grain of a camera, with blur: every colour found, no speckle.
func TestGrainyDrawing(t *testing.T) {
	d := buoy(t, 500)
	seed := uint64(7)
	t.Logf("seed %d", seed)
	r := rand.New(rand.NewPCG(seed, 1))
	for i, p := range d.Pix {
		q := p & 0xff000000
		for c := range 3 {
			v := float64(p>>(8*c)&255) + 5*r.NormFloat64()
			q |= uint32(min(max(v, 0), 255)) << (8 * c)
		}
		d.Pix[i] = q
	}
	a := analysed(t, d)
	s := suggested(t, a)
	wantFlats(t, s.Flats, 3, "#8fc7e8", "#d23b2f", "#f4efe2", "#ffd35a", "#1b1b1f")
	parts := mask.Connect(s.Labels, s.W, s.H, new([256]bool))
	assert.LessOrEqual(t, len(parts.Label), 24, "areas; the drawing has 10")
}

// A soft gradient is one colour at the suggested count, and merges before
// anything else.
func TestGradient(t *testing.T) {
	m := rasterise(240, 240, rgb(t, "#ffffff"), shape{rgb(t, "#101018"), disc(120, 120, 105)}, shape{rgb(t, "#000000"), disc(120, 120, 98)},
		shape{rgb(t, "#d23b2f"), disc(120, 150, 30)})
	for y := range 240 {
		for x := range 240 {
			if c := m.RGBAAt(x, y); c.R == 0 && c.G == 0 && c.B == 0 {
				m.SetRGBA(x, y, color.RGBA{uint8(90 + y/8), uint8(150 + y/8), uint8(200 + y/8), 255})
			}
		}
	}
	a := analysed(t, drawingOf(t, m))
	n, why := a.Suggested()
	assert.Equal(t, 2, n, why)
	assert.Contains(t, why, "Soft shading")
	s, err := a.Reduce(Options{Count: 4})
	require.NoError(t, err)
	assert.Greater(t, len(s.Flats), 3, "steps of the gradient are kept when asked for")
}

func TestPainting(t *testing.T) {
	m := image.NewRGBA(image.Rect(0, 0, 240, 240))
	for y := range 240 {
		for x := range 240 {
			fx, fy := float64(x)/239, float64(y)/239
			wave := 0.5 + 0.5*math.Sin(12*fx+9*fy*fy)
			m.SetRGBA(x, y, color.RGBA{uint8(40 + 200*fx*wave), uint8(60 + 150*fy), uint8(230 - 200*fx*fy - 20*wave), 255})
		}
	}
	a := analysed(t, drawingOf(t, m))
	losses, err := a.Losses(nil)
	require.NoError(t, err)
	for k := 1; k < len(losses); k++ {
		assert.Less(t, losses[k].Mean, losses[k-1].Mean+0.5, "count %d", k+1)
	}
	assert.Less(t, losses[11].Mean, 0.6*losses[2].Mean)
	n, why := a.Suggested()
	assert.GreaterOrEqual(t, n, 3)
	assert.NotEmpty(t, why)
}

func TestStopsWhenTold(t *testing.T) {
	d := buoy(t, 120)
	g, err := FindGround(d, GroundAuto)
	require.NoError(t, err)
	stop := errors.New("stop")
	last := -1.0
	_, err = Analyse(d, g, func(share float64, doing string) error {
		assert.Greater(t, share, last)
		assert.NotEmpty(t, doing)
		if last = share; share > 0.4 {
			return stop
		}
		return nil
	})
	assert.ErrorIs(t, err, stop)
}
