// Package fastener says what a badge weighs, where it balances, how many posts
// it needs and where, and how it then hangs.
package fastener

import (
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// Advice is how many posts a badge should have, where, and why.
type Advice struct {
	Count  int           `json:"count"`  // what the tool advises, 1..3
	Chosen int           `json:"chosen"` // what is shown: the person's choice, or Count
	Posts  []sizing.Post `json:"posts"`  // places for Chosen posts
	Clutch unit.MM       `json:"clutch"` // diameter drawn for the clutch
	Pad    unit.MM       `json:"pad"`    // diameter of the soldered pad
	Reason string        `json:"reason"` // one sentence, with numbers
	Why    []string      `json:"why"`    // further sentences behind "why?"
	// Hidden is false when no place hides the clutch wholly behind the piece.
	Hidden bool       `json:"hidden"`
	Weight unit.Grams `json:"weight"` // of the pin alone, the likeliest value
	Area   float64    `json:"area"`   // silhouette, mm2
	Centre [2]unit.MM `json:"centre"` // centre of mass, mm from left and top of the silhouette

	Fastening sizing.Fastening `json:"fastening"`
	// Bar is the length of a pin bar, whose middle is the one place in Posts; 0
	// for every other fastening.
	Bar unit.MM `json:"bar"`
	// Upright says that the bar stands upright, where it is not hidden level.
	Upright bool `json:"upright"`
	// ByHand says that Posts were set by hand; Proposal is then the tool's own,
	// and Worse says in what they fall behind it, empty when in nothing.
	ByHand   bool          `json:"byHand"`
	Proposal []sizing.Post `json:"proposal"`
	Worse    []string      `json:"worse"`
	// Shows is, for each post, how far its clutch shows beyond the edge, mm.
	Shows []unit.MM `json:"shows"`

	Mass Mass `json:"mass"`
	Form Form `json:"form"`
	Hang Hang `json:"hang"`
	// OnOne is how it would hang from one post, when it has more.
	OnOne *Hang `json:"onOne,omitempty"`
	// HangSays puts Hang into words, the model after it.
	HangSays []string `json:"hangSays"`
	Model    []string `json:"model"`
	// MassSays puts Mass into words.
	MassSays []string `json:"massSays"`

	exact unit.MM // half a cell: as fine as places are known
}

// Form is the geometry of a silhouette, all its parts together.
type Form struct {
	Widest   unit.MM `json:"widest"`   // widest span between parallel lines
	Narrow   unit.MM `json:"narrow"`   // narrowest
	Aspect   float64 `json:"aspect"`   // length to breadth, from the principal moments
	Axis     float64 `json:"axis"`     // of its length, degrees from level, clockwise as seen from the front, -90..90
	Moments  Moments `json:"moments"`  // of area
	Parts    int     `json:"parts"`    // connected parts, specks left out
	Mirrored bool    `json:"mirrored"` // left and right are mirror images
	Says     string  `json:"says"`
}

// Moments are principal second moments of area about the centre, mm4.
type Moments struct {
	Least float64 `json:"least"`
	Most  float64 `json:"most"`
}
