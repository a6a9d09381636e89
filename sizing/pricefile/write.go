package pricefile

import (
	"fmt"

	"badgewright/sizing/csvfile"
	"badgewright/sizing/run"
)

// Write writes a list as CSV after RFC 4180, so that Read gives it back.
func Write(l run.PriceList) []byte {
	var rows [][]string
	for _, name := range order {
		if name == "die" {
			rows = append(rows, pieceRows(&l.Pieces)...)
		}
		for _, cells := range entries[name].get(&l) {
			rows = append(rows, append([]string{name}, cells...))
		}
	}
	return csvfile.Write(rows)
}

// pieceRows is the block of prices a piece.
func pieceRows(p *run.PiecePrices) [][]string {
	if len(p.Sizes) == 0 {
		return nil
	}
	head := []string{"pieces"}
	for _, m := range p.Sizes {
		head = append(head, "up to "+inMM(m))
	}
	rows := [][]string{head}
	for _, b := range p.Breaks {
		line := []string{fmt.Sprint(b.From)}
		for _, u := range b.Unit {
			line = append(line, u.String())
		}
		rows = append(rows, line)
	}
	return rows
}
