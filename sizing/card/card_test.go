package card

import (
	"encoding/csv"
	"encoding/xml"
	"io"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce/colour"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// blocks sets every letter as a block: 0.6 of its size wide, 0.7 high.
type blocks struct{}

func (blocks) Set(words string, points float64, _ bool) Line {
	mm := unit.MM(points * 25.4 / 72)
	return Line{D: "M0 0h1v1z", W: 0.6 * mm * unit.MM(len([]rune(words))), Up: 0.7 * mm, Down: 0.2 * mm}
}

// square is a pin of 30 by 20 mm with a hole of 4 by 4 in its lower left corner region.
func square(pierced ...CardPlace) *Pin {
	p := &Pin{Name: "Buoy", W: 30, H: 20, D: "M0 0H30V20H0Z", Pierced: pierced,
		Loops: [][]CardPlace{{{0, 0}, {30, 0}, {30, 20}, {0, 20}}, {{4, 12}, {8, 12}, {8, 16}, {4, 16}}}}
	for i := range pierced {
		p.No = append(p.No, len(pierced)-i)
	}
	return p
}

func laid(t *testing.T, c BackingCard, p *Pin) *LaidCard {
	t.Helper()
	l, err := Lay(&c, p, blocks{})
	require.NoError(t, err)
	return l
}

func said(l *LaidCard, words string) bool {
	for _, w := range l.Warnings {
		if strings.Contains(w.What, words) {
			return true
		}
	}
	return false
}

// ISO/IEC 7810 (ID-1: 85.60 by 53.98 mm, corners 3.18 mm), from the table of
// sizes that true-size matching is checked with.
func TestTheBankCardIsID1(t *testing.T) {
	f, err := os.Open("../../testdata/reference/calibration_objects.csv")
	require.NoError(t, err)
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	found := false
	for _, row := range rows {
		if !strings.Contains(strings.Join(row, " "), "ID-1") {
			continue
		}
		found = true
		line := strings.Join(row, ",")
		c := BackingCard{Kind: Bank, Across: true}
		w, h := c.Size()
		assert.Contains(t, line, strconv.FormatFloat(float64(w), 'f', 2, 64))
		assert.Contains(t, line, strconv.FormatFloat(float64(h), 'f', 2, 64))
	}
	assert.True(t, found)
	assert.InDelta(t, 3.18, float64(BankCorner), 0.30)
}

func TestSizesEitherWayUp(t *testing.T) {
	for _, k := range Kinds() {
		lying, up := BackingCard{Kind: k.Kind, Across: true}, BackingCard{Kind: k.Kind}
		w, h := lying.Size()
		assert.Greater(t, w, h)
		uw, uh := up.Size()
		assert.Equal(t, []unit.MM{h, w}, []unit.MM{uw, uh})
	}
	in := BackingCard{Kind: BusinessInches, Across: true}
	w, h := in.Size()
	assert.InDelta(t, 88.9, float64(w), 1e-9)
	assert.InDelta(t, 50.8, float64(h), 1e-9)
}

// Two posts at 8 and 22 mm from the left of the front, 6 mm down. Seen from
// behind, post 1 is the one at 30-22 = 8 mm from the left, which is the right one
// from the front. By hand: the pin's middle sits at (40, 30), so its upper left
// is (25, 20) and the holes are at x = 33 (No 2) and 47 (No 1), y = 26.
func TestHolesAreMirroredRightly(t *testing.T) {
	c := BackingCard{Across: true, Pin: &[2]unit.MM{40, 30}}
	p := square(CardPlace{8, 6}, CardPlace{22, 6})
	p.No = []int{2, 1}
	l := laid(t, c, p)
	assert.Equal(t, []CardHole{{33, 26, UsualHole, 2}, {47, 26, UsualHole, 1}}, l.Holes)
	assert.Empty(t, l.Warnings)
}

func TestWhatPiercesTheCard(t *testing.T) {
	posts := []sizing.Post{{X: 15, Y: 6}}
	assert.Equal(t, []CardPlace{{15, 6}}, Pierces(sizing.PostAndClutch, posts, 0, false))
	assert.Empty(t, Pierces(sizing.MagnetBack, posts, 0, false))
	assert.Equal(t, []CardPlace{{8, 6}, {22, 6}}, Pierces(sizing.PinBar, posts, 20, false))
	assert.Equal(t, []CardPlace{{15, -1}, {15, 13}}, Pierces(sizing.PinBar, posts, 20, true))
}

func TestThePinKeepsClearOfTheHangHoleAndTheWords(t *testing.T) {
	c := Starting("Buoy")
	l := laid(t, c, square(CardPlace{15, 6}))
	assert.Empty(t, l.Warnings, "a starting card has nothing to mend")
	assert.InDelta(t, float64(l.W-30)/2, float64(l.Pin.X), 1e-9)
	assert.Greater(t, l.Pin.Y, l.Hang.Down+l.Hang.H/2)
	assert.Less(t, l.Pin.Y+20, unit.MM(l.Texts[0].Box[1]))
}

func TestOnACardThatLiesThePinStandsBesideTheWords(t *testing.T) {
	c := Starting("Buoy")
	c.Kind, c.Across = Bank, true
	c.Texts[0].X, c.Texts[0].Y = 64, 28
	l := laid(t, c, square(CardPlace{15, 6}))
	assert.Empty(t, l.Warnings)
	assert.InDelta(t, (85.60/2-30)/2, float64(l.Pin.X), 1e-9)
	assert.InDelta(t, (53.98-20)/2, float64(l.Pin.Y), 1e-9)
}

func TestWhatWouldSpoilIsSaid(t *testing.T) {
	at := func(x, y unit.MM) *[2]unit.MM { return &[2]unit.MM{x, y} }
	line := func(x, y unit.MM, points float64) []CardText {
		return []CardText{{Words: "Skerry", Points: points, X: x, Y: y}}
	}
	wide := unit.MM(62)
	for _, k := range []struct {
		name, words string
		card        BackingCard
	}{
		{"text under the pin", "lies under the pin", BackingCard{Across: true, Pin: at(40, 27), Texts: line(40, 27, 8)}},
		{"text in the margin", "safe margin", BackingCard{Across: true, Pin: at(40, 20), Texts: line(40, 54, 8)}},
		{"small text", "points", BackingCard{Across: true, Pin: at(40, 20), Texts: line(40, 45, 4)}},
		{"text over the hang hole", "runs over the hole to hang by", BackingCard{Pin: at(27.5, 50), Hang: CardHang{Kind: SlotHang}, Texts: line(27.5, 8, 8)}},
		{"hole near the edge", "from the edge; the card may tear", BackingCard{Across: true, Pin: at(40, 7)}},
		{"hole off the card", "lies off the card", BackingCard{Across: true, Pin: at(40, -2)}},
		{"pin over the edge", "stands out over the edge", BackingCard{Across: true, Pin: at(10, 30)}},
		{"pin larger", "larger than the card", BackingCard{Kind: Free, W: 26, H: 60}},
		{"pin over the hang hole", "covers the hole to hang by", BackingCard{Pin: at(27.5, 16), Hang: CardHang{Kind: RoundHang}}},
		{"hang hole near the edge", "may tear there", BackingCard{Hang: CardHang{Kind: RoundHang, Down: 5, W: 6}}},
		{"picture under the pin", "Part of your picture", BackingCard{Across: true, Pin: at(40, 27), Picture: &CardArt{W: 600, H: 600, X: 10, Y: 10, Wide: 20}}},
		{"coarse picture", "will be seen", BackingCard{Across: true, Pin: at(60, 27), Picture: &CardArt{W: 60, H: 60, X: 10, Y: 10, Wide: 20}}},
		{"picture ends at the cut", "ends at the cut", BackingCard{Pin: at(27.5, 20), Picture: &CardArt{W: 900, H: 300, X: 0, Y: 60, Wide: 55}}},
		{"picture behind all", "not seen", BackingCard{Pin: at(27.5, 40), Picture: &CardArt{W: 900, H: 1350, X: -3.5, Y: -1, Wide: wide}}},
	} {
		l := laid(t, k.card, square(CardPlace{15, 6}))
		assert.True(t, said(l, k.words), "%s: %v", k.name, l.Warnings)
	}
}

// The nearest cases that have nothing to mend.
func TestWhatIsFineIsNotSpokenOf(t *testing.T) {
	at := [2]unit.MM{40, 25}
	full := &CardArt{W: 1100, H: 740, X: -3, Y: -3, Wide: 91}
	for name, c := range map[string]BackingCard{
		"text below the pin":    {Across: true, Pin: &at, Texts: []CardText{{Words: "Skerry", Points: 8, X: 40, Y: 40}}},
		"text in the cut-out":   {Across: true, Pin: &at, Texts: []CardText{{Words: ".", Points: 5, X: 31, Y: 30}}},
		"a hole three mm away":  {Across: true, Pin: &[2]unit.MM{40, 13.8}},
		"no hole for a magnet":  {Across: true, Pin: &[2]unit.MM{40, 13.8}},
		"picture over the cuts": {Across: true, Pin: &at, Picture: full},
	} {
		for _, w := range laid(t, c, square(CardPlace{15, 6})).Warnings {
			assert.True(t, w.Note, "%s: %s", name, w.What)
		}
	}
}

func TestAFreeCardHasBounds(t *testing.T) {
	for _, c := range []BackingCard{
		{Kind: Free, W: 10, H: 50}, {Kind: Free, W: 50, H: 500}, {Hole: 9},
		{Hang: CardHang{Kind: RoundHang, W: 59}}, {Texts: make([]CardText, 30)}, {Texts: []CardText{{Words: "a", Points: 900}}},
		{Corner: 40}, {Picture: &CardArt{}}, {Sheet: CardSheet{Gutter: 99}},
	} {
		_, err := Lay(&c, square(), blocks{})
		assert.Error(t, err)
	}
}

// A4 is 210 by 297 mm (ISO 216), Letter 215.9 by 279.4 mm. By hand: marks of 4
// mm, 1 mm off a bleed of 3 mm, 4 mm of bare rim leave 186 by 273 mm, which hold
// three cards of 55 mm with 6 mm between (177 mm) and three of 85 (267 mm).
func TestCardsOnASheet(t *testing.T) {
	l := laid(t, BackingCard{}, square())
	m, err := Impose(l, CardSheet{Paper: A4})
	require.NoError(t, err)
	assert.Len(t, m.Places, 9)
	assert.InDelta(t, (210-177)/2.0, float64(m.Places[0].X), 1e-9)
	assert.InDelta(t, (297-267)/2.0, float64(m.Places[0].Y), 1e-9)
	assert.InDelta(t, 61, float64(m.Places[1].X-m.Places[0].X), 1e-9)
	assert.Len(t, m.Marks, 6*2+6*2)
	for _, k := range m.Marks {
		for _, p := range m.Places {
			b := boxOf(p.X, p.Y, l.W, l.H).grown(l.Bleed)
			assert.False(t, b.meets(box{k[0] - .01, k[1] - .01, k[2] + .01, k[3] + .01}), "a mark on print")
		}
		assert.True(t, box{k[0], k[1], k[2], k[3]}.within(box{4, 4, 206, 293}))
	}
	letter, err := Impose(laid(t, BackingCard{Across: true}, square()), CardSheet{Paper: Letter})
	require.NoError(t, err)
	assert.Len(t, letter.Places, 8, "two by four upright; on a sheet that lies two by three")
}

func TestOneCutBetweenCardsWithoutBleed(t *testing.T) {
	none := unit.MM(0)
	l := laid(t, BackingCard{Bleed: &none}, square())
	m, err := Impose(l, CardSheet{Paper: A4})
	require.NoError(t, err)
	assert.InDelta(t, 55, float64(m.Places[1].X-m.Places[0].X), 1e-9)
	assert.Len(t, m.Places, 10, "five by two on a sheet that lies")
	assert.Len(t, m.Marks, 6*2+3*2, "which share their cuts")
}

func TestACardTooLargeForPaperIsRefused(t *testing.T) {
	l := laid(t, BackingCard{Kind: Free, W: 200, H: 200}, square())
	_, err := Impose(l, CardSheet{Paper: A4})
	assert.ErrorContains(t, err, "does not go on A4")
	_, err = Impose(l, CardSheet{})
	assert.NoError(t, err)
}

// The SVG is well-formed (encoding/xml), at true size, and hostile words stay words.
func TestTheSVGIsPlainAndAtTrueSize(t *testing.T) {
	c := Starting(`</title><script>alert("1")</script>`)
	c.Kind, c.Corner, c.Ground = Bank, BankCorner, &colour.RGB8{R: 250, G: 240, B: 220}
	c.Picture = &CardArt{Type: `image/png" onload="x`, Data: `AQI="><script/>`, W: 400, H: 200, X: 8, Y: 60, Wide: 20}
	p := square(CardPlace{15, 6})
	l := laid(t, c, p)
	m, err := Impose(l, CardSheet{Paper: A4})
	require.NoError(t, err)
	file := string(SVG(&c, l, m, p.Name))
	d := xml.NewDecoder(strings.NewReader(file))
	uses := 0
	for {
		tok, err := d.Token()
		if err == io.EOF {
			break
		}
		require.NoError(t, err)
		if e, ok := tok.(xml.StartElement); ok {
			assert.NotEqual(t, "script", e.Name.Local)
			if e.Name.Local == "use" {
				uses++
			}
			for _, a := range e.Attr {
				assert.False(t, strings.HasPrefix(a.Name.Local, "on"))
			}
		}
	}
	assert.Equal(t, len(m.Places), uses)
	size := regexp.MustCompile(`width="([\d.]+)mm" height="([\d.]+)mm" viewBox="0 0 ([\d.]+) ([\d.]+)"`).FindStringSubmatch(file)
	require.Len(t, size, 5)
	assert.Equal(t, size[1:3], size[3:5], "one unit is one mm")
}
