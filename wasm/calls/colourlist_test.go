package calls

import (
	"encoding/json"
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/reduce/colour"
	"badgewright/reduce/colourlist"
	"badgewright/sizing"
	"badgewright/wasm/wire"
)

func skerryList(t *testing.T, name string) []byte {
	t.Helper()
	b, err := os.ReadFile("../../testdata/colourlists/" + name)
	require.NoError(t, err)
	return b
}

func readList(t *testing.T, s *Session, text string) wire.ColourListRead {
	t.Helper()
	r, _ := ask[wire.ColourListRead](t, s, "colourlist", wire.ColourListAsk{FileName: "a.csv"}, []byte(text))
	return r
}

// The roundel is red (200, 40, 40) and cream (240, 220, 180).
func TestEachFlatFindsItsNearestCodes(t *testing.T) {
	s := NewSession()
	_, p := opening(t, s, 300, 8)
	l, _ := ask[wire.ColourListRead](t, s, "colourlist", wire.ColourListAsk{FileName: "skerry.csv"}, skerryList(t, "skerry.csv"))
	assert.Equal(t, "50 colours read.", l.Words)
	c, _ := ask[wire.Codes](t, s, "codes", wire.CodesAsk{Picked: p, List: l.List}, nil)
	require.Len(t, c.Rows, 2, "metal takes no code")
	for _, r := range c.Rows {
		require.Len(t, r.Nearest, 3)
		for i, m := range r.Nearest {
			assert.InDelta(t, colour.CIEDE2000(r.RGB.Lab(), m.Entry.CIELAB()), m.DE, 1e-12)
			if i > 0 {
				assert.GreaterOrEqual(t, m.DE, r.Nearest[i-1].DE)
			}
		}
		assert.Nil(t, r.Taken)
	}
	assert.Empty(t, c.Shared)
	assert.Empty(t, c.Apart)
}

func TestTwoFlatsOnOneCodeAreSaidAndPartedAtTheLeast(t *testing.T) {
	s := NewSession()
	_, p := opening(t, s, 300, 8)
	l := readList(t, s, "code,hex\nA,#d08070\nB,#202020\nC,#206020\n")
	c, _ := ask[wire.Codes](t, s, "codes", wire.CodesAsk{Picked: p, List: l.List}, nil)
	require.Len(t, c.Shared, 1)
	assert.Equal(t, "A", c.Shared[0].Code)
	assert.Len(t, c.Shared[0].Flats, 2)
	assert.Contains(t, c.Shared[0].Words, "one and the same enamel")
	require.Len(t, c.Apart, 2)
	assert.NotEqual(t, c.Apart[0].Match.Entry.Code, c.Apart[1].Match.Entry.Code)
	least := 1e9
	for i := range 3 {
		for k := range 3 {
			if i != k {
				least = min(least, colour.CIEDE2000(c.Rows[0].RGB.Lab(), l.List.Entries[i].CIELAB())+colour.CIEDE2000(c.Rows[1].RGB.Lab(), l.List.Entries[k].CIELAB()))
			}
		}
	}
	assert.InDelta(t, least, c.Apart[0].Match.DE+c.Apart[1].Match.DE, 1e-9)

	one := readList(t, s, "code,hex\nA,#d08070\n")
	c, _ = ask[wire.Codes](t, s, "codes", wire.CodesAsk{Picked: p, List: one.List}, nil)
	assert.Empty(t, c.Apart)
	assert.Contains(t, c.ApartWords, "too few")
}

func TestATakenCodeStaysAndIsHeldAgainstTheDrawing(t *testing.T) {
	s := NewSession()
	_, p := opening(t, s, 300, 8)
	l := readList(t, s, "code,name,hex\nA,Clay,#d08070\nB,Soot,#202020\nC,Pine,#206020\n")
	d := &p.Project.Order.Designs[0]
	first := mustCodes(t, s, p, l).Rows[0]
	pine := l.List.Entries[2].RGB
	d.Versions[0].Colours = []sizing.VersionColour{{Flat: first.Flat, Code: "C", Named: "Pine", RGB: &pine}}

	c := mustCodes(t, s, p, l)
	require.NotNil(t, c.Rows[0].Taken)
	assert.Equal(t, first.RGB, c.Rows[0].RGB, "codes are held against the colour drawn")
	assert.True(t, c.Rows[0].Taken.Recoloured)
	assert.Equal(t, colourlist.Another, c.Rows[0].Taken.Match.Distance)
	assert.Empty(t, c.Shared, "the other flat has A to itself")

	check, _ := ask[wire.Check](t, s, "check", wire.CheckAsk{Picked: p}, nil)
	for _, f := range check.Flats.Flats {
		if f.ID == first.Flat {
			assert.Equal(t, pine, f.RGB)
			assert.Equal(t, colour.Name(pine), f.Name)
			assert.Equal(t, first.RGB, check.Flats.Codes[0].Drawn)
		}
	}

	d.Versions[0].Colours[0].Code = "Z"
	c = mustCodes(t, s, p, l)
	assert.Nil(t, c.Rows[0].Taken.Match, "this list has no Z")
}

