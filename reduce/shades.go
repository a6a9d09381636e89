package reduce

import (
	"cmp"
	"slices"

	"badgewright/reduce/colour"
)

// shadeBits is the fineness, bits a channel, at which pixels of nearly one
// colour are counted together. Their mean is kept exactly.
const (
	shadeBits = 6
	shadeKeys = 1 << (3 * shadeBits)
)

// shadeKey returns the bin of a pixel.
func shadeKey(p uint32) uint32 {
	return p>>2&63 | p>>10&63<<6 | p>>18&63<<12
}

// shade is the pixels of one bin.
type shade struct {
	key uint32
	n   int
	rgb [3]float64 // mean, levels
	lab colour.OKLab
}

type shadeSum struct{ n, r, g, b uint32 }

// shadesOf counts the pixels that take marks with 1, commonest bins first.
func shadesOf(pix []uint32, take []uint8) []shade {
	sums := make([]shadeSum, shadeKeys)
	take = take[:len(pix)]
	last, n := uint32(0), uint32(0)
	flush := func() {
		if n > 0 {
			s := &sums[shadeKey(last)]
			s.n += n
			s.r, s.g, s.b = s.r+n*(last&255), s.g+n*(last>>8&255), s.b+n*(last>>16&255)
		}
	}
	for i, p := range pix {
		if take[i] != 1 {
			continue
		}
		if p != last {
			flush()
			last, n = p, 0
		}
		n++
	}
	flush()
	return sorted(sums)
}

func sorted(sums []shadeSum) []shade {
	var out []shade
	for k, s := range sums {
		if s.n == 0 {
			continue
		}
		n := float64(s.n)
		sh := shade{key: uint32(k), n: int(s.n), rgb: [3]float64{float64(s.r) / n, float64(s.g) / n, float64(s.b) / n}}
		sh.lab = okOf(sh.rgb)
		out = append(out, sh)
	}
	slices.SortFunc(out, func(a, b shade) int {
		return cmp.Or(cmp.Compare(b.n, a.n), cmp.Compare(a.key, b.key))
	})
	return out
}

// okOf converts levels that need not be whole.
func okOf(rgb [3]float64) colour.OKLab {
	return colour.Linear{R: decode(rgb[0]), G: decode(rgb[1]), B: decode(rgb[2])}.OKLab()
}

// decode reads the transfer curve between whole levels.
func decode(v float64) float64 {
	v = min(max(v, 0), 255)
	k := min(int(v), 254)
	f := v - float64(k)
	a, b := decoded[k], decoded[k+1]
	return a + float64(f*(b-a))
}

var decoded = func() (t [256]float64) {
	for i := range t {
		t[i] = colour.Decode(float64(i) / 255)
	}
	return t
}()

func rgbOf(v [3]float64) colour.RGB8 {
	r := func(x float64) uint8 { return uint8(min(max(x+0.5, 0), 255)) }
	return colour.RGB8{R: r(v[0]), G: r(v[1]), B: r(v[2])}
}
