package parcel

import (
	"fmt"

	"badgewright/sizing/unit"
)

// SomeLooked is a look at some pieces of a parcel.
type SomeLooked struct {
	Lot    int  `json:"lot"`
	Looked int  `json:"looked"`
	Bad    int  `json:"bad"` // of those looked at
	Sure   Sure `json:"sure"`
	// AtMost is the bad pieces one would put up with, to ask how many to look at.
	AtMost int `json:"atMost"`
}

// LookRow is what is still possible after a look at some number, all sound.
type LookRow struct {
	Looked int `json:"looked"`
	Most   int `json:"most"`
}

// SomeFound is what a look at some says of all.
type SomeFound struct {
	Least   int    `json:"least"`
	Most    int    `json:"most"`    // in all
	Unseen  int    `json:"unseen"`  // of them, among those not looked at
	NotSeen int    `json:"notSeen"` // pieces not looked at
	Says    string `json:"says"`
	// Look is how many to look at, all found sound, to be sure of at most AtMost.
	Look     int       `json:"look"`
	LookSays string    `json:"lookSays"`
	Rows     []LookRow `json:"rows"`
}

// LookedAtSome answers what may still be bad. Faults come back instead.
func LookedAtSome(s SomeLooked) (*SomeFound, unit.Faults) {
	var f unit.Faults
	f.Whole("lot", "The number of pieces in the parcel", s.Lot, 1, mostLot)
	f.Whole("looked", "The number looked at", s.Looked, 0, mostLot)
	f.Whole("bad", "The number of bad ones", s.Bad, 0, mostLot)
	f.Whole("atMost", "The number of bad ones put up with", s.AtMost, 0, mostLot)
	checkSure(&f, "sure", s.Sure)
	if s.Looked > s.Lot && s.Lot > 0 {
		f.Say("looked", "%d cannot be looked at of %d.", s.Looked, s.Lot)
	}
	if s.Bad > s.Looked {
		f.Say("bad", "%d cannot be bad of %d looked at.", s.Bad, s.Looked)
	}
	if len(f) > 0 {
		return nil, f
	}
	found := &SomeFound{Least: LeastBad(s.Lot, s.Looked, s.Bad, s.Sure), Most: MostBad(s.Lot, s.Looked, s.Bad, s.Sure), NotSeen: s.Lot - s.Looked}
	found.Unseen = found.Most - s.Bad
	found.Says = found.words(s)
	found.Look = LookForAtMost(s.Lot, s.AtMost, s.Sure)
	found.LookSays = lookWords(s, found.Look)
	found.Rows = lookRows(s)
	return found, f
}

func (a *SomeFound) words(s SomeLooked) string {
	sure := percent(float64(s.Sure)) + " sure"
	switch {
	case a.NotSeen == 0:
		return fmt.Sprintf("All were looked at: %s bad.", are(s.Bad))
	case a.Most == 0:
		return fmt.Sprintf("None of the %d is bad, %s.", s.Lot, sure)
	case a.Unseen == 0:
		return fmt.Sprintf("None of the %d not looked at is bad, %s.", a.NotSeen, sure)
	case s.Bad == 0:
		return fmt.Sprintf("At most %d of the %d can still be bad, all of them among the %d not looked at: %s.", a.Most, s.Lot, a.NotSeen, sure)
	}
	return fmt.Sprintf("At most %d of the %d are bad, so at most %d of the %d not looked at: %s.", a.Most, s.Lot, a.Unseen, a.NotSeen, sure)
}

func are(n int) string {
	if n == 1 {
		return "1 is"
	}
	return fmt.Sprintf("%d are", n)
}

func lookWords(s SomeLooked, look int) string {
	want := fmt.Sprintf("to be %s sure that at most %d of %d is bad", percent(float64(s.Sure)), s.AtMost, s.Lot)
	if s.AtMost != 1 {
		want = fmt.Sprintf("to be %s sure that at most %d of %d are bad", percent(float64(s.Sure)), s.AtMost, s.Lot)
	}
	switch look {
	case 0:
		return "There is nothing to look at " + want + "."
	case s.Lot:
		return fmt.Sprintf("Look at all %d, %s.", s.Lot, want)
	}
	return fmt.Sprintf("Look at %d, all found sound, %s.", look, want)
}

// lookSteps is how many rows the table of looks has at most.
const lookSteps = 12

// lookRows is what is still possible after other looks, all sound.
func lookRows(s SomeLooked) []LookRow {
	all := []LookRow{}
	last := -1
	for k := 1; k <= lookSteps; k++ {
		if n := s.Lot * k / lookSteps; n > 0 && n != last {
			all = append(all, LookRow{n, MostBad(s.Lot, n, 0, s.Sure)})
			last = n
		}
	}
	return all
}
