// Package wire holds the request and answer of every call between the page and
// the engine. It is the one schema: the TypeScript twin is generated from it.
//
// Places called X and Y are in working pixels of the drawing (origin top left,
// y down) unless they say otherwise.
package wire

import (
	"badgewright/reduce"
	"badgewright/reduce/colour"
	"badgewright/reduce/colourlist"
	"badgewright/sizing"
	"badgewright/sizing/caution"
	"badgewright/sizing/fastener"
	"badgewright/sizing/run"
	"badgewright/sizing/unit"
)

// Format is the version of the project value and of the project file: see sizing/save.
const Format = 2

// Project is everything the person has made: the shape of the project file, of
// the wire and of the page's one value.
type Project struct {
	Format int   `json:"format"`
	Order  Order `json:"order"`
	Plans  Plans `json:"plans,omitempty,omitzero"`
	// At is which version of which design lies on the sheet; the first of the
	// first when absent.
	At OrderPlace `json:"at,omitempty,omitzero"`
}

// Order holds designs and the price lists to judge them by.
type Order struct {
	Name       string          `json:"name"`
	Designs    []sizing.Design `json:"designs"`
	PriceLists []run.PriceList `json:"priceLists"`
	PriceList  string          `json:"priceList"` // ID of the one in use
	Terms      run.Terms       `json:"terms,omitempty,omitzero"`
	// ColourList is the maker's codes, once the person has brought them.
	ColourList *colourlist.ColourList `json:"colourList,omitempty"`
}

// Picked names one version of one design of a project.
type Picked struct {
	Project Project `json:"project"`
	Design  int     `json:"design"`
	Version int     `json:"version"`
}

// HelloAsk asks for everything that never changes.
type HelloAsk struct{}

// Hello is what the page needs before any drawing.
type Hello struct {
	MaxCount        int              `json:"maxCount"`
	WorkingLongSide int              `json:"workingLongSide"`
	HeaderBytes     int              `json:"headerBytes"` // how much of a file the header call wants to see
	Platings        []sizing.Plating `json:"platings"`
	// Starting is a set of colours that sit well together, to recolour with.
	Starting []NamedColour `json:"starting"`
	// Blank is a project with the default price list and one empty design.
	Blank Project `json:"blank"`
	// Limits holds the usual limits: struck soft, struck hard, cast soft, cast hard, in this order.
	Limits []LimitsFor `json:"limits"`
	// LeastSize and GreatestSize bound the size of a pin.
	LeastSize    unit.MM `json:"leastSize"`
	GreatestSize unit.MM `json:"greatestSize"`
	// Finishes is what can set a fill or a metal apart, by role.
	Finishes []FinishesFor `json:"finishes"`
	Back     BackUsual     `json:"back"`
	Eye      EyeUsual      `json:"eye"`
}

// FinishesFor is the finishes that flats of a role can have, the plain one first.
type FinishesFor struct {
	Role     reduce.Role     `json:"role"`
	Finishes []sizing.Finish `json:"finishes"`
}

// NamedColour is a colour and its plain name.
type NamedColour struct {
	Name string      `json:"name"`
	RGB  colour.RGB8 `json:"rgb"`
}

// LimitsFor is the usual limits for one making and fill.
type LimitsFor struct {
	Making sizing.Making `json:"making"`
	Fill   sizing.Fill   `json:"fill"`
	Limits sizing.Limits `json:"limits"`
}

// HeaderAsk comes with the first bytes of a file.
type HeaderAsk struct {
	FileName string `json:"fileName"`
	Size     int64  `json:"size"` // of the whole file, bytes
}

// Header is what a file says of itself before it is decoded.
type Header struct {
	Format string `json:"format"` // png, jpeg, webp, avif, gif, svg
	W      int    `json:"w"`      // as shown, after EXIF rotation; 0 when an SVG does not say
	H      int    `json:"h"`
	// Space is the canvas colour space to decode in: "srgb", or "display-p3"
	// when the file carries another profile.
	Space string `json:"space"`
	// WorkW and WorkH are the working raster the file should be drawn at.
	WorkW int `json:"workW"`
	WorkH int `json:"workH"`
}

// OpenAsk comes with the pixels (RGBA, straight alpha, 4*W*H bytes), or with
// those of two pictures, one after the other.
type OpenAsk struct {
	ID       string              `json:"id"`
	FileName string              `json:"fileName"`
	W        int                 `json:"w"`
	H        int                 `json:"h"`
	FileW    int                 `json:"fileW"`
	FileH    int                 `json:"fileH"`
	Space    string              `json:"space"`
	Ground   reduce.GroundChoice `json:"ground"`
	// Finest is the long side, px, at which the whole file could be drawn: its
	// own, or any for a vector drawing; 0 when it cannot be drawn again.
	Finest int `json:"finest"`
	// Part is what the pixels show of the file, when an answer asked for it.
	Part reduce.Part `json:"part"`
	// Second is there when lines and colours come apart, in either order.
	Second *SecondPicture `json:"second,omitempty"`
}

