package proof

import (
	"fmt"
	"math"
	"slices"

	"badgewright/reduce/mask"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// A view from behind is taken for one when this share of the outline lies in its
// place; a plate has no art to lay it by.
const backShare = 0.6

// Behind looks for a view of the back among the other pieces of a picture: the
// silhouette, mirrored against the front view. It is nil where there is none.
func Behind(l *Laid) *Laid {
	h := l.h
	pr := h.a.findProbes()
	for i := range pr.class {
		if pr.class[i] != outside {
			pr.class[i] = metal
		}
	}
	pin := h.a.pinPolar()
	pin.solid = [rings][rays]bool{}
	var best *Laid
	for i := range l.pieces {
		if i == l.Chosen {
			continue
		}
		b := &Laid{g: l.g, pieces: l.pieces, Spots: l.Spots, Chosen: i}
		for _, q := range pin.peaks(l.g.piecePolar(&l.pieces[i]), i) {
			if q.mirror == l.Fit.Mirrored {
				continue
			}
			// A back is drawn as turned over: of turns that suit alike, the front's.
			q.off += backTurn * math.Abs(math.Sin((q.turn-h.w.Turn()*math.Pi/180)/2))
			b.tryBack(h, pr, q)
		}
		if b.h != nil && b.Fit.Share >= backShare && (best == nil || b.Fit.Share > best.Fit.Share) {
			best = b
		}
	}
	return best
}

// backTurn is how much worse a view from behind is that is turned about against
// the front.
const backTurn = 0.05

func (l *Laid) tryBack(front *held, pr *probes, q guess) {
	o := front.a.Badge.Outline
	doubt := q.off
	q = l.g.polish(pr, q, max(o[2]-o[0], o[3]-o[1]))
	h := hold(front.a, front.p, l.grown(q.warp()), l.g.rgb)
	h.refine(similarity, 0)
	h.ppx = h.scale()
	f := h.quality()
	f.Share -= 0.2 * min(1, doubt)
	if l.h == nil || f.Share > l.Fit.Share {
		l.h, l.Fit = h, f
	}
}

// disc is a round spot on a back, in working px of the pin.
type disc struct {
	at     Point
	across unit.MM
}

// What may be a post or its pad, in mm across.
const (
	leastDisc unit.MM = 0.8
	mostDisc  unit.MM = 9
)

// discs finds round spots that stand out from the plate.
func (h *held) discs() []disc {
	a := h.a
	s := a.Badge.Sep
	step := max(1, int(float64(a.Badge.Scale)/rasterPerMM))
	w, t := (s.W+step-1)/step, (s.H+step-1)/step
	inner := make([]uint8, w*t)
	each := func(f func(k int, x, y float64)) {
		for y := range t {
			for x := range w {
				px, py := float64(x*step)+float64(step)/2, float64(y*step)+float64(step)/2
				if a.classAt(px, py) != outside {
					f(y*w+x, px, py)
				}
			}
		}
	}
	var plate medians
	each(func(_ int, x, y float64) { plate.add(h.see(x, y)) })
	ground := plate.median()
	each(func(k int, x, y float64) {
		if c := h.see(x, y); c.far2(&ground) > patchStep*patchStep/2 {
			inner[k] = 1
		}
	})
	parts := mask.Connect(inner, w, t, &[256]bool{})
	boxes := boxesOf(parts)
	var out []disc
	for c, b := range boxes {
		if parts.Label[c] != 1 {
			continue
		}
		dx, dy := float64(b[2]-b[0]), float64(b[3]-b[1])
		across := a.mm((dx + dy) / 2 * float64(step))
		if across < leastDisc || across > mostDisc || max(dx, dy) > 1.35*min(dx, dy) || !round(parts, int32(c), b) {
			continue
		}
		out = append(out, disc{Point{float64(b[0]+b[2]) / 2 * float64(step), float64(b[1]+b[3]) / 2 * float64(step)}, across})
	}
	return out
}

// round says whether a part keeps clear of the corners of its box as a disc or a
// ring does.
func round(parts *mask.Components, c int32, b [4]int) bool {
	mx, my := float64(b[0]+b[2])/2, float64(b[1]+b[3])/2
	rx, ry := float64(b[2]-b[0])/2, float64(b[3]-b[1])/2
	out, all := 0, 0
	eachRun(parts, func(y int, r mask.Run) {
		if r.Comp != c {
			return
		}
		for x := r.X0; x < r.X1; x++ {
			u, v := (float64(x)+0.5-mx)/(rx+0.5), (float64(y)+0.5-my)/(ry+0.5)
			all++
			if u*u+v*v > 1.1 {
				out++
			}
		}
	})
	return 25*out <= all
}

// postFar is how far from its place a post is still taken for the one meant.
const postFar unit.MM = 8

// posts compares the posts on a view from behind with those asked for.
func (d *differ) posts(back *held, posts []sizing.Post) {
	a := d.h.a
	found := back.discs()
	o := a.Badge.Outline
	at := make([]Point, len(posts))
	for i, p := range posts {
		at[i] = Point{o[0] + p.X.Px(a.Badge.Scale), o[1] + p.Y.Px(a.Badge.Scale)}
	}
	mine := matched(at, found, a.px(postFar))
	used := make([]bool, len(found))
	least := mostDisc
	for i, k := range mine {
		switch {
		case k < 0:
			d.post(PostMissing, at[i], fmt.Sprintf("a post %s", d.place(at[i])), "none there", 0)
		default:
			used[k] = true
			least = min(least, found[k].across)
			if off := a.mm(dist(at[i], found[k].at)); off > d.t.Post {
				d.post(PostMoved, found[k].at, fmt.Sprintf("a post %s", d.place(at[i])), fmt.Sprintf("it stands %.1f mm off, %s", float64(off), d.place(found[k].at)), off)
			}
		}
	}
	for k, f := range found {
		if !used[k] && len(found) > len(posts) && least < mostDisc && f.across >= least*0.75 {
			d.post(PostAdded, f.at, "no post here", "a post "+d.place(f.at), 0)
		}
	}
}

// matched gives each place its nearest disc, the closest pairs first; -1 for none.
func matched(at []Point, found []disc, far float64) []int {
	mine := slices.Repeat([]int{-1}, len(at))
	used := make([]bool, len(found))
	for {
		bi, bk, least := -1, -1, far
		for i := range at {
			for k := range found {
				if mine[i] < 0 && !used[k] && dist(at[i], found[k].at) < least {
					bi, bk, least = i, k, dist(at[i], found[k].at)
				}
			}
		}
		if bi < 0 {
			return mine
		}
		mine[bi], used[bk] = bk, true
	}
}

// place says where something lies on the back as seen from behind.
func (d *differ) place(p Point) string {
	o, a := d.h.a.Badge.Outline, d.h.a
	return fmt.Sprintf("%.1f mm from the left and %.1f mm from the top as seen from behind", float64(a.mm(o[2]-p.X)), float64(a.mm(p.Y-o[1])))
}

func (d *differ) post(k DeviationKind, at Point, asked, shown string, off unit.MM) {
	x := d.new(k, []Point{at})
	r := d.h.a.px(2.5)
	x.Path, x.Box = nil, [4]float64{at.X - r, at.Y - r, at.X + r, at.Y + r}
	x.Behind = true
	x.Asked, x.Shown, x.ShownMM = asked, shown, off
	switch k {
	case PostMissing:
		x.Words = "A post is missing: " + asked + "."
	case PostAdded:
		x.Words = "A post that was not asked for: " + shown + "."
	default:
		x.Words = fmt.Sprintf("A post stands %.1f mm off its place: %s was asked for.", float64(off), asked)
	}
	d.add(x)
}
