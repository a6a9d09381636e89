//go:build !pin

package wire

import (
	"badgewright/sizing/days"
	"badgewright/sizing/parcel"
	"badgewright/sizing/unit"
)

// ParcelAsk asks how a parcel stands as it is counted so far.
type ParcelAsk struct {
	Parcel parcel.Parcel `json:"parcel"`
	Today  days.Date     `json:"today"`
	// Worth, where it is given, says what the count does to the money.
	Worth *parcel.Worth `json:"worth,omitempty"`
}

// ParcelUsual is what counting and keeping stock start from.
type ParcelUsual struct {
	Agreed    float64     `json:"agreed"` // percent
	Within    int         `json:"within"` // days
	Sure      parcel.Sure `json:"sure"`   // percent
	Weeks     int         `json:"weeks"`
	LeadDays  int         `json:"leadDays"`
	Levels    []string    `json:"levels"`
	Qualities []float64   `json:"qualities"` // percent
}

// ParcelCounted is the tally, or what is wrong with the count.
type ParcelCounted struct {
	Faults []unit.Fault  `json:"faults"`
	Tally  *parcel.Tally `json:"tally,omitempty"`
	Flaws  []parcel.Flaw `json:"flaws"` // the kinds there are
	Usual  ParcelUsual   `json:"usual"`
}

// LookedAtAsk asks what a look at some pieces says of all.
type LookedAtAsk struct {
	Look parcel.SomeLooked `json:"look"`
}

// LookedAt is the answer, or what is wrong with the numbers.
type LookedAt struct {
	Faults []unit.Fault      `json:"faults"`
	Found  *parcel.SomeFound `json:"found,omitempty"`
}

// PlanAsk asks for a single sampling plan for normal inspection.
type PlanAsk struct {
	Lot     int     `json:"lot"`
	Level   string  `json:"level"`
	Quality float64 `json:"quality"` // acceptance quality level, percent
}

// Planned is the plan, or what is wrong with the question.
type Planned struct {
	Faults []unit.Fault         `json:"faults"`
	Plan   *parcel.SamplingPlan `json:"plan,omitempty"`
	Says   string               `json:"says"`
	Curve  []parcel.OCPoint     `json:"curve"`
}

// LedgerAsk asks what is left of all that came.
type LedgerAsk struct {
	Book    parcel.StockBook   `json:"book"`
	Parcels []parcel.Parcel    `json:"parcels"`
	Names   []parcel.StockName `json:"names"` // the order's versions
	Today   days.Date          `json:"today"`
	// Schedule is the order's calendar, where the person keeps one.
	Schedule *days.Schedule `json:"schedule,omitempty"`
}

// Ledger is the stock and how makers did, or what is wrong with an entry.
type Ledger struct {
	Faults []unit.Fault         `json:"faults"`
	Stock  *parcel.Stock        `json:"stock,omitempty"`
	Makers []parcel.MakerRecord `json:"makers"`
}

// ClaimAsk asks what to write to the maker.
type ClaimAsk struct {
	Parcel parcel.Parcel `json:"parcel"`
	Today  days.Date     `json:"today"`
}

// ClaimWritten is that text, or what is wrong with the count.
type ClaimWritten struct {
	Faults []unit.Fault  `json:"faults"`
	Claim  *parcel.Claim `json:"claim,omitempty"`
}
