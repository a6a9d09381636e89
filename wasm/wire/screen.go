package wire

import "badgewright/sizing/unit"

// ScreenAsk asks how large things are on the screen that the page is on.
type ScreenAsk struct {
	Report unit.Report `json:"report"`
	// Kept is the checks that this device keeps, as TrueSize.Keep gave them; any
	// text that is none counts as no check.
	Kept string `json:"kept"`
	// Match is a check made just now.
	Match *Match `json:"match,omitempty"`
}

// Match is an object of known width laid on the screen, and the frame drawn
// round it.
type Match struct {
	Object unit.MM `json:"object"`
	Px     float64 `json:"px"` // width of the frame, CSS px
}

// TrueSize is the scale of a screen, and how sure it is.
type TrueSize struct {
	Screen      string             `json:"screen"` // its key: its size in device pixels
	DevicePerMM unit.DevicePxPerMM `json:"devicePerMM"`
	PerMM       float64            `json:"perMM"` // CSS px for one mm, by the report
	Checked     bool               `json:"checked"`
	Words       string             `json:"words"` // "checked here"
	Says        string             `json:"says"`  // "shown at its true size on this screen"
	// Keep is what the device should keep after a match; empty without one.
	Keep string `json:"keep"`
	Card Card   `json:"card"`
}

// Card is the object to check with.
type Card struct {
	W     unit.MM `json:"w"`
	H     unit.MM `json:"h"`
	Words string  `json:"words"`
}
