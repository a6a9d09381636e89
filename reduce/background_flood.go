package reduce

// run is a stretch of candidate pixels in one row: columns from..to-1.
type run struct{ from, to int32 }

// flood marks with 255 every pixel that the box holds and that is joined to
// the file's border by pixels of its kind, edge to edge. Clear pixels let the
// flood through. Rows are cut into runs, runs that touch are joined, and the
// sets that reach the border are painted: each pixel is read once.
func flood(back []uint8, pix []uint32, w, h int, near box) {
	runs, starts := findRuns(pix, w, h, near)
	parent := make([]int32, len(runs)+1) // 0 is the outside
	for i := range parent {
		parent[i] = int32(i)
	}
	for y := 0; y < h; y++ {
		row := runs[starts[y]:starts[y+1]]
		for i, r := range row {
			if y == 0 || y == h-1 || r.from == 0 || int(r.to) == w {
				join(parent, 0, int32(starts[y]+i+1))
			}
		}
		if y > 0 {
			joinRows(parent, runs[starts[y-1]:starts[y]], row, starts[y-1]+1, starts[y]+1)
		}
	}
	for y := 0; y < h; y++ {
		line := back[y*w : (y+1)*w]
		for i := starts[y]; i < starts[y+1]; i++ {
			if root(parent, int32(i+1)) == 0 {
				fill(line[runs[i].from:runs[i].to])
			}
		}
	}
}

// findRuns cuts each row into runs; row y holds runs starts[y] to starts[y+1].
func findRuns(pix []uint32, w, h int, near box) (runs []run, starts []int) {
	starts = make([]int, 1, h+1)
	runs = make([]run, 0, 4*h)
	for y := 0; y < h; y++ {
		line := pix[y*w : (y+1)*w]
		in := false
		from := 0
		last, was := line[0]^1, false // what the pixel before was, and whether it counted
		for x, p := range line {
			if p != last {
				last = p
				was = p>>24 <= clearAlpha || near.holds(p)
			}
			if was == in {
				continue
			}
			if in = was; in {
				from = x
			} else {
				runs = append(runs, run{int32(from), int32(x)})
			}
		}
		if in {
			runs = append(runs, run{int32(from), int32(w)})
		}
		starts = append(starts, len(runs))
	}
	return runs, starts
}

// joinRows joins the runs of two neighbouring rows that share a column.
func joinRows(parent []int32, above, below []run, a0, b0 int) {
	a, b := 0, 0
	for a < len(above) && b < len(below) {
		if above[a].from < below[b].to && below[b].from < above[a].to {
			join(parent, int32(a0+a), int32(b0+b))
		}
		if above[a].to < below[b].to {
			a++
		} else {
			b++
		}
	}
}

func root(parent []int32, i int32) int32 {
	for parent[i] != i {
		parent[i] = parent[parent[i]]
		i = parent[i]
	}
	return i
}

func join(parent []int32, a, b int32) {
	a, b = root(parent, a), root(parent, b)
	if a < b {
		parent[b] = a
	} else {
		parent[a] = b
	}
}

func fill(line []uint8) {
	for i := range line {
		line[i] = 255
	}
}

// growInto widens the background into stained pixels beside it, at most
// stainReach steps deep.
func growInto(back []uint8, pix []uint32, w, h int, wide box) {
	var front, next []int32
	for y := range h {
		row := back[y*w : (y+1)*w]
		above, below := back[max(0, y-1)*w:][:w], back[min(h-1, y+1)*w:][:w]
		for x, b := range row {
			if b == 255 && (above[x]&below[x]&row[max(0, x-1)]&row[min(w-1, x+1)]) != 255 {
				front = pushSoft(front, back, pix, y*w+x, w, h, &wide)
			}
		}
	}
	for step := 1; step < stainReach && len(front) > 0; step++ {
		next = next[:0]
		for _, i := range front {
			next = pushSoft(next, back, pix, int(i), w, h, &wide)
		}
		front, next = next, front
	}
}

// justGrown marks pixels reached by growth, so that the first pass over the
// background does not start from them; they count as background all the same.
const justGrown = 254

// pushSoft adds the four neighbours of pixel i that the box holds.
func pushSoft(list []int32, back []uint8, pix []uint32, i, w, h int, wide *box) []int32 {
	x := i % w
	try := func(j int) {
		if back[j] == 0 && wide.holds(pix[j]) {
			back[j] = justGrown
			list = append(list, int32(j))
		}
	}
	if x > 0 {
		try(i - 1)
	}
	if x < w-1 {
		try(i + 1)
	}
	if i >= w {
		try(i - w)
	}
	if i < w*(h-1) {
		try(i + w)
	}
	return list
}

// dropSpecks turns small faint islands in the background into background, and
// settles what growth marked.
func dropSpecks(back []uint8, pix []uint32, w, h int, faint box) {
	for i, b := range back {
		if b == justGrown {
			back[i] = 255
		}
	}
	island := make([]int, 0, speckPixels+4)
	for y := 0; y < h; y++ {
		for x := 0; x < w; x++ {
			i := y*w + x
			// only the first pixel of a run below background can begin an island
			if back[i] != 0 || x > 0 && back[i-1] == 0 || y > 0 && back[i-w] == 0 {
				continue
			}
			var whole bool
			if island, whole = islandFrom(island[:0], back, pix, i, w, h, &faint); whole {
				for _, j := range island {
					back[j] = 255
				}
			}
		}
	}
}

// islandFrom gathers the faint pixels joined to pixel i, corners included, and
// says whether they are a whole island of at most speckPixels.
func islandFrom(island []int, back []uint8, pix []uint32, i, w, h int, faint *box) ([]int, bool) {
	island = append(island, i)
	for k := 0; k < len(island); k++ {
		j := island[k]
		if !faint.holds(pix[j]) || len(island) > speckPixels {
			return island, false
		}
		x, y := j%w, j/w
		for yy := max(0, y-1); yy <= min(h-1, y+1); yy++ {
			for xx := max(0, x-1); xx <= min(w-1, x+1); xx++ {
				n := yy*w + xx
				if back[n] == 0 && !within(island, n) {
					island = append(island, n)
				}
			}
		}
	}
	return island, len(island) <= speckPixels
}

func within(list []int, n int) bool {
	for _, v := range list {
		if v == n {
			return true
		}
	}
	return false
}
