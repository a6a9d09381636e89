package canvas

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// NeedKey names something that a drawing needs.
type NeedKey string

// What a drawing needs.
const (
	NeedLine     NeedKey = "line"
	NeedGap      NeedKey = "gap"
	NeedEdge     NeedKey = "edge"
	NeedArea     NeedKey = "area"
	NeedCutOut   NeedKey = "cut-out"
	NeedBridge   NeedKey = "bridge"
	NeedCapitals NeedKey = "capitals"
	NeedSunk     NeedKey = "sunk"
)

// Need is one limit of the maker on a canvas.
type Need struct {
	Key NeedKey `json:"key"`
	// Px is the least whole number of pixels that keeps to the limit, and Exact
	// the limit itself.
	Px    int     `json:"px"`
	Exact float64 `json:"exact"`
	MM    unit.MM `json:"mm"`
	// What says what it is ("No brush under"), Size what is asked for in pixels
	// ("8 px") and Beside the same in millimetres ("0.2 mm").
	What   string `json:"what"`
	Size   string `json:"size"`
	Beside string `json:"beside"`
	Why    string `json:"why"`
	short  string // its name on the guide
}

// Needs lists the limits of a plan in the pixels of its canvas.
func (p *Plan) Needs(c Canvas) []Need {
	l := p.Limits
	line := fmt.Sprintf("strokes of %s", px(l.Line, c))
	all := []Need{
		need(c, NeedLine, "line", "No brush under", l.Line, "A thinner line of metal breaks in the die or is polished away."),
		need(c, NeedGap, "gap", "No gap under", l.Area, "Between two lines; enamel does not flow into a narrower one."),
		need(c, NeedEdge, "edge", "Outer edge at least", l.Edge, "The metal that runs round the whole pin."),
		p.area(c),
		need(c, NeedCutOut, "cut-out", "Cut-outs at least", l.CutOut, "A hole right through, at its narrowest."+p.castWords()),
		need(c, NeedBridge, "bridge", "Bridges at least", l.Bridge, "Metal that holds two parts together, so that it does not bend."),
		need(c, NeedCapitals, "capitals", "Capitals at least", l.Lettering, "Raised letters of metal, with "+line+", and gaps as above."),
		need(c, NeedSunk, "sunk", "Sunk capitals at least", l.LetteringSunk, fmt.Sprintf("Letters of enamel in metal, with strokes of %s.", px(l.Area, c))),
	}
	return slices.DeleteFunc(all, func(n Need) bool {
		return !(n.MM > 0) || p.Fill == sizing.Unfilled && n.enamel()
	})
}

// enamel says whether a need is one of enamel alone.
func (n Need) enamel() bool { return n.Key == NeedGap || n.Key == NeedArea || n.Key == NeedSunk }

// castWords adds what a die does not cut freely (common practice, no published
// source).
func (p *Plan) castWords() string {
	if p.Making == sizing.Struck {
		return " Holes of a free shape want casting."
	}
	return ""
}

func need(c Canvas, key NeedKey, short, what string, mm unit.MM, why string) Need {
	return Need{
		Key: key, short: short, What: what, Why: why, MM: mm, Exact: mm.Px(c.Scale),
		Px: whole(mm, c), Size: px(mm, c), Beside: unit.InMM(mm, 2),
	}
}

// area is the smallest colour area, by the side of a square of that area.
func (p *Plan) area(c Canvas) Need {
	side := unit.MM(math.Sqrt(max(0, p.Limits.AreaSize)))
	n := need(c, NeedArea, "area", "Colour areas at least", side, "Too little room for a drop of enamel otherwise. Other shapes need as much in all.")
	n.Size = fmt.Sprintf("%d × %d px", n.Px, n.Px)
	n.Beside = strconv.FormatFloat(p.Limits.AreaSize, 'f', -1, 64) + " mm²"
	return n
}

// hair is what a length may be over a whole number of pixels without taking
// another, px: what a sum of floats leaves.
const hair = 1e-6

// whole returns a length in whole pixels, rounded up.
func whole(mm unit.MM, c Canvas) int { return int(math.Ceil(mm.Px(c.Scale) - hair)) }

func px(mm unit.MM, c Canvas) string { return fmt.Sprintf("%d px", whole(mm, c)) }
