package fastener

import (
	"fmt"
	"math"
	"strings"
	"unicode/utf8"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/ink"
	"badgewright/sizing/unit"
)

// Lettering on the back (common practice, no published source).
const (
	stampLeast  = 1.2 // mm, lowest capitals that are still read, raised or cut in
	stampUsual  = 2.0 // mm, as high as capitals are made when there is room
	stampStroke = 0.2 // mm, thinnest stroke of a letter that a die holds
	lineStep    = 1.7 // of the height of capitals, from one line to the next
	stampMargin = 0.6 // mm kept from any edge, cut-out, pad or clutch
	stampFinest = 0.3 // mm, lowest that room is looked for
	stampLines  = 4
	stampWide   = 40 // letters a line
)

// Stamped is where lettering and the artist's own mark go on the back.
type Stamped struct {
	// Middle is the middle of its block, mm from the left and top of the
	// silhouette as seen from the FRONT; W and H its sides.
	Middle sizing.Post `json:"middle"`
	W      unit.MM     `json:"w"`
	H      unit.MM     `json:"h"`
	Height unit.MM     `json:"height"` // of capitals; 0 for a mark alone
	Stroke unit.MM     `json:"stroke"` // how wide the strokes of a letter are
	// Largest is how high capitals, or a mark alone, can be, up to a usual height
	// or what was asked; 0 when there is no room.
	Largest unit.MM        `json:"largest"`
	Limit   unit.MM        `json:"limit"`
	Verdict sizing.Verdict `json:"verdict"`
	Lines   []string       `json:"lines"`
	Raised  bool           `json:"raised"`
	Says    string         `json:"says"`
	// Mark stands at the top of the block, in its middle; nil for none.
	Mark *StampedMark `json:"mark,omitempty"`
}

// Strokes is the way of the graver along every letter, in mm about Middle, x
// running right as seen from BEHIND and y down.
func (s *Stamped) Strokes() [][]ink.Point {
	ways := strokesOf(s.Lines, float64(s.Height))
	if s.Mark == nil || len(ways) == 0 {
		return ways
	}
	// Below a mark they stand on the foot of the block.
	down := (float64(s.H)-float64(s.Stroke))/2 - boxOf(ways)[3]
	for _, way := range ways {
		for i := range way {
			way[i].Y += down
		}
	}
	return ways
}

// Struck says whether there is anything to be seen of it.
func (s *Stamped) Struck() bool { return s != nil && s.W > 0 }

// Stamp finds room for lettering and a mark on the back of an advised pin, clear
// of edges, pads and if it can be of clutches, so that it is read while the pin
// is worn on a board or in the hand.
func (s *Shape) Stamp(scale unit.PxPerMM, a *Advice, want sizing.Stamp) (Stamped, error) {
	lines, err := stampText(want)
	if err != nil {
		return Stamped{}, err
	}
	mark, err := ownMarkOf(want.Mark)
	if err != nil {
		return Stamped{}, err
	}
	z := s.at(scale)
	out := Stamped{Lines: lines, Raised: want.Raised, Limit: stampLeast, Verdict: sizing.Fails}
	if want.Least > 0 {
		out.Limit = want.Least
	}
	block := blockOf(lines, mark)
	asked, usual, limit := want.Height, stampUsual, float64(out.Limit)
	if block.alone() {
		asked, usual, limit = mark.Height, markUsual, 0
	}
	largest, mid, seen := z.roomFor(a, block, max(usual, float64(asked)), max(limit, float64(asked)))
	out.Largest = unit.MM(math.Floor(largest*20+1e-6) / 20)
	height := min(out.Largest, unit.MM(usual))
	if asked > 0 {
		height = asked
	}
	out.place(z, mid, block, float64(height))
	if height > 0 && height <= out.Largest && float64(height) >= limit && (out.Mark == nil || out.Mark.Holds) {
		out.Verdict = sizing.Holds
	}
	out.say(height, seen)
	return out, nil
}

// roomFor looks for room clear of clutches first, and where there is less than
// enough, clear of pads only.
func (z *sized) roomFor(a *Advice, b block, most, enough float64) (largest float64, mid point, seen bool) {
	largest, mid = z.freeOf(a, float64(a.Clutch)/2).largest(b, most)
	if largest < enough || largest == 0 {
		if wider, at := z.freeOf(a, float64(a.Pad)/2).largest(b, most); wider > largest {
			return wider, at, false
		}
	}
	return largest, mid, true
}

