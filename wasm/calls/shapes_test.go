package calls

import (
	"encoding/xml"
	"errors"
	"io"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce/colour"
	"badgewright/sizing"
	"badgewright/wasm/wire"
)

// groups reads a drawing as any reader of XML does: the fill of each group by
// its id, and how many paths it has.
func groups(t *testing.T, svg []byte) (ids []string, fill map[string]string, paths map[string]int, size [2]string) {
	t.Helper()
	fill, paths = map[string]string{}, map[string]int{}
	d := xml.NewDecoder(strings.NewReader(string(svg)))
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return ids, fill, paths, size
		}
		require.NoError(t, err)
		e, ok := token.(xml.StartElement)
		if !ok {
			continue
		}
		at := map[string]string{}
		for _, a := range e.Attr {
			at[a.Name.Local] = a.Value
		}
		switch e.Name.Local {
		case "svg":
			size = [2]string{at["width"], at["height"]}
		case "g":
			ids = append(ids, at["id"])
			fill[at["id"]] = at["fill"]
		case "path":
			paths[ids[len(ids)-1]]++
		}
	}
}

func TestShapesAreLayersInMM(t *testing.T) {
	s := NewSession()
	_, p := opening(t, s, 400, 10)
	d := &p.Project.Order.Designs[0]
	d.Size = sizeOf(30)
	flats, _ := ask[wire.Check](t, s, "check", wire.CheckAsk{Picked: p}, nil)
	var first string
	for _, f := range flats.Flats.Flats {
		if f.Role == "enamel" && first == "" {
			first = f.Name
			d.Versions[0].Colours = []sizing.VersionColour{{Flat: f.ID, RGB: &colour.RGB8{R: 1, G: 2, B: 3}}}
		}
	}
	a, svg := ask[wire.Shapes](t, s, "shapes", wire.ShapesAsk{Of: handing(t, s, p)}, nil)
	assert.InDelta(t, 30, float64(a.W), 0.05)
	assert.LessOrEqual(t, float64(a.Within), max(float64(a.Tolerance), 0.2*30/360), "or what 12 px to the mm can tell")
	assert.Len(t, a.Enamel, 2)
	assert.Equal(t, "sea-roundel-30mm.svg", a.FileName)
	assert.Contains(t, a.Words, "30 × 30 mm")
	sum := a.Metal.Area
	for _, e := range a.Enamel {
		sum += e.Area
		assert.True(t, strings.HasPrefix(e.D, "M") && strings.HasSuffix(e.D, "Z"))
	}
	assert.InDelta(t, a.Outline.Area, sum, 1e-9)

	ids, fill, paths, size := groups(t, svg)
	assert.Equal(t, [2]string{"30.000mm", "30.000mm"}, size)
	require.Len(t, ids, 4)
	assert.Equal(t, []string{"outline", "metal"}, ids[:2])
	assert.Equal(t, platingOf(d.Versions[0].Plating).Mid.Hex(), fill["metal"])
	assert.Contains(t, []string{fill[ids[2]], fill[ids[3]]}, "#010203", "the version's own colour")
	assert.Equal(t, 1, paths["outline"])
	assert.Equal(t, a.Metal.Pieces, paths["metal"])
}
