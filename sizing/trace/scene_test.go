package trace

import (
	"math"
	"math/rand/v2"
	"strings"

	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// The flats of drawn scenes.
const (
	red   = 0
	blue  = 1
	steel = 2 // metal
	hole  = 3 // cut-out
	ink   = 4 // printed
	gilt  = 5 // metal too
	sky   = reduce.None
)

func flats() []reduce.Flat {
	return []reduce.Flat{
		{ID: 10, Name: "red", Role: reduce.Enamel},
		{ID: 11, Name: "blue", Role: reduce.Enamel},
		{ID: 12, Name: "steel", Role: reduce.Metal},
		{ID: 13, Name: "hole", Role: reduce.CutOut},
		{ID: 14, Name: "ink", Role: reduce.Printed},
		{ID: 15, Name: "gilt", Role: reduce.Metal},
	}
}

// grain is how many times each pixel is sampled, each way.
const grain = 12

// scene draws a picture given by the label at each place, anti-aliased: each
// pixel holds the two labels it has most of.
func scene(w, h int, at func(x, y float64) uint8) *reduce.Separation {
	s := reduce.NewSeparation(w, h)
	s.Flats = flats()
	for i := range s.Labels {
		sample(s, i, at)
	}
	return s
}

// sample finds the two labels that pixel i holds most of; a pixel is looked at
// closely when its corners, or some places a little beyond them, differ.
func sample(s *reduce.Separation, i int, at func(x, y float64) uint8) {
	x, y := float64(i%s.W), float64(i/s.W)
	calm := at(x+0.5, y+0.5)
	for k := 0; k < 25 && k >= 0; k++ {
		if at(x-0.5+0.5*float64(k%5), y-0.5+0.5*float64(k/5)) != calm {
			k = -2
		}
		if k == 24 {
			s.Labels[i], s.Beside[i] = calm, calm
			return
		}
	}
	var n [256]int
	for k := range grain * grain {
		n[at(x+(float64(k%grain)+0.5)/grain, y+(float64(k/grain)+0.5)/grain)]++
	}
	first, second := top2(&n)
	s.Labels[i], s.Beside[i], s.Cover[i] = first, second, 255
	if second != first {
		s.Cover[i] = max(128, uint8(math.Round(255*float64(n[first])/float64(n[first]+n[second]))))
	}
}

func top2(n *[256]int) (first, second uint8) {
	for l := range n {
		if n[l] > n[first] {
			first = uint8(l)
		}
	}
	second = first
	for l := range n {
		if uint8(l) != first && n[l] > 0 && (second == first || n[l] > n[second]) {
			second = uint8(l)
		}
	}
	return first, second
}

// text draws a picture from letters, one a pixel, each blown up to k x k:
// r, b enamel; # and % metal; o cut-out; i print; . outside.
func text(k int, rows ...string) *reduce.Separation {
	label := map[byte]uint8{'r': red, 'b': blue, '#': steel, '%': gilt, 'o': hole, 'i': ink, '.': sky}
	s := reduce.NewSeparation(len(rows[0])*k, len(rows)*k)
	s.Flats = flats()
	for i := range s.Labels {
		l := label[rows[i/s.W/k][i%s.W/k]]
		s.Labels[i], s.Beside[i] = l, l
	}
	return s
}

func rows(picture string) []string { return strings.Fields(picture) }

// random draws shapes of any label at random places: half of them soft, half
// hard, and some noise.
func random(r *rand.Rand, w, h int) *reduce.Separation {
	type blob struct {
		x, y, rx, ry, turn float64
		label              uint8
		square             bool
	}
	labels := []uint8{red, blue, steel, hole, ink, gilt, sky}
	blobs := make([]blob, 1+r.IntN(12))
	for i := range blobs {
		blobs[i] = blob{
			r.Float64() * float64(w), r.Float64() * float64(h), 1 + r.Float64()*float64(w)/2, 1 + r.Float64()*float64(h)/3,
			r.Float64() * math.Pi, labels[r.IntN(len(labels))], r.IntN(2) == 0,
		}
	}
	at := func(x, y float64) uint8 {
		l := sky
		for _, b := range blobs {
			c, s := math.Cos(b.turn), math.Sin(b.turn)
			u, v := (c*(x-b.x)+s*(y-b.y))/b.rx, (c*(y-b.y)-s*(x-b.x))/b.ry
			if b.square && max(math.Abs(u), math.Abs(v)) < 1 || !b.square && u*u+v*v < 1 {
				l = b.label
			}
		}
		return l
	}
	s := scene(w, h, at)
	if r.IntN(2) == 0 {
		hardened(s)
	}
	for range r.IntN(1 + w*h/20) {
		i := r.IntN(len(s.Labels))
		s.Labels[i], s.Beside[i], s.Cover[i] = labels[r.IntN(len(labels))], labels[r.IntN(len(labels))], uint8(128+r.IntN(128))
	}
	return s
}

// badge gives a separation a scale; one with nothing solid has no badge.
func badge(s *reduce.Separation, scale float64) (*sizing.Badge, bool) {
	box, ok := sizing.Outline(s)
	return &sizing.Badge{Sep: s, Scale: unit.PxPerMM(scale), Outline: box}, ok
}

func traced(t require.TestingT, s *reduce.Separation, scale float64) (*sizing.Badge, *Shapes) {
	b, ok := badge(s, scale)
	require.True(t, ok)
	sh, err := Trace(b, 0, nil)
	require.NoError(t, err)
	return b, sh
}

// px is a place of shapes in pixels of the raster.
func px(b *sizing.Badge, p Point) (x, y float64) {
	return p.X.Px(b.Scale) + b.Outline[0], p.Y.Px(b.Scale) + b.Outline[1]
}

// flattened is a loop as a polygon in px, each cubic in so many steps.
func flattened(b *sizing.Badge, sh *Shapes, l Loop, steps int) []vec {
	var out []vec
	at := func(p Point) vec { x, y := px(b, p); return vec{x, y} }
	sh.Walk(Walker{
		Move: func(p Point) { out = append(out, at(p)) },
		Line: func(p Point) { out = append(out, at(p)) },
		Curve: func(c1, c2, to Point) {
			c := cubic{out[len(out)-1], at(c1), at(c2), at(to)}
			for k := 1; k <= steps; k++ {
				out = append(out, c.at(float64(k)/float64(steps)))
			}
		},
		Close: func() {},
	}, Area{l})
	return out
}

// hardened takes the shared pixels of a separation away.
func hardened(s *reduce.Separation) *reduce.Separation {
	for i := range s.Cover {
		s.Beside[i], s.Cover[i] = s.Labels[i], 255
	}
	return s
}
