package fastener

import (
	"math"
	"math/rand"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/sizing"
)

// exactly is a range that is one value.
func exactly(v float64) sizing.Range { return sizing.Range{Low: v, High: v} }

// sureHold is a hold with nothing left open.
func sureHold(press, friction, stiffness, cloth float64) sizing.Hold {
	return sizing.Hold{Press: exactly(press), Friction: exactly(friction), Stiffness: exactly(stiffness), Cloth: exactly(cloth)}
}

// Meriam & Kraige, Engineering Mechanics: Statics, on disc friction (from
// memory): a flat pivot of radius R under an axial force P resists with
// M = 2/3 mu P R. Worked: P = 300 N, mu = 0.2, R = 45 mm gives 1800 N mm; cloth
// is rubbed on both faces, twice that.
func TestGripAgainstDiscFriction(t *testing.T) {
	assert.InDelta(t, 2*1800, grip(0.2, 300, 45), 1e-9)
	// The same as the sum over thin rings: the integral of mu p r 2 pi r dr.
	const mu, press, radius, rings = 0.35, 0.8, 5.75, 4000
	var sum float64
	p := press / (math.Pi * radius * radius)
	for i := range rings {
		r := (float64(i) + 0.5) / rings * radius
		sum += mu * p * r * 2 * math.Pi * r * radius / rings
	}
	assert.InEpsilon(t, 2*sum, grip(mu, press, radius), 1e-6)
}

// A pendulum: a body of 10 g hung 6 mm below and 2.5 mm beside its pivot comes
// to rest where its centre is straight below (tan = 2.5/6), and gravity turns it
// with at most m g L = 0.010 kg x 9.80665 x 6.5 mm = 0.63743 N mm.
func TestOnePostIsAPendulum(t *testing.T) {
	b := body{mass: exactly(10), x: 2.5, y: 6, thickness: 1.5}
	h := hang(b, []point{{0, 0}}, 10, sureHold(0.1, 0.3, 2, 1))
	assert.InDelta(t, math.Atan(2.5/6)*180/math.Pi, h.Rest, 1e-9)
	assert.InDelta(t, 0.63743, h.Pull.High, 1e-5)
	// Grip 2 x 2/3 x 0.3 x 0.1 N x 5 mm = 0.2 N mm holds asin(0.2/0.63743) = 18.286 degrees.
	assert.InDelta(t, 0.2, h.Grip.Low, 1e-12)
	assert.InDelta(t, 18.286, h.Holds.Low, 1e-3)
	assert.InDelta(t, h.Rest-18.286, h.Askew.High, 1e-3, "let go upright it turns until friction holds it")
	assert.Equal(t, exactly(h.Holds.Low), h.Holds)
	assert.Equal(t, 6.0, float64(h.Above))
	assert.Equal(t, 2.5, float64(h.Beside))
	// A tight clutch holds it any way up.
	h = hang(b, []point{{0, 0}}, 10, sureHold(1, 0.3, 2, 1))
	assert.Equal(t, exactly(anyWayUp), h.Holds)
	assert.Equal(t, exactly(0), h.Askew)
	assert.Equal(t, sizing.Yes, h.Straight)
	assert.Equal(t, sizing.Yes, h.Knocked)
}

// A post below the balance point turns over when nothing holds it.
func TestAPostBelowTheBalancePointTurnsOver(t *testing.T) {
	b := body{mass: exactly(10), x: 0.5, y: -6, thickness: 1.5}
	h := hang(b, []point{{0, 0}}, 10, sureHold(0, 0.3, 2, 1))
	assert.Greater(t, h.Rest, 170.0)
	assert.InDelta(t, h.Rest, h.Askew.High, 1e-9)
	assert.Equal(t, sizing.No, h.Straight)
	h = hang(body{mass: exactly(10), thickness: 1.5}, []point{{0, 0}}, 10, sureHold(0.1, 0.3, 2, 1))
	assert.Zero(t, h.Rest)
	assert.Equal(t, exactly(anyWayUp), h.Holds, "nothing turns it")
}

