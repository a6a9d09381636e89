package wall

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// Scenes here are drawn at 20 px/mm, where these limits are 6 px for lines, 8
// for edges and areas, and 100 px2 for the smallest area.
const mendScale unit.PxPerMM = 20

var mendLimits = sizing.Limits{Line: 0.3, Edge: 0.4, Area: 0.4, AreaSize: 0.25}

// mended applies recipes whose places are given in pixels.
func mended(t *testing.T, s *reduce.Separation, scale unit.PxPerMM, kind sizing.RecipeKind, places ...float64) *reduce.Separation {
	t.Helper()
	r := sizing.Recipe{Kind: kind}
	for i := 0; i < len(places); i += 2 {
		r.Points = append(r.Points, [2]float64{places[i] / float64(s.W), places[i+1] / float64(s.H)})
	}
	m, err := NewBuilder(s).Apply([]sizing.Recipe{r}, scale, mendLimits)
	require.NoError(t, err)
	return m
}

// widthAt is the local width of what lies at a place, px.
func widthOfWhat(t *testing.T, s *reduce.Separation, x, y float64) float64 {
	t.Helper()
	m, err := Measure(s, nil)
	require.NoError(t, err)
	return m.At(x, y).Width
}

// areaOf is the area of a label, px2, to the true edge.
func areaOf(s *reduce.Separation, label uint8) float64 {
	var has [256]bool
	has[label] = true
	sum := 0.0
	for i := range s.Labels {
		sum += s.CoverOf(i, &has)
	}
	return sum
}

// framed is a picture in a thick frame of metal, on a ground.
func inFrame(w, h int, at func(x, y float64) uint8) *reduce.Separation {
	return scene(w, h, func(x, y float64) uint8 {
		d := min(x, y, float64(w)-x, float64(h)-y)
		switch {
		case d < 4:
			return sky
		case d < 24:
			return steel
		}
		return at(x, y)
	})
}

// barAt is a line across the picture, at x from a to b, red before it and blue
// behind.
func barAt(a, b float64) func(x, y float64) uint8 {
	return func(x, _ float64) uint8 {
		switch {
		case x < a:
			return red
		case x < b:
			return steel
		}
		return blue
	}
}

func TestALineIsThickenedIntoTheLargerNeighbour(t *testing.T) {
	for _, c := range []struct {
		a, b     float64
		gives    uint8
		gainsNot uint8
	}{{60, 63, blue, red}, {140, 142.5, red, blue}} {
		s := inFrame(200, 120, barAt(c.a, c.b))
		m := mended(t, s, mendScale, sizing.ThickenLine, c.a+1, 32, c.a+1, 88)
		assert.GreaterOrEqual(t, widthOfWhat(t, m, (c.a+c.b)/2, 60), 5.75)
		assert.GreaterOrEqual(t, widthOfWhat(t, m, (c.a+c.b)/2, 26), 5.75, "it goes on to where the line ends")
		assert.InDelta(t, areaOf(s, c.gainsNot), areaOf(m, c.gainsNot), 10, "the smaller keeps what it has")
		assert.Less(t, areaOf(m, c.gives), areaOf(s, c.gives)-200)
	}
}

func TestALineFreeInOneAreaGrowsToBothSides(t *testing.T) {
	s := inFrame(160, 120, func(x, y float64) uint8 {
		if x > 78 && x < 81 && y > 40 && y < 80 {
			return steel
		}
		return red
	})
	m := mended(t, s, mendScale, sizing.ThickenLine, 79.5, 44, 79.5, 76)
	for y := 44; y < 76; y++ {
		left, right := 0.0, 0.0
		for x := 60; x < 100; x++ {
			var has [256]bool
			has[steel] = true
			if c := m.CoverOf(y*m.W+x, &has); float64(x) < 79.5-0.5 {
				left += c
			} else if x > 79 {
				right += c
			}
		}
		assert.InDelta(t, left, right, 0.6, y)
	}
}

func TestThickeningNeverClosesAnAreaBelowItsLimit(t *testing.T) {
	// Two strips of 9 px beside a line of 3: each can give 1 px, not the 3 that lack.
	s := inFrame(160, 160, func(x, _ float64) uint8 {
		switch {
		case x >= 60 && x < 69, x >= 72 && x < 81:
			return red
		case x >= 30 && x < 54:
			return blue
		}
		return steel
	})
	m := mended(t, s, mendScale, sizing.ThickenLine, 70.5, 40, 70.5, 120)
	assert.GreaterOrEqual(t, widthOfWhat(t, m, 62, 80), 7.75)
	assert.GreaterOrEqual(t, widthOfWhat(t, m, 79, 80), 7.75)
	assert.Greater(t, widthOfWhat(t, m, 70.5, 80), 4.5, "it takes what they can give")
}

