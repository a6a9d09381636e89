package mask

import (
	"cmp"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestOrderIsThatOfAStableSort(t *testing.T) {
	const seed = 45
	t.Logf("seed %d", seed)
	rnd := rand.New(rand.NewPCG(seed, 0))
	for n := range 60 {
		keys := make([]uint32, n*n)
		for i := range keys {
			keys[i] = rnd.Uint32() >> (n % 32) // few and many digits, equals among them
		}
		want := make([]int32, len(keys))
		for i := range want {
			want[i] = int32(i)
		}
		slices.SortStableFunc(want, func(a, b int32) int { return cmp.Compare(keys[a], keys[b]) })
		require.Equal(t, want, Order(keys))
	}
}
