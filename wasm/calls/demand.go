//go:build !pin

package calls

import (
	"fmt"
	"strings"

	"github.com/shopspring/decimal"

	"badgewright/sizing/demand"
	"badgewright/sizing/run"
	"badgewright/sizing/unit"
	"badgewright/wasm/wire"
)

// howMany says how many pieces to order.
func howMany(_ *Session, _ Job, ask wire.DemandAsk) (Reply, error) {
	answer := wire.Demand{Answers: []demand.HowMany{}}
	var faults unit.Faults
	var err error
	if ask.Apart && len(ask.Versions) > 1 {
		faults, err = oneByOne(&ask, &answer)
	} else {
		faults, err = together(&ask, &answer)
	}
	if err != nil {
		return Reply{}, err
	}
	if len(faults) > 0 {
		answer.Answers, answer.Says = []demand.HowMany{}, ""
	}
	answer.Faults = faultsOf(faults)
	return Reply{Answer: answer}, nil
}

// asking is the question for some of the versions.
func asking(ask *wire.DemandAsk, versions []demand.VersionGuess, b bills) demand.Question {
	q := demand.Question{Versions: versions, Stake: ask.Stake, Bill: b.bill, Most: usualMost(ask.Most), Breaks: b.breaks}
	q.Look = append(append(q.Look, ask.Look...), reachable(b.breaks, q.Most)...)
	b.in(&q.Stake)
	return q
}

// together asks for all versions as one order.
func together(ask *wire.DemandAsk, answer *wire.Demand) (unit.Faults, error) {
	of := ask.Bill
	priced := len(of.Steps) == 0 && of.Priced != nil
	var q demand.Question
	if priced && len(ask.Versions) > 1 {
		items, f := itemsOf(of, len(ask.Versions), "bill")
		if len(f) > 0 {
			return f, nil
		}
		o := orderingOf(of.Priced, ask.Stake.Currency)
		b, err := o.bills(items)
		if err != nil {
			return nil, err
		}
		b.breaks = o.breaks(items[:1])
		q = asking(ask, ask.Versions, b)
		q.Split = o.split(items)
		if ask.Most == 0 {
			q.Most = reach(ask.Versions, o.last()*len(items))
		}
	} else {
		b, f, err := billsOf(of, &ask.Stake, "bill")
		if len(f) > 0 || err != nil {
			return f, err
		}
		q = asking(ask, ask.Versions, b)
	}
	a, f := demand.Ask(q)
	if a != nil {
		answer.Answers, answer.Says = append(answer.Answers, *a), a.Says
	}
	return f, nil
}

// oneByOne asks for one version after another, each beside those that were found
// before it: they have paid for the die that they share, and for what is
// charged once an order.
func oneByOne(ask *wire.DemandAsk, answer *wire.Demand) (unit.Faults, error) {
	var faults unit.Faults
	of := ask.Bill
	priced := len(of.Steps) == 0 && of.Priced != nil
	var items []run.Item
	if priced {
		if items, faults = itemsOf(of, len(ask.Versions), "bill"); len(faults) > 0 {
			return faults, nil
		}
	}
	var o *ordering
	if priced {
		o = orderingOf(of.Priced, ask.Stake.Currency)
	}
	var stake demand.Stake
	for i := range ask.Versions {
		var b bills
		var f unit.Faults
		var err error
		if priced {
			b, err = o.bills(items[i : i+1])
		} else {
			b, f, err = billsOf(of, &ask.Stake, "bill")
		}
		if len(f) > 0 || err != nil {
			return f, err
		}
		q := asking(ask, ask.Versions[i:i+1], b)
		stake = q.Stake
		a, f := demand.Ask(q)
		if a == nil {
			faults = append(faults, renumbered(f, i)...)
			continue
		}
		answer.Answers = append(answer.Answers, *a)
		if n := a.Best.Quantity; priced && n > 0 {
			o.beside = append(o.beside, with(items[i:i+1], []int{n})...)
		}
	}
	answer.Says = apartSays(answer.Answers, stake)
	return faults, nil
}

// apartSays is the answers of several versions in a sentence.
func apartSays(all []demand.HowMany, stake demand.Stake) string {
	sum := decimal.Zero
	var each []string
	for _, a := range all {
		sum = sum.Add(a.Best.Left)
		for _, v := range a.Best.Versions {
			each = append(each, fmt.Sprintf("%d of %s", v.Quantity, v.Name))
		}
	}
	return fmt.Sprintf("%s leave most on average: about %s in all.", enumerated(each), unit.Money(sum, stake.Currency, stake.MinorDigits))
}

// enumerated joins words with commas and a last "and".
func enumerated(all []string) string {
	if len(all) < 2 {
		return strings.Join(all, "")
	}
	return strings.Join(all[:len(all)-1], ", ") + " and " + all[len(all)-1]
}

// reach is how far it is worth looking where every number has to be tried: past
// the last price break, and well past all that may be wanted, a further piece
// only costs.
func reach(versions []demand.VersionGuess, last int) int {
	wanted := 0
	for _, v := range versions {
		if d, f := v.Guess.Distribution(""); len(f) == 0 {
			wanted += d.Quantile(0.999)
		}
	}
	return min(demand.Most, max(last, 2*wanted))
}

func usualMost(most int) int {
	if most == 0 {
		return demand.Most
	}
	return most
}

// reachable leaves out what is below 1 or above the most.
func reachable(all []int, most int) []int {
	var out []int
	for _, n := range all {
		if n >= 1 && n <= most {
			out = append(out, n)
		}
	}
	return out
}

// renumbered names the version that was asked about by itself as the page has
// it. Faults that are not a version's are told once.
func renumbered(f unit.Faults, i int) unit.Faults {
	const first = "versions[0]"
	var out unit.Faults
	for _, x := range f {
		if rest, ok := strings.CutPrefix(x.Field, first); ok {
			x.Field = fmt.Sprintf("versions[%d]%s", i, rest)
		} else if i > 0 {
			continue
		}
		out = append(out, x)
	}
	return out
}

// presale says how many paid pre-orders cover the bill.
func presale(_ *Session, _ Job, ask wire.PresaleAsk) (Reply, error) {
	b, faults, err := billsOf(ask.Bill, &ask.Stake, "bill")
	if err != nil {
		return Reply{}, err
	}
	p := demand.Presale{Name: ask.Name, Stake: ask.Stake, Bill: b.bill, Most: usualMost(ask.Most), Guess: ask.Guess}
	b.in(&p.Stake)
	for i, g := range ask.Goals {
		gb, f, err := billsOf(g.Bill, &p.Stake, fmt.Sprintf("goals[%d].bill", i))
		if err != nil {
			return Reply{}, err
		}
		if gb.currency != "" && gb.currency != p.Stake.Currency {
			f.Say(fmt.Sprintf("goals[%d].bill", i), "The bill of %s is in %s, that of the pre-sale in %s; use one.", g.Name, gb.currency, p.Stake.Currency)
		}
		faults = append(faults, f...)
		p.Goals = append(p.Goals, demand.Goal{Name: g.Name, Quantity: g.Quantity, Bill: gb.bill})
	}
	if len(faults) > 0 {
		return Reply{Answer: wire.Presale{Faults: faults}}, nil
	}
	goals, faults := demand.Cover(p)
	return Reply{Answer: wire.Presale{Faults: faultsOf(faults), Goals: goals}}, nil
}
