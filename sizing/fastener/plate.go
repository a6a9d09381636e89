package fastener

import (
	"math"

	"badgewright/reduce/mask"
)

// plate is the part that carries the posts: the upper piece of a dangle, the
// whole pin otherwise.
type plate struct {
	*silhouette
	geometry
	parts  int       // connected parts of the silhouette, specks left out
	hulls  [][]point // of those parts, in cells, the one that carries the posts first
	metal  []uint8   // 1 on this part's cells
	clear  []float64 // mm from a cell's centre to the nearest edge or cut-out; 0 off the metal
	most   float64   // the greatest of clear
	ax, ay float64   // the way the part runs: its long axis, or upright when it is compact
	fits   []fitting // the ways to be content with a place, best first
	// symmetric says that left and right are mirror images about the centroid.
	symmetric bool
}

// A part smaller than this share of the largest carries no post, and one below
// the smaller share is a speck, not a part (this tool's choice).
const (
	carrierShare = 0.15
	speckShare   = 0.01
)

// plateOf finds the part that carries the posts and how far each of its cells
// lies from the edge. whole is the geometry of the silhouette.
func plateOf(g *silhouette, whole geometry) *plate {
	p := &plate{silhouette: g, geometry: whole, fits: posts.fittings()}
	p.metal = make([]uint8, g.w*g.h)
	for i, s := range g.share {
		if s >= mostly {
			p.metal[i] = 1
		}
	}
	p.carrier()
	if p.parts > 1 {
		alone := make([]float64, len(p.metal))
		for i, m := range p.metal {
			alone[i] = float64(m)
		}
		p.geometry = g.measure(alone)
	}
	p.distances()
	p.symmetric = p.mirrors()
	p.ax, p.ay = 0, 1
	if p.Aspect() > compactUntil && !p.symmetric {
		p.ay, p.ax = math.Sincos(p.Angle)
	}
	return p
}

// carrier keeps the uppermost part that is large enough to carry a post.
func (p *plate) carrier() {
	c := mask.Connect(p.metal, p.w, p.h, new([256]bool))
	largest := 0
	for i, a := range c.Area {
		if c.Label[i] == 1 {
			largest = max(largest, a)
		}
	}
	best, highest := int32(-1), math.Inf(1)
	var parts []int32
	for i, middle := range middles(c) {
		if c.Label[i] != 1 {
			continue
		}
		a := float64(c.Area[i])
		if a >= speckShare*float64(largest) {
			parts = append(parts, int32(i))
		}
		if a >= carrierShare*float64(largest) && middle < highest {
			best, highest = int32(i), middle
		}
	}
	p.parts, p.hulls = len(parts), hullsOf(c, parts, best)
	for y := range p.h {
		for _, r := range c.Runs[c.Row[y]:c.Row[y+1]] {
			if r.Label == 1 && r.Comp != best {
				clear(p.metal[y*p.w+int(r.X0) : y*p.w+int(r.X1)])
			}
		}
	}
}

// middles returns the mean row of each part.
func middles(c *mask.Components) []float64 {
	sum := make([]float64, len(c.Area))
	for y := range c.H {
		for _, r := range c.Runs[c.Row[y]:c.Row[y+1]] {
			sum[r.Comp] += float64(int(r.X1-r.X0) * y)
		}
	}
	for i := range sum {
		sum[i] /= float64(c.Area[i])
	}
	return sum
}

// distances fills clear: the edge runs half a cell before the nearest cell
// that is not metal.
func (p *plate) distances() {
	f := mask.Others(p.metal, p.w, p.h, &[256]bool{0: true})
	p.clear = make([]float64, len(p.metal))
	for i, d2 := range f.D2 {
		if d2 > 0 {
			p.clear[i] = (math.Sqrt(float64(d2)) - 0.5) * p.cell
			p.most = max(p.most, p.clear[i])
		}
	}
}

// mirrorShare is how much of a shape must fall on its mirror image for it to
// be treated as symmetric (this tool's choice).
const mirrorShare = 0.96

func (p *plate) mirrors() bool {
	double := int(math.Round(2 * p.CX / p.cell)) // mirror of x is double-1-x
	both, any := 0, 0
	for y := range p.h {
		row := p.metal[y*p.w : y*p.w+p.w]
		for x, m := range row {
			if m == 0 {
				continue
			}
			any++
			if o := double - 1 - x; o >= 0 && o < p.w && row[o] == 1 {
				both++
			}
		}
	}
	return float64(both) >= mirrorShare*float64(any)
}

// wide and high are the sides of the part's box, mm.
func (p *plate) wide() float64 { return p.Box[2] - p.Box[0] }
func (p *plate) high() float64 { return p.Box[3] - p.Box[1] }

// at returns the clearance at a point in mm from the grid's corner.
func (p *plate) at(q point) float64 {
	x, y := int(q.x/p.cell), int(q.y/p.cell)
	if q.x < 0 || q.y < 0 || x >= p.w || y >= p.h {
		return 0
	}
	return p.clear[y*p.w+x]
}

// centre returns the middle of a cell.
func (p *plate) centre(x, y int) point {
	return point{(float64(x) + 0.5) * p.cell, (float64(y) + 0.5) * p.cell}
}
