package mend

import (
	"bytes"
	"math"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/outline"
	"badgewright/sizing/unit"
	"badgewright/sizing/wall"
)

// Drawing is a drawing at one size, with the recipes it has, on which repairs
// are tried.
type Drawing struct {
	Builder *wall.Builder
	Recipes []sizing.Recipe
	Scale   unit.PxPerMM
	Limits  sizing.Limits
	// Found is what was found of it so far; nil when it is still to be measured.
	Found []sizing.Finding
	// Outline is what the outline is judged by; nil when it is not to be looked at.
	Outline *outline.At
}

// bench is a struck separation on which repairs are tried one after another;
// what does not serve is taken back.
type bench struct {
	d   *Drawing
	sep *reduce.Separation
	// seen is what was found in a box of it, as it stands.
	seen map[box][]sizing.Finding
}

func newBench(d *Drawing) (*bench, error) {
	sep, err := d.Builder.Apply(d.Recipes, d.Scale, d.Limits)
	if err != nil {
		return nil, err
	}
	return &bench{d: d, sep: sep, seen: map[box][]sizing.Finding{}}, nil
}

func (b *bench) spot(f *sizing.Finding) *spot {
	return &spot{f: f, s: b.sep, scale: b.d.Scale, l: &b.d.Limits}
}

// box is a box of pixels, x1 and y1 beyond it.
type box struct{ x0, y0, x1, y1 int }

// holds says whether a box lies within another.
func (q box) holds(o box) bool { return o.x0 >= q.x0 && o.y0 >= q.y0 && o.x1 <= q.x1 && o.y1 <= q.y1 }

func (b *bench) whole() box { return box{0, 0, b.sep.W, b.sep.H} }

// most is the greatest of the limits a repair has to do with, px.
func (b *bench) most() float64 {
	l := &b.d.Limits
	return float64(max(l.Line, l.Edge, l.Area, unit.MM(math.Sqrt(max(0, l.AreaSize))))) * float64(b.d.Scale)
}

// reachOf is how far from its place a repair may change anything, in limits.
const reachOf = 5

// round is the box in which repairs of a trouble spot change anything.
func (b *bench) round(f *sizing.Finding, recipes []sizing.Recipe) box {
	x0, y0, x1, y1 := f.X0, f.Y0, f.X1, f.Y1
	for _, r := range recipes {
		if len(r.Points) == 0 || r.Kind == sizing.BuildBorder {
			return b.whole()
		}
		for _, p := range r.Points {
			x, y := p[0]*float64(b.sep.W), p[1]*float64(b.sep.H)
			x0, y0, x1, y1 = min(x0, x), min(y0, y), max(x1, x), max(y1, y)
		}
	}
	for _, r := range recipes {
		wide := reachOf*b.most() + r.Width.Px(b.d.Scale) + 8
		x0, y0, x1, y1 = min(x0, f.X0-wide), min(y0, f.Y0-wide), max(x1, f.X1+wide), max(y1, f.Y1+wide)
	}
	return b.clip(x0, y0, x1, y1)
}

func (b *bench) clip(x0, y0, x1, y1 float64) box {
	on := func(v float64, most int) int { return int(min(max(v, 0), float64(most))) }
	return box{on(x0, b.sep.W), on(y0, b.sep.H), on(x1+1, b.sep.W), on(y1+1, b.sep.H)}
}

// wider is a box with a margin, px.
func (b *bench) wider(q box, margin float64) box {
	return b.clip(float64(q.x0)-margin, float64(q.y0)-margin, float64(q.x1)+margin-1, float64(q.y1)+margin-1)
}

// kept is what a box held before a repair was tried.
type kept struct {
	q   box
	sep *reduce.Separation
	// built marks the pixels of the box that were built.
	built []bool
}

func (b *bench) keep(q box) kept {
	k := kept{q: q, sep: wall.Cut(b.sep, q.x0, q.y0, q.x1, q.y1)}
	for y := q.y0; y < q.y1; y++ {
		k.built = append(k.built, b.sep.Built[y*b.sep.W+q.x0:y*b.sep.W+q.x1]...)
	}
	return k
}

// differs says whether a box is no longer as it was.
func (b *bench) differs(k kept) bool {
	w := k.q.x1 - k.q.x0
	for y := k.q.y0; y < k.q.y1; y++ {
		at, was := y*b.sep.W+k.q.x0, (y-k.q.y0)*w
		if !bytes.Equal(b.sep.Labels[at:at+w], k.sep.Labels[was:was+w]) || !bytes.Equal(b.sep.Cover[at:at+w], k.sep.Cover[was:was+w]) {
			return true
		}
	}
	return false
}

func (b *bench) takeBack(k kept) {
	w := k.q.x1 - k.q.x0
	for y := k.q.y0; y < k.q.y1; y++ {
		to, from := y*b.sep.W+k.q.x0, (y-k.q.y0)*w
		copy(b.sep.Labels[to:to+w], k.sep.Labels[from:])
		copy(b.sep.Beside[to:to+w], k.sep.Beside[from:])
		copy(b.sep.Cover[to:to+w], k.sep.Cover[from:])
		copy(b.sep.Built[to:to+w], k.built[from:])
	}
}

func (b *bench) apply(recipes []sizing.Recipe) error {
	return b.d.Builder.Add(b.sep, recipes, b.d.Scale, b.d.Limits)
}

// measure finds the trouble spots of what is on the bench.
func (b *bench) measure(p reduce.Progress) ([]sizing.Finding, error) {
	m, err := wall.Measure(b.sep, p)
	if err != nil {
		return nil, err
	}
	return m.Findings(b.d.Scale, b.d.Limits), nil
}
