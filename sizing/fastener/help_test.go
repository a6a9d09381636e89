package fastener

import (
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// wished is a plain wish: soft fill, the usual depths.
func wished(b *sizing.Badge, base sizing.BaseMetal, thickness unit.MM, choice sizing.PostCount) Wish {
	return Wish{
		Stuff:  Stuff{Base: base, Thickness: thickness, Fill: sizing.Soft, Depths: sizing.UsualDepths()},
		Filled: Filled(b.Sep), Posts: choice, Pieces: 100,
	}
}

// Advise looks at a badge and advises at once.
func Advise(b *sizing.Badge, base sizing.BaseMetal, thickness unit.MM, choice sizing.PostCount) (Advice, error) {
	s, err := ShapeOf(b.Sep, b.Outline)
	if err != nil {
		return Advice{}, err
	}
	return s.Advise(b.Scale, wished(b, base, thickness, choice))
}
