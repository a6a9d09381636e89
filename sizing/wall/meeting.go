package wall

import (
	"cmp"
	"slices"

	"badgewright/reduce"
	"badgewright/reduce/mask"
)

// Meeting is two flats that meet, in all places together; lengths in working
// pixels.
type Meeting struct {
	A, B reduce.FlatID // B is reduce.BuiltMetal where Metal is true
	// Metal says that B is the metal beside A, Across that a line lies between
	// the two; else they touch.
	Metal, Across bool
	X, Y          float64 // a place where they meet
	Length        float64
	Width         float64 // of the line between them, in the middle of the list; else 0
}

// facing is two classes on either side of metal, and the places where they are.
type facing struct {
	a, b uint8
	at   []int32 // into the ridge
}

// faceEachOther goes along the centrelines of metal and notes what lies on
// either side.
func (m *Measured) faceEachOther(ridge []mask.RidgePoint) {
	found := map[[2]uint8]*facing{}
	note := func(a, b uint8, i int) {
		f := found[[2]uint8{a, b}]
		if f == nil {
			f = &facing{a: a, b: b}
			found[[2]uint8{a, b}] = f
		}
		f.at = append(f.at, int32(i))
	}
	for i := range ridge {
		r := &ridge[i]
		if r.Label != metal {
			continue
		}
		a, b := m.v.at(int(r.AX), int(r.AY)), m.v.at(int(r.BX), int(r.BY))
		if a > b {
			a, b = b, a
		}
		if m.v.enamel[a] {
			note(a, metal, i)
		}
		if m.v.enamel[b] && a != b {
			note(b, metal, i)
			if m.v.enamel[a] {
				note(a, b, i)
			}
		}
	}
	for _, f := range found {
		m.meetings = append(m.meetings, m.meetingOf(f, ridge))
	}
	sortMeetings(m.meetings)
}

func (m *Measured) meetingOf(f *facing, ridge []mask.RidgePoint) Meeting {
	middle := &ridge[f.at[len(f.at)/2]]
	g := Meeting{A: m.s.Flats[f.a].ID, B: reduce.BuiltMetal, Metal: f.b == metal, Across: f.b != metal, Length: float64(len(f.at))}
	g.X, g.Y = float64(middle.X)+0.5, float64(middle.Y)+0.5
	if g.Metal {
		// On the enamel's side of the edge, where it is seen.
		if x, y := int(middle.AX), int(middle.AY); m.v.at(x, y) == f.a {
			g.X, g.Y = float64(x)+0.5, float64(y)+0.5
		} else {
			g.X, g.Y = float64(middle.BX)+0.5, float64(middle.BY)+0.5
		}
		return g
	}
	g.B = m.s.Flats[f.b].ID
	widths := make([]int32, len(f.at))
	for k, i := range f.at {
		widths[k] = ridge[i].D2
	}
	slices.Sort(widths)
	g.Width = 2 * sqrt(float64(widths[len(widths)/2]))
	return g
}

func sortMeetings(all []Meeting) {
	order := func(g *Meeting) int {
		switch {
		case g.Metal:
			return 2
		case g.Across:
			return 1
		}
		return 0
	}
	slices.SortFunc(all, func(p, q Meeting) int {
		return cmp.Or(cmp.Compare(order(&p), order(&q)), cmp.Compare(p.A, q.A), cmp.Compare(p.B, q.B))
	})
}

// Meetings returns all flats that meet: those that touch, those across a line,
// then each enamel beside metal. The length along metal is that of its
// centreline, in steps.
func (m *Measured) Meetings() []Meeting {
	all := slices.Clone(m.meetings)
	found := map[[2]reduce.FlatID]int{}
	longest := map[[2]reduce.FlatID]float64{}
	for i := range m.touches {
		t := &m.touches[i]
		a, b := m.s.Flats[m.parts.Label[t.a]].ID, m.s.Flats[m.parts.Label[t.b]].ID
		if a > b {
			a, b = b, a
		}
		key := [2]reduce.FlatID{a, b}
		if a == b || t.bare <= 0 || t.path == nil {
			continue
		}
		k, ok := found[key]
		if !ok {
			k = len(all)
			found[key] = k
			all = append(all, Meeting{A: a, B: b})
		}
		all[k].Length += t.bare
		if t.bare > longest[key] {
			longest[key] = t.bare
			all[k].X, all[k].Y = t.x, t.y
		}
	}
	sortMeetings(all)
	return all
}
