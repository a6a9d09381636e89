package reduce

import (
	"bytes"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What is said of the next step is what the next step does.
func TestNextIsWhatHappens(t *testing.T) {
	for name, d := range map[string]*Drawing{"lined": buoy(t, 240), "lineless": harbour(t, 240), "painting": painting()} {
		a := analysed(t, d)
		for count := MaxCount; count > 1; count-- {
			fine, coarse := at(t, a, count), at(t, a, count-1)
			j, ok := a.Next(Options{Count: enamelsOf(fine)})
			require.True(t, ok, name)
			if len(fine.Flats) == len(coarse.Flats) {
				continue // the drawing has fewer colours than were asked for
			}
			ids := map[FlatID]Flat{}
			for _, f := range coarse.Flats {
				ids[f.ID] = f
			}
			for _, f := range fine.Flats {
				_, stays := ids[f.ID]
				assert.Equal(t, f.ID != j.Goes, stays, "%s at %d: flat %d", name, count, f.ID)
				if f.ID == j.Goes {
					assert.InDelta(t, f.Share, j.Share, 1e-9)
				}
			}
			assert.Equal(t, ids[j.Keep].RGB, j.Becomes)
		}
	}
}

func TestNothingIsNextWhenOneIsLeft(t *testing.T) {
	_, ok := analysed(t, harbour(t, 160)).Next(Options{Count: 1})
	assert.False(t, ok)
}

// pixelOf returns a pixel of the leaf that leads a flat.
func pixelOf(a *Analysis, id FlatID) int { return bytes.IndexByte(a.f.label, uint8(id)) }

func TestFlatsKeptApartNeverJoin(t *testing.T) {
	a := analysed(t, harbour(t, 240))
	for count := 6; count > 2; count-- {
		j, ok := a.Next(Options{Count: count})
		require.True(t, ok)
		apart := Edit{Op: Apart, Flat: j.Goes, With: j.Keep}
		s := at(t, a, count-1, apart)
		assert.Equal(t, count-1, enamelsOf(s), "another pair joined instead")
		goes, keep := s.Labels[pixelOf(a, j.Goes)], s.Labels[pixelOf(a, j.Keep)]
		assert.NotEqual(t, goes, keep, "at %d", count)
	}
}

// All flats told to stay apart: the count is not reached, and none is next.
func TestAllKeptApart(t *testing.T) {
	a := analysed(t, harbour(t, 160))
	flats := at(t, a, 3).Flats
	var edits []Edit
	for i, f := range flats {
		for _, g := range flats[:i] {
			edits = append(edits, Edit{Op: Apart, Flat: f.ID, With: g.ID})
		}
	}
	assert.Len(t, at(t, a, 1, edits...).Flats, 3)
	_, ok := a.Next(Options{Count: 3, Edits: edits})
	assert.False(t, ok)
}
