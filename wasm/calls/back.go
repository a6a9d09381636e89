package calls

import (
	"badgewright/sizing"
	"badgewright/sizing/fastener"
	"badgewright/sizing/unit"
)

// backOf says how many posts a design gets, and where. The silhouette is that
// of the flat drawing: recipes build inside it.
func (s *Session) backOf(d *sizing.Design, b *base, scale unit.PxPerMM) (fastener.Advice, error) {
	badge := &sizing.Badge{Sep: b.sep, Scale: scale, Outline: b.box}
	return fastener.Advise(badge, d.Base, d.Thickness, d.Posts)
}
