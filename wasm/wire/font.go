//go:build !pin

package wire

// FontAsk brings a font for the papers, its TrueType file as bytes; without
// bytes it asks which are there.
type FontAsk struct {
	Name string `json:"name"` // of the family
	// Strong is true of the heavier weight.
	Strong bool `json:"strong"`
	// Place is where it stands among the fonts: a letter is set in the first that
	// has it.
	Place int `json:"place"`
}

// Font tells which fonts are there.
type Font struct {
	Places []int `json:"places"`
}
