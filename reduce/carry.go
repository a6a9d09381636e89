package reduce

import "badgewright/reduce/colour"

// Carried is what becomes of the edits of one drawing on its next revision.
type Carried struct {
	Edits []Edit
	// Lost are edits whose flat, or whose place, the revision no longer has.
	Lost []Edit
	// Changed is the share (0..1) of all that is drawn in either that is of
	// another flat in the revision than before.
	Changed float64
	// Laid says where a place of the old drawing is in the new.
	Laid Laid
	// To names for each finest flat of the old drawing the one of the new that
	// took its place; a flat that went is not in it.
	To map[FlatID]FlatID
}

const (
	// sameFlat is the least share of the smaller of two flats that must lie on
	// the other for them to be one across a revision.
	sameFlat = 0.5
	// sameHue is how far, in CIEDE2000, a flat of the revision may be from the
	// flat it lies on: further, it is a recolouring by the artist, which counts
	// as the same flat only where nearly all of it lies on the old one.
	sameHue   = 12
	nearlyAll = 0.9
)

// Laid takes places of one drawing, in shares of width and height, to another:
// X, Y and then their factors.
type Laid struct{ X, Y, KX, KY float64 }

// At is where a place of the old drawing is in the new.
func (l Laid) At(x, y float64) (float64, float64) {
	return l.X + float64(l.KX*x), l.Y + float64(l.KY*y)
}

// from is where a place of the new drawing was in the old.
func (l Laid) from(x, y float64) (float64, float64) { return (x - l.X) / l.KX, (y - l.Y) / l.KY }

// sameCanvas is how far, in 1, the proportions of two canvases may differ for
// them to be the same canvas.
const sameCanvas = 0.01

// layOn lays an old drawing on its revision: canvas on canvas when both have
// the same proportions, else what is drawn on what is drawn.
func layOn(old, now *Analysis) Laid {
	was, is := float64(old.w)/float64(old.h), float64(now.w)/float64(now.h)
	a, b := old.drawnBox(), now.drawnBox()
	if was/is < 1+sameCanvas && is/was < 1+sameCanvas || a[2] <= a[0] || b[2] <= b[0] || a[3] <= a[1] || b[3] <= b[1] {
		return Laid{KX: 1, KY: 1}
	}
	kx, ky := (b[2]-b[0])/(a[2]-a[0]), (b[3]-b[1])/(a[3]-a[1])
	return Laid{X: b[0] - float64(kx*a[0]), Y: b[1] - float64(ky*a[1]), KX: kx, KY: ky}
}

// drawnBox is the box of all that is not background, in shares of the canvas.
func (a *Analysis) drawnBox() [4]float64 {
	x0, y0, x1, y1 := a.w, a.h, 0, 0
	for i, l := range a.f.label {
		if l != None {
			x, y := i%a.w, i/a.w
			x0, y0, x1, y1 = min(x0, x), min(y0, y), max(x1, x+1), max(y1, y+1)
		}
	}
	w, h := float64(a.w), float64(a.h)
	return [4]float64{float64(x0) / w, float64(y0) / h, float64(x1) / w, float64(y1) / h}
}

// Carry takes the edits made to an old drawing over to its revision.
func Carry(old, now *Analysis, edits []Edit) Carried {
	c := Carried{Laid: layOn(old, now)}
	over := overlaps(old, now, c.Laid)
	c.To = over.matches(old, now)
	c.Changed = over.changed(c.To)
	added := len(old.leaves) // the number that the next split or new fill takes
	news := len(now.leaves)
	for _, e := range edits {
		to, ok := e, true
		to.Flat, ok = c.flat(e.Flat, ok)
		if e.Op == Join || e.Op == Apart {
			to.With, ok = c.flat(e.With, ok)
		}
		if e.Op == Split || e.Op == Fill { // these go by their place
			to.X, to.Y = c.Laid.At(e.X, e.Y)
			to.Gap, to.Lines = c.Laid.gap(e.Gap), c.Laid.lines(e.Lines)
			ok = now.holdsAt(to)
			if _, had := c.To[e.Flat]; !had {
				to.Flat = 0
			}
		}
		if !ok {
			c.Lost = append(c.Lost, e)
			continue
		}
		c.Edits = append(c.Edits, to)
		if e.Op == Split || e.Op == Fill {
			c.To[FlatID(added)] = FlatID(news)
			added, news = added+1, news+1
		}
	}
	return c
}

