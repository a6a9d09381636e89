package colourlist

import (
	"cmp"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce/colour"
)

func randomColour(r *rand.Rand) colour.RGB8 {
	return colour.RGB8{R: uint8(r.UintN(256)), G: uint8(r.UintN(256)), B: uint8(r.UintN(256))}
}

func randomList(r *rand.Rand, n int) *ColourList {
	l := &ColourList{}
	for i := range n {
		e := fromRGB(randomColour(r))
		if i%3 == 0 {
			e = fromLab(colour.Lab{L: 100 * r.Float64(), A: 160*r.Float64() - 80, B: 160*r.Float64() - 80})
		}
		e.Code = "c" + itoa(i+1)
		l.Entries = append(l.Entries, e)
	}
	return l
}

// The slow, obvious twin of nearest.
func slowNearest(l *ColourList, of colour.Lab, n int) []int {
	at := make([]int, len(l.Entries))
	for i := range at {
		at[i] = i
	}
	slices.SortStableFunc(at, func(a, b int) int {
		return cmp.Compare(colour.CIEDE2000(of, l.Entries[a].CIELAB()), colour.CIEDE2000(of, l.Entries[b].CIELAB()))
	})
	return at[:min(n, len(at))]
}

func TestNearestIsThatOfComparingAll(t *testing.T) {
	const seed = 41
	t.Log("seed", seed)
	r := rand.New(rand.NewPCG(seed, 0))
	for round := range 60 {
		l := randomList(r, 1+r.IntN(150))
		l.Entries = append(l.Entries, l.Entries[:min(4, len(l.Entries))]...) // ties
		of := randomColour(r).Lab()
		n := round % 6
		var got []int
		for _, m := range NewShelf(l).Nearest(of, n) {
			got = append(got, m.Index)
			assert.Equal(t, colour.CIEDE2000(of, m.Entry.CIELAB()), m.DE)
			assert.Equal(t, DistanceOf(m.DE), m.Distance)
		}
		want := slowNearest(l, of, n)
		require.Len(t, got, len(want))
		if n > 0 {
			require.Equal(t, want, got, "round %d", round)
		}
	}
}

// Source: the 267 ISCC-NBS centroids (NBS Special Publication 440):
// testdata/reference/iscc_nbs_centroids.csv, read as a colour list.
func TestEveryCentroidOfISCCNBSIsNearestToItself(t *testing.T) {
	r, err := Read("iscc.csv", isccAsList(t), Unstated)
	require.NoError(t, err)
	require.Empty(t, r.Problems)
	require.Len(t, r.List.Entries, 267)
	s := NewShelf(&r.List)
	for i, e := range r.List.Entries {
		m := s.Nearest(e.RGB.Lab(), 1)[0]
		assert.Equal(t, e.RGB, r.List.Entries[m.Index].RGB, e.Name)
		assert.LessOrEqual(t, m.Index, i)
		assert.Equal(t, Same, m.Distance)
	}
	for _, c := range []string{"#c4332b", "#1f4e8c", "#2f7f6b", "#f4f1e8", "#b08d57"} {
		rgb, err := colour.ParseHex(c)
		require.NoError(t, err)
		assert.True(t, strings.EqualFold(colour.Name(rgb), s.Nearest(rgb.Lab(), 1)[0].Entry.Name), "%s: %s", c, colour.Name(rgb))
	}
}

func isccAsList(t *testing.T) []byte {
	t.Helper()
	var b strings.Builder
	b.WriteString("no,name,hex\n")
	for _, row := range published(t, "iscc_nbs_centroids.csv") {
		called, _, _ := strings.Cut(row["name"], ",")
		b.WriteString(row["index"] + "," + called + "," + row["hex"] + "\n")
	}
	return []byte(b.String())
}

// The bounds are this tool's convention, drawn from no standard.
func TestDistanceHasAWord(t *testing.T) {
	for _, c := range []struct {
		de   float64
		word Nearness
	}{
		{0, "same"}, {0.99, "same"}, {1, "hard to tell"}, {1.99, "hard to tell"}, {2, "close"}, {4.99, "close"},
		{5, "clearly different"}, {9.99, "clearly different"}, {10, "another colour"}, {90, "another colour"},
	} {
		assert.Equal(t, c.word, DistanceOf(c.de))
	}
}

func TestLeanSaysWhichWay(t *testing.T) {
	for _, c := range []struct {
		from, to colour.Lab
		words    string
	}{
		{colour.Lab{L: 50}, colour.Lab{L: 57}, "lighter"},
		{colour.Lab{L: 50}, colour.Lab{L: 47}, "a little darker"},
		{colour.Lab{L: 50, A: 40}, colour.Lab{L: 50, A: 28}, "a little greyer"},
		{colour.Lab{L: 50, A: 28}, colour.Lab{L: 50, A: 40}, "a little stronger"},
		{colour.Lab{L: 60, A: -40, B: 2}, colour.Lab{L: 60, A: -40, B: 10}, "a little yellower"},
		{colour.Lab{L: 60, A: 3, B: 50}, colour.Lab{L: 60, A: -6, B: 50}, "greener"},
		{colour.Lab{L: 60, A: -6, B: 50}, colour.Lab{L: 60, A: 3, B: 50}, "redder"},
		{colour.Lab{L: 60, A: -40, B: 10}, colour.Lab{L: 60, A: -40, B: 3}, "a little bluer"},
		{colour.Lab{L: 80, B: 1}, colour.Lab{L: 80, B: -4}, "a little bluer"},
		{colour.Lab{L: 50, A: 40}, colour.Lab{L: 47, A: 30}, "a little greyer and darker"},
		{colour.Lab{L: 50}, colour.Lab{L: 51}, ""},
		{colour.Lab{L: 20}, colour.Lab{L: 90}, ""},
	} {
		assert.Equal(t, c.words, lean(c.from, c.to, colour.CIEDE2000(c.from, c.to)), "%v to %v", c.from, c.to)
	}
}

func BenchmarkNearestOfFiveThousand(b *testing.B) {
	r := rand.New(rand.NewPCG(1, 0))
	s := NewShelf(randomList(r, MaxEntries))
	of := make([]colour.Lab, 12)
	for i := range of {
		of[i] = randomColour(r).Lab()
	}
	for b.Loop() {
		for _, l := range of {
			s.Nearest(l, 3)
		}
	}
}
