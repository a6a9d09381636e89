package outline

import (
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// Offer is what can be done about a trouble spot that was found: a bridge to a
// loose part, metal along what is too thin, the rounding of a tip. There is none
// for what wants the person's hand.
func (m *Measured) Offer(f *sizing.Finding) []sizing.Recipe {
	if f.Verdict == sizing.Holds {
		return nil
	}
	switch f.Kind {
	case sizing.LoosePart:
		if f.Count == 1 {
			return []sizing.Recipe{{Kind: sizing.BuildBridge, Points: [][2]float64{m.share(f.Ends[0], f.Ends[1]), m.share(f.Ends[2], f.Ends[3])}}}
		}
	case sizing.ThinBridge:
		return m.along(f, 0)
	case sizing.LongArm:
		return m.along(f, armWidth(f))
	case sizing.SharpTip:
		if n := len(f.Path); n >= 4 {
			back := m.share(float64(f.Path[n-2]), float64(f.Path[n-1]))
			return []sizing.Recipe{{Kind: sizing.RoundTip, Points: [][2]float64{m.share(f.X, f.Y), back}}}
		}
	}
	return nil
}

// armWidth is how wide an arm must be made: a little more than its limit, as
// metal laid round its end makes it longer by half of what it is widened by.
func armWidth(f *sizing.Finding) unit.MM {
	const grain = 0.05 // mm, what the raster may take of it
	most := float64(f.Length / f.Limit)
	return unit.MM((float64(f.Length)-float64(f.Thinnest)/2)/(most-0.5)) + grain
}

// along is metal along the path of a spot, of a width, or of what the limits ask.
func (m *Measured) along(f *sizing.Finding, width unit.MM) []sizing.Recipe {
	r := sizing.Recipe{Kind: sizing.BuildBridge, Width: width}
	for i := 0; i+1 < len(f.Path); i += 2 {
		r.Points = append(r.Points, m.share(float64(f.Path[i]), float64(f.Path[i+1])))
	}
	if len(r.Points) == 0 {
		return nil
	}
	return []sizing.Recipe{r}
}
