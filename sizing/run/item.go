package run

import (
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// Wanted is what is asked for at one time.
type Wanted struct {
	Items []Item `json:"items"`
	Terms Terms  `json:"terms"`
}

// Terms are the wishes that hold for a whole order.
type Terms struct {
	Delivery string `json:"delivery"` // name of one of the list's ways; empty for the usual
	Shipping string `json:"shipping"` // name of one of the list's classes; empty for the first
	Rounds   int    `json:"rounds"`   // proof rounds a design; 0 for those in the price
	// Seconds is how many pieces in a hundred are set aside for flaws, and Free
	// how many of the others are given away.
	Seconds float64 `json:"seconds"`
	Free    int     `json:"free"`
	// Into is a second currency to show the total in; absent for none.
	Into *Exchange `json:"into,omitempty"`
}

// Item is one version of one design in an order, as far as a price depends on it.
type Item struct {
	Design  string `json:"design"`
	Version string `json:"version"`
	// Die is the same for items that share a die; the design's name when empty.
	Die string `json:"die"`
	// NewDie is false on a reorder, and DieAge then says how many months ago the
	// die was cut. Versions of one die may all say that it is new: one pays.
	NewDie  bool        `json:"newDie"`
	DieAge  int         `json:"dieAge"`
	Longest unit.MM     `json:"longest"`
	Mean    unit.MM     `json:"mean"`
	Enamels int         `json:"enamels"` // enamel flats; metal is not one
	Fill    sizing.Fill `json:"fill"`
	// Making, Plating and Thickness are those in the price when empty.
	Making    sizing.Making    `json:"making"`
	Plating   sizing.PlatingID `json:"plating"`
	Thickness unit.MM          `json:"thickness"`
	// Fancy is the finish of each enamel that is set apart, and Printed the
	// number of colours printed on top.
	Fancy       []sizing.Finish  `json:"fancy"`
	Printed     int              `json:"printed"`
	CutOuts     int              `json:"cutOuts"` // holes through the metal
	Parts       int              `json:"parts"`   // parts that hang from each other; 0 and 1 are one
	Rings       int              `json:"rings"`
	Chains      int              `json:"chains"`
	FurtherDies int              `json:"furtherDies"` // dies beside the first
	Posts       int              `json:"posts"`
	Fastening   sizing.Fastening `json:"fastening"`
	Stamped     bool             `json:"stamped"` // the back bears lettering or a mark
	Dome        bool             `json:"dome"`
	Packaging   string           `json:"packaging"` // a kind of the list; empty for none
	Card        bool             `json:"card"`      // backing card from the maker
	// Weight of a piece as the maker sends it; 0 when not known.
	Weight unit.Grams `json:"weight"`
	// Quantity is the pieces of this version.
	Quantity int `json:"quantity"`
}

func (it *Item) die() string {
	if it.Die != "" {
		return it.Die
	}
	return it.Design
}

// check refuses counts below zero.
func (it *Item) check() error {
	for _, n := range []int{it.Enamels, it.Posts, it.Printed, it.CutOuts, it.Parts, it.Rings, it.Chains, it.FurtherDies, it.DieAge} {
		if n < 0 {
			return refuse("An order cannot have fewer than no colours or posts.", "Correct the design.")
		}
	}
	return nil
}
