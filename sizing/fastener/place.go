package fastener

import (
	"math"

	"badgewright/sizing"
)

// Sizes of what sits on the back, mm (common practice, no published source).
const (
	butterfly  = 11.5 // metal clutch, across
	rubber     = 10.0 // rubber clutch, across
	padAcross  = 6.0  // soldered pad
	edgeMargin = 0.5  // kept between a clutch or a pad and any edge
	between    = 1.0  // kept between two clutches
)

// fitting is one way to be content with a place: how far from any edge a post
// must stand, how far apart posts must be, and the clutch it is for.
type fitting struct {
	room, apart, clutch float64
}

// fittings runs from what is best to what is left when nothing else fits: the
// cover hidden (of a clutch, a butterfly or else a rubber one), the pad clear,
// the pad just on the metal, then less and less metal under it.
func (f fixture) fittings() []fitting {
	covers := []float64{f.cover}
	if f.kind == sizing.PostAndClutch {
		covers = []float64{butterfly, rubber}
	}
	var all []fitting
	for _, c := range covers {
		all = append(all, fitting{c/2 + edgeMargin, c + between, c})
	}
	c := covers[len(covers)-1]
	least := math.Inf(1)
	for _, room := range [...]float64{f.pad/2 + edgeMargin, f.pad / 2, 5, 4, 3, 2.2, 1.5, 0.8} {
		if room < least {
			all = append(all, fitting{room, c + between, c})
			least = room
		}
	}
	return append(all, fitting{0, f.pad + between, c}, fitting{0, 0, c})
}

// place is where posts go, in mm from the grid's corner.
type place struct {
	posts   []point
	clutch  float64
	level   bool
	bar     float64 // length of a pin bar, which lies about the one place; 0 for posts
	upright bool    // the bar stands upright, not level
}

// Weights of what makes a place good, in mm of separation given up for a mm of
// fault, and the heights aimed at, as shares of the part's height above its
// centre of mass (this tool's choice, after common practice: one post above
// the centre of mass; two level, in the upper half, far apart).
const (
	askewWeight  = 3.0  // one post standing beside the line of balance
	lowWeight    = 2.0  // one post standing too little above the centre
	unevenWeight = 1.5  // a pair that is off to one side
	alongWeight  = 0.35 // a pair in a line whose middle is up or down that line
	leanWeight   = 0.4  // a pair in a line that runs neither along the piece nor across it
	heightWeight = 0.35 // a level pair above or below its best height
	showWeight   = 3.0  // each clutch that shows beyond the edge
	wasteWeight  = 0.1  // spread beyond what brings anything
	oneHeight    = 0.18
	pairHeight   = 0.15
	leastAbove   = 1.5  // mm above the centre of mass that one post should have
	lowestOne    = 0.15 // how far below it a single post may stand at most
	pairSpread   = 0.6  // of the part's width: farther apart brings nothing more
	pairBelow    = 0.05 // how far below the centre of mass a level pair may stand
)

// one returns the best place for a single post: on the axis of a symmetric
// part, else anywhere, and well below the centre of mass only if nothing else
// is left. A clutch that stays hidden comes first, and of those one that lets
// the post stand high enough.
func (p *plate) one() place {
	if pl, ok := p.oneHidden(); ok {
		return pl
	}
	for _, floor := range [...]float64{p.lowest(), math.Inf(1)} {
		for _, f := range p.fits {
			if q, ok := p.oneFor(f, floor); ok {
				return place{posts: []point{q}, clutch: f.clutch, level: true}
			}
		}
	}
	return place{posts: []point{{p.CX, p.CY}}, clutch: p.leastCover(), level: true}
}

// lowest is how far down a single post may stand.
func (p *plate) lowest() float64 { return p.CY + float64(lowestOne*p.high()) }

// oneHidden tries every clutch that hides with its margin and takes the first
// that stands leastAbove the centre of mass, else the highest.
func (p *plate) oneHidden() (best place, ok bool) {
	top := math.Inf(1)
	for _, f := range p.fits {
		if f.room < f.clutch/2+edgeMargin {
			continue
		}
		q, found := p.oneFor(f, p.lowest())
		if !found || q.y >= top {
			continue
		}
		best, top, ok = place{posts: []point{q}, clutch: f.clutch, level: true}, q.y, true
		if q.y <= p.CY-leastAbove {
			break
		}
	}
	return best, ok
}

// oneFor is the best place for a fitting above a floor.
func (p *plate) oneFor(f fitting, floor float64) (point, bool) {
	score := func(q point, room float64) float64 {
		if q.y > floor {
			return math.Inf(-1)
		}
		return p.oneScore(q) - f.showing(room)
	}
	if q, ok := p.onAxis(f.room, score); ok {
		return q, true
	}
	return p.best(f.room, score)
}

// showing is what a clutch that shows costs a place.
func (f fitting) showing(room float64) float64 {
	return showWeight * max(0, f.clutch/2-room)
}

func (p *plate) oneScore(q point) float64 {
	aim := p.CY - float64(oneHeight*p.high())
	low := max(0, q.y-(p.CY-leastAbove))
	return -float64(askewWeight*math.Abs(q.x-p.CX)) - math.Abs(q.y-aim) - float64(lowWeight*low)
}

