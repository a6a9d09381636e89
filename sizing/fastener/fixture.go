package fastener

import "badgewright/sizing"

// fixture is a fastening as a thing: what it needs of the back, what it weighs
// and how far it stands out. Sizes in mm, masses in g, of one piece of it.
type fixture struct {
	kind sizing.Fastening
	name string // one of it, in words
	many string
	// cover is the diameter of what must stay hidden behind the pin, pad of what
	// is soldered or glued to it.
	cover, pad float64
	fixed      sizing.Range // mass of what is fixed to the pin
	loose      sizing.Range // mass of what comes off: a clutch, a nut, the other magnet
	stands     sizing.Range // how far what is fixed stands out behind
	behind     sizing.Range // how thick what comes off lies behind the card
	caution    string
}

// The fastenings (sizes and masses: common practice, no published source). A
// post is about 1.1 mm thick and 8 to 9 mm long.
var (
	posts = fixture{
		kind: sizing.PostAndClutch, name: "post", many: "posts",
		cover: butterfly, pad: padAcross,
		fixed: sizing.Range{Low: 0.1, High: 0.25}, loose: sizing.Range{Low: 0.4, High: 1},
		stands: sizing.Range{Low: 8, High: 9}, behind: sizing.Range{Low: 5, High: 7},
		caution: "A post is sharp, and a clutch comes off.",
	}
	magnets = fixture{
		kind: sizing.MagnetBack, name: "magnet", many: "magnets",
		cover: 13, pad: 13,
		fixed: sizing.Range{Low: 1, High: 2.5}, loose: sizing.Range{Low: 1, High: 2.5},
		stands: sizing.Range{Low: 1.5, High: 3}, behind: sizing.Range{Low: 1.5, High: 3},
		caution: "It leaves no hole, but it slips on thick cloth, and a loose strong magnet is dangerous when swallowed and near a medical implant.",
	}
	screws = fixture{
		kind: sizing.ScrewBack, name: "screw back", many: "screw backs",
		cover: 10, pad: 8,
		fixed: sizing.Range{Low: 0.4, High: 0.8}, loose: sizing.Range{Low: 0.6, High: 1.5},
		stands: sizing.Range{Low: 7, High: 9}, behind: sizing.Range{Low: 2, High: 4},
		caution: "It holds fast, but its post makes a wider hole, and the nut takes two hands and comes off.",
	}
	bars = fixture{
		kind: sizing.PinBar, name: "pin bar", many: "pin bars",
		cover: 6, pad: 5,
		fixed: sizing.Range{Low: 0.8, High: 2}, loose: sizing.Range{},
		stands: sizing.Range{Low: 5, High: 7}, behind: sizing.Range{},
		caution: "Nothing comes off, and a bar cannot turn; its needle is long and sharp, and it marks the cloth in two places.",
	}
)

// fixtures are those that can be chosen, posts first.
func fixtures() []fixture { return []fixture{posts, magnets, bars, screws} }

// fixtureOf finds the one chosen; what is not known is a post.
func fixtureOf(k sizing.Fastening) fixture {
	for _, f := range fixtures() {
		if f.kind == k {
			return f
		}
	}
	return posts
}

// barLengths are the usual ones, mm, longest first (common practice, no
// published source).
var barLengths = []float64{38, 32, 25, 20, 15}
