//go:build !pin

package calls

import (
	"fmt"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/proof"
	"badgewright/sizing/trace"
	"badgewright/wasm/wire"
)

// handed is a version as the pin's program struck it.
type handed struct {
	badge *sizing.Badge // its flats are in the version's colours
	wire.Struck
	curves *trace.Shapes // once asked for
	held   *proof.Asked  // for proofs, the same
}

// hand takes a version that the pin's program handed over.
func hand(s *Session, job Job, ask wire.Struck) (Reply, error) {
	sep, err := separationOf(&ask, job.Bytes)
	if err != nil {
		return Reply{}, err
	}
	b := &sizing.Badge{Sep: sep, Scale: ask.Check.Scale, Outline: ask.Check.Outline}
	s.second.handed.put(ask.Key, &handed{badge: b, Struck: ask})
	return Reply{Answer: wire.Hand{Key: ask.Key}}, nil
}

// handedAs finds a version by its key; one that was let go has to be handed
// over again.
func (s *Session) handedAs(key string) (*handed, error) {
	h, ok := s.second.handed.get(key)
	if !ok {
		return nil, errGone
	}
	return h, nil
}

// traced is the version in clean curves, found once.
func (h *handed) traced(p reduce.Progress) (*trace.Shapes, error) {
	if h.curves != nil {
		return h.curves, nil
	}
	sh, err := trace.Trace(h.badge, 0, p)
	if err == nil {
		h.curves = sh
	}
	return sh, err
}

// separationOf reads the rasters that came with a version.
func separationOf(k *wire.Struck, rasters []byte) (*reduce.Separation, error) {
	n, planes := k.W*k.H, 3
	if k.Built {
		planes = 4
	}
	if k.W <= 0 || k.H <= 0 || len(rasters) != planes*n {
		return nil, fmt.Errorf("calls: %d bytes are no %d rasters of %d by %d px", len(rasters), planes, k.W, k.H)
	}
	sep := &reduce.Separation{W: k.W, H: k.H, Labels: rasters[:n], Beside: rasters[n : 2*n], Cover: rasters[2*n : 3*n], Flats: k.Flats}
	for _, l := range rasters[:2*n] {
		if l != reduce.None && int(l) >= len(k.Flats) {
			return nil, fmt.Errorf("calls: a pixel of flat %d among %d", l, len(k.Flats))
		}
	}
	if k.Built {
		sep.Built = make([]bool, n)
		for i, b := range rasters[3*n:] {
			sep.Built[i] = b != 0
		}
	}
	return sep, nil
}
