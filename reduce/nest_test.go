package reduce

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce/colour"
)

func at(t testing.TB, a *Analysis, count int, edits ...Edit) *Separation {
	t.Helper()
	s, err := a.Reduce(Options{Count: count, Edits: edits})
	require.NoError(t, err)
	return s
}

func enamelsOf(s *Separation) int {
	n := 0
	for _, f := range s.Flats {
		if f.Role == Enamel {
			n++
		}
	}
	return n
}

// wantNested requires every boundary of the coarser picture in the finer one,
// and each coarse flat to keep the ID of one of its finer flats.
func wantNested(t *testing.T, coarse, fine *Separation) {
	t.Helper()
	parent := map[uint8]uint8{}
	for i, l := range fine.Labels {
		if p, ok := parent[l]; ok {
			require.Equal(t, p, coarse.Labels[i], "pixel %d", i)
		}
		parent[l] = coarse.Labels[i]
	}
	ids := map[FlatID]bool{}
	for _, f := range fine.Flats {
		ids[f.ID] = true
	}
	for k, f := range coarse.Flats {
		assert.True(t, ids[f.ID], "flat %d", f.ID)
		if k > 0 {
			assert.Greater(t, f.ID, coarse.Flats[k-1].ID, "order by ID")
		}
	}
}

func TestCountsAreNested(t *testing.T) {
	for name, d := range map[string]*Drawing{"lined": buoy(t, 240), "lineless": harbour(t, 240), "painting": painting()} {
		a := analysed(t, d)
		for count := 1; count < MaxCount; count++ {
			coarse, fine := at(t, a, count), at(t, a, count+1)
			assert.LessOrEqual(t, enamelsOf(coarse), count, name)
			wantNested(t, coarse, fine)
		}
	}
}

// Flat art loses whole colours; those that stay do not shift.
func TestColoursThatStayDoNotShift(t *testing.T) {
	a := analysed(t, harbour(t, 240))
	true5 := map[FlatID]colour.RGB8{}
	for _, f := range at(t, a, 5).Flats {
		true5[f.ID] = f.RGB
	}
	for count := 1; count < 5; count++ {
		for _, f := range at(t, a, count).Flats {
			assert.Equal(t, true5[f.ID], f.RGB)
		}
	}
}

// The two blues of the sea, a step of 4 CIEDE2000, are the first to join.
func TestTheClosestJoinFirst(t *testing.T) {
	a := analysed(t, harbour(t, 240))
	require.Len(t, a.leaves, 5)
	four := at(t, a, 4)
	for _, hex := range []string{"#fbe3c0", "#f7a65a", "#c8402f"} {
		found := false
		for _, f := range four.Flats {
			found = found || f.RGB == rgb(t, hex)
		}
		assert.True(t, found, hex)
	}
}

func TestPixelsAreWhole(t *testing.T) {
	for _, d := range []*Drawing{buoy(t, 240), stain(t, buoy(t, 240), 80), painting()} {
		a := analysed(t, d)
		for _, count := range []int{1, 3, 12} {
			s := at(t, a, count)
			share := 0.0
			for _, f := range s.Flats {
				share += f.Share
			}
			assert.InDelta(t, 1, share, 1e-9)
			for i := range s.Labels {
				for _, l := range []uint8{s.Labels[i], s.Beside[i]} {
					if l != None && int(l) >= len(s.Flats) {
						t.Fatalf("pixel %d has flat %d of %d", i, l, len(s.Flats))
					}
				}
				if c := s.Cover[i]; c < 127 || s.Labels[i] == s.Beside[i] && c != 255 {
					t.Fatalf("pixel %d is covered by %d of %d beside %d", i, c, s.Labels[i], s.Beside[i])
				}
			}
		}
	}
}

// A separation that was handed out stays as it is.
func TestSeparationsAreTheCallersOwn(t *testing.T) {
	a := analysed(t, buoy(t, 120))
	s := at(t, a, 4)
	before := append([]uint8(nil), s.Labels...)
	at(t, a, 1)
	at(t, a, 4, Edit{Op: Split, Flat: 0, X: 0.5, Y: 0.2, Count: 4})
	assert.Equal(t, before, s.Labels)
}

// A stone with a red handle: when a colour must go, it is the shade of grey
// beside the black, and not the only red.
func TestAnAccentOutlivesAShadeOfGrey(t *testing.T) {
	d := drawingOf(t, rasterise(240, 240, rgb(t, "#ffffff"),
		shape{rgb(t, "#050505"), disc(120, 120, 110)}, shape{rgb(t, "#9b9b9a"), oblong(50, 90, 150, 190)},
		shape{rgb(t, "#3f3f3f"), oblong(150, 90, 190, 190)}, shape{rgb(t, "#d22f27"), oblong(90, 40, 150, 62)}))
	a := analysed(t, d)
	s, err := a.Reduce(Options{Count: 3, RolesOff: true})
	require.NoError(t, err)
	var left []string
	for _, f := range s.Flats {
		left = append(left, f.RGB.Hex())
	}
	assert.ElementsMatch(t, []string{"#050505", "#9b9b9a", "#d22f27"}, left)
}
