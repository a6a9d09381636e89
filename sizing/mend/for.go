package mend

import (
	"badgewright/reduce"
	"badgewright/sizing"
)

// Tried is a repair that does, what it changes, and the drawing as it leaves it.
type Tried struct {
	Offer
	Change Alteration
	Struck *reduce.Separation
}

// For returns the repairs that were found to do for one trouble spot of a
// drawing as it is struck, the gentlest first; none when it needs the artist.
// p may be nil.
func For(d *Drawing, f sizing.Finding, p reduce.Progress) ([]Tried, error) {
	b, err := newBench(d)
	if err != nil {
		return nil, err
	}
	struck := b.keep(b.whole())
	var offers []Tried
	ideas := b.spot(&f).ideas()
	for i, o := range ideas {
		if p != nil {
			if err := p(float64(i)/float64(len(ideas)), "trying repairs"); err != nil {
				return nil, err
			}
		}
		made, stays, err := b.try(&f, o, o.manner())
		if err != nil {
			return nil, err
		}
		if stays {
			o.Recipes = made
			offers = append(offers, Tried{o, changed(struck.sep, b.sep, d.Scale), b.keep(b.whole()).sep})
			b.takeBack(struck)
		}
	}
	return offers, nil
}