func TestAnOuterEdgeGrowsInwards(t *testing.T) {
	ring := func(inner float64) *reduce.Separation {
		return scene(200, 200, func(x, y float64) uint8 {
			switch r := math.Hypot(x-100, y-100); {
			case r > 90:
				return sky
			case r > inner:
				return steel
			}
			return red
		})
	}
	s := ring(86)
	var round []float64
	for k := range 73 {
		a := float64(k) / 72 * 2 * math.Pi
		round = append(round, 100+88*math.Cos(a), 100+88*math.Sin(a))
	}
	m := mended(t, s, mendScale, sizing.ThickenLine, round...)
	was, _ := sizing.Outline(s)
	is, _ := sizing.Outline(m)
	assert.Equal(t, was, is)
	for k := range 8 {
		a := float64(k) + 0.3
		assert.InDelta(t, 8.2, widthOfWhat(t, m, 100+87*math.Cos(a), 100+87*math.Sin(a)), 0.6, k)
	}
}

func TestARepairDoesAtASizeOnlyWhatIsNeededThere(t *testing.T) {
	s := inFrame(200, 120, barAt(60, 64))
	plain, err := NewBuilder(s).Apply(nil, 10, mendLimits)
	require.NoError(t, err)
	larger := mended(t, s, 10, sizing.ThickenLine, 62, 40, 62, 80) // the line is 0.4 mm there
	assert.Equal(t, plain.Labels, larger.Labels)
	assert.Equal(t, plain.Cover, larger.Cover)
	smaller := mended(t, s, 30, sizing.ThickenLine, 62, 40, 62, 80)
	assert.InDelta(t, 9, widthOfWhat(t, smaller, 62, 60), 0.5)
}

func TestANarrowAreaIsCarvedFromMetalThatCanSpareIt(t *testing.T) {
	s := inFrame(160, 120, func(_, y float64) uint8 {
		if y > 58 && y < 62 {
			return red
		}
		return steel
	})
	m := mended(t, s, mendScale, sizing.WidenArea, 40, 60, 120, 60)
	assert.GreaterOrEqual(t, widthOfWhat(t, m, 80, 60), 7.75)
	assert.InDelta(t, 112*8.25, areaOf(m, red), 30, "it keeps its ends")
}

func TestANarrowAreaMovesALineThatCannotSpareAny(t *testing.T) {
	// red strip of 5 px, lines of 6 px on both sides, blue beyond
	s := inFrame(160, 140, func(_, y float64) uint8 {
		switch d := math.Abs(y - 70); {
		case d < 2.5:
			return red
		case d < 8.5:
			return steel
		}
		return blue
	})
	m := mended(t, s, mendScale, sizing.WidenArea, 40, 70, 120, 70)
	assert.GreaterOrEqual(t, widthOfWhat(t, m, 80, 70), 7.75)
	for _, y := range []float64{70 - 7, 70 + 7} {
		assert.GreaterOrEqual(t, widthOfWhat(t, m, 80, y), 5.75, y)
		assert.GreaterOrEqual(t, widthOfWhat(t, m, 30, y), 5.5, "near its end")
	}
}

func TestThinMetalAndNarrowEnamelAreDropped(t *testing.T) {
	hair := inFrame(160, 120, func(x, y float64) uint8 {
		if x > 40 && x < 120 && math.Abs(y-60) < 8-x/16 { // 5.5 px to 0.5 px each way
			return steel
		}
		return red
	})
	m := mended(t, hair, mendScale, sizing.DropThin, 60, 60, 118, 60)
	assert.Equal(t, uint8(red), m.Labels[60*160+100], "beyond 6 px of width it goes")
	assert.Equal(t, uint8(steel), m.Labels[60*160+70], "where it holds it stays")
	slit := inFrame(160, 120, func(_, y float64) uint8 {
		if y > 58 && y < 62 {
			return red
		}
		return steel
	})
	m = mended(t, slit, mendScale, sizing.DropThin, 27, 60, 133, 60)
	assert.Zero(t, areaOf(m, red))
}

