package calls

import (
	"fmt"

	"badgewright/reduce"
	"badgewright/reduce/colour"
	"badgewright/sizing"
	"badgewright/sizing/sight"
	"badgewright/wasm/wire"
)

// The pictures that can be asked for, px on the long side.
const (
	leastPicture    = 16
	greatestPicture = 4096
)

// picture draws one view of a picked version.
func picture(s *Session, job Job, ask wire.PictureAsk) (Reply, error) {
	if ask.LongSide < leastPicture || ask.LongSide > greatestPicture {
		return Reply{}, &reduce.Refusal{
			What: fmt.Sprintf("A picture of %d px cannot be drawn.", ask.LongSide),
			Do:   fmt.Sprintf("Ask for %d to %d px.", leastPicture, greatestPicture),
		}
	}
	d, v, err := picked(&ask.Picked)
	if err != nil {
		return Reply{}, err
	}
	o, b, key, err := s.designBase(d, job.Progress)
	if err != nil {
		return Reply{}, err
	}
	k, err := s.strike(d, b, key)
	if err != nil {
		return Reply{}, err
	}
	img, err := s.view(&ask, d, v, o, b, k, job.Progress)
	if err != nil {
		return Reply{}, err
	}
	return Reply{
		Answer: wire.Picture{W: img.W, H: img.H, Scale: img.Scale, DX: img.DX, DY: img.DY},
		Bytes:  rgba(img.Pix),
	}, nil
}

func (s *Session) view(ask *wire.PictureAsk, d *sizing.Design, v *sizing.Version, o *opened, b *base, k *struck, p reduce.Progress) (*sight.Image, error) {
	switch ask.View {
	case wire.ViewDrawing:
		return sight.Original(k.badge, o.drawing, ask.LongSide), nil
	case wire.ViewFlat:
		return sight.Flat(k.badge, ask.LongSide, platingOf(v.Plating), recolours(v)), nil
	case wire.ViewStruck, wire.ViewBack:
		back, err := s.backOf(d, b, k.badge.Scale)
		if err != nil {
			return nil, err
		}
		look := sight.Look{
			Plating: platingOf(v.Plating), Fill: d.Fill, Side: sight.Front, LongSide: ask.LongSide,
			Posts: back.Posts, Clutch: back.Clutch, Pad: back.Pad, Recolour: recolours(v),
		}
		if ask.View == wire.ViewBack {
			look.Side = sight.Back
		}
		return sight.Struck(k.badge, look, p)
	}
	return nil, fmt.Errorf("calls: no view is named %q", ask.View)
}

// recolours maps flats to the colours that a version gives them.
func recolours(v *sizing.Version) map[reduce.FlatID]colour.RGB8 {
	m := map[reduce.FlatID]colour.RGB8{}
	for _, c := range v.Colours {
		m[c.Flat] = c.RGB
	}
	return m
}

// recoloured gives flats the colours of a version.
func recoloured(f wire.Flats, v *sizing.Version) wire.Flats {
	if len(v.Colours) == 0 {
		return f
	}
	m := recolours(v)
	f.Flats = append([]reduce.Flat(nil), f.Flats...)
	for i := range f.Flats {
		if c, ok := m[f.Flats[i].ID]; ok {
			f.Flats[i].RGB, f.Flats[i].Name = c, colour.Name(c)
		}
	}
	return f
}
