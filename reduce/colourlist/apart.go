package colourlist

import (
	"math"

	"badgewright/reduce/colour"
)

// Apart gives every colour an entry of its own so that the sum of CIEDE2000 is
// least. held[i] is an entry that colour i keeps, or -1; no two may hold the
// same. ok is false when the list has too few entries.
func (s *Shelf) Apart(of []colour.Lab, held []int) (all []CodeMatch, ok bool) {
	if len(of) > len(s.entries) {
		return nil, false
	}
	kept := map[int]bool{}
	for _, h := range held {
		kept[h] = true
	}
	// Of its len(of) nearest entries one is always left to a colour that gave way,
	// so nothing farther off can be in the best assignment.
	var free []int
	var entries []int
	column := map[int]int{}
	costs := [][]float64{}
	for i, l := range of {
		if held[i] >= 0 {
			continue
		}
		free = append(free, i)
		for _, b := range s.nearest(l, len(of)) {
			if _, known := column[b.at]; !known && !kept[b.at] {
				column[b.at] = len(entries)
				entries = append(entries, b.at)
			}
		}
	}
	for _, i := range free {
		row := make([]float64, len(entries))
		for k, e := range entries {
			row[k] = colour.CIEDE2000(of[i], s.labs[e])
		}
		costs = append(costs, row)
	}
	all = make([]CodeMatch, len(of))
	for i, h := range held {
		if h >= 0 {
			all[i] = s.At(h, of[i])
		}
	}
	for k, e := range assign(costs) {
		all[free[k]] = s.At(entries[e], of[free[k]])
	}
	return all, true
}

// assign gives each row a column of its own at the least sum, by the Hungarian
// method with potentials (Kuhn 1955, Munkres 1957). There must be at least as
// many columns as rows. Ties fall to the lowest column.
func assign(costs [][]float64) []int {
	if len(costs) == 0 {
		return nil
	}
	n, m := len(costs), len(costs[0])
	u, v := make([]float64, n), make([]float64, m+1)
	row := make([]int, m+1) // the row that holds a column; column m is where a new row starts from
	for j := range row {
		row[j] = -1
	}
	for i := range n {
		row[m] = i
		w := augment(costs, u, v, row)
		for j := w.end; j != m; j = w.from[j] {
			row[j] = row[w.from[j]]
		}
	}
	got := make([]int, n)
	for j, i := range row[:m] {
		if i >= 0 {
			got[i] = j
		}
	}
	return got
}

// way leads from a column back to the new row.
type way struct {
	from []int
	end  int
}

// augment finds the cheapest way from the row in the last column to a column
// that is free, and moves the potentials along.
func augment(costs [][]float64, u, v []float64, row []int) way {
	m := len(v) - 1
	least, from, seen := make([]float64, m), make([]int, m+1), make([]bool, m+1)
	for j := range least {
		least[j] = math.Inf(1)
	}
	at := m
	for row[at] >= 0 {
		seen[at] = true
		i, next, step := row[at], -1, math.Inf(1)
		for j := range m {
			if seen[j] {
				continue
			}
			if c := costs[i][j] - u[i] - v[j]; c < least[j] {
				least[j], from[j] = c, at
			}
			if least[j] < step {
				next, step = j, least[j]
			}
		}
		for j := range seen {
			if seen[j] {
				u[row[j]] += step
				v[j] -= step
			} else if j < m {
				least[j] -= step
			}
		}
		at = next
	}
	return way{from, at}
}
