package sheet

import (
	"crypto/sha256"
	"fmt"
	"math"
	"strings"
	"testing"
	"unicode/utf16"

	"github.com/ledongthuc/pdf"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/reduce/colour"
	"badgewright/sizing"
	"badgewright/sizing/caution"
	"badgewright/sizing/fastener"
	"badgewright/sizing/unit"
)

// keepsakeSpec is a spec of the keepsake, 12 mm wide and 7 mm high.
func keepsakeSpec(t require.TestingT) Spec {
	b, sh := drawn(t, 12, keepsake...)
	design := &sizing.Design{
		Name: "Skerry Light", Size: sizing.Size{MM: 12, By: sizing.ByWidth}, Making: sizing.Struck, Fill: sizing.Hard, Base: sizing.Brass,
		Thickness: 1.5, Limits: sizing.DefaultLimits(sizing.Struck, sizing.Hard),
		Back: sizing.Back{Stamp: &sizing.Stamp{Lines: []string{"SKERRY"}, Raised: true}},
	}
	version := &sizing.Version{Name: "Night", Quantity: 150, Colours: []sizing.VersionColour{{Flat: 10, Code: "K 17", Named: "Signal red", Finish: sizing.Glitter}}}
	back := &fastener.Advice{Posts: []sizing.Post{{X: 3, Y: 3}, {X: 9.5, Y: 2.5}}, Chosen: 2, Pad: 3, Clutch: 5, Weight: 1.25}
	posts := []AskedPlace{{No: 2}, {No: 1}}
	spots := []sizing.Finding{{Kind: sizing.ThinLine, Flat: 12, X: 30, Y: 30, Thinnest: 0.17, Limit: 0.25, Verdict: sizing.Fails, Count: 1}}
	return Spec{
		Asked: Ask(Source{Badge: b, Design: design, Version: version, Plating: "gold", Back: back, Posts: posts, Spots: spots, CutOuts: 1}),
		Badge: b, Shapes: sh, Metal: colour.RGB8{R: 217, G: 171, B: 74}, Back: back,
		Versions: []SpecVersion{{Name: "Day", Plating: "silver", Quantity: 100}, {Name: "Night", Plating: "gold", Quantity: 150, This: true}},
		Cautions: []caution.Caution{{Says: "The post is sharp.", Do: "Say so.", Rules: []caution.Rule{{Place: "US", Clause: "16 CFR 1500.48", What: "sharp points", Value: "8", Unit: "years"}}}},
		Drawing:  "skerry.png", Date: "2026-03-02", Format: A4,
	}
}

func printed(t require.TestingT, s Spec) (*pdf.Reader, Print) {
	p, err := s.Print(someFonts(t))
	require.NoError(t, err)
	return readBack(t, p.File), p
}

func TestTheFirstPageIsAllADrafterNeeds(t *testing.T) {
	s := keepsakeSpec(t)
	r, p := printed(t, s)
	assert.Equal(t, r.NumPage(), p.Pages)
	first := strings.Join(lines(textsOf(t, r, 1)), " ")
	for _, words := range []string{
		"Skerry Light", "Version: Night", "2026-03-02", "Sheet 1 of 2",
		"red", "#c81e28", "K 17 Signal red", "glitter", "blue", "#4682b4", "nearest", "gold: all metal",
		"12 mm wide, 7 mm high", "the width: 12 mm (0.47 in)", "1.5 mm", "struck, of brass", "hard enamel", "1 cut-out right through",
		"one piece, no chain", "2 posts with clutches",
		// Seen from behind, the post at 9.5 mm is 12 - 9.5 from the left.
		"1: 2.5 mm from the left, 2.5 mm from the top.", "2: 9 mm from the left, 3 mm from the top.",
		"“SKERRY”, raised", "Day, silver: 100 pieces; Night, gold: 150 pieces (this sheet); 250 in all", "Must not change", "Print at 100 percent.", "50 mm",
	} {
		assert.Contains(t, first, words)
	}
	second := strings.Join(lines(textsOf(t, r, 2)), " ")
	// CIELAB, D50, of steelblue as npm's culori has it: testdata/reference,
	// srgb_colors_oklab_cielab.csv, 51.9865, -8.3619, -32.8329.
	for _, words := range []string{"L*", "70, 130, 180 52.0 −8.4 −32.8", "line too thin", "0.17 mm", "0.25 mm", "below the limit", "narrowest colour area", "The post is sharp.", "16 CFR 1500.48"} {
		assert.Contains(t, second, words)
	}
}

