package reduce

// GroundChoice is how the background is to be found.
type GroundChoice string

// The choices for the background.
const (
	GroundAuto  GroundChoice = "auto"  // transparency if there is any, else paper, else none
	GroundClear GroundChoice = "clear" // only transparent pixels
	GroundPaper GroundChoice = "paper" // also the paper colour that reaches the edge of the file
	GroundNone  GroundChoice = "none"  // the whole file is drawing
)
