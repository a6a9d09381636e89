package wall

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// separationOf makes a small separation of anything from a few bytes: a width,
// then a label for each pixel, which holds for as many as the next byte says.
func separationOf(data []byte) *reduce.Separation {
	labels := []uint8{red, blue, steel, steel, hole, ink, sky, sky}
	w := 1
	if len(data) > 0 {
		w = 1 + int(data[0]%48)
	}
	var line []uint8
	for i := 1; i+1 < len(data) && len(line) < 2400; i += 2 {
		for range 1 + data[i+1]%16 {
			line = append(line, data[i])
		}
	}
	s := reduce.NewSeparation(w, max(len(line)/w, 1))
	s.Flats = flats()
	for i := range min(len(s.Labels), len(line)) {
		s.Labels[i] = labels[line[i]&7]
		s.Beside[i], s.Cover[i] = labels[line[i]>>3&7], 128+line[i]>>1
	}
	return s
}

// soundFinding checks what every finding must keep to.
func soundFinding(t *testing.T, s *reduce.Separation, f *sizing.Finding) {
	for _, v := range append([]float64{f.X, f.Y, f.X0, f.Y0, f.X1, f.Y1, float64(f.Length), float64(f.Thinnest), float64(f.Typical), f.Area}, f.Ends[:]...) {
		require.False(t, math.IsNaN(v) || math.IsInf(v, 0), "%+v", f)
	}
	require.Positive(t, f.Count, "%+v", f)
	require.Contains(t, []sizing.Verdict{sizing.Holds, sizing.Fails, sizing.CannotTell}, f.Verdict)
	require.True(t, f.X >= -1 && f.Y >= -1 && f.X <= float64(s.W)+1 && f.Y <= float64(s.H)+1, "%+v", f)
	require.GreaterOrEqual(t, f.Area, 0.0, "%+v", f)
	require.GreaterOrEqual(t, f.Thinnest, unit.MM(0), "%+v", f)
	require.Equal(t, f.Verdict == sizing.CannotTell, f.NeedPx > 0, "%+v", f)
}

func FuzzFindings(f *testing.F) {
	f.Add([]byte{20, 2, 15, 0, 9, 1, 3}, 10.0)
	f.Add([]byte{7, 6, 1, 2, 1, 0, 2, 2, 3, 6, 1}, 0.3)
	f.Fuzz(func(t *testing.T, data []byte, scale float64) {
		s := separationOf(data)
		if !(scale > 1e-3 && scale < 1e4) {
			scale = 10
		}
		m := measured(t, s)
		found := m.Findings(unit.PxPerMM(scale), soft)
		for i := range found {
			soundFinding(t, s, &found[i])
		}
	})
}

func TestNoiseOfAnyKindGivesSoundFindings(t *testing.T) {
	const seed = 71
	t.Logf("seed %d", seed)
	rnd := rand.New(rand.NewPCG(seed, 0))
	for range 400 {
		data := make([]byte, 2+rnd.IntN(400))
		for i := range data {
			data[i] = byte(rnd.Uint32())
		}
		s := separationOf(data)
		m := measured(t, s)
		for _, scale := range []unit.PxPerMM{0.5, 8, 60} {
			found := m.Findings(scale, soft)
			for i := range found {
				soundFinding(t, s, &found[i])
			}
		}
	}
}

// Much noise, as large as a drawing: it ends, and findings of a kind stay few.
func TestLargeNoiseIsMeasured(t *testing.T) {
	const seed = 72
	t.Logf("seed %d", seed)
	rnd := rand.New(rand.NewPCG(seed, 0))
	s := reduce.NewSeparation(400, 400)
	s.Flats = flats()
	labels := []uint8{red, blue, steel, hole, ink, sky}
	for i := range s.Labels {
		l := labels[rnd.IntN(6)]
		s.Labels[i], s.Beside[i] = l, l
	}
	found := measured(t, s).Findings(20, soft)
	count := map[sizing.Kind]int{}
	for i := range found {
		soundFinding(t, s, &found[i])
		count[found[i].Kind]++
	}
	t.Logf("%v", count)
	for _, k := range []sizing.Kind{sizing.MetalIsland, sizing.Pinhole, sizing.SmallCutOut, sizing.NoLine, sizing.NoEdge} {
		require.LessOrEqual(t, count[k], 2*manyPlaces, "%s", k)
	}
}

// busy is a badge with something of every kind.
func busy() *reduce.Separation {
	text := written("SKERRY", 30, 5, straight(80, 150, 0))
	in := func(x, y, cx, cy, r float64) bool { return math.Hypot(x-cx, y-cy) < r }
	return scene(400, 400, func(x, y float64) uint8 {
		d := math.Hypot(x-200, y-200)
		switch {
		case d > 196, in(x, y, 280, 280, 12):
			return sky
		case d > 172, text(x, y), in(x, y, 300, 120, 2.2), in(x, y, 280, 280, 24):
			return steel
		case in(x, y, 140, 290, 34) && !in(x, y, 140, 290, 2):
			return steel
		case math.Abs(y-200) < 5 && math.Abs(x-150) > 6:
			return steel
		case y < 200:
			return red
		}
		return blue
	})
}

func TestEveryKindTurnsAndMirrorsWithTheDrawing(t *testing.T) {
	s := busy()
	tally := func(s *reduce.Separation) map[sizing.Kind]int {
		n := map[sizing.Kind]int{}
		for _, f := range measured(t, s).Findings(25, soft) {
			n[f.Kind] += f.Count
		}
		return n
	}
	want := tally(s)
	t.Logf("%v", want)
	for _, k := range []sizing.Kind{sizing.Gap, sizing.SmallLettering, sizing.MetalIsland, sizing.Pinhole, sizing.SmallCutOut} {
		require.Positive(t, want[k], "%s", k)
	}
	for name, other := range map[string]*reduce.Separation{"turned": turned(s), "mirrored": mirrored(s), "about": turned(turned(s))} {
		got := tally(other)
		for k, n := range want {
			// Corners are told by their length, which grain changes by a pixel.
			if k != sizing.RoundedCorners && k != sizing.FadesOut {
				require.Equal(t, n, got[k], "%s, %s", name, k)
			}
		}
	}
}

func TestEveryKindThatHoldsHoldsAtEveryLargerSize(t *testing.T) {
	s := busy()
	m := measured(t, s)
	box, ok := sizing.Outline(s)
	require.True(t, ok)
	held := map[sizing.Kind]bool{}
	for mm := sizing.LeastSize; mm <= 120; mm += 0.5 {
		fails := map[sizing.Kind]bool{}
		for _, f := range m.Findings(sizing.ScaleFor(box, sizing.Size{MM: mm, By: sizing.ByLongest}), soft) {
			fails[f.Kind] = fails[f.Kind] || f.Verdict == sizing.Fails
		}
		for _, k := range []sizing.Kind{sizing.Gap, sizing.NoLine, sizing.NoEdge, sizing.SmallLettering, sizing.SmallCutOut, sizing.MetalIsland, sizing.OpenArea} {
			require.False(t, held[k] && fails[k], "%s holds below %.1f mm and fails there", k, float64(mm))
			held[k] = held[k] || !fails[k] && mm > sizing.LeastSize
		}
	}
	require.True(t, held[sizing.SmallCutOut])
	require.True(t, held[sizing.SmallLettering])
	require.False(t, held[sizing.Gap])
	require.Greater(t, m.HoldsFrom(box, sizing.ByLongest, soft), unit.MM(20), "the hole of 24 px")
}
