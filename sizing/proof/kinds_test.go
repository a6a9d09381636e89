package proof

import (
	"image"
	"image/color"
	"image/draw"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/sizing"
	"badgewright/sizing/trace"
	"badgewright/sizing/unit"
)

// page is a white sheet on which a test draws.
type page struct {
	img *image.RGBA
	b   *sizing.Badge
	s   *trace.Shapes
	mid Point
}

func newPage(t testing.TB, b *sizing.Badge, w, h int) *page {
	t.Helper()
	s, err := trace.Trace(b, 0, nil)
	require.NoError(t, err)
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	draw.Draw(img, img.Rect, image.NewUniform(white), image.Point{}, draw.Src)
	o := b.Outline
	return &page{img, b, s, Point{(o[0] + o[2]) / 2, (o[1] + o[3]) / 2}}
}

func (p *page) front(at Point, scale float64) Warp {
	w := similar(p.mid, at, scale, 0, false)
	drawPin(p.img, p.s, p.b, &w, look{metal: gold})
	return w
}

// back draws the plate mirrored, with a dark post on a pale pad at each place.
func (p *page) back(at Point, scale float64, posts []sizing.Post) {
	w := similar(p.mid, at, scale, 0, true)
	fillAreas(p.img, p.s, p.b, &w, p.s.Outline.Areas, steel)
	mm := float64(p.b.Scale) * scale
	for _, q := range posts {
		u, v := w.At(p.b.Outline[0]+q.X.Px(p.b.Scale), p.b.Outline[1]+q.Y.Px(p.b.Scale))
		p.disc(u, v, 2.5*mm, color.RGBA{228, 228, 230, 255})
		p.disc(u, v, 0.6*mm, color.RGBA{60, 60, 64, 255})
	}
}

func (p *page) disc(x, y, r float64, c color.RGBA) {
	var q pen
	k := 0.5523 * r
	q.step(0, Point{x + r, y})
	q.step(2, Point{x + r, y + k}, Point{x + k, y + r}, Point{x, y + r})
	q.step(2, Point{x - k, y + r}, Point{x - r, y + k}, Point{x - r, y})
	q.step(2, Point{x - r, y - k}, Point{x - k, y - r}, Point{x, y - r})
	q.step(2, Point{x + k, y - r}, Point{x + r, y - k}, Point{x + r, y})
	q.step(3)
	q.fill(p.img, c)
}

func (p *page) differs(t *testing.T, a *Asked, w Wanted) *HeldAgainst {
	t.Helper()
	l, err := Find(a, encoded(t, p.img, 82), nil, -1, nil)
	require.NoError(t, err)
	r, err := Diff(l, w, Usual(), nil)
	require.NoError(t, err)
	return r
}

func kindsOf(r *HeldAgainst) []DeviationKind {
	var list []DeviationKind
	for _, x := range r.Differences {
		list = append(list, x.Kind)
	}
	return list
}

func TestPostsAreLookedForOnTheBack(t *testing.T) {
	b := designs[9].badge(t)
	a, err := Ask(b, nil)
	require.NoError(t, err)
	asked := []sizing.Post{{X: 10, Y: 9}, {X: 22, Y: 9}}
	at := func(posts ...sizing.Post) *HeldAgainst {
		p := newPage(t, b, 1300, 800)
		p.front(Point{330, 400}, as(0.6))
		p.back(Point{960, 400}, as(0.6), posts)
		return p.differs(t, a, Wanted{Posts: asked})
	}
	r := at(asked...)
	assert.True(t, r.Back)
	assert.Empty(t, r.Differences, "posts in their places")
	r = at(sizing.Post{X: 22, Y: 12})
	require.Equal(t, []DeviationKind{PostMissing, PostMoved}, kindsOf(r))
	assert.InDelta(t, 3, float64(r.Differences[1].ShownMM), 0.2)
	assert.Equal(t, []DeviationKind{PostAdded}, kindsOf(at(asked[0], asked[1], sizing.Post{X: 16, Y: 22})))
}

func TestSizesStatedAndMarkedAreCompared(t *testing.T) {
	b := designs[11].badge(t)
	a, err := Ask(b, nil)
	require.NoError(t, err)
	p := newPage(t, b, 700, 700)
	w := p.front(Point{350, 350}, as(0.6))
	o := b.Outline
	x0, y0 := w.At(o[0], o[1])
	x1, _ := w.At(o[2], o[1])
	bar := MarkedMeasure{From: Point{x0, y0}, To: Point{x1, y0}}
	for _, c := range []struct {
		stated, bar unit.MM
		want        []DeviationKind
	}{
		{stated: b.Longest(), bar: b.Width()},
		{stated: b.Longest() * 0.9, want: []DeviationKind{SizeStated}},
		{bar: b.Width() * 1.1, want: []DeviationKind{SizeDrawn}},
	} {
		bar.MM = c.bar
		r := p.differs(t, a, Wanted{Said: Said{Size: sizing.Size{MM: c.stated, By: sizing.ByLongest}, Measure: bar}})
		assert.Equal(t, c.want, kindsOf(r), "%+v", c)
	}

	line(p.img, Point{20, 60}, Point{300, 280}, 2, color.RGBA{30, 30, 30, 255})
	assert.Empty(t, p.differs(t, a, Wanted{}).Differences, "a leader that ends within the pin")
}

