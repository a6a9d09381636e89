package calls

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"badgewright/sizing"
	"badgewright/sizing/caution"
	"badgewright/sizing/fastener"
	"badgewright/sizing/unit"
	"badgewright/wasm/wire"
)

// backing is what the back of a separation hangs on, found once.
type backing struct {
	shape   *fastener.Shape
	filled  float64 // px2 of enamel
	counted bool
}

// silhouette is the outline with what is found of it, once for a drawing:
// recipes build inside it, but for those with places of their own.
func (u *subject) silhouette() (*fastener.Shape, error) {
	b, sep, box := &u.base.backing, u.base.sep, u.base.box
	if placed(u.design.Struck()) {
		k, err := u.struck()
		if err != nil {
			return nil, err
		}
		b, sep, box = &k.backing, k.badge.Sep, k.badge.Outline
	}
	if b.shape == nil {
		s, err := fastener.ShapeOf(sep, box)
		if err != nil {
			return nil, err
		}
		b.shape = s
	}
	return b.shape, nil
}

func placed(recipes []sizing.Recipe) bool {
	for _, r := range recipes {
		if len(r.Points) > 0 {
			return true
		}
	}
	return false
}

// filled is the area of enamel in px2, as struck.
func (u *subject) filled() (float64, error) {
	b, sep := &u.base.backing, u.base.sep
	if len(u.design.Struck()) > 0 {
		k, err := u.struck()
		if err != nil {
			return 0, err
		}
		b, sep = &k.backing, k.badge.Sep
	}
	if !b.counted {
		b.filled, b.counted = fastener.Filled(sep), true
	}
	return b.filled, nil
}

// back says how many posts the design gets, and where.
func (u *subject) back() (fastener.Advice, error) { return u.backAt(u.design.Size, &u.design.Back) }

// backAt is the back of the design at a size, with a wish for it.
func (u *subject) backAt(size sizing.Size, wish *sizing.Back) (fastener.Advice, error) {
	if err := size.Check(); err != nil {
		return fastener.Advice{}, err
	}
	shape, err := u.silhouette()
	if err != nil {
		return fastener.Advice{}, err
	}
	filled, err := u.filled()
	if err != nil {
		return fastener.Advice{}, err
	}
	w := fastener.WishOf(u.design, filled, u.version.Quantity)
	w.Back = *wish
	return shape.Advise(sizing.ScaleFor(u.base.box, size), w)
}

// fixings is how each fastening would stand on the design; none when there is
// nothing to stand on.
func (u *subject) fixings(scale unit.PxPerMM, posts int) []fastener.Fixing {
	shape, err := u.silhouette()
	if err != nil {
		return []fastener.Fixing{}
	}
	return shape.Fixings(scale, posts)
}

// stamp finds room for the lettering that is asked for on the back.
func (u *subject) stamp(c *wire.Check, scale unit.PxPerMM) {
	s, err := u.stamped(&c.Back, scale)
	if err != nil {
		f := FailureOf(err)
		c.StampProblem = f.What + " " + f.Do
	}
	c.Stamp = s
}

// stamped is the lettering on an advised back; nil when none is asked for.
func (u *subject) stamped(back *fastener.Advice, scale unit.PxPerMM) (*fastener.Stamped, error) {
	want := u.design.Back.Stamp
	if want == nil {
		return nil, nil
	}
	shape, err := u.silhouette()
	if err != nil {
		return nil, err
	}
	s, err := shape.Stamp(scale, back, *want)
	if err != nil {
		return nil, err
	}
	return &s, nil
}

// cautions is what must be heeded of the design, at a scale, with what was
// found of it.
func (u *subject) cautions(scale unit.PxPerMM, findings []sizing.Finding) []caution.Caution {
	p := caution.Pin{Fastening: u.design.Back.Fastening, Plating: platingOf(u.version.Plating), Buyers: u.design.Back.Buyers}
	for _, f := range findings {
		if f.Kind == sizing.SharpTip && f.Verdict == sizing.Fails {
			p.Tips += f.Count
		}
	}
	if shape, err := u.silhouette(); err == nil {
		hulls, exact := shape.Outlines(scale)
		for _, h := range hulls {
			p.Pieces = append(p.Pieces, caution.Piece{Hull: h, Thickness: float64(u.design.Thickness), Slack: exact})
		}
	}
	return caution.For(p)
}

