package mask

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

// slowConnect floods from every pixel in reading order.
func slowConnect(label []uint8, w, h int, eight *[256]bool) []int32 {
	comp := make([]int32, len(label))
	n := int32(0)
	for i := range label {
		if comp[i] != 0 {
			continue
		}
		n++
		comp[i] = n
		for stack := []int{i}; len(stack) > 0; {
			p := stack[len(stack)-1]
			stack = stack[:len(stack)-1]
			for k, d := range ring8 {
				x, y := p%w+int(d[0]), p/w+int(d[1])
				if x < 0 || y < 0 || x >= w || y >= h || k%2 == 1 && !eight[label[p]] {
					continue
				}
				if q := y*w + x; comp[q] == 0 && label[q] == label[p] {
					comp[q] = n
					stack = append(stack, q)
				}
			}
		}
	}
	for i := range comp {
		comp[i]--
	}
	return comp
}

func TestPartsAreThoseOfAFlood(t *testing.T) {
	const seed = 43
	t.Logf("seed %d", seed)
	rnd := rand.New(rand.NewPCG(seed, 0))
	for range 300 {
		w, h := 1+rnd.IntN(24), 1+rnd.IntN(12)
		label, calm := make([]uint8, w*h), 1+rnd.IntN(16)
		for i := range label {
			if label[i] = uint8(rnd.IntN(3)); i > 0 && rnd.IntN(calm) > 0 {
				label[i] = label[i-1]
			}
		}
		eight := &[256]bool{1: true}
		c := Connect(label, w, h, eight)
		want := slowConnect(label, w, h, eight)
		areas := map[int32]int{}
		for i := range label {
			require.Equal(t, want[i], c.At(i%w, i/w))
			areas[want[i]]++
		}
		require.Len(t, c.Area, len(areas))
		for k, n := range areas {
			require.Equal(t, n, c.Area[k])
		}
	}
}
