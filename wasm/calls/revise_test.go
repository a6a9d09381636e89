package calls

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/reduce/colour"
	"badgewright/sizing"
	"badgewright/wasm/wire"
)

// A second roundel with thicker lines: names, codes and finishes go with their
// colours, lines drawn by hand keep their place, the old drawing is kept.
func TestRevise(t *testing.T) {
	s := NewSession()
	_, p := opening(t, s, 200, 9)
	flats, _ := ask[wire.Check](t, s, "check", wire.CheckAsk{Picked: p}, nil)
	var red reduce.FlatID
	for _, f := range flats.Flats.Flats {
		if f.RGB.R > 150 && f.RGB.G < 100 {
			red = f.ID
		}
	}
	d := &p.Project.Order.Designs[0]
	d.Edits = []reduce.Edit{{Op: reduce.SetName, Flat: red, Name: "hull", Count: 2}, {Op: reduce.SetName, Flat: 77, Name: "nothing", Count: 2}}
	d.Recipes = append(d.Recipes, sizing.Recipe{Kind: sizing.DrawLine, Points: [][2]float64{{0.2, 0.3}, {0.4, 0.3}}})
	pearl := sizing.VersionColour{Flat: red, RGB: &colour.RGB8{R: 9, G: 8, B: 7}, Code: "S 4", Finish: sizing.Pearl}
	d.Versions[0].Colours = []sizing.VersionColour{pearl, {Flat: 78, Code: "S 5"}}

	next := roundel(300, 16)
	ask[wire.Opened](t, s, "open", wire.OpenAsk{ID: "b", FileName: "sea_roundel_2.png", W: 300, H: 300, FileW: 300, FileH: 300, Space: "srgb", Ground: reduce.GroundAuto}, next)
	r, _ := ask[wire.Revised](t, s, "revise", wire.ReviseAsk{Picked: p, Drawing: "b"}, nil)
	require.Len(t, r.Design.Drawings, 2)
	assert.Equal(t, "b", r.Design.Drawings[1].ID)
	assert.Len(t, r.Lost, 2)
	assert.Contains(t, r.Words, "Revision 2")
	assert.Contains(t, r.Words, "2 things you had set no longer fit")
	assert.InDelta(t, 0.03, r.Changed, 0.03)
	assert.Equal(t, d.Recipes, r.Design.Recipes)
	require.Len(t, r.Design.Versions[0].Colours, 1)
	assert.Equal(t, "S 4", r.Design.Versions[0].Colours[0].Code)
	assert.Equal(t, d.Size, r.Design.Size)

	p.Project.Order.Designs[0] = r.Design
	check, _ := ask[wire.Check](t, s, "check", wire.CheckAsk{Picked: p}, nil)
	names := []string{}
	for _, f := range check.Flats.Flats {
		names = append(names, f.Name)
	}
	assert.Contains(t, names, "hull")
}
