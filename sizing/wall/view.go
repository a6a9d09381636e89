package wall

import (
	"encoding/binary"

	"badgewright/reduce"
)

// outside is the class of everything that is not part of the pin; metal is the
// class of all metal flats together. Every other class is the label of a flat.
const (
	outside uint8 = reduce.None
	metal   uint8 = 254
)

// view is a separation as a drafter sees it: metal is one thing, so is what
// lies outside, and printed detail belongs to the area around it.
type view struct {
	s       *reduce.Separation
	w, h    int
	class   []uint8    // of each pixel, by its majority
	of      [256]uint8 // class of each label
	printed [256]bool
	prints  bool      // whether any flat is printed
	enamel  [256]bool // by class
	exempt  [256]bool // by class: not measured
}

func newView(s *reduce.Separation) *view {
	v := &view{s: s, w: s.W, h: s.H, class: make([]uint8, len(s.Labels))}
	for l := range v.of {
		v.of[l] = outside
	}
	for l, f := range s.Flats {
		switch f.Role {
		case reduce.Metal:
			v.of[l] = metal
		case reduce.CutOut:
			v.of[l] = outside
		case reduce.Printed:
			v.of[l], v.printed[l], v.exempt[l], v.prints = uint8(l), true, true, true
		default:
			v.of[l], v.enamel[l] = uint8(l), true
		}
	}
	v.exempt[outside] = true
	v.classify(v.class)
	if v.prints {
		v.unprint()
	}
	return v
}

// classify fills class from the labels: eight at a time where they are equal,
// as nearly all are.
func (v *view) classify(class []uint8) {
	const each = (1<<64 - 1) / 255
	label := v.s.Labels
	for len(label) >= 8 && len(class) >= 8 {
		if l := binary.LittleEndian.Uint64(label); l == l&255*each {
			binary.LittleEndian.PutUint64(class, uint64(v.of[l&255])*each)
		} else {
			for k := range 8 {
				class[k] = v.of[label[k]]
			}
		}
		label, class = label[8:], class[8:]
	}
	for k, l := range label {
		class[k] = v.of[l]
	}
}

// plain says whether each of the eight pixels from (x, y) on has the class of the
// one to its right and of the one below it, which lie on the raster.
func (v *view) plain(x, y int) bool {
	i := y*v.w + x
	if x+8 >= v.w || y+1 >= v.h {
		return false
	}
	own := binary.LittleEndian.Uint64(v.class[i:])
	return own == binary.LittleEndian.Uint64(v.class[i+1:]) && own == binary.LittleEndian.Uint64(v.class[i+v.w:])
}

// unprint gives printed pixels to the nearest enamel they are joined to, ring
// by ring, or to metal where there is no enamel; printed detail that touches
// neither stays as it is.
func (v *view) unprint() {
	listed := make([]bool, len(v.class))
	v.spreadOver(listed, metal)
	v.spreadOver(listed, outside)
}

// spreadOver gives printed pixels to classes below limit.
func (v *view) spreadOver(listed []bool, limit uint8) {
	var ring, next []int32
	for i, c := range v.class {
		if v.printed[c] && v.neighbour(int32(i), limit) < limit {
			ring = append(ring, int32(i))
			listed[i] = true
		}
	}
	var taken []uint8
	for len(ring) > 0 {
		taken = taken[:0]
		for _, i := range ring {
			taken = append(taken, v.neighbour(i, limit))
		}
		for k, i := range ring {
			v.class[i] = taken[k]
		}
		next = next[:0]
		for _, i := range ring {
			next = v.printedBeside(next, i, listed)
		}
		ring, next = next, ring
	}
}

// neighbour returns the lowest class beside pixel i that is no print and below
// limit, or limit.
func (v *view) neighbour(i int32, limit uint8) uint8 {
	x, y := int(i)%v.w, int(i)/v.w
	best := limit
	for _, d := range round3[1:5] {
		if c := v.at(x+d[0], y+d[1]); !v.printed[c] && c < best {
			best = c
		}
	}
	return best
}

// printedBeside appends the printed neighbours of i that are not yet listed.
func (v *view) printedBeside(list []int32, i int32, listed []bool) []int32 {
	x, y := int(i)%v.w, int(i)/v.w
	for _, d := range round3[1:5] {
		n := i + int32(d[1]*v.w+d[0])
		if c := v.at(x+d[0], y+d[1]); v.printed[c] && !listed[n] {
			listed[n] = true
			list = append(list, n)
		}
	}
	return list
}

// at returns the class of a pixel; off the raster is outside.
func (v *view) at(x, y int) uint8 {
	if x < 0 || y < 0 || x >= v.w || y >= v.h {
		return outside
	}
	return v.class[y*v.w+x]
}

// cover returns how much of a pixel, 0..1, belongs to a class.
func (v *view) cover(x, y int, class uint8) float64 {
	if x < 0 || y < 0 || x >= v.w || y >= v.h {
		if class == outside {
			return 1
		}
		return 0
	}
	i := y*v.w + x
	s := v.s
	a, b := v.class[i], v.of[s.Beside[i]]
	if v.printed[s.Labels[i]] || v.printed[s.Beside[i]] {
		b = a
	}
	c := shares[s.Cover[i]]
	switch {
	case a == class && b == class:
		return 1
	case a == class:
		return c
	case b == class:
		return 1 - c
	}
	return 0
}

// covers fills c, which is 0, with how much of the 3 x 3 pixels round (x, y),
// row by row, belongs to a class.
func (v *view) covers(x, y int, class uint8, c *[9]float64) {
	if x == 0 || y == 0 || x+1 >= v.w || y+1 >= v.h || x < 0 || y < 0 || v.prints {
		for k := range c {
			c[k] = v.cover(x+k%3-1, y+k/3-1, class)
		}
		return
	}
	at := (y-1)*v.w + x - 1
	for k := 0; k < 9; k += 3 {
		own, beside, share := v.class[at:at+3], v.s.Beside[at:at+3], v.s.Cover[at:at+3]
		for j, a := range own {
			b := v.of[beside[j]]
			switch {
			case a == class && b == class:
				c[k+j] = 1
			case a == class:
				c[k+j] = shares[share[j]]
			case b == class:
				c[k+j] = 1 - shares[share[j]]
			}
		}
		at += v.w
	}
}

// shares are the covers as shares of a pixel.
var shares = func() (t [256]float64) {
	for c := range t {
		t[c] = float64(c) / 255
	}
	return t
}()

// mixed says whether a pixel holds two classes.
func (v *view) mixed(x, y int) bool {
	if x < 0 || y < 0 || x >= v.w || y >= v.h {
		return false
	}
	i := y*v.w + x
	return v.s.Cover[i] < 255 && v.of[v.s.Beside[i]] != v.class[i]
}
