//go:build !pin

package wire

import (
	"badgewright/sizing/card"
	"badgewright/sizing/left"
	"badgewright/sizing/run"
	"badgewright/sizing/sheet"
	"badgewright/sizing/shop"
)

// PapersPlan is what the person chose for the papers.
type PapersPlan struct {
	Units sheet.Units `json:"units,omitempty"`
	// NeedBy is the day by which the pins are wanted, as ISO 8601 has it; empty
	// for none.
	NeedBy string `json:"needBy,omitempty"`
	// Note is the person's own sentence to the maker.
	Note   string           `json:"note,omitempty"`
	Paper  sheet.Format     `json:"paper,omitempty"` // of the sheets; empty for A4
	Ground *shop.ShopGround `json:"ground,omitempty"`
	// Pixels is the long side of the pin in its pictures; 0 for the usual.
	Pixels int `json:"pixels,omitempty"`
}

// AskedAsk asks for a version as the papers in words speak of it.
type AskedAsk struct {
	Of string `json:"of"` // key of a version that was handed over
}

// InquiryAsk asks for the message to a maker.
type InquiryAsk struct {
	Asked []sheet.Asked `json:"asked"`
	Plan  PapersPlan    `json:"plan"`
	// Files is what goes with it, a name each.
	Files []string `json:"files"`
}

// ChangesAsk asks for the request to change a proof.
type ChangesAsk struct {
	Changes sheet.ChangesOf `json:"changes"`
}

// ListKind is one of the lists.
type ListKind string

// The lists.
const (
	ListColours ListKind = "colours"
	ListSpots   ListKind = "spots"
	ListQuote   ListKind = "quote"
	ListLeft    ListKind = "left"
)

// ListAsk asks for a list as CSV; the answer comes with its bytes.
type ListAsk struct {
	Kind  ListKind      `json:"kind"`
	Name  string        `json:"name"` // of the order, for the file's name
	Units sheet.Units   `json:"units"`
	Asked []sheet.Asked `json:"asked,omitempty"` // of colours and trouble spots
	// Quote, its order and its maker, of the quote.
	Quote *run.Quote  `json:"quote,omitempty"`
	Order *run.Wanted `json:"order,omitempty"`
	Maker string      `json:"maker,omitempty"`
	// Selling is the plan of what is left.
	Selling *left.Selling `json:"selling,omitempty"`
}

// PaperFile names the file that comes with it.
type PaperFile struct {
	FileName string `json:"fileName"`
	Type     string `json:"type"`
	Words    string `json:"words"` // what it is, in a sentence
	// Rows is how many a list has below its head.
	Rows int `json:"rows"`
	// Notes is what the person must be told of it, a sentence each.
	Notes []string `json:"notes"`
}

// CardAsk asks how a card comes out; without one, how the tool would begin it.
type CardAsk struct {
	Of   string            `json:"of"`
	Card *card.BackingCard `json:"card,omitempty"`
}

// CardLaid is a card laid out for a pin.
type CardLaid struct {
	Card  card.BackingCard `json:"card"` // without its picture's data
	Laid  card.LaidCard    `json:"laid"`
	Sheet card.Imposed     `json:"sheet"`
	Kinds []card.CardSize  `json:"kinds"`
	Usual CardUsual        `json:"usual"`
}

// CardUsual is the usual measures of a card, mm.
type CardUsual struct {
	Hole   float64 `json:"hole"`
	Bleed  float64 `json:"bleed"`
	Safe   float64 `json:"safe"`
	Corner float64 `json:"corner"` // of a bank card
}

// CardFileAsk asks for the card as a file.
type CardFileAsk struct {
	Of    string           `json:"of"`
	Card  card.BackingCard `json:"card"`
	PDF   bool             `json:"pdf"`   // else SVG
	Today string           `json:"today"` // ISO 8601, where the person is
}

// CardPictureAsk comes with the pixels of a picture (RGBA, straight alpha, 4*W*H
// bytes); the answer's bytes are the file that a card keeps.
type CardPictureAsk struct {
	W int `json:"w"`
	H int `json:"h"`
}

// CardPicture is a picture for a card.
type CardPicture struct {
	Type string `json:"type"`
	W    int    `json:"w"`
	H    int    `json:"h"`
}

// ShopPictureAsk comes with the pixels of a pin (RGBA, straight alpha, 4*W*H
// bytes); the answer comes with a PNG.
type ShopPictureAsk struct {
	W    int    `json:"w"`
	H    int    `json:"h"`
	Name string `json:"name"` // of the pin and its version, for the file's name
	// Ground is what it lies on; absent for nothing.
	Ground *shop.ShopGround `json:"ground,omitempty"`
}
