package calls

import (
	"encoding/json"
	"image/color"
	"image/png"
	"os"
	"testing"

	"github.com/anthonynsimon/bild/transform"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
	"badgewright/wasm/wire"
)

// benchDrawing is the demo lighthouse at the working size.
func benchDrawing(b *testing.B) *reduce.Drawing {
	b.Helper()
	f, err := os.Open("../../testdata/drawings/lighthouse.png")
	require.NoError(b, err)
	defer f.Close()
	img, err := png.Decode(f)
	require.NoError(b, err)
	side := reduce.WorkingLongSide
	big := transform.Resize(img, side*img.Bounds().Dx()/img.Bounds().Dy(), side, transform.Linear)
	pix := make([]uint32, len(big.Pix)/4)
	for i := range pix {
		c := color.NRGBAModel.Convert(big.RGBAAt(i%big.Rect.Dx(), i/big.Rect.Dx())).(color.NRGBA)
		pix[i] = uint32(c.R) | uint32(c.G)<<8 | uint32(c.B)<<16 | uint32(c.A)<<24
	}
	d, err := reduce.NewDrawing(big.Rect.Dx(), side, pix)
	require.NoError(b, err)
	return d
}

func BenchmarkOpen(b *testing.B) {
	d := benchDrawing(b)
	for b.Loop() {
		_, err := NewSession().Open(Brought{ID: "a", FileName: "lighthouse.png", Drawing: d, Ground: reduce.GroundAuto}, nil)
		require.NoError(b, err)
	}
}

// benchSession has the demo open and its project in hand.
func benchSession(b *testing.B) (*Session, wire.Picked) {
	s := NewSession()
	r, err := s.Open(Brought{ID: "a", FileName: "lighthouse.png", Drawing: benchDrawing(b), Ground: reduce.GroundAuto}, nil)
	require.NoError(b, err)
	p := BlankProject()
	p.Order.Designs[0] = r.Answer.(wire.Opened).Design
	return s, wire.Picked{Project: p}
}

func benchCall(b *testing.B, name string, ask func(i int) any) func(s *Session, i int) {
	return func(s *Session, i int) {
		text, err := json.Marshal(ask(i))
		require.NoError(b, err)
		_, err = s.Do(name, text, Job{})
		require.NoError(b, err)
	}
}

// benchCounts are asked for in turn, so that none is still at hand.
var benchCounts = []int{3, 5, 4, 6, 2, 7, 8, 9}

func BenchmarkFlatsOfAnotherCount(b *testing.B) {
	s, _ := benchSession(b)
	do := benchCall(b, "flats", func(i int) any {
		return wire.FlatsAsk{Drawing: "a", Options: reduce.Options{Count: benchCounts[i%len(benchCounts)]}}
	})
	i := 0
	for b.Loop() {
		do(s, i)
		i++
	}
}

func BenchmarkCheckOfAnotherCount(b *testing.B) {
	s, p := benchSession(b)
	do := benchCall(b, "check", func(i int) any {
		p.Project.Order.Designs[0].Colours = benchCounts[i%len(benchCounts)]
		return wire.CheckAsk{Picked: p}
	})
	i := 0
	for b.Loop() {
		do(s, i)
		i++
	}
}

func BenchmarkPictureAsStruck(b *testing.B) {
	s, p := benchSession(b)
	do := benchCall(b, "picture", func(i int) any {
		p.Project.Order.Designs[0].Size.MM = 30 + unit.MM(i%16)/4
		return wire.PictureAsk{Picked: p, View: "struck", LongSide: 1024}
	})
	i := 0
	for b.Loop() {
		do(s, i)
		i++
	}
}

func BenchmarkTouch(b *testing.B) {
	s, p := benchSession(b)
	do := benchCall(b, "touch", func(i int) any {
		return wire.TouchAsk{Picked: p, X: float64(300 + 97*i%1000), Y: float64(300 + 53*i%1000)}
	})
	i := 0
	for b.Loop() {
		do(s, i)
		i++
	}
}

// A post that is dragged asks this every frame.
func BenchmarkHang(b *testing.B) {
	s, p := benchSession(b)
	do := benchCall(b, "hang", func(i int) any {
		x := unit.MM(8 + float64(i%60)/10)
		return wire.HangAsk{Picked: p, Posts: []sizing.Post{{X: x, Y: 12}, {X: 22 - x/2, Y: 12}}, Moved: 0}
	})
	i := 0
	do(s, i)
	for b.Loop() {
		i++
		do(s, i)
	}
}

// What is asked again and again: the check of a drawing measured before.
func BenchmarkCheckWarm(b *testing.B) {
	s, p := benchSession(b)
	do := benchCall(b, "check", func(int) any { return wire.CheckAsk{Picked: p} })
	do(s, 0)
	for b.Loop() {
		do(s, 0)
	}
}
