package eye

import (
	"fmt"
	"hash/fnv"
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce/colour"
	"badgewright/sizing/unit"
)

var canvas = colour.RGB8{R: 214, G: 203, B: 180}

// tiles is a light of random squares of a side on canvas, with a margin of it.
func tiles(seed uint64, n, side, margin int) *Light {
	r := rand.New(rand.NewPCG(seed, 7))
	l := NewLight(n, n, 1, canvas)
	colours := make([]colour.Linear, 400)
	for i := range colours {
		colours[i] = colour.Linear{R: r.Float64(), G: r.Float64(), B: r.Float64()}
	}
	for i := range l.R {
		x, y := i%n, i/n
		c := canvas.Linear()
		if x >= margin && y >= margin && x < n-margin && y < n-margin {
			c = colours[(y/side*19+x/side)%len(colours)]
		}
		l.R[i], l.G[i], l.B[i] = float32(c.R), float32(c.G), float32(c.B)
	}
	return l
}

// slowFilter is S-CIELAB by the sums themselves, in double precision where the
// colours are concerned.
func slowFilter(l *Light, perDegree float64) []colour.Lab {
	f := fieldOf(l)
	sum := make([]opponent, len(l.R))
	for p, bells := range filters {
		for _, b := range bells {
			s := b.sigma() * perDegree
			for i, v := range slowly(f.plane[p], s*s).v {
				sum[i][p] += b.weight * float64(v)
			}
		}
	}
	lab := make([]colour.Lab, len(sum))
	for i := range sum {
		for p := range sum[i] {
			sum[i][p] += f.ground[p]
		}
		lab[i] = sum[i].xyz().Lab()
	}
	return lab
}

func TestFilterAgainstTheSums(t *testing.T) {
	if testing.Short() {
		t.Skip("the sums over every pixel take long")
	}
	pitch, v := unit.MM(0.05), Viewing{200, 1}
	perDegree := v.SamplesPerDegree(pitch)
	a, b := tiles(1, 110, 6, 12), tiles(2, 110, 9, 12)
	got := Filter(a, pitch, v).Apart(Filter(b, pitch, v))
	fa, fb := slowFilter(a, perDegree), slowFilter(b, perDegree)
	worst := 0.0
	for i, d := range got {
		worst = max(worst, math.Abs(float64(d)-distance(fa[i], fb[i])))
	}
	assert.Less(t, worst, 0.35, "of differences up to about 60")
	t.Logf("worst %.3f at %.0f samples per degree", worst, perDegree)
}

// What blocks lose is put right by blurring so much less.
func TestBlocksAreAsGoodAsPixels(t *testing.T) {
	fine := tiles(3, 240, 16, 24)
	pic := Picture{240, 240, make([]uint32, 240*240)}
	for i := range pic.Pix {
		c := colour.Linear{R: float64(fine.R[i]), G: float64(fine.G[i]), B: float64(fine.B[i])}.RGB8()
		pic.Pix[i] = uint32(c.R) | uint32(c.G)<<8 | uint32(c.B)<<16 | 255<<24
	}
	pitch, v := unit.MM(0.02), Viewing{270, 1}
	require.Equal(t, 3, BlockFor(pitch, v))
	got, err := Seen(pic, pitch, v, canvas, pic.Itself(), nil)
	require.NoError(t, err)
	want := fieldOf(lightOf(pic, 1, canvas)).filtered(v.SamplesPerDegree(pitch), 0).picture(1, pic.Itself())
	worst, mean := 0.0, 0.0
	for i, p := range got.Pix {
		for s := 0; s < 24; s += 8 {
			d := math.Abs(float64(p>>s&255) - float64(want.Pix[i]>>s&255))
			worst, mean = max(worst, d), mean+d/float64(3*len(got.Pix))
		}
	}
	assert.Less(t, worst, 9.0, "levels")
	assert.Less(t, mean, 0.7, "levels")
}

func TestIdenticalPicturesDifferByNothing(t *testing.T) {
	for seed := range uint64(4) {
		a := Filter(tiles(seed, 80, 5, 4), 0.03, Viewing{400, 1})
		b := Filter(tiles(seed, 80, 5, 4), 0.03, Viewing{400, 1})
		for _, d := range a.Apart(b) {
			require.Zero(t, d)
		}
	}
}

