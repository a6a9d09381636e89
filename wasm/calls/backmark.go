//go:build !pin

package calls

import (
	"fmt"

	"badgewright/sizing"
	"badgewright/wasm/wire"
)

// backMark reads the artist's own mark from the pixels that came along.
func backMark(_ *Session, job Job, ask wire.BackMarkAsk) (Reply, error) {
	pix, err := pixels(job.Bytes, ask.W, ask.H)
	if err != nil {
		return Reply{}, err
	}
	m, err := sizing.ReadMark(pix, ask.W, ask.H)
	if err != nil {
		return Reply{}, err
	}
	return Reply{Answer: wire.BackMark{Mark: m, Words: fmt.Sprintf("Your mark is read, %d by %d cells.", m.W, m.H)}}, nil
}
