package sheet

import (
	"math"
	"testing"

	"github.com/ledongthuc/pdf"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce/colour"
	"badgewright/sizing/trace"
	"badgewright/sizing/unit"
)

// box is where something stands on a sheet, mm from its upper left.
type box struct{ x0, y0, x1, y1 float64 }

func (b *box) hold(x, y float64) {
	b.x0, b.y0, b.x1, b.y1 = min(b.x0, x), min(b.y0, y), max(b.x1, x), max(b.y1, y)
}

func noBox() box { return box{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)} }

// filled are the boxes of what is filled on a page, each with its colour, as
// another reader of the format finds them (ISO 32000-1, 8.3.3, 8.5.2).
func filled(r *pdf.Reader, page int) map[colour.RGB8]box {
	p := r.Page(page)
	high := p.V.Key("MediaBox")
	if high.IsNull() {
		high = p.V.Key("Parent").Key("MediaBox")
	}
	all := map[colour.RGB8]box{}
	unturned := [6]float64{1, 0, 0, 1, 0, 0}
	m, now, paint := unturned, noBox(), colour.RGB8{}
	pdf.Interpret(p.V.Key("Contents"), func(stk *pdf.Stack, op string) {
		n := make([]float64, stk.Len())
		for i := len(n) - 1; i >= 0; i-- {
			n[i] = stk.Pop().Float64()
		}
		switch op {
		case "cm":
			copy(m[:], n)
		case "Q":
			m = unturned
		case "g":
			l := uint8(math.Round(n[0] * 255))
			paint = colour.RGB8{R: l, G: l, B: l}
		case "rg":
			paint = colour.RGB8{R: uint8(math.Round(n[0] * 255)), G: uint8(math.Round(n[1] * 255)), B: uint8(math.Round(n[2] * 255))}
		case "re":
			top := high.Index(3).Float64() - n[1]
			now.hold(n[0]/72*25.4, top/72*25.4)
			now.hold((n[0]+n[2])/72*25.4, (top-n[3])/72*25.4)
		case "m", "l", "c":
			x, y := n[len(n)-2], n[len(n)-1]
			now.hold((m[0]*x+m[2]*y+m[4])/72*25.4, (high.Index(3).Float64()-(m[1]*x+m[3]*y+m[5]))/72*25.4)
		case "f", "f*":
			if b, ok := all[paint]; ok {
				now.hold(b.x0, b.y0)
				now.hold(b.x1, b.y1)
			}
			all[paint] = now
			now = noBox()
		case "S", "n":
			now = noBox()
		}
	})
	return all
}

func TestArtStandsAtItsScaleOnEitherSide(t *testing.T) {
	_, sh := drawn(t, 12, keepsake...)
	red, look := sh.Enamel[0].RGB, plainLook()
	for _, c := range []struct {
		stand    Stand
		all, red box
	}{
		{Stand{X: 30, Y: 40, Scale: 1}, box{30, 40, 42, 47}, box{31, 41, 35, 45}},
		{Stand{X: 30, Y: 40, Scale: 5.25}, box{30, 40, 93, 76.75}, box{35.25, 45.25, 56.25, 66.25}},
		{Stand{X: 30, Y: 40, Scale: 1, Mirrored: true}, box{30, 40, 42, 47}, box{37, 41, 41, 45}},
	} {
		d := begun(t)
		d.Art(sh, c.stand, look)
		file, err := d.Bytes()
		require.NoError(t, err)
		got := filled(readBack(t, file), 1)
		near(t, c.all, got[look.Metal])
		near(t, c.red, got[red])
	}
}

// near allows what curves may be off the drawing, and the grid of the file.
func near(t *testing.T, want, got box) {
	const slack = 0.03
	for _, pair := range [][2]float64{{want.x0, got.x0}, {want.y0, got.y0}, {want.x1, got.x1}, {want.y1, got.y1}} {
		assert.InDelta(t, pair[0], pair[1], slack)
	}
}

func TestAPlaceOfThePinIsFoundOnTheSheet(t *testing.T) {
	sh := &trace.Shapes{Width: 12, Height: 7}
	x, y := Stand{X: 30, Y: 40, Scale: 2}.At(sh, 1, 3)
	assert.Equal(t, [2]unit.MM{32, 46}, [2]unit.MM{x, y})
	x, y = Stand{X: 30, Y: 40, Scale: 2, Mirrored: true}.At(sh, 1, 3)
	assert.Equal(t, [2]unit.MM{52, 46}, [2]unit.MM{x, y})
}

func TestArtAloneIsTheSameEveryTime(t *testing.T) {
	_, sh := drawn(t, 12, keepsake...)
	var first []byte
	for range 3 {
		d := begun(t)
		pen := Pen{Width: 0.1, Dash: []unit.MM{1, 1}}
		d.Stroke(sh, Stand{X: 9, Y: 9, Scale: 3}, pen, sh.Outline.Areas...)
		d.Within(sh, Stand{X: 9, Y: 9, Scale: 3}, sh.Metal.Areas, func() { d.Rect(0, 0, 99, 99, &colour.RGB8{R: 255}, nil) })
		file, err := d.Bytes()
		require.NoError(t, err)
		if first == nil {
			first = file
		}
		assert.Equal(t, first, file)
	}
}
