package wall

import (
	"math"
	"slices"
	"strings"

	"badgewright/reduce"
)

// The flats of drawn scenes.
const (
	red   = 0
	blue  = 1
	steel = 2 // metal
	hole  = 3 // cut-out
	ink   = 4 // printed
	sky   = reduce.None
)

func flats() []reduce.Flat {
	return []reduce.Flat{
		{ID: 10, Name: "red", Role: reduce.Enamel},
		{ID: 11, Name: "blue", Role: reduce.Enamel},
		{ID: 12, Name: "steel", Role: reduce.Metal},
		{ID: 13, Name: "hole", Role: reduce.CutOut},
		{ID: 14, Name: "ink", Role: reduce.Printed},
	}
}

// grain is how many times each pixel is sampled, each way, when a scene is drawn.
const grain = 10

// scene draws a picture given by the label at each place, anti-aliased: each
// pixel holds the two labels it has most of.
func scene(w, h int, at func(x, y float64) uint8) *reduce.Separation {
	return sceneBy(w, h, grain, at)
}

// sceneBy is scene with another grain. Pixels in whose neighbourhood every
// corner of a pixel has one label are not sampled: nothing drawn here is so
// thin, a pixel, as to slip through between corners.
func sceneBy(w, h, grain int, at func(x, y float64) uint8) *reduce.Separation {
	s := reduce.NewSeparation(w, h)
	s.Flats = flats()
	corners := make([]uint8, (w+1)*(h+1))
	for i := range corners {
		corners[i] = at(float64(i%(w+1)), float64(i/(w+1)))
	}
	for i := range s.Labels {
		x, y := i%w, i/w
		if l, ok := calm(corners, w+1, h+1, x, y); ok {
			s.Labels[i], s.Beside[i] = l, l
			continue
		}
		sample(s, i, grain, at)
	}
	return s
}

// calm returns the label of a pixel if the corners of it and those round it agree.
func calm(corners []uint8, w, h, x, y int) (l uint8, ok bool) {
	l = corners[y*w+x]
	for v := max(y-1, 0); v <= min(y+2, h-1); v++ {
		for u := max(x-1, 0); u <= min(x+2, w-1); u++ {
			if corners[v*w+u] != l {
				return 0, false
			}
		}
	}
	return l, true
}

// sample finds the two labels that pixel i holds most of.
func sample(s *reduce.Separation, i, grain int, at func(x, y float64) uint8) {
	f := float64(grain)
	var n [256]int
	for k := 0; k < grain*grain; k++ {
		n[at(float64(i%s.W)+(float64(k%grain)+0.5)/f, float64(i/s.W)+(float64(k/grain)+0.5)/f)]++
	}
	first, second := top2(&n)
	set(s, i, first, second, n[first], n[second])
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

func set(s *reduce.Separation, i int, first, second uint8, a, b int) {
	s.Labels[i], s.Beside[i], s.Cover[i] = first, second, 255
	if second != first {
		s.Cover[i] = max(128, uint8(math.Round(255*float64(a)/float64(a+b))))
	}
}

// text draws a picture from letters, one a pixel, each blown up to k x k:
// r, b enamel; # metal; o cut-out; i print; . outside.
func text(k int, rows ...string) *reduce.Separation {
	label := map[byte]uint8{'r': red, 'b': blue, '#': steel, 'o': hole, 'i': ink, '.': sky}
	s := reduce.NewSeparation(len(rows[0])*k, len(rows)*k)
	s.Flats = flats()
	for i := range s.Labels {
		x, y := i%s.W/k, i/s.W/k
		l := label[rows[y][x]]
		s.Labels[i], s.Beside[i] = l, l
	}
	return s
}

func rows(picture string) []string {
	return strings.Fields(strings.TrimSpace(picture))
}

// turned is a separation turned by 90 degrees clockwise; mirrored swaps left
// and right.
func turned(s *reduce.Separation) *reduce.Separation {
	return moved(s, s.H, s.W, func(x, y int) (int, int) { return s.H - 1 - y, x })
}

func mirrored(s *reduce.Separation) *reduce.Separation {
	return moved(s, s.W, s.H, func(x, y int) (int, int) { return s.W - 1 - x, y })
}

func moved(s *reduce.Separation, w, h int, to func(x, y int) (int, int)) *reduce.Separation {
	t := reduce.NewSeparation(w, h)
	t.Flats = slices.Clone(s.Flats)
	for y := 0; y < s.H; y++ {
		for x := 0; x < s.W; x++ {
			nx, ny := to(x, y)
			i, k := y*s.W+x, ny*w+nx
			t.Labels[k], t.Beside[k], t.Cover[k] = s.Labels[i], s.Beside[i], s.Cover[i]
		}
	}
	return t
}

// stroke is a straight bar of a width between two points.
type bar struct{ x0, y0, x1, y1, width float64 }

func (b bar) holds(x, y float64) bool {
	dx, dy := b.x1-b.x0, b.y1-b.y0
	l := math.Hypot(dx, dy)
	along := ((x-b.x0)*dx + (y-b.y0)*dy) / l
	across := ((x-b.x0)*dy - (y-b.y0)*dx) / l
	return along >= 0 && along <= l && math.Abs(across) <= b.width/2
}
