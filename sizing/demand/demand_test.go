package demand

import (
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func money(s string) decimal.Decimal { return decimal.RequireFromString(s) }

// table reads a published table, each row by its column names.
func table(t *testing.T, name string) []map[string]string {
	t.Helper()
	f, err := os.Open(filepath.Join("..", "..", "testdata", "reference", name))
	require.NoError(t, err)
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	var all []map[string]string
	for _, row := range rows[1:] {
		m := map[string]string{}
		for i, cell := range row {
			m[rows[0][i]] = cell
		}
		all = append(all, m)
	}
	require.NotEmpty(t, all)
	return all
}

func number(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	require.NoError(t, err)
	return v
}

// normal is a normal distribution on a grid of 1/per pieces.
func normal(mean, sd float64, per int) Distribution {
	last := int((mean + 9*sd) * float64(per))
	w := make([]float64, last+1)
	for i := range w {
		z := (float64(i)/float64(per) - mean) / sd
		w[i] = math.Exp(-z * z / 2)
	}
	return weighted(0, w)
}

func poisson(mean float64) Distribution {
	w := make([]float64, int(mean+12*math.Sqrt(mean))+20)
	for i := range w {
		lg, _ := math.Lgamma(float64(i + 1))
		w[i] = math.Exp(float64(i)*math.Log(mean) - mean - lg)
	}
	return weighted(0, w)
}

// demandOf makes the distribution of a row, and says how fine its grid is.
// Demand below none, which a normal distribution has, is kept by counting
// pieces from some number below none: a newsvendor does not mind.
func demandOf(t *testing.T, row map[string]string) (d Distribution, per int, below float64) {
	t.Helper()
	kind, rest, _ := strings.Cut(row["demand"], " ")
	switch kind {
	case "normal":
		mean, sd := number(t, row["demand_mean_units"]), number(t, row["demand_sd_units"])
		below = math.Ceil(max(0, 9*sd-mean))
		per = max(1, int(6000/(mean+below)))
		return normal(mean+below, sd, per), per, below
	case "poisson":
		return poisson(number(t, row["demand_mean_units"])), 1, 0
	case "discrete":
		w := map[int]float64{}
		first, last := math.MaxInt, 0
		for pair := range strings.FieldsSeq(rest) {
			n, p, _ := strings.Cut(pair, ":")
			k, err := strconv.Atoi(n)
			require.NoError(t, err)
			w[k] = number(t, p)
			first, last = min(first, k), max(last, k)
		}
		weights := make([]float64, last-first+1)
		for k, p := range w {
			weights[k-first] = p
		}
		return weighted(first, weights), 1, 0
	}
	t.Fatalf("no demand is called %q", kind)
	return d, 1, 0
}

// newsvendor is a search for a textbook's problem: a piece costs what too many
// cost, and brings what too few and too many cost together.
func newsvendor(d Distribution, under, over float64, per int) *search {
	s := &search{spread: newSpread([]Distribution{d}), each: (under + over) / float64(per)}
	cost := decimal.NewFromFloat(over).Div(decimal.NewFromInt(int64(per)))
	s.Most = d.Last()
	s.Versions = []VersionGuess{{}}
	s.Bill = func(n int) (decimal.Decimal, bool) { return cost.Mul(decimal.NewFromInt(int64(n))), true }
	return s
}

// mismatch is the textbooks' cost: of too few and of too many, on average.
func (s *search) mismatch(n int, under, over float64, per int) float64 {
	sold := s.spread.soldOf(n)
	return (under*(s.spread.mean()-sold) + over*(float64(n)-sold)) / float64(per)
}

// Textbook newsvendors: Snyder & Shen, Fundamentals of Supply Chain Theory, 2nd
// ed. 2019, ch. 4; Hillier & Lieberman; Nahmias; Cachon & Terwiesch: each row
// of the table names its own.
func TestTheBestOrderIsThatOfTheTextbooks(t *testing.T) {
	for _, row := range table(t, "newsvendor_worked.csv") {
		d, per, below := demandOf(t, row)
		under, over := number(t, row["underage_cost_Cu_per_unit"]), number(t, row["overage_cost_Co_per_unit"])
		s := newsvendor(d, under, over, per)
		n, ok := s.best()
		require.True(t, ok)
		want := number(t, row["optimal_quantity_units"])
		assert.InDelta(t, want, float64(n)/float64(per)-below, 1/float64(per), row["id"])
		assert.Equal(t, n, d.Quantile(under/(under+over)), "%s: the critical ratio", row["id"])
		cost := s.mismatch(n, under, over, per)
		assert.InEpsilon(t, number(t, row["expected_mismatch_cost_at_optimum"]), cost, 1e-5, row["id"])
	}
}

// The same books, at orders that are not the best. Rows of one id share their
// demand with the table above.
func TestWhatAnOrderComesToIsThatOfTheTextbooks(t *testing.T) {
	worked := map[string]map[string]string{}
	for _, row := range table(t, "newsvendor_worked.csv") {
		worked[row["id"]] = row
	}
	for _, row := range table(t, "newsvendor_cost_at_quantity.csv") {
		w := worked[row["id"]]
		d, per, below := demandOf(t, w)
		under, over := number(t, w["underage_cost_Cu_per_unit"]), number(t, w["overage_cost_Co_per_unit"])
		s := newsvendor(d, under, over, per)
		q := number(t, row["quantity_units"]) + below
		n := int(q) * per
		sold, mean := s.spread.soldOf(n)/float64(per), s.spread.mean()/float64(per)
		assert.InDelta(t, number(t, row["expected_sales_units"]), sold-below, 2e-3, row["id"])
		assert.InDelta(t, number(t, row["expected_leftover_units"]), q-sold, 2e-3, row["id"])
		assert.InDelta(t, number(t, row["expected_lost_sales_units"]), mean-sold, 2e-3, row["id"])
		step := d.weight(n-d.First()) / d.total() // the grid counts q itself whole
		assert.InDelta(t, number(t, row["in_stock_probability"]), d.AtMost(n), step, row["id"])
		assert.InEpsilon(t, number(t, row["expected_mismatch_cost_computed"]), s.mismatch(n, under, over, per), 1e-4, row["id"])
	}
}

// All-units breaks: Snyder & Shen ch. 3 and Nahmias, Example 4.4. Nothing is
// sold, so the best order is the one with the least bill, and the bill is the
// books' yearly cost: dearer orders give way to the next break.
func TestTheBestOrderGoesUpToTheBreak(t *testing.T) {
	want := map[string]int{"SS-3.5": 800, "SS-P3.12a": 2400, "SS-doc": 500, "Nahmias-bags": 500}
	seen := map[string]bool{}
	for _, row := range table(t, "all_units_discount_eoq.csv") {
		id := row["id"]
		if row["breakpoints_units"] == "" {
			continue
		}
		yearly := yearlyCost(t, row)
		n := number(t, row["candidate_quantity_units"])
		if n == math.Floor(n) {
			bill, _ := yearly(int(n))
			assert.InEpsilon(t, number(t, row["annual_cost_at_candidate"]), bill.InexactFloat64(), 1e-9, id)
		}
		if seen[id] {
			continue
		}
		seen[id] = true
		s := &search{spread: newSpread([]Distribution{weighted(0, []float64{1})})}
		s.Most, s.Bill = 5000, yearly
		s.Versions = []VersionGuess{{Guess: Guess{Kind: ByThree}}}
		best, low := 0, decimal.Zero
		for k := 1; k <= s.Most; k++ { // none cannot be ordered here
			if b, _ := s.Bill(k); best == 0 || b.LessThan(low) {
				best, low = k, b
			}
		}
		assert.Equal(t, want[id], best, id)
		got, ok := s.bestFrom(1)
		assert.True(t, ok)
		assert.Equal(t, want[id], got, id)
	}
	assert.Len(t, seen, len(want))
}

func yearlyCost(t *testing.T, row map[string]string) Bill {
	t.Helper()
	fixed, rate, wanted := money(row["fixed_order_cost"]), money(row["holding_rate_per_year"]), money(row["annual_demand_units"])
	froms, prices := strings.Fields(row["breakpoints_units"]), strings.Fields(row["unit_prices"])
	return func(n int) (decimal.Decimal, bool) {
		price := decimal.Zero
		for i, from := range froms {
			if k, err := strconv.Atoi(from); err == nil && n >= k {
				price = money(prices[i])
			}
		}
		q := decimal.NewFromInt(int64(n))
		return fixed.Mul(wanted).Div(q).Add(price.Mul(wanted)).Add(rate.Mul(price).Mul(q).Div(decimal.NewFromInt(2))), true
	}
}
