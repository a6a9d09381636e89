package wire

import (
	"badgewright/reduce/colour"
	"badgewright/sizing/eye"
	"badgewright/sizing/run"
)

// BuysAsk asks what each colour buys for a picked version.
type BuysAsk struct {
	Picked Picked `json:"picked"`
	// Viewing, when given, also asks what an eye would see of each colour at the
	// pin's size, from Noticed (S-CIELAB) on.
	Viewing *eye.Viewing `json:"viewing,omitempty"`
	Noticed float64      `json:"noticed,omitempty"`
	// Order and Item are as in ChoicesAsk: prices are then those of all of it.
	Order *run.Wanted `json:"order,omitempty"`
	Item  int         `json:"item,omitempty"`
}

// Buys is the loss and the price at each count.
type Buys struct {
	Rows []Buy `json:"rows"`
	// Included is the number of enamels in the unit price.
	Included int `json:"included"`
}

// Buy is one count of enamels.
type Buy struct {
	Count    int           `json:"count"`
	Mean     float64       `json:"mean"`  // CIEDE2000, mean over enamel pixels
	Worst    float64       `json:"worst"` // CIEDE2000, mean of the worst tenth
	Total    string        `json:"total"`
	PerPiece string        `json:"perPiece"`
	Each     float64       `json:"each"`  // a piece, to draw and not to show; 0 when not known
	Words    string        `json:"words"` // the step from the count before
	Swatches []colour.RGB8 `json:"swatches"`
	// Seen is there when a viewing was asked for.
	Seen *SeenLoss `json:"seen,omitempty"`
}
