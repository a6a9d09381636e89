package deduce

import "math/big"

// program is a linear program over unknowns that are 0 or more, in exact
// fractions: it keeps a feasible corner and walks from it. Bland's rule picks
// every step, so that it ends and is the same every time (R. G. Bland, "New
// finite pivoting rules for the simplex method", 1977; from memory).
type program struct {
	n     int // unknowns asked about
	cols  int // unknowns, slacks and helpers
	rows  [][]*big.Rat
	rhs   []*big.Rat
	basis []int
	// helpers start here: they are 0 at every feasible corner, and may not come in.
	helpers int
}

// bound is a row: the sum of coefficients times unknowns is at most limit.
type bound struct {
	coef  []*big.Rat
	limit *big.Rat
}

// newProgram finds a first corner of all bounds; nil when they contradict each
// other.
func newProgram(n int, bounds []bound) *program {
	p := &program{n: n, helpers: n + len(bounds)}
	p.cols = p.helpers
	var short []int // rows with a limit below 0, which want a helper
	for i, b := range bounds {
		if b.limit.Sign() < 0 {
			short = append(short, i)
		}
	}
	p.cols += len(short)
	for i, b := range bounds {
		row := make([]*big.Rat, p.cols)
		for j := range row {
			row[j] = new(big.Rat)
		}
		for j, c := range b.coef {
			row[j].Set(c)
		}
		row[n+i].SetInt64(1)
		p.rows, p.rhs = append(p.rows, row), append(p.rhs, new(big.Rat).Set(b.limit))
		p.basis = append(p.basis, n+i)
	}
	for k, i := range short {
		for j := range p.rows[i] {
			p.rows[i][j].Neg(p.rows[i][j])
		}
		p.rhs[i].Neg(p.rhs[i])
		p.rows[i][p.helpers+k].SetInt64(1)
		p.basis[i] = p.helpers + k
	}
	if !p.start() {
		return nil
	}
	return p
}

// start drives the helpers to 0; false when they cannot all be.
func (p *program) start() bool {
	cost := make([]*big.Rat, p.cols)
	for j := range cost {
		cost[j] = new(big.Rat)
		if j >= p.helpers {
			cost[j].SetInt64(-1)
		}
	}
	value, _ := p.climb(cost, p.helpers)
	if value.Sign() < 0 {
		return false
	}
	for i, b := range p.basis { // a helper that is 0 makes room, or its row says nothing
		if b < p.helpers {
			continue
		}
		for j := 0; j < p.helpers; j++ {
			if p.rows[i][j].Sign() != 0 {
				p.pivot(i, j, nil)
				break
			}
		}
	}
	return true
}

// most is the greatest value of a sum over all that is feasible; ok is false
// when there is no greatest.
func (p *program) most(coef []*big.Rat) (value *big.Rat, ok bool) {
	cost := make([]*big.Rat, p.cols)
	for j := range cost {
		cost[j] = new(big.Rat)
		if j < len(coef) {
			cost[j].Set(coef[j])
		}
	}
	return p.climb(cost, p.helpers)
}

// at is the unknowns at the corner that the last walk ended in.
func (p *program) at() []*big.Rat {
	x := make([]*big.Rat, p.n)
	for j := range x {
		x[j] = new(big.Rat)
	}
	for i, b := range p.basis {
		if b < p.n {
			x[b].Set(p.rhs[i])
		}
	}
	return x
}

// climb walks to a corner with the greatest cost, letting in columns below
// `open` only.
func (p *program) climb(cost []*big.Rat, open int) (*big.Rat, bool) {
	value, tmp := new(big.Rat), new(big.Rat)
	for i, b := range p.basis { // the cost of what is in the basis is spoken for
		if cost[b].Sign() == 0 {
			continue
		}
		c := new(big.Rat).Set(cost[b])
		for j := range cost {
			if p.rows[i][j].Sign() != 0 {
				cost[j].Sub(cost[j], tmp.Mul(c, p.rows[i][j]))
			}
		}
		value.Add(value, tmp.Mul(c, p.rhs[i]))
	}
	for {
		in := -1
		for j := 0; j < open && in < 0; j++ {
			if cost[j].Sign() > 0 {
				in = j
			}
		}
		if in < 0 {
			return value, true
		}
		out := p.leaving(in)
		if out < 0 {
			return value, false
		}
		step := new(big.Rat).Quo(p.rhs[out], p.rows[out][in])
		value.Add(value, tmp.Mul(cost[in], step))
		p.pivot(out, in, cost)
	}
}

// leaving is the row that first forbids more of a column; -1 when none does.
func (p *program) leaving(in int) int {
	out := -1
	var least *big.Rat
	for i := range p.rows {
		a := p.rows[i][in]
		if a.Sign() <= 0 {
			continue
		}
		ratio := new(big.Rat).Quo(p.rhs[i], a)
		c := -1
		if out >= 0 {
			c = ratio.Cmp(least)
		}
		if c < 0 || c == 0 && p.basis[i] < p.basis[out] {
			out, least = i, ratio
		}
	}
	return out
}

// pivot brings a column into the basis at a row; cost may be nil.
func (p *program) pivot(r, c int, cost []*big.Rat) {
	inv := new(big.Rat).Inv(p.rows[r][c])
	var full []int
	for j := range p.rows[r] {
		if p.rows[r][j].Sign() != 0 {
			p.rows[r][j].Mul(p.rows[r][j], inv)
			full = append(full, j)
		}
	}
	p.rhs[r].Mul(p.rhs[r], inv)
	tmp := new(big.Rat)
	away := func(row []*big.Rat, rhs *big.Rat) {
		if row[c].Sign() == 0 {
			return
		}
		f := new(big.Rat).Set(row[c])
		for _, j := range full {
			row[j].Sub(row[j], tmp.Mul(f, p.rows[r][j]))
		}
		if rhs != nil {
			rhs.Sub(rhs, tmp.Mul(f, p.rhs[r]))
		}
	}
	for i := range p.rows {
		if i != r {
			away(p.rows[i], p.rhs[i])
		}
	}
	if cost != nil {
		away(cost, nil)
	}
	p.basis[r] = c
}
