package days

import (
	"fmt"

	"github.com/shopspring/decimal"

	"badgewright/sizing/unit"
)

// compare works out every delivery choice, and finds the cheapest that makes
// the launch day, or the first ready where no price is known; ties go to the one
// that is ready first.
func (p *plan) compare(c *Calendar) {
	best := Day(0)
	base := max(p.Way, 0)
	for i, w := range p.Ways {
		_, after, ok := p.forward(p.from(), i)
		if !ok {
			c.Ways = append(c.Ways, WayRow{Name: w.Name, Says: "never ready: there are not enough working days"})
			continue
		}
		saves := decimal.Zero
		if !p.Unpriced {
			saves = p.Ways[base].Total.Sub(w.Total)
		}
		r := WayRow{Name: w.Name, Ready: after.Date(), Saves: saves, Says: "ready " + after.Says()}
		if p.has.launch {
			_, slack, _ := p.back(p.launch, i)
			r.Makes, r.Keeps = after <= p.launch, after <= slack.first
			r.Says += ", " + p.makes(r)
		}
		r.Says += p.against(saves, p.Ways[base].Name)
		c.Ways = append(c.Ways, r)
		if r.Makes && (c.Best < 0 || p.better(w, after, p.Ways[c.Best], best)) {
			c.Best, best = i, after
		}
	}
	c.BestSays = p.bestWords(c)
}

func (p *plan) better(w DeliveryWay, ready Day, than DeliveryWay, thanReady Day) bool {
	if p.Unpriced || w.Total.Equal(than.Total) {
		return ready < thanReady
	}
	return w.Total.LessThan(than.Total)
}

// against says what a way saves, or costs more than another.
func (p *plan) against(saves decimal.Decimal, other string) string {
	switch {
	case p.Unpriced:
		return ""
	case saves.IsPositive():
		return fmt.Sprintf(", %s less than %s", unit.Money(saves, p.Currency, p.MinorDigits), other)
	case saves.IsNegative():
		return fmt.Sprintf(", %s more than %s", unit.Money(saves.Neg(), p.Currency, p.MinorDigits), other)
	}
	return ""
}

func (p *plan) makes(r WayRow) string {
	switch {
	case r.Keeps:
		return "makes the day with all its slack"
	case r.Makes:
		return "makes the day, but eats into the slack"
	}
	return "misses the day"
}

func (p *plan) bestWords(c *Calendar) string {
	switch {
	case len(p.Ways) == 0 || !p.has.launch || p.Unpriced && c.Best >= 0:
		return ""
	case c.Best < 0:
		return fmt.Sprintf("No delivery choice makes %s.", p.launch.Says())
	}
	dearest := c.Best
	for i, w := range p.Ways {
		if w.Total.GreaterThan(p.Ways[dearest].Total) {
			dearest = i
		}
	}
	saves := p.Ways[dearest].Total.Sub(p.Ways[c.Best].Total)
	if saves.IsZero() {
		return fmt.Sprintf("%s makes %s; no other that does costs less.", p.Ways[c.Best].Name, p.launch.Says())
	}
	return fmt.Sprintf("%s still makes %s and saves %s against %s.", p.Ways[c.Best].Name, p.launch.Says(), unit.Money(saves, p.Currency, p.MinorDigits), p.Ways[dearest].Name)
}
