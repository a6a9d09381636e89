package wall

import "badgewright/reduce/mask"

// What a part may touch.
const (
	byMetal uint8 = 1 << iota
	byEnamel
	byOutside
	byPrint
	byFrame // the end of the raster
)

// around says what lies round each part.
type around struct {
	by    []uint8 // what a part touches
	outer []int32 // the part above its first pixel, which is what encloses it if anything does; -1 off the raster
}

// lookAround goes over the runs of all parts once.
func (m *Measured) lookAround() {
	n := len(m.parts.Label)
	a := &m.round
	a.by, a.outer = make([]uint8, n), make([]int32, n)
	for k := range a.outer {
		a.outer[k] = unknown
	}
	var above []mask.Run
	for y := 0; y < m.v.h; y++ {
		here := m.parts.Runs[m.parts.Row[y]:m.parts.Row[y+1]]
		a.by[here[0].Comp] |= byFrame
		a.by[here[len(here)-1].Comp] |= byFrame
		for i := 1; i < len(here); i++ {
			m.meet(&here[i-1], &here[i])
		}
		m.meetAbove(above, here)
		above = here
	}
	for i := range above {
		a.by[above[i].Comp] |= byFrame
	}
}

const unknown = -2

// meetAbove notes what the runs of a row have above them.
func (m *Measured) meetAbove(above, here []mask.Run) {
	a := &m.round
	if above == nil {
		for i := range here {
			a.by[here[i].Comp] |= byFrame
			a.outer[here[i].Comp] = -1
		}
		return
	}
	for i, j := 0, 0; i < len(above) && j < len(here); {
		p, q := &above[i], &here[j]
		if a.outer[q.Comp] == unknown {
			a.outer[q.Comp] = p.Comp
		}
		m.meet(p, q)
		end := min(p.X1, q.X1)
		if p.X1 == end {
			i++
		}
		if q.X1 == end {
			j++
		}
	}
}

func (m *Measured) meet(p, q *mask.Run) {
	if p.Label != q.Label {
		m.round.by[p.Comp] |= m.v.kind(q.Label)
		m.round.by[q.Comp] |= m.v.kind(p.Label)
	}
}

// kind returns what a class is.
func (v *view) kind(class uint8) uint8 {
	switch {
	case class == metal:
		return byMetal
	case class == outside:
		return byOutside
	case v.enamel[class]:
		return byEnamel
	}
	return byPrint
}
