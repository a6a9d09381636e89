package wall

import (
	"math"
	"slices"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// row is a row of lettering, in pixels.
type row struct {
	parts  []int32
	sunk   bool
	height float64 // of its capitals
	length float64
	x, y   float64 // of its middle letter
	base   []float32
}

// When small parts in a row are lettering (this tool's choices).
const (
	fewestLetters = 3
	likeHeight    = 0.12 // how far heights of one kind of letter lie apart, of the height
	smallLetters  = 0.8  // small letters are at most as high, of the capitals
	onTheLine     = 0.15 // how far from the line letters stand, of the capitals' height
	mostOf        = 0.7  // of the letters that have to be so
	halfOf        = 0.5
	unlike        = 0.1 // how much areas and widths vary, or they are dots, windows or scales
)

// findRows looks for lettering among the small parts.
func (m *Measured) findRows() {
	raised, sunk := m.letters()
	for k, all := range [2][]letter{raised, sunk} {
		if len(all) < fewestLetters || len(all) > mostParts {
			continue
		}
		link(all)
		for _, chain := range chains(all) {
			if len(chain) < fewestLetters {
				continue
			}
			line := make([]letter, len(chain))
			for i, j := range chain {
				line[i] = all[j]
			}
			if r, ok := m.lettered(line); ok {
				r.sunk = k == 1
				m.rows = append(m.rows, r)
			}
		}
	}
}

// lettered says whether a row of parts is lettering.
func (m *Measured) lettered(line []letter) (r row, ok bool) {
	if line[len(line)-1].x < line[0].x {
		slices.Reverse(line) // read from the left
	}
	for i := range line {
		dx, dy := direction(line, i)
		m.stand(&line[i], dx, dy)
	}
	caps, like := capitals(line)
	if like < mostOf*float64(len(line)) || !looksWritten(line) || !aligned(line, caps) {
		return r, false
	}
	r.height = caps
	for i := range line {
		l := &line[i]
		dx, dy := direction(line, i)
		r.parts = append(r.parts, l.part)
		r.base = append(r.base, float32(l.x-float64(dy*l.hi)), float32(l.y+float64(dx*l.hi)))
		if i > 0 {
			r.length += math.Hypot(l.x-line[i-1].x, l.y-line[i-1].y)
		}
	}
	r.length += (line[0].width + line[len(line)-1].width) / 2
	middle := &line[len(line)/2]
	r.x, r.y = middle.x, middle.y
	return r, true
}

// bend is how many letters on either hand say which way a row runs at a letter,
// so that it may follow an arc.
const bend = 2

// direction returns which way a row runs at a letter: along the arc through it
// and those on either hand. At its ends, the arc turns on as it did to there.
func direction(line []letter, i int) (dx, dy float64) {
	last := len(line) - 1
	if i == 0 || i == last {
		k := min(bend, last)
		if i == last {
			k = last - k
		}
		cx, cy := unitOf(line[max(i, k)].x-line[min(i, k)].x, line[max(i, k)].y-line[min(i, k)].y)
		if k == 0 || k == last {
			return cx, cy
		}
		tx, ty := direction(line, k)
		turn := 2 * (float64(cx*tx) + float64(cy*ty))
		return unitOf(float64(turn*cx)-tx, float64(turn*cy)-ty)
	}
	a, l, b := &line[max(i-bend, 0)], &line[i], &line[min(i+bend, last)]
	ax, ay, bx, by := l.x-a.x, l.y-a.y, b.x-l.x, b.y-l.y
	near := math.Hypot(ax, ay) / math.Hypot(bx, by)
	return unitOf(ax/near+float64(bx*near), ay/near+float64(by*near))
}

// stand measures a letter across and along the row.
func (m *Measured) stand(l *letter, dx, dy float64) {
	b := m.boxes[l.part]
	lo, hi, left, right := math.MaxFloat64, -math.MaxFloat64, math.MaxFloat64, -math.MaxFloat64
	for y := int(b[1]); y < int(b[3]); y++ {
		for k := m.runFrom(y, int32(b[0])); k < m.parts.Row[y+1] && m.parts.Runs[k].X0 < int32(b[2]); k++ {
			r := &m.parts.Runs[k]
			if r.Comp != l.part {
				continue
			}
			for _, x := range [2]float64{float64(r.X0) + 0.5, float64(r.X1) - 0.5} {
				px, py := x-l.x, float64(y)+0.5-l.y
				across, along := float64(py*dx)-float64(px*dy), float64(px*dx)+float64(py*dy)
				lo, hi, left, right = min(lo, across), max(hi, across), min(left, along), max(right, along)
			}
		}
	}
	// From the middles of pixels to their edges.
	l.lo, l.hi = lo-0.5, hi+0.5
	l.height, l.width = hi-lo+1, right-left+1
}

// capitals returns the height of the capitals in a row, and how many letters
// are as high, or small letters of one height.
func capitals(line []letter) (height, like float64) {
	all := make([]float64, len(line))
	for i := range line {
		all[i] = line[i].height
	}
	slices.Sort(all)
	height = all[len(all)*4/5]
	var small []float64
	for _, h := range all {
		switch {
		case math.Abs(h-height) <= likeHeight*height:
			like++
		case h < smallLetters*height:
			small = append(small, h)
		}
	}
	if len(small) > 0 {
		middle := small[len(small)/2]
		for _, h := range small {
			if math.Abs(h-middle) <= likeHeight*middle && middle >= halfOf*height {
				like++
			}
		}
	}
	return height, like
}

// looksWritten says whether the parts of a row are made of strokes and differ.
func looksWritten(line []letter) bool {
	n := float64(len(line))
	stroked, narrow := 0.0, 0.0
	areas, widths := make([]float64, len(line)), make([]float64, len(line))
	for i := range line {
		l := &line[i]
		if l.strokes >= linedUp*l.height {
			stroked++
		}
		if l.width <= widestOf*l.height {
			narrow++
		}
		areas[i], widths[i] = l.strokes, l.width
	}
	return stroked >= halfOf*n && narrow >= mostOf*n && max(variation(areas), variation(widths)) >= unlike
}

// variation returns the standard deviation of some lengths over their mean.
func variation(v []float64) float64 {
	sum, squares, n := 0.0, 0.0, float64(len(v))
	for _, x := range v {
		sum += x
		squares += float64(x * x)
	}
	mean := sum / n
	return math.Sqrt(max(0, squares/n-float64(mean*mean))) / mean
}

// aligned says whether the letters of a row stand on one line, or hang from one:
// each against the line between those beside it.
func aligned(line []letter, caps float64) bool {
	stand, hang := 0, 0
	for i := range line {
		a, b := max(i-1, 0), min(i+1, len(line)-1)
		if i == 0 {
			b = min(2, len(line)-1)
		}
		if i == len(line)-1 {
			a = max(len(line)-3, 0)
		}
		if offLine(line, i, a, b, func(l *letter) float64 { return l.hi }) <= onTheLine*caps {
			stand++
		}
		if offLine(line, i, a, b, func(l *letter) float64 { return l.lo }) <= onTheLine*caps {
			hang++
		}
	}
	return float64(max(stand, hang)) >= mostOf*float64(len(line))
}

// offLine returns how far the foot of letter i lies from the line through those
// of a and b.
func offLine(line []letter, i, a, b int, foot func(*letter) float64) float64 {
	at := func(k int) (x, y float64) {
		dx, dy := direction(line, k)
		l := &line[k]
		return l.x - float64(dy*foot(l)), l.y + float64(dx*foot(l))
	}
	x, y := at(i)
	ax, ay := at(a)
	bx, by := at(b)
	ux, uy := unitOf(bx-ax, by-ay)
	return math.Abs(float64((x-ax)*uy) - float64((y-ay)*ux))
}

// lettering reports the rows that are too low; what they are made of, and what
// lies in their letters, is gone.
func (m *Measured) lettering(scale unit.PxPerMM, l sizing.Limits, gone []bool) []sizing.Finding {
	var found []sizing.Finding
	for i := range m.rows {
		r := &m.rows[i]
		limit := l.Lettering
		if r.sunk {
			limit = l.LetteringSunk
		}
		if limit <= 0 {
			continue
		}
		f := m.rowFinding(r, limit, scale)
		if f.Verdict == sizing.Holds {
			continue
		}
		for _, k := range r.parts {
			gone[k] = true
		}
		found = append(found, f)
	}
	if len(found) > 0 {
		for k, outer := range m.round.outer {
			// What is too small in a letter goes with it; the ground it stands on does not.
			if outer >= 0 && gone[outer] && m.round.by[k] == byMetal && m.area[k] < m.boxArea(outer) {
				gone[k] = true
			}
		}
	}
	return found
}

func (m *Measured) boxArea(k int32) float64 {
	b := m.boxes[k]
	return (b[2] - b[0]) * (b[3] - b[1])
}

func (m *Measured) rowFinding(r *row, limit unit.MM, scale unit.PxPerMM) sizing.Finding {
	height := scale.MM(r.height)
	f := sizing.Finding{
		Kind: sizing.SmallLettering, Flat: m.flatAtPart(r.parts[0]), Other: sizing.Outside, Count: len(r.parts),
		X: r.x, Y: r.y, X0: math.MaxFloat64, Y0: math.MaxFloat64, Path: r.base,
		Length: scale.MM(r.length), Thinnest: height, Typical: height, Error: scale.MM(hardError), Limit: limit,
	}
	for _, k := range r.parts {
		b := m.boxes[k]
		f.X0, f.Y0, f.X1, f.Y1 = min(f.X0, b[0]), min(f.Y0, b[1]), max(f.X1, b[2]), max(f.Y1, b[3])
	}
	m.judge(&f, scale, hardError)
	return f
}

func (m *Measured) flatAtPart(k int32) reduce.FlatID {
	x, y := m.inside(k)
	return m.flatAt(floor(x), floor(y))
}
