package wall

import (
	"math"

	"badgewright/reduce"
	"badgewright/reduce/mask"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// place is a point of the working raster, in pixels.
type place struct{ x, y float64 }

// pointsOf brings shares of the drawing's width and height to pixels.
func (b *Builder) pointsOf(shares [][2]float64) []place {
	all := make([]place, len(shares))
	for i, p := range shares {
		all[i] = place{p[0] * float64(b.base.W), p[1] * float64(b.base.H)}
	}
	return all
}

// HandLines are the lines that recipes draw and erase, in order, as a fill meets
// them on a raster w pixels wide.
func HandLines(recipes []sizing.Recipe, l sizing.Limits, scale unit.PxPerMM, w int) []reduce.HandLine {
	var all []reduce.HandLine
	for _, r := range recipes {
		if r.Kind == sizing.DrawLine || r.Kind == sizing.EraseLine || r.Kind == sizing.CloseGap {
			all = append(all, reduce.HandLine{Points: r.Points, Width: widthOf(r, l.Line).Px(scale) / float64(w), Erased: r.Kind == sizing.EraseLine})
		}
	}
	return all
}

// near calls with every pixel within reach of a line through points, and how
// far its middle is from the line. One point is a dot.
func (b *Builder) near(line []place, reach float64, with func(i int, distance float64)) {
	if len(line) == 0 {
		return
	}
	x0, y0, x1, y1 := math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for _, p := range line {
		x0, y0, x1, y1 = min(x0, p.x), min(y0, p.y), max(x1, p.x), max(y1, p.y)
	}
	w, h := b.base.W, b.base.H
	for y := max(0, int(y0-reach)-1); y <= min(h-1, int(y1+reach)+1); y++ {
		for x := max(0, int(x0-reach)-1); x <= min(w-1, int(x1+reach)+1); x++ {
			if d := distanceTo(line, float64(x)+0.5, float64(y)+0.5); d < reach {
				with(y*w+x, d)
			}
		}
	}
}

// distanceTo is how far a place is from the nearest of a line's stretches.
func distanceTo(line []place, x, y float64) float64 {
	least := math.Inf(1)
	for i, a := range line {
		b := line[min(i+1, len(line)-1)]
		dx, dy := b.x-a.x, b.y-a.y
		t := 0.0
		if long := float64(dx*dx) + float64(dy*dy); long > 0 {
			t = min(1, max(0, (float64((x-a.x)*dx)+float64((y-a.y)*dy))/long))
		}
		ex, ey := x-a.x-float64(t*dx), y-a.y-float64(t*dy)
		least = min(least, float64(ex*ex)+float64(ey*ey))
	}
	return math.Sqrt(least)
}

// draw lays metal along a line, of a width in pixels, over whatever is there:
// a gap in the outline is closed with metal outside it too.
func (b *Builder) draw(s *reduce.Separation, line []place, width float64, label uint8) {
	half := width / 2
	b.near(line, half+0.5, func(i int, d float64) {
		part := min(1, half+0.5-d)
		b.cover(s, i, label, uint8(255*part))
	})
}

// cover gives at least a part of a pixel, 0..255, to metal.
func (b *Builder) cover(s *reduce.Separation, i int, label, part uint8) {
	own, beside := s.Labels[i], s.Beside[i]
	switch {
	case own == label:
		if s.Cover[i] = max(s.Cover[i], part); s.Cover[i] == 255 {
			s.Beside[i] = label
		}
	case part >= 128:
		s.Labels[i], s.Beside[i], s.Cover[i], s.Built[i] = label, own, part, true
		if part == 255 {
			s.Beside[i] = label
		}
	case part > 0 && (beside != label || 255-s.Cover[i] < part):
		s.Beside[i], s.Cover[i] = label, 255-part
	}
}

// erase takes metal away along a line, of a width in pixels: what lies nearest
// beside it takes its place.
func (b *Builder) erase(s *reduce.Separation, line []place, width float64) {
	solid := s.WithRole(reduce.Metal)
	other := make([]bool, len(s.Labels)) // not metal, or metal that stays
	var gone []int
	for i, l := range s.Labels {
		other[i] = !solid[l] && !solid[s.Beside[i]]
	}
	b.near(line, width/2, func(i int, _ float64) {
		if solid[s.Labels[i]] || solid[s.Beside[i]] {
			gone = append(gone, i)
		}
	})
	f, some := mask.Nearest(other, s.W, s.H)
	if !some {
		return
	}
	for _, i := range gone {
		x, y := f.Site(i%s.W, i/s.W)
		l := s.Labels[y*s.W+x]
		s.Labels[i], s.Beside[i], s.Cover[i], s.Built[i] = l, l, 255, false
	}
}