// SecondPicture is the other half of a drawing brought as lines and colours.
// It comes at the working raster of the first.
type SecondPicture struct {
	FileName string `json:"fileName"`
	FileW    int    `json:"fileW"`
	FileH    int    `json:"fileH"`
	Space    string `json:"space"`
}

// GroundAsk looks at an opened drawing again with another choice of background.
type GroundAsk struct {
	Drawing string              `json:"drawing"`
	Ground  reduce.GroundChoice `json:"ground"`
}

// Closer asks for the drawing again: the part of its file that is drawn, at
// another working raster.
type Closer struct {
	Part  reduce.Part `json:"part"`
	WorkW int         `json:"workW"`
	WorkH int         `json:"workH"`
}

// Opened is what the engine made of a drawing, and what it proposes.
type Opened struct {
	Drawing string `json:"drawing"`
	// Closer is there when the drawing is small on its canvas and its file can
	// show it better: nothing else is answered, open it again so.
	Closer *Closer `json:"closer,omitempty"`
	W      int     `json:"w"`
	H      int     `json:"h"`
	// Ground is what was found: clear, paper or none.
	Ground     reduce.GroundChoice `json:"ground"`
	GroundRGB  colour.RGB8         `json:"groundRGB"`
	GroundNote string              `json:"groundNote"`
	Clipped    float64             `json:"clipped"` // share of visible pixels outside sRGB
	// Suggested is the number of enamels the drawing has, and why.
	Suggested int    `json:"suggested"`
	Reason    string `json:"reason"`
	// Lined is true when dark line work was found and turned to metal, and
	// Layers when the lines came on a picture of their own.
	Lined  bool     `json:"lined"`
	Layers bool     `json:"layers"`
	Notes  []string `json:"notes"`
	// Design is a design ready to be shown: count, recipes, size and making proposed.
	Design sizing.Design `json:"design"`
}

// ThumbnailAsk asks for a small picture of an opened drawing, as brought; the
// answer comes with RGBA pixels (straight alpha).
type ThumbnailAsk struct {
	Drawing  string `json:"drawing"`
	LongSide int    `json:"longSide"` // px, 16..512; a smaller drawing comes as it is
}

// Thumbnail is the size of the pixels that come with it.
type Thumbnail struct {
	W int `json:"w"`
	H int `json:"h"`
	// Clear is true when one sees through part of it.
	Clear bool   `json:"clear"`
	Words string `json:"words"` // what it shows, for those who cannot see it
}

// FlatsAsk asks for the flat drawing.
type FlatsAsk struct {
	Drawing string         `json:"drawing"`
	Options reduce.Options `json:"options"`
}

// Flats is the flat drawing without its pixels.
type Flats struct {
	W     int           `json:"w"`
	H     int           `json:"h"`
	Count int           `json:"count"` // enamels in it
	Flats []reduce.Flat `json:"flats"`
	// Spots gives, for each flat in order, a place well inside its largest area.
	Spots []Spot `json:"spots"`
	// Codes is what the version calls flats in a maker's list.
	Codes []FlatCode `json:"codes,omitempty"`
}

// Spot is a place well inside an area, for a callout to point at.
type Spot struct {
	Flat   reduce.FlatID `json:"flat"`
	X      float64       `json:"x"`
	Y      float64       `json:"y"`
	Pieces int           `json:"pieces"` // areas of this flat
}

// CheckAsk asks for everything that follows from a picked version.
type CheckAsk struct {
	Picked Picked `json:"picked"`
}

// Check is the whole check of a picked version.
type Check struct {
	Flats    Flats            `json:"flats"`
	W        unit.MM          `json:"w"`
	H        unit.MM          `json:"h"`
	Longest  unit.MM          `json:"longest"`
	Mean     unit.MM          `json:"mean"`
	Shown    Measures         `json:"shown"`   // the same as they are shown
	Scale    unit.PxPerMM     `json:"scale"`   // working px per mm
	Outline  [4]float64       `json:"outline"` // box of the silhouette, working px
	Findings []sizing.Finding `json:"findings"`
	// Lettering says how each marked capital holds, in the design's order.
	Lettering []sizing.Lettered `json:"lettering,omitempty"`
	// Parts is how it holds together; absent when it is drawn in one piece.
	Parts *HeldParts `json:"parts,omitempty"`
	// Proposal is metal that was not drawn and that waits for a yes; absent when
	// there is none.
	Proposal *Proposal `json:"proposal,omitempty"`
	// Next is what happens with one enamel fewer; absent when none can go.
	Next *Next `json:"next,omitempty"`
	// HoldsFrom is the smallest size, by the design's measure, at which no line
	// or area fails as drawn; 0 when none up to 120 mm does.
	HoldsFrom unit.MM `json:"holdsFrom"`
	// GrowTo is HoldsFrom when the design is smaller than that; else its mm are 0.
	GrowTo unit.Length `json:"growTo"`
	// ShrinkTo is the largest size that holds when the design is larger than that;
	// else its mm are 0.
	ShrinkTo unit.Length     `json:"shrinkTo"`
	Back     fastener.Advice `json:"back"`
	// Places is where the posts of Back stand as seen from behind, in order.
	Places []Place `json:"places"`
	// Fixings is how each fastening would stand on it, posts first.
	Fixings []fastener.Fixing `json:"fixings"`
	// Stamp is where lettering goes on the back, when some is asked for;
	// StampProblem says why it cannot.
	Stamp        *fastener.Stamped `json:"stamp,omitempty"`
	StampProblem string            `json:"stampProblem"`
	// Cautions are those its parts and its buyers call for.
	Cautions []caution.Caution `json:"cautions"`
	Quote    run.Quote         `json:"quote"`
	// QuoteProblem says why there is no quote; empty when there is one.
	QuoteProblem string `json:"quoteProblem"`
	// Verdict is the one-line answer: can it be made?
	Verdict sizing.Verdict `json:"verdict"`
	Words   string         `json:"words"`
}

