//go:build !pin

package calls

import (
	"fmt"

	"badgewright/sizing/demand"
	"badgewright/sizing/unit"
	"badgewright/wasm/wire"
)

// howMany says how many pieces to order.
func howMany(_ *Session, _ Job, ask wire.DemandAsk) (Reply, error) {
	groups := [][]demand.VersionGuess{ask.Versions}
	if ask.Apart && len(ask.Versions) > 0 {
		groups = nil
		for i := range ask.Versions {
			groups = append(groups, ask.Versions[i:i+1])
		}
	}
	answer := wire.Demand{Answers: []demand.HowMany{}}
	var faults unit.Faults
	for i, g := range groups {
		b, f, err := billsOf(ask.Bill, i, ask.Stake.MinorDigits, "bill")
		if err != nil {
			return Reply{}, err
		}
		if len(f) > 0 {
			faults = f
			break
		}
		q := demand.Question{Versions: g, Stake: ask.Stake, Bill: b.bill, Most: usualMost(ask.Most), Breaks: b.breaks}
		q.Look = append(append(q.Look, ask.Look...), reachable(b.breaks, q.Most)...)
		b.in(&q.Stake)
		a, f := demand.Ask(q)
		if a == nil {
			faults = append(faults, renumbered(f, len(groups) > 1, i)...)
			continue
		}
		answer.Answers = append(answer.Answers, *a)
	}
	if len(faults) > 0 {
		answer.Answers = []demand.HowMany{}
	}
	answer.Faults = faultsOf(faults)
	return Reply{Answer: answer}, nil
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
func renumbered(f unit.Faults, apart bool, i int) unit.Faults {
	if !apart {
		return f
	}
	const first = "versions[0]"
	var out unit.Faults
	for _, x := range f {
		if len(x.Field) > len(first) && x.Field[:len(first)] == first {
			x.Field = fmt.Sprintf("versions[%d]%s", i, x.Field[len(first):])
		} else if i > 0 {
			continue
		}
		out = append(out, x)
	}
	return out
}

// presale says how many paid pre-orders cover the bill.
func presale(_ *Session, _ Job, ask wire.PresaleAsk) (Reply, error) {
	b, faults, err := billsOf(ask.Bill, 0, ask.Stake.MinorDigits, "bill")
	if err != nil {
		return Reply{}, err
	}
	p := demand.Presale{Name: ask.Name, Stake: ask.Stake, Bill: b.bill, Most: usualMost(ask.Most), Guess: ask.Guess}
	b.in(&p.Stake)
	for i, g := range ask.Goals {
		gb, f, err := billsOf(g.Bill, 0, p.Stake.MinorDigits, fmt.Sprintf("goals[%d].bill", i))
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
