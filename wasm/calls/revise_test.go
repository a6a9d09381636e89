package calls

import (
	"encoding/json"
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
	assert.Equal(t, []string{
		"The name of a colour: the new drawing has no such colour.",
		"What a colour was ordered as (S 5) in First: the new drawing has no such colour.",
	}, r.Lost)
	assert.Equal(t, r.Lost, r.Design.Drawings[1].Lost)
	assert.Contains(t, r.Words, "Version 2 is on the sheet.")
	assert.Contains(t, r.Words, "2 things you had set do not fit")
	assert.InDelta(t, 0.03, r.Changed, 0.03)
	assert.Positive(t, r.Places)
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

// Both drawings are kept, and each keeps what was set on it: one can go back to
// the older and forth again. Where they differ can be seen.
func TestBothRevisionsAreKept(t *testing.T) {
	s := NewSession()
	_, p := opening(t, s, 200, 9)
	d := &p.Project.Order.Designs[0]
	hull := reduce.Edit{Op: reduce.SetName, Flat: 0, Name: "hull", Count: 2}
	line := sizing.Recipe{Kind: sizing.DrawLine, Points: [][2]float64{{0.2, 0.3}, {0.4, 0.3}}}
	d.Edits, d.Recipes = []reduce.Edit{hull}, append(d.Recipes, line)
	d.Versions[0].Colours = []sizing.VersionColour{{Flat: 0, Code: "S 4"}}
	first := *d

	text, err := json.Marshal(wire.PictureAsk{Picked: p, View: wire.ViewChanged, LongSide: 64})
	require.NoError(t, err)
	_, err = s.Do("picture", text, Job{})
	assert.ErrorContains(t, err, "only one version")
	ask[wire.Opened](t, s, "open", wire.OpenAsk{ID: "b", FileName: "two.png", W: 300, H: 300, FileW: 300, FileH: 300, Space: "srgb", Ground: reduce.GroundAuto}, roundel(300, 40))
	r, _ := ask[wire.Revised](t, s, "revise", wire.ReviseAsk{Picked: p, Drawing: "b"}, nil)
	assert.Equal(t, []int{1, 2}, revisionsOf(r.Design))
	p.Project.Order.Designs[0] = r.Design
	_, marked := ask[wire.Picture](t, s, "picture", wire.PictureAsk{Picked: p, View: wire.ViewChanged, LongSide: 200}, nil)
	assert.Contains(t, string(marked), "\xff\xff\xff\xff", "white strokes")

	// On the second, more is set; then the first comes back as it was.
	d = &p.Project.Order.Designs[0]
	d.Edits = append(d.Edits, reduce.Edit{Op: reduce.SetName, Flat: 1, Name: "sea", Count: 2})
	second := *d
	back, _ := ask[wire.Revised](t, s, "revise", wire.ReviseAsk{Picked: p, Drawing: "a"}, nil)
	assert.Contains(t, back.Words, "Version 1 is back on the sheet as you left it")
	assert.Equal(t, []int{2, 1}, revisionsOf(back.Design))
	assert.Equal(t, first.Edits, back.Design.Edits)
	assert.Equal(t, first.Recipes, back.Design.Recipes)
	assert.Equal(t, first.Versions, back.Design.Versions)
	assert.Equal(t, r.Places, back.Places, "they differ in the same places, seen from the other side")

	p.Project.Order.Designs[0] = back.Design
	forth, _ := ask[wire.Revised](t, s, "revise", wire.ReviseAsk{Picked: p, Drawing: "b"}, nil)
	assert.Equal(t, []int{1, 2}, revisionsOf(forth.Design))
	assert.Equal(t, second.Edits, forth.Design.Edits)
	assert.Equal(t, second.Versions, forth.Design.Versions)

	// A third counts on, whichever was on the sheet.
	p.Project.Order.Designs[0] = back.Design
	ask[wire.Opened](t, s, "open", wire.OpenAsk{ID: "c", FileName: "three.png", W: 200, H: 200, FileW: 200, FileH: 200, Space: "srgb", Ground: reduce.GroundAuto}, roundel(200, 9))
	third, _ := ask[wire.Revised](t, s, "revise", wire.ReviseAsk{Picked: p, Drawing: "c"}, nil)
	assert.Equal(t, []int{2, 1, 3}, revisionsOf(third.Design))
	assert.Contains(t, third.Words, "Nothing that is drawn changed; all you had set carried over.")
	assert.Zero(t, third.Places)
}

func revisionsOf(d sizing.Design) (all []int) {
	for _, ref := range d.Drawings {
		all = append(all, ref.Revision)
	}
	return all
}

// A line by hand that lies where nothing is drawn any more is not kept unseen.
func TestALineByHandOffTheNewDrawingIsLost(t *testing.T) {
	s := NewSession()
	_, p := opening(t, s, 200, 9)
	d := &p.Project.Order.Designs[0]
	d.Recipes = []sizing.Recipe{{Kind: sizing.EraseLine, Points: [][2]float64{{0.02, 0.02}, {0.06, 0.06}}}, {Kind: sizing.DrawLine, Points: [][2]float64{{0.5, 0.5}, {0.6, 0.6}}}}
	ask[wire.Opened](t, s, "open", wire.OpenAsk{ID: "b", FileName: "two.png", W: 200, H: 200, FileW: 200, FileH: 200, Space: "srgb", Ground: reduce.GroundAuto}, roundel(200, 9))
	r, _ := ask[wire.Revised](t, s, "revise", wire.ReviseAsk{Picked: p, Drawing: "b"}, nil)
	assert.Equal(t, []string{"A line erased by hand: nothing is drawn at its place any more."}, r.Lost)
	assert.Equal(t, d.Recipes[1:], r.Design.Recipes)
}
