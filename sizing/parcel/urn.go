// Package parcel is about what arrives: how many bad pieces there are or may
// be, by exact chances; the tally of a parcel held against what was ordered and
// agreed; what to write to the maker; and the stock that is left afterwards.
package parcel

import "math/big"

// Urn is a lot of pieces of which some are bad and some are looked at, picked
// blindly and not put back: the hypergeometric distribution. Chances are exact
// fractions; only what is shown is rounded.
type Urn struct {
	Lot  int // pieces in all, 0 or more
	Bad  int // of them, 0 to Lot
	Look int // looked at, 0 to Lot
}

// ways is the number of ways to pick k of n: 0 where there is none.
func ways(n, k int) *big.Int {
	if k < 0 || k > n {
		return new(big.Int)
	}
	return new(big.Int).Binomial(int64(n), int64(k))
}

// least and most are the bad pieces that can be among those looked at.
func (u Urn) least() int { return max(0, u.Look-(u.Lot-u.Bad)) }
func (u Urn) most() int  { return min(u.Bad, u.Look) }

// exactly is the number of ways in which exactly k of those looked at are bad.
func (u Urn) exactly(k int) *big.Int {
	w := ways(u.Bad, k)
	return w.Mul(w, ways(u.Lot-u.Bad, u.Look-k))
}

// between sums the ways from k to last, each from the one before by whole
// factors.
func (u Urn) between(k, last int) *big.Int {
	sum := new(big.Int)
	k, last = max(k, u.least()), min(last, u.most())
	if k > last {
		return sum
	}
	term := u.exactly(k)
	var by big.Int
	for ; ; k++ {
		sum.Add(sum, term)
		if k == last {
			return sum
		}
		term.Mul(term, by.SetInt64(int64(u.Bad-k)*int64(u.Look-k)))
		term.Quo(term, by.SetInt64(int64(k+1)*int64(u.Lot-u.Bad-u.Look+k+1)))
	}
}

// of is a number of ways as a share of all there are.
func (u Urn) of(n *big.Int) *big.Rat { return new(big.Rat).SetFrac(n, ways(u.Lot, u.Look)) }

// Exactly is the chance that exactly k of those looked at are bad.
func (u Urn) Exactly(k int) *big.Rat { return u.of(u.exactly(k)) }

// AtMost is the chance that no more than k of those looked at are bad. The
// shorter side is summed.
func (u Urn) AtMost(k int) *big.Rat {
	if k-u.least() <= u.most()-k {
		return u.of(u.between(u.least(), k))
	}
	above := u.of(u.between(k+1, u.most()))
	return above.Sub(big.NewRat(1, 1), above)
}

// AtLeast is the chance that k or more of those looked at are bad.
func (u Urn) AtLeast(k int) *big.Rat {
	below := u.AtMost(k - 1)
	return below.Sub(big.NewRat(1, 1), below)
}

// Sure is a confidence in percent, above 0 and below 100, such as 95.
type Sure float64

// doubt is the chance of being wrong that a confidence admits. The percentage
// is taken as it is written: of 99.9, exactly one in a thousand.
func (s Sure) doubt() *big.Rat {
	d := decimalRat(float64(s))
	d.Sub(big.NewRat(100, 1), d)
	return d.Quo(d, big.NewRat(100, 1))
}

// MostBad is how many pieces of a lot may be bad when bad ones were found among
// those looked at: the greatest number under which so few would be found with
// more than the chance of doubt (one-sided exact limit).
func MostBad(lot, look, found int, sure Sure) int {
	doubt := sure.doubt()
	lo, hi := found, lot-look+found // lo is possible, the answer lies in lo..hi
	for lo < hi {
		mid := (lo + hi + 1) / 2
		if (Urn{lot, mid, look}).AtMost(found).Cmp(doubt) > 0 {
			lo = mid
		} else {
			hi = mid - 1
		}
	}
	return lo
}

// LeastBad is the same from below: the least number under which so many would
// be found with more than the chance of doubt.
func LeastBad(lot, look, found int, sure Sure) int {
	return lot - MostBad(lot, look, look-found, sure)
}

// LookToFind is the least number to look at so that at least one of some bad
// pieces is found with a chance in percent, and that chance; the whole lot when
// there are none to find.
func LookToFind(lot, bad int, sure Sure) (look int, chance *big.Rat) {
	if bad < 1 {
		return lot, new(big.Rat)
	}
	doubt := sure.doubt()
	lo, hi := 0, lot
	for lo < hi {
		mid := (lo + hi) / 2
		if (Urn{lot, bad, mid}).Exactly(0).Cmp(doubt) <= 0 {
			hi = mid
		} else {
			lo = mid + 1
		}
	}
	return lo, Urn{lot, bad, lo}.AtLeast(1)
}

// LookForAtMost is the least number that has to be looked at, all found sound,
// to be sure that at most some are bad.
func LookForAtMost(lot, atMost int, sure Sure) int {
	if atMost >= lot {
		return 0
	}
	look, _ := LookToFind(lot, atMost+1, sure)
	return look
}
