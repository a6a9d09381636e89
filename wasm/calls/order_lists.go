//go:build !pin

package calls

import (
	"fmt"
	"strings"

	"github.com/shopspring/decimal"

	"badgewright/reduce"
	"badgewright/sizing/deduce"
	"badgewright/sizing/pricefile"
	"badgewright/sizing/run"
	"badgewright/sizing/unit"
	"badgewright/wasm/wire"
)

// listCheck says what is wrong in a price list, cell by cell.
func listCheck(_ *Session, _ Job, ask wire.ListCheckAsk) (Reply, error) {
	return Reply{Answer: wire.ListCheck{Cells: ask.List.Validate()}}, nil
}

// readPriceFile reads a price list, or a pasted block of one.
func readPriceFile(_ *Session, job Job, ask wire.PriceFileAsk) (Reply, error) {
	data := []byte(ask.Text)
	if ask.Text == "" {
		data = job.Bytes
	}
	got, err := pricefile.Read(data, ask.Into)
	if err != nil {
		return Reply{}, err
	}
	answer := wire.PriceFileRead{List: got.List.Copy(), Problems: got.Problems, Notes: got.Notes, Words: fileWords(got)}
	if answer.Problems == nil {
		answer.Problems = []pricefile.Problem{}
	}
	if answer.Notes == nil {
		answer.Notes = []string{}
	}
	return Reply{Answer: answer}, nil
}

func fileWords(got *pricefile.Reading) string {
	p := &got.List.Pieces
	read := fmt.Sprintf("%d quantities by %d sizes read", len(p.Breaks), len(p.Sizes))
	switch n := len(got.Problems); n {
	case 0:
		return read + "; every cell is in order."
	case 1:
		return read + "; one cell has to be looked at."
	default:
		return fmt.Sprintf("%s; %d cells have to be looked at.", read, n)
	}
}

// writePriceFile writes a price list as CSV.
func writePriceFile(_ *Session, _ Job, ask wire.PriceFileWriteAsk) (Reply, error) {
	if cells := ask.List.Validate(); len(cells) > 0 {
		return Reply{}, &reduce.Refusal{What: cells[0].What, Do: "Correct it in the price list, then save it."}
	}
	name := plainFileName(ask.List.Name, "Price list")
	return Reply{Answer: wire.PriceFileWritten{FileName: name + ".csv"}, Bytes: pricefile.Write(ask.List)}, nil
}

// newList gives a price list of which nothing is known but name and currency.
func newList(_ *Session, _ Job, ask wire.NewListAsk) (Reply, error) {
	code, err := unit.ParseCurrency(ask.Currency)
	if err != nil {
		return Reply{}, err
	}
	l := pricefile.Blank()
	l.Name, l.Currency = strings.TrimSpace(ask.Name), code
	l.MinorDigits, _ = unit.MinorDigits(code)
	taken := map[string]bool{}
	for _, other := range ask.Project.Order.PriceLists {
		taken[other.ID] = true
	}
	for n := 1; l.ID == "" || taken[l.ID]; n++ {
		l.ID = fmt.Sprintf("list-%d", n)
	}
	return Reply{Answer: wire.NewList{List: l.Copy()}}, nil
}

// fromQuotes proposes a price list from plain quotes.
func fromQuotes(_ *Session, _ Job, ask wire.FromQuotesAsk) (Reply, error) {
	got, err := deduce.From(ask.Text, ask.Base)
	if err != nil {
		return Reply{}, err
	}
	return Reply{Answer: *got}, nil
}

// orderQuote prices an order by a list that may leave entries open.
func orderQuote(_ *Session, _ Job, ask wire.OrderQuoteAsk) (Reply, error) {
	q, err := run.Known(ask.List, ask.Order)
	return Reply{Answer: q}, err
}

// makers compares price lists over the quantity of one item of an order.
func makers(_ *Session, _ Job, ask wire.MakersAsk) (Reply, error) {
	if len(ask.Lists) == 0 {
		return Reply{}, &reduce.Refusal{What: "There is no price list to compare.", Do: "Add one under Order."}
	}
	into := run.Exchange{Currency: ask.Currency}
	if into.Currency == "" {
		into.Currency = ask.Lists[0].Currency
	}
	into.MinorDigits, _ = unit.MinorDigits(into.Currency)
	chosen, err := withRates(&ask, into.Currency)
	if err != nil {
		return Reply{}, err
	}
	c, err := run.Compare(chosen, ask.Order, ask.Item, ask.UpTo, into)
	return Reply{Answer: c}, err
}

// withRates gives each list its rate to the currency compared in.
func withRates(ask *wire.MakersAsk, into string) ([]run.Maker, error) {
	var all []run.Maker
	for _, l := range ask.Lists {
		rate, ok := decimal.NewFromInt(1), l.Currency == into
		for _, r := range ask.Rates {
			if !ok && r.Currency == l.Currency {
				rate, ok = r.Rate, true
			}
		}
		if !ok {
			return nil, &reduce.Refusal{What: fmt.Sprintf("%s counts in %s, and there is no rate to %s.", l.Name, l.Currency, into), Do: "Type the rate and its day."}
		}
		all = append(all, run.Maker{List: l, Rate: rate})
	}
	return all, nil
}
