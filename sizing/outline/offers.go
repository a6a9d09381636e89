package outline

import "badgewright/sizing"

// Offer is what can be done about a trouble spot that was found: a bridge to a
// loose part, the rounding of a tip. There is none for what wants the person's
// hand.
func (m *Measured) Offer(f *sizing.Finding) []sizing.Recipe {
	switch f.Kind {
	case sizing.LoosePart:
		if f.Count == 1 && f.Verdict != sizing.Holds {
			return []sizing.Recipe{{Kind: sizing.BuildBridge, Points: [][2]float64{m.share(f.Ends[0], f.Ends[1]), m.share(f.Ends[2], f.Ends[3])}}}
		}
	case sizing.SharpTip:
		if n := len(f.Path); n >= 4 && f.Verdict != sizing.Holds {
			back := m.share(float64(f.Path[n-2]), float64(f.Path[n-1]))
			return []sizing.Recipe{{Kind: sizing.RoundTip, Points: [][2]float64{m.share(f.X, f.Y), back}}}
		}
	}
	return nil
}
