package fastener

import (
	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// Shape is a silhouette with all that is found of it once, whatever its size.
// Lengths in it are working pixels.
type Shape struct {
	plate *plate
	whole geometry
	box   [4]float64 // of the outline, from the grid's corner
	kept  map[placeKey]place
	// last is the shape at the scale asked for last.
	last      *sized
	lastScale unit.PxPerMM
}

// ShapeOf looks at the silhouette of a separation, whose box is its outline.
func ShapeOf(sep *reduce.Separation, outline [4]float64) (*Shape, error) {
	nothing := &reduce.Refusal{What: "There is nothing solid to put a post on.", Do: "Give at least one colour a part in the pin."}
	if !(outline[2] > outline[0]) || !(outline[3] > outline[1]) {
		return nil, nothing
	}
	g := gridOf(&sizing.Badge{Sep: sep, Outline: outline, Scale: 1})
	whole := g.measure(g.share)
	if whole.Area == 0 {
		return nil, nothing
	}
	s := &Shape{plate: plateOf(g, whole), whole: whole}
	s.box = [4]float64{-g.x0, -g.y0, outline[2] - outline[0] - g.x0, outline[3] - outline[1] - g.y0}
	return s, nil
}

// sized is a shape at a scale: what follows is in mm.
type sized struct {
	*plate
	whole geometry
	box   [4]float64 // of the outline, mm from the grid's corner
}

// at brings the shape to a scale: a post that is dragged asks for the same
// every frame.
func (s *Shape) at(scale unit.PxPerMM) *sized {
	if s.last != nil && s.lastScale == scale {
		return s.last
	}
	mm := 1 / float64(scale)
	z := &sized{plate: s.plate.scaled(mm), whole: s.whole.scaled(mm), box: s.box}
	for i := range z.box {
		z.box[i] *= mm
	}
	s.last, s.lastScale = z, scale
	return z
}

func (z *sized) width() float64   { return z.box[2] - z.box[0] }
func (z *sized) height() float64  { return z.box[3] - z.box[1] }
func (z *sized) longest() float64 { return max(z.width(), z.height()) }

// post gives a place as it is measured: from the outline's left and top.
func (z *sized) post(q point) sizing.Post {
	return sizing.Post{X: place2(q.x - z.box[0]), Y: place2(q.y - z.box[1])}
}

// point is the other way about.
func (z *sized) point(p sizing.Post) point {
	return point{float64(p.X) + z.box[0], float64(p.Y) + z.box[1]}
}

// Shares gives places as a design keeps them: in shares of the outline's width
// and height, held inside it.
func (s *Shape) Shares(scale unit.PxPerMM, posts []sizing.Post) [][2]float64 {
	z := s.at(scale)
	out := make([][2]float64, len(posts))
	for i, p := range posts {
		out[i] = [2]float64{min(max(float64(p.X)/z.width(), 0), 1), min(max(float64(p.Y)/z.height(), 0), 1)}
	}
	return out
}

// scaled multiplies every length.
func (p *plate) scaled(by float64) *plate {
	q, g := *p, *p.silhouette
	g.cell, g.x0, g.y0 = g.cell*by, g.x0*by, g.y0*by
	q.silhouette, q.geometry, q.most = &g, p.geometry.scaled(by), p.most*by
	q.clear = make([]float64, len(p.clear))
	for i, c := range p.clear {
		q.clear[i] = c * by
	}
	return &q
}

func (m geometry) scaled(by float64) geometry {
	by2 := by * by
	by4 := by2 * by2
	m.Area *= by2
	m.CX, m.CY, m.Feret, m.MinWidth = m.CX*by, m.CY*by, m.Feret*by, m.MinWidth*by
	m.IXX, m.IYY, m.IXY, m.IMin, m.IMax = m.IXX*by4, m.IYY*by4, m.IXY*by4, m.IMin*by4, m.IMax*by4
	for i := range m.Box {
		m.Box[i] *= by
	}
	return m
}

// Filled is the area in px2 of a separation that is cut deeper than its metal
// and filled: its enamels.
func Filled(sep *reduce.Separation) float64 {
	var full [256]int
	var enamel [256]bool
	for l, f := range sep.Flats {
		enamel[l] = f.Role == reduce.Enamel
	}
	part := 0
	for i, l := range sep.Labels {
		if c := sep.Cover[i]; c == 255 {
			full[l]++
		} else {
			part += covered(enamel[l], c) + covered(enamel[sep.Beside[i]], 255-c)
		}
	}
	n := 0
	for l, has := range enamel {
		if has {
			n += full[l]
		}
	}
	return float64(n) + float64(part)/255
}

func covered(has bool, c uint8) int {
	if has {
		return int(c)
	}
	return 0
}

// Outlines returns the convex hull of each part of the silhouette at a scale,
// in mm, the one that carries the posts first; exact is how far its corners may
// be off.
func (s *Shape) Outlines(scale unit.PxPerMM) (hulls [][][2]float64, exact float64) {
	z := s.at(scale)
	for _, h := range z.hulls {
		hull := make([][2]float64, len(h))
		for i, q := range h {
			hull[i] = [2]float64{q.x * z.cell, q.y * z.cell}
		}
		hulls = append(hulls, hull)
	}
	return hulls, z.cell
}
