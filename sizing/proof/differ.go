package proof

import (
	"fmt"
	"math"
	"slices"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// differ gathers the differences between a picture and the pin laid on it.
type differ struct {
	h     *held
	t     Tolerances
	r     *HeldAgainst
	cells []cellShown
	photo *Snapshot   // nil of a proof
	gain  *[3]float64 // of its light, linear; nil of a proof
}

// Wanted is what a proof is held against beside the pin itself.
type Wanted struct {
	Said Said
	// Posts as asked for, looked for on a view from behind; nil for no look.
	Posts []sizing.Post
	// Photo says that the picture is a photograph of a finished pin; nil of a proof.
	Photo *Snapshot
}

// back compares the posts, where there is a view from behind.
func (d *differ) back(l *Laid, posts []sizing.Post) {
	if len(posts) == 0 {
		return
	}
	b := Behind(l)
	if b == nil {
		d.note("No view from behind was found in this picture, so posts were not compared.")
		return
	}
	d.r.Back = true
	l.back = b
	d.posts(b.h, posts)
}

// Diff finds what a proof shows otherwise than asked for.
func Diff(l *Laid, w Wanted, t Tolerances, progress reduce.Progress) (*HeldAgainst, error) {
	progress = orNone(progress)
	if l.h == nil {
		return nil, errNoPin
	}
	d := &differ{h: l.h, t: t, photo: w.Photo, r: &HeldAgainst{Fit: l.Fit, Tolerances: t, Notes: []string{}, Differences: []Deviation{}}}
	steps := []struct {
		does string
		do   func()
	}{
		{"comparing the size", func() { d.sizes(w.Said, l) }},
		{"comparing colours", d.colours},
		{"comparing the outline", d.outlineMoved},
		{"comparing lines", d.lines},
		{"looking for what was added", d.added},
		{"looking at the back", func() { d.back(l, w.Posts) }},
	}
	for i, s := range steps {
		if err := progress(float64(i)/float64(len(steps)), s.does); err != nil {
			return nil, err
		}
		s.do()
	}
	if d.photo != nil {
		d.swapped()
	}
	d.finish()
	return d.r, progress(1, "comparing")
}

// new starts a difference along a path of the pin.
func (d *differ) new(k DeviationKind, path []Point) Deviation {
	x := Deviation{Kind: k, Flat: sizing.Outside, Other: sizing.Outside, Verdict: sizing.Fails}
	if len(path) == 0 {
		o := d.h.a.Badge.Outline
		x.Box = o
		x.X, x.Y = (o[0]+o[2])/2, (o[1]+o[3])/2
		return x
	}
	x.Box = [4]float64{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
	every := max(1, len(path)/mostPath)
	for i, p := range path {
		x.Box[0], x.Box[1] = min(x.Box[0], p.X), min(x.Box[1], p.Y)
		x.Box[2], x.Box[3] = max(x.Box[2], p.X), max(x.Box[3], p.Y)
		if i%every == 0 || i == len(path)-1 {
			x.Path = append(x.Path, float32(p.X), float32(p.Y))
		}
	}
	m := path[len(path)/2]
	x.X, x.Y = m.X, m.Y
	return x
}

// mostPath bounds how many places a path is drawn by.
const mostPath = 200

func (d *differ) add(x Deviation) {
	o, a := d.h.a.Badge.Outline, d.h.a
	x.Left, x.Top = a.mm(x.X-o[0]), a.mm(x.Y-o[1])
	d.r.Differences = append(d.r.Differences, x)
}

func (d *differ) note(text string) { d.r.Notes = append(d.r.Notes, text) }

// finish drops what another difference says already, numbers the rest, and says
// how many there are.
func (d *differ) finish() {
	d.r.Differences = d.told(d.r.Differences)
	for i := range d.r.Differences {
		d.r.Differences[i].Number = i + 1
	}
	d.r.Metal = d.h.shown[metal].rgb8()
	if !d.r.Fit.Good {
		d.note("The pin lies on this picture only in part: what is told below may come of that.")
	}
	switch n := len(d.r.Differences); n {
	case 0:
		d.r.Words = "Nothing differs by more than the tolerances."
	case 1:
		d.r.Words = "One thing differs."
	default:
		d.r.Words = fmt.Sprintf("%d things differ.", n)
	}
}

// told leaves out lines that differ only since the outline beside them moved, and
// areas that are recoloured since they run into another.
func (d *differ) told(list []Deviation) []Deviation {
	out := list[:0:0]
	for _, x := range list {
		if !d.saidBy(x, list) {
			out = append(out, x)
		}
	}
	return out
}

func (d *differ) saidBy(x Deviation, list []Deviation) bool {
	var by []DeviationKind
	switch x.Kind {
	case LineThicker, LineThinner, LineMissing, CutOutFilled:
		by = []DeviationKind{OutlineMoved}
	case PatchAdded, LineAdded, AreaSplit:
		by = []DeviationKind{OutlineMoved, LineThicker, LineMissing, AreasMerged}
	case AreaRecoloured:
		return !x.Whole && slices.ContainsFunc(list, func(y Deviation) bool {
			return y.Kind == AreasMerged && within(x.Box, y.X, y.Y, d.h.a.px(besideMM))
		})
	}
	inMoved := func(y Deviation) bool { return y.Kind == PartMoved && within(y.Box, x.X, x.Y, 0) }
	if len(by) > 0 && slices.ContainsFunc(list, inMoved) {
		return true // its lines lie elsewhere with it
	}
	return len(by) > 0 && passed(&x, list, by, d.h.a.px(besideMM))
}

// besideMM is how near a difference lies that comes of another.
const besideMM unit.MM = 1

// passed says whether all places of a difference lie by the paths of others of
// some kinds.
func passed(x *Deviation, list []Deviation, by []DeviationKind, near float64) bool {
	path := x.Path
	if len(path) == 0 {
		path = []float32{float32(x.X), float32(x.Y)}
	}
	for i := 0; i+1 < len(path); i += 2 {
		least := math.Inf(1)
		for n := range list {
			y := &list[n]
			if !slices.Contains(by, y.Kind) {
				continue
			}
			for k := 0; k+1 < len(y.Path); k += 2 {
				dx, dy := float64(path[i]-y.Path[k]), float64(path[i+1]-y.Path[k+1])
				least = min(least, float64(dx*dx)+float64(dy*dy))
			}
		}
		if least > near*near {
			return false
		}
	}
	return true
}

func within(box [4]float64, x, y, air float64) bool {
	return x >= box[0]-air && y >= box[1]-air && x <= box[2]+air && y <= box[3]+air
}
