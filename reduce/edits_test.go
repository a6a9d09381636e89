package reduce

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func flatAt(s *Separation, x, y float64) *Flat {
	l := s.Labels[int(y*float64(s.H))*s.W+int(x*float64(s.W))]
	if l == None {
		return nil
	}
	return &s.Flats[l]
}

func idOf(t *testing.T, s *Separation, hex string) FlatID {
	t.Helper()
	for _, f := range s.Flats {
		if f.RGB == rgb(t, hex) {
			return f.ID
		}
	}
	require.Fail(t, "no flat of that colour", hex)
	return 0
}

func TestRoleNameAndColour(t *testing.T) {
	a := analysed(t, buoy(t, 240))
	s := at(t, a, 4)
	line, red := idOf(t, s, "#1b1b1f"), idOf(t, s, "#d23b2f")
	green := rgb(t, "#20614a")
	s = at(t, a, 5,
		Edit{Op: SetRole, Flat: line, Role: Enamel},
		Edit{Op: SetColour, Flat: red, RGB: &green},
		Edit{Op: SetName, Flat: red, Name: " weed "})
	assert.Equal(t, 5, enamelsOf(s), "the line now counts")
	f := flatAt(s, 0.5, 0.36)
	require.NotNil(t, f)
	assert.Equal(t, Flat{ID: red, Name: "weed", RGB: green, Role: Enamel, Share: f.Share}, *f)

	s = at(t, a, 4, Edit{Op: SetRole, Flat: red, Role: CutOut})
	assert.Equal(t, CutOut, flatAt(s, 0.5, 0.36).Role)
	assert.Equal(t, 3, enamelsOf(s))
	s = at(t, a, 4, Edit{Op: SetRole, Flat: red, Role: "paint"}, Edit{Op: SetRole, Flat: 99, Role: Metal})
	assert.Equal(t, Enamel, flatAt(s, 0.5, 0.36).Role, "an unknown role, an unknown flat: nothing happens")
}

// A role given to a flat that held several leaves goes to all of them.
func TestRoleGoesToAllTheFlatHeld(t *testing.T) {
	a := analysed(t, harbour(t, 240))
	two := at(t, a, 2)
	sea := flatAt(two, 0.1, 0.95)
	require.Equal(t, sea.ID, flatAt(two, 0.9, 0.7).ID, "both blues are one flat here")
	for count := 1; count <= 5; count++ {
		s := at(t, a, count, Edit{Op: SetRole, Flat: sea.ID, Role: Metal, Count: 2})
		assert.Equal(t, Metal, flatAt(s, 0.1, 0.95).Role)
		assert.Equal(t, Metal, flatAt(s, 0.9, 0.7).Role)
		assert.Equal(t, sea.ID, flatAt(s, 0.9, 0.7).ID)
	}
}

func TestLockedFlatsStay(t *testing.T) {
	a := analysed(t, harbour(t, 240))
	sun := idOf(t, at(t, a, 5), "#f7a65a")
	lost := true
	for _, f := range at(t, a, 1).Flats {
		lost = lost && f.ID != sun
	}
	require.True(t, lost, "without a lock the sun goes")
	for count := 1; count <= 5; count++ {
		s := at(t, a, count, Edit{Op: SetLock, Flat: sun, Locked: true})
		f := flatAt(s, 0.7, 0.3)
		assert.Equal(t, sun, f.ID)
		assert.True(t, f.Locked)
		assert.Equal(t, rgb(t, "#f7a65a"), f.RGB)
		assert.LessOrEqual(t, enamelsOf(s), max(count, 1))
	}
	s := at(t, a, 1, Edit{Op: SetLock, Flat: sun, Locked: true}, Edit{Op: SetLock, Flat: sun})
	assert.Equal(t, at(t, a, 1).Flats, s.Flats)
}

func TestTwoLocksNeverMeet(t *testing.T) {
	a := analysed(t, harbour(t, 240))
	five := at(t, a, 5)
	sun, hull := idOf(t, five, "#f7a65a"), idOf(t, five, "#c8402f")
	s := at(t, a, 1, Edit{Op: SetLock, Flat: sun, Locked: true}, Edit{Op: SetLock, Flat: hull, Locked: true})
	assert.Equal(t, 2, enamelsOf(s), "more than asked for, as both are kept")
}

func TestJoin(t *testing.T) {
	a := analysed(t, harbour(t, 240))
	five := at(t, a, 5)
	sun, hull := idOf(t, five, "#f7a65a"), idOf(t, five, "#c8402f")
	for count := 3; count <= 5; count++ {
		s := at(t, a, count, Edit{Op: Join, Flat: sun, With: hull})
		assert.Equal(t, flatAt(s, 0.4, 0.57).ID, flatAt(s, 0.7, 0.3).ID, "count %d", count)
	}
	s := at(t, a, 5, Edit{Op: Join, Flat: sun, With: hull})
	assert.Equal(t, rgb(t, "#c8402f"), flatAt(s, 0.7, 0.3).RGB)
	assert.Len(t, s.Flats, 4)
	// to itself, and to a flat that is not there: nothing
	assert.Equal(t, five, at(t, a, 5, Edit{Op: Join, Flat: sun, With: sun}, Edit{Op: Join, Flat: sun, With: 77}))
}

