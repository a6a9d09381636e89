package deduce

import "math/big"

// echelon is rows brought to a staircase one by one, each with the sum of
// quotes that it came of.
type echelon struct {
	rows  [][]*big.Rat
	pivot []int
	came  [][]*big.Rat
}

// add takes a row in; false when it is a sum of earlier ones, and came then
// says of which, itself included.
func (e *echelon) add(row, came []*big.Rat) (fresh bool, of []*big.Rat) {
	row, came = clone(row), clone(came)
	for i, p := range e.pivot {
		if row[p].Sign() != 0 {
			f := new(big.Rat).Neg(row[p])
			combine(row, f, e.rows[i])
			combine(came, f, e.came[i])
		}
	}
	for j := range row {
		if row[j].Sign() == 0 {
			continue
		}
		inv := new(big.Rat).Inv(row[j])
		scale(row, inv)
		scale(came, inv)
		for i := range e.rows {
			if e.rows[i][j].Sign() != 0 {
				f := new(big.Rat).Neg(e.rows[i][j])
				combine(e.rows[i], f, row)
				combine(e.came[i], f, came)
			}
		}
		e.rows, e.pivot, e.came = append(e.rows, row), append(e.pivot, j), append(e.came, came)
		return true, nil
	}
	return false, came
}

// settled says whether the rows fix an unknown: it stands alone in one of them.
func (e *echelon) settled(j int) bool {
	for i, p := range e.pivot {
		if p != j {
			continue
		}
		for k := range e.rows[i] {
			if k != j && e.rows[i][k].Sign() != 0 {
				return false
			}
		}
		return true
	}
	return false
}

func clone(row []*big.Rat) []*big.Rat {
	out := make([]*big.Rat, len(row))
	for j := range row {
		out[j] = new(big.Rat).Set(row[j])
	}
	return out
}

// combine adds f times one row to another.
func combine(row []*big.Rat, f *big.Rat, other []*big.Rat) {
	tmp := new(big.Rat)
	for j := range row {
		if other[j].Sign() != 0 {
			row[j].Add(row[j], tmp.Mul(f, other[j]))
		}
	}
}

func scale(row []*big.Rat, f *big.Rat) {
	for j := range row {
		row[j].Mul(row[j], f)
	}
}
