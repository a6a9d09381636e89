package mend

import (
	"strconv"

	"badgewright/reduce"
	"badgewright/sizing/unit"
)

// Alteration is how much of a drawing repairs alter.
type Alteration struct {
	MM2   float64 `json:"mm2"`
	Share float64 `json:"share"` // of the pin, 0..1
	Words string  `json:"words"`
}

// changed compares two struck separations pixel by pixel, by what each part of
// a pixel is: metal, one of the enamels, print, or none of the pin.
func changed(was, is *reduce.Separation, scale unit.PxPerMM) Alteration {
	a, b := classes(was), classes(is)
	solid := was.Solid()
	px, pin := 0.0, 0.0
	for i := range was.Labels {
		pin += was.CoverOf(i, solid)
		if was.Labels[i] == is.Labels[i] && was.Beside[i] == is.Beside[i] && was.Cover[i] == is.Cover[i] {
			continue
		}
		px += 1 - common(was, is, a, b, i)
	}
	c := Alteration{MM2: px / float64(scale) / float64(scale)}
	if pin > 0 {
		c.Share = px / pin
	}
	c.Words = unit.InMM2(c.MM2, 2) + ", " + percent(c.Share) + " of the pin"
	return c
}

// The classes of what a pixel is, beside the labels of enamels and print.
const (
	metalClass   uint8 = 254
	outsideClass uint8 = reduce.None
)

// classes gives the class of every label: all metal is one.
func classes(s *reduce.Separation) *[256]uint8 {
	var t [256]uint8
	for l := range t {
		t[l] = outsideClass
	}
	for l, f := range s.Flats {
		switch f.Role {
		case reduce.Metal:
			t[l] = metalClass
		case reduce.CutOut:
		default:
			t[l] = uint8(l)
		}
	}
	return &t
}

// common returns how much of a pixel, 0..1, is the same in two separations.
func common(was, is *reduce.Separation, a, b *[256]uint8, i int) float64 {
	c, d := float64(was.Cover[i])/255, float64(is.Cover[i])/255
	had := [2]uint8{a[was.Labels[i]], a[was.Beside[i]]}
	has := [2]uint8{b[is.Labels[i]], b[is.Beside[i]]}
	share := func(of [2]uint8, cover float64, class uint8) float64 {
		sum := 0.0
		if of[0] == class {
			sum = cover
		}
		if of[1] == class {
			sum += 1 - cover
		}
		return sum
	}
	same := min(share(had, c, had[0]), share(has, d, had[0]))
	if had[1] != had[0] {
		same += min(share(had, c, had[1]), share(has, d, had[1]))
	}
	return same
}

// percent writes a share in percent: to a hundredth below one, so that a small
// change is not told as none.
func percent(share float64) string {
	switch p := 100 * share; {
	case p == 0:
		return "0 %"
	case p < 0.01:
		return "less than 0.01 %"
	case p < 1:
		return strconv.FormatFloat(p, 'f', 2, 64) + " %"
	default:
		return strconv.FormatFloat(p, 'f', 1, 64) + " %"
	}
}