// Touching one area splits it off: the same colour elsewhere stays.
func TestSplit(t *testing.T) {
	a := analysed(t, buoy(t, 240))
	four := at(t, a, 4)
	red := idOf(t, four, "#d23b2f") // above and below the white band
	green := rgb(t, "#20614a")
	split := Edit{Op: Split, Flat: red, X: 0.5, Y: 0.36, RGB: &green, Count: 4}
	s := at(t, a, 5, split)
	require.Len(t, s.Flats, 6)
	top, bottom := flatAt(s, 0.5, 0.36), flatAt(s, 0.5, 0.6)
	assert.Equal(t, green, top.RGB)
	assert.Equal(t, FlatID(len(a.leaves)), top.ID, "the next free number")
	assert.Equal(t, red, bottom.ID)
	assert.Equal(t, rgb(t, "#d23b2f"), bottom.RGB)
	before := 0.0
	for _, f := range four.Flats {
		if f.ID == red {
			before = f.Share
		}
	}
	assert.InDelta(t, before, top.Share+bottom.Share, 1e-9, "no pixel lost")
	for i, l := range s.Beside {
		if l != None && s.Flats[l].ID == red {
			require.Greater(t, i/s.W, 95, "the rim of the split area names the new flat")
		}
	}
	// kept at every count, and other edits reach it
	s = at(t, a, 1, split, Edit{Op: SetName, Flat: top.ID, Name: "cap"})
	assert.Equal(t, "cap", flatAt(s, 0.5, 0.36).Name)
	// undone
	assert.Equal(t, four, at(t, a, 4))
	assert.Equal(t, at(t, a, 5, split).Labels, at(t, a, 5, split).Labels)
	// on the background, and off the picture: nothing
	for _, p := range [][2]float64{{0, 0}, {-0.1, 0.5}, {1, 1}} {
		assert.Equal(t, four, at(t, a, 4, Edit{Op: Split, Flat: red, X: p[0], Y: p[1], Count: 4}))
	}
}

func TestUndoOfEveryEdit(t *testing.T) {
	a := analysed(t, buoy(t, 160))
	white := rgb(t, "#ffffff")
	edits := []Edit{
		{Op: SetRole, Flat: 1, Role: Enamel, Count: 4}, {Op: SetLock, Flat: 2, Locked: true},
		{Op: Split, Flat: 0, X: 0.5, Y: 0.85, Count: 3}, {Op: Join, Flat: 2, With: 3, Count: 3},
		{Op: SetColour, Flat: 0, RGB: &white}, {Op: Split, Flat: 2, X: 0.5, Y: 0.36, Count: 5}, {Op: SetName, Flat: 0, Name: "sky"},
	}
	fresh := analysed(t, buoy(t, 160))
	for n := len(edits); n >= 0; n-- {
		for count := 1; count <= 6; count++ {
			want, err := fresh.Reduce(Options{Count: count, Edits: edits[:n]})
			require.NoError(t, err)
			assert.Equal(t, want, at(t, a, count, edits[:n]...), "%d edits at %d", n, count)
		}
		fresh = analysed(t, buoy(t, 160))
	}
}

func TestRolesOff(t *testing.T) {
	a := analysed(t, buoy(t, 240))
	for count := 1; count <= 5; count++ {
		s, err := a.Reduce(Options{Count: count, RolesOff: true, Edits: []Edit{{Op: SetRole, Flat: 0, Role: CutOut}}})
		require.NoError(t, err)
		assert.Len(t, s.Flats, count)
		assert.Equal(t, count, enamelsOf(s))
	}
}

// A plain name is as short as it can be without two flats of one name, at every
// count; one given by hand is left alone.
func TestPlainNamesAreAsShortAsTheDrawingLets(t *testing.T) {
	a := analysed(t, drawingOf(t, rasterise(200, 200, rgb(t, "#ffffff"),
		shape{rgb(t, "#0067a5"), disc(100, 100, 80)}, shape{rgb(t, "#4997d0"), disc(80, 80, 25)}, shape{rgb(t, "#bc3f4a"), disc(125, 120, 25)})))
	names := func(count int, edits ...Edit) (all []string) {
		for _, f := range at(t, a, count, edits...).Flats {
			all = append(all, f.Name)
		}
		return all
	}
	assert.ElementsMatch(t, []string{"strong blue", "brilliant blue", "red"}, names(3))
	assert.ElementsMatch(t, []string{"blue", "red"}, names(2), "one blue is the blue")
	named := Edit{Op: SetName, Flat: idOf(t, at(t, a, 3), "#bc3f4a"), Name: "blue"}
	assert.ElementsMatch(t, []string{"strong blue", "blue"}, names(2, named))
}
