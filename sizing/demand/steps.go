package demand

import (
	"fmt"

	"github.com/shopspring/decimal"

	"badgewright/sizing/unit"
)

// BillStep is one step of a bill as a person types it: from so many pieces on,
// Each for every piece and Once in all, the die and the carriage among it.
type BillStep struct {
	From int             `json:"from"`
	Each decimal.Decimal `json:"each"`
	Once decimal.Decimal `json:"once"`
}

const mostSteps = 40

// StepBill makes a bill of steps, rounded once to minor units; breaks are the
// numbers at which it may fall. Below the first step nothing can be ordered.
func StepBill(steps []BillStep, digits int, field string) (bill Bill, breaks []int, f unit.Faults) {
	if len(steps) == 0 || len(steps) > mostSteps {
		f.Say(field, "A bill has 1 to %d steps, not %d.", mostSteps, len(steps))
		return nil, nil, f
	}
	before := 0
	for i, s := range steps {
		at := fmt.Sprintf("%s[%d]", field, i)
		f.Whole(at+".from", "The number a step starts from", s.From, 1, MostWanted)
		if i > 0 && s.From <= before {
			f.Say(at+".from", "A step from %d does not come after the one from %d; let them rise.", s.From, before)
		}
		before = s.From
		breaks = append(breaks, s.From)
		checkRate(&f, at+".each", "The price of a piece", s.Each)
		checkRate(&f, at+".once", "What is paid once", s.Once)
	}
	return func(n int) (decimal.Decimal, bool) {
		for i := len(steps) - 1; i >= 0; i-- {
			if s := steps[i]; n >= s.From {
				return unit.RoundMoney(s.Each.Mul(decimal.NewFromInt(int64(n))).Add(s.Once), digits), true
			}
		}
		return decimal.Zero, false
	}, breaks, f
}

func checkRate(f *unit.Faults, field, name string, d decimal.Decimal) {
	switch {
	case d.IsNegative():
		f.Say(field, "%s is %s; it cannot be below 0.", name, d)
	case d.GreaterThanOrEqual(absurd):
		f.Say(field, "%s is %s, which is too much; look for a missing decimal point.", name, d)
	}
}