func TestStretchedAndFilledAreTold(t *testing.T) {
	b := designs[11].badge(t)
	a, err := Ask(b, nil)
	require.NoError(t, err)
	p := newPage(t, b, 760, 700)
	w := similar(p.mid, Point{}, as(0.6), 0, false)
	wide := Warp{1.04, 0, 380, 0, 1, 350, 0, 0, 1}
	w = wide.after(&w)
	drawPin(p.img, p.s, b, &w, look{metal: gold})
	assert.Contains(t, kindsOf(p.differs(t, a, Wanted{})), Stretched)

	full := copied(b)
	for i, c := range a.cell {
		if slices.Contains(a.holes, c) {
			set(full.Sep, i, 2)
		}
	}
	p = newPage(t, full, 700, 700)
	p.front(Point{350, 350}, as(0.6))
	assert.Equal(t, []DeviationKind{CutOutFilled}, kindsOf(p.differs(t, a, Wanted{})))
}

func TestAPartThatHangsLowerIsTold(t *testing.T) {
	two := design{mm: 36, at: func(x, y float64) int {
		switch {
		case math.Hypot(x, y+0.4) < 0.5 && x < 0.1:
			return 0
		case math.Hypot(x, y+0.4) < 0.5:
			return 1
		case math.Hypot(x-0.05, y-0.55) < 0.25:
			return 3
		}
		return -1
	}}
	b := two.badge(t)
	a, err := Ask(b, nil)
	require.NoError(t, err)
	p := newPage(t, b, 700, 800)
	p.front(Point{350, 400}, as(0.6))
	assert.Empty(t, p.differs(t, a, Wanted{}).Differences)

	low := copied(b)
	s, drop := low.Sep, int(a.px(0.8))
	for y := s.H - 1; y > s.H*3/5; y-- {
		for x := range s.W {
			set(s, y*s.W+x, b.Sep.Labels[max(s.H*3/5, y-drop)*s.W+x])
		}
	}
	p = newPage(t, low, 700, 800)
	p.front(Point{350, 400}, as(0.6))
	r := p.differs(t, a, Wanted{})
	require.Equal(t, []DeviationKind{PartMoved}, kindsOf(r))
	assert.InDelta(t, 0.8, float64(r.Differences[0].ShownMM), 0.1)
}

func TestTheNextRoundIsHeldAgainstTheLast(t *testing.T) {
	x := Deviation{Kind: LineMissing, Box: [4]float64{10, 10, 30, 12}, Words: "A."}
	y := Deviation{Kind: AreaRecoloured, Flat: 3, Box: [4]float64{50, 50, 90, 90}, Words: "B."}
	z := Deviation{Kind: AreasMerged, Box: [4]float64{12, 11, 31, 13}, Words: "C."}
	far := Deviation{Kind: LineMissing, Box: [4]float64{300, 10, 330, 12}, Words: "D."}
	list := Rounds([]Deviation{x, y}, []Deviation{far, z}, 10)
	states := []PairState{list[0].State, list[1].State, list[2].State}
	assert.Equal(t, []PairState{Open, Done, New}, states, "the same place; a colour put right; another place")
	assert.Equal(t, "1 done, 1 still open, 1 new in this round.", SayPairs(list))
	assert.Equal(t, InBoth, Beside([]Deviation{x}, []Deviation{z}, 10)[0].State)
}

func TestThreePlacesLayAPinExactly(t *testing.T) {
	rnd := rand.New(rand.NewPCG(3, 0))
	pin := []Point{{10, 20}, {400, 60}, {180, 380}}
	for range 50 {
		w := similar(pin[0], Point{200, 300}, 0.3+2.7*rnd.Float64(), 6*rnd.Float64(), rnd.IntN(2) == 1)
		var on []Point
		for _, p := range pin {
			u, v := w.At(p.X, p.Y)
			on = append(on, Point{u, v})
		}
		got, err := WarpBy(pin, on, false)
		require.NoError(t, err)
		assert.InDelta(t, 0, missed(&got, pin, on), 1e-9)
		assert.Equal(t, w.Mirrored(), got.Mirrored())
		back, ok := got.Inverse()
		require.True(t, ok)
		x, y := back.At(on[1].X, on[1].Y)
		assert.InDelta(t, pin[1].X, x, 1e-6)
		assert.InDelta(t, pin[1].Y, y, 1e-6)
		on[2].X += 40 // no similarity any more
		got, err = WarpBy(pin, on, true)
		require.NoError(t, err)
		assert.InDelta(t, 0, missed(&got, pin, on), 1e-9)
	}
	_, err := WarpBy([]Point{{0, 0}, {1, 1}, {2, 2}}, []Point{{0, 0}, {3, 3}, {6, 6}}, true)
	assert.Error(t, err, "three on one line")
}
