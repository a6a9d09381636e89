package proof

import (
	"badgewright/reduce"
	"badgewright/reduce/mask"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// Classes of pixels beside the flats that hold a colour, which have their index.
const (
	metal   uint8 = 254
	outside uint8 = 255 // background and cut-outs
)

// Asked is the struck pin as a picture is held against it: what depends on the
// pin alone, found once for all of its proofs.
type Asked struct {
	Badge *sizing.Badge
	class []uint8 // of each pixel
	of    [256]uint8
	cells *mask.Components
	cell  []int32 // the connected part that each pixel belongs to
	// deep is the squared distance to the nearest pixel of another class, px2.
	deep       []int32
	loops      []loop  // borders of everything solid, the longest first
	edges      []edge  // on all borders, a few thousand
	lines      []cross // across metal lines
	every      int     // how many px of a line there are to a way across
	holes      []int32 // cells outside that the pin closes in
	drawnMetal rgb
	large      int // the loop round the largest part
}

// Ask prepares a struck pin.
func Ask(b *sizing.Badge, p reduce.Progress) (*Asked, error) {
	p = orNone(p)
	a := &Asked{Badge: b}
	if err := p(0, "reading the pin"); err != nil {
		return nil, err
	}
	a.classify()
	a.findCells()
	f := mask.Others(a.class, b.Sep.W, b.Sep.H, &[256]bool{outside: true})
	a.deep = f.D2
	if err := p(0.4, "finding its edges"); err != nil {
		return nil, err
	}
	a.findLoops()
	if len(a.loops) == 0 {
		return nil, &reduce.Refusal{What: "Nothing of this pin is struck: there is nothing to hold a proof against.", Do: "Give one colour its enamel or metal."}
	}
	a.findEdges()
	if err := p(0.7, "measuring its lines"); err != nil {
		return nil, err
	}
	a.findLines()
	return a, p(1, "reading the pin")
}

func orNone(p reduce.Progress) reduce.Progress {
	if p == nil {
		return func(float64, string) error { return nil }
	}
	return p
}

// classify gives each pixel its class; all metal is one.
func (a *Asked) classify() {
	s := a.Badge.Sep
	for l := range a.of {
		a.of[l] = outside
	}
	for l, f := range s.Flats {
		switch f.Role {
		case reduce.Metal:
			a.of[l] = metal
			a.drawnMetal = rgbOf(f.RGB)
		case reduce.CutOut:
		default:
			a.of[l] = uint8(l)
		}
	}
	a.class = make([]uint8, len(s.Labels))
	for i, l := range s.Labels {
		a.class[i] = a.of[l]
	}
}

func (a *Asked) findCells() {
	s := a.Badge.Sep
	a.cells = mask.Connect(a.class, s.W, s.H, &[256]bool{metal: true})
	a.cell = make([]int32, len(a.class))
	open := make([]bool, len(a.cells.Area))
	for y := range s.H {
		for _, r := range a.cells.Runs[a.cells.Row[y]:a.cells.Row[y+1]] {
			for x := r.X0; x < r.X1; x++ {
				a.cell[y*s.W+int(x)] = r.Comp
			}
			if y == 0 || y == s.H-1 || r.X0 == 0 || int(r.X1) == s.W {
				open[r.Comp] = true
			}
		}
	}
	for c, l := range a.cells.Label {
		if l == outside && !open[c] {
			a.holes = append(a.holes, int32(c))
		}
	}
}

// cover is how much of a pixel belongs to a class, 0..1.
func (a *Asked) cover(i int, class uint8) float64 {
	s := a.Badge.Sep
	c := float64(s.Cover[i]) / 255
	sum := 0.0
	if a.of[s.Labels[i]] == class {
		sum = c
	}
	if a.of[s.Beside[i]] == class {
		sum += 1 - c
	}
	return sum
}

// coverAt is the cover of a class at a place, mixed of the pixels round it.
func (a *Asked) coverAt(x, y float64, class uint8) float64 {
	s := a.Badge.Sep
	x, y = min(max(x-0.5, 0), float64(s.W-1)), min(max(y-0.5, 0), float64(s.H-1))
	x0, y0 := int(x), int(y)
	x1, y1 := min(x0+1, s.W-1), min(y0+1, s.H-1)
	fx, fy := x-float64(x0), y-float64(y0)
	top, low := a.cover(y0*s.W+x0, class), a.cover(y1*s.W+x0, class)
	top += float64(fx * (a.cover(y0*s.W+x1, class) - top))
	low += float64(fx * (a.cover(y1*s.W+x1, class) - low))
	return top + float64(fy*(low-top))
}

// index is the pixel that a place lies in; ok is false off the raster.
func (a *Asked) index(x, y float64) (i int, ok bool) {
	s := a.Badge.Sep
	if x < 0 || y < 0 || x >= float64(s.W) || y >= float64(s.H) {
		return 0, false
	}
	return int(y)*s.W + int(x), true
}

// classAt is the class of the pixel that a place lies in.
func (a *Asked) classAt(x, y float64) uint8 {
	if i, ok := a.index(x, y); ok {
		return a.class[i]
	}
	return outside
}

func (a *Asked) px(mm unit.MM) float64 { return mm.Px(a.Badge.Scale) }
func (a *Asked) mm(px float64) unit.MM { return a.Badge.Scale.MM(px) }

// askedColour is the colour of a class as it was asked for; of metal, as drawn.
func (a *Asked) askedColour(class uint8) rgb {
	if class == metal {
		return a.drawnMetal
	}
	return rgbOf(a.Badge.Sep.Flats[class].RGB)
}
