package run

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"badgewright/sizing/unit"
)

// cellsOf lists the cells complained of after one change to a good list.
func cellsOf(change func(*PriceList)) []string {
	l := Default()
	change(&l)
	var cells []string
	for _, c := range l.Validate() {
		cells = append(cells, c.Cell)
	}
	return cells
}

func TestBadCellsAreNamed(t *testing.T) {
	for cell, change := range map[string]func(*PriceList){
		"currency":                           func(l *PriceList) { l.Currency = "€" },
		"minorDigits":                        func(l *PriceList) { l.MinorDigits = -1 },
		"die.flat":                           func(l *PriceList) { l.Die.Flat = money("-0.01") },
		"shipping.flat":                      func(l *PriceList) { l.Shipping.Flat = money("3200000000") },
		"back.post.rate":                     func(l *PriceList) { l.Back.Post = apiece("-1") },
		"back.stamp.rate":                    func(l *PriceList) { l.Back.Stamp = apiece("-1") },
		"pieces.sizes":                       func(l *PriceList) { l.Pieces.Sizes = nil; l.Pieces.Breaks = []Break{{From: 1}} },
		"pieces.sizes[1]":                    func(l *PriceList) { l.Pieces.Sizes[1] = 22 },
		"pieces.sizes[0]":                    func(l *PriceList) { l.Pieces.Sizes[0] = -22 },
		"pieces.sizeBy":                      func(l *PriceList) { l.Pieces.SizeBy = "width" },
		"pieces.breaks":                      func(l *PriceList) { l.Pieces.Breaks = nil },
		"pieces.breaks[0].from":              func(l *PriceList) { l.Pieces.Breaks[0].From = 0 },
		"pieces.breaks[2].from":              func(l *PriceList) { l.Pieces.Breaks[2].From = 40 },
		"pieces.breaks[1].from":              func(l *PriceList) { l.Pieces.Breaks[1].From = 25 },
		"pieces.breaks[1].unit[0]":           func(l *PriceList) { l.Pieces.Breaks[1].Unit[0] = money("-2.30") },
		"pieces.breaks[3].unit[2]":           func(l *PriceList) { l.Pieces.Breaks[3].Unit[2] = money("0") },
		"pieces.breaks[6].unit[4]":           func(l *PriceList) { l.Pieces.Breaks[6].Unit = l.Pieces.Breaks[6].Unit[:4] },
		"pieces.breaks[5].unit[5]":           func(l *PriceList) { l.Pieces.Breaks[5].Unit = append(l.Pieces.Breaks[5].Unit, money("1")) },
		"colours.included":                   func(l *PriceList) { l.Colours.Included = -1 },
		"colours.further.rate":               func(l *PriceList) { l.Colours.Further.Rate = money("-0.1") },
		"colours.further.by":                 func(l *PriceList) { l.Colours.Further.By = "" },
		"colours.fill.listed[0].charge.rate": func(l *PriceList) { l.Colours.Fill.Listed[0].Charge.Rate = money("1200") },
		"colours.fancy.others.rate":          func(l *PriceList) { l.Colours.Fancy.Others.Rate = money("-0.06") },
		"colours.fancy.others.by":            func(l *PriceList) { l.Colours.Fancy.Others.By = "" },
		"colours.printed.rate":               func(l *PriceList) { l.Colours.Printed = Charge{Rate: money("1001"), By: Percent} },
		"colours.printed.by":                 func(l *PriceList) { l.Colours.Printed.By = "colour" },
		"colours.printSetUp":                 func(l *PriceList) { l.Colours.PrintSetUp = money("100000000") },
		"least.design":                       func(l *PriceList) { l.Least.Design = -3 },
	} {
		assert.Equal(t, []string{cell}, cellsOf(change), cell)
	}
	assert.Empty(t, cellsOf(func(l *PriceList) {}))
	assert.Equal(t, []string{"minorDigits"}, cellsOf(func(l *PriceList) { l.Currency = "JPY" }))
}

func TestEveryBadCellIsNamedAtOnce(t *testing.T) {
	cells := cellsOf(func(l *PriceList) {
		l.Die.Flat = money("-1")
		l.Pieces.Sizes = []unit.MM{38, 30, 22, 45, 60}
		l.Pieces.Breaks[4].Unit[1] = money("-1")
		l.Least.Design = -1
	})
	assert.Equal(t, []string{"pieces.sizes[1]", "pieces.sizes[2]", "pieces.breaks[4].unit[1]", "least.design", "die.flat"}, cells)
}
