package fastener

import (
	"fmt"
	"math"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// mostPosts is the greatest number of posts the tool places.
const mostPosts = 3

// Wish is what is asked of the back of a pin.
type Wish struct {
	Stuff  Stuff
	Filled float64 // px2 that are cut down and filled, see Filled
	// Posts 0 takes the advice; 1 to 3 is the person's own number, which is
	// placed as well as it can be.
	Posts  sizing.PostCount
	Pieces int
	Back   sizing.Back
}

// WishOf is what a design wishes; filled is of its struck separation, pieces
// of its order.
func WishOf(d *sizing.Design, filled float64, pieces int) Wish {
	depths := sizing.UsualDepths()
	if d.Back.Depths != nil {
		depths = *d.Back.Depths
	}
	return Wish{
		Stuff:  Stuff{Base: d.Base, Thickness: d.Thickness, Fill: d.Fill, Depths: depths},
		Filled: filled, Posts: d.Posts, Pieces: pieces, Back: d.Back,
	}
}

func (w *Wish) hold() sizing.Hold {
	switch {
	case w.Back.Hold != nil:
		return *w.Back.Hold
	case w.Back.Fastening == sizing.MagnetBack:
		h := sizing.UsualHold()
		h.Press = magnetPress
		return h
	}
	return sizing.UsualHold()
}

// magnetPress is the force of the magnets of a pin through cloth, N (common
// practice, no published source).
var magnetPress = sizing.Range{Low: 1, High: 5}

func (w *Wish) packing() sizing.Packing {
	if w.Back.Packing != nil {
		return *w.Back.Packing
	}
	return sizing.UsualPacking()
}

// check refuses what cannot be asked for, in words.
func (w *Wish) check() error {
	if w.Posts < 0 || w.Posts > mostPosts {
		return &reduce.Refusal{What: fmt.Sprintf("%d is no number of posts.", w.Posts), Do: "Choose one, two or three, or leave it to the tool."}
	}
	if len(w.Back.Hand) > mostPosts {
		return &reduce.Refusal{What: fmt.Sprintf("%d posts were set by hand.", len(w.Back.Hand)), Do: "Set at most three."}
	}
	for _, q := range w.Back.Hand {
		if !(q[0] >= 0 && q[0] <= 1 && q[1] >= 0 && q[1] <= 1) {
			return &reduce.Refusal{What: "A post was set beside the pin.", Do: "Move it onto the back."}
		}
	}
	h := w.hold()
	return ranges(
		bound{"The force of the clutch", h.Press, 0, 100, "N"},
		bound{"The friction on cloth", h.Friction, 0, 5, ""},
		bound{"The stiffness of cloth", h.Stiffness, 0, 1000, "N mm a radian"},
		bound{"The thickness of cloth", h.Cloth, 0, 20, "mm"},
	)
}

// Advise weighs a shape at a scale, finds where it balances, says how many
// posts it wants and where, and how it then hangs.
func (s *Shape) Advise(scale unit.PxPerMM, w Wish) (Advice, error) {
	if !(scale > 0) || math.IsInf(float64(scale), 1) {
		return Advice{}, &reduce.Refusal{What: "This pin has no size.", Do: "Give it one in millimetres."}
	}
	if err := w.check(); err != nil {
		return Advice{}, err
	}
	filled := w.Filled / float64(scale*scale)
	z := s.at(scale)
	weight, pin, err := w.Stuff.weigh(z.whole.Area, min(filled, z.whole.Area))
	if err != nil {
		return Advice{}, err
	}
	single := s.place(z, scale, posts, 1)
	n := needOf(z.plate, z.longest(), weight, single.posts[0])
	f := fixtureOf(w.Back.Fastening)
	if f.kind == sizing.MagnetBack {
		n.count = min(n.count, mostMagnets)
	}
	a := Advice{Count: n.count, Chosen: n.count, Weight: weight, Area: z.whole.Area, Pad: unit.MM(f.pad), Fastening: f.kind}
	a.Centre = [2]unit.MM{place2(z.whole.CX - z.box[0]), place2(z.whole.CY - z.box[1])}
	a.Form = z.form()
	a.choose(w, f)
	own := s.place(z, scale, f, a.Chosen)
	pl := z.chosen(w.Back.Hand, f, own)
	a.put(z, pl)
	if a.Mass, err = massOf(pin, f, a.Chosen, w.Stuff.Thickness, w.packing(), w.Pieces); err != nil {
		return Advice{}, err
	}
	a.Mass.Filled = min(1, filled/z.whole.Area)
	a.hangs(z, pl, single, w)
	if a.ByHand {
		a.Proposal = z.places(own)
		a.Worse = z.compare(pl, own, a.body(z, w), w.hold())
	}
	a.say(z, pl, n, w)
	return a, nil
}

// choose settles how many there are.
func (a *Advice) choose(w Wish, f fixture) {
	switch {
	case f.kind == sizing.PinBar:
		a.Count, a.Chosen = 1, 1
	case len(w.Back.Hand) > 0:
		a.Chosen, a.ByHand = len(w.Back.Hand), true
	case w.Posts > 0:
		a.Chosen = int(w.Posts)
	}
}

// chosen is what was set by hand, or the tool's own.
func (z *sized) chosen(hand [][2]float64, f fixture, own place) place {
	if len(hand) == 0 || f.kind == sizing.PinBar {
		return own
	}
	pl := place{posts: make([]point, len(hand)), clutch: own.clutch}
	for i, q := range hand {
		pl.posts[i] = point{z.box[0] + float64(q[0]*z.width()), z.box[1] + float64(q[1]*z.height())}
	}
	pl.level = level(pl.posts)
	pl.clutch = z.coverAt(pl, f)
	return pl
}

// sameRow is how far apart, in mm, the heights of posts may lie that count as
// level: what a maker cannot tell.
const sameRow = 0.25

func level(posts []point) bool {
	return len(posts) > 1 && math.Abs(posts[0].y-posts[1].y) <= sameRow
}

// coverAt is the largest clutch that stays hidden at every post, or the
// smallest there is.
func (z *sized) coverAt(pl place, f fixture) float64 {
	room := z.tightest(pl)
	least := f.cover
	for _, fit := range f.fittings() {
		if room >= fit.clutch/2 {
			return fit.clutch
		}
		least = min(least, fit.clutch)
	}
	return least
}

// form puts the geometry of the whole silhouette on the wire.
func (z *sized) form() Form {
	m := z.whole
	return Form{
		Widest: place2(m.Feret), Narrow: place2(m.MinWidth), Aspect: m.Aspect(), Axis: degrees(m.Angle),
		Moments: Moments{Least: m.IMin, Most: m.IMax}, Parts: z.parts, Mirrored: z.symmetric, Says: formSays(m),
	}
}

// body is what hangs. A dangle hangs its lower parts from the upper one: they
// weigh on the posts but do not turn or lean with it, so its own centre counts.
func (a *Advice) body(z *sized, w Wish) body {
	return body{mass: a.Mass.Worn, x: z.CX, y: z.CY, thickness: float64(w.Stuff.Thickness)}
}

// hangs works the model for what is shown, and for one post beside it.
func (a *Advice) hangs(z *sized, pl, single place, w Wish) {
	b, h := a.body(z, w), w.hold()
	if a.Fastening == sizing.PinBar {
		a.Hang = hang(b, barEnds(pl), rubber, h)
	} else {
		a.Hang = hang(b, pl.posts, pl.clutch, h)
	}
	if a.Hang.Posts > 1 && a.Fastening == sizing.PostAndClutch {
		one := hang(b, single.posts, single.clutch, h)
		a.OnOne = &one
	}
}

// place2 rounds a place to a hundredth of a millimetre.
func place2(mm float64) unit.MM { return unit.MM(math.Round(mm*100) / 100) }

// places gives every post of a place as it is measured.
func (z *sized) places(pl place) []sizing.Post {
	out := make([]sizing.Post, len(pl.posts))
	for i, q := range pl.posts {
		out[i] = z.post(q)
	}
	return out
}

// put records the places, measured from the outline.
func (a *Advice) put(z *sized, pl place) {
	a.Clutch, a.Bar, a.Upright = unit.MM(pl.clutch), unit.MM(pl.bar), pl.upright
	a.Posts, a.Shows = z.places(pl), make([]unit.MM, len(pl.posts))
	a.Hidden, a.exact = true, unit.MM(z.cell/2)
	for i, q := range pl.posts {
		if over := pl.clutch/2 - z.roomOf(pl, q); over > 0 {
			a.Shows[i], a.Hidden = max(place2(over), 0.01), false
		}
	}
	a.Proposal, a.Worse = []sizing.Post{}, []string{}
}

// roomOf is the clearance of one post, or the least along a bar.
func (z *sized) roomOf(pl place, q point) float64 {
	if pl.bar == 0 {
		return z.plate.at(q)
	}
	return z.along(pl)
}

// tightest is the least clearance of the posts placed.
func (z *sized) tightest(pl place) float64 {
	room := math.Inf(1)
	for _, q := range pl.posts {
		room = min(room, z.roomOf(pl, q))
	}
	return room
}

// closest is the least distance between two of the posts placed.
func closest(pl place) float64 {
	d := math.Inf(1)
	for i, a := range pl.posts {
		for _, b := range pl.posts[i+1:] {
			d = min(d, apart(a, b))
		}
	}
	return d
}
