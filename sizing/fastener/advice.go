// Package fastener says what a badge weighs, where it balances, and how many
// posts it needs and where.
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
	// Shown is false when no place hides the clutch wholly behind the piece.
	Hidden bool       `json:"hidden"`
	Weight unit.Grams `json:"weight"`
	Area   float64    `json:"area"`   // silhouette, mm2
	Centre [2]unit.MM `json:"centre"` // centre of mass, mm from left and top of the silhouette
}
