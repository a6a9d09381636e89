package fastener

import (
	"fmt"

	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// Fixing is one fastening as it would stand on a pin.
type Fixing struct {
	Fastening sizing.Fastening `json:"fastening"`
	Name      string           `json:"name"` // "two screw backs"
	Posts     []sizing.Post    `json:"posts"`
	Bar       unit.MM          `json:"bar"`     // length of a pin bar; 0 for the others
	Upright   bool             `json:"upright"` // the bar stands upright
	Cover     unit.MM          `json:"cover"`   // diameter or breadth to be hidden
	Hidden    bool             `json:"hidden"`  // it stays behind the piece
	Says      string           `json:"says"`    // how it fits, with numbers
	Caution   string           `json:"caution"`
}

// mostMagnets is as many as are usual on one pin (common practice, no
// published source).
const mostMagnets = 2

// Fixings says how each fastening would stand on the pin, posts first. count is
// how many posts it has.
func (s *Shape) Fixings(scale unit.PxPerMM, count int) []Fixing {
	z := s.at(scale)
	var all []Fixing
	for _, f := range fixtures() {
		n := count
		switch f.kind {
		case sizing.MagnetBack:
			n = min(n, mostMagnets)
		case sizing.PinBar:
			n = 1
		}
		all = append(all, z.fixing(f, s.place(z, scale, f, n)))
	}
	return all
}

func (z *sized) fixing(f fixture, pl place) Fixing {
	shows := pl.clutch/2 - z.tightest(pl)
	o := Fixing{
		Fastening: f.kind, Name: counted(f, len(pl.posts)), Posts: z.places(pl), Bar: unit.MM(pl.bar), Upright: pl.upright,
		Cover: unit.MM(pl.clutch), Hidden: shows <= 0, Caution: f.caution,
	}
	switch thing := o.thing(f); {
	case shows > 0:
		o.Says = fmt.Sprintf("Shows beyond the edge by about %s: %s.", mm1(max(shows, 0.1)), thing)
	case closest(pl) < pl.clutch:
		o.Says = fmt.Sprintf("Too close together for %s.", thing)
		o.Hidden = false
	default:
		o.Says = fmt.Sprintf("Fits, hidden: %s.", thing)
	}
	return o
}

func (o *Fixing) thing(f fixture) string {
	switch {
	case f.kind == sizing.PinBar:
		lies := ""
		if o.Upright {
			lies = ", upright"
		}
		return fmt.Sprintf("%.0f mm long, %.0f mm broad%s", float64(o.Bar), f.cover, lies)
	case f.kind == sizing.PostAndClutch && o.Cover < butterfly:
		return fmt.Sprintf("rubber clutches %.0f mm across", rubber)
	case f.kind == sizing.PostAndClutch:
		return fmt.Sprintf("metal clutches %.1f mm across", butterfly)
	default:
		return fmt.Sprintf("%.0f mm across", f.cover)
	}
}

func counted(f fixture, n int) string {
	if n == 1 {
		return "one " + f.name
	}
	return numbers[n] + " " + f.many
}

// Findings are the fastenings that show, as trouble spots. Places in them are
// working pixels of the separation whose outline is given.
func (a *Advice) Findings(scale unit.PxPerMM, outline [4]float64) []sizing.Finding {
	var all []sizing.Finding
	for i, over := range a.Shows {
		if over <= 0 {
			continue
		}
		r := float64(a.Clutch) / 2 * float64(scale)
		wide, high := r, r
		if half := float64(a.Bar) / 2 * float64(scale); a.Upright {
			high = max(r, half)
		} else {
			wide = max(r, half)
		}
		x := outline[0] + a.Posts[i].X.Px(scale)
		y := outline[1] + a.Posts[i].Y.Px(scale)
		all = append(all, sizing.Finding{
			Kind: sizing.ClutchShows, Flat: sizing.Outside, Other: sizing.Outside, X: x, Y: y,
			X0: x - wide, Y0: y - high, X1: x + wide, Y1: y + high, Path: []float32{}, Count: 1,
			Thinnest: a.Clutch/2 - over, Typical: over, Limit: a.Clutch / 2, Error: a.exact, Verdict: sizing.Holds,
		})
	}
	return all
}
