package calls

import (
	"fmt"

	"badgewright/sizing/unit"
	"badgewright/wasm/wire"
)

// screen says how large things are on the screen that the page is on, and
// takes a check made on it.
func screen(_ *Session, _ Job, ask wire.ScreenAsk) (Reply, error) {
	here, kept := ask.Report.Screen(), unit.ReadKept(ask.Kept)
	scale, checked := kept.Find(here)
	t := wire.TrueSize{Card: card()}
	if ask.Match != nil {
		var err error
		if scale, err = here.Match(ask.Match.Px, ask.Match.Object); err != nil {
			return Reply{}, err
		}
		checked, t.Keep = true, kept.Keep(here, scale).Text()
	}
	if !checked {
		scale = here.Guess()
	}
	t.Screen, t.DevicePerMM, t.PerMM, t.Checked = here.Key(), scale, here.CSSPx(1, scale), checked
	t.Words, t.Says = sureness(checked, len(kept) > 0)
	return Reply{Answer: t}, nil
}

// sureness puts into words how sure a scale is; others tells that checks of
// other screens are kept.
func sureness(checked, others bool) (short, long string) {
	switch {
	case checked:
		return "checked here", "shown at its true size on this screen"
	case others:
		return "a guess until checked here", "this is another screen than was checked, so its size here is a guess"
	}
	return "a guess until checked", "its size on this screen is a guess until checked"
}

func card() wire.Card {
	return wire.Card{W: unit.CardWidth, H: unit.CardHeight, Words: fmt.Sprintf("%.2f × %.2f mm", unit.CardWidth, unit.CardHeight)}
}
