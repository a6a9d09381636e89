package fastener

import "math"

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

// fittings runs from what is best to what is left when nothing else fits: a
// butterfly hidden, a rubber clutch hidden, the pad at least clear, and any
// place near the broadest.
func (p *plate) fittings() []fitting {
	return []fitting{
		{butterfly/2 + edgeMargin, butterfly + between, butterfly},
		{rubber/2 + edgeMargin, rubber + between, rubber},
		{padAcross/2 + edgeMargin, rubber + between, rubber},
		{0.8 * p.most, rubber + between, rubber},
	}
}

// hides is how many of the fittings hide the clutch.
const hides = 2

// place is where posts go, in mm from the grid's corner.
type place struct {
	posts  []point
	clutch float64
	level  bool
}

// Weights of what makes a place good, in mm of separation given up for a mm of
// fault, and the heights aimed at, as shares of the part's height above its
// centre of mass (this tool's choice, after common practice: one post above
// the centre of mass; two level, in the upper half, far apart).
const (
	askewWeight = 3.0  // one post standing beside the line of balance
	lowWeight   = 2.0  // one post standing too little above the centre
	unevenWt    = 1.5  // a pair that is off to one side
	heightWt    = 0.35 // a level pair above or below its best height
	oneHeight   = 0.18
	pairHeight  = 0.15
	leastAbove  = 1.5 // mm above the centre of mass that one post should have
	pairSpread  = 0.6 // of the part's width: farther apart brings nothing more
	pairBelow   = 0.05
	wasteWeight = 0.1 // spread beyond that share
)

// one returns the best place for a single post.
func (p *plate) one() place {
	for _, f := range p.fittings() {
		if q, ok := p.best(f.room, p.oneScore); ok {
			return place{posts: []point{p.onAxis(q, f.room)}, clutch: f.clutch, level: true}
		}
	}
	return place{posts: []point{{p.CX, p.CY}}, clutch: rubber, level: true}
}

func (p *plate) oneScore(q point) float64 {
	aim := p.CY - float64(oneHeight*p.high())
	low := max(0, q.y-(p.CY-leastAbove))
	return -float64(askewWeight*math.Abs(q.x-p.CX)) - math.Abs(q.y-aim) - float64(lowWeight*low)
}

// best returns the cell with room whose score is highest, the first of equals.
func (p *plate) best(room float64, score func(point) float64) (q point, ok bool) {
	top := math.Inf(-1)
	for y := range p.h {
		for x, c := range p.clear[y*p.w : y*p.w+p.w] {
			if c < room || c <= 0 {
				continue
			}
			if s := score(p.centre(x, y)); s > top {
				top, q, ok = s, p.centre(x, y), true
			}
		}
	}
	return q, ok
}

// onAxis moves a point that stands within a cell or two of the mirror axis of
// a symmetric part onto it.
func (p *plate) onAxis(q point, room float64) point {
	if p.symmetric && math.Abs(q.x-p.CX) < 2*p.cell && p.at(point{p.CX, q.y}) >= room-p.cell {
		q.x = p.CX
	}
	return q
}

// tallBy is how many times farther apart two posts in a line must be than two
// level ones for the line to be better: on a tall narrow piece (this tool's choice).
const tallBy = 2.0

// two returns the best places for two posts, the left or upper one first.
func (p *plate) two() place {
	fs := p.fittings()
	for i, f := range fs {
		level, lok := p.levelPair(f)
		line, ok := p.linePair(f)
		if lok && ok && i < hides && spread(line) > tallBy*spread(level) && p.high() > p.wide() {
			return line
		}
		// A rubber clutch on a level pair is better than a butterfly on a line.
		if i == 0 && !lok && ok {
			if soft, fits := p.levelPair(fs[1]); fits && spread(line) <= tallBy*spread(soft) {
				return soft
			}
		}
		if lok {
			return level
		}
		if ok {
			return line
		}
	}
	pl, _ := p.linePair(fitting{room: 0, apart: 0, clutch: rubber})
	return pl
}

func spread(pl place) float64 { return apart(pl.posts[0], pl.posts[1]) }

func apart(a, b point) float64 { return math.Hypot(a.x-b.x, a.y-b.y) }

// three returns the best places for three posts: two level, and a third as far
// from both as the line of balance allows.
func (p *plate) three() place {
	pl := p.two()
	a, b := pl.posts[0], pl.posts[1]
	far := pairSpread * p.Feret
	score := func(q point) float64 {
		near := min(apart(q, a), apart(q, b))
		return min(near, far) - float64(unevenWt*math.Abs(q.x-p.CX))
	}
	for _, f := range p.fittings() {
		q, ok := p.best(f.room, score)
		if ok && min(apart(q, a), apart(q, b)) >= f.apart {
			pl.posts = append(pl.posts, p.onAxis(q, f.room))
			pl.clutch = min(pl.clutch, f.clutch)
			return pl
		}
	}
	if q, ok := p.best(0, score); ok {
		pl.posts, pl.clutch = append(pl.posts, q), rubber
	}
	return pl
}
