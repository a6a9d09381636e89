package wire

import "badgewright/sizing"

// ReviseAsk lays an opened drawing on the picked design: its next revision, or
// one of its own that another took the place of.
type ReviseAsk struct {
	Picked  Picked `json:"picked"`
	Drawing string `json:"drawing"` // open already
}

// Revised is the picked design with the drawing on its sheet.
type Revised struct {
	Design sizing.Design `json:"design"`
	// Changed is the share (0..1) of what is drawn that differs, Places in how
	// many places.
	Changed float64 `json:"changed"`
	Places  int     `json:"places"`
	// Words says what changed and what carried over, and Lost what does not fit,
	// a sentence each.
	Words string   `json:"words"`
	Lost  []string `json:"lost"`
}
