//go:build !pin

package calls

import (
	"fmt"
	"strings"

	"badgewright/sizing/unit"
	"badgewright/wasm/wire"
)

// canvasOf says what a pin that is not drawn yet wants of its drawing.
func canvasOf(_ *Session, _ Job, ask wire.CanvasAsk) (Reply, error) {
	p := &ask.Plan
	c, err := p.Canvas()
	if err != nil {
		return Reply{}, err
	}
	answer := wire.Canvas{
		W: c.W, H: c.H, Recommended: p.W == 0 && p.H == 0,
		PerMM: float64(c.Scale), PerInch: c.PerInch(),
		Scale: fmt.Sprintf("%.0f px to the millimetre, %.0f to the inch", float64(c.Scale), c.PerInch()),
		Size:  unit.Shown(p.Size), Needs: p.Needs(c),
		Safe:     fmt.Sprintf("%s inside the outline", unit.InMM(p.SafeZone(), 2)),
		Fineness: p.Fineness(c), Says: p.Says(c),
	}
	answer.Box, _ = unit.ShownBy(c.BoxW(), c.BoxH())
	if answer.Recommended {
		answer.Why = p.Why(c)
	}
	return Reply{Answer: answer}, nil
}

// guide draws the guide of a plan.
func guide(_ *Session, job Job, ask wire.GuideAsk) (Reply, error) {
	p := &ask.Plan
	c, err := p.Canvas()
	if err != nil {
		return Reply{}, err
	}
	file, err := p.Guide(c, ask.OnWhite).PNG(float64(c.Scale), telling(job, "drawing the guide"))
	if err != nil {
		return Reply{}, err
	}
	box, _ := unit.ShownBy(c.BoxW(), c.BoxH())
	return Reply{Answer: wire.PNGFile{
		W: c.W, H: c.H,
		FileName: fmt.Sprintf("pin-guide-%s-%dx%d.png", strings.ReplaceAll(unit.InMM(p.Size, 2), " ", ""), c.W, c.H),
		Words:    fmt.Sprintf("The guide: a box of %s in squares of a millimetre, with rulers, and the limits of the maker as samples beside it", box),
	}, Bytes: file}, nil
}
