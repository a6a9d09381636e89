package proof

import (
	"fmt"
	"math"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// Said is what a proof says beside its picture, as the person reads it, and what
// was marked in it.
type Said struct {
	// Size as stated, by its measure; MM 0 where none is.
	Size sizing.Size `json:"size"`
	// Measure is a length between two places of the picture; MM 0 where none is.
	Measure MarkedMeasure `json:"measure"`
}

// MarkedMeasure is a bar or a dimension line in a picture.
type MarkedMeasure struct {
	From Point   `json:"from"`
	To   Point   `json:"to"`
	MM   unit.MM `json:"mm"`
}

// PerMM is the scale of the picture by its measure, px per mm.
func (m *MarkedMeasure) PerMM() (float64, error) {
	px := dist(m.From, m.To)
	if m.MM <= 0 || px < leastMeasure {
		return 0, &reduce.Refusal{What: "This measure is too short to tell a scale.", Do: "Mark its two ends, at least 20 px apart, and type its length in mm."}
	}
	return px / float64(m.MM), nil
}

// leastMeasure is the shortest length in px that a scale is told by.
const leastMeasure = 20

// sizes compares what the proof says of size and side.
func (d *differ) sizes(said Said, l *Laid) {
	if l.Fit.Mirrored {
		x := d.new(Mirrored, nil)
		x.Asked, x.Shown = "as drawn", "mirrored, left for right"
		x.Words = "The art is shown mirrored, left for right. On a back view that is right, on a front view it is not."
		d.add(x)
	}
	if said.Size.MM > 0 {
		d.stated(said.Size)
	}
	if said.Measure.MM > 0 {
		d.drawn(said.Measure)
	}
	d.stretched()
}

// by is the badge's size by a measure.
func by(b *sizing.Badge, m sizing.SizeBy) (unit.MM, string) {
	switch m {
	case sizing.ByWidth:
		return b.Width(), "wide"
	case sizing.ByHeight:
		return b.Height(), "high"
	case sizing.ByMean:
		return b.Mean(), "as the mean of width and height"
	}
	return b.Longest(), "at its longest"
}

func (d *differ) stated(s sizing.Size) {
	asked, how := by(d.h.a.Badge, s.By)
	d.size(SizeStated, asked, s.MM, how, "The proof says", d.t.Stated)
}

func (d *differ) drawn(m MarkedMeasure) {
	scale, err := m.PerMM()
	if err != nil {
		d.note(err.Error())
		return
	}
	asked := d.h.a.Badge.Longest()
	shown := unit.MM(float64(asked) * d.h.perMM() / scale)
	d.size(SizeDrawn, asked, shown, "at its longest", "By the measure in the picture the pin is", d.t.Drawn)
}

func (d *differ) size(k DeviationKind, asked, shown unit.MM, how, who string, limit float64) {
	off := float64(shown/asked) - 1
	if math.Abs(off) <= limit {
		return
	}
	way := "larger"
	if off < 0 {
		way = "smaller"
	}
	x := d.new(k, nil)
	x.AskedMM, x.ShownMM = asked, shown
	x.Asked, x.Shown = fmt.Sprintf("%.1f mm %s", float64(asked), how), fmt.Sprintf("%.1f mm", float64(shown))
	x.Words = fmt.Sprintf("%s %.1f mm %s, and %.1f mm was asked for: %.0f percent %s.", who, float64(shown), how, float64(asked), 100*math.Abs(off), way)
	d.add(x)
}

// stretched compares how much larger the picture has the pin across and down.
func (d *differ) stretched() {
	if d.h.w[6] != 0 || d.h.w[7] != 0 {
		return
	}
	g := *d.h
	for range stretchRounds {
		found := g.offsets(0.35)
		if len(found) < leastFound {
			return
		}
		g.move(found, affine)
	}
	across := math.Sqrt(float64(g.w[0]*g.w[0]) + float64(g.w[3]*g.w[3]))
	down := math.Sqrt(float64(g.w[1]*g.w[1]) + float64(g.w[4]*g.w[4]))
	off := across/down - 1
	if math.Abs(off) <= d.t.Stretch {
		return
	}
	way := "wider"
	if off < 0 {
		way = "higher"
	}
	x := d.new(Stretched, nil)
	x.Asked, x.Shown = "width and height as drawn", fmt.Sprintf("%.1f percent %s", 100*math.Abs(off), way)
	x.Words = fmt.Sprintf("The pin is shown stretched: %.1f percent %s than its other side allows.", 100*math.Abs(off), way)
	d.add(x)
}

// stretchRounds is how often the pin is laid again, stretched freely.
const stretchRounds = 4
