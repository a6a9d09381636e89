// Package colourlist reads a maker's colour list, a table of codes, names and
// colours, and finds the entries nearest to a colour.
package colourlist

import "badgewright/reduce/colour"

// What a list may hold. Makers' charts have some hundred colours (common
// practice, no published source); past these bounds it is some other file.
const (
	MaxBytes   = 1 << 20
	MaxEntries = 5000
	maxCode    = 40 // characters
	maxName    = 80
)

// ColourList is one maker's codes.
type ColourList struct {
	Name    string        `json:"name"`
	Entries []ColourEntry `json:"entries"`
}

// ColourEntry is one colour that a maker offers.
type ColourEntry struct {
	Code string `json:"code"`
	// Name may be empty.
	Name string `json:"name"`
	// RGB is the nearest that sRGB holds.
	RGB colour.RGB8 `json:"rgb"`
	// Lab is CIELAB under D65 where the list gave CIELAB; elsewhere RGB says all.
	Lab *[3]float64 `json:"lab,omitempty"`
	// Outside is true for a colour that sRGB, and so this screen, cannot show.
	Outside bool `json:"outside,omitempty"`
}

// outsideStep is the CIEDE2000 past which a colour counts as one that sRGB
// cannot hold: rounding to 8 bits alone stays below it.
const outsideStep = 1

func fromRGB(c colour.RGB8) ColourEntry { return ColourEntry{RGB: c} }

// fromLab is an entry given in CIELAB under D65.
func fromLab(l colour.Lab) ColourEntry {
	rgb, _ := colour.FromLab(l)
	return ColourEntry{
		RGB: rgb, Lab: &[3]float64{l.L, l.A, l.B},
		Outside: colour.CIEDE2000(l, rgb.Lab()) > outsideStep,
	}
}

// CIELAB returns the entry's colour under D65.
func (e *ColourEntry) CIELAB() colour.Lab {
	if e.Lab != nil {
		return colour.Lab{L: e.Lab[0], A: e.Lab[1], B: e.Lab[2]}
	}
	return e.RGB.Lab()
}
