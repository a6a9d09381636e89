package trace

import "badgewright/reduce"

// The classes that are not the label of one flat: void is all that is no part
// of the pin, metal is every metal flat.
const (
	void  uint8 = reduce.None
	metal uint8 = 254
)

// grid is the class of every pixel, with a border of void round the raster.
// Pixel (x, y) has index (y+1)*stride + x+1, and the corner at its upper left
// has the index of the pixel above and left of it.
type grid struct {
	s       *reduce.Separation
	w, h    int
	stride  int
	class   []uint8
	of      [256]uint8 // class of each label
	printed [256]bool  // by label: print, while what lies beneath it is traced
}

func newGrid(s *reduce.Separation) *grid {
	g := &grid{s: s, w: s.W, h: s.H, stride: s.W + 2, class: make([]uint8, (s.W+2)*(s.H+2))}
	for l := range g.of {
		g.of[l] = void
	}
	return g
}

// struckGrid classes what is struck and filled. Print lies on top of it and
// belongs to what is round it.
func struckGrid(s *reduce.Separation) *grid {
	g := newGrid(s)
	prints := false
	for l, f := range s.Flats {
		switch f.Role {
		case reduce.Metal:
			g.of[l] = metal
		case reduce.CutOut:
		case reduce.Printed:
			g.of[l], g.printed[l], prints = uint8(l), true, true
		default:
			g.of[l] = uint8(l)
		}
	}
	g.fill()
	if prints {
		g.unprint()
	}
	return g
}

// printGrid classes the print alone; ok is false when there is none.
func printGrid(s *reduce.Separation) (g *grid, ok bool) {
	g = newGrid(s)
	for l, f := range s.Flats {
		if f.Role == reduce.Printed {
			g.of[l], ok = uint8(l), true
		}
	}
	g.fill()
	return g, ok
}

func (g *grid) fill() {
	for p := range g.class[:g.stride] {
		g.class[p] = void
	}
	copy(g.class[(g.h+1)*g.stride:], g.class[:g.stride])
	for y := range g.h {
		row := g.class[(y+1)*g.stride : (y+2)*g.stride]
		row[0], row[g.w+1] = void, void
		for x, l := range g.s.Labels[y*g.w : y*g.w+g.w] {
			row[x+1] = g.of[l]
		}
	}
}

// mix returns the second class of a pixel and its share, 0 when it has none.
func (g *grid) mix(x, y int) (other uint8, share float64) {
	if x < 0 || y < 0 || x >= g.w || y >= g.h {
		return 0, 0
	}
	i := y*g.w + x
	c := g.s.Cover[i]
	if c == 255 {
		return 0, 0
	}
	l, b := g.s.Labels[i], g.s.Beside[i]
	if g.of[b] == g.of[l] || g.printed[l] || g.printed[b] {
		return 0, 0
	}
	return g.of[b], float64(255-c) / 255
}

// around are the four classes that meet at a corner, going round from the
// upper right: upper right, lower right, lower left, upper left.
func (g *grid) around(corner int) [4]uint8 {
	return [4]uint8{g.class[corner+1], g.class[corner+g.stride+1], g.class[corner+g.stride], g.class[corner]}
}

// The four ways from one corner to the next: right, down, left, up. Walking
// way d from a corner, around(corner)[d] lies to the left hand and the next of
// the four to the right.
const (
	right = iota
	down
	left
	up
)

func turn(d, by int) int { return (d + by) & 3 }

// step returns how far the index of the next corner lies.
func (g *grid) step(d int) int {
	switch d {
	case right:
		return 1
	case down:
		return g.stride
	case left:
		return -1
	}
	return -g.stride
}

// stepX and stepY are the steps of the four ways.
var stepX, stepY = [4]int{1, 0, -1, 0}, [4]int{0, 1, 0, -1}

// place returns where a corner lies.
func (g *grid) place(corner int) (x, y int) { return corner % g.stride, corner / g.stride }
