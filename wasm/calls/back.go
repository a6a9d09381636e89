package calls

import (
	"badgewright/sizing"
	"badgewright/sizing/fastener"
	"badgewright/sizing/unit"
	"badgewright/wasm/wire"
)

// back says how many posts the design gets, and where.
func (u *subject) back() (fastener.Advice, error) {
	b, err := u.drawn(u.design.Size)
	if err != nil {
		return fastener.Advice{}, err
	}
	return u.backAt(b)
}

// backAt is the back of the design at the size of a badge. The silhouette is
// that of the flat drawing: recipes build inside it.
func (u *subject) backAt(b *sizing.Badge) (fastener.Advice, error) {
	return fastener.Advise(b, u.design.Base, u.design.Thickness, u.design.Posts)
}

// fromBehind gives the places of posts as seen from behind, where left and
// right are mirrored.
func fromBehind(posts []sizing.Post, width unit.MM) []wire.Place {
	places := []wire.Place{}
	for _, p := range posts {
		places = append(places, wire.Place{Left: unit.Shown(width - p.X), Top: unit.Shown(p.Y)})
	}
	return places
}