// The lever about each support: a weight 4 mm from the left of two supports
// 16 mm apart rests on them as 3/4 and 1/4 (any textbook of statics, a simply
// supported beam); outside them one is lifted.
func TestTwoPostsShareTheWeightByTheLever(t *testing.T) {
	at := func(x float64) []float64 {
		return hang(body{mass: exactly(10), x: x, y: 4, thickness: 1.5}, []point{{0, 0}, {16, 0}}, 10, sizing.UsualHold()).Load
	}
	assert.InDeltaSlice(t, []float64{0.75, 0.25}, at(4), 1e-12)
	assert.InDeltaSlice(t, []float64{0.5, 0.5}, at(8), 1e-12)
	assert.InDeltaSlice(t, []float64{-0.25, 1.25}, at(20), 1e-12)
	h := hang(body{mass: exactly(10), x: 0, y: 4}, []point{{0, 0}, {0, 16}}, 10, sizing.UsualHold())
	assert.Empty(t, h.Load, "one above the other the lever does not tell")
	assert.Equal(t, exactly(0), h.Askew)
	assert.Equal(t, sizing.No, h.Knocked)
}

// A lean small enough is W a / (K + W b), the first order of the balance of
// torques; the root itself satisfies the whole equation.
func TestDroopBalancesItsTorques(t *testing.T) {
	r := rand.New(rand.NewSource(11))
	for n := range 300 {
		w, a, b, k := 0.02+0.3*r.Float64(), 0.3+2*r.Float64(), 12*r.Float64()-4, 0.2+8*r.Float64()
		f := droop(w, a, b, k)
		if f >= floppedAt {
			for i := range 91 {
				sin, cos := math.Sincos(float64(i) * math.Pi / 180)
				require.Positive(t, w*(a*cos-b*sin)-k*float64(i)*math.Pi/180, "seed 11, case %d: no balance before 90", n)
			}
			continue
		}
		sin, cos := math.Sincos(f * math.Pi / 180)
		assert.InDelta(t, k*f*math.Pi/180, w*(a*cos-b*sin), 1e-9, "seed 11, case %d", n)
		if f < 3 {
			assert.InEpsilon(t, w*a/(k+w*b)*180/math.Pi, f, 0.01)
		}
	}
	assert.Equal(t, floppedAt, droop(0.5, 1, -20, 1))
}

// By hand: 10 g weigh 0.0980665 N; 1.5 mm of pin and 0.5 mm of cloth make a
// lever of 1 mm; 6 mm below the post and K = 2 N mm a radian give about
// 0.0980665/(2 + 0.588) = 0.0379 radians, 2.17 degrees.
func TestTheLeverOfTheLeanIsHalfOfPinAndCloth(t *testing.T) {
	h := hang(body{mass: exactly(10), y: 6, thickness: 1.5}, []point{{0, 0}}, 10, sureHold(0.5, 0.3, 2, 0.5))
	assert.InDelta(t, 2.17, h.Droop.Low, 0.01)
	assert.Equal(t, h.Droop.Low, h.Droop.High)
}

// Two springs under a beam resist its tilt with k d^2 / 2 (statics of springs):
// discs far apart against their radius come to that, 4 K0 (y/R)^2 each.
func TestClutchesOneAboveTheOtherHoldALeanFarBetter(t *testing.T) {
	assert.InDelta(t, 1, bedOf([]point{{0, 0}}, 10), 1e-12)
	assert.InDelta(t, 2, bedOf([]point{{0, 0}, {15, 0}}, 10), 1e-12)
	assert.InDelta(t, 2+2*4*(7.5/5)*(7.5/5), bedOf([]point{{0, 0}, {0, 15}}, 10), 1e-12)
	// By adding up a bed of springs: k0 over each disc, k0 pi R^4 / 4 for one about its middle.
	const cells, radius = 400, 5.0
	sum := func(off float64) (s float64) {
		for i := range cells {
			for j := range cells {
				x, y := (float64(i)+0.5)/cells*2*radius-radius, (float64(j)+0.5)/cells*2*radius-radius
				if x*x+y*y <= radius*radius {
					s += (y + off) * (y + off)
				}
			}
		}
		return s
	}
	assert.InEpsilon(t, 2*sum(7.5)/sum(0), bedOf([]point{{0, 0}, {0, 15}}, 2*radius), 1e-3)
}

