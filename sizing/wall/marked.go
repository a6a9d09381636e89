package wall

import (
	"math"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// markError is what a mark's length cannot tell, in pixels: half a pixel at
// each of its ends.
const markError = 2 * hardError

// markStep is how far apart places along a mark are looked at, in pixels.
const markStep = 0.5

// mark is a capital's foot and head in pixels.
type mark struct{ foot, head place }

// markOf brings a mark into the raster; what is no number lies at its edge.
func (m *Measured) markOf(l sizing.LetterMark) mark {
	within := func(share float64, size int) float64 {
		if !(share > 0) {
			return 0
		}
		return min(share, 1) * float64(size)
	}
	w, h := m.s.W, m.s.H
	return mark{place{within(l.X0, w), within(l.Y0, h)}, place{within(l.X1, w), within(l.Y1, h)}}
}

func (k mark) length() float64 {
	dx, dy := k.head.x-k.foot.x, k.head.y-k.foot.y
	return math.Sqrt(float64(dx*dx) + float64(dy*dy))
}

// liesOf is what a letter of each role is.
func liesOf(role reduce.Role) sizing.Lies {
	switch role {
	case reduce.Metal:
		return sizing.Raised
	case reduce.Enamel:
		return sizing.Sunk
	case reduce.Printed:
		return sizing.OnPrint
	}
	return sizing.OffThePin
}

// underMark tells what lies along most of a mark, and the flat that has most of it;
// of two that have as much, the one that comes first. What is no longer than its
// error marks nothing.
func (m *Measured) underMark(k mark) (sizing.Lies, reduce.FlatID) {
	if k.length() < markError {
		return sizing.OffThePin, sizing.Outside
	}
	var count [256]int
	steps := int(math.Ceil(k.length() / markStep))
	for i := 0; i <= steps; i++ {
		t := (float64(i) + 0.5) / float64(steps+1)
		x, y := k.foot.x+float64(t*(k.head.x-k.foot.x)), k.foot.y+float64(t*(k.head.y-k.foot.y))
		count[m.s.Labels[min(int(y), m.s.H-1)*m.s.W+min(int(x), m.s.W-1)]]++
	}
	sums := map[sizing.Lies]int{sizing.OffThePin: count[reduce.None]}
	for l, f := range m.s.Flats {
		sums[liesOf(f.Role)] += count[l]
	}
	lies := sizing.Raised
	for _, other := range []sizing.Lies{sizing.Sunk, sizing.OnPrint, sizing.OffThePin} {
		if sums[other] > sums[lies] {
			lies = other
		}
	}
	flat, most := sizing.Outside, 0
	for l, f := range m.s.Flats {
		if liesOf(f.Role) == lies && count[l] > most {
			flat, most = f.ID, count[l]
		}
	}
	return lies, flat
}

// leastHeight is the limit for capitals; 0 where none is asked.
func leastHeight(lies sizing.Lies, l sizing.Limits) unit.MM {
	switch lies {
	case sizing.Raised:
		return l.Lettering
	case sizing.Sunk:
		return l.LetteringSunk
	}
	return 0
}

// Marked judges a capital that the person marked, at a scale. Where no height is
// asked of it, the limit is 0 and it holds.
func (m *Measured) Marked(l sizing.LetterMark, scale unit.PxPerMM, limits sizing.Limits) (sizing.Finding, sizing.Lies) {
	k := m.markOf(l)
	lies, flat := m.underMark(k)
	height := scale.MM(k.length())
	f := sizing.Finding{
		Kind: sizing.SmallLettering, Flat: flat, Other: sizing.Outside, Count: 1,
		X: (k.foot.x + k.head.x) / 2, Y: (k.foot.y + k.head.y) / 2,
		X0: min(k.foot.x, k.head.x), Y0: min(k.foot.y, k.head.y), X1: max(k.foot.x, k.head.x), Y1: max(k.foot.y, k.head.y),
		Path:   []float32{float32(k.foot.x), float32(k.foot.y), float32(k.head.x), float32(k.head.y)},
		Length: height, Thinnest: height, Typical: height,
		Error: scale.MM(markError), Limit: leastHeight(lies, limits), Verdict: sizing.Holds,
	}
	if f.Limit > 0 {
		m.judge(&f, scale, markError)
	}
	return f, lies
}

// MarkHoldsFrom is the smallest size, by a measure of a silhouette's box and in
// the steps of HoldsFrom, from which a marked capital holds; 0 for none up to
// the greatest, or where no height is asked.
func (m *Measured) MarkHoldsFrom(l sizing.LetterMark, box [4]float64, by sizing.SizeBy, limits sizing.Limits) unit.MM {
	k := m.markOf(l)
	lies, _ := m.underMark(k)
	limit := leastHeight(lies, limits)
	// A capital may fall short by its error, but for one so short that its error
	// is coarse (see sizing.Judge): that must pass the limit by as much.
	px := k.length() + markError
	if k.length()-markError < coarseMark {
		px = k.length() - markError
	}
	if limit <= 0 || px <= 0 {
		return 0
	}
	// The scale is inverse to the size.
	perMM := sizing.ScaleFor(box, sizing.Size{MM: 1, By: by})
	from := max(sizing.LeastSize, unit.MM(math.Ceil(limit.Px(perMM)/px*sizesPerMM-1e-9)/sizesPerMM))
	if from > greatestMM {
		return 0
	}
	return from
}

// coarseMark is the limit, in pixels, of which a mark's error is a quarter.
const coarseMark = 4 * markError