// best returns the cell with room whose score is highest, the first of equals.
func (p *plate) best(room float64, score func(point, float64) float64) (q point, ok bool) {
	top := math.Inf(-1)
	for y := range p.h {
		for x, c := range p.clear[y*p.w : y*p.w+p.w] {
			if c < room || c <= 0 {
				continue
			}
			if s := score(p.centre(x, y), c); s > top {
				top, q, ok = s, p.centre(x, y), true
			}
		}
	}
	return q, ok
}

// onAxis is best on the mirror axis of a symmetric part; ok is false when the
// part has none, or no place on it.
func (p *plate) onAxis(room float64, score func(point, float64) float64) (q point, ok bool) {
	if !p.symmetric {
		return q, false
	}
	top := math.Inf(-1)
	for y := range p.h {
		at := point{p.CX, (float64(y) + 0.5) * p.cell}
		c := p.at(at)
		if c < room || c <= 0 {
			continue
		}
		if s := score(at, c); s > top {
			top, q, ok = s, at, true
		}
	}
	return q, ok
}

// tallBy is how many times farther apart two posts in a line must be than two
// level ones for the line to be better: on a tall narrow piece (this tool's choice).
const tallBy = 2.0

// hiddenSpread is the share of its distance that a pair may give up so that its
// clutches are hidden, if only just (this tool's choice).
const hiddenSpread = 0.7

// two returns the best places for two posts, the left or upper one first: level
// if they can be, in a line on a piece too narrow for that. Clutches that show
// are brought in to where the edge just hides them, if the pair stays wide.
func (p *plate) two() place {
	pl := p.pair()
	least := p.leastCover()
	just := fitting{room: least / 2, apart: least + between, clutch: least}
	if min(p.at(pl.posts[0]), p.at(pl.posts[1])) >= just.room {
		return pl
	}
	in, ok := place{}, false
	if pl.level {
		in, ok = p.levelPair(just)
	}
	if !ok {
		in, ok = p.linePair(just)
	}
	if ok && p.carries(in) && spread(in) >= hiddenSpread*spread(pl) && in.posts[0].y <= max(p.CY, pl.posts[0].y) {
		return in
	}
	return pl
}

// leastFoot is how far from the edge a post may stand at least for the pair to
// carry the piece, mm: with less of its pad on metal it breaks off (this tool's
// choice).
const leastFoot = 1.5

// pair is the best pair by the fittings, in their order: the first that carries
// the piece, else the first there is.
func (p *plate) pair() place {
	var first place
	for i, f := range p.fits {
		if first.posts != nil && f.room < leastFoot {
			break
		}
		pl, ok := p.pairFor(f, i == 0)
		if !ok {
			continue
		}
		if p.carries(pl) {
			return pl
		}
		if first.posts == nil {
			first = pl
		}
	}
	if first.posts == nil {
		return place{posts: []point{{p.CX, p.CY}, {p.CX, p.CY}}, clutch: p.leastCover()}
	}
	return first
}

// pairFor is the best pair for one fitting, the roomiest there is or another.
func (p *plate) pairFor(f fitting, roomiest bool) (place, bool) {
	level, lok := p.levelPair(f)
	if lok && p.high() <= p.wide() {
		return level, true
	}
	line, ok := p.linePair(f)
	tall := lok && ok && spread(line) > tallBy*spread(level)
	switch {
	case lok && !tall:
		return level, true
	case ok && roomiest:
		return p.levelRubber(line), true
	}
	return line, ok
}

// carrySlack is how far past the end of a pair the centre of mass may lie, mm
// (this tool's choice).
const carrySlack = 1.0

// carries says whether the centre of mass lies between two posts and not above
// both: else one is lifted, or the piece flops forward.
func (p *plate) carries(pl place) bool {
	a, b, d := pl.posts[0], pl.posts[1], spread(pl)
	if d == 0 || min(a.y, b.y) > p.CY+float64(pairBelow*p.high()) {
		return false
	}
	along := (float64((p.CX-a.x)*(b.x-a.x)) + float64((p.CY-a.y)*(b.y-a.y))) / d
	return along >= -carrySlack && along <= d+carrySlack
}

// leastCover is the smallest clutch there is.
func (p *plate) leastCover() float64 { return p.fits[len(p.fits)-1].clutch }

// levelRubber prefers rubber clutches on a level pair to butterflies on a line.
func (p *plate) levelRubber(line place) place {
	if p.fits[1].clutch == p.fits[0].clutch {
		return line
	}
	soft, fits := p.levelPair(p.fits[1])
	if fits && spread(line) <= tallBy*spread(soft) {
		return soft
	}
	return line
}

func spread(pl place) float64 { return apart(pl.posts[0], pl.posts[1]) }

func apart(a, b point) float64 { return length(a.x-b.x, a.y-b.y) }

// three returns the best places for three posts: two, and a third as far from
// both as the line of balance allows.
func (p *plate) three() place {
	pl := p.two()
	a, b := pl.posts[0], pl.posts[1]
	far := pairSpread * p.Feret
	for _, f := range p.fits {
		score := func(q point, room float64) float64 {
			near := min(apart(q, a), apart(q, b))
			if near < f.apart {
				return math.Inf(-1)
			}
			return min(near, far) - float64(unevenWeight*math.Abs(q.x-p.CX)) - f.showing(room)
		}
		q, ok := p.onAxis(f.room, score)
		if !ok {
			q, ok = p.best(f.room, score)
		}
		if ok {
			pl.posts = append(pl.posts, q)
			pl.clutch = min(pl.clutch, f.clutch)
			return pl
		}
	}
	pl.posts = append(pl.posts, point{p.CX, p.CY})
	return pl
}
