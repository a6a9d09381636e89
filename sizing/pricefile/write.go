package pricefile

import (
	"bytes"
	"encoding/csv"
	"fmt"

	"badgewright/sizing/run"
)

// Write writes a list as CSV after RFC 4180, so that Read gives it back.
func Write(l run.PriceList) []byte {
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	w.UseCRLF = true // RFC 4180, 2.1
	for _, name := range order {
		if name == "die" {
			writePieces(w, &l.Pieces)
		}
		for _, cells := range entries[name].get(&l) {
			_ = w.Write(append([]string{name}, cells...)) // a buffer does not fail
		}
	}
	w.Flush()
	return out.Bytes()
}

// writePieces writes the block of prices a piece.
func writePieces(w *csv.Writer, p *run.PiecePrices) {
	if len(p.Sizes) == 0 {
		return
	}
	head := []string{"pieces"}
	for _, m := range p.Sizes {
		head = append(head, "up to "+inMM(m))
	}
	_ = w.Write(head)
	for _, b := range p.Breaks {
		line := []string{fmt.Sprint(b.From)}
		for _, u := range b.Unit {
			line = append(line, u.String())
		}
		_ = w.Write(line)
	}
}
