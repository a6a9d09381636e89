package mend

import (
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/sizing"
	"badgewright/sizing/unit"
	"badgewright/sizing/wall"
)

func TestTheSmallestSizeThatHoldsAsRepairedIsFoundToHalfAMillimetre(t *testing.T) {
	s := drawn(planted[0].picture)
	box, ok := sizing.Outline(s)
	require.True(t, ok)
	b := wall.NewBuilder(s)
	sized := &Sized{Builder: b, Box: box, By: sizing.ByLongest, Limits: limits}
	var shares []float64
	got, err := HoldsFrom(sized, 40, func(share float64, _ string) error {
		shares = append(shares, share)
		return nil
	})
	require.NoError(t, err)
	assert.IsNonDecreasing(t, shares)
	assert.Greater(t, shares[len(shares)-1], 0.6)
	holds := func(size unit.MM) bool {
		d := &Drawing{Builder: b, Scale: sizing.ScaleFor(box, sizing.Size{MM: size, By: sizing.ByLongest}), Limits: limits}
		o, err := All(d, nil)
		require.NoError(t, err)
		return len(o.Left) == 0 && len(failing(t, with(d, o.Recipes))) == 0
	}
	assert.True(t, holds(got))
	assert.False(t, got > sizing.LeastSize && holds(got-finest))
	m, err := wall.Measure(s, nil)
	require.NoError(t, err)
	assert.Less(t, got, m.HoldsFrom(box, sizing.ByLongest, limits), "less than as drawn")
}

func TestTheSearchStopsWhenItIsAskedTo(t *testing.T) {
	s := drawn(planted[0].picture)
	box, _ := sizing.Outline(s)
	stop := errors.New("stopped")
	n := 0
	_, err := HoldsFrom(&Sized{Builder: wall.NewBuilder(s), Box: box, By: sizing.ByLongest, Limits: limits}, 40, func(float64, string) error {
		if n++; n > 5 {
			return stop
		}
		return nil
	})
	assert.ErrorIs(t, err, stop)
	assert.Equal(t, 6, n)
}

func TestRepairsMadeAtOneSizeServeAtALargerOne(t *testing.T) {
	for _, c := range planted {
		d := drawing(drawn(c.picture))
		o, err := All(d, nil)
		require.NoError(t, err, c.name)
		larger := with(d, o.Recipes)
		larger.Scale = scale * 0.8
		assert.Empty(t, failing(t, larger), c.name)
	}
}

func TestChangesAreCountedByPartsOfPixels(t *testing.T) {
	was, is := drawn("rr rr"), drawn("rr rr")
	assert.Equal(t, "0 mm², 0 % of the pin", changed(was, is, scale).Words)
	is.Labels[0], is.Beside[0], is.Cover[0] = 3, 0, 153 // 60 % of it is metal
	is.Labels[1], is.Beside[1] = 1, 1
	c := changed(was, is, 2)
	assert.InDelta(t, 1.6/4, c.MM2, 1e-9)
	assert.InDelta(t, 1.6/64, c.Share, 1e-9)
	assert.Equal(t, "0.4 mm², 2.5 % of the pin", c.Words)
}

func TestASearchThatWasStoppedGoesOnWhereItWas(t *testing.T) {
	s := drawn(planted[0].picture)
	box, _ := sizing.Outline(s)
	d := &Sized{Builder: wall.NewBuilder(s), Box: box, By: sizing.ByLongest, Limits: limits}
	whole, err := HoldsFrom(d, 40, nil)
	require.NoError(t, err)
	at := Begin(40)
	for k := 0; !at.Done; k++ {
		require.Less(t, k, 12)
		_, err := at.Step(d, func(float64, string) error { return errors.New("stopped") })
		require.Error(t, err)
		next, err := at.Step(d, nil)
		require.NoError(t, err)
		assert.GreaterOrEqual(t, next.Share(), at.Share())
		at = next
	}
	assert.Equal(t, whole, at.Size())
	assert.Equal(t, 1.0, at.Share())
	d.Limits.Line, d.Limits.Area, d.Limits.Edge = 6, 6, 6
	none := Begin(6)
	for !none.Done {
		none, err = none.Step(d, nil)
		require.NoError(t, err)
	}
	assert.Zero(t, none.Size(), "a size at which nothing helps is not said to hold")
}

func TestTheSearchEndsAtTheSmallestThatHolds(t *testing.T) {
	for least := 10; least <= 81; least++ {
		s := Begin(40)
		for !s.Done {
			require.LessOrEqual(t, s.Tried, 8)
			at := s.next()
			s = s.tried(at, at >= least)
		}
		want := unit.MM(least) * finest
		if least > 80 {
			want = 0
		}
		assert.Equal(t, want, s.Size())
	}
}
