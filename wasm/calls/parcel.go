//go:build !pin

package calls

import (
	"badgewright/sizing/parcel"
	"badgewright/wasm/wire"
)

// parcelCounted tallies a parcel.
func parcelCounted(_ *Session, _ Job, ask wire.ParcelAsk) (Reply, error) {
	t, faults := parcel.Count(ask.Parcel, ask.Worth, ask.Today)
	return Reply{Answer: wire.ParcelCounted{Faults: faultsOf(faults), Tally: t, Flaws: parcel.Flaws, Usual: parcelUsual}}, nil
}

var parcelUsual = wire.ParcelUsual{
	Agreed: parcel.UsualAgreed, Within: parcel.UsualWithin, Sure: parcel.UsualSure,
	Weeks: parcel.UsualWeeks, LeadDays: parcel.UsualLeadDays, Levels: parcel.Levels, Qualities: parcel.Qualities,
}

// someLooked says what a look at some pieces says of all.
func someLooked(_ *Session, _ Job, ask wire.LookedAtAsk) (Reply, error) {
	found, faults := parcel.LookedAtSome(ask.Look)
	return Reply{Answer: wire.LookedAt{Faults: faultsOf(faults), Found: found}}, nil
}

// samplingPlan looks a plan up in the tables.
func samplingPlan(_ *Session, _ Job, ask wire.PlanAsk) (Reply, error) {
	p, faults := parcel.PlanFor(ask.Lot, ask.Level, ask.Quality)
	answer := wire.Planned{Faults: faultsOf(faults), Curve: []parcel.OCPoint{}}
	if len(faults) == 0 {
		answer.Plan, answer.Says, answer.Curve = &p, p.Says(ask.Lot), p.Curve(ask.Lot)
	}
	return Reply{Answer: answer}, nil
}

// stockLeft reckons the book of what came up.
func stockLeft(_ *Session, _ Job, ask wire.LedgerAsk) (Reply, error) {
	lead := parcel.Lead{Days: ask.Book.LeadDays, Schedule: ask.Schedule}
	stock, faults := parcel.Keep(ask.Book, ask.Parcels, ask.Names, lead, ask.Today)
	return Reply{Answer: wire.Ledger{Faults: faultsOf(faults), Stock: stock, Makers: parcel.Makers(ask.Parcels)}}, nil
}

// claimWritten writes to the maker.
func claimWritten(_ *Session, _ Job, ask wire.ClaimAsk) (Reply, error) {
	c, faults := parcel.Claimed(ask.Parcel, ask.Today)
	return Reply{Answer: wire.ClaimWritten{Faults: faultsOf(faults), Claim: c}}, nil
}
