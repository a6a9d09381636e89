package fastener

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// stand is how a pin maker would put the posts of a silhouette.
type stand struct {
	count int
	way   way
	shown bool // no place hides the clutch of every post
}

// way is how two posts stand to each other.
type way string

const (
	alone      way = ""
	sideBySide way = "level"
	upright    way = "upright" // one above the other
	along      way = "along"   // along a piece that leans
)

// stands was written down with a picture of every back in view: clutch, pad and
// balance point (common practice, no published source: hidden if it can be, two
// level in the upper half or else along a narrow piece, the balance point
// between them, a pad on as much metal as there is).
var stands = map[string]stand{
	"disc": {1, alone, false}, "disc-large": {2, sideBySide, false}, "ring": {2, sideBySide, true},
	"crescent": {1, alone, true}, "arrow": {2, sideBySide, true}, "arrow-up": {2, upright, true},
	"fish": {2, sideBySide, false}, "tower": {2, upright, true}, "wings": {2, sideBySide, true},
	"cross": {1, alone, false}, "key": {2, upright, true}, "cloud": {2, sideBySide, false},
	"tree": {2, upright, false}, "buoy-anchor": {1, alone, false}, "boat": {2, upright, false},
	"heart": {1, alone, false}, "star": {1, alone, false}, "leaning-feather": {2, along, false},
	"wave": {2, along, false}, "banner": {3, sideBySide, false}, "big-disc": {3, sideBySide, false},
	"tiny": {1, alone, false}, "anchor": {2, upright, true}, "gull": {2, sideBySide, true},
	"bottle": {2, upright, false}, "whale": {2, sideBySide, false}, "compass": {2, sideBySide, true},
	"bell": {1, alone, false}, "buoy": {2, upright, false}, "shell": {1, alone, false},
	"lighthouse": {2, upright, true}, "moon": {2, upright, true}, "moon-lying": {2, sideBySide, true},
	"horseshoe": {2, sideBySide, true}, "hook": {2, along, true}, "umbrella": {2, sideBySide, false},
	"mug": {1, alone, false}, "lantern": {2, upright, false}, "oar": {2, along, true},
	"wheel": {2, sideBySide, true}, "sun": {1, alone, false}, "squid": {2, upright, false},
	"starfish": {1, alone, false}, "ess": {2, upright, true}, "flag": {2, sideBySide, false},
	"tee": {2, sideBySide, true}, "tee-down": {2, upright, true}, "heron": {2, along, false},
}

func wayOf(p []sizing.Post) way {
	if len(p) < 2 {
		return alone
	}
	dx, dy := math.Abs(float64(p[0].X-p[1].X)), math.Abs(float64(p[0].Y-p[1].Y))
	switch {
	case dy <= sameRow:
		return sideBySide
	case dx < dy/4:
		return upright
	}
	return along
}

// The region where a post may stand, in closed form: a rectangle a x b leaves
// (a - 2i)(b - 2i) and a disc pi (R - i)^2 for an inset i, at every size; the
// inset does not grow with the pin.
func TestTheRegionForAPostAgainstClosedForms(t *testing.T) {
	const inset = rubber/2 + edgeMargin
	for _, mm := range []float64{22, 33, 48, 80} {
		region := func(s shape) (area float64, cell float64) {
			b := strike(s, 21, testLong, unit.MM(mm))
			z, err := ShapeOf(b.Sep, b.Outline)
			require.NoError(t, err)
			p := z.at(b.Scale)
			for _, c := range p.clear {
				if c >= inset {
					area += p.cell * p.cell
				}
			}
			return area, p.cell
		}
		// Off by at most a cell all along the region's edge.
		got, cell := region(box(-18, -12, 18, 12))
		a, b := mm-2*inset, mm*2/3-2*inset
		assert.InDelta(t, max(0, a)*max(0, b), got, cell*2*(max(0, a)+max(0, b))+cell*cell, "rectangle, %g mm", mm)
		got, cell = region(disc(0, 0, 18))
		r := mm/2 - inset
		assert.InDelta(t, math.Pi*r*r, got, cell*2*math.Pi*r+cell*cell, "disc, %g mm", mm)
	}
}

func TestPostsStandWhereAPinMakerWouldPutThem(t *testing.T) {
	seen := 0
	for _, s := range append(cabinet(), shore()...) {
		want, ok := stands[s.name]
		if !assert.True(t, ok, s.name) {
			continue
		}
		seen++
		b, a := advise(t, s, 0)
		assert.Equal(t, want, stand{a.Count, wayOf(a.Posts), !a.Hidden}, s.name)
		standsWell(t, s, b, &a)
	}
	assert.Len(t, stands, seen)
}

// standsWell holds what is true of every back: feet on metal, room for the
// clutches side by side, symmetry, and the balance point where it belongs.
func standsWell(t *testing.T, s specimen, b *sizing.Badge, a *Advice) {
	const slack = 0.3 // mm: a cell and half a pixel
	for i, p := range a.Posts {
		assert.True(t, solidWithin(b, p, leastFoot-slack), "%s: a foot stands beside the metal", s.name)
		for _, q := range a.Posts[i+1:] {
			assert.GreaterOrEqual(t, math.Hypot(float64(p.X-q.X), float64(p.Y-q.Y)), float64(a.Clutch)+between-0.01, s.name)
		}
	}
	z, err := ShapeOf(b.Sep, b.Outline)
	require.NoError(t, err)
	p := z.at(b.Scale)
	first := p.point(a.Posts[0])
	if a.Form.Mirrored && a.Chosen < 3 {
		mid := 0.0
		for _, q := range a.Posts {
			mid += p.point(q).x / float64(len(a.Posts))
		}
		assert.InDelta(t, p.CX, mid, 0.3, "%s: not symmetric", s.name)
	}
	if a.Chosen == 1 {
		assert.Less(t, first.y, p.CY, "%s: below the balance point", s.name)
		assert.InDelta(t, p.CX, first.x, 0.5, "%s: beside the balance point", s.name)
		return
	}
	second := p.point(a.Posts[1])
	assert.True(t, p.carries(place{posts: []point{first, second}}), "%s: the balance point lies beside both", s.name)
	if wayOf(a.Posts) == sideBySide {
		assert.LessOrEqual(t, first.y, p.CY+float64(pairBelow*p.high())+slack, "%s: in the lower half", s.name)
	}
}
