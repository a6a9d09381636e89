package sheet

import (
	"image"
	"image/color"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce/colour"
	"badgewright/sizing/unit"
)

type unitMM = unit.MM

func TestPagesHaveTheirFormats(t *testing.T) {
	d := NewDocument(Meta{Title: "Φάρος", Language: "el", Date: someday}, someFonts(t))
	for _, f := range []Format{A4, Letter, "tabloid"} {
		d.AddPage(f.Size())
	}
	d.AddPage(85.6, 54)
	d.Trim(3, 4, 79.6, 46)
	file, err := d.Bytes()
	require.NoError(t, err)
	r := readBack(t, file)
	require.Equal(t, 4, r.NumPage())
	// ISO 216 and ANSI/ASME Y14.1 in mm; cards as ISO/IEC 7810, ID-1.
	for i, mm := range [][2]float64{{210, 297}, {215.9, 279.4}, {210, 297}, {85.6, 54}} {
		box := r.Page(i + 1).V.Key("MediaBox")
		if box.IsNull() {
			box = r.Page(i + 1).V.Key("Parent").Key("MediaBox")
		}
		assert.InDelta(t, mm[0], box.Index(2).Float64()/72*25.4, 0.005)
		assert.InDelta(t, mm[1], box.Index(3).Float64()/72*25.4, 0.005)
	}
	trim := r.Page(4).V.Key("TrimBox")
	assert.InDelta(t, 3, trim.Index(0).Float64()/72*25.4, 0.005)
	assert.InDelta(t, 54-4-46, trim.Index(1).Float64()/72*25.4, 0.005)
	assert.Equal(t, "el", r.Trailer().Key("Root").Key("Lang").RawString())
	assert.Equal(t, "Φάρος", r.Trailer().Key("Info").Key("Title").Text())
	assert.Equal(t, "D:20260302093000", r.Trailer().Key("Info").Key("CreationDate").RawString())
}

// many draws with everything there is.
func many(t *testing.T) []byte {
	d := begun(t)
	grey, thin := colour.RGB8{R: 9, G: 9, B: 9}, Pen{Width: 0.2, Dash: []unit.MM{1, 2}}
	d.Line(1, 2, 3, 4, thin)
	d.Rect(1, 2, 3, 4, &grey, &thin)
	d.Circle(9, 9, 3, nil, &thin)
	d.Polygon([][2]unit.MM{{1, 1}, {5, 1}, {1, 5}}, &grey, nil)
	d.Layer("Ebene", func() { d.Clip(1, 1, 9, 9, func() { d.Block(1, 1, 30, Type{Size: 9}, "one two\u00a0three Φ灯") }) })
	for i := range 3 {
		m := image.NewNRGBA(image.Rect(0, 0, 8, 5))
		m.Set(1, 1, color.NRGBA{uint8(80 * i), 1, 2, 200})
		require.NoError(t, d.Picture(20, 20+unit.MM(10*i), 8, 5, m))
	}
	file, err := d.Bytes()
	require.NoError(t, err)
	return file
}

func TestTheSameDrawingGivesTheSameBytes(t *testing.T) {
	first := many(t)
	times := 8
	if testing.Short() {
		times = 2
	}
	for range times {
		require.Equal(t, first, many(t))
	}
	readBack(t, first)
}

func TestALanguageThatIsNoneIsEnglish(t *testing.T) {
	assert.Equal(t, "pt-BR", languageOr("pt-BR"))
	for _, odd := range []string{"", ") /AA <<", "日本"} {
		assert.Equal(t, "en", languageOr(odd))
	}
}
