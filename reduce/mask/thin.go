package mask

import "slices"

// thin takes away points, nearest to the edge first, as long as that neither
// breaks nor shortens a line; at is cleared where a point goes.
func thin(points []RidgePoint, at []int32, w, h int) {
	order := make([]int32, len(points))
	for i := range order {
		order[i] = int32(i)
	}
	slices.SortStableFunc(order, func(a, b int32) int { return int(points[a].D2 - points[b].D2) })
	for _, k := range order {
		p := &points[k]
		if removable[around(points, at, w, h, p)] {
			at[int(p.Y)*w+int(p.X)] = 0
		}
	}
}

// ring8 goes round a pixel, starting to the right, clockwise as seen with y down.
var ring8 = [8][2]int32{{1, 0}, {1, 1}, {0, 1}, {-1, 1}, {-1, 0}, {-1, -1}, {0, -1}, {1, -1}}

// around returns one bit for each neighbour that is a point of the same label.
func around(points []RidgePoint, at []int32, w, h int, p *RidgePoint) uint8 {
	var bits uint8
	for k, d := range ring8 {
		x, y := int(p.X+d[0]), int(p.Y+d[1])
		if x < 0 || y < 0 || x >= w || y >= h {
			continue
		}
		if n := at[y*w+x]; n > 0 && points[n-1].Label == p.Label {
			bits |= 1 << k
		}
	}
	return bits
}

// removable says for each neighbourhood whether its middle is neither an end
// of a line nor needed to hold it together (Yokoi's number for lines joined
// through corners is 1).
var removable = func() (t [256]bool) {
	for bits := range t {
		count, cross := 0, 0
		out := func(k int) int { return 1 - bits>>(k&7)&1 }
		for k := 0; k < 8; k++ {
			count += 1 - out(k)
			if k%2 == 0 {
				cross += out(k) - out(k)*out(k+1)*out(k+2)
			}
		}
		t[bits] = count >= 2 && cross == 1
	}
	return t
}()
