package outline

import (
	"cmp"
	"slices"

	"badgewright/sizing"
)

// Part is one connected part of the silhouette.
type Part struct {
	spread
	comp int32
}

// way is the shortest way between two parts, from the one nearer to the largest
// part to the other. Places are in pixels.
type way struct {
	from, to int32 // parts
	ends     [4]float64
	gap      float64 // px between the edges
}

// mostParts is how many parts, the largest, are looked at one by one; what a
// drawing has more of are specks.
const mostParts = 12

// largest returns the parts looked at one by one, the largest first, equals in
// reading order.
func (m *Measured) largest() []int32 {
	all := make([]int32, len(m.parts))
	for k := range all {
		all[k] = int32(k)
	}
	slices.SortStableFunc(all, func(a, b int32) int { return cmp.Compare(m.parts[b].Area, m.parts[a].Area) })
	return all[:min(len(all), mostParts)]
}

// measureParts finds how the parts lie to each other: from the largest on, each
// time the nearest part not yet reached (Prim's tree).
func (m *Measured) measureParts() {
	all := m.largest()
	if len(all) < 2 {
		return
	}
	rims := m.rimsOf(all)
	reached, rest := all[:1:1], slices.Clone(all[1:])
	for len(rest) > 0 {
		var best way
		pick := -1
		for _, a := range reached {
			for k, b := range rest {
				if w := m.between(a, b, rims); pick < 0 || w.gap < best.gap {
					best, pick = w, k
				}
			}
		}
		m.ways = append(m.ways, best)
		reached = append(reached, rest[pick])
		rest = slices.Delete(rest, pick, pick+1)
	}
}

// rims are the pixels of parts that lie at an edge.
type rims struct {
	of     map[int32][][2]int32
	stride int
	known  map[[2]int32]way
}

// rimPixels is about how many pixels of all rims are compared with each other;
// of longer rims every so many is, and the nearest pair is then made better.
const rimPixels = 12000

func (m *Measured) rimsOf(parts []int32) *rims {
	r := &rims{of: map[int32][][2]int32{}, known: map[[2]int32]way{}}
	for _, k := range parts {
		r.of[k] = nil
	}
	n := 0
	for y := range m.comps.H {
		for _, run := range m.comps.Runs[m.comps.Row[y]:m.comps.Row[y+1]] {
			k := m.partOf[run.Comp]
			list, wanted := r.of[k]
			if k < 0 || !wanted {
				continue
			}
			for x := run.X0; x < run.X1; x++ {
				if m.atRim(int(x), y) {
					list = append(list, [2]int32{x, int32(y)})
				}
			}
			n += len(list) - len(r.of[k])
			r.of[k] = list
		}
	}
	r.stride = n/rimPixels + 1
	return r
}

func (m *Measured) atRim(x, y int) bool {
	return m.v.at(x-1, y) != solid || m.v.at(x+1, y) != solid || m.v.at(x, y-1) != solid || m.v.at(x, y+1) != solid
}

// between finds the shortest way from part a to part b.
func (m *Measured) between(a, b int32, r *rims) way {
	if w, ok := r.known[[2]int32{a, b}]; ok {
		return w
	}
	p, q := r.of[a], r.of[b]
	best, i, k := int32(1<<31-1), 0, 0
	for s := 0; s < len(p); s += r.stride {
		for t := 0; t < len(q); t += r.stride {
			if d := apart(p[s], q[t]); d < best {
				best, i, k = d, s, t
			}
		}
	}
	for range 4 {
		i = nearestOf(p, q[k])
		k = nearestOf(q, p[i])
	}
	w := way{from: a, to: b, ends: [4]float64{float64(p[i][0]) + 0.5, float64(p[i][1]) + 0.5, float64(q[k][0]) + 0.5, float64(q[k][1]) + 0.5}}
	w.gap = max(0, length(w.ends[2]-w.ends[0], w.ends[3]-w.ends[1])-1)
	r.known[[2]int32{a, b}] = w
	return w
}

func apart(p, q [2]int32) int32 { return (p[0]-q[0])*(p[0]-q[0]) + (p[1]-q[1])*(p[1]-q[1]) }

func nearestOf(list [][2]int32, q [2]int32) int {
	best := 0
	for i := range list {
		if apart(list[i], q) < apart(list[best], q) {
			best = i
		}
	}
	return best
}

// speckMM2 is the area in mm2 below which a part is a speck: an eye with metal
// round it is larger (this tool's choice).
const speckMM2 = 4

// looseParts finds the parts that nothing joins to the rest.
func (m *Measured) looseParts(at *At) []sizing.Finding {
	var found []sizing.Finding
	hung := m.hung(at.Parts)
	var specks []int32
	shown := map[int32]bool{}
	for i := range m.ways {
		w := &m.ways[i]
		shown[w.from], shown[w.to] = true, true
		switch p := &m.parts[w.to]; {
		case hung[w.to]:
		case p.Area < at.px2(speckMM2):
			specks = append(specks, w.to)
		default:
			found = append(found, m.loose(w, at))
		}
	}
	for k := range m.parts {
		if len(m.ways) > 0 && !shown[int32(k)] {
			specks = append(specks, int32(k))
		}
	}
	if len(specks) > 0 {
		found = append(found, m.specks(specks, at))
	}
	return found
}

func (m *Measured) loose(w *way, at *At) sizing.Finding {
	p := &m.parts[w.to]
	f := sizing.Finding{
		Kind: sizing.LoosePart, Flat: m.flatNear(w.ends[2], w.ends[3]), Other: sizing.Outside, Count: 1,
		X: w.ends[2], Y: w.ends[3], X0: p.X0, Y0: p.Y0, X1: p.X1, Y1: p.Y1, Ends: w.ends,
		Length: at.Scale.MM(length(p.X1-p.X0, p.Y1-p.Y0)), Thinnest: at.Scale.MM(w.gap), Typical: at.Scale.MM(w.gap),
		Area: p.Area / at.px2(1), Error: at.Scale.MM(hardError), Verdict: sizing.Fails,
	}
	if _, _, ok := m.drawnEyes(w); ok && at.Parts.Choice == sizing.PartsOpen {
		f.Verdict = sizing.Holds
	}
	return f
}

// specks sums up the parts too small to be one.
func (m *Measured) specks(list []int32, at *At) sizing.Finding {
	p := &m.parts[list[0]]
	f := sizing.Finding{
		Kind: sizing.LoosePart, Flat: m.flatNear(p.X, p.Y), Other: sizing.Outside, Count: len(list),
		X: p.X, Y: p.Y, X0: p.X0, Y0: p.Y0, X1: p.X1, Y1: p.Y1,
		Error: at.Scale.MM(hardError), Verdict: sizing.Fails,
	}
	for _, k := range list {
		p := &m.parts[k]
		f.Area += p.Area / at.px2(1)
		f.X0, f.Y0, f.X1, f.Y1 = min(f.X0, p.X0), min(f.Y0, p.Y0), max(f.X1, p.X1), max(f.Y1, p.Y1)
	}
	f.Length = at.Scale.MM(length(f.X1-f.X0, f.Y1-f.Y0))
	for i := range m.ways {
		if w := &m.ways[i]; w.to == list[0] {
			f.X, f.Y, f.Ends = w.ends[2], w.ends[3], w.ends
			f.Thinnest, f.Typical = at.Scale.MM(w.gap), at.Scale.MM(w.gap)
		}
	}
	return f
}
