package wire

import "badgewright/reduce/colour"

// TypedAs is what a typed text stands for.
type TypedAs string

// What can be typed into a field of the page.
const (
	TypedLength   TypedAs = "length"
	TypedArea     TypedAs = "area"
	TypedForce    TypedAs = "force"
	TypedAngle    TypedAs = "angle"
	TypedCount    TypedAs = "count"
	TypedAmount   TypedAs = "amount" // of a price list: money, or a share in percent
	TypedCurrency TypedAs = "currency"
	TypedColour   TypedAs = "colour"
	TypedPercent  TypedAs = "percent"
	TypedDays     TypedAs = "days" // whole working days
)

// TypedAsk asks what a typed text means. What cannot be read, or lies out of
// bounds, is refused in words that belong at the field.
type TypedAsk struct {
	Text string  `json:"text"`
	As   TypedAs `json:"as"`
	// Beside is what stands beside the field and is meant by a bare number: mm
	// or in, a currency's code, "%", "pins".
	Beside string `json:"beside"`
	// Least and Most bound a length (mm), an area (mm2), a force (N),
	// an angle (degrees), a count, a percentage or days; Most 0 is no bound.
	Least float64 `json:"least"`
	Most  float64 `json:"most"`
}

// Typed is what a typed text means; which field holds it hangs on what it
// stands for.
type Typed struct {
	Number float64     `json:"number"` // a length in mm, an area in mm2, a force in N, an angle in degrees, a count, percent, working days
	Text   string      `json:"text"`   // an amount or percentage, exactly; a currency's code
	RGB    colour.RGB8 `json:"rgb"`
	Words  string      `json:"words"` // how it reads back: "31.8 mm (1.25 in)"
}