// Source: testdata/reference/scielab_1998_reference_cases.csv, the single lines:
// the closed form of a long line on a plain ground gives the true Gaussians'
// difference in its middle. Theirs is at a pixel and pictures end.
func TestLineAgainstTheCases(t *testing.T) {
	rgb := func(s string) (c colour.RGB8) {
		f := strings.Fields(s)
		for k, p := range []*uint8{&c.R, &c.G, &c.B} {
			v, err := strconv.Atoi(f[k])
			require.NoError(t, err)
			*p = uint8(v)
		}
		return c
	}
	checked := 0
	for _, r := range table(t, "scielab_1998_reference_cases.csv") {
		if !strings.HasPrefix(r["pattern"], "single") {
			continue
		}
		checked++
		a, b := rgb(r["colour_a_sRGB8"]), rgb(r["colour_b_sRGB8"])
		got := NewLine(a, b, b).Difference(num(t, r, "detail_arcmin"))
		assert.InEpsilon(t, num(t, r, "independent_numpy_true_gaussian_max"), got, 0.07, "case %s", r["case"])
	}
	assert.Equal(t, 21, checked)
}

func TestNoticedFromIsWhereItIsNoticed(t *testing.T) {
	white, grey := colour.RGB8{R: 255, G: 255, B: 255}, colour.RGB8{R: 200, G: 200, B: 200}
	l := NewLine(grey, white, white)
	from := l.NoticedFrom(5)
	require.Positive(t, from)
	assert.InDelta(t, 5, l.Difference(from), 0.01)
	assert.Less(t, from, 5.0, "far below a letter's height")
	assert.Zero(t, NewLine(white, white, white).NoticedFrom(5))
	assert.Zero(t, l.NoticedFrom(90), "greys are never so far apart")
	assert.Zero(t, l.Difference(0))
	assert.Zero(t, l.Difference(-1))
	assert.InDelta(t, l.Difference(leftTop), l.Difference(1e9), 1e-9)
}

// For detail finer than 4 cycles per degree, lines under half of 7.5 minutes of arc,
// farther never shows more and a better eye never sees less; for coarser
// detail the luminance filter rises to 1.12 and that does not hold.
func TestFartherNeverShowsMoreOfFineLines(t *testing.T) {
	r := rand.New(rand.NewPCG(20, 4))
	pick := func() colour.RGB8 {
		return colour.RGB8{R: uint8(r.IntN(256)), G: uint8(r.IntN(256)), B: uint8(r.IntN(256))}
	}
	for range 3000 {
		l := NewLine(pick(), pick(), pick())
		a, b := r.Float64()*7.5/2, r.Float64()*7.5/2
		lo, hi := l.Difference(min(a, b)), l.Difference(max(a, b))
		require.LessOrEqual(t, lo, 1.03*hi+0.02, "%v: %v and %v arcmin", l, a, b)
	}
	// What is left of each plane never falls; CIELAB, put together of them, may by
	// a hair where a colour turns on its way.
	before := opponent{}
	for w := 0.0; w < 7.5/2; w += 0.01 {
		now := leftOf(w)
		for p := range now {
			require.GreaterOrEqual(t, now[p], before[p]-1e-9, "plane %d at %v arcmin", p, w)
		}
		before = now
	}
}

// Stripes as fine: their contrast in each plane falls with distance and rises
// with acuity.
func TestFartherNeverShowsMoreOfFineStripes(t *testing.T) {
	const n, period = 192, 8
	l := NewLight(n, n, 1, canvas)
	even := NewLight(n, n, 1, canvas)
	a, b := colour.RGB8{R: 220, G: 90, B: 90}.Linear(), colour.RGB8{R: 100, G: 160, B: 110}.Linear()
	for i := range l.R {
		c := a
		if i%n%period >= period/2 {
			c = b
		}
		l.R[i], l.G[i], l.B[i] = float32(c.R), float32(c.G), float32(c.B)
		even.R[i], even.G[i], even.B[i] = float32((a.R+b.R)/2), float32((a.G+b.G)/2), float32((a.B+b.B)/2)
	}
	worst := func(v Viewing) float64 {
		d := Filter(l, 0.1, v).Apart(Filter(even, 0.1, v))
		most := 0.0
		for x := n/2 - period; x < n/2+period; x++ {
			most = max(most, float64(d[n/2*n+x]))
		}
		return most
	}
	before := math.Inf(1)
	for _, mm := range []unit.MM{200, 300, 450, 700, 1000, 1500} {
		v := Viewing{mm, 1}
		require.Greater(t, v.SamplesPerDegree(0.1)/period, 4.0, "finer than 4 cycles per degree")
		now := worst(v)
		assert.LessOrEqual(t, now, before+0.01, "%v", mm)
		assert.GreaterOrEqual(t, worst(Viewing{mm, 1.3}), now-0.01, "%v, a better eye", mm)
		before = now
	}
	assert.Less(t, before, 1.0)
}

