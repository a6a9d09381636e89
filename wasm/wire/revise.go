package wire

import "badgewright/sizing"

// ReviseAsk lays an opened drawing on the picked design as its next revision.
type ReviseAsk struct {
	Picked  Picked `json:"picked"`
	Drawing string `json:"drawing"` // the new one, open already
}

// Revised is the picked design on its new drawing.
type Revised struct {
	Design sizing.Design `json:"design"`
	// Changed is the share (0..1) of what is drawn that differs.
	Changed float64 `json:"changed"`
	// Words says what changed and what carried over, and Lost what no longer
	// fits, a sentence each.
	Words string   `json:"words"`
	Lost  []string `json:"lost"`
}