// Next is the two colours that join when one enamel fewer is asked for.
type Next struct {
	Joining reduce.Joining `json:"joining"`
	Words   string         `json:"words"`
}

// Measures is the measures of a silhouette, to be shown.
type Measures struct {
	W       unit.Length `json:"w"`
	H       unit.Length `json:"h"`
	Longest unit.Length `json:"longest"`
	Mean    unit.Length `json:"mean"`
	// Width by height, the unit said once: "35.5 × 38 mm".
	InMM     string `json:"inMM"`
	InInches string `json:"inInches"`
}

// QuoteAsk asks for the price alone.
type QuoteAsk struct {
	Picked Picked `json:"picked"`
}

// ChoicesAsk asks what each change near at hand costs.
type ChoicesAsk struct {
	Picked Picked `json:"picked"`
	// Order is all that is ordered together with the picked version, which is
	// its item at Item; absent when it is ordered alone.
	Order *run.Wanted `json:"order,omitempty"`
	Item  int         `json:"item,omitempty"`
}

// Choices is what each change costs from where the picked version stands; no
// rows when the version itself has no price.
type Choices struct {
	Rows []run.Choice `json:"rows"`
}

// View is which picture of a design is wanted.
type View string

// The views of a design.
const (
	ViewStruck  View = "struck"  // as a pin, from the front
	ViewBack    View = "back"    // as a pin, from behind (mirrored)
	ViewFlat    View = "flat"    // the flat drawing
	ViewDrawing View = "drawing" // as brought
	ViewNext    View = "next"    // where a colour would be lost with one enamel fewer
	ViewChanged View = "changed" // where the drawing differs from the one before it on the sheet
)

// PictureAsk asks for a picture; the answer comes with RGBA pixels (straight alpha).
type PictureAsk struct {
	Picked   Picked `json:"picked"`
	View     View   `json:"view"`
	LongSide int    `json:"longSide"` // of the picture, px, 16..4096
}

// Picture places the pixels that come with it: a point (x, y) of the working
// raster lies at (x*Scale+DX, y*Scale+DY) of the picture; in ViewBack x is
// first mirrored about the middle of the outline's box.
type Picture struct {
	W     int     `json:"w"`
	H     int     `json:"h"`
	Scale float64 `json:"scale"`
	DX    float64 `json:"dx"`
	DY    float64 `json:"dy"`
}

// TouchAsk asks what lies under a place of the picture.
type TouchAsk struct {
	Picked Picked  `json:"picked"`
	X      float64 `json:"x"`
	Y      float64 `json:"y"`
}

// Touch is what lies under a place.
type Touch struct {
	Hit   bool          `json:"hit"` // false on the background
	Flat  reduce.FlatID `json:"flat"`
	Area  float64       `json:"area"`  // mm2, of the one closed area or connected line
	Width unit.MM       `json:"width"` // local width
	Built bool          `json:"built"` // a line or edge that a recipe built
	// Gap is where a fill of this place would leak; absent when it would not.
	Gap *Gap `json:"gap,omitempty"`
	// Lines drawn or erased by hand, which a fill of this place minds: they go
	// with the edit.
	Lines []reduce.HandLine `json:"lines,omitempty"`
}

// Gap is an opening where a line does not close.
type Gap struct {
	Ends  [4]float64  `json:"ends"` // x0 y0 x1 y1, in shares of the drawing's width and height
	Width unit.Length `json:"width"`
	// Open is true when it leads out of the drawing, false into another area.
	Open bool `json:"open"`
}

// FailureKind says why a call gave no answer.
type FailureKind string

// The kinds of failure. Gone asks the page to open the drawing's file again.
const (
	Refused FailureKind = "refused"
	Stopped FailureKind = "stopped"
	Crashed FailureKind = "crashed"
	Gone    FailureKind = "gone"
)

// Failure is an error in words.
type Failure struct {
	What string      `json:"what"` // what happened and where
	Do   string      `json:"do"`   // what to do about it
	Kind FailureKind `json:"kind"`
}
