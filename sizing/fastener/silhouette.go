package fastener

import (
	"math"

	"badgewright/sizing"
)

// gridLong is the longest side, in cells, of the raster on which balance and
// places are worked out: on a 60 mm piece a cell is a fifth of a millimetre,
// finer than a maker can place a post.
const gridLong = 300

// silhouette is everything solid, brought down to a raster of cells. Cell
// (x, y) has its centre at (x+0.5, y+0.5) cells from the grid's corner, which
// lies x0, y0 mm from the left and top of the badge's outline.
type silhouette struct {
	w, h   int
	cell   float64 // mm a side
	x0, y0 float64
	share  []float64 // of each cell that is metal, 0..1
}

// gridOf brings a badge down to cells. The grid is centred on the outline, so
// that mirrored art gives a mirrored grid to within a pixel.
func gridOf(b *sizing.Badge) *silhouette {
	left, top := int(math.Floor(b.Outline[0])), int(math.Floor(b.Outline[1]))
	wide, high := int(math.Ceil(b.Outline[2]))-left, int(math.Ceil(b.Outline[3]))-top
	k := max(1, (max(wide, high)+gridLong-1)/gridLong)
	g := &silhouette{w: (wide + k - 1) / k, h: (high + k - 1) / k}
	left -= (g.w*k - wide) / 2
	top -= (g.h*k - high) / 2
	g.cell = float64(k) / float64(b.Scale)
	g.x0 = float64(b.Scale.MM(float64(left) - b.Outline[0]))
	g.y0 = float64(b.Scale.MM(float64(top) - b.Outline[1]))
	g.share = shares(b, left, top, k, g.w, g.h)
	return g
}

// shares adds up what is solid in each block of k x k pixels.
func shares(b *sizing.Badge, left, top, k, w, h int) []float64 {
	s := b.Sep
	var in [256]uint32
	for l, solid := range s.Solid() {
		if solid {
			in[l] = 1
		}
	}
	sum := make([]uint32, w*h)
	from, to := max(0, left), min(s.W, left+w*k)
	for y := max(0, top); y < min(s.H, top+h*k); y++ {
		c := (y - top) / k * w
		at := y * s.W
		addRow(sum[c:c+w], s.Labels[at+from:at+to], s.Beside[at+from:at+to], s.Cover[at+from:at+to], &in, from-left, k)
	}
	share := make([]float64, w*h)
	for i, n := range sum {
		share[i] = float64(n) / float64(255*k*k)
	}
	return share
}

// addRow adds one row of pixels to its row of blocks: whole pixels a run at a
// time, those on a boundary one by one. The row starts shift pixels into the
// first block.
func addRow(sum []uint32, label, beside, cover []uint8, in *[256]uint32, shift, k int) {
	beside, cover = beside[:len(label)], cover[:len(label)]
	for x := 0; x < len(label); {
		l, x0 := label[x], x
		for x < len(label) && label[x] == l && cover[x] == 255 {
			x++
		}
		if in[l] == 1 {
			addRun(sum, x0+shift, x+shift, k)
		}
		if x > x0 {
			continue
		}
		c := uint32(cover[x])
		sum[(x+shift)/k] += in[l]*c + in[beside[x]]*(255-c)
		x++
	}
}

// addRun adds whole pixels x0..x1-1 to the blocks they fall in.
func addRun(sum []uint32, x0, x1, k int) {
	for x0 < x1 {
		i := x0 / k
		end := min(x1, (i+1)*k)
		sum[i] += 255 * uint32(end-x0)
		x0 = end
	}
}

// geometry describes a flat shape. Lengths are mm from the grid's corner, x to
// the right and y down.
type geometry struct {
	Area   float64 // mm2
	CX, CY float64 // centroid
	// Second moments about the centroid, mm4: IXX is of y2, IYY of x2, IXY of xy.
	IXX, IYY, IXY float64
	IMin, IMax    float64 // principal
	// Angle of the long axis from the x axis towards y (down), -pi/2..pi/2.
	Angle float64
	// Box is left, top, right and bottom of the cells more than half metal.
	Box             [4]float64
	Feret, MinWidth float64 // widest and narrowest span
}

// measure returns the geometry of a raster of shares. Each cell adds its own
// second moment, a twelfth of its side squared, which sums over cell centres
// alone leave out.
func (g *silhouette) measure(share []float64) geometry {
	var n, sx, sy, sxx, syy, sxy float64
	for y := range g.h {
		fy := float64(y) + 0.5
		var rn, rx, rxx float64
		for x, s := range share[y*g.w : y*g.w+g.w] {
			fx := float64(x) + 0.5
			rn += s
			rx += float64(s * fx)
			rxx += float64(s * float64(fx*fx))
		}
		n += rn
		sx += rx
		sxx += rxx
		sy += float64(rn * fy)
		syy += float64(rn * float64(fy*fy))
		sxy += float64(rx * fy)
	}
	if n == 0 {
		return geometry{}
	}
	c, own := g.cell, n/12
	c4 := float64(c*c) * float64(c*c)
	m := geometry{Area: n * c * c, CX: sx / n * c, CY: sy / n * c}
	m.IYY = (sxx - float64(sx*sx/n) + own) * c4
	m.IXX = (syy - float64(sy*sy/n) + own) * c4
	m.IXY = (sxy - float64(sx*sy/n)) * c4
	m.principal()
	m.Box = g.box(share)
	m.Feret, m.MinWidth = g.spans(share)
	return m
}

// principal fills in the principal moments and the long axis (Mohr's circle).
func (m *geometry) principal() {
	mid, half := (m.IXX+m.IYY)/2, length((m.IYY-m.IXX)/2, m.IXY)
	m.IMin, m.IMax = mid-half, mid+half
	m.Angle = 0.5 * math.Atan2(2*m.IXY, m.IYY-m.IXX)
}

// Aspect is how long a shape is against its breadth, from its principal
// moments: a/b for a rectangle a x b and for an ellipse, 1 for a disc or a ring.
func (m *geometry) Aspect() float64 {
	if m.IMin <= 0 {
		return 1
	}
	return math.Sqrt(m.IMax / m.IMin)
}

// mostly is the share above which a cell counts as metal.
const mostly = 0.5

func (g *silhouette) box(share []float64) [4]float64 {
	x0, y0, x1, y1 := g.w, g.h, 0, 0
	for y := range g.h {
		for x, s := range share[y*g.w : y*g.w+g.w] {
			if s >= mostly {
				x0, x1, y0, y1 = min(x0, x), max(x1, x+1), min(y0, y), max(y1, y+1)
			}
		}
	}
	return [4]float64{float64(x0) * g.cell, float64(y0) * g.cell, float64(x1) * g.cell, float64(y1) * g.cell}
}
