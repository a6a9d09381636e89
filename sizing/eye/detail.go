package eye

import (
	"math"

	"badgewright/reduce/colour"
)

// A line of a width leaves, of its difference from what it lies on, a share in
// each opponent plane at its middle. These are worked out once, by the root of
// the width: step k is (k / leftSteps)^2 times leftTop minutes of arc.
const (
	leftSteps = 1024
	leftTop   = 600 // arcmin; wider is as good as an area
)

var left = func() (t [leftSteps + 2][planes]float64) {
	for k := range t {
		x := float64(k) / leftSteps
		width := float64(x*x) * leftTop / 60 // degrees
		for p, bells := range filters {
			for _, b := range bells {
				t[k][p] += float64(b.weight * within(width/2/b.sigma()))
			}
		}
	}
	return t
}()

// leftOf is what is left at the middle of a long line, by plane.
func leftOf(arcmin float64) (e opponent) {
	s := math.Sqrt(min(max(arcmin, 0), leftTop)/leftTop) * leftSteps
	k := int(s)
	t := s - float64(k)
	for p := range e {
		e[p] = left[k][p] + float64(t*(left[k+1][p]-left[k][p]))
	}
	return e
}

// Line is a long straight detail between two colours. Its difference is that of
// S-CIELAB, at its middle, from a picture in which the two meet there.
type Line struct {
	base, own opponent
}

// NewLine returns a line of a colour with one colour on either hand.
func NewLine(own, a, b colour.RGB8) Line {
	l := Line{own: ofRGB8(own)}
	oa, ob := ofRGB8(a), ofRGB8(b)
	for p := range oa {
		l.base[p] = (oa[p] + ob[p]) / 2
	}
	return l
}

// Difference is what a width, in minutes of arc, makes of the line.
func (l Line) Difference(arcmin float64) float64 {
	e, seen := leftOf(arcmin), l.base
	for p := range seen {
		seen[p] += float64(e[p] * (l.own[p] - l.base[p]))
	}
	return l.base.apart(seen)
}

// widestStep and widthSteps say where NoticedFrom looks: up to a degree, in
// steps of 4 %.
const (
	widestStep = 60.0
	leastStep  = 0.02
	stepBy     = 1.04
)

// NoticedFrom is the least width, in minutes of arc, at which a line makes a
// difference; 0 when none up to a degree does.
func (l Line) NoticedFrom(difference float64) float64 {
	below := 0.0
	for w := leastStep; w < widestStep; w *= stepBy {
		if l.Difference(w) < difference {
			below = w
			continue
		}
		for w-below > 1e-4*w {
			if mid := (w + below) / 2; l.Difference(mid) < difference {
				below = mid
			} else {
				w = mid
			}
		}
		return w
	}
	return 0
}
