package proof

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/reduce/colour"
	"badgewright/sizing"
	"badgewright/sizing/unit"
	"badgewright/sizing/wall"
)

// design is a pin that proofs are drawn of.
type design struct {
	name string
	mm   float64
	file string // of testdata/drawings, or
	// even says that the pin is its own mirror picture.
	even bool
	// at says what lies at a place of a drawn scene: an enamel 0..5, -1 outside, -2
	// a cut-out. Places are about -1..1.
	at func(x, y float64) int
}

var palette = []colour.RGB8{{R: 196, G: 48, B: 52}, {R: 38, G: 84, B: 140}, {R: 240, G: 226, B: 190}, {R: 236, G: 172, B: 52}, {R: 58, G: 128, B: 92}, {R: 116, G: 72, B: 132}}

var designs = []design{
	{name: "lighthouse", mm: 38, file: "lighthouse.png"},
	{name: "harbour", mm: 36, file: "harbour.png"},
	{name: "buoy", mm: 40, file: "buoy.png", even: true},
	{name: "to the edges", mm: 34, file: "to-the-edges.png"},
	{name: "dark ground", mm: 30, file: "dark-ground.png", even: true},
	{name: "white on white", mm: 36, file: "white-on-white.png"},
	{name: "sun", mm: 32, at: sun},
	{name: "compass", mm: 30, at: compass},
	{name: "fish", mm: 40, at: fish},
	{name: "shield", mm: 35, at: shield},
	{name: "star", mm: 34, at: star},
	{name: "ring", mm: 33, at: ring},
	{name: "sail", mm: 38, at: sail},
}

func sun(x, y float64) int {
	r, t := math.Hypot(x, y), math.Atan2(y, x)
	switch {
	case r > 0.95:
		return -1
	case math.Hypot(x-0.2, y+0.25) < 0.3:
		return 3
	case y > 0.35+0.05*math.Sin(9*x):
		return 1
	case math.Mod(t+10, 0.9) < 0.45:
		return 2
	}
	return 0
}

func compass(x, y float64) int {
	r, t := math.Hypot(x, y), math.Atan2(y, x)
	if r > 0.96 {
		return -1
	}
	if r > 0.78 {
		return 1
	}
	k := math.Abs(math.Mod(t+2*math.Pi, math.Pi/2) - math.Pi/4)
	if r < 0.72*(0.25+0.75*k/(math.Pi/4)) {
		switch {
		case y < 0 && x < 0:
			return 0
		case y < 0:
			return 3
		}
		return 2
	}
	return 4
}

func fish(x, y float64) int {
	body := x*x/0.55 + y*y/0.14
	tail := x > 0.55 && x < 0.98 && math.Abs(y) < 0.1+0.85*(x-0.55)
	switch {
	case math.Hypot(x+0.48, y+0.08) < 0.07 && body < 1:
		return 3
	case tail && body >= 1:
		return 0
	case body >= 1 && y < 0 && x > -0.3 && x < 0.35 && y > -0.62+0.3*math.Abs(x):
		return 5
	case body >= 1:
		return -1
	case x < -0.25+0.12*math.Cos(5*y):
		return 2
	case math.Mod(x+2, 0.3) < 0.15:
		return 1
	}
	return 4
}

func shield(x, y float64) int {
	w := 0.8
	if y > 0 {
		w = 0.8 * math.Sqrt(max(0, 1-y*y/0.9))
	}
	switch {
	case y < -0.9 || math.Abs(x) > w:
		return -1
	case math.Abs(x-0.25*y) < 0.14:
		return 3
	case x < 0.25*y && y < 0.05:
		return 0
	case x < 0.25*y:
		return 2
	case y > 0.2:
		return 5
	}
	return 1
}

func star(x, y float64) int {
	r, t := math.Hypot(x, y), math.Atan2(y, x)+math.Pi/2
	k := math.Abs(math.Mod(t+4*math.Pi, 2*math.Pi/5)-math.Pi/5) / (math.Pi / 5)
	switch {
	case r > 0.52+0.42*k:
		return -1
	case r < 0.26:
		return 3
	case x > 0.1 && y < 0.3:
		return 0
	case y > 0.12:
		return 1
	}
	return 2
}

