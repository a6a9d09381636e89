package colourlist

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce/colour"
)

// The slow, obvious twin: every way to give each row a column of its own.
func slowAssign(costs [][]float64) float64 {
	least := math.Inf(1)
	used := map[int]bool{}
	var try func(row int, sum float64)
	try = func(row int, sum float64) {
		if row == len(costs) {
			least = min(least, sum)
			return
		}
		for j, c := range costs[row] {
			if !used[j] {
				used[j] = true
				try(row+1, sum+c)
				used[j] = false
			}
		}
	}
	try(0, 0)
	return least
}

func sumOf(t *testing.T, costs [][]float64, got []int) float64 {
	t.Helper()
	sum, used := 0.0, map[int]bool{}
	for i, j := range got {
		require.False(t, used[j], "column %d twice", j)
		used[j] = true
		sum += costs[i][j]
	}
	return sum
}

// Source: the example of scipy.optimize.linear_sum_assignment.
func TestAssignOfSciPysExample(t *testing.T) {
	costs := [][]float64{{4, 1, 3}, {2, 0, 5}, {3, 2, 2}}
	got := assign(costs)
	assert.Equal(t, []int{1, 0, 2}, got)
	assert.Equal(t, 5.0, sumOf(t, costs, got))
}

func TestAssignIsThatOfTryingAll(t *testing.T) {
	const seed = 7
	t.Log("seed", seed)
	r := rand.New(rand.NewPCG(seed, 0))
	for range 300 {
		n := r.IntN(6)
		m := n + r.IntN(3)
		costs := make([][]float64, n)
		for i := range costs {
			for range m {
				costs[i] = append(costs[i], float64(r.IntN(8))) // small whole numbers: many ties
			}
		}
		got := assign(costs)
		require.Len(t, got, n)
		require.Equal(t, slowAssign(costs), sumOf(t, costs, got), "%v", costs)
		require.Equal(t, got, assign(costs))
	}
}

// Apart, which looks at near entries only, is the best over the whole list.
func TestApartIsTheBestOverAllEntries(t *testing.T) {
	const seed = 19
	t.Log("seed", seed)
	r := rand.New(rand.NewPCG(seed, 0))
	for range 80 {
		l := randomList(r, 1+r.IntN(8))
		n := 1 + r.IntN(min(4, len(l.Entries)))
		of, held := make([]colour.Lab, n), make([]int, n)
		base := randomColour(r)
		for i := range of {
			base.G += uint8(r.UintN(6)) // near each other, so that they compete
			of[i], held[i] = base.Lab(), -1
		}
		if r.IntN(2) == 0 {
			held[r.IntN(n)] = r.IntN(len(l.Entries))
		}
		got, ok := NewShelf(l).Apart(of, held)
		require.True(t, ok)
		costs, sum, used := make([][]float64, n), 0.0, map[int]bool{}
		for i, m := range got {
			require.False(t, used[m.Index])
			used[m.Index] = true
			sum += m.DE
			for k := range l.Entries {
				c := colour.CIEDE2000(of[i], l.Entries[k].CIELAB())
				if held[i] >= 0 && held[i] != k {
					c = 1e6
				}
				costs[i] = append(costs[i], c)
			}
		}
		require.InDelta(t, slowAssign(costs), sum, 1e-9)
	}
}

func TestApartOfTooFewEntriesIsNotPossible(t *testing.T) {
	s := NewShelf(&ColourList{Entries: []ColourEntry{{Code: "1"}}})
	_, ok := s.Apart(make([]colour.Lab, 2), []int{-1, -1})
	assert.False(t, ok)
	all, ok := s.Apart(nil, nil)
	assert.True(t, ok)
	assert.Empty(t, all)
}