// TestTrueSizeIsTrue measures the curves on the page, as another reader finds
// them: front and back at one to one, the back mirrored, and the proving bar.
func TestTrueSizeIsTrue(t *testing.T) {
	s := keepsakeSpec(t)
	for _, f := range []Format{A4, Letter} {
		if testing.Short() && f == Letter {
			continue
		}
		s.Format = f
		r, _ := printed(t, s)
		front, back := false, false
		for _, p := range placedOn(r, 1) {
			if math.Abs(p.scale-1) > 1e-6 || math.Abs(p.x1-p.x0-12) > 0.03 {
				continue
			}
			assert.InDelta(t, 7, p.y1-p.y0, 0.03)
			front, back = front || !p.mirrored, back || p.mirrored
		}
		assert.True(t, front && back, "both at true size")
		bar := barOn(r)
		assert.InDelta(t, 50, bar.x1-bar.x0, 0.01)
		w, h := f.Size()
		box := r.Page(1).V.Key("Parent").Key("MediaBox")
		if own := r.Page(1).V.Key("MediaBox"); !own.IsNull() {
			box = own
		}
		assert.InDelta(t, float64(w), box.Index(2).Float64()/72*25.4, 0.005)
		assert.InDelta(t, float64(h), box.Index(3).Float64()/72*25.4, 0.005)
	}
}

// odd are specs that try the layout.
func odd(t require.TestingT) map[string]Spec {
	plain := keepsakeSpec(t)
	scaled := func(mm unit.MM) Spec {
		s := keepsakeSpec(t)
		s.Badge.Scale *= unit.PxPerMM(12 / mm)
		k := mm / 12
		for i := range s.Shapes.Arcs {
			a := &s.Shapes.Arcs[i]
			a.Start.X, a.Start.Y = a.Start.X*k, a.Start.Y*k
			for j := range a.Segs {
				g := &a.Segs[j]
				g.C1.X, g.C1.Y, g.C2.X, g.C2.Y, g.To.X, g.To.Y = g.C1.X*k, g.C1.Y*k, g.C2.X*k, g.C2.Y*k, g.To.X*k, g.To.Y*k
			}
		}
		s.Shapes.Width, s.Shapes.Height = s.Shapes.Width*k, s.Shapes.Height*k
		for i := range s.Back.Posts {
			s.Back.Posts[i].X, s.Back.Posts[i].Y = s.Back.Posts[i].X*k, s.Back.Posts[i].Y*k
		}
		return s
	}
	long := strings.Repeat("a very long name indeed ", 12)
	many := keepsakeSpec(t)
	many.Asked.Design, many.Asked.Version, many.Note = long, long, long+long+long
	many.Asked.Stamp, many.Drawing = long, long
	for i := range 10 {
		many.Asked.Colours = append(many.Asked.Colours[:1:1], append([]AskedColour{{No: i + 3, Name: long, Flat: reduce.FlatID(90 + i), Code: long, Named: long, Role: reduce.Enamel, Finish: sizing.Translucent}}, many.Asked.Colours[1:]...)...)
	}
	for i := range 60 {
		f := sizing.Finding{Kind: sizing.SmallArea, X: float64(12 + i), Y: 40, Thinnest: 0.1, Limit: 0.5, Verdict: []sizing.Verdict{sizing.Fails, sizing.Holds}[i%2], Count: 3}
		many.Asked.Spots = append(many.Asked.Spots, AskedSpot{Finding: f, No: i + 2, Colour: long, Left: 3, Top: 3})
		many.Versions = append(many.Versions, SpecVersion{Name: long, Plating: "gold", Quantity: i})
		many.Cautions = append(many.Cautions, many.Cautions[0])
	}
	hostile := keepsakeSpec(t)
	hostile.Asked.Design = "\x00\x1b[2J) Tj ET Q\u202e\u2066 שלום 🎉 " + strings.Repeat("W", 200_000)
	hostile.Asked.Colours[0].Name = strings.Repeat("\U0001F600", 5000)
	hostile.Asked.Colours[0].Code = "\r\n)>>endobj"
	nothing := keepsakeSpec(t)
	nothing.Asked.Colours, nothing.Asked.Spots, nothing.Versions, nothing.Cautions, nothing.Back = nil, nil, nil, nil, &fastener.Advice{}
	nothing.Asked.Design, nothing.Asked.Version = "", ""
	return map[string]Spec{"plain": plain, "tiny": scaled(5), "wide": scaled(84), "large": scaled(150), "too large": scaled(260), "many": many, "hostile": hostile, "nothing": nothing}
}

