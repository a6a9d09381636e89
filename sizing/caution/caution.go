// Package caution says what must be heeded of a pin as a thing that people
// wear and children find: which cautions its parts and its buyers call for,
// with clause and number. It never says that anything is without danger, and
// it leaves the last word to the law of the place of sale.
package caution

import (
	"fmt"

	"badgewright/sizing"
)

// Matter is what a caution is about.
type Matter string

// The matters, in the order they are shown in.
const (
	SmallParts Matter = "small-parts"
	Magnets    Matter = "magnets"
	Sharp      Matter = "sharp"
	Nickel     Matter = "nickel"
	Metals     Matter = "lead-and-cadmium"
	Law        Matter = "law"
)

// Caution is one of them.
type Caution struct {
	Matter Matter `json:"matter"`
	// Grave is true when the buyers stated are among those it is meant for.
	Grave bool     `json:"grave"`
	Says  string   `json:"says"`
	Do    string   `json:"do"`
	Rules []Rule   `json:"rules"`
	More  []string `json:"more"` // further sentences, behind "why?"
}

// Pin is what the cautions hang on.
type Pin struct {
	// Pieces are its parts as they may come apart, the one with the fastener first.
	Pieces    []Piece
	Fastening sizing.Fastening
	Plating   sizing.Plating
	Buyers    sizing.Buyers
	Tips      int // outward tips that were found sharp
}

// youngest is the least age of buyers in years.
var youngest = map[sizing.Buyers]int{
	sizing.Adults: 18, sizing.FromTeens: 13, sizing.FromEight: 8, sizing.FromThree: 3, sizing.UnderThree: 0,
}

// Ages at which rules change, years: the small-parts cylinder is for children
// under 3, sharp points for those under 8, a children's product is for 12 or
// younger, and California's children's jewelry for under 15.
const (
	smallPartsUnder  = 3
	sharpUnder       = 8
	childUpTo        = 12
	californiaUnder  = 15
	looseClutch      = 11.5 // mm, of the largest clutch (common practice, no published source)
	looseClutchDepth = 7.0
)

func (p *Pin) age() int {
	if a, ok := youngest[p.Buyers]; ok {
		return a
	}
	return youngest[sizing.Adults]
}

// For lists the cautions for a pin, always the same ones in the same order but
// for magnets.
func For(p Pin) []Caution {
	all := []Caution{p.smallParts()}
	if p.Fastening == sizing.MagnetBack {
		all = append(all, p.magnets())
	}
	all = append(all, p.sharp(), p.nickel(), p.metals(), p.law())
	for i := range all {
		if all[i].More == nil {
			all[i].More = []string{}
		}
	}
	return all
}

// smallParts always shows: what comes off a pin always fits the cylinder.
func (p *Pin) smallParts() Caution {
	c := Caution{Matter: SmallParts, Grave: p.age() < smallPartsUnder, Rules: []Rule{cylinder}}
	c.Says = looseWords(p.Fastening) + " " + p.pieceWords()
	c.Do = "Mark it: not a toy, small parts, keep from children under three."
	if c.Grave {
		c.Do = "Do not offer it for children under three: an article for them from which such a part comes off fails the test."
	}
	c.More = []string{
		"The cylinder is 31.75 mm across, 25.4 mm deep on one side and 57.15 mm on the other. The pin is tried in it flat, upright and askew, as a plate without its post, which makes it fit more easily.",
		"A maker's drawing is not a test: parts are also pulled, dropped and twisted before they are tried.",
	}
	return c
}

func looseWords(f sizing.Fastening) string {
	switch f {
	case sizing.MagnetBack:
		return "The loose half of a magnet always fits the small-parts cylinder, and so can be swallowed."
	case sizing.ScrewBack:
		return "The loose nut always fits the small-parts cylinder, and so can be swallowed."
	case sizing.PinBar:
		return "Nothing is meant to come off a pin bar, but a bar that is torn off fits the small-parts cylinder, and so can be swallowed."
	default:
		return "The loose clutch always fits the small-parts cylinder, and so can be swallowed."
	}
}

// pieceWords says whether the pin or a part of it fits too.
func (p *Pin) pieceWords() string {
	fits, near := 0, 0
	for _, q := range p.Pieces {
		switch FitOf(q) {
		case Fits:
			fits++
		case Boundary:
			near++
		}
	}
	one := len(p.Pieces) == 1
	switch {
	case fits > 0 && one:
		return "The pin itself fits it as well."
	case fits > 0:
		return fmt.Sprintf("%d of its %d parts fit it as well.", fits, len(p.Pieces))
	case near > 0 && one:
		return "The pin itself is so near the cylinder's size that only a gauge can tell: treat it as fitting."
	case near > 0:
		return "A part of it is so near the cylinder's size that only a gauge can tell: treat it as fitting."
	case one:
		return "The pin itself does not fit it as drawn."
	default:
		return "Its parts themselves do not fit it as drawn."
	}
}

