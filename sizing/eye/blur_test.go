package eye

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
)

// noise is a plane of soft blobs and grain, the same for a seed.
func noise(seed uint64, w, h int) plane {
	r := rand.New(rand.NewPCG(seed, 1))
	p := newPlane(w, h)
	for i := range p.v {
		p.v[i] = float32(r.Float64()*0.2) + float32(0.5+0.5*math.Sin(float64(i%w)/7)*math.Cos(float64(i/w)/11))
	}
	return p
}

// slowly blurs by the sum itself; what lies off the plane is 0.
func slowly(p plane, variance float64) plane {
	out := newPlane(p.w, p.h)
	n := int(math.Ceil(6 * math.Sqrt(variance)))
	k, sum := make([]float64, 2*n+1), 0.0
	for i := range k {
		k[i] = math.Exp(-float64((i-n)*(i-n)) / (2 * variance))
		sum += k[i]
	}
	at := func(v []float64, x, y int) float64 {
		if x < 0 || y < 0 || x >= p.w || y >= p.h {
			return 0
		}
		return v[y*p.w+x]
	}
	a, b := make([]float64, len(p.v)), make([]float64, len(p.v))
	for i, v := range p.v {
		a[i] = float64(v)
	}
	for i := range a {
		for d, w := range k {
			b[i] += w / sum * at(a, i%p.w+d-n, i/p.w)
		}
	}
	for i := range a {
		s := 0.0
		for d, w := range k {
			s += w / sum * at(b, i%p.w, i/p.w+d-n)
		}
		out.v[i] = float32(s)
	}
	return out
}

func TestBlurAgainstTheSum(t *testing.T) {
	for seed, sigma := range []float64{0.2, 0.6, 1, 1.7, 2.7, 4.1, 5.7, 9, 16, 33, 70} {
		p := noise(uint64(seed), 90, 70)
		got, want := p.gaussian(sigma*sigma), slowly(p, sigma*sigma)
		worst := 0.0
		for i := range got.v {
			worst = max(worst, math.Abs(float64(got.v[i]-want.v[i])))
		}
		assert.Less(t, worst, 0.008, "sigma %v, seed %d", sigma, seed)
	}
}

func TestCoarseAndOutAgainLosesWhatItSays(t *testing.T) {
	for _, by := range []int{2, 3, 4, 8} {
		// The variance of a single bright pixel, over every place it can have in a block.
		mean := 0.0
		for at := range by {
			const n = 97
			p := newPlane(n, 1)
			p.v[48+at] = 1
			out := p.coarse(by).drawnOut(by, n, 1)
			sum, first, second := 0.0, 0.0, 0.0
			for x, v := range out.v {
				d := float64(x - 48 - at)
				sum, first, second = sum+float64(v), first+d*float64(v), second+d*d*float64(v)
			}
			mean += second / sum / float64(by)
			_ = first
		}
		assert.InDelta(t, coarseLoss(by), mean, 0.02*coarseLoss(by), "by %d", by)
	}
}