// stampText reads the lines, refusing what is no lettering for a pin.
func stampText(want sizing.Stamp) ([]string, error) {
	var lines []string
	for _, l := range want.Lines {
		if l = strings.Join(strings.Fields(l), " "); l != "" {
			lines = append(lines, l)
		}
	}
	refuse := func(what, do string) ([]string, error) { return nil, &reduce.Refusal{What: what, Do: do} }
	if len(lines) == 0 && want.Mark == nil {
		return refuse("There is no lettering for the back.", "Type what it is to say, or choose your mark.")
	}
	if len(lines) > stampLines {
		return refuse(fmt.Sprintf("%d lines of lettering are too many for a back.", len(lines)), fmt.Sprintf("Give at most %d.", stampLines))
	}
	for _, l := range lines {
		if n := utf8.RuneCountInString(l); n > stampWide {
			return refuse(fmt.Sprintf("A line of %d letters is too long for a back.", n), fmt.Sprintf("Give at most %d.", stampWide))
		}
	}
	if !(want.Height >= 0 && want.Height <= 20) || !(want.Least >= 0 && want.Least <= 20) {
		return refuse("Capitals of such a height do not go on a pin.", "Give up to 20 mm, or leave it to the tool.")
	}
	return lines, nil
}

// block is what a stamp takes up: the box of its middle lines for capitals 1 mm
// high, and half a stroke more all round; above them a mark.
type block struct {
	w, h float64
	mark *ownMark // nil for none
}

// alone says that there is no lettering: then heights are the mark's.
func (b block) alone() bool { return b.w == 0 && b.h == 0 }

func (b block) at(height float64) (w, h float64) {
	mark := b.markAt(height)
	if b.mark != nil {
		w = mark * float64(b.mark.W) / float64(b.mark.H)
	}
	if b.alone() {
		return w, mark
	}
	stroke := strokeAt(height)
	h = float64(b.h*height) + stroke
	if b.mark != nil {
		h += mark + float64(markGap*height)
	}
	return max(w, float64(b.w*height)+stroke), h
}

// markAt is the height of the mark above capitals of a height.
func (b block) markAt(height float64) float64 {
	switch {
	case b.mark == nil:
		return 0
	case b.alone():
		return height
	case b.mark.Height > 0:
		return float64(b.mark.Height)
	}
	return markTimes * height
}

func strokeAt(height float64) float64 { return max(stampStroke, ink.Stroke(height)) }

func blockOf(lines []string, mark *ownMark) block {
	box := boxOf(strokesOf(lines, 1))
	return block{box[2] - box[0], box[3] - box[1], mark}
}

// strokesOf writes lines about the middle of their box.
func strokesOf(lines []string, height float64) [][]ink.Point {
	var all [][]ink.Point
	for i, l := range lines {
		all = append(all, ink.TextPaths(l, ink.Point{Y: lineStep * float64(i) * height}, height, ink.Middle)...)
	}
	box := boxOf(all)
	mx, my := (box[0]+box[2])/2, (box[1]+box[3])/2
	for _, way := range all {
		for i := range way {
			way[i].X -= mx
			way[i].Y -= my
		}
	}
	return all
}