func (l Laid) gap(g *[4]float64) *[4]float64 {
	if g == nil {
		return nil
	}
	var to [4]float64
	to[0], to[1] = l.At(g[0], g[1])
	to[2], to[3] = l.At(g[2], g[3])
	return &to
}

func (l Laid) lines(all []HandLine) []HandLine {
	var to []HandLine
	for _, h := range all {
		points := make([][2]float64, len(h.Points))
		for i, p := range h.Points {
			points[i][0], points[i][1] = l.At(p[0], p[1])
		}
		to = append(to, HandLine{Points: points, Width: h.Width * l.KX})
	}
	return to
}

func (c *Carried) flat(id FlatID, ok bool) (FlatID, bool) {
	to, has := c.To[id]
	return to, ok && has
}

// holdsAt is true when there is something to change under an edit's place.
func (a *Analysis) holdsAt(e Edit) bool {
	d := a.desk(false)
	at, ok := d.place(e)
	return ok && (a.f.label[at] != None || e.Op == Fill)
}

// overlap counts the pixels of each two flats of two drawings that lie on each
// other; the last row and column are the background.
type overlap struct {
	n        [][]int
	old, now []int
}

// overlaps lays an old drawing on a new one, place by place of the new raster.
func overlaps(old, now *Analysis, laid Laid) *overlap {
	o := &overlap{n: make([][]int, len(old.leaves)+1), old: make([]int, len(old.leaves)+1), now: make([]int, len(now.leaves)+1)}
	for k := range o.n {
		o.n[k] = make([]int, len(now.leaves)+1)
	}
	for i, l := range now.f.label {
		x, y := laid.from((float64(i%now.w)+0.5)/float64(now.w), (float64(i/now.w)+0.5)/float64(now.h))
		a, b := index(old.labelAt(x, y), len(old.leaves)), index(l, len(now.leaves))
		o.n[a][b]++
		o.old[a]++
		o.now[b]++
	}
	return o
}

// labelAt is the label at a place in shares of the canvas; None off it.
func (a *Analysis) labelAt(x, y float64) uint8 {
	if x < 0 || y < 0 || x >= 1 || y >= 1 {
		return None
	}
	return a.f.label[int(y*float64(a.h))*a.w+int(x*float64(a.w))]
}

func index(l uint8, none int) int {
	if l == None {
		return none
	}
	return int(l)
}

// matches pairs flats, those that share most first, each at most once.
func (o *overlap) matches(old, now *Analysis) map[FlatID]FlatID {
	to := make(map[FlatID]FlatID)
	taken := make([]bool, len(now.leaves))
	for range old.leaves {
		best, a, b := 0, -1, -1
		for i := range old.leaves {
			if _, has := to[FlatID(i)]; has {
				continue
			}
			for j := range now.leaves {
				if n := o.n[i][j]; n > best && !taken[j] && o.same(i, j, &old.leaves[i], &now.leaves[j]) {
					best, a, b = n, i, j
				}
			}
		}
		if a < 0 {
			break
		}
		to[FlatID(a)], taken[b] = FlatID(b), true
	}
	return to
}

// same is true for two flats that are one across a revision.
func (o *overlap) same(i, j int, was, is *leaf) bool {
	shared := float64(o.n[i][j]) / float64(min(o.old[i], o.now[j]))
	if colour.CIEDE2000(was.rgb.Lab(), is.rgb.Lab()) > sameHue {
		return shared >= nearlyAll && float64(o.n[i][j]) >= nearlyAll*float64(max(o.old[i], o.now[j]))
	}
	return shared >= sameFlat
}

// changed is the share of all that is drawn in either whose flat is another.
func (o *overlap) changed(to map[FlatID]FlatID) float64 {
	kept, all := 0, 0
	for i, row := range o.n {
		for j, n := range row {
			if i == len(o.n)-1 && j == len(row)-1 {
				continue // background in both
			}
			all += n
			if now, has := to[FlatID(i)]; has && int(now) == j {
				kept += n
			}
		}
	}
	if all == 0 {
		return 0
	}
	return float64(all-kept) / float64(all)
}
