package trace

import (
	"math"
	"slices"
)

// grade is what the raster can tell of an arc, in px.
type grade struct {
	// hard is true where no pixel is shared: the edge is known to half a pixel.
	hard bool
	// grain is the standard deviation of places across the arc.
	grain float64
	// blurred is true where an edge runs over more pixels than a renderer's does:
	// its corners are round for that.
	blurred bool
}

// blurredFrom is how many pixels on the mean a blurred edge runs over.
const blurredFrom = 2.5

const (
	// hardUnsure is how far off a place may be where no pixel is shared.
	hardUnsure = 0.6
	// softUnsure is how far off a place may be on a clean soft edge: rounding
	// of covers and colours.
	softUnsure = 0.1
	// grains is how many standard deviations of its grain a place may be off: what
	// spoils an edge (the blocks of a JPEG, paper) comes in lumps.
	grains = 5
	// mostUnsure bounds what a grainy arc may claim.
	mostUnsure = 0.6
)

// blockPlaces is how many places are judged together, with spanPlaces before and
// after them: an edge may be soft here and hard there.
const (
	blockPlaces = 16
	spanPlaces  = 24
)

// judge says of every place of an arc how far off it may be, and of the arc
// what it is like on the whole.
func (m *planar) judge(a *arc, t *trail) {
	turns := m.turnsOf(a)
	off := t.differences()
	t.unsure = make([]float64, len(t.p))
	sorted := make([]float64, 0, blockPlaces+2*spanPlaces)
	for i := 0; i < len(t.p); i += blockPlaces {
		lo, hi := max(0, i-spanPlaces), min(len(t.p), i+blockPlaces+spanPlaces)
		g := grade{hard: turns.hard(t.way[lo], t.way[hi-1]), grain: grainOf(off[min(lo, len(off)):min(hi, len(off))], sorted)}
		for k := i; k < min(i+blockPlaces, len(t.p)); k++ {
			t.unsure[k] = g.unsure()
		}
	}
	t.grade = grade{
		hard:    turns.hard(0, int32(len(a.ways)-1)),
		grain:   grainOf(off, nil),
		blurred: float64(t.shared) > blurredFrom*float64(len(t.p)),
	}
}

// unsure is how far off a single place may be.
func (g grade) unsure() float64 {
	if g.hard {
		return hardUnsure
	}
	return min(max(softUnsure, grains*g.grain), mostUnsure)
}

// turns counts, up to each way of an arc, the corners at which its path turns
// from one side of a pixel to another: there a soft edge shares a pixel and a
// hard one does not. Soft ones count down.
type turns []int32

func (m *planar) turnsOf(a *arc) turns {
	n := make(turns, len(a.ways)+1)
	x, y := m.g.place(a.start)
	for i, w := range a.ways {
		n[i+1] = n[i]
		if i > 0 && w != a.ways[i-1] {
			if m.softCorner(x, y) {
				n[i+1]--
			} else {
				n[i+1]++
			}
		}
		x, y = x+stepX[w], y+stepY[w]
	}
	return n
}

// hard says whether most corners from one way to another are hard.
func (n turns) hard(from, to int32) bool { return n[to+1] > n[from] }

func (m *planar) softCorner(x, y int) bool {
	for k := range 4 {
		if _, part := m.g.mix(x-(k&1), y-(k>>1)); part > 0 {
			return true
		}
	}
	return false
}

// fourth are the weights of the fourth difference: it is blind to anything
// that bends evenly, and what it leaves of independent errors of standard
// deviation 1 is fourthOfOne.
var fourth = [5]float64{1, -4, 6, -4, 1}

var fourthOfOne = math.Sqrt(70)

// differences are the fourth differences of places, across the arc.
func (t *trail) differences() []float64 {
	if len(t.p) < 2*len(fourth) {
		return nil
	}
	off := make([]float64, len(t.p)-4)
	for i := range off {
		var d vec
		for k, w := range fourth {
			d = d.along(t.p[i+k], w)
		}
		off[i] = math.Abs(d.cross(t.p[i+4].sub(t.p[i]).unit()))
	}
	return off
}

// grainOf returns the standard deviation of places by their fourth differences:
// by the one that four fifths lie below, for corners are few. sorted is room to
// work in.
func grainOf(off, sorted []float64) float64 {
	if len(off) < len(fourth) {
		return 0
	}
	sorted = append(sorted[:0], off...)
	slices.Sort(sorted)
	return sorted[len(off)*4/5] / fourFifths / fourthOfOne
}

// fourFifths of normal errors lie below so many of their standard deviations.
const fourFifths = 1.2816

const (
	// spike is how far, px, a place must lie off its neighbours to be doubted.
	// Nothing that is smooth and as wide as the raster can tell does so.
	spike = 0.2
	// mostSpike is how far off a place is drawn so, px.
	mostSpike = 0.6
	// spikeReach is how far to either side its neighbours are looked at, px, and
	// spikeApart how many places from a corner they are.
	spikeReach = 8
	spikeApart = 8
	// spikeRoom is the room, as a part of what it is off, that is given to a
	// place that is doubted.
	spikeRoom = 1.3
)

// doubt gives more room to single places that are off: the blocks of a JPEG and
// specks in paper shift a place or two and leave those round them.
func (t *trail) doubt(corners []corner) {
	k := 0
	for i, d := range t.differences() {
		i += len(fourth) / 2
		for k < len(corners) && corners[k].i < i-spikeApart {
			k++
		}
		if d < spike*fourth[2] || k < len(corners) && corners[k].i <= i+spikeApart {
			continue
		}
		for j := i - 1; j <= i+1; j++ {
			if off := t.offNeighbours(j); off > t.unsure[j] && off < mostSpike {
				t.unsure[j] = spikeRoom * off
			}
		}
	}
}

// offNeighbours is how far place i lies off a bend through those round it.
func (t *trail) offNeighbours(i int) float64 {
	w := t.about(i, spikeReach, false)
	b := w.fit()
	return fromLine(t.p[i], b.at, b.dir)
}
