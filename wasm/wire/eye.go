package wire

import (
	"badgewright/reduce/colour"
	"badgewright/sizing/apart"
	"badgewright/sizing/eye"
	"badgewright/sizing/unit"
)

// EyeUsual is what the sight of a pin starts from.
type EyeUsual struct {
	// Distances are those of the job, nearest first.
	Distances  []NamedDistance  `json:"distances"`
	Acuity     float64          `json:"acuity"`
	Thresholds apart.Thresholds `json:"thresholds"`
	// Cloths to pin it on, the usual one first.
	Cloths []NamedColour `json:"cloths"`
	// The bounds of what can be asked for.
	LeastDistance    unit.MM `json:"leastDistance"`
	GreatestDistance unit.MM `json:"greatestDistance"`
	LeastAcuity      float64 `json:"leastAcuity"`
	GreatestAcuity   float64 `json:"greatestAcuity"`
}

// NamedDistance is a distance and where one looks from so.
type NamedDistance struct {
	Name string  `json:"name"`
	MM   unit.MM `json:"mm"`
}

// ReadingAsk asks what of a picked version can be read from a distance.
type ReadingAsk struct {
	Picked     Picked           `json:"picked"`
	Viewing    eye.Viewing      `json:"viewing"`
	Cloth      colour.RGB8      `json:"cloth"`
	Thresholds apart.Thresholds `json:"thresholds"`
	// AsDrawn leaves out what recipes build, so that another size is a lookup.
	AsDrawn bool `json:"asDrawn,omitempty"`
}

// ReadingAnswer is what can be read from the distance asked for, and in short
// from those of the job.
type ReadingAnswer struct {
	At   ReadingAt   `json:"at"`
	Rows []ReadingAt `json:"rows"` // of EyeUsual.Distances, without findings
}

// ReadingAt is what can be read from one distance.
type ReadingAt struct {
	Name    string      `json:"name"` // "in the hand"; the distance itself for any other
	Viewing eye.Viewing `json:"viewing"`
	// Gap is the least width that is parted, Letter and LetterBest the heights of
	// capitals.
	Gap        unit.Length `json:"gap"`
	Letter     unit.Length `json:"letter"`
	LetterBest unit.Length `json:"letterBest"`
	// Findings are the details that are not surely parted, the worst first.
	Findings []apart.Reading `json:"findings"`
	// Fail and Unsure count them by verdict.
	Fail   int `json:"fail"`
	Unsure int `json:"unsure"`
	// Lines is the share of the length of all metal, and Areas that of all
	// centrelines of enamel, that is parted: 0..1.
	Lines float64 `json:"lines"`
	Areas float64 `json:"areas"`
	// ReadFrom is the size, by the design's measure, from which every detail is
	// parted; its mm are 0 when no pin is large enough.
	ReadFrom unit.Length `json:"readFrom"`
	Words    string      `json:"words"`
}

// NeighboursAsk asks which colours of a picked version are told apart where
// they meet.
type NeighboursAsk struct {
	Picked     Picked           `json:"picked"`
	Thresholds apart.Thresholds `json:"thresholds"`
}

// Neighbours is every pair of colours that meet, the worst first, the platings
// for this design, the best first, and what could be changed.
type Neighbours struct {
	Pairs    []apart.Pair   `json:"pairs"`
	Platings []apart.Ranked `json:"platings"`
	Ideas    []apart.Idea   `json:"ideas"`
	Words    string         `json:"words"`
}

// LookAsk asks for the struck pin on cloth; the answer is a Picture and comes
// with RGBA pixels (opaque).
type LookAsk struct {
	Picked   Picked      `json:"picked"`
	LongSide int         `json:"longSide"` // of the picture, px, 16..4096
	Cloth    colour.RGB8 `json:"cloth"`
	Viewing  eye.Viewing `json:"viewing"`
	// Plain is true for what a lens would see: nothing is filtered.
	Plain bool `json:"plain"`
}

// GlanceAsk asks for the answer at a glance for a picked version.
type GlanceAsk struct {
	Picked     Picked           `json:"picked"`
	Viewing    eye.Viewing      `json:"viewing"`
	Thresholds apart.Thresholds `json:"thresholds"`
	AsDrawn    bool             `json:"asDrawn,omitempty"` // as in ReadingAsk
}

// Glance is the sizes of a design on one scale, by its own measure.
type Glance struct {
	From unit.MM `json:"from"` // of the scale
	To   unit.MM `json:"to"`
	// Made is the sizes at which it can be made, and MadeSays the same in words.
	Made     []SizeRange `json:"made"`
	MadeSays string      `json:"madeSays"`
	// ReadFrom is the least at which it can be read from the distance; its mm are
	// 0 when no pin is large enough. LettersFrom is the same for lettering alone,
	// 0 also when there is none.
	ReadFrom    unit.Length `json:"readFrom"`
	LettersFrom unit.Length `json:"lettersFrom"`
	Asked       unit.Length `json:"asked"`
	// CanMake and CanRead are of the size asked for.
	CanMake bool   `json:"canMake"`
	CanRead bool   `json:"canRead"`
	Words   string `json:"words"`
}

// SeenLoss is what one count of enamels loses to an eye at the pin's size.
type SeenLoss struct {
	// Mean and Worst are S-CIELAB between the drawing and the flats, over the
	// enamel: all of it, and its worst-matched tenth.
	Mean  float64 `json:"mean"`
	Worst float64 `json:"worst"`
	// Step is the greatest S-CIELAB difference from the count before; 0 for the first.
	Step float64 `json:"step"`
	// Unseen is true when nobody could see the step from the count before.
	Unseen bool `json:"unseen"`
}
