package reduce

import "badgewright/reduce/mask"

// leastAccent is how far, in levels, an island of a clean drawing must differ
// from what is round it to be kept although it is tiny.
const leastAccent = 90

// unspeck gives islands too small to be an area to the neighbour they touch
// most; in a clean drawing a strong accent is kept.
func (e *edger) unspeck() {
	for range 2 {
		if !e.unspeckOnce() {
			return
		}
	}
}

func (e *edger) unspeckOnce() bool {
	var through [256]bool
	for i := range through {
		through[i] = true
	}
	parts := mask.Connect(e.f.label, e.w, e.h, &through)
	small := make(map[int32][]int32) // part -> pixels, only of small parts
	var order []int32
	for y := 0; y < e.h; y++ {
		for _, r := range parts.Runs[parts.Row[y]:parts.Row[y+1]] {
			if parts.Area[r.Comp] >= e.speck || r.Label == None && parts.Area[r.Comp] >= e.speck {
				continue
			}
			if _, seen := small[r.Comp]; !seen {
				order = append(order, r.Comp)
			}
			for x := r.X0; x < r.X1; x++ {
				small[r.Comp] = append(small[r.Comp], int32(y*e.w)+x)
			}
		}
	}
	changed := false
	for _, part := range order {
		changed = e.dissolve(small[part]) || changed
	}
	return changed
}

// dissolve gives an island's pixels to the flat it touches most (ties: lowest
// label).
func (e *edger) dissolve(island []int32) bool {
	var touch [256]int
	own := e.f.label[island[0]]
	for _, i := range island {
		for _, o := range e.ring(int(i), 1) {
			if l := e.f.label[int(i)+o]; l != own {
				touch[l]++
			}
		}
	}
	to, most := own, 0
	for l, n := range touch {
		if n > most {
			to, most = uint8(l), n
		}
	}
	if to == own || e.accent(island, own, to) {
		return false
	}
	for _, i := range island {
		e.f.label[i], e.f.beside[i], e.f.cover[i] = to, to, 255
	}
	return true
}

func (e *edger) accent(island []int32, own, to uint8) bool {
	return e.grade == exact && len(island) > 1 && e.tones[own].apart2(&e.tones[to]) >= leastAccent*leastAccent
}

// agree drops the second flat of a mixed pixel where none of its neighbours
// has it any more.
func (f *fates) agree(w, h int) {
	for y := 0; y < h; y++ {
		for i := y * w; i < (y+1)*w; i++ {
			if b := f.beside[i]; b != f.label[i] && !f.touches(i, w, h, b) {
				f.beside[i], f.cover[i] = f.label[i], 255
			}
		}
	}
}

func (f *fates) touches(i, w, h int, b uint8) bool {
	x, y := i%w, i/w
	for yy := max(y-1, 0); yy <= min(y+1, h-1); yy++ {
		for xx := max(x-1, 0); xx <= min(x+1, w-1); xx++ {
			if f.label[yy*w+xx] == b || f.beside[yy*w+xx] == b && (xx != x || yy != y) {
				return true
			}
		}
	}
	return false
}
