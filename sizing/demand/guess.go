package demand

import (
	"fmt"
	"math"

	"badgewright/sizing/unit"
)

// GuessKind says how a person guesses at demand.
type GuessKind string

// The ways to guess.
const (
	ByThree  GuessKind = "three"  // the least, the likeliest and the most: triangular, made discrete
	ByOrders GuessKind = "orders" // from the pre-orders so far and the days left: gamma-Poisson
)

// DemandPrior is what was thought before the first order came: as if so many orders
// had come in so many days. It is the shape and the rate of a gamma
// distribution of the orders a day.
type DemandPrior struct {
	Orders float64 `json:"orders"` // above 0
	Days   float64 `json:"days"`   // above 0
}

// Guess is what a person thinks of demand.
type Guess struct {
	Kind GuessKind `json:"kind"`
	// Low, Likely and High are for ByThree; all numbers from Low to High can happen.
	Low    int `json:"low"`
	Likely int `json:"likely"`
	High   int `json:"high"`
	// Orders have come in DaysGone days, DaysLeft are left: for ByOrders.
	Orders   int         `json:"orders"`
	DaysGone int         `json:"daysGone"`
	DaysLeft int         `json:"daysLeft"`
	Prior    DemandPrior `json:"prior"`
}

// UsualPrior weighs as little as a prior can that still names an order a day
// (this tool's choice).
func UsualPrior() DemandPrior { return DemandPrior{Orders: 1, Days: 1} }

// UsualGuess is invented figures to start from: no pre-sale yet, and a wide
// range round the smaller orders that are common (this tool's choice).
func UsualGuess() Guess {
	return Guess{Kind: ByThree, Low: 30, Likely: 80, High: 160, DaysLeft: 14, Prior: UsualPrior()}
}

// Bounds past which a figure is a slip of the keys (this tool's choice).
const (
	MostWanted = 20_000
	mostDays   = 730
	leastPrior = 0.01
	mostPrior  = 10_000
)

// Distribution reads a guess; faults come back instead where it cannot be one.
func (g Guess) Distribution(field string) (Distribution, unit.Faults) {
	var f unit.Faults
	switch g.Kind {
	case ByThree:
		g.checkThree(&f, field)
	case ByOrders:
		g.checkOrders(&f, field)
	default:
		f.Say(field+".kind", "Demand is guessed by three numbers or from orders so far, not by %q.", string(g.Kind))
	}
	if len(f) > 0 {
		return Distribution{}, f
	}
	if g.Kind == ByThree {
		return Triangular(g.Low, g.Likely, g.High), f
	}
	rate := g.Prior.Days + float64(g.DaysGone)
	d := negativeBinomial(g.Prior.Orders+float64(g.Orders), rate, float64(g.DaysLeft))
	if g.Orders+d.Last() > MostWanted {
		f.Say(field+".daysLeft", "%d orders in %d days let expect more than this reckons with, %d; shorten the days left.", g.Orders, g.DaysGone, MostWanted)
		return Distribution{}, f
	}
	return d.shifted(g.Orders), f
}

func (g Guess) checkThree(f *unit.Faults, field string) {
	f.Whole(field+".low", "The least that may be wanted", g.Low, 0, MostWanted)
	f.Whole(field+".likely", "The likeliest number", g.Likely, 0, MostWanted)
	f.Whole(field+".high", "The most that may be wanted", g.High, 0, MostWanted)
	if g.Likely < g.Low {
		f.Say(field+".likely", "The likeliest number, %d, is below the least, %d.", g.Likely, g.Low)
	}
	if g.High < g.Likely {
		f.Say(field+".high", "The most that may be wanted, %d, is below the likeliest number, %d.", g.High, g.Likely)
	}
}

func (g Guess) checkOrders(f *unit.Faults, field string) {
	f.Whole(field+".orders", "The number of orders so far", g.Orders, 0, MostWanted)
	f.Whole(field+".daysGone", "The number of days gone", g.DaysGone, 0, mostDays)
	f.Whole(field+".daysLeft", "The number of days left", g.DaysLeft, 0, mostDays)
	if g.Orders > 0 && g.DaysGone == 0 {
		f.Say(field+".daysGone", "%d orders cannot have come in 0 days; count the day that is running.", g.Orders)
	}
	for _, p := range []struct {
		at, name string
		v        float64
	}{{".prior.orders", "orders", g.Prior.Orders}, {".prior.days", "days", g.Prior.Days}} {
		if !(p.v >= leastPrior && p.v <= mostPrior) {
			f.Say(field+p.at, "The %s thought of before the first order run from %g to %d, not %g.", p.name, leastPrior, mostPrior, p.v)
		}
	}
}

// Names says what the distribution is called.
func (g Guess) Names() string {
	if g.Kind == ByThree {
		return fmt.Sprintf("triangular distribution from %d over %d to %d, made discrete", g.Low, g.Likely, g.High)
	}
	return fmt.Sprintf("gamma-Poisson distribution over %d days left; the prior: as if %g orders had come in %g days; orders are taken to keep coming at one rate", g.DaysLeft, g.Prior.Orders, g.Prior.Days)
}

// Triangular gives every whole number from low to high a weight that rises in
// even steps up to the likeliest and falls in even steps behind it; one below
// low and one above high would have none. Weights are whole numbers.
func Triangular(low, likely, high int) Distribution {
	up, down := likely-low+1, high+1-likely
	weights := make([]float64, high-low+1)
	for i := range weights {
		n := low + i
		if n <= likely {
			weights[i] = float64((n - low + 1) * down)
		} else {
			weights[i] = float64((high + 1 - n) * up)
		}
	}
	return weighted(low, weights)
}

// tail is how little a number may weigh against the likeliest and still count:
// less cannot be seen in any sum of doubles.
const tail = 1e-18

// negativeBinomial is how many orders come in some days when the orders a day
// are gamma distributed with a shape and a rate (in days): the Poisson mixture.
// Weights are found from the likeliest number outward, one from the next by
// plain arithmetic, so that no power or gamma function is needed.
func negativeBinomial(shape, rate, days float64) Distribution {
	if days == 0 {
		return weighted(0, []float64{1})
	}
	q := days / (rate + days)
	mode := 0
	if shape > 1 {
		mode = int(math.Floor(float64((shape-1)*days) / rate))
	}
	ratio := func(k int) float64 { return float64((shape+float64(k))*q) / float64(k+1) } // weight of k+1 by that of k
	below := []float64{}
	for k, w := mode, 1.0; k > 0 && w > tail; k-- {
		w /= ratio(k - 1)
		below = append(below, w)
	}
	weights := make([]float64, 0, 2*len(below)+2)
	for i := len(below) - 1; i >= 0; i-- {
		weights = append(weights, below[i])
	}
	for k, w := mode, 1.0; w > tail && len(weights) <= 2*MostWanted; k++ {
		weights = append(weights, w)
		w *= ratio(k)
	}
	return weighted(mode-len(below), weights)
}

// shifted adds a number that is wanted in any case.
func (d Distribution) shifted(n int) Distribution {
	s := Distribution{first: d.first + n, cum: d.cum, cumD: make([]float64, len(d.cumD))}
	for i := range s.cumD {
		s.cumD[i] = d.cumD[i] + float64(float64(n)*d.cum[i])
	}
	return s
}
