package proof

import (
	"image"
	"image/color"
	"image/draw"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce/colour"
	"badgewright/sizing"
	"badgewright/sizing/trace"
)

// photoOf is a pin as a camera sees it: at a slant, in warm light that falls off,
// with grain, a white card beside it.
func photoOf(t testing.TB, b *sizing.Badge, rnd *rand.Rand) (*Picture, Warp, Point) {
	t.Helper()
	s, err := trace.Trace(b, 0, nil)
	require.NoError(t, err)
	o := b.Outline
	const side = 720
	k := 0.66 * side / math.Hypot(o[2]-o[0], o[3]-o[1])
	flat := similar(Point{(o[0] + o[2]) / 2, (o[1] + o[3]) / 2}, Point{}, k, 0.3, false)
	slant := Warp{1, 0.03, 345, -0.02, 0.93, 370, 0.00016, 0.00013, 1}
	warp := slant.after(&flat)
	img := image.NewRGBA(image.Rect(0, 0, side, side))
	draw.Draw(img, img.Rect, image.NewUniform(color.RGBA{120, 122, 126, 255}), image.Point{}, draw.Src)
	box(img, 20, 20, 120, 100, color.RGBA{243, 243, 243, 255})
	drawPin(img, s, b, &warp, look{metal: gold})
	for i := range side * side {
		x, y := float64(i%side)/side, float64(i/side)/side
		light := [3]float64{0.95, 0.8, 0.62}
		for c := range light {
			v := colour.Decode(float64(img.Pix[4*i+c])/255) * light[c] * (0.94 + 0.08*x - 0.06*y)
			img.Pix[4*i+c] = uint8(min(255, max(0, 255*colour.Encode(v)+2*rnd.NormFloat64()+0.5)))
		}
	}
	return encoded(t, img, 88), warp, Point{60, 60}
}

// inPhoto lists what differs in a photograph of a pin, laid by four places that
// were set by hand, each a few px off.
func inPhoto(t *testing.T, a *Asked, drawn *sizing.Badge, rnd *rand.Rand, white bool) (*HeldAgainst, float64) {
	t.Helper()
	p, warp, card := photoOf(t, drawn, rnd)
	o := a.Badge.Outline
	pin := []Point{{o[0], o[1]}, {o[2], o[1]}, {o[2], o[3]}, {o[0], o[3]}}
	var on []Point
	for _, q := range pin {
		u, v := warp.At(q.X, q.Y)
		on = append(on, Point{u + 4*rnd.NormFloat64(), v + 4*rnd.NormFloat64()})
	}
	l, err := Lay(a, p, pin, on, true, true)
	require.NoError(t, err)
	shot := &Snapshot{Metal: colour.RGB8{R: gold.R, G: gold.G, B: gold.B}}
	if white {
		shot.White = &card
	}
	r, err := Diff(l, Wanted{Photo: shot}, Photographed(), nil)
	require.NoError(t, err)
	off := 0.0
	for _, q := range a.loops[a.large].at {
		u, v := l.h.w.At(q.X, q.Y)
		x, y := warp.At(q.X, q.Y)
		off = max(off, math.Hypot(u-x, v-y))
	}
	return r, off / l.h.perMM()
}

func TestAPhotographIsLaidAtASlantAndFaultsAreFound(t *testing.T) {
	if testing.Short() {
		t.Skip("pictures take too long to draw there")
	}
	const seed = 5
	t.Logf("seed %d", seed)
	rnd := rand.New(rand.NewPCG(seed, 0))
	d := designs[9]
	b := d.badge(t)
	a, err := Ask(b, nil)
	require.NoError(t, err)
	for _, white := range []bool{true, false} {
		r, off := inPhoto(t, a, b, rnd, white)
		t.Logf("off %.3f mm; metal %s; %s", off, r.Metal.Hex(), r.Fit.Words)
		t.Logf("%+v", r.Colours)
		assert.Less(t, off, 0.1)
		assert.Empty(t, r.Differences, "a sound pin")
		assert.Contains(t, r.Notes[0], "compared only within the picture")
	}

	bare := copied(b)
	var cell int32 = -1
	for c, l := range a.cells.Label {
		if l == 2 && (cell < 0 || a.cells.Area[c] > a.cells.Area[cell]) {
			cell = int32(c)
		}
	}
	for i, c := range a.cell {
		if c == cell {
			set(bare.Sep, i, metalLabel(bare.Sep))
		}
	}
	r, _ := inPhoto(t, a, bare, rnd, true)
	require.Len(t, r.Differences, 1, "%+v", r.Differences)
	assert.Equal(t, AreaUnfilled, r.Differences[0].Kind)

	swap := copied(b)
	swap.Sep.Flats[0].RGB, swap.Sep.Flats[1].RGB = b.Sep.Flats[1].RGB, b.Sep.Flats[0].RGB
	r, _ = inPhoto(t, a, swap, rnd, false)
	require.Len(t, r.Differences, 1, "%+v", r.Differences)
	assert.Equal(t, ColoursSwapped, r.Differences[0].Kind)

	broken := copied(b)
	at, ok := removeLine(a, broken.Sep, look{metal: gold}, rnd)
	require.True(t, ok)
	r, _ = inPhoto(t, a, broken, rnd, true)
	e := edit{kinds: []DeviationKind{LineMissing}}
	require.NotEmpty(t, r.Differences)
	for i := range r.Differences {
		assert.True(t, e.tells(a, &r.Differences[i], at), "%+v", r.Differences[i])
	}
}
