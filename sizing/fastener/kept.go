package fastener

import (
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// placeKey is what the places of a shape hang on.
type placeKey struct {
	scale unit.PxPerMM
	kind  sizing.Fastening
	count int
}

// keptPlaces bounds how many are kept: a size that is dragged asks for many.
const keptPlaces = 32

// place places a number of a fixture, once for each size.
func (s *Shape) place(z *sized, scale unit.PxPerMM, f fixture, count int) place {
	key := placeKey{scale, f.kind, count}
	if pl, ok := s.kept[key]; ok {
		return pl
	}
	pl := z.with(f).places(f, count)
	if s.kept == nil || len(s.kept) >= keptPlaces {
		s.kept = map[placeKey]place{}
	}
	s.kept[key] = pl
	return pl
}

// with is the part as a fixture sees it.
func (p *plate) with(f fixture) *plate {
	q := *p
	q.fits = f.fittings()
	return &q
}

// places places a number of a fixture.
func (p *plate) places(f fixture, count int) place {
	if f.kind == sizing.PinBar {
		return p.barPlace(f)
	}
	switch count {
	case 1:
		return p.one()
	case 2:
		return p.two()
	default:
		return p.three()
	}
}
