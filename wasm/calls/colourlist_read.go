//go:build !pin

package calls

import (
	"fmt"

	"badgewright/reduce/colourlist"
	"badgewright/wasm/wire"
)

// readColourList reads a maker's colour list from the bytes that came along.
func readColourList(_ *Session, job Job, ask wire.ColourListAsk) (Reply, error) {
	r, err := colourlist.Read(ask.FileName, job.Bytes, ask.White)
	if err != nil {
		return Reply{}, err
	}
	return Reply{Answer: wire.ColourListRead{
		List:     colourlist.ColourList{Name: r.List.Name, Entries: listed(r.List.Entries)},
		Problems: listed(r.Problems), More: r.More, Notes: listed(r.Notes),
		NeedsWhite: r.NeedsWhite, Words: readWords(r),
	}}, nil
}

func readWords(r *colourlist.Reading) string {
	n, out := len(r.List.Entries), r.More
	for _, p := range r.Problems {
		if !p.Kept {
			out++
		}
	}
	switch {
	case r.NeedsWhite:
		return "Its colours are L, a and b, and nothing says for which white."
	case n == 0:
		return "No line of it could be read."
	case out == 0:
		return counted(n, "colour") + " read."
	}
	return fmt.Sprintf("%s read, %s left out.", counted(n, "colour"), counted(out, "line"))
}