func mustCodes(t *testing.T, s *Session, p wire.Picked, l wire.ColourListRead) wire.Codes {
	t.Helper()
	c, _ := ask[wire.Codes](t, s, "codes", wire.CodesAsk{Picked: p, List: l.List}, nil)
	return c
}

func TestANotedCodeChangesNoColour(t *testing.T) {
	s := NewSession()
	_, p := opening(t, s, 300, 8)
	_, before := ask[wire.Picture](t, s, "picture", wire.PictureAsk{Picked: p, View: wire.ViewStruck, LongSide: 200}, nil)
	was, _ := ask[wire.Check](t, s, "check", wire.CheckAsk{Picked: p}, nil)
	v := &p.Project.Order.Designs[0].Versions[0]
	v.Colours = []sizing.VersionColour{{Flat: was.Flats.Flats[0].ID, Code: "SL-32", Named: "Signal red"}}
	_, after := ask[wire.Picture](t, s, "picture", wire.PictureAsk{Picked: p, View: wire.ViewStruck, LongSide: 200}, nil)
	assert.Equal(t, before, after)
	is, _ := ask[wire.Check](t, s, "check", wire.CheckAsk{Picked: p}, nil)
	require.Len(t, is.Flats.Codes, 1)
	assert.Equal(t, wire.FlatCode{Flat: was.Flats.Flats[0].ID, Code: "SL-32", Named: "Signal red", Drawn: was.Flats.Flats[0].RGB}, is.Flats.Codes[0])
	assert.Equal(t, was.Flats.Flats, is.Flats.Flats)

	metal := is.Flats.Flats[len(is.Flats.Flats)-1]
	for _, f := range is.Flats.Flats {
		if f.Role == reduce.Metal {
			metal = f
		}
	}
	v.Colours[0].Flat = metal.ID
	is, _ = ask[wire.Check](t, s, "check", wire.CheckAsk{Picked: p}, nil)
	assert.Empty(t, is.Flats.Codes, "metal takes the plating, no code")
}

func TestANameGivenByHandOutlivesACodesColour(t *testing.T) {
	s := NewSession()
	_, p := opening(t, s, 300, 8)
	d := &p.Project.Order.Designs[0]
	was, _ := ask[wire.Check](t, s, "check", wire.CheckAsk{Picked: p}, nil)
	id := was.Flats.Flats[0].ID
	d.Edits = []reduce.Edit{{Op: reduce.SetName, Flat: id, Name: "tower"}}
	d.Versions[0].Colours = []sizing.VersionColour{{Flat: id, RGB: &colour.RGB8{G: 120}}}
	is, _ := ask[wire.Check](t, s, "check", wire.CheckAsk{Picked: p}, nil)
	for _, f := range is.Flats.Flats {
		if f.ID == id {
			assert.Equal(t, "tower", f.Name)
			assert.Equal(t, colour.RGB8{G: 120}, f.RGB)
		}
	}
}

func TestAListIsReadInWords(t *testing.T) {
	s := NewSession()
	nasty, _ := ask[wire.ColourListRead](t, s, "colourlist", wire.ColourListAsk{FileName: "nasty.csv"}, skerryList(t, "nasty.csv"))
	assert.Equal(t, "11 colours read, 11 lines left out.", nasty.Words)
	asks, _ := ask[wire.ColourListRead](t, s, "colourlist", wire.ColourListAsk{}, skerryList(t, "no-white.csv"))
	assert.True(t, asks.NeedsWhite)
	assert.NotNil(t, asks.List.Entries)
	told, _ := ask[wire.ColourListRead](t, s, "colourlist", wire.ColourListAsk{White: colourlist.D50}, skerryList(t, "no-white.csv"))
	assert.Equal(t, "3 colours read.", told.Words)
	none := readList(t, s, "code,hex\n1,red\n")
	assert.Equal(t, "No line of it could be read.", none.Words)

	text, _ := json.Marshal(wire.ColourListAsk{})
	_, err := s.Do("colourlist", text, Job{Bytes: skerryList(t, "no-colours.csv")})
	f := FailureOf(err)
	assert.Equal(t, wire.Refused, f.Kind)
	assert.Contains(t, f.Do, "code,name,hex")
}
