//go:build !pin

package wire

import "badgewright/sizing/sheet"

// SpecSheetAsk asks for the spec sheet of a version as PDF; the fonts of the
// papers must be there.
type SpecSheetAsk struct {
	Of     string       `json:"of"`
	Format sheet.Format `json:"format"`
	Units  sheet.Units  `json:"units"`
	Today  string       `json:"today"` // ISO 8601, where the person is
	// Note is the person's own sentence to the maker.
	Note string `json:"note"`
}

// LayersAsk asks for a version as layers at true size, as SVG or as PDF.
type LayersAsk struct {
	Of    string `json:"of"`
	PDF   bool   `json:"pdf"`
	Today string `json:"today"` // ISO 8601, where the person is
}
