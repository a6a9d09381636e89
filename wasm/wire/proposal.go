package wire

import "badgewright/sizing"

// Proposal is the metal that recipes propose for a drawing without lines.
type Proposal struct {
	// Words says why, how long in all, and how wide.
	Words string         `json:"words"`
	Lines []ProposedLine `json:"lines"`
}

// ProposedLine is one stretch of it, which the recipe of a kind builds.
type ProposedLine struct {
	Kind sizing.RecipeKind `json:"kind"`
	Path []float32         `json:"path"` // x and y in turn
}
