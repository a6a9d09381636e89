package apart

import (
	"encoding/json"
	"fmt"
	"hash/fnv"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/eye"
	"badgewright/sizing/unit"
	"badgewright/sizing/wall"
)

// A line of 5 px of 180, at 36 mm one of 1 mm: a normal eye parts it while a
// minute of arc is no more, that is up to 3438 mm (1 / tan 1').
func TestALineIsPartedUpToItsDistance(t *testing.T) {
	m, flats := pin(t, "#c8402f", "#2f5d7c", 5)
	s := at(t, flats, 36, "dyed-white")
	near, far := eye.Viewing{Distance: 3200, Acuity: 1}, eye.Viewing{Distance: 4000, Acuity: 1}
	assert.Empty(t, Read(m, nil, s, near, usual()))
	found := Read(m, nil, s, far, usual())
	require.Len(t, found, 1)
	f := found[0]
	assert.Equal(t, Line, f.Detail)
	assert.Equal(t, sizing.Fails, f.Parted)
	assert.InDelta(t, 1, float64(f.Measured), 0.06)
	assert.InDelta(t, float64(far.Size(1)), float64(f.Need), 1e-9)
	assert.InDelta(t, 0.86, f.Arcmin, 0.05)
	assert.InDelta(t, 36*1.164/1.1, float64(f.PartedFrom.MM), 0.6, "half a pixel is allowed for the raster")
	assert.Equal(t, sizing.Holds, f.Noticed, "noticed far below what parts: %.1f", f.Difference)
	assert.Less(t, f.NoticedFrom.MM, f.PartedFrom.MM)
	assert.ElementsMatch(t, []reduce.FlatID{0, 1}, f.Beside[:])
	// At the size given it is parted, and a little below it is not.
	assert.Empty(t, Read(m, nil, at(t, flats, f.PartedFrom.MM, "dyed-white"), far, usual()))
	assert.NotEmpty(t, Read(m, nil, at(t, flats, f.PartedFrom.MM-0.2, "dyed-white"), far, usual()))
	all, letters := ReadFrom(m, nil, s, far, usual())
	assert.Equal(t, f.PartedFrom, all)
	assert.Zero(t, letters.MM, "there is no lettering")
	// Half the acuity is twice the distance.
	assert.Equal(t, Read(m, nil, s, eye.Viewing{Distance: 2000, Acuity: 0.5}, usual()), found)
}

// A gold line on yellow is not noticed where one on blue is: metal counts in
// the reflection that hides it.
func TestALineOnItsOwnColourIsNotNoticed(t *testing.T) {
	same, flats := pin(t, "#fff1c2", "#fff1c2", 5)
	v := eye.Viewing{Distance: 4000, Acuity: 1}
	found := Read(same, nil, at(t, flats, 36, "gold"), v, usual())
	require.NotEmpty(t, found)
	assert.Equal(t, sizing.Fails, found[0].Noticed)
	assert.InDelta(t, 0, found[0].Difference, 0.01)
	assert.Zero(t, found[0].NoticedFrom.MM)
}

// Capitals of 30 px at 60 mm in 180 px are 10 mm high. ISO 9241-303: 16 minutes
// of arc at least, 20 preferred.
func TestMarkedCapitals(t *testing.T) {
	m, flats := pin(t, "#c8402f", "#2f5d7c", 30)
	mark := sizing.LetterMark{X0: 0.5, Y0: 0.575, X1: 0.5, Y1: 0.425}
	s := at(t, flats, 60, "gold")
	for _, c := range []struct {
		mm   unit.MM
		want sizing.Verdict
	}{{1900, sizing.Holds}, {2500, sizing.Fails}} {
		found := Read(m, []sizing.LetterMark{mark}, s, eye.Viewing{Distance: c.mm, Acuity: 1}, usual())
		require.NotEmpty(t, found)
		f := found[0]
		require.Equal(t, Lettering, f.Detail)
		assert.Equal(t, c.want, f.Parted, "%v", c.mm)
		assert.InDelta(t, 10, float64(f.Measured), 0.01)
		assert.InEpsilon(t, 20.0/16, float64(f.Better/f.Need), 1e-3)
		_, letters := ReadFrom(m, []sizing.LetterMark{mark}, s, eye.Viewing{Distance: c.mm, Acuity: 1}, usual())
		assert.Equal(t, f.PartedFrom, letters)
	}
	none := Read(m, []sizing.LetterMark{{X0: 0.01, Y0: 0.01, X1: 0.02, Y1: 0.02}}, s, eye.Viewing{Distance: 400, Acuity: 1}, usual())
	assert.Empty(t, none, "it marks nothing")
}

