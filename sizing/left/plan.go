// Package left reckons what is left of an order after all costs, by the ways
// in which its pieces find their people. Money is in exact decimals; every line
// is rounded once, and sums are sums of shown lines.
package left

import "github.com/shopspring/decimal"

// ChannelKind is the way in which pieces reach people.
type ChannelKind string

// The kinds of channels. They reckon alike; they differ in which costs are
// usual, and in a gift that has no price and a set that has one for the whole.
const (
	Online      ChannelKind = "online"
	Fair        ChannelKind = "fair"
	Wholesale   ChannelKind = "wholesale"
	Consignment ChannelKind = "consignment"
	Set         ChannelKind = "set"
	Gift        ChannelKind = "gift"
	Cause       ChannelKind = "cause"
)

// GivenOf says of what a share is passed on.
type GivenOf string

// What is passed on to a cause is a share of these.
const (
	OfPrice GivenOf = "price" // of the price without tax, whatever is left
	OfLeft  GivenOf = "left"  // of what is left after costs, making included; nothing when that is none
)

// Channel is one way in which pieces reach people. Shares and rates are in
// percent, amounts in the plan's currency.
type Channel struct {
	Kind  ChannelKind     `json:"kind"`
	Name  string          `json:"name"`
	Share decimal.Decimal `json:"share"` // of the pieces without flaw
	// Price is what a buyer pays for a piece, for a set the whole of it; 0 is the
	// plan's. A gift has none.
	Price decimal.Decimal `json:"price"`
	// Pieces is how many of this order go into one sale, one parcel, one set; 0
	// is 1.
	Pieces int `json:"pieces"`
	// Cut is the share of the price that a shop keeps: wholesale, consignment.
	Cut decimal.Decimal `json:"cut"`
	// FeePercent is of all that a buyer pays, posting and tax included; FeeFixed
	// is for each sale.
	FeePercent decimal.Decimal `json:"feePercent"`
	FeeFixed   decimal.Decimal `json:"feeFixed"`
	// Once is paid however little sells: a table, the way there, a card reader. A
	// channel without a share that sells no seconds either is not gone to.
	Once decimal.Decimal `json:"once"`
	// Posted says that each sale goes by post; PostPaid is what the buyer pays
	// for that.
	Posted   bool            `json:"posted"`
	PostPaid decimal.Decimal `json:"postPaid"`
	// Others is what the rest of a set costs, and OthersGrams weighs.
	Others      decimal.Decimal `json:"others"`
	OthersGrams float64         `json:"othersGrams"`
	// Given is the share passed on to a cause.
	Given   decimal.Decimal `json:"given"`
	GivenOf GivenOf         `json:"givenOf"`
	Taxed   bool            `json:"taxed"` // the plan's tax on sales applies
}

// PostClass is one class of post: what it takes, and its price a parcel.
type PostClass struct {
	Name  string          `json:"name"`
	Grams float64         `json:"grams"` // at most
	MM    float64         `json:"mm"`    // thick at most
	Price decimal.Decimal `json:"price"`
}

// Wrapping is what lies round a piece: an envelope a parcel, a backing card and
// a bag a piece.
type Wrapping struct {
	Envelope      decimal.Decimal `json:"envelope"`
	Card          decimal.Decimal `json:"card"`
	Bag           decimal.Decimal `json:"bag"`
	EnvelopeGrams float64         `json:"envelopeGrams"`
	CardGrams     float64         `json:"cardGrams"`
	BagGrams      float64         `json:"bagGrams"`
	EnvelopeMM    float64         `json:"envelopeMM"` // both sides together, card and bag included
}

// SalesTax is a tax on sales.
type SalesTax struct {
	Percent   decimal.Decimal `json:"percent"`
	Included  bool            `json:"included"`  // prices hold it; otherwise it is put on top and passed on
	OnPosting bool            `json:"onPosting"` // it falls on what buyers pay for posting too
}

// Selling is an order and how its pieces are to reach people.
type Selling struct {
	Currency    string          `json:"currency"`
	MinorDigits int             `json:"minorDigits"`
	Pieces      int             `json:"pieces"` // as delivered
	Bill        decimal.Decimal `json:"bill"`   // of the maker, landed
	Price       decimal.Decimal `json:"price"`  // of a piece, where a channel has none of its own
	// SecondsShare is the percent of pieces with a small flaw. They sell by the
	// channel with the number SecondsBy, SecondsOff percent cheaper; with a
	// number below 0 they are kept.
	SecondsShare decimal.Decimal `json:"secondsShare"`
	SecondsOff   decimal.Decimal `json:"secondsOff"`
	SecondsBy    int             `json:"secondsBy"`
	Tax          SalesTax        `json:"tax"`
	// Grams and MM are of one piece with its fastening, not packed.
	Grams    float64     `json:"grams"`
	MM       float64     `json:"mm"`
	Classes  []PostClass `json:"classes"`
	Packing  Wrapping    `json:"packing"`
	Channels []Channel   `json:"channels"`
}