func (p *Pin) magnets() Caution {
	return Caution{
		Matter: Magnets, Grave: true, Rules: []Rule{magnetFlux, toyMagnets},
		Says: "Strong magnets are dangerous when swallowed: two draw together through the gut. They also disturb pacemakers and other implants.",
		Do:   "Ask the maker for the flux index of each magnet, sell with a warning, and keep it away from children and from medical implants.",
		More: []string{"The limit for loose or separable magnets holds for jewellery for grown-ups too, so it is not only a matter of toys. The warning about implants is common practice; it has no clause here."},
	}
}

func (p *Pin) sharp() Caution {
	c := Caution{Matter: Sharp, Grave: p.age() < sharpUnder, Rules: []Rule{sharpPoint, sharpEdge, toyPoints}}
	c.Says = pointWords(p.Fastening)
	if p.Tips > 0 {
		c.Says += fmt.Sprintf(" %s of the outline can catch and scratch.", tips(p.Tips))
	}
	c.Do = p.pointDo(c.Grave)
	if p.Tips > 0 {
		c.Do += " Let the tips be rounded."
	}
	return c
}

func (p *Pin) pointDo(grave bool) string {
	switch magnet := p.Fastening == sizing.MagnetBack; {
	case magnet && grave:
		return "Have its edges tested before it is sold for children under eight."
	case magnet:
		return "Feel along its edge when the parcel comes."
	case grave:
		return "Such a point is sharp by its nature: for children under eight choose another fastening, and have it tested."
	default:
		return "Say so where it is sold, and ship it with its point covered."
	}
}

func pointWords(f sizing.Fastening) string {
	switch f {
	case sizing.MagnetBack:
		return "A magnet has no point, but the edge of the metal can be sharp."
	case sizing.PinBar:
		return "The needle of a pin bar is long and sharp."
	default:
		return "The post is sharp, and stands bare when its clutch comes off."
	}
}

func tips(n int) string {
	if n == 1 {
		return "A sharp tip"
	}
	return fmt.Sprintf("%d sharp tips", n)
}

func (p *Pin) nickel() Caution {
	c := Caution{Matter: Nickel, Grave: p.Plating.Nickel, Rules: []Rule{nickelSkin}}
	c.Says = fmt.Sprintf("A plating of %s is often laid on nickel, which can cause skin reactions.", p.Plating.Name)
	if p.Plating.Nickel {
		c.Says = fmt.Sprintf("A plating of %s bears nickel, which can cause skin reactions.", p.Plating.Name)
	}
	c.Do = "Ask the maker what lies under the plating, name nickel where you sell, and have the release measured if the back can touch skin."
	c.More = []string{"Release is measured by EN 1811, after wear by EN 12472; the edition in force at the place of sale counts."}
	return c
}

// metals gives the limits for those it is sold to.
func (p *Pin) metals() Caution {
	c := Caution{Matter: Metals, Rules: []Rule{leadJewellery, cadmium}}
	c.Says = "Lead and cadmium are limited in jewellery, and a pin counts as a brooch."
	c.Do = "Ask the maker for a test report on this metal, this plating and these colours."
	age := p.age()
	if age <= childUpTo {
		c.Grave = true
		c.Says += " Meant for children of twelve or younger it is a children's product in the US, with a stricter limit."
		c.Do = "Have it tested by a qualified laboratory before it is sold for children, and keep the report."
		c.Rules = append(c.Rules, leadChildren, leadPaint, childrensProduct)
	}
	if age < californiaUnder {
		c.Grave = true
		c.Rules = append(c.Rules, leadCaliforniaChildren)
	} else {
		c.Rules = append(c.Rules, leadCalifornia)
	}
	c.Rules = append(c.Rules, warning65)
	c.More = []string{"What is judged is what it is meant for and how it is shown: a cheerful animal may be taken for a children's product whatever the label says."}
	return c
}

func (p *Pin) law() Caution {
	return Caution{
		Matter: Law, Rules: []Rule{productSafety},
		Says: "These are the usual cautions, read from the sources named; they are not legal advice, other rules may apply, and rules change.",
		Do:   "The law of the place of sale decides, and a qualified laboratory can tell where your pin stands under it.",
	}
}
