package reduce

import (
	"cmp"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce/colour"
)

func painting() *Drawing {
	d := &Drawing{W: 200, H: 200, FileW: 200, FileH: 200, Pix: make([]uint32, 200*200)}
	for i := range d.Pix {
		x, y := i%200, i/200
		r, g, b := 40+x*y/220, 60+y*3/4, 230-x*y/230-(x*7+y*3)%40
		d.Pix[i] = uint32(r) | uint32(g)<<8 | uint32(max(b, 0))<<16 | 0xff000000
	}
	return d
}

// slowLoss is the definition, pixel by pixel.
func slowLoss(a *Analysis, d *Drawing, count int, edits []Edit) (mean, worst float64) {
	s, _ := a.Reduce(Options{Count: count, Edits: edits})
	finest, _ := a.Reduce(Options{Count: MaxCount, Edits: edits})
	var all []float64
	for i, l := range s.Labels {
		if l == None || finest.Flats[finest.Labels[i]].Role != Enamel || !a.f.inner(i, i%d.W, i/d.W, d.W, d.H) {
			continue
		}
		p := d.Pix[i]
		c := colour.RGB8{R: uint8(p), G: uint8(p >> 8), B: uint8(p >> 16)}
		all = append(all, colour.CIEDE2000(c.Lab(), s.Flats[l].RGB.Lab()))
	}
	slices.SortFunc(all, func(x, y float64) int { return cmp.Compare(y, x) })
	sum, top := 0.0, 0.0
	for k, v := range all {
		sum += v
		if k < len(all)/10 {
			top += v
		}
	}
	return sum / float64(len(all)), top / float64(len(all)/10)
}

func TestLossAgainstItsDefinition(t *testing.T) {
	for name, d := range map[string]*Drawing{"flat": harbour(t, 200), "lined": buoy(t, 200), "JPEG": stain(t, buoy(t, 200), 80), "painting": painting()} {
		a := analysed(t, d)
		losses, err := a.Losses(nil)
		require.NoError(t, err)
		require.Len(t, losses, MaxCount)
		for _, l := range losses {
			mean, worst := slowLoss(a, d, l.Count, nil)
			assert.InDelta(t, mean, l.Mean, 0.25, "%s at %d", name, l.Count)
			assert.InDelta(t, worst, l.Worst, 0.6, "%s at %d", name, l.Count)
			assert.LessOrEqual(t, l.Mean, l.Worst+1e-9)
		}
	}
}

func TestLossIsNothingAtTheTrueCount(t *testing.T) {
	losses, err := analysed(t, harbour(t, 200)).Losses(nil)
	require.NoError(t, err)
	for _, l := range losses {
		if l.Count >= 5 {
			assert.Zero(t, l.Mean)
		} else {
			assert.Greater(t, l.Mean, losses[l.Count].Mean)
		}
	}
}

// Metal is no loss of colour: a red hull turned to metal takes its loss along.
func TestMetalIsNoLoss(t *testing.T) {
	a := analysed(t, harbour(t, 200))
	hull := idOf(t, at(t, a, 5), "#c8402f")
	green := rgb(t, "#00ff00")
	recolour := Edit{Op: SetColour, Flat: hull, RGB: &green}
	with, err := a.Losses([]Edit{recolour})
	require.NoError(t, err)
	without, err := a.Losses([]Edit{recolour, {Op: SetRole, Flat: hull, Role: Metal}})
	require.NoError(t, err)
	assert.Greater(t, with[4].Mean, 0.5)
	assert.Zero(t, without[4].Mean)
}
