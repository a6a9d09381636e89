package sheet

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"badgewright/reduce"
	"badgewright/reduce/colour"
	"badgewright/sizing"
	"badgewright/sizing/fastener"
	"badgewright/sizing/fit"
	pricing "badgewright/sizing/run"
	"badgewright/sizing/unit"
)

// Units is what lengths are written in.
type Units string

// The units; the empty one is millimetres.
const (
	Millimetres Units = ""
	Inches      Units = "in"
)

// fineInches is the length below which an inch wants three places, mm.
const fineInches unit.MM = 12.7

// Say writes a length: to the hundredth of a mm, or of an inch, a small one to
// the thousandth.
func (u Units) Say(m unit.MM) string {
	if u != Inches {
		return unit.InMM(m, 2)
	}
	if m < fineInches && m > -fineInches {
		return strconv.FormatFloat(m.Inches(), 'f', 3, 64) + " in"
	}
	return unit.InInches(m)
}

// SayArea writes an area in mm2, or in square inches to four places.
func (u Units) SayArea(mm2 float64) string {
	if u != Inches {
		return unit.InMM2(mm2, 2)
	}
	return strconv.FormatFloat(mm2/(unit.MMPerInch*unit.MMPerInch), 'f', 4, 64) + " in²"
}

// Asked is one version of one design as the papers in words speak of it.
type Asked struct {
	Design    string           `json:"design"`
	DesignID  string           `json:"designId"`
	Version   string           `json:"version"`
	Size      sizing.Size      `json:"size"`
	W         unit.MM          `json:"w"`
	H         unit.MM          `json:"h"`
	Making    sizing.Making    `json:"making"`
	Base      sizing.BaseMetal `json:"base"`
	Thickness unit.MM          `json:"thickness"`
	Plating   string           `json:"plating"`
	Limits    sizing.Limits    `json:"limits"`
	Colours   []AskedColour    `json:"colours"`
	// Item is the same as an order is priced by, its cut-outs among it.
	Item  pricing.Item `json:"item"`
	Posts []AskedPlace `json:"posts"`
	Bar   unit.MM      `json:"bar"`
	// Stamp is the back stamp in words; empty for none.
	Stamp string      `json:"stamp"`
	Spots []AskedSpot `json:"spots"`
}

// AskedColour is one colour of a version.
type AskedColour struct {
	No     int           `json:"no"` // from 1, metal last
	Flat   reduce.FlatID `json:"flat"`
	Name   string        `json:"name"`
	Role   reduce.Role   `json:"role"`
	RGB    colour.RGB8   `json:"rgb"`
	Code   string        `json:"code"`
	Named  string        `json:"named"`
	Finish sizing.Finish `json:"finish"`
	// Share of the drawing without its background, 0..1.
	Share float64 `json:"share"`
}

// AskedPlace is where a post stands as seen from behind, from the middle of the
// pin.
type AskedPlace struct {
	No       int    `json:"no"`
	InMM     string `json:"inMM"`
	InInches string `json:"inInches"`
}

func (p AskedPlace) say(u Units) string {
	if u == Inches {
		return p.InInches
	}
	return p.InMM
}

// AskedSpot is a trouble spot and where it lies: mm from the left and the top of
// the silhouette as seen from the FRONT.
type AskedSpot struct {
	sizing.Finding `json:"finding"`
	No             int     `json:"no"`
	Colour         string  `json:"colour"` // of the flat it lies in; empty for none
	Left           unit.MM `json:"left"`
	Top            unit.MM `json:"top"`
}

// Source is all that Ask needs of a struck version.
type Source struct {
	Badge   *sizing.Badge // its flats in the version's colours
	Design  *sizing.Design
	Version *sizing.Version
	Plating string
	Back    *fastener.Advice
	Posts   []AskedPlace
	Stamp   *fastener.Stamped
	Spots   []sizing.Finding
	CutOuts int
}

// Ask gathers what the papers in words say of a version.
func Ask(s Source) Asked {
	d := s.Design
	a := Asked{
		Design: d.Name, DesignID: d.ID, Version: s.Version.Name, Size: d.Size, W: s.Badge.Width(), H: s.Badge.Height(),
		Making: d.Making, Base: d.Base, Thickness: d.Thickness, Plating: s.Plating, Limits: d.Limits,
		Item: fit.Item(d, s.Version, s.Badge, s.Back.Chosen), Posts: s.Posts, Bar: s.Back.Bar,
		Stamp: stampWords(d.Back.Stamp, s.Stamp), Colours: []AskedColour{}, Spots: []AskedSpot{},
	}
	a.Item.CutOuts = s.CutOuts
	if a.Posts == nil {
		a.Posts = []AskedPlace{}
	}
	for _, metal := range []bool{false, true} {
		for _, f := range s.Badge.Sep.Flats {
			if (f.Role == reduce.Metal) == metal && f.Role != reduce.CutOut {
				a.Colours = append(a.Colours, askedColour(len(a.Colours)+1, f, s.Version))
			}
		}
	}
	for i, f := range s.Spots {
		a.Spots = append(a.Spots, askedSpot(i+1, f, s.Badge))
	}
	return a
}

func askedColour(no int, f reduce.Flat, v *sizing.Version) AskedColour {
	c := AskedColour{No: no, Flat: f.ID, Name: f.Name, Role: f.Role, RGB: f.RGB, Finish: v.FinishOf(f), Share: f.Share}
	for _, own := range v.Colours {
		if own.Flat == f.ID && f.Role != reduce.Metal {
			c.Code, c.Named = own.Code, own.Named
		}
	}
	return c
}

func askedSpot(no int, f sizing.Finding, b *sizing.Badge) AskedSpot {
	f.Path = nil // the papers say where, they do not draw it
	s := AskedSpot{Finding: f, No: no}
	s.Left, s.Top = hundredth(b.Scale.MM(f.X-b.Outline[0])), hundredth(b.Scale.MM(f.Y-b.Outline[1]))
	for _, flat := range b.Sep.Flats {
		if flat.ID == f.Flat && flat.Role != reduce.Metal {
			s.Colour = flat.Name
		}
	}
	return s
}

func hundredth(m unit.MM) unit.MM { return unit.MM(math.Round(float64(m)*100) / 100) }

// stampWords is a back stamp in words.
func stampWords(want *sizing.Stamp, found *fastener.Stamped) string {
	if !want.Asked() {
		return ""
	}
	var parts []string
	if want.Mark != nil {
		parts = append(parts, "the mark as drawn")
	}
	for _, l := range want.Lines {
		if l = strings.TrimSpace(l); l != "" {
			parts = append(parts, fmt.Sprintf("“%s”", l))
		}
	}
	how := "cut in"
	if want.Raised {
		how = "raised"
	}
	words := strings.Join(parts, ", ") + ", " + how
	if found != nil && found.Height > 0 {
		words += fmt.Sprintf(", capitals %s high", unit.InMM(found.Height, 2))
	}
	return words
}
