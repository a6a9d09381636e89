package wire

import (
	"badgewright/sizing/canvas"
	"badgewright/sizing/unit"
)

// CanvasAsk asks what a pin that is not drawn yet wants of its drawing.
type CanvasAsk struct {
	Plan canvas.Plan `json:"plan"`
}

// Canvas is the canvas of a plan, the artist's own or the one recommended, and
// every limit of the maker in its pixels.
type Canvas struct {
	W int `json:"w"`
	H int `json:"h"`
	// Recommended is true when the canvas is not the artist's own.
	Recommended bool `json:"recommended"`
	// PerMM and PerInch are its scale, px; Scale says it.
	PerMM   float64 `json:"perMM"`
	PerInch float64 `json:"perInch"`
	Scale   string  `json:"scale"`
	// Size is the pin's longer side, and Box its box on the canvas, width by height.
	Size unit.Length `json:"size"`
	Box  string      `json:"box"`
	// Safe is how far from the pin's outside detail should keep.
	Safe  string        `json:"safe"`
	Needs []canvas.Need `json:"needs"`
	// Fineness judges the canvas, and Says puts that into words; Why tells why
	// the recommended one is, and is empty for the artist's own.
	Fineness canvas.Fineness `json:"fineness"`
	Says     string          `json:"says"`
	Why      string          `json:"why"`
}

// GuideAsk asks for the guide of a plan; the answer comes with a PNG file.
type GuideAsk struct {
	Plan canvas.Plan `json:"plan"`
	// OnWhite lays white under it; without, one sees through.
	OnWhite bool `json:"onWhite"`
}

// MarksAsk asks for the trouble spots of a picked version as a picture to lay
// over the drawing; the answer comes with a PNG file.
type MarksAsk struct {
	Picked Picked `json:"picked"`
}

// PNGFile is a PNG file that comes with an answer.
type PNGFile struct {
	W        int    `json:"w"`
	H        int    `json:"h"`
	FileName string `json:"fileName"`
	Words    string `json:"words"` // what it shows, for those who cannot see it
}
