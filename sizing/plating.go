package sizing

import "badgewright/reduce/colour"

// PlatingID names a plating tone.
type PlatingID string

// Plating is one tone of the finished metal. Dark, Mid and Bright are sRGB
// colours of its dark reflection, its face and its highlight; they are a guide
// for the screen, chosen by eye, with no published source.
type Plating struct {
	ID     PlatingID   `json:"id"`
	Name   string      `json:"name"`
	Dark   colour.RGB8 `json:"dark"`
	Mid    colour.RGB8 `json:"mid"`
	Bright colour.RGB8 `json:"bright"`
	// Antique platings keep dark in the recesses of bare metal.
	Antique bool `json:"antique"`
	// SoftOnly platings are applied with soft fill only, as a rule (common
	// practice, no published source).
	SoftOnly bool `json:"softOnly"`
	// Nickel says that the tone usually bears nickel, which can cause skin reactions.
	Nickel bool `json:"nickel"`
}

func rgb(hex uint32) colour.RGB8 {
	return colour.RGB8{R: uint8(hex >> 16), G: uint8(hex >> 8), B: uint8(hex)}
}

// Platings lists the tones of the trade (common practice, no published source).
func Platings() []Plating {
	return []Plating{
		{ID: "gold", Name: "gold", Dark: rgb(0x7a5414), Mid: rgb(0xd9ab4a), Bright: rgb(0xfff1c2)},
		{ID: "silver", Name: "silver (nickel)", Dark: rgb(0x5d6268), Mid: rgb(0xc3c8cc), Bright: rgb(0xffffff), Nickel: true},
		{ID: "copper", Name: "copper", Dark: rgb(0x6b2f16), Mid: rgb(0xc97b4e), Bright: rgb(0xffdcc0)},
		{ID: "rose", Name: "rose gold", Dark: rgb(0x7f4438), Mid: rgb(0xdfa08d), Bright: rgb(0xffe6dc)},
		{ID: "black-nickel", Name: "black nickel", Dark: rgb(0x16181b), Mid: rgb(0x4a4e54), Bright: rgb(0xb4bac2), Nickel: true},
		{ID: "antique-gold", Name: "antique gold", Dark: rgb(0x3b2a0e), Mid: rgb(0xae8a45), Bright: rgb(0xf0dca4), Antique: true, SoftOnly: true},
		{ID: "antique-silver", Name: "antique silver", Dark: rgb(0x2a2c2f), Mid: rgb(0x9a9fa3), Bright: rgb(0xeef0f1), Antique: true, SoftOnly: true, Nickel: true},
		{ID: "antique-copper", Name: "antique copper", Dark: rgb(0x2f170c), Mid: rgb(0x9b5b3a), Bright: rgb(0xeab997), Antique: true, SoftOnly: true},
		{ID: "dyed-black", Name: "dyed black", Dark: rgb(0x0b0b0c), Mid: rgb(0x242427), Bright: rgb(0x77777c), SoftOnly: true},
		{ID: "dyed-white", Name: "dyed white", Dark: rgb(0x9a9a98), Mid: rgb(0xececea), Bright: rgb(0xffffff), SoftOnly: true},
	}
}

// BaseMetal is the metal under the plating.
type BaseMetal string

// The base metals of the trade.
const (
	Iron   BaseMetal = "iron"
	Brass  BaseMetal = "brass"
	Copper BaseMetal = "copper"
	Zinc   BaseMetal = "zinc"
)
