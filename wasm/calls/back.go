package calls

import "badgewright/sizing/fastener"

// back says how many posts the design gets, and where. The silhouette is that
// of the flat drawing: recipes build inside it.
func (u *subject) back() (fastener.Advice, error) {
	b, err := u.drawn()
	if err != nil {
		return fastener.Advice{}, err
	}
	return fastener.Advise(b, u.design.Base, u.design.Thickness, u.design.Posts)
}
