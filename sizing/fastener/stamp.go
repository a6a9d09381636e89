package fastener

import (
	"fmt"
	"math"
	"strings"
	"unicode/utf8"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// Lettering on the back (common practice, no published source).
const (
	stampLeast  = 1.2  // mm, lowest capitals that are still read, raised or cut in
	stampUsual  = 2.0  // mm, as high as capitals are made when there is room
	letterWide  = 0.95 // of the height of capitals, a letter and its gap, on average
	lineStep    = 1.6  // of it, from one line to the next
	stampMargin = 0.6  // mm kept from any edge, cut-out, pad or clutch
	stampFinest = 0.3  // mm, lowest that room is looked for
	stampLines  = 4
	stampWide   = 40 // letters a line
)

// Stamped is where lettering goes on the back.
type Stamped struct {
	// Middle is the middle of its block, mm from the left and top of the
	// silhouette as seen from the FRONT; W and H its sides.
	Middle sizing.Post `json:"middle"`
	W      unit.MM     `json:"w"`
	H      unit.MM     `json:"h"`
	Height unit.MM     `json:"height"` // of capitals
	// Largest is how high capitals can be at all, up to a usual height; 0 when
	// there is no room.
	Largest unit.MM        `json:"largest"`
	Limit   unit.MM        `json:"limit"`
	Verdict sizing.Verdict `json:"verdict"`
	Lines   []string       `json:"lines"`
	Raised  bool           `json:"raised"`
	Says    string         `json:"says"`
}

// Stamp finds room for lettering on the back of an advised pin, clear of edges,
// pads and if it can be of clutches, so that it is read while the pin is worn
// on a board or in the hand.
func (s *Shape) Stamp(scale unit.PxPerMM, a *Advice, want sizing.Stamp) (Stamped, error) {
	lines, err := stampText(want)
	if err != nil {
		return Stamped{}, err
	}
	z := s.at(scale)
	out := Stamped{Lines: lines, Raised: want.Raised, Limit: stampLeast, Verdict: sizing.Fails}
	block := blockOf(lines)
	seen := true
	room := z.freeOf(a, float64(a.Clutch)/2)
	largest, mid := room.largest(block, stampUsual)
	if largest < stampLeast {
		if wider, at := z.freeOf(a, float64(a.Pad)/2).largest(block, stampUsual); wider > largest {
			largest, mid, seen = wider, at, false
		}
	}
	out.Largest = unit.MM(math.Floor(largest*20+1e-6) / 20)
	out.Height = out.Largest
	if want.Height > 0 {
		out.Height = want.Height
	}
	out.place(z, mid, block)
	if out.Height <= out.Largest && out.Height >= stampLeast {
		out.Verdict = sizing.Holds
	}
	out.say(seen)
	return out, nil
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
	if len(lines) == 0 {
		return refuse("There is no lettering for the back.", "Type what it is to say.")
	}
	if len(lines) > stampLines {
		return refuse(fmt.Sprintf("%d lines of lettering are too many for a back.", len(lines)), fmt.Sprintf("Give at most %d.", stampLines))
	}
	for _, l := range lines {
		if n := utf8.RuneCountInString(l); n > stampWide {
			return refuse(fmt.Sprintf("A line of %d letters is too long for a back.", n), fmt.Sprintf("Give at most %d.", stampWide))
		}
	}
	if !(want.Height >= 0 && want.Height <= 20) {
		return refuse("Capitals of such a height do not go on a pin.", "Give up to 20 mm, or leave it to the tool.")
	}
	return lines, nil
}

// blockOf is the width and height of lines for capitals 1 mm high.
func blockOf(lines []string) [2]float64 {
	long := 0
	for _, l := range lines {
		long = max(long, utf8.RuneCountInString(l))
	}
	return [2]float64{letterWide * float64(long), 1 + float64(lineStep*float64(len(lines)-1))}
}

// place puts the block where there is room, held inside the outline.
func (out *Stamped) place(z *sized, mid point, block [2]float64) {
	out.Middle = z.post(mid)
	out.W, out.H = place2(block[0]*float64(out.Height)), place2(block[1]*float64(out.Height))
}

func (out *Stamped) say(seen bool) {
	how := "cut in"
	if out.Raised {
		how = "raised"
	}
	least := mm1(stampLeast)
	switch {
	case out.Largest == 0:
		out.Says = "There is no room for lettering on this back, clear of its edge and its pads."
	case out.Height > out.Largest:
		out.Says = fmt.Sprintf("There is room for capitals of %s only; leave some words out, or let the tool choose the height.", unit.InMM(out.Largest, 2))
	case out.Height < stampLeast:
		out.Says = fmt.Sprintf("Capitals of %s are too low to be read; %s is the least, %s.", unit.InMM(out.Height, 2), least, how)
	default:
		out.Says = fmt.Sprintf("Capitals %s high, %s, clear of the edge and of the pads; %s is the least.", unit.InMM(out.Height, 2), how, least)
	}
	if !seen && out.Largest > 0 {
		out.Says += " A clutch covers part of it."
	}
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
func (f *free) largest(block [2]float64, most float64) (height float64, mid point) {
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
func (f *free) place(block [2]float64, height float64) (mid point, ok bool) {
	z := f.z
	w, h := int(math.Ceil(block[0]*height/z.cell)), int(math.Ceil(block[1]*height/z.cell))
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
