package mend

import (
	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/wall"
)

// mostlyWhole is the share of the drawing from which a box of it is measured as
// the whole is.
const mostlyWhole = 0.5

// locally measures a box of the drawing as if it were framed in metal, and
// returns the trouble spots whose worst place lies in it. A margin round the
// box is measured with it, so that what is cut off there does not count.
func (b *bench) locally(q box) ([]sizing.Finding, error) {
	margin := 2*b.most() + 8
	cut := b.wider(q, margin)
	s, dx, dy := b.framed(cut)
	m, err := wall.Measure(s, nil)
	if err != nil {
		return nil, err
	}
	var in []sizing.Finding
	for _, f := range m.Findings(b.d.Scale, b.d.Limits) {
		moved(&f, dx, dy)
		if f.X >= float64(q.x0) && f.Y >= float64(q.y0) && f.X < float64(q.x1) && f.Y < float64(q.y1) {
			in = append(in, f)
		}
	}
	return in, nil
}

// before is locally for the drawing as it stands, found once.
func (b *bench) before(q box) ([]sizing.Finding, error) {
	if all, ok := b.seen[q]; ok {
		return all, nil
	}
	all, err := b.locally(q)
	if err == nil {
		b.seen[q] = all
	}
	return all, err
}

// framed cuts a box out and lays a frame of metal round it, as wide as an edge
// must be, so that nothing that is cut through lies open. Most of the drawing
// is taken whole.
func (b *bench) framed(q box) (s *reduce.Separation, dx, dy float64) {
	w, h := q.x1-q.x0, q.y1-q.y0
	if float64(w*h) >= mostlyWhole*float64(b.sep.W*b.sep.H) {
		return b.sep, 0, 0
	}
	frame := int(b.most()) + 4
	s = reduce.NewSeparation(w+2*frame, h+2*frame)
	s.Flats = b.sep.Flats
	metal := metalOf(s.Flats)
	for i := range s.Labels {
		s.Labels[i], s.Beside[i] = metal, metal
	}
	for y := range h {
		from, to := (q.y0+y)*b.sep.W+q.x0, (frame+y)*s.W+frame
		copy(s.Labels[to:to+w], b.sep.Labels[from:])
		copy(s.Beside[to:to+w], b.sep.Beside[from:])
		copy(s.Cover[to:to+w], b.sep.Cover[from:])
	}
	return s, float64(q.x0 - frame), float64(q.y0 - frame)
}

// metalOf returns the label of a metal; what a builder has applied recipes to
// has one.
func metalOf(flats []reduce.Flat) uint8 {
	for l, f := range flats {
		if f.Role == reduce.Metal {
			return uint8(l)
		}
	}
	return reduce.None
}

// moved brings a trouble spot from a box to where it lies in the drawing.
func moved(f *sizing.Finding, dx, dy float64) {
	f.X, f.X0, f.X1 = f.X+dx, f.X0+dx, f.X1+dx
	f.Y, f.Y0, f.Y1 = f.Y+dy, f.Y0+dy, f.Y1+dy
	if f.Ends != [4]float64{} {
		f.Ends = [4]float64{f.Ends[0] + dx, f.Ends[1] + dy, f.Ends[2] + dx, f.Ends[3] + dy}
	}
	for i := range f.Path {
		if i%2 == 0 {
			f.Path[i] += float32(dx)
		} else {
			f.Path[i] += float32(dy)
		}
	}
}
