package parcel

import (
	"fmt"
	"math/big"

	"badgewright/sizing/days"
	"badgewright/sizing/unit"
)

// What a parcel starts from (common practice, no published source): a tenth of
// the pieces may be seconds, the maker is told within a week, and 95 percent
// confidence where not every piece was looked at.
const (
	UsualAgreed      = 10.0
	UsualWithin      = 7
	UsualSure   Sure = 95
)

// FlawedPiece is one piece that is no first.
type FlawedPiece struct {
	Grade Grade    `json:"grade"` // second or reject
	Flaw  FlawKind `json:"flaw"`
	// Photos are the names under which the page keeps pictures of it.
	Photos []string `json:"photos,omitempty"`
}

// ParcelRow is what came of one version.
type ParcelRow struct {
	Design  string `json:"design"` // ID
	Version string `json:"version"`
	Name    string `json:"name"`
	Ordered int    `json:"ordered"`
	// Received is how many came, where they were counted apart. At 0 as many came
	// as were graded once the count is complete, and as many as ordered until then.
	Received int           `json:"received,omitempty"`
	Firsts   int           `json:"firsts"`
	Flawed   []FlawedPiece `json:"flawed,omitempty"`
}

// Parcel is one delivery of one maker, as the person counts it.
type Parcel struct {
	ID      string    `json:"id"`
	Maker   string    `json:"maker"`
	Ordered days.Date `json:"ordered,omitempty"` // the day of the order
	Due     days.Date `json:"due,omitempty"`     // the day it was to be here
	Arrived days.Date `json:"arrived,omitempty"`
	// Agreed is the share of flawed pieces agreed with the maker, percent, and
	// Within the days of the calendar within which the maker is told.
	Agreed float64 `json:"agreed"`
	Within int     `json:"within"`
	Sure   Sure    `json:"sure"`
	// Complete says that all there was has been counted.
	Complete bool        `json:"complete,omitempty"`
	Rows     []ParcelRow `json:"rows"`
}

// graded is how many pieces were looked at.
func (r *ParcelRow) graded() int { return r.Firsts + len(r.Flawed) }

// received is how many pieces of a version came; while the count goes on as many
// as ordered, which is then not known.
func (p *Parcel) received(r *ParcelRow) (n int, known bool) {
	switch {
	case r.Received > 0:
		return max(r.Received, r.graded()), true
	case p.Complete:
		return r.graded(), true
	}
	return max(r.Ordered, r.graded()), false
}

// count is how many have a grade.
func (r *ParcelRow) count(g Grade) int {
	if g == First {
		return r.Firsts
	}
	n := 0
	for _, p := range r.Flawed {
		if p.Grade == g {
			n++
		}
	}
	return n
}

// Bounds of what is taken (this tool's choice).
const (
	mostRows   = 200
	mostWithin = 365
	mostPhotos = 20 // of one piece
	leastSure  = 50
	mostSure   = 99.99
)

// check says what of a parcel cannot be used.
func (p *Parcel) check() unit.Faults {
	var f unit.Faults
	if !(p.Agreed >= 0 && p.Agreed <= 100) {
		f.Say("agreed", "The share agreed is %g percent; it runs from 0 to 100.", p.Agreed)
	}
	checkSure(&f, "sure", p.Sure)
	f.Whole("within", "The number of days in which to tell the maker", p.Within, 0, mostWithin)
	for _, d := range []struct {
		at, name string
		day      days.Date
	}{{"ordered", "The day of the order", p.Ordered}, {"due", "The day it was to be here", p.Due}, {"arrived", "The day it came", p.Arrived}} {
		if d.day != "" {
			readDay(&f, d.at, d.name, d.day)
		}
	}
	if len(p.Rows) > mostRows {
		f.Say("rows", "%d versions are more than %d; count them in several parcels.", len(p.Rows), mostRows)
	}
	for i := range p.Rows {
		p.Rows[i].check(&f, fmt.Sprintf("rows[%d]", i))
	}
	return f
}

func (r *ParcelRow) check(f *unit.Faults, at string) {
	f.Whole(at+".ordered", "The number ordered of "+r.Name, r.Ordered, 0, mostLot)
	f.Whole(at+".firsts", "The number of firsts of "+r.Name, r.Firsts, 0, mostLot)
	f.Whole(at+".received", "The number received of "+r.Name, r.Received, 0, mostLot)
	f.Whole(at+".flawed", "The number of flawed pieces of "+r.Name, len(r.Flawed), 0, mostLot)
	if r.Received > 0 && r.Received < r.graded() {
		f.Say(at+".received", "%d of %s were looked at, but only %d came; one of the two is miscounted.", r.graded(), r.Name, r.Received)
	}
	for j, p := range r.Flawed {
		here := fmt.Sprintf("%s.flawed[%d]", at, j)
		if p.Grade != Second && p.Grade != Reject {
			f.Say(here+".grade", "A flawed piece is a second or a reject, not %q.", string(p.Grade))
		}
		if !knownFlaw(p.Flaw) {
			f.Say(here+".flaw", "%q is no kind of fault.", string(p.Flaw))
		}
		f.Whole(here+".photos", "The number of pictures of one piece", len(p.Photos), 0, mostPhotos)
	}
}

func checkSure(f *unit.Faults, at string, s Sure) {
	if !(s >= leastSure && s <= mostSure) {
		f.Say(at, "A confidence of %g percent says nothing; give one from %d to %g.", float64(s), leastSure, mostSure)
	}
}

// readDay reads a day that must be there.
func readDay(f *unit.Faults, at, name string, date days.Date) (days.Day, bool) {
	d, err := days.Read(date)
	if err != nil {
		f.Say(at, "%s: %s", name, err)
	}
	return d, err == nil
}

// allowed is how many pieces of a lot a share in percent admits: a whole number,
// as half a piece cannot be flawed.
func allowed(lot int, percent float64) int {
	r := decimalRat(percent)
	r.Mul(r, big.NewRat(int64(lot), 100))
	return int(new(big.Int).Quo(r.Num(), r.Denom()).Int64())
}
