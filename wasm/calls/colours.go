package calls

import (
	"badgewright/reduce"
	"badgewright/reduce/colour"
	"badgewright/sizing/apart"
	"badgewright/sizing/fit"
	"badgewright/wasm/wire"
)

// flats reduces a drawing; the label map comes as one byte a pixel.
func flats(s *Session, job Job, ask wire.FlatsAsk) (Reply, error) {
	o, err := s.drawing(ask.Drawing, "", job.Progress)
	if err != nil {
		return Reply{}, err
	}
	b, _, err := s.baseOf(o, ask.Options)
	if err != nil {
		return Reply{}, err
	}
	return Reply{Answer: flatsOf(b), Bytes: b.sep.Labels}, nil
}

// flatsOf describes a flat drawing and finds where its callouts point.
func flatsOf(b *base) wire.Flats {
	if b.spots == nil {
		b.spots = spotsOf(b.sep)
	}
	return wire.Flats{W: b.sep.W, H: b.sep.H, Count: enamels(b.sep), Flats: b.sep.Flats, Spots: b.spots}
}

func enamels(s *reduce.Separation) int {
	n := 0
	for _, f := range s.Flats {
		if f.Role == reduce.Enamel {
			n++
		}
	}
	return n
}

// buys says, for every count of enamels, what is lost to the eye and what it costs.
func buys(s *Session, job Job, ask wire.BuysAsk) (Reply, error) {
	u, err := s.subject(&ask.Picked, job.Progress)
	if err != nil {
		return Reply{}, err
	}
	losses, err := u.opened.found.Losses(u.design.Edits)
	if err != nil {
		return Reply{}, err
	}
	list, order, item, err := u.pricedWithin(ask.Order, ask.Item, job.Progress)
	if err != nil {
		return Reply{}, err
	}
	sight, err := u.sight(&ask, job.Progress)
	if err != nil {
		return Reply{}, err
	}
	answer := wire.Buys{Included: list.Colours.Included, Rows: []wire.Buy{}}
	for _, r := range fit.Buys(list, order, item, u.version, losses, sight) {
		answer.Rows = append(answer.Rows, wire.Buy{
			Count: r.Count, Mean: r.Mean, Worst: r.Worst, Total: r.Total, PerPiece: r.PerPiece, Each: r.Each,
			Words: r.Words, Swatches: swatches(r.Flats), Seen: seenOf(r.Seen),
		})
	}
	return Reply{Answer: answer}, nil
}

// sight is what an eye sees of every count at the pin's size; nil when that was
// not asked for.
func (u *subject) sight(ask *wire.BuysAsk, p reduce.Progress) (*fit.Sight, error) {
	if ask.Viewing == nil {
		return nil, nil
	}
	t := apart.Usual()
	if ask.Noticed != 0 {
		t.Noticed = ask.Noticed
	}
	if err := checkSight(*ask.Viewing, &t); err != nil {
		return nil, err
	}
	scale, err := scaleOf(u.design, u.base)
	if err != nil {
		return nil, err
	}
	cloth := eyeUsual().Cloths[0].RGB
	losses, err := apart.Losses(u.opened.found, u.design.Edits, reduce.MaxCount, scale, *ask.Viewing, cloth, t.Noticed, p)
	return &fit.Sight{Losses: losses, Where: nameOfDistance(ask.Viewing.Distance)}, err
}

func seenOf(l *apart.Loss) *wire.SeenLoss {
	if l == nil {
		return nil
	}
	return &wire.SeenLoss{Mean: l.Mean, Worst: l.Worst, Step: l.Step, Unseen: l.Unseen}
}

func swatches(flats []reduce.Flat) []colour.RGB8 {
	all := []colour.RGB8{}
	for _, f := range flats {
		if f.Role == reduce.Enamel {
			all = append(all, f.RGB)
		}
	}
	return all
}
