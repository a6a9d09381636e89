package calls

import (
	"fmt"
	"strings"

	"badgewright/reduce/colour"
	"badgewright/sizing/apart"
	"badgewright/sizing/unit"
	"badgewright/wasm/wire"
)

// glance is the answer at a glance: the sizes at which a design can be made and
// read, beside the one asked for.
func glance(s *Session, job Job, ask wire.GlanceAsk) (Reply, error) {
	if err := checkSight(ask.Viewing, &ask.Thresholds); err != nil {
		return Reply{}, err
	}
	u, err := s.subject(&ask.Picked, job.Progress)
	if err != nil {
		return Reply{}, err
	}
	k, err := u.looked(ask.AsDrawn, job.Progress)
	if err != nil {
		return Reply{}, err
	}
	if _, err := u.base.widths(job.Progress); err != nil {
		return Reply{}, err
	}
	made, says, err := u.madeAt(u.holdsFrom(u.base.measured, u.design.Limits), u.design.Limits, job.Progress)
	if err != nil {
		return Reply{}, err
	}
	asked := u.design.Size.MM
	g := wire.Glance{From: curveFrom, To: curveTo, Made: made, MadeSays: says, Asked: unit.Shown(asked)}
	g.ReadFrom, g.LettersFrom = apart.ReadFrom(k.measured, u.design.Lettering, u.scene(k, colour.RGB8{}), ask.Viewing, &ask.Thresholds)
	for _, r := range made {
		g.CanMake = g.CanMake || asked >= r.From.MM && (r.To.MM == 0 || asked <= r.To.MM)
	}
	g.CanRead = g.ReadFrom.MM > 0 && asked >= g.ReadFrom.MM
	g.Words = glanceWords(&g, nameOfDistance(ask.Viewing.Distance))
	return Reply{Answer: g}, nil
}

func glanceWords(g *wire.Glance, where string) string {
	read := fmt.Sprintf("everything can be read %s from %s", where, g.ReadFrom.InMM)
	if g.ReadFrom.MM == 0 {
		read = fmt.Sprintf("no size of pin can be read wholly %s", where)
	}
	made := "As drawn it " + g.MadeSays
	if len(g.Made) == 0 {
		made = strings.ToUpper(g.MadeSays[:1]) + g.MadeSays[1:]
	}
	return fmt.Sprintf("%s; %s; you asked for %s.", made, read, g.Asked.InMM)
}
