package wall

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/sizing"
)

var both = []sizing.Recipe{{Kind: sizing.OuterEdge}, {Kind: sizing.BuildLines}}

// bare is a round badge of two enamels without any metal, with a hole.
func bare(tilt float64) *reduce.Separation {
	return scene(320, 320, func(x, y float64) uint8 {
		switch {
		case math.Hypot(x-160, y-160) > 150:
			return sky
		case math.Hypot(x-110.3, y-110.6) < 20:
			return hole
		case (x-170)*math.Cos(tilt)+(y-160)*math.Sin(tilt) < 0:
			return red
		}
		return blue
	})
}

func TestBuiltMetalHasTheWidthAskedFor(t *testing.T) {
	for _, tilt := range []float64{0, 0.3, math.Pi / 4, 1.2} {
		s := bare(tilt)
		b := NewBuilder(s)
		for _, perMM := range []float64{20, 31.7, 50} {
			struck, err := b.Apply([]sizing.Recipe{{Kind: sizing.OuterEdge, Width: 0.4}, {Kind: sizing.BuildLines, Width: 0.25}}, pxPerMM(perMM), soft)
			require.NoError(t, err)
			m := measured(t, struck)
			var rim, line []float64
			for _, p := range m.lines.points {
				switch p.group {
				case rimGroup:
					rim = append(rim, float64(p.tau))
				case lineGroup:
					line = append(line, float64(p.tau))
				}
			}
			require.InDelta(t, 0.4*perMM, median(rim), 0.3, "rim, tilt %.1f", tilt)
			require.InDelta(t, 0.25*perMM, median(line), 0.3, "line, tilt %.1f", tilt)
		}
	}
}

func TestBuiltMetalMendsWhatIsMissingAndHolds(t *testing.T) {
	for _, tilt := range []float64{0, 0.3, 1.2} {
		s := bare(tilt)
		drawn := measured(t, s).Findings(40, soft)
		require.Len(t, kinds(drawn, sizing.NoLine), 1)
		require.Len(t, kinds(drawn, sizing.NoEdge), 2)
		require.Equal(t, both, Suggest(s))
		struck, err := NewBuilder(s).Apply(both, 40, soft)
		require.NoError(t, err)
		roomy := soft
		roomy.CutOut = 0.9 // the hole of 1 mm is not at stake here
		require.Empty(t, measured(t, struck).Findings(40, roomy))
	}
}

func TestBuildingLeavesTheDrawnAlone(t *testing.T) {
	s := plate(200, func(x, y float64) bool { return math.Abs(x-100) < 4 })
	before := *s
	struck, err := NewBuilder(s).Apply(both, 40, soft)
	require.NoError(t, err)
	require.Equal(t, s.Labels, struck.Labels, "metal all round already, and no enamels that touch")
	require.Equal(t, before, *s)
	require.Empty(t, Suggest(s))

	s = bare(0.3)
	struck, err = NewBuilder(s).Apply(both, 40, soft)
	require.NoError(t, err)
	require.Equal(t, reduce.Metal, struck.Flats[steel].Role)
	built := 0
	for i, l := range s.Labels {
		switch {
		case l == sky || l == hole:
			require.Equal(t, l, struck.Labels[i], "what lies outside stays")
			require.Equal(t, s.Cover[i], struck.Cover[i])
		case struck.Labels[i] == steel:
			require.True(t, struck.Built[i])
			built++
		default:
			require.Equal(t, l, struck.Labels[i])
			require.False(t, struck.Built[i])
		}
	}
	// Rim 12 px along two circles, line 8 px across: by closed form.
	want := math.Pi*(150*150-138*138) + math.Pi*(32*32-20*20) + 8*273
	require.InEpsilon(t, want, built, 0.04)
	require.True(t, measured(t, struck).At(160, 12).Built)
	require.False(t, measured(t, struck).At(230, 160).Built)
}

// Where a seam ends at a metal line, its direction there is not sure: nothing
// may be built where that would lead to.
func TestLinesAreBuiltNowhereButAtTheSeam(t *testing.T) {
	s := scene(200, 200, func(x, y float64) uint8 {
		switch {
		case x < 20 || y < 20 || x > 180 || y > 180 || y > 80 && y < 90:
			return steel
		case y > 90 || x < 100:
			return red
		}
		return blue
	})
	struck, err := NewBuilder(s).Apply([]sizing.Recipe{{Kind: sizing.BuildLines, Width: 10}}, 1, soft)
	require.NoError(t, err)
	built := 0
	for i, metal := range struck.Built {
		if metal {
			built++
			require.InDelta(t, 100, i%200, 5+3, "row %d", i/200)
			require.Less(t, i/200, 80)
		}
	}
	require.InDelta(t, 600, built, 30, "60 px long, 10 wide")
}

func TestADrawingWithoutMetalGetsAFlatForIt(t *testing.T) {
	s := bare(0)
	s.Flats = s.Flats[:2]
	for i := range s.Labels {
		if s.Labels[i] == hole || s.Beside[i] == hole {
			s.Labels[i], s.Beside[i], s.Cover[i] = red, red, 255
		}
	}
	struck, err := NewBuilder(s).Apply(both, 40, soft)
	require.NoError(t, err)
	require.Len(t, s.Flats, 2)
	require.Len(t, struck.Flats, 3)
	require.Equal(t, reduce.BuiltMetal, struck.Flats[2].ID)
	require.Equal(t, uint8(2), struck.Labels[160*320+12])
}

func TestAnUnknownRecipeIsRefused(t *testing.T) {
	_, err := NewBuilder(bare(0)).Apply([]sizing.Recipe{{Kind: "gild"}}, 40, soft)
	var refusal *reduce.Refusal
	require.ErrorAs(t, err, &refusal)
}

func TestALinelessDrawingGivesFewFindings(t *testing.T) {
	// A chequerboard of 64 squares: hundreds of borders, two colours.
	s := scene(330, 330, func(x, y float64) uint8 {
		if x < 5 || y < 5 || x > 325 || y > 325 {
			return sky
		}
		return uint8((int(x-5)/40 + int(y-5)/40) % 2)
	})
	found := measured(t, s).Findings(30, soft)
	require.Len(t, kinds(found, sizing.NoLine), 1)
	require.Len(t, kinds(found, sizing.NoEdge), 2)
	require.InDelta(t, 14*320/30.0, float64(kinds(found, sizing.NoLine)[0].Length), 10)
}
