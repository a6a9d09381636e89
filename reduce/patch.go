package reduce

// leastPatch is how many pixels, each with lost ones all round, make a patch
// of a colour of its own, by grade.
var leastPatch = [...]int{exact: 6, wandering: 10, grainy: 60}

// patches finds the colours of areas so small or so stained that no pixel of
// theirs is calm: from the lost pixels that have only lost ones round them.
func (e *edger) patches(lost []int32) []leaf {
	inner := e.innermost(lost)
	peaks, _ := peaksOf(shadesOf(e.pix, inner), 2*e.radius)
	var found []leaf
	for _, p := range peaks {
		l := leafOf(rgbOf(p.rgb))
		if p.n >= leastPatch[e.grade] && e.isNew(&l, found) && e.n+len(found) < int(loose)-mostHair {
			found = append(found, l)
		}
	}
	return found
}

// innermost marks with 1 the lost pixels whose eight neighbours are all lost.
func (e *edger) innermost(lost []int32) []uint8 {
	inner := make([]uint8, len(e.pix))
	for _, i := range lost {
		inner[i] = 2
	}
	for _, i := range lost {
		in := true
		ring := e.ring(int(i), 1)
		for _, o := range ring {
			in = in && inner[int(i)+o] != 0
		}
		if in && len(ring) == 8 {
			inner[i] = 1
		}
	}
	return inner
}

// isNew is true for a colour that is none of the flats, nor a mix of two.
func (e *edger) isNew(l *leaf, found []leaf) bool {
	t := e.grade.toneOf(l.rgb)
	known := append([]tone{e.tones[None]}, e.tones[:e.n]...)
	for k := range found {
		known = append(known, e.grade.toneOf(found[k].rgb))
	}
	most := int32(e.mix * e.mix)
	for a := range known {
		if t.apart2(&known[a]) <= 4*most {
			return false
		}
		for b := range a {
			if _, off := share(&t, &known[a], &known[b]); off <= most/4 {
				return false
			}
		}
	}
	return true
}