func TestNothingOverlapsOnAnySheet(t *testing.T) {
	for name, s := range odd(t) {
		if testing.Short() && (name == "plain" || name == "nothing" || name == "tiny") {
			continue
		}
		for _, f := range []Format{A4, Letter} {
			if testing.Short() && f == A4 {
				continue
			}
			s.Format = f
			r, p := printed(t, s)
			for page := 1; page <= p.Pages; page++ {
				apart(t, fmt.Sprintf("%s, %s, page %d", name, f, page), textsOf(t, r, page), f)
			}
		}
	}
}

func apart(t *testing.T, where string, all []textAt, f Format) {
	t.Helper()
	w, h := f.Size()
	for i, a := range all {
		// The frame is 4 mm outside the margin.
		inside := a.x0 >= float64(margin)-4 && a.x1 <= float64(w-margin)+4 && a.y0 >= float64(margin)-4 && a.y1 <= float64(h-margin)+4
		// What lies beyond the paper is clipped there.
		assert.True(t, inside || strings.HasPrefix(where, "too large") && a.x0 > float64(w-margin), "%s: %q runs out of the frame: %v", where, a.text, a.box)
		for _, b := range all[:i] {
			if a.x0+0.2 < b.x1 && b.x0+0.2 < a.x1 && a.y0+0.2 < b.y1 && b.y0+0.2 < a.y1 {
				assert.Fail(t, "text on text", "%s: %q and %q at %v, %v", where, a.text, b.text, a.box, b.box)
			}
		}
	}
}

func TestHostileNamesAreToldAndNothingBreaks(t *testing.T) {
	r, p := printed(t, odd(t)["hostile"])
	require.NotEmpty(t, p.Notes)
	assert.Contains(t, p.Notes[0], "U+05E9")
	assert.NotContains(t, strings.Join(lines(textsOf(t, r, 1)), ""), "\u202e")
}

func TestATrueSizeThatDoesNotFitIsSaid(t *testing.T) {
	r, p := printed(t, odd(t)["too large"])
	require.Len(t, p.Notes, 1)
	assert.Contains(t, p.Notes[0], "larger than the paper")
	assert.Contains(t, strings.Join(lines(textsOf(t, r, 2)), " "), "larger than this sheet")
	_, p = printed(t, odd(t)["large"])
	assert.Empty(t, p.Notes)
}

// TestTheSheetIsTheSameEverywhere holds the file to one made before, natively:
// look at the new sheet, then take its number over.
func TestTheSheetIsTheSameEverywhere(t *testing.T) {
	s := keepsakeSpec(t)
	_, first := printed(t, s)
	assert.Equal(t, "32eabfb7461f6aba3cf0fce6030b1cb71517fa915be17ce584c66c2c0cdc666a", fmt.Sprintf("%x", sha256.Sum256(first.File)))
}

func TestASheetWithoutADateIsRefused(t *testing.T) {
	s := keepsakeSpec(t)
	s.Date = "yesterday"
	_, err := s.Print(someFonts(t))
	assert.ErrorContains(t, err, "no date")
}

