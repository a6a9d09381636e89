package outline

import (
	"math"

	"badgewright/reduce"
)

// The labels of a silhouette.
const (
	outside uint8 = 0
	solid   uint8 = 1
)

// silhouette is a separation as one piece of metal sees it: what is solid, and
// how much of each pixel is.
type silhouette struct {
	s    *reduce.Separation
	w, h int
	is   *[256]bool // labels that are solid
	in   []uint8    // solid or outside, by the majority of each pixel
}

func newSilhouette(s *reduce.Separation) *silhouette {
	v := &silhouette{s: s, w: s.W, h: s.H, is: s.Solid(), in: make([]uint8, len(s.Labels))}
	for i, l := range s.Labels {
		if v.is[l] {
			v.in[i] = solid
		}
	}
	return v
}

// at returns the label of a pixel; off the raster is outside.
func (v *silhouette) at(x, y int) uint8 {
	if x < 0 || y < 0 || x >= v.w || y >= v.h {
		return outside
	}
	return v.in[y*v.w+x]
}

// cover returns how much of a pixel is solid, 0..1.
func (v *silhouette) cover(x, y int) float64 {
	if x < 0 || y < 0 || x >= v.w || y >= v.h {
		return 0
	}
	return v.s.CoverOf(y*v.w+x, v.is)
}

// mixed says whether the edge is placed finer than a pixel at or beside one.
func (v *silhouette) mixed(x, y int) bool {
	for dy := -1; dy <= 1; dy++ {
		for dx := -1; dx <= 1; dx++ {
			if c := v.cover(x+dx, y+dy); c > 0 && c < 1 {
				return true
			}
		}
	}
	return false
}

// distance returns how far the middle of pixel (x, y) lies from the true edge
// of the silhouette near another pixel, the nearest of the other label. The
// edge is where the cover, taken to change evenly between the middles of
// pixels, is one half.
func (v *silhouette) distance(x, y, sx, sy int) float64 {
	return v.distanceFrom(float64(x), float64(y), sx, sy)
}

// distanceFrom is distance from any place, the middles of pixels lying at whole
// numbers.
func (v *silhouette) distanceFrom(x, y float64, sx, sy int) float64 {
	reach := 1
	if length(x-float64(sx), y-float64(sy)) <= tight {
		reach = 0 // further on lies the other side of a thin place
	}
	best := math.MaxFloat64
	var ends [4]crossing
	for cy := sy - 1 - reach; cy <= sy+reach; cy++ {
		for cx := sx - 1 - reach; cx <= sx+reach; cx++ {
			n := v.cell(cx, cy, &ends)
			for k := 0; k+1 < n; k += 2 {
				best = lesser(best, toStretch(x, y, ends[k], ends[k+1]))
			}
		}
	}
	if best == math.MaxFloat64 {
		return length(x-float64(sx), y-float64(sy)) - 0.5
	}
	return best
}

// tight is the distance in pixels up to which the edge is looked for beside the
// nearest pixel only.
const tight = 3

// crossing is a place where the edge crosses between two middles of pixels,
// those lying at whole numbers.
type crossing struct{ x, y float64 }

// cell lists the stretches of edge between the middles of pixel (x, y) and the
// three to its right and below, ends two and two (marching squares; of two
// solid corners across, the stretches go round the other two, as solid joins
// through corners).
func (v *silhouette) cell(x, y int, ends *[4]crossing) int {
	c := [4]float64{v.cover(x, y), v.cover(x+1, y), v.cover(x+1, y+1), v.cover(x, y+1)} // clockwise
	var at [4]crossing
	n, first := 0, -1
	for k := range c {
		a, b := c[k], c[(k+1)&3]
		if (a >= half) == (b >= half) {
			continue
		}
		t := (half - a) / (b - a)
		p, q := corners[k], corners[(k+1)&3]
		at[n] = crossing{float64(x) + p[0] + float64(t*(q[0]-p[0])), float64(y) + p[1] + float64(t*(q[1]-p[1]))}
		if n++; first < 0 {
			first = k
		}
	}
	if n == 4 && c[0] >= half { // corners 1 and 3 are outside: each is gone round
		ends[0], ends[1], ends[2], ends[3] = at[0], at[1], at[2], at[3]
		return 4
	}
	if n == 4 {
		ends[0], ends[1], ends[2], ends[3] = at[3], at[0], at[1], at[2]
		return 4
	}
	copy(ends[:], at[:n])
	return n
}

// half is the cover at the edge. A pixel that is just as much one as the other
// counts as its label says: the majority is never below 128 of 255.
const half = 0.5

var corners = [4][2]float64{{0, 0}, {1, 0}, {1, 1}, {0, 1}}

// toStretch returns how far a place lies from a stretch.
func toStretch(x, y float64, a, b crossing) float64 {
	dx, dy := b.x-a.x, b.y-a.y
	t := 0.0
	if l := float64(dx*dx) + float64(dy*dy); l > 0 {
		t = min(1, max(0, (float64((x-a.x)*dx)+float64((y-a.y)*dy))/l))
	}
	return length(x-a.x-float64(t*dx), y-a.y-float64(t*dy))
}

func length(x, y float64) float64 { return math.Sqrt(float64(x*x) + float64(y*y)) }

func lesser(a, b float64) float64 {
	if a < b {
		return a
	}
	return b
}
