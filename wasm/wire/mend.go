package wire

import (
	"badgewright/sizing"
	"badgewright/sizing/mend"
	"badgewright/sizing/unit"
)

// OffersAsk asks for the repairs of one trouble spot of a picked version, as
// the check told it.
type OffersAsk struct {
	Picked  Picked         `json:"picked"`
	Finding sizing.Finding `json:"finding"`
	// Side is of each picture of the place, px, 16..1024; 0 for no picture.
	Side int `json:"side"`
}

// Offers is the repairs that do for a trouble spot, the gentlest first; none
// when it needs the artist. The answer comes with RGBA pixels of the place,
// Side by Side each (straight alpha): as it is, then as each offer leaves it.
type Offers struct {
	Offers []MendOffer `json:"offers"`
	// Why there is none; empty when there are some.
	Why  string `json:"why"`
	Side int    `json:"side"` // 0 when no pictures come
	// Across is how much of the pin a picture shows, each way.
	Across unit.Length `json:"across"`
}

// MendOffer is one repair, and how much of the drawing it changes.
type MendOffer struct {
	Recipes []sizing.Recipe `json:"recipes"` // to be added to the design's
	Words   string          `json:"words"`   // what is done, in a sentence
	// Gentle is true when it is made with the others when all are repaired.
	Gentle bool            `json:"gentle"`
	Change mend.Alteration `json:"change"`
}

// MendAllAsk asks for everything to be repaired.
type MendAllAsk struct {
	Picked Picked `json:"picked"`
}

// MendAll is the recipes to add to the design's, what they change, and what is
// left.
type MendAll struct {
	Recipes []sizing.Recipe `json:"recipes"`
	Before  int             `json:"before"` // places that failed
	Left    []mend.Unmended `json:"left"`
	Change  mend.Alteration `json:"change"`
}

// MendedFromAsk asks for the smallest size that holds as repaired: one size is
// tried a call. The first comes without a search, each further one with the
// answer's before it.
type MendedFromAsk struct {
	Picked Picked       `json:"picked"`
	Search *mend.Search `json:"search,omitempty"`
}

// MendedFrom is how far the search has come. Size is the smallest, by the
// design's measure, that is known to hold as repaired; its mm are 0 when none is.
type MendedFrom struct {
	Search mend.Search `json:"search"`
	Share  float64     `json:"share"` // of the search, 0..1
	Size   unit.Length `json:"size"`
}
