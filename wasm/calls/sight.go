package calls

import (
	"fmt"

	"badgewright/reduce"
	"badgewright/reduce/colour"
	"badgewright/sizing"
	"badgewright/sizing/fastener"
	"badgewright/sizing/sight"
	"badgewright/sizing/unit"
	"badgewright/wasm/wire"
)

// The pictures that can be asked for, px on the long side.
const (
	leastPicture    = 16
	greatestPicture = 4096
)

// picture draws one view of a picked version.
func picture(s *Session, job Job, ask wire.PictureAsk) (Reply, error) {
	if err := checkLongSide(ask.LongSide); err != nil {
		return Reply{}, err
	}
	u, err := s.subject(&ask.Picked, job.Progress)
	if err != nil {
		return Reply{}, err
	}
	img, err := u.view(&ask, job.Progress)
	if err != nil {
		return Reply{}, err
	}
	return Reply{
		Answer: wire.Picture{W: img.W, H: img.H, Scale: img.Scale, DX: img.DX, DY: img.DY},
		Bytes:  rgba(img.Pix),
	}, nil
}

func checkLongSide(px int) error {
	if px >= leastPicture && px <= greatestPicture {
		return nil
	}
	return &reduce.Refusal{
		What: fmt.Sprintf("A picture of %d px cannot be drawn.", px),
		Do:   fmt.Sprintf("Ask for %d to %d px.", leastPicture, greatestPicture),
	}
}

func (u *subject) view(ask *wire.PictureAsk, p reduce.Progress) (*sight.Image, error) {
	k, err := u.struck()
	if err != nil {
		return nil, err
	}
	switch ask.View {
	case wire.ViewDrawing:
		return sight.Original(k.badge, u.opened.drawing, ask.LongSide), nil
	case wire.ViewFlat:
		return sight.Flat(k.badge, ask.LongSide, platingOf(u.version.Plating), recolours(u.version)), nil
	case wire.ViewNext:
		j, ok := u.next()
		if !ok {
			return nil, &reduce.Refusal{What: "No two colours of this drawing may join.", Do: "Unlock one, or let two join that are kept apart."}
		}
		return sight.Mark(k.badge, ask.LongSide, j.Goes, j.Becomes), nil
	case wire.ViewChanged:
		return u.changed(k, ask.LongSide, p)
	case wire.ViewStruck:
		return u.pin(k, sight.Front, ask.LongSide, p)
	case wire.ViewBack:
		return u.pin(k, sight.Back, ask.LongSide, p)
	}
	return nil, fmt.Errorf("calls: no view is named %q", ask.View)
}

// changed marks where the drawing differs from the one before it on the sheet.
func (u *subject) changed(k *struck, longSide int, p reduce.Progress) (*sight.Image, error) {
	all := u.design.Drawings
	if len(all) < 2 {
		return nil, &reduce.Refusal{What: "There is only one version of this drawing.", Do: "Bring a new one under Drawing."}
	}
	before := all[len(all)-2]
	o, err := u.session.drawing(before.ID, before.Ground, p)
	if err != nil {
		return nil, err
	}
	diff, err := u.session.differ(o, u.opened)
	if err != nil {
		return nil, err
	}
	return sight.Places(k.badge, longSide, diff.At), nil
}

// pin draws one side in metal and enamel.
func (u *subject) pin(k *struck, side sight.Side, longSide int, p reduce.Progress) (*sight.Image, error) {
	look := sight.Look{
		Plating: platingOf(u.version.Plating), Fill: u.design.Fill, Side: side, LongSide: longSide,
		Recolour: recolours(u.version), Finish: finishes(u.version),
	}
	if side == sight.Back {
		if err := u.fasten(&look, k.badge.Scale); err != nil {
			return nil, err
		}
	}
	var err error
	if look.Chain, err = u.chain(k.badge.Scale, p); err != nil {
		return nil, err
	}
	return sight.Struck(k.badge, look, p)
}

// fasten puts what holds the pin, and its stamp, on a picture of its back.
func (u *subject) fasten(look *sight.Look, scale unit.PxPerMM) error {
	back, err := u.back()
	if err != nil {
		return err
	}
	look.Posts, look.Pad, look.Clutch = back.Posts, back.Pad, back.Clutch
	look.Fastening, look.Bar, look.Upright = back.Fastening, back.Bar, back.Upright
	// What cannot be stamped is told beside the picture.
	if st, err := u.stamped(&back, scale); err == nil && st.Struck() {
		look.Stamp = &sight.Stamp{At: st.Middle, Strokes: st.Strokes(), Width: st.Stroke, Raised: st.Raised, Cells: cellsOf(st, u.design.Back.Stamp.Mark)}
	}
	return nil
}

// cellsOf is a mark at the top of its block, in its middle.
func cellsOf(st *fastener.Stamped, mark *sizing.Mark) *sight.Cells {
	if st.Mark == nil || mark == nil {
		return nil
	}
	on, err := mark.Cells()
	if err != nil {
		return nil
	}
	return &sight.Cells{W: mark.W, H: mark.H, On: on, Side: st.Mark.Height / unit.MM(mark.H), Left: -st.Mark.W / 2, Top: -st.H / 2}
}

// recolours maps flats to the colours that a version gives them.
func recolours(v *sizing.Version) map[reduce.FlatID]colour.RGB8 {
	m := map[reduce.FlatID]colour.RGB8{}
	for _, c := range v.Colours {
		if c.RGB != nil {
			m[c.Flat] = *c.RGB
		}
	}
	return m
}

// finishes maps flats to the finishes that a version gives them.
func finishes(v *sizing.Version) map[reduce.FlatID]sizing.Finish {
	m := map[reduce.FlatID]sizing.Finish{}
	for _, c := range v.Colours {
		if c.Finish != sizing.Plain {
			m[c.Flat] = c.Finish
		}
	}
	return m
}

// codeOf is the code that a version gives a flat, if any. One whose role no
// longer takes a code keeps what it was given, unseen.
func codeOf(v *sizing.Version, f *reduce.Flat) *sizing.VersionColour {
	if !takesCode(f) {
		return nil
	}
	for i := range v.Colours {
		if v.Colours[i].Flat == f.ID && v.Colours[i].Code != "" {
			return &v.Colours[i]
		}
	}
	return nil
}

// recoloured gives flats the colours and codes of a version. A name given by
// hand stays; a plain one follows the colour.
func recoloured(f wire.Flats, v *sizing.Version) wire.Flats {
	if len(v.Colours) == 0 {
		return f
	}
	m := recolours(v)
	f.Flats = append([]reduce.Flat(nil), f.Flats...)
	for i := range f.Flats {
		flat := &f.Flats[i]
		if c := codeOf(v, flat); c != nil {
			f.Codes = append(f.Codes, wire.FlatCode{Flat: flat.ID, Code: c.Code, Named: c.Named, Drawn: flat.RGB})
		}
		if c, ok := m[flat.ID]; ok {
			if full := colour.Name(flat.RGB); flat.Name == full || flat.Name == colour.Short(full) {
				flat.Name = colour.Name(c)
			}
			flat.RGB = c
		}
	}
	reduce.NamePlainly(f.Flats)
	return f
}