// boxOf is the left, top, right and bottom of ways; zero for none.
func boxOf(ways [][]ink.Point) [4]float64 {
	if len(ways) == 0 {
		return [4]float64{}
	}
	box := [4]float64{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
	for _, way := range ways {
		for _, q := range way {
			box = [4]float64{min(box[0], q.X), min(box[1], q.Y), max(box[2], q.X), max(box[3], q.Y)}
		}
	}
	return box
}

// place puts the block where there is room, held inside the outline.
func (out *Stamped) place(z *sized, mid point, b block, height float64) {
	out.Middle = z.post(mid)
	if b.mark != nil {
		out.Mark = b.mark.struck(b.markAt(height))
	}
	if !b.alone() {
		out.Height, out.Stroke = unit.MM(height), place2(strokeAt(height))
	}
	if height > 0 {
		w, h := b.at(height)
		out.W, out.H = place2(w), place2(h)
	}
}

func (out *Stamped) say(height unit.MM, seen bool) {
	how := "cut in"
	if out.Raised {
		how = "raised"
	}
	what, one := "lettering", "capitals"
	switch {
	case len(out.Lines) == 0:
		what, one = "this mark", "a mark"
	case out.Mark != nil:
		what = "this mark and its lettering"
	}
	least := mm1(float64(out.Limit))
	switch {
	case out.Largest == 0:
		out.Says = fmt.Sprintf("There is no room for %s on this back, clear of its edge and its pads.", what)
	case height > out.Largest:
		out.Says = fmt.Sprintf("There is room for %s of %s only; %s.", one, unit.InMM(out.Largest, 2), out.instead())
	case len(out.Lines) == 0:
		out.Says = fmt.Sprintf("A mark %s high, %s, clear of the edge and of the pads.", unit.InMM(height, 2), how)
	case height < out.Limit:
		out.Says = fmt.Sprintf("Capitals of %s are too low to be read; %s is the least, %s.", unit.InMM(height, 2), least, how)
	default:
		out.Says = fmt.Sprintf("Capitals %s high, %s, clear of the edge and of the pads; %s is the least.", unit.InMM(height, 2), how, least)
	}
	out.Says += out.Mark.says()
	if !seen && out.Largest > 0 {
		out.Says += " A clutch covers part of it."
	}
	if lacks := ink.Missing(strings.Join(out.Lines, "")); lacks != "" {
		out.Says += fmt.Sprintf(" These letters lack %s, drawn as a box here; ask the maker for it.", strings.Join(strings.Split(lacks, ""), " "))
	}
}

// instead is what to do where there is less room than was asked.
func (out *Stamped) instead() string {
	switch {
	case len(out.Lines) == 0:
		return "make it lower, or let the tool choose the height"
	case out.Mark != nil:
		return "leave some words out, make the mark lower, or let the tool choose the height"
	}
	return "leave some words out, or let the tool choose the height"
}

// free is what of a back is free: for each cell, how many cells above it and to
// its left are not.
type free struct {
	z     *sized
	taken []int32 // (w+1) x (h+1) sums
}

// freeOf marks what is nearer than the margin to an edge, and round every post.
func (z *sized) freeOf(a *Advice, round float64) *free {
	f := &free{z: z, taken: make([]int32, (z.w+1)*(z.h+1))}
	for y := range z.h {
		var row int32
		for x := range z.w {
			if z.clear[y*z.w+x] < stampMargin || z.near(a, z.centre(x, y), round+stampMargin) {
				row++
			}
			f.taken[(y+1)*(z.w+1)+x+1] = f.taken[y*(z.w+1)+x+1] + row
		}
	}
	return f
}

// near says whether a place is within reach of a post, or of a bar's length.
func (z *sized) near(a *Advice, q point, reach float64) bool {
	for _, p := range a.Posts {
		at := z.point(p)
		dx, dy := math.Abs(q.x-at.x), math.Abs(q.y-at.y)
		if half := float64(a.Bar) / 2; a.Upright {
			dy = max(0, dy-half)
		} else {
			dx = max(0, dx-half)
		}
		if length(dx, dy) < reach {
			return true
		}
	}
	return false
}

// largest is how high capitals can be so that a block of them fits somewhere,
// and the middle of the best place for it: halved down to a fiftieth of a mm.
func (f *free) largest(block block, most float64) (height float64, mid point) {
	mid = point{f.z.CX, f.z.CY}
	low, high := 0.0, most
	if q, ok := f.place(block, most); ok {
		return most, q
	}
	if q, ok := f.place(block, stampFinest); ok {
		low, mid = stampFinest, q
	} else {
		return 0, mid
	}
	for high-low > 0.02 {
		h := (low + high) / 2
		if q, ok := f.place(block, h); ok {
			low, mid = h, q
		} else {
			high = h
		}
	}
	return low, mid
}

// place finds the free block nearest to the line of balance and to the middle
// of the lower half, where a back is freest of posts.
func (f *free) place(block block, height float64) (mid point, ok bool) {
	z := f.z
	wide, high := block.at(height)
	w, h := int(math.Ceil(wide/z.cell)), int(math.Ceil(high/z.cell))
	aim := z.CY + float64(pairHeight*z.high())
	best := math.Inf(1)
	for y := 0; y+h <= z.h; y++ {
		for x := 0; x+w <= z.w; x++ {
			if f.blocked(x, y, w, h) {
				continue
			}
			q := point{(float64(x) + float64(w)/2) * z.cell, (float64(y) + float64(h)/2) * z.cell}
			if d := length(q.x-z.CX, q.y-aim); d < best-1e-9 {
				best, mid, ok = d, q, true
			}
		}
	}
	return mid, ok
}

func (f *free) blocked(x, y, w, h int) bool {
	n := f.z.w + 1
	t := f.taken
	return t[(y+h)*n+x+w]-t[y*n+x+w]-t[(y+h)*n+x]+t[y*n+x] > 0
}
