package calls

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce/colour"
	"badgewright/sizing"
	"badgewright/wasm/wire"
)

// handing hands a version from one program's calls to the other's, as the page
// does, and returns its key.
func handing(t *testing.T, s *Session, p wire.Picked) string {
	t.Helper()
	k, rasters := ask[wire.Struck](t, s, "struck", wire.StruckAsk{Picked: p}, nil)
	h, _ := ask[wire.Hand](t, s, "hand", k, rasters)
	return h.Key
}

func TestAVersionIsHandedOverWhole(t *testing.T) {
	s := NewSession()
	_, p := opening(t, s, 300, 0) // no lines drawn: they are built
	d := &p.Project.Order.Designs[0]
	d.Recipes = []sizing.Recipe{{Kind: sizing.OuterEdge}, {Kind: sizing.BuildLines}}
	u, err := s.subject(&p, func(float64, string) error { return nil })
	require.NoError(t, err)
	k, err := u.struck()
	require.NoError(t, err)

	h, err := s.handedAs(handing(t, s, p))
	require.NoError(t, err)
	assert.Equal(t, k.badge.Sep, h.badge.Sep, "the rasters, and flats in the drawing's colours")
	assert.NotNil(t, h.badge.Sep.Built)
	assert.Equal(t, k.badge.Scale, h.badge.Scale)
	assert.Equal(t, k.badge.Outline, h.badge.Outline)
	assert.Equal(t, *d, h.Design)
	assert.NotEmpty(t, h.Check.Words)
}

func TestWhatIsHandedOverWearsItsVersionsColours(t *testing.T) {
	s := NewSession()
	_, p := opening(t, s, 300, 8)
	v := &p.Project.Order.Designs[0].Versions[0]
	plain := handing(t, s, p)
	h, err := s.handedAs(plain)
	require.NoError(t, err)
	flat := h.Flats[0].ID
	v.Colours = []sizing.VersionColour{{Flat: flat, RGB: &colour.RGB8{R: 9, G: 8, B: 7}}}
	other := handing(t, s, p)
	assert.NotEqual(t, plain, other, "another version has another key")
	h, err = s.handedAs(other)
	require.NoError(t, err)
	assert.Equal(t, colour.RGB8{R: 9, G: 8, B: 7}, h.badge.Sep.Flats[0].RGB)
}

func TestRastersThatDoNotFitAreRefused(t *testing.T) {
	s := NewSession()
	_, p := opening(t, s, 300, 8)
	k, rasters := ask[wire.Struck](t, s, "struck", wire.StruckAsk{Picked: p}, nil)
	text, err := json.Marshal(k)
	require.NoError(t, err)
	_, err = s.Do("hand", text, Job{Bytes: rasters[1:]})
	assert.ErrorContains(t, err, "rasters")
	rasters[0] = byte(len(k.Flats))
	_, err = s.Do("hand", text, Job{Bytes: rasters})
	assert.ErrorContains(t, err, "a pixel of flat")

	_, err = s.Do("shapes", []byte(`{"of":"nothing"}`), Job{})
	assert.Equal(t, wire.Gone, FailureOf(err).Kind, "the page hands it over again")
}
