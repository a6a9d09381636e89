package proof

import (
	"image/color"
	"math"
	"math/rand/v2"
	"os"
	"slices"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var (
	white = color.RGBA{255, 255, 255, 255}
	grey  = color.RGBA{214, 214, 216, 255}
	gold  = color.RGBA{201, 168, 86, 255}
	black = color.RGBA{26, 24, 24, 255}
	steel = color.RGBA{160, 164, 170, 255}
)

// missMM is how far off the outline lies at most, mm.
func missMM(a *Asked, got, truth *Warp) float64 {
	worst := 0.0
	for _, l := range a.loops {
		for _, p := range l.at {
			u, v := got.At(p.X, p.Y)
			x, y := truth.At(p.X, p.Y)
			worst = max(worst, math.Hypot(u-x, v-y))
		}
	}
	return worst / truth.scaleAt(0, 0) / float64(a.Badge.Scale)
}

// flipped is a map of the pin's mirror picture.
func flipped(a *Asked, w Warp) Warp {
	o := a.Badge.Outline
	flip := Warp{-1, 0, o[0] + o[2], 0, 1, 0, 0, 0, 1}
	return w.after(&flip)
}

// off is missMM, of a pin that is its own mirror picture either way.
func (d *design) off(a *Asked, got, truth *Warp) float64 {
	off := missMM(a, got, truth)
	if d.even {
		w := flipped(a, *truth)
		off = min(off, missMM(a, got, &w))
	}
	return off
}

// looks are the ways in which proofs are drawn: 0.3 to 3 times the pin's raster.
func looks() []look {
	return []look{
		{scale: 1, ground: white, metal: gold, page: true, quality: 85},
		{scale: 0.3, turn: 0.5, ground: grey, metal: black, page: true, quality: 80},
		{scale: 3, turn: -2.2, ground: white, metal: steel, quality: 75},
		{scale: 0.6, turn: 3, mirror: true, ground: white, metal: black, page: true, quality: 70},
		{scale: 1.7, turn: 1.2, ground: grey, metal: gold, page: true},
	}
}

// plantedAll in the environment makes tests go through every design: in every
// look (all, which takes minutes), or in so many looks each.
const plantedAll = "BADGEWRIGHT_PLANTED"

func all() bool { return os.Getenv(plantedAll) != "" }

// lookedAt says whether design n is drawn in look i; few lists the looks of those
// that are drawn in the short form.
func lookedAt(n, i int, few map[int][]int) bool {
	if !all() {
		return slices.Contains(few[n], i)
	}
	k, err := strconv.Atoi(os.Getenv(plantedAll))
	return err != nil || (i+5-n%5)%5 < k
}

func TestThePinIsLaidOnItsProof(t *testing.T) {
	const seed = 7
	t.Logf("seed %d", seed)
	rnd := rand.New(rand.NewPCG(seed, 0))
	for n, d := range designs {
		few := map[int][]int{7: {1}, 8: {3}}
		if !all() && few[n] == nil {
			continue
		}
		b := d.badge(t)
		a, err := Ask(b, nil)
		require.NoError(t, err)
		for i, k := range looks() {
			if !lookedAt(n, i, few) {
				continue
			}
			k.scale = grown(&d, k.scale)
			p, truth := proofOf(t, b, k, rnd)
			l, err := Find(a, p, nil, -1, nil)
			require.NoError(t, err)
			off := d.off(a, &l.h.w, &truth)
			t.Logf("%-15s %.1f times: off %.3f mm, edges %.3f mm, outline %.2f, mirrored %t", d.name, k.scale, off, l.Fit.Rms, l.Fit.Share, l.Fit.Mirrored)
			assert.Less(t, off, 0.1, "%s in look %d", d.name, i)
			assert.True(t, l.Fit.Good, "%s in look %d: %s", d.name, i, l.Fit.Words)
			assert.Equal(t, k.mirror && !d.even, l.Fit.Mirrored, "%s in look %d", d.name, i)
		}
	}
}
