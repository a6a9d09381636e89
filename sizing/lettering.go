package sizing

import "badgewright/sizing/unit"

// LetterMark is a capital that the person marked along its stem: its foot and
// its head, in shares (0..1) of the drawing's width and height.
type LetterMark struct {
	X0 float64 `json:"x0"`
	Y0 float64 `json:"y0"`
	X1 float64 `json:"x1"`
	Y1 float64 `json:"y1"`
}

// Points are its foot and its head.
func (m LetterMark) Points() [][2]float64 { return [][2]float64{{m.X0, m.Y0}, {m.X1, m.Y1}} }

// Lies is what most of a mark lies on, which says how the letter is made.
type Lies string

// What a letter can be.
const (
	Raised    Lies = "raised"  // of metal
	Sunk      Lies = "sunk"    // of enamel
	OnPrint   Lies = "printed" // of neither: no height is asked of it here
	OffThePin Lies = "outside" // no part of the pin, or cut out of it
)

// Lettered is what a mark says at a size.
type Lettered struct {
	Mark   LetterMark `json:"mark"`
	Lies   Lies       `json:"lies"`
	Height unit.MM    `json:"height"`
	// Least is the height that the maker holds, 0 where none is asked.
	Least   unit.MM `json:"least"`
	Verdict Verdict `json:"verdict"`
	// HoldsFrom is the size, by the design's measure, from which it holds: 0
	// where none is asked, or no size does.
	HoldsFrom unit.MM `json:"holdsFrom"`
}
