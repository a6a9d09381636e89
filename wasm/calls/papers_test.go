package calls

import (
	"bytes"
	"encoding/base64"
	"encoding/csv"
	"encoding/json"
	"image"
	"image/png"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/sizing"
	board "badgewright/sizing/card"
	"badgewright/sizing/sheet"
	"badgewright/sizing/shop"
	"badgewright/wasm/wire"
)

// askedOf is a roundel at 30 mm as the papers speak of it, and its key.
func askedOf(t *testing.T, s *Session) (sheet.Asked, string) {
	t.Helper()
	_, p := opening(t, s, 300, 8)
	d := &p.Project.Order.Designs[0]
	d.Size = sizing.Size{MM: 30, By: sizing.ByLongest}
	d.Posts = 2
	d.Versions[0].Quantity = 150
	key := handing(t, s, p)
	a, _ := ask[sheet.Asked](t, s, "asked", wire.AskedAsk{Of: key}, nil)
	return a, key
}

func TestAVersionIsAskedForInWords(t *testing.T) {
	s := NewSession()
	a, key := askedOf(t, s)
	assert.InDelta(t, 30, float64(max(a.W, a.H)), 0.01)
	assert.Len(t, a.Posts, 2)
	assert.Equal(t, 2, a.Item.Enamels)
	text, _ := ask[sheet.Inquiry](t, s, "inquiry", wire.InquiryAsk{Asked: []sheet.Asked{a}, Plan: wire.PapersPlan{NeedBy: "2027-05-14"}}, nil)
	for _, want := range []string{"30 mm", "150 pieces", "2 posts with clutches", "2 colours", "Fri 14 May 2027"} {
		assert.Contains(t, text.Body, want)
	}
	_, err := s.Do("inquiry", []byte(`{"asked":[],"plan":{},"files":[]}`), Job{})
	assert.Error(t, err)

	l, file := ask[wire.PaperFile](t, s, "list", wire.ListAsk{Kind: wire.ListColours, Name: "Sea roundel", Asked: []sheet.Asked{a}}, nil)
	assert.Equal(t, "sea-roundel-colours.csv", l.FileName)
	rows, err := csv.NewReader(bytes.NewReader(file[3:])).ReadAll()
	require.NoError(t, err)
	assert.Len(t, rows, l.Rows+1)
	for _, odd := range []string{`{"kind":"quote","name":"","units":""}`, `{"kind":"left","name":"","units":""}`, `{"kind":"odd","name":"","units":""}`} {
		_, err := s.Do("list", []byte(odd), Job{})
		assert.Error(t, err)
	}
	_ = key
}

func TestACardIsLaidOutAndWritten(t *testing.T) {
	s := NewSession()
	a, key := askedOf(t, s)
	_, err := s.Do("card", []byte(`{"of":"`+key+`"}`), Job{})
	assert.ErrorIs(t, err, errNoFonts)
	withFonts(t, s)
	laid, _ := ask[wire.CardLaid](t, s, "card", wire.CardAsk{Of: key}, nil)
	require.Len(t, laid.Laid.Holes, 2)
	h := laid.Laid.Holes
	// Post 1 is the left one from behind, so the right one from the front.
	assert.Less(t, h[0].X, h[1].X)
	assert.Equal(t, []int{2, 1}, []int{h[0].No, h[1].No})
	assert.InDelta(t, float64(laid.Laid.Pin.X+a.W/2), float64(h[0].X+h[1].X)/2, 0.6, "the roundel is level")
	assert.Empty(t, laid.Laid.Warnings)

	svg, file := ask[wire.PaperFile](t, s, "cardfile", wire.CardFileAsk{Of: key, Card: laid.Card, Today: "2027-03-01"}, nil)
	assert.Equal(t, "image/svg+xml", svg.Type)
	assert.True(t, bytes.HasPrefix(file, []byte("<svg ")))
	pdf, file := ask[wire.PaperFile](t, s, "cardfile", wire.CardFileAsk{Of: key, Card: laid.Card, PDF: true, Today: "2027-03-01"}, nil)
	assert.Equal(t, "sea-roundel-card.pdf", pdf.FileName)
	assert.True(t, bytes.HasPrefix(file, []byte("%PDF-")))
}

func TestACardTooLargeForItsPaperStaysOnThePage(t *testing.T) {
	s := NewSession()
	_, key := askedOf(t, s)
	withFonts(t, s)
	c := board.BackingCard{Kind: board.Free, W: 200, H: 200, Sheet: board.CardSheet{Paper: board.A4}}
	laid, _ := ask[wire.CardLaid](t, s, "card", wire.CardAsk{Of: key, Card: &c}, nil)
	assert.Contains(t, laid.Sheet.Says, "does not go on A4")
	text, err := json.Marshal(wire.CardFileAsk{Of: key, Card: c, Today: "2027-03-01"})
	require.NoError(t, err)
	_, err = s.Do("cardfile", text, Job{})
	assert.ErrorContains(t, err, "does not go on A4")
}

func TestAPictureForACardStaysSmall(t *testing.T) {
	s := NewSession()
	w, h := 2000, 500
	pix := make([]byte, 4*w*h)
	for i := range pix {
		pix[i] = byte(i*i>>7 | 1) // too busy for a small PNG
		if i%4 == 3 {
			pix[i] = 255
		}
	}
	p, file := ask[wire.CardPicture](t, s, "cardpicture", wire.CardPictureAsk{W: w, H: h}, pix)
	assert.Equal(t, []int{1600, 400}, []int{p.W, p.H})
	m, kind, err := image.Decode(bytes.NewReader(file))
	require.NoError(t, err)
	assert.Equal(t, p.Type, "image/"+kind)
	assert.Equal(t, p.W, m.Bounds().Dx())
	c := board.CardArt{Data: base64.StdEncoding.EncodeToString(file)}
	back, err := c.File()
	require.NoError(t, err)
	assert.Equal(t, file, back)
	_, err = s.Do("cardpicture", []byte(`{"w":9,"h":9}`), Job{Bytes: []byte{1}})
	assert.Error(t, err)
}

func TestAPinsPictures(t *testing.T) {
	s := NewSession()
	pix := bytes.Repeat([]byte{200, 10, 10, 255}, 20*10)
	cut, file := ask[wire.PNGFile](t, s, "shoppicture", wire.ShopPictureAsk{W: 20, H: 10, Name: "Buoy, red"}, pix)
	assert.Equal(t, "buoy-red-cut-out-20px.png", cut.FileName)
	m, err := png.Decode(bytes.NewReader(file))
	require.NoError(t, err)
	assert.Equal(t, 20, m.Bounds().Dx())
	g := shop.UsualGround()
	on, _ := ask[wire.PNGFile](t, s, "shoppicture", wire.ShopPictureAsk{W: 20, H: 10, Name: "Buoy", Ground: &g}, pix)
	assert.Equal(t, on.W, on.H)
	assert.True(t, strings.Contains(on.FileName, "shop"))
}
