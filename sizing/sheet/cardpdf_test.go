package sheet

import (
	"bytes"
	"encoding/base64"
	"image"
	"image/color"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce/colour"
	"badgewright/sizing/card"
	"badgewright/sizing/shop"
	"badgewright/sizing/unit"
)

func cardPaper(t *testing.T, c card.BackingCard) CardPaper {
	t.Helper()
	_, shapes := drawn(t, 10, "....", ".##.", ".##.", "....")
	pin := CardPin(shapes)
	pin.Pierced, pin.No = []card.CardPlace{{X: shapes.Width / 2, Y: shapes.Height / 2}}, []int{1}
	l, err := card.Lay(&c, &pin, someFonts(t))
	require.NoError(t, err)
	m, err := card.Impose(l, c.Sheet)
	require.NoError(t, err)
	return CardPaper{Card: &c, Laid: l, Imposed: m, Shapes: shapes}
}

// The reader shares no code with the writer. A point is 1/72 inch (ISO 32000-1,
// 8.3.2.3); ID-1 is 85.60 by 53.98 mm (ISO/IEC 7810).
func TestACardsPDFIsAtTrueSize(t *testing.T) {
	ground := colour.RGB8{R: 240, G: 220, B: 180}
	c := card.BackingCard{Kind: card.Bank, Across: true, Ground: &ground, Texts: []card.CardText{{Words: "Skerry Light", Points: 10, X: 40, Y: 48}}}
	p := cardPaper(t, c)
	file, notes, err := p.PDF(Meta{Title: "card", Date: someday}, someFonts(t))
	require.NoError(t, err)
	assert.Empty(t, notes)
	r := readBack(t, file)
	box := r.Page(1).V.Key("TrimBox")
	side := func(i int) float64 { return (box.Index(i+2).Float64() - box.Index(i).Float64()) / 72 * 25.4 }
	assert.InDelta(t, 85.60, side(0), 0.01)
	assert.InDelta(t, 53.98, side(1), 0.01)
	assert.Contains(t, textOf(t, r, 1), "Skerry Light")
	at := p.Imposed.Places[0]
	b := filled(r, 1)[ground]
	for i, want := range []unit.MM{at.X - 3, at.Y - 3, at.X + 85.60 + 3, at.Y + 53.98 + 3} {
		assert.InDelta(t, float64(want), []float64{b.x0, b.y0, b.x1, b.y1}[i], 0.02, "the ground runs 3 mm over the cut")
	}
}

func TestAPictureIsInTheFileOnce(t *testing.T) {
	m := image.NewNRGBA(image.Rect(0, 0, 60, 60))
	for i := range m.Pix {
		m.Pix[i] = byte(i * 31)
	}
	m.SetNRGBA(0, 0, color.NRGBA{255, 0, 0, 255})
	data, err := shop.PNG(m)
	require.NoError(t, err)
	c := card.BackingCard{Sheet: card.CardSheet{Paper: card.A4}, Picture: &card.CardArt{Type: "image/png", Data: base64.StdEncoding.EncodeToString(data), W: 60, H: 60, X: 5, Y: 50, Wide: 20}}
	p := cardPaper(t, c)
	require.Greater(t, len(p.Imposed.Places), 4)
	file, _, err := p.PDF(Meta{Title: "cards", Date: someday}, someFonts(t))
	require.NoError(t, err)
	assert.Equal(t, 2, bytes.Count(file, []byte("/Subtype /Image")), "its colours and what is clear in it")
	again, _, err := cardPaper(t, c).PDF(Meta{Title: "cards", Date: someday}, someFonts(t))
	require.NoError(t, err)
	assert.Equal(t, file, again, "the same every time")
	p.Card.Picture.Data = "R0lGODlh" // a GIF's first letters
	_, _, err = p.PDF(Meta{Date: someday}, someFonts(t))
	assert.ErrorContains(t, err, "damaged")
}

// A line's curves reach as far as the document sets it.
func TestCurvesAndTypeAreOfOneWidth(t *testing.T) {
	fonts := someFonts(t)
	d := NewDocument(Meta{Date: someday}, fonts)
	d.AddPage(A4.Size())
	for _, words := range []string{"Skerry Light", "Φάρος", "灯台", ""} {
		l := fonts.Set(words, 12, false)
		assert.InDelta(t, float64(d.Width(Type{Size: 12}, words)), float64(l.W), 0.02, words)
	}
	l := fonts.Set("Hg", 72, false)
	assert.InDelta(t, 0.714*25.4, float64(l.Up), 1.5, "capitals of an inch of type")
	assert.Greater(t, l.Down, unit.MM(3))
	assert.Zero(t, fonts.Set("HH", 12, false).Down)
}
