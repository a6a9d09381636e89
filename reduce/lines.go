package reduce

// OnlyLines is true of a drawing that is line work and nothing else.
func (a *Analysis) OnlyLines() bool {
	for k := range a.leaves {
		if a.line == nil || !a.line[k] {
			return false
		}
	}
	return len(a.leaves) > 0
}

// OnWhite lays a drawing on white paper. Lines alone on a clear ground close
// in nothing that can be seen; on paper they close in white areas.
func OnWhite(d *Drawing) *Drawing {
	out := *d
	out.Pix = lay(d.Pix, white)
	for i, p := range out.Pix {
		out.Pix[i] = p | 0xff000000
	}
	return &out
}
