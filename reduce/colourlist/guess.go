package colourlist

import (
	"math"
	"strconv"
	"strings"
)

// enough is the share of a column's filled cells that must read as a colour
// for it to be taken for one; the rest are mistakes to be told by line.
const enough = 0.8

// look is how many lines a guess looks at.
const look = 60

func columnNumber(i int) string { return "column " + strconv.Itoa(i+1) }

// column is what one column's cells look like, as shares of those filled.
type column struct {
	filled                       int
	marked, bare, letter         float64 // #1a6b8f, 1a6b8f; bare with a letter in it
	numeric, channel, threeInOne float64 // a number; one from 0 to 255; three numbers
}

func columnOf(recs []record, i int) column {
	var c column
	for k := range recs[:min(len(recs), look)] {
		s := recs[k].cell(i)
		if s == "" {
			continue
		}
		c.filled++
		_, bad := hexOf(s)
		switch {
		case bad == nil && strings.HasPrefix(s, "#"):
			c.marked++
		case bad == nil:
			c.bare++
			if strings.ContainsAny(strings.ToLower(s), "abcdef") {
				c.letter++
			}
		}
		if v, ok := number(s); ok {
			c.numeric++
			if v == math.Trunc(v) && v >= 0 && v <= 255 {
				c.channel++
			}
		}
		if _, bad := rgbOf(triple(s)); bad == nil && len(s) > 4 {
			c.threeInOne++
		}
	}
	n := float64(max(c.filled, 1))
	c.marked, c.bare, c.numeric, c.channel, c.threeInOne = c.marked/n, c.bare/n, c.numeric/n, c.channel/n, c.threeInOne/n
	return c
}

// guessColour finds the colour among columns that no header names. Codes are
// often six digits, so a column of bare digits is a colour only when some hold
// a letter.
func (c *columns) guessColour(recs []record) bool {
	cols := make([]column, widest(recs))
	for i := range cols {
		cols[i] = columnOf(recs, i)
	}
	tests := []func(column) bool{
		func(k column) bool { return k.marked >= enough },
		func(k column) bool { return k.marked+k.bare >= enough && k.letter > 0 },
		func(k column) bool { return k.threeInOne >= enough },
	}
	for t, passes := range tests {
		for i, k := range cols {
			if k.filled > 0 && !c.taken(i) && passes(k) {
				c.at[[]field{hex, hex, rgb}[t]] = i
				return true
			}
		}
	}
	return c.guessThree(cols)
}

// guessThree takes the last run of three numbers in a row.
func (c *columns) guessThree(cols []column) bool {
	for i := len(cols) - 3; i >= 0; i-- {
		numeric, channel := true, true
		for k := i; k < i+3; k++ {
			numeric = numeric && cols[k].filled > 0 && cols[k].numeric >= enough && !c.taken(k)
			channel = channel && cols[k].channel >= enough
		}
		if !numeric {
			continue
		}
		three := [3]field{labL, labA, labB}
		if channel {
			three = [3]field{red, green, blue}
		}
		for k, f := range three {
			c.at[f] = i + k
		}
		return true
	}
	return false
}

// guessNames takes the first column that is left for the code, the next for the name.
func (c *columns) guessNames(recs []record) {
	for i := range widest(recs) {
		if c.taken(i) || columnOf(recs, i).filled == 0 {
			continue
		}
		if c.at[code] < 0 {
			c.at[code] = i
		} else if c.at[name] < 0 {
			c.at[name] = i
		}
	}
}

func (c *columns) taken(i int) bool {
	for _, at := range c.at {
		if at == i {
			return true
		}
	}
	return false
}

func widest(recs []record) int {
	n := 0
	for i := range recs[:min(len(recs), look)] {
		n = max(n, len(recs[i].cells))
	}
	return n
}