// Every range only widens, or moves one way, with its constants.
func TestRangesAreMonotoneInTheirConstants(t *testing.T) {
	r := rand.New(rand.NewSource(5))
	for n := range 200 {
		b := body{mass: sizing.Range{Low: 4, High: 6}, x: 8*r.Float64() - 4, y: 14*r.Float64() - 3, thickness: 1 + r.Float64()}
		posts := []point{{0, 0}, {9 + 8*r.Float64(), r.Float64() * 4}}[:1+r.Intn(2)]
		h := sizing.UsualHold()
		base := hang(b, posts, 10, h)
		for _, g := range []sizing.Range{base.Holds, base.Askew, base.Droop, base.Pull, base.Grip} {
			require.LessOrEqual(t, g.Low, g.High, "seed 5, case %d", n)
		}
		tighter := h
		tighter.Press.Low *= 2
		more := hang(b, posts, 10, tighter)
		assert.GreaterOrEqual(t, more.Holds.Low, base.Holds.Low)
		assert.LessOrEqual(t, more.Askew.High, base.Askew.High)
		assert.Equal(t, base.Droop, more.Droop)
		stiffer := h
		stiffer.Stiffness.Low *= 2
		more = hang(b, posts, 10, stiffer)
		assert.LessOrEqual(t, more.Droop.High, base.Droop.High)
		assert.Equal(t, base.Droop.Low, more.Droop.Low)
		thicker := h
		thicker.Cloth.High *= 2
		assert.GreaterOrEqual(t, hang(b, posts, 10, thicker).Droop.High, base.Droop.High)
		heavier := b
		heavier.mass = sizing.Range{Low: 8, High: 12}
		more = hang(heavier, posts, 10, h)
		assert.LessOrEqual(t, more.Holds.Low, base.Holds.Low)
		assert.GreaterOrEqual(t, more.Askew.High, base.Askew.High)
		assert.GreaterOrEqual(t, more.Droop.High, base.Droop.High-1e-9)
	}
}

func TestAnAnswerThatFlipsInsideTheRangeSaysEither(t *testing.T) {
	assert.Equal(t, sizing.Yes, sizing.Range{Low: 1, High: 5}.UpTo(5))
	assert.Equal(t, sizing.No, sizing.Range{Low: 5.1, High: 9}.UpTo(5))
	assert.Equal(t, sizing.Either, sizing.Range{Low: 4, High: 9}.UpTo(5))
	// A pin of 12 g, 5 mm askew below its post: a slack clutch lets it turn, a tight one does not.
	b := body{mass: exactly(12), x: 5, y: 6, thickness: 1.5}
	h := hang(b, []point{{0, 0}}, 10, sizing.UsualHold())
	assert.Equal(t, sizing.Either, h.Straight)
	a := Advice{Hang: h}
	assert.Contains(t, strings.Join(a.hangSays(), " "), "it can go either way")
	assert.Equal(t, sizing.Yes, h.Knocked, "even a slack clutch holds it more than is seen")
	b.mass = exactly(40)
	assert.Equal(t, sizing.Either, hang(b, []point{{0, 0}}, 10, sizing.UsualHold()).Knocked)
}

func TestTheModelIsStatedWithItsConstants(t *testing.T) {
	h := sizing.UsualHold()
	h.Press = sizing.Range{Low: 0.25, High: 0.75}
	words := strings.Join(modelSays(h), " ")
	for _, part := range []string{"m g L sin d", "2/3 μ N R", "m g (a cos f − b sin f) = K f", "0.25 to 0.75 newtons", "common practice", "Nobody has published"} {
		assert.Contains(t, words, part)
	}
}

func TestRangesAreSaidShort(t *testing.T) {
	assert.Equal(t, "3 to 14°", angles(sizing.Range{Low: 2.6, High: 14.4}))
	assert.Equal(t, "up to 7°", angles(sizing.Range{Low: 0.3, High: 7}))
	assert.Equal(t, "less than 1°", angles(sizing.Range{Low: 0, High: 0.4}))
	assert.Equal(t, "9°", angles(sizing.Range{Low: 8.8, High: 9.2}))
	assert.Equal(t, "0.1 to 1 N", span(sizing.Range{Low: 0.1, High: 1}, " N"))
	assert.Equal(t, "7.5 to 8.0 g", spanGrams(sizing.Range{Low: 7.49, High: 8.02}))
	assert.Equal(t, "0.99 to 1.16 kg", spanGrams(sizing.Range{Low: 992, High: 1160.8}))
}
