//go:build !order

package calls

import (
	"fmt"
	"hash/fnv"
	"slices"

	"badgewright/wasm/wire"
)

// handOver gives a picked version as struck, with its rasters, for the second
// program to work on.
func handOver(s *Session, job Job, ask wire.StruckAsk) (Reply, error) {
	u, err := s.subject(&ask.Picked, job.Progress)
	if err != nil {
		return Reply{}, err
	}
	found, err := u.check(job.Progress)
	if err != nil {
		return Reply{}, err
	}
	k, err := u.struck()
	if err != nil {
		return Reply{}, err
	}
	sep := k.badge.Sep
	answer := wire.Struck{
		Key: u.name(), W: sep.W, H: sep.H, Built: sep.Built != nil,
		Flats:  recoloured(wire.Flats{Flats: sep.Flats}, u.version).Flats,
		Design: *u.design, Version: *u.version, Check: found,
	}
	rasters := slices.Concat(sep.Labels, sep.Beside, sep.Cover)
	if sep.Built != nil {
		rasters = slices.Grow(rasters, len(sep.Built))
		for _, built := range sep.Built {
			rasters = append(rasters, bit(built))
		}
	}
	return Reply{Answer: answer, Bytes: rasters}, nil
}

func bit(b bool) byte {
	if b {
		return 1
	}
	return 0
}

// name is short for all that the version as struck depends on.
func (u *subject) name() string {
	h := fnv.New64a()
	_, _ = h.Write([]byte(keyOf(u.key, []any{u.design, u.version.ID}))) // a hash takes everything
	return fmt.Sprintf("%016x", h.Sum64())
}
