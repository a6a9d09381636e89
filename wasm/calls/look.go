package calls

import (
	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/eye"
	"badgewright/sizing/sight"
	"badgewright/sizing/unit"
	"badgewright/wasm/wire"
)

// lookedAt draws the struck pin on cloth, as it is or as an eye sees it.
func lookedAt(s *Session, job Job, ask wire.LookAsk) (Reply, error) {
	if err := checkLongSide(ask.LongSide); err != nil {
		return Reply{}, err
	}
	if !ask.Plain {
		if err := ask.Viewing.Check(); err != nil {
			return Reply{}, err
		}
	}
	u, err := s.subject(&ask.Picked, job.Progress)
	if err != nil {
		return Reply{}, err
	}
	k, err := u.struck()
	if err != nil {
		return Reply{}, err
	}
	to := sight.Frame(k.badge, ask.LongSide)
	longSide := ask.LongSide
	if !ask.Plain {
		longSide = eyesLongSide(longSide, k.badge.Scale.MM(1/to.Scale), ask.Viewing)
	}
	img, err := u.pinOnce(k, longSide, job.Progress)
	if err != nil {
		return Reply{}, err
	}
	pic := eye.OnCloth(eye.Picture{W: img.W, H: img.H, Pix: img.Pix}, ask.Cloth)
	if !ask.Plain {
		by := to.Scale / img.Scale
		onto := eye.Onto{W: to.W, H: to.H, Scale: by, DX: to.DX - float64(img.DX*by), DY: to.DY - float64(img.DY*by)}
		if longSide == ask.LongSide {
			onto = pic.Itself()
		}
		if pic, err = eye.Seen(pic, k.badge.Scale.MM(1/img.Scale), ask.Viewing, ask.Cloth, onto, job.Progress); err != nil {
			return Reply{}, err
		}
	}
	return Reply{
		Answer: wire.Picture{W: to.W, H: to.H, Scale: to.Scale, DX: to.DX, DY: to.DY},
		Bytes:  rgba(pic.Pix),
	}, nil
}

// eyesLongSide is a long side in px at which a picture, asked for at px of pitch
// mm, need be drawn for an eye to miss nothing: half as fine again as it
// resolves. It is a part of what was asked for in few steps, so that a distance
// that is dragged seldom wants another.
func eyesLongSide(px int, pitch unit.MM, v eye.Viewing) int {
	least := px
	for _, part := range []int{2, 3, 4, 6, 8, 12, 16} {
		if px/part >= leastForEye && 2*v.SamplesPerDegree(pitch*unit.MM(part)) >= 3*eye.Resolved {
			least = px / part
		}
	}
	return least
}

// leastForEye is a long side that no smaller is drawn: it costs next to nothing.
const leastForEye = 256

// pinOnce draws the front, or finds it drawn: a distance that is dragged asks
// for the same pin again and again.
func (u *subject) pinOnce(k *struck, longSide int, p reduce.Progress) (*sight.Image, error) {
	key := keyOf(u.key, pinKey{accepted(u.design.Struck()), k.badge.Scale, u.design.Limits, u.design.Fill, u.version.Plating, u.version.Colours, longSide})
	if img, ok := u.session.pins.get(key); ok {
		return img, nil
	}
	img, err := u.pin(k, sight.Front, longSide, p)
	if err == nil {
		u.session.pins.put(key, img)
	}
	return img, err
}

// pinKey is everything that the front of a pin depends on, its flat drawing apart.
type pinKey struct {
	Recipes  []sizing.Recipe
	Scale    unit.PxPerMM
	Limits   sizing.Limits
	Fill     sizing.Fill
	Plating  sizing.PlatingID
	Colours  []sizing.VersionColour
	LongSide int
}
