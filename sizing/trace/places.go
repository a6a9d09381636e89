package trace

// places are places along an arc: where the edge is, how far off that may be
// (px), and how it is to be drawn.
type places struct {
	p      []vec
	unsure []float64
	rough  []uint8 // as arc.rough; nil while there is none
}

// cut returns places i..j-1.
func (s places) cut(i, j int) places {
	return places{p: s.p[i:j], unsure: s.unsure[i:j]}
}

// rotated returns the places of a ring from i on, the first again at the end.
func (s places) rotated(i int) places {
	return places{p: ringFrom(s.p, i), unsure: ringFrom(s.unsure, i), rough: ringFrom(s.rough, i)}
}

func ringFrom[T any](s []T, i int) []T {
	if s == nil {
		return nil
	}
	out := make([]T, 0, len(s)+1)
	return append(append(append(out, s[i:]...), s[:i]...), s[i])
}

// straightOff is how far place i may lie from a straight line, px.
func (s *places) straightOff(i int) float64 { return max(straightOff, s.unsure[i]) }

// straightOff is how far a place of a clean soft edge may lie from a straight
// line, px.
const straightOff = 0.15