// A picture drawn out to more pixels than it has looks like one of so many.
func TestDrawnOntoFinerPixels(t *testing.T) {
	fine := checks(400)
	small := Picture{200, 200, make([]uint32, 200*200)}
	for i := range small.Pix {
		small.Pix[i] = fine.Pix[i/200*2*400+i%200*2]
	}
	v := Viewing{1000, 1}
	want, err := Seen(fine, 0.02, v, canvas, fine.Itself(), nil)
	require.NoError(t, err)
	got, err := Seen(small, 0.04, v, canvas, Onto{W: 400, H: 400, Scale: 2}, nil)
	require.NoError(t, err)
	worst := 0.0
	for i, p := range got.Pix {
		for s := 0; s < 24; s += 8 {
			worst = max(worst, math.Abs(float64(p>>s&255)-float64(want.Pix[i]>>s&255)))
		}
	}
	assert.Less(t, worst, 6.0, "levels")
}

// checks is a picture of large squares, each of an even number of pixels.
func checks(n int) Picture {
	p := Picture{n, n, make([]uint32, n*n)}
	for i := range p.Pix {
		p.Pix[i] = 0xff3048d0
		if (i%n/40+i/n/40)%2 == 0 {
			p.Pix[i] = 0xffd0e0f0
		}
	}
	return p
}

func TestClothAloneStaysCloth(t *testing.T) {
	pic := OnCloth(Picture{70, 50, make([]uint32, 3500)}, canvas)
	got, err := Seen(pic, 0.02, Viewing{1000, 1}, canvas, pic.Itself(), nil)
	require.NoError(t, err)
	assert.Equal(t, pic.Pix, got.Pix)
}

func TestStopping(t *testing.T) {
	pic := OnCloth(Picture{70, 50, make([]uint32, 3500)}, canvas)
	for stop := range 3 {
		calls, enough := 0, fmt.Errorf("enough")
		_, err := Seen(pic, 0.02, Viewing{1000, 1}, canvas, pic.Itself(), func(float64, string) error {
			if calls++; calls > stop {
				return enough
			}
			return nil
		})
		assert.ErrorIs(t, err, enough)
	}
}

// The same bits on every machine, in the browser too.
func TestSameBitsEverywhere(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 5))
	pic := Picture{160, 120, make([]uint32, 160*120)}
	for i := range pic.Pix {
		if i/160%17 == 0 {
			pic.Pix[i] = r.Uint32()
		} else if i > 160 {
			pic.Pix[i] = pic.Pix[i-160]
		}
	}
	h := fnv.New64a()
	seen, err := Seen(OnCloth(pic, canvas), 0.03, Viewing{600, 0.9}, canvas, pic.Itself(), nil)
	require.NoError(t, err)
	fmt.Fprint(h, seen.Pix)
	for _, d := range Filter(tiles(1, 90, 4, 3), 0.05, Viewing{300, 1}).Apart(Filter(tiles(2, 90, 5, 3), 0.05, Viewing{300, 1})) {
		fmt.Fprintf(h, "%08x", math.Float32bits(d))
	}
	l := NewLine(colour.RGB8{R: 90, G: 20, B: 200}, canvas, colour.RGB8{R: 1, G: 2, B: 3})
	fmt.Fprintf(h, "%x %x", math.Float64bits(l.Difference(2.3)), math.Float64bits(l.NoticedFrom(6)))
	assert.Equal(t, "f9316aa4820c24ec", fmt.Sprintf("%016x", h.Sum64()))
}

func BenchmarkSeen(b *testing.B) {
	const w, h = 1600, 1562 // 2.5 megapixels
	pic := Picture{w, h, make([]uint32, w*h)}
	for i := range pic.Pix {
		pic.Pix[i] = uint32(i*2654435761) | 255<<24
	}
	for _, mm := range []unit.MM{400, 1000, 2000} {
		b.Run(fmt.Sprintf("%.0fmm", float64(mm)), func(b *testing.B) {
			for b.Loop() {
				if _, err := Seen(pic, 38.0/w, Viewing{mm, 1}, canvas, pic.Itself(), nil); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