// scrawl is lines and areas of all widths.
func scrawl(t *testing.T, seed uint64) (*wall.Measured, []reduce.Flat) {
	r := rand.New(rand.NewPCG(seed, 6))
	type bar struct{ x, y, dx, dy, half float64 }
	var bars []bar
	for range 8 {
		a := r.Float64() * math.Pi
		bars = append(bars, bar{200 * r.Float64(), 200 * r.Float64(), math.Cos(a), math.Sin(a), 0.6 + 5*r.Float64()})
	}
	flats := []reduce.Flat{
		{ID: 0, RGB: hex(t, "#c8402f"), Role: reduce.Enamel}, {ID: 1, RGB: hex(t, "#2f5d7c"), Role: reduce.Enamel}, {ID: 2, Role: reduce.Metal},
	}
	m, err := wall.Measure(draw(200, flats, func(x, y float64) uint8 {
		for _, b := range bars {
			if math.Abs((x-b.x)*b.dy-(y-b.y)*b.dx) < b.half {
				return steel
			}
		}
		if (x-100)*(x-100)+(y-100)*(y-100) > 95*95 {
			return sky
		}
		if x < y {
			return left
		}
		return right
	}), nil)
	require.NoError(t, err)
	return m, flats
}

// Farther never shows more and a better eye never sees less: what is not parted
// is not parted from farther off or by a weaker eye, and is told no better of;
// the size from which all is read only grows.
func TestFartherNeverShowsMore(t *testing.T) {
	worseThan := func(a, b *Reading) bool { return rank(a.Parted) <= rank(b.Parted) }
	for seed := range uint64(5) {
		m, flats := scrawl(t, seed)
		s := at(t, flats, 35, "silver")
		var before []Reading
		readFrom := unit.MM(0)
		for _, d := range [][2]float64{{300, 2}, {300, 1}, {400, 1}, {800, 1.5}, {1000, 1.2}, {1000, 1}, {1000, 0.6}, {2500, 1}, {2500, 0.5}} {
			v := eye.Viewing{Distance: unit.MM(d[0]), Acuity: d[1]}
			now := Read(m, nil, s, v, usual())
			var tally Tally
			for i := range now {
				tally.add(now[i].Parted)
			}
			require.Equal(t, tally, Count(m, nil, s, v, usual()), "counted alike")
			for i := range before {
				p := &before[i]
				told := false
				for k := range now {
					q := &now[k]
					told = told || q.X0 <= p.X && p.X <= q.X1 && q.Y0 <= p.Y && p.Y <= q.Y1 && worseThan(q, p)
				}
				require.True(t, told, "seed %d, %v: %+v", seed, v, p)
			}
			before = now
			all, _ := ReadFrom(m, nil, s, v, usual())
			if all.MM == 0 {
				readFrom = math.MaxFloat64
			}
			require.True(t, all.MM == 0 || all.MM >= readFrom, "seed %d, %v", seed, v)
			readFrom = max(readFrom, all.MM)
		}
		require.NotEmpty(t, before)
	}
}

func TestJudgeOnlyGetsWorse(t *testing.T) {
	for _, err := range []float64{0.25, 0.5} {
		for px := 0.1; px < 12; px += 0.1 {
			was := sizing.Holds
			for need := 0.05; need < 15; need += 0.05 {
				now := judge(px, err, need)
				require.LessOrEqual(t, rank(now), rank(was), "%v px, %v needed", px, need)
				was = now
			}
			require.Equal(t, sizing.Fails, was)
		}
	}
	assert.Equal(t, sizing.CannotTell, judge(1, 0.5, 1), "a pixel cannot be judged to half a pixel")
	assert.Equal(t, sizing.Holds, judge(8, 0.25, 8.2), "within its error a fine measure holds")
}

// The same bits on every machine, in the browser too.
func TestSameBitsEverywhere(t *testing.T) {
	h := fnv.New64a()
	m, flats := scrawl(t, 3)
	s := at(t, flats, 35, "gold")
	pairs := Pairs(m.Meetings(), s, usual())
	platings := Platings(pairs, s, sizing.Soft, usual())
	for _, v := range []any{Read(m, nil, s, eye.Viewing{Distance: 1000, Acuity: 0.9}, usual()), pairs, platings, Ideas(pairs, platings, s, 200, 200, usual())} {
		text, err := json.Marshal(v)
		require.NoError(t, err)
		h.Write(text)
	}
	assert.Equal(t, "d49b1fef5f428e35", fmt.Sprintf("%016x", h.Sum64()))
}
