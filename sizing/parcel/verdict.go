package parcel

import (
	"fmt"
	"strconv"
)

// VerdictKind is how a parcel stands to the share agreed.
type VerdictKind string

// The verdicts.
const (
	Uncounted VerdictKind = "uncounted" // nothing was looked at
	Within    VerdictKind = "within"    // as agreed
	Over      VerdictKind = "over"      // more are flawed than agreed
	Open      VerdictKind = "open"      // more must be looked at
)

// Standing is what can be said of the flawed pieces in a lot.
type Standing struct {
	Kind VerdictKind `json:"kind"`
	// Allowed is how many the share agreed admits; from Refuse flawed ones among
	// those looked at the lot is over it.
	Allowed int `json:"allowed"`
	Refuse  int `json:"refuse"`
	// Least and Most are the exact one-sided limits of the flawed ones in all.
	Least int `json:"least"`
	Most  int `json:"most"`
	// Wrongly is the chance, 0 to 1, that a lot with exactly Allowed flawed ones
	// would be refused by as many looks.
	Wrongly float64 `json:"wrongly"`
	// Luck is the chance that a maker whose pieces are flawed in just the share
	// agreed, each for itself, shows this many among as many looked at.
	Luck float64  `json:"luck"`
	Says string   `json:"says"`
	Why  []string `json:"why"`
}

// judged holds a count against the share agreed.
func judged(lot, look, flawed int, agreed float64, sure Sure) Standing {
	v := Standing{Kind: Uncounted, Allowed: allowed(lot, agreed), Most: lot, Says: "Nothing is counted yet.", Why: []string{}}
	if look == 0 {
		return v
	}
	v.Least, v.Most = LeastBad(lot, look, flawed, sure), MostBad(lot, look, flawed, sure)
	v.Refuse, v.Wrongly = refuseFrom(lot, look, v.Allowed, sure)
	v.Luck = binomial(look, agreed/100).atLeast(flawed)
	switch {
	case v.Least > v.Allowed:
		v.Kind = Over
	case v.Most <= v.Allowed:
		v.Kind = Within
	default:
		v.Kind = Open
	}
	v.Says = v.words(lot, look, flawed, agreed, sure)
	v.Why = v.reasons(lot, look, flawed, agreed, sure)
	return v
}

// refuseFrom is the least number found from which a lot counts as over, and the
// chance that a lot with just what is allowed shows as many.
func refuseFrom(lot, look, allow int, sure Sure) (from int, wrongly float64) {
	u, doubt := Urn{lot, allow, look}, sure.doubt()
	lo, hi := 0, min(allow, look)+1
	for lo < hi {
		mid := (lo + hi) / 2
		if u.AtLeast(mid).Cmp(doubt) <= 0 {
			hi = mid
		} else {
			lo = mid + 1
		}
	}
	return lo, near(u.AtLeast(lo))
}

func (v *Standing) words(lot, look, flawed int, agreed float64, sure Sure) string {
	admits := fmt.Sprintf("%s of %d admits %d", percent(agreed), lot, v.Allowed)
	found := fmt.Sprintf("%d of %d flawed", flawed, look)
	if look < lot {
		found += " so far"
	}
	switch {
	case v.Kind == Over && flawed > v.Allowed && look < lot:
		return fmt.Sprintf("More than agreed, whatever the rest is: %s; %s.", found, admits)
	case v.Kind == Over && flawed > v.Allowed:
		return fmt.Sprintf("%d more than agreed: %s; %s.", flawed-v.Allowed, found, admits)
	case v.Kind == Over:
		return fmt.Sprintf("More than agreed: %s, so at least %d of the %d are (%s sure); %s.", found, v.Least, lot, percent(float64(sure)), admits)
	case v.Kind == Within && look == lot:
		return fmt.Sprintf("As agreed: %s; %s.", found, admits)
	case v.Kind == Within:
		return fmt.Sprintf("As agreed: %s, so at most %d of the %d are (%s sure); %s.", found, v.Most, lot, percent(float64(sure)), admits)
	}
	return fmt.Sprintf("Not to tell yet: %s, so %d to %d of the %d may be; %s.", found, v.Least, v.Most, lot, admits)
}

func (v *Standing) reasons(lot, look, flawed int, agreed float64, sure Sure) []string {
	if look == lot {
		all := []string{fmt.Sprintf("Every piece that came was looked at, so the count is exact: a parcel with just %d flawed is never refused.", v.Allowed)}
		if flawed > v.Allowed {
			all = append(all, fmt.Sprintf("A maker whose pieces are flawed in %s in the long run, each for itself, would still send %d or more in %d now and then: in %s of 100 parcels (binomial).", percent(agreed), flawed, lot, inHundred(v.Luck)))
		}
		return all
	}
	return []string{
		fmt.Sprintf("Limits are exact (hypergeometric) and each holds with %s confidence, if the %d were picked blindly.", percent(float64(sure)), look),
		fmt.Sprintf("With %d looked at, %d flawed or more means over. A parcel with just %d flawed of %d would be refused so in %s of 100 cases.", look, v.Refuse, v.Allowed, lot, inHundred(v.Wrongly)),
		"The chance is that of one look after as many pieces; who looks after every piece and stops at the worst moment errs more often.",
	}
}

// percent writes a share as it was given.
func percent(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) + " percent" }

// inHundred writes a chance as so many of a hundred, with what digits it needs.
func inHundred(chance float64) string {
	switch v := 100 * chance; {
	case v == 0:
		return "0"
	case v < 0.1:
		return "fewer than 0.1"
	case v < 10:
		return strconv.FormatFloat(v, 'f', 1, 64)
	default:
		return strconv.FormatFloat(v, 'f', 0, 64)
	}
}