func TestASmallAreaGrowsWithItsLine(t *testing.T) {
	s := inFrame(160, 160, func(x, y float64) uint8 {
		switch r := math.Hypot(x-80, y-80); {
		case r < 5: // 79 px2
			return blue
		case r < 11:
			return steel
		}
		return red
	})
	m := mended(t, s, mendScale, sizing.GrowArea, 80, 80)
	assert.InDelta(t, 108, areaOf(m, blue), 10)
	assert.GreaterOrEqual(t, widthOfWhat(t, m, 80, 88), 5.75)
}

func TestATinyPartIsDroppedOrMerged(t *testing.T) {
	dot := func(around uint8) *reduce.Separation {
		return inFrame(160, 160, func(x, y float64) uint8 {
			switch r := math.Hypot(x-80, y-80); {
			case r < 4:
				return blue
			case r < 10:
				return around
			}
			return red
		})
	}
	m := mended(t, dot(steel), mendScale, sizing.DropArea, 80, 80)
	assert.Zero(t, areaOf(m, blue))
	assert.InDelta(t, 314, areaOf(m, steel)-areaOf(dot(steel), steel)+314-50, 3, "it is metal")
	m = mended(t, dot(red), mendScale, sizing.DropArea, 80, 80)
	assert.Zero(t, areaOf(m, blue))
	assert.InDelta(t, areaOf(dot(red), steel), areaOf(m, steel), 0.01, "it joins the colour that it borders on")
	m = mended(t, dot(steel), mendScale, sizing.MergeArea, 80, 80)
	assert.Zero(t, areaOf(m, blue))
	assert.Equal(t, uint8(red), m.Labels[80*160+88], "the line round it goes with it")
	assert.Equal(t, uint8(steel), m.Labels[80*160+10], "and no other line")
}

func TestWhatIsLargeEnoughIsNeitherDroppedNorGrown(t *testing.T) {
	s := inFrame(160, 160, func(x, y float64) uint8 {
		switch r := math.Hypot(x-80, y-80); {
		case r < 7:
			return blue
		case r < 14:
			return steel
		}
		return red
	})
	plain := mended(t, s, mendScale, sizing.DropArea)
	for _, k := range []sizing.RecipeKind{sizing.DropArea, sizing.MergeArea, sizing.GrowArea} {
		assert.Equal(t, plain.Labels, mended(t, s, mendScale, k, 80, 80).Labels, k)
	}
}

func TestALineIsBuiltAtOneBorderOnly(t *testing.T) {
	// blue touches red on two sides of it, and ink is no border
	s := inFrame(200, 120, func(x, _ float64) uint8 {
		switch {
		case x < 70:
			return red
		case x < 130:
			return blue
		}
		return red
	})
	m := mended(t, s, mendScale, sizing.BuildBorder, 70, 40, 70, 80)
	assert.InDelta(t, 6, widthOfWhat(t, m, 70, 60), 0.3)
	assert.Equal(t, uint8(blue), m.Labels[60*200+129])
	assert.Equal(t, uint8(red), m.Labels[60*200+130])
}

func TestACrowdedLineIsTakenOut(t *testing.T) {
	hatch := func(room float64) *reduce.Separation {
		return inFrame(160, 120, func(x, _ float64) uint8 {
			if x > 80 && x < 86 || x > 86+room && x < 92+room {
				return steel
			}
			return red
		})
	}
	m := mended(t, hatch(4), mendScale, sizing.OpenUp, 83, 30, 83, 90)
	assert.Equal(t, uint8(red), m.Labels[60*160+83])
	assert.Equal(t, uint8(steel), m.Labels[60*160+93], "the other stays")
	m = mended(t, hatch(12), mendScale, sizing.OpenUp, 83, 30, 83, 90)
	assert.Equal(t, uint8(steel), m.Labels[60*160+83], "with room beside it, it stays")
}

func TestRepairsInOddPlacesDoNothing(t *testing.T) {
	s := inFrame(60, 60, func(_, _ float64) uint8 { return red })
	plain := mended(t, s, mendScale, sizing.ThickenLine)
	for kind := range repairs {
		for _, at := range [][]float64{{-50, -50}, {math.NaN(), 3}, {1e9, 1e9, -1e9, 4}, {2, 2}, {2, 2, 2, 2}, {59.99, 59.99, 60, 60}, {60, 60}} {
			assert.NotPanics(t, func() {
				m := mended(t, s, mendScale, kind, at...)
				assert.Equal(t, plain.Labels, m.Labels, "%v %v", kind, at)
			})
		}
	}
}
