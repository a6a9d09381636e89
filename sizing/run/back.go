package run

import (
	"fmt"

	"badgewright/sizing"
)

// BackPrices is what the back costs. A post and its clutch are in the unit price.
type BackPrices struct {
	Post Charge `json:"post"` // each post beside the first
	// Kinds is what another fastening, or another clutch, costs.
	Kinds Kinds `json:"kinds"`
	// Stamp is lettering or a mark on the back. It is cut with the die, so a
	// set-up for it is paid once a design.
	Stamp Charge `json:"stamp"`
}

func (s *sheet) fixing(p *priced) {
	b, it := &s.list.Back, p.item
	if it.Posts > 1 {
		s.charge(p, KeyPost, furtherPosts(it.Posts-1), b.Post, it.Posts-1, "back.post.rate", false)
	}
	if it.Fastening != sizing.PostAndClutch {
		c, cell := b.Kinds.of(string(it.Fastening))
		s.charge(p, KeyFastening, "Fastening: "+string(it.Fastening), c, 1, "back.kinds."+cell, true)
	}
	switch {
	case it.Stamped && b.Stamp.By != SetUp:
		s.charge(p, KeyStamp, "Stamp on the back", b.Stamp, 1, "back.stamp.rate", true)
	case it.Stamped && p.paysDie:
		s.onceFor(p, KeyStamp, "Stamp on the back, once", b.Stamp.Rate, 1, "back.stamp.rate")
	}
}

func (v *validation) fixing(b *BackPrices) {
	v.charge("back.post", b.Post)
	v.kinds("back.kinds", b.Kinds)
	v.charge("back.stamp", b.Stamp)
}

func furtherPosts(n int) string {
	if n == 1 {
		return "Second post"
	}
	return fmt.Sprintf("%d further posts", n)
}
