package outline

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/sizing"
)

// drop is a disc that runs out to a tip at 12, 0, which encloses some degrees
// and is rounded to a radius.
func drop(degrees, radius float64) shape {
	sin, cos := math.Sincos(degrees / 2 * math.Pi / 180)
	at := 12 * sin * sin // where the sides touch the disc
	sides := poly(12, 0, at, 12*sin*cos, at, -12*sin*cos)
	if radius > 0 {
		centre := 12 - radius/sin
		sides = join(sides.less(box(centre+radius*sin, -20, 20, 20)), disc(centre, 0, radius))
	}
	return join(disc(0, 0, 12*sin), sides)
}

func TestAngleAndRadiusOfTips(t *testing.T) {
	for _, degrees := range []float64{25, 36, 45, 56} {
		for _, radius := range []float64{0, 0.15, 0.35} {
			for _, turn := range []float64{0, 17} {
				name := fmt.Sprintf("%g degrees, radius %g, turned %g", degrees, radius, turn)
				m := measured(t, drop(degrees, radius).turned(turn), 14, 24)
				found := ofKind(m.Findings(usual(24)), sizing.SharpTip)
				if radius > 0.3 && degrees >= 40 { // common practice, no published source
					assert.Empty(t, found, name)
					continue
				}
				require.Len(t, found, 1, name)
				f := found[0]
				assert.InDelta(t, degrees, f.Angle, 2.5, name)
				assert.InDelta(t, radius, float64(f.Thinnest), 0.05, name)
				assert.Equal(t, radius > 0.3, f.Verdict == sizing.Holds, name)
				sin, cos := math.Sincos(turn * math.Pi / 180)
				end := 12 - radius/math.Sin(degrees/2*math.Pi/180) + radius
				assert.InDelta(t, 14*24+end*cos*24, f.X, 4, name)
				assert.InDelta(t, 14*24+end*sin*24, f.Y, 4, name)
			}
		}
	}
}

func TestCornersAreNoTips(t *testing.T) {
	for name, s := range map[string]shape{
		"square":        box(-8, -8, 8, 8),
		"square turned": box(-8, -8, 8, 8).turned(33),
		"roof of 80":    join(box(-10, -8, 4, 8), poly(4, -8, 4+8/math.Tan(40*math.Pi/180), 0, 4, 8)),
		"bar":           box(-10, -2, 10, 2),
		"disc":          disc(0, 0, 9),
	} {
		assert.Empty(t, ofKind(measured(t, s, 13, 20).Findings(usual(20)), sizing.SharpTip), name)
	}
	for _, wide := range []float64{0.8, 1, 1.3, 1.6} {
		for _, turn := range []float64{0, 18, 30, 45} {
			m := measured(t, join(disc(-6, 0, 5), box(-6, -wide/2, 8, wide/2)).turned(turn), 12, 20)
			assert.Empty(t, ofKind(m.Findings(usual(20)), sizing.SharpTip), "the square end of %g mm turned %g", wide, turn)
			assert.Empty(t, m.sharpTips(&[]At{usual(20)}[0]), "the square end of %g mm turned %g, all ends", wide, turn)
		}
	}
}

// A star of five points has five tips of 36 degrees.
func TestTipsOfAStar(t *testing.T) {
	var c []float64
	for k := range 10 {
		r := 12.0
		if k%2 == 1 {
			r *= math.Sin(math.Pi/10) / math.Sin(7*math.Pi/10)
		}
		sin, cos := math.Sincos(float64(k)*math.Pi/5 + 0.1)
		c = append(c, r*cos, r*sin)
	}
	found := ofKind(measured(t, poly(c...), 13, 20).Findings(usual(20)), sizing.SharpTip)
	require.Len(t, found, 5)
	for _, f := range found {
		assert.InDelta(t, 36, f.Angle, 2.5)
		assert.InDelta(t, 12*20, math.Hypot(f.X-260, f.Y-260), 3)
	}
}

// A coarse raster cannot tell a tip of 0.35 mm from one of 0.25, and asks for a
// finer drawing.
func TestCoarseTips(t *testing.T) {
	at := usual(4)
	found := ofKind(measured(t, drop(50, 0.3), 14, 4).Findings(at), sizing.SharpTip)
	require.Len(t, found, 1)
	assert.Equal(t, sizing.CannotTell, found[0].Verdict)
	assert.GreaterOrEqual(t, found[0].NeedPx, 112*4/3)
	at.Limits.Tip = 0
	assert.Empty(t, ofKind(measured(t, drop(50, 0), 14, 20).Findings(at), sizing.SharpTip), "not looked at")
}
