//go:build !pin

package wire

import (
	"badgewright/sizing/proof"
)

// ProofHow is how a pin was found in a proof, or is to be.
type ProofHow struct {
	// Box is where the pin lies, px of the picture: x0, y0, x1, y1; absent for
	// anywhere.
	Box *[4]float64 `json:"box,omitempty"`
	// Choose is the spot to take, counted from 1; 0 for the one that suits best.
	Choose int `json:"choose,omitempty"`
	// Places set by hand, on the pin (working px) and in the picture (px), in the
	// same order: two or more. Exact lets three stretch the pin and four turn it in
	// perspective; Refine betters what was set by the edges.
	Pin     []proof.Point `json:"pin,omitempty"`
	Picture []proof.Point `json:"picture,omitempty"`
	Exact   bool          `json:"exact,omitempty"`
	Refine  bool          `json:"refine,omitempty"`
	// Slant lets a pin that was found by itself lie in perspective, as in a
	// photograph.
	Slant bool `json:"slant,omitempty"`
}

// ProofOpenAsk opens a proof's picture: W*H RGBA pixels come along as bytes.
type ProofOpenAsk struct {
	Of  string   `json:"of"` // key of a version that was handed over
	W   int      `json:"w"`
	H   int      `json:"h"`
	How ProofHow `json:"how"`
}

// ProofFitAsk lays the pin otherwise on a proof that is open.
type ProofFitAsk struct {
	Of    string   `json:"of"`
	Proof string   `json:"proof"`
	How   ProofHow `json:"how"`
}

// ProofLaid is a pin as laid on a proof.
type ProofLaid struct {
	Proof string `json:"proof"` // names the picture in further questions
	W     int    `json:"w"`
	H     int    `json:"h"`
	// Spots are what may be the pin, and Chosen the one it was laid on, counted
	// from 1; 0 when it was laid by hand.
	Spots  []proof.Candidate `json:"spots"`
	Chosen int               `json:"chosen"`
	Fit    proof.Fit         `json:"fit"`
	// Outline is the pin's outline on the picture, px: loops, x and y in turn.
	Outline [][]float32 `json:"outline"`
	// Corners are three places of the pin, working px, that lie far apart on its
	// outline, and where they lie in the picture: to be dragged. There are four of a
	// pin that may lie in perspective.
	Corners        []proof.Point `json:"corners"`
	PictureCorners []proof.Point `json:"pictureCorners"`
}

// ProofDiffAsk asks in what a proof differs from what was asked for.
type ProofDiffAsk struct {
	Of         string            `json:"of"`
	Proof      string            `json:"proof"`
	Said       proof.Said        `json:"said"`
	Tolerances *proof.Tolerances `json:"tolerances,omitempty"` // absent for the usual
	// Photo says that it is a photograph of a finished pin, and White is a place of
	// white card in it, px; absent where none is in view.
	Photo bool         `json:"photo,omitempty"`
	White *proof.Point `json:"white,omitempty"`
}

// ProofView is one of two pictures to be held over each other.
type ProofView string

// The views.
const (
	ProofShown ProofView = "shown" // the proof, turned and sized like the pin
	ProofAsked ProofView = "asked" // the pin as asked for, in the proof's metal
)

// ProofLookAsk asks for one of them; its pixels come as bytes. Both lie like a
// struck picture of the same long side.
type ProofLookAsk struct {
	Of       string    `json:"of"`
	Proof    string    `json:"proof"`
	View     ProofView `json:"view"`
	LongSide int       `json:"longSide"`
}

// ProofMarksAsk asks for the proof's picture with marks drawn on it, as PNG.
type ProofMarksAsk struct {
	Of          string            `json:"of"`
	Proof       string            `json:"proof"`
	Differences []proof.Deviation `json:"differences"`
	Name        string            `json:"name"` // of the design, for the file's name
}

// ProofPairsAsk holds two lists of differences of one version against each other:
// what was asked of one round and what the next shows, or two makers' proofs.
type ProofPairsAsk struct {
	Of     string            `json:"of"`
	Makers bool              `json:"makers"` // two makers' proofs, not two rounds
	First  []proof.Deviation `json:"first"`
	Other  []proof.Deviation `json:"other"`
}

// ProofPairs are the differences of both, those of one place together.
type ProofPairs struct {
	Pairs []proof.DeviationPair `json:"pairs"`
	Words string                `json:"words"`
}

// ProofChoice is what the person decided of a difference.
type ProofChoice struct {
	Number int    `json:"number"`
	Change bool   `json:"change"` // ask for it; else it is accepted
	Note   string `json:"note,omitempty"`
}

// ProofRound is a proof as it is kept with the project: what it said, how it was
// laid, in what it differed and what was decided.
type ProofRound struct {
	ID      string `json:"id"`      // also of its picture
	Design  string `json:"design"`  // ID of the design
	Version string `json:"version"` // ID of the version
	Round   int    `json:"round"`
	Maker   string `json:"maker,omitempty"`
	Name    string `json:"name,omitempty"`  // of the file
	Dated   string `json:"dated,omitempty"` // as ISO 8601 has it
	// Photo says that it is a photograph of a finished pin.
	Photo bool `json:"photo,omitempty"`
	// White is a place of white card in the photograph, px.
	White       *proof.Point      `json:"white,omitempty"`
	How         ProofHow          `json:"how"`
	Said        proof.Said        `json:"said"`
	Tolerances  *proof.Tolerances `json:"tolerances,omitempty"`
	Fit         *proof.Fit        `json:"fit,omitempty"`
	Differences []proof.Deviation `json:"differences"`
	Choices     []ProofChoice     `json:"choices,omitempty"`
}