// hang says how the picked version hangs with posts where they are moved to.
func hang(s *Session, job Job, ask wire.HangAsk) (Reply, error) {
	u, err := s.subject(&ask.Picked, job.Progress)
	if err != nil {
		return Reply{}, err
	}
	shape, err := u.silhouette()
	if err != nil {
		return Reply{}, err
	}
	scale := sizing.ScaleFor(u.base.box, u.design.Size)
	wish := u.design.Back
	wish.Hand = shape.Shares(scale, shape.Snap(scale, ask.Posts, ask.Moved))
	back, err := u.backAt(u.design.Size, &wish)
	if err != nil {
		return Reply{}, err
	}
	b, err := u.outlined()
	if err != nil {
		return Reply{}, err
	}
	return Reply{Answer: wire.Hung{Hand: wish.Hand, Back: back, Places: fromBehind(back.Posts, b)}}, nil
}

// outlined is the badge whose outline places are measured from.
func (u *subject) outlined() (*sizing.Badge, error) {
	if !placed(u.design.Struck()) {
		return u.drawn(u.design.Size)
	}
	k, err := u.struck()
	if err != nil {
		return nil, err
	}
	return k.badge, nil
}

// placeStep is what a maker can place a post to, mm (common practice, no
// published source).
const placeStep = 0.5

// fromBehind gives the places of posts as seen from behind, where left and
// right are mirrored.
func fromBehind(posts []sizing.Post, b *sizing.Badge) []wire.Place {
	places := []wire.Place{}
	for _, p := range posts {
		q := wire.Place{
			Left: stepped(b.Width() - p.X), Top: stepped(p.Y),
			Beside: stepped(b.Width()/2 - p.X), Below: stepped(p.Y - b.Height()/2),
		}
		q.FromMiddle = fromMiddle(q, func(l unit.Length) string { return l.InMM })
		q.FromMiddleInches = fromMiddle(q, func(l unit.Length) string { return l.InInches })
		places = append(places, q)
	}
	number(places, posts)
	return places
}

// number calls places from the left as seen from behind, or from the top where
// they stand more above each other than side by side.
func number(places []wire.Place, posts []sizing.Post) {
	by := make([]int, len(posts))
	var box [4]unit.MM
	for i, p := range posts {
		by[i] = i
		if i == 0 {
			box = [4]unit.MM{p.X, p.Y, p.X, p.Y}
		}
		box = [4]unit.MM{min(box[0], p.X), min(box[1], p.Y), max(box[2], p.X), max(box[3], p.Y)}
	}
	slices.SortStableFunc(by, func(i, j int) int {
		if box[2]-box[0] >= box[3]-box[1] {
			return cmp.Compare(posts[j].X, posts[i].X)
		}
		return cmp.Compare(posts[i].Y, posts[j].Y)
	})
	for no, i := range by {
		places[i].No = no + 1
	}
}

// stepped rounds a length to what can be placed.
func stepped(m unit.MM) unit.Length {
	return unit.Shown(unit.MM(math.Round(float64(m)/placeStep) * placeStep))
}

// fromMiddle puts a place into words: "4.5 mm left, 3 mm above".
func fromMiddle(q wire.Place, say func(unit.Length) string) string {
	far := func(l unit.Length, less, more string) []string {
		switch {
		case l.MM < 0:
			return []string{strings.TrimPrefix(say(l), "-") + " " + less}
		case l.MM > 0:
			return []string{say(l) + " " + more}
		}
		return nil
	}
	words := append(far(q.Beside, "left", "right"), far(q.Below, "above", "below")...)
	if len(words) == 0 {
		return "in the middle"
	}
	return strings.Join(words, ", ")
}