// textAt is a stretch of text where it stands, mm.
type textAt struct {
	box
	text string
}

func lines(all []textAt) []string {
	var out []string
	for _, a := range all {
		out = append(out, a.text)
	}
	return out
}

// textsOf are the stretches of text of a page that read across, those that
// follow each other on one line as one.
func textsOf(t require.TestingT, r *pdf.Reader, page int) []textAt {
	fonts := someFonts(t)
	high := pageHigh(r, page)
	var all []textAt
	size, x, y, turned := 0.0, 0.0, 0.0, 0
	pdf.Interpret(r.Page(page).V.Key("Contents"), func(stk *pdf.Stack, op string) {
		n := make([]pdf.Value, stk.Len())
		for i := len(n) - 1; i >= 0; i-- {
			n[i] = stk.Pop()
		}
		switch op {
		case "cm":
			if n[1].Float64() != 0 {
				turned = 2 // levels of q until it ends, the text's own among them
			}
		case "Q":
			turned = max(0, turned-1)
		case "Tf":
			size = n[1].Float64()
		case "Td":
			x, y = n[0].Float64()/72*25.4, (high-n[1].Float64())/72*25.4
		case "Tj":
			if turned > 0 {
				return
			}
			text := fromUTF16(n[0].RawString())
			w := float64(Type{Size: size}.wide(fonts.width(text, Regular)))
			up := size * mmPerPoint * 0.72
			if k := len(all) - 1; k >= 0 && math.Abs(all[k].y1-y) < 0.01 && math.Abs(all[k].x1-x) < 0.3 {
				all[k].text, all[k].x1 = all[k].text+text, x+w
				return
			}
			all = append(all, textAt{box{x, y - up, x + w, y}, text})
		}
	})
	return all
}

func fromUTF16(raw string) string {
	var u []uint16
	for i := 0; i+1 < len(raw); i += 2 {
		u = append(u, uint16(raw[i])<<8|uint16(raw[i+1]))
	}
	return string(utf16.Decode(u))
}

func pageHigh(r *pdf.Reader, page int) float64 {
	box := r.Page(page).V.Key("MediaBox")
	if box.IsNull() {
		box = r.Page(page).V.Key("Parent").Key("MediaBox")
	}
	return box.Index(3).Float64()
}

// placed is art on a page: its box in mm, and how it was scaled.
type placed struct {
	box
	scale    float64
	mirrored bool
}

// placedOn are the paths that were drawn through a matrix.
func placedOn(r *pdf.Reader, page int) []placed {
	high := pageHigh(r, page)
	var all []placed
	var m [6]float64
	now, in := noBox(), false
	pdf.Interpret(r.Page(page).V.Key("Contents"), func(stk *pdf.Stack, op string) {
		n := make([]float64, stk.Len())
		for i := len(n) - 1; i >= 0; i-- {
			n[i] = stk.Pop().Float64()
		}
		switch op {
		case "cm":
			copy(m[:], n)
			in, now = m[1] == 0, noBox()
		case "m", "l", "c":
			x, y := n[len(n)-2], n[len(n)-1]
			now.hold((m[0]*x+m[4])/72*25.4, (high-(m[3]*y+m[5]))/72*25.4)
		case "f*", "S":
			if in {
				all = append(all, placed{now, math.Abs(m[0]) * 25.4 / 72, m[0] < 0})
			}
			in = false
		}
	})
	return all
}

// barOn is the box of the fields of the proving bar: boxes 5 mm wide.
func barOn(r *pdf.Reader) box {
	all := noBox()
	pdf.Interpret(r.Page(1).V.Key("Contents"), func(stk *pdf.Stack, op string) {
		n := make([]float64, stk.Len())
		for i := len(n) - 1; i >= 0; i-- {
			n[i] = stk.Pop().Float64()
		}
		if op == "re" && math.Abs(n[2]/72*25.4-5) < 0.01 {
			all.hold(n[0]/72*25.4, n[1])
			all.hold((n[0]+n[2])/72*25.4, n[1])
		}
	})
	return all
}