func ring(x, y float64) int {
	r := math.Hypot(x, y)
	switch {
	case r > 0.95:
		return -1
	case math.Hypot(x+0.1, y-0.05) < 0.3:
		return -2
	case x+y > 0.5:
		return 0
	case x-y > 0.55:
		return 3
	case y < -0.1:
		return 5
	}
	return 1
}

func sail(x, y float64) int {
	switch {
	case y > 0.5 && y < 0.85 && math.Abs(x) < 0.8-0.7*(y-0.5):
		return 0
	case y > 0.4 && y <= 0.5 && math.Abs(x) < 0.85:
		return 3
	case y <= 0.4 && y > -0.9 && x > -0.05 && x < -0.05+0.62*(y+0.9):
		if math.Hypot(x-0.25, y-0.05) < 0.17 {
			return 1
		}
		return 2
	case y <= 0.4 && y > -0.7 && x <= -0.05 && x > -0.05-0.52*(y+0.7):
		if y > -0.05 {
			return 4
		}
		return 1
	}
	return -1
}

// sceneSide is the long side of a drawn scene, px; half of it in the short form,
// where pictures are drawn twice as large to make up for it.
var sceneSide = map[bool]int{true: wholeSide, false: wholeSide / 2}[all()]

const wholeSide = 960

// as is a scale of the whole form for this form's scenes.
func as(scale float64) float64 { return scale * wholeSide / float64(sceneSide) }

// drawn is a scene as a separation, each pixel of the two it has most of.
func drawn(at func(x, y float64) int) *reduce.Separation {
	const grain = 5
	s := reduce.NewSeparation(sceneSide, sceneSide)
	for i, c := range palette {
		s.Flats = append(s.Flats, reduce.Flat{ID: reduce.FlatID(i), Name: colour.Name(c), RGB: c, Role: reduce.Enamel})
	}
	label := func(x, y float64) uint8 {
		k := at(2*x/float64(sceneSide)-1, 2*y/float64(sceneSide)-1)
		if k < 0 {
			return reduce.None
		}
		return uint8(k)
	}
	for i := range s.Labels {
		var n [256]int
		x, y := float64(i%sceneSide), float64(i/sceneSide)
		if l := label(x+0.5, y+0.5); l == label(x-0.5, y-0.5) && l == label(x+1.5, y-0.5) && l == label(x-0.5, y+1.5) && l == label(x+1.5, y+1.5) {
			s.Labels[i], s.Beside[i] = l, l
			continue
		}
		for k := range grain * grain {
			n[label(x+(float64(k%grain)+0.5)/grain, y+(float64(k/grain)+0.5)/grain)]++
		}
		first, second := topTwo(&n)
		s.Labels[i], s.Beside[i], s.Cover[i] = first, second, 255
		if second != first {
			s.Cover[i] = max(128, uint8(255*n[first]/(n[first]+n[second])))
		}
	}
	return s
}

func topTwo(n *[256]int) (first, second uint8) {
	for l := range n {
		if n[l] > n[first] {
			first = uint8(l)
		}
	}
	second = first
	for l, c := range n {
		if uint8(l) != first && c > 0 && (second == first || c > n[second]) {
			second = uint8(l)
		}
	}
	return first, second
}

// badge strikes a design: with an outer edge and lines between its enamels.
func (d *design) badge(t testing.TB) *sizing.Badge {
	t.Helper()
	var base *reduce.Separation
	if d.file != "" {
		base = separated(t, d.file)
	} else {
		base = drawn(d.at)
	}
	box, ok := sizing.Outline(base)
	require.True(t, ok)
	scale := sizing.ScaleFor(box, sizing.Size{MM: unit.MM(d.mm), By: sizing.ByLongest})
	recipes := []sizing.Recipe{{Kind: sizing.OuterEdge, Width: 0.4}, {Kind: sizing.BuildLines, Width: 0.28}}
	sep, err := wall.NewBuilder(base).Apply(recipes, scale, sizing.DefaultLimits(sizing.Struck, sizing.Soft))
	require.NoError(t, err)
	return &sizing.Badge{Sep: sep, Scale: scale, Outline: box}
}
