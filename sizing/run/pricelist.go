// Package run holds an order and what it costs: price lists and quotes. Rates
// are exact decimals; every line of a quote is rounded once.
package run

import (
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// PriceList is one maker's prices. A rate that is not known is asked for only
// by an order that needs it.
type PriceList struct {
	ID          string `json:"id"`
	Name        string `json:"name"`
	Invented    bool   `json:"invented"`    // made up for the demo; the page says so
	Currency    string `json:"currency"`    // ISO 4217 code
	MinorDigits int    `json:"minorDigits"` // decimals of the currency

	Pieces   PiecePrices   `json:"pieces"`   // unit prices by size and quantity
	Least    Least         `json:"least"`    // fewest pieces
	Die      DiePrices     `json:"die"`      // what is cut once
	Metal    MetalPrices   `json:"metal"`    // making, plating, thickness
	Colours  ColourPrices  `json:"colours"`  // enamels, fills, print
	Shape    ShapePrices   `json:"shape"`    // cut-outs, parts, chains
	Back     BackPrices    `json:"back"`     // posts, fastenings, lettering
	Pack     PackPrices    `json:"pack"`     // dome, packaging, backing card
	Proofs   ProofPrices   `json:"proofs"`   // rounds of the maker's drawing
	Delivery Delivery      `json:"delivery"` // ways to have it sooner or later
	Shipping Shipping      `json:"shipping"` // carriage
	Fees     Fees          `json:"fees"`     // bank, duty, tax
	Count    Counting      `json:"count"`    // more or fewer pieces than ordered
	Named    []NamedCharge `json:"named"`    // charges of any other name
	Notes    Notes         `json:"notes"`    // what is not price
}

// Copy is a list that shares nothing with this one; what it has none of is an
// empty list and not a missing one.
func (l PriceList) Copy() PriceList {
	l.Pieces.Sizes = cloned(l.Pieces.Sizes)
	l.Pieces.Breaks = cloned(l.Pieces.Breaks)
	for i := range l.Pieces.Breaks {
		l.Pieces.Breaks[i].Unit = cloned(l.Pieces.Breaks[i].Unit)
	}
	l.Die.BySize = cloned(l.Die.BySize)
	for _, k := range []*Kinds{&l.Metal.Making, &l.Metal.Plating, &l.Colours.Fill, &l.Colours.Fancy, &l.Back.Kinds, &l.Pack.Packaging} {
		k.Listed = cloned(k.Listed)
	}
	l.Metal.Thick = cloned(l.Metal.Thick)
	l.Delivery.Choices = cloned(l.Delivery.Choices)
	l.Shipping.Weights = cloned(l.Shipping.Weights)
	l.Shipping.Classes = cloned(l.Shipping.Classes)
	l.Named = cloned(l.Named)
	return l
}

func cloned[T any](all []T) []T { return append([]T{}, all...) }

// PiecePrices is the unit prices, for struck soft enamel with the colours and the
// post that are in the price.
type PiecePrices struct {
	// Sizes holds the greatest size, in mm, of each size class, rising; SizeBy
	// says which measure counts (longest or mean).
	Sizes  []unit.MM     `json:"sizes"`
	SizeBy sizing.SizeBy `json:"sizeBy"`
	Breaks []Break       `json:"breaks"`
	// Together says which pieces are counted together to reach a break.
	Together Together `json:"together"`
}

// Together is whose pieces add up.
type Together string

// The ways to count towards a quantity break; the empty one is by version.
const (
	ByVersion Together = "version" // each version for itself
	ByDesign  Together = "design"  // all versions of a design
	ByOrder   Together = "order"   // all pieces of an order
)

// Break is one row of unit prices: it holds from a number of pieces up to the
// next row.
type Break struct {
	From int `json:"from"` // pieces, 1 or more
	// Unit holds one price a piece for each size class.
	Unit []Rate `json:"unit"`
}

// Least is the fewest pieces that are made; 0 for any number.
type Least struct {
	Design  int `json:"design"`
	Version int `json:"version"`
}

// Notes are what a maker says that is not price, in the person's words.
type Notes struct {
	Faults string `json:"faults"` // what is done about faulty pieces
	Keeps  string `json:"keeps"`  // what the maker keeps: die, drawings, colour samples
	Other  string `json:"other"`
}
