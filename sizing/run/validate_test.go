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
		"currency":          func(l *PriceList) { l.Currency = "€" },
		"minorDigits":       func(l *PriceList) { l.MinorDigits = -1 },
		"die":               func(l *PriceList) { l.Die = money("-0.01") },
		"shipping":          func(l *PriceList) { l.Shipping = money("3200000000") },
		"secondPost":        func(l *PriceList) { l.SecondPost = money("-1") },
		"backStamp":         func(l *PriceList) { l.BackStamp = money("-1") },
		"sizes":             func(l *PriceList) { l.Sizes = nil; l.Breaks = []Break{{From: 1}} },
		"sizes[1]":          func(l *PriceList) { l.Sizes[1] = 22 },
		"sizes[0]":          func(l *PriceList) { l.Sizes[0] = -22 },
		"sizeBy":            func(l *PriceList) { l.SizeBy = "width" },
		"breaks":            func(l *PriceList) { l.Breaks = nil },
		"breaks[0].from":    func(l *PriceList) { l.Breaks[0].From = 0 },
		"breaks[2].from":    func(l *PriceList) { l.Breaks[2].From = 40 },
		"breaks[1].from":    func(l *PriceList) { l.Breaks[1].From = 25 },
		"breaks[1].unit[0]": func(l *PriceList) { l.Breaks[1].Unit[0] = money("-2.30") },
		"breaks[3].unit[2]": func(l *PriceList) { l.Breaks[3].Unit[2] = money("0") },
		"breaks[6].unit[4]": func(l *PriceList) { l.Breaks[6].Unit = l.Breaks[6].Unit[:4] },
		"breaks[5].unit[5]": func(l *PriceList) { l.Breaks[5].Unit = append(l.Breaks[5].Unit, money("1")) },
		"included":          func(l *PriceList) { l.Included = -1 },
		"extraColour.rate":  func(l *PriceList) { l.ExtraColour.Rate = money("-0.1") },
		"extraColour.by":    func(l *PriceList) { l.ExtraColour.By = "" },
		"hard.rate":         func(l *PriceList) { l.Hard.Rate = money("1200") },
		"fancy.rate":        func(l *PriceList) { l.Fancy.Rate = money("-0.06") },
		"fancy.by":          func(l *PriceList) { l.Fancy = Charge{} },
		"printed.rate":      func(l *PriceList) { l.Printed = Charge{Rate: money("1001"), By: Percent} },
		"printed.by":        func(l *PriceList) { l.Printed.By = "colour" },
		"printSetUp":        func(l *PriceList) { l.PrintSetUp = money("100000000") },
		"minimum":           func(l *PriceList) { l.Minimum = -3 },
	} {
		assert.Equal(t, []string{cell}, cellsOf(change), cell)
	}
	assert.Empty(t, cellsOf(func(l *PriceList) {}))
	assert.Equal(t, []string{"minorDigits"}, cellsOf(func(l *PriceList) { l.Currency = "JPY" }))
}

func TestEveryBadCellIsNamedAtOnce(t *testing.T) {
	cells := cellsOf(func(l *PriceList) {
		l.Die = money("-1")
		l.Sizes = []unit.MM{38, 30, 22, 45, 60}
		l.Breaks[4].Unit[1] = money("-1")
		l.Minimum = -1
	})
	assert.Equal(t, []string{"die", "sizes[1]", "sizes[2]", "breaks[4].unit[1]", "minimum"}, cells)
}
