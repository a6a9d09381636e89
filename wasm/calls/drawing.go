package calls

import (
	"cmp"
	"fmt"
	"math"

	"badgewright/reduce"
	"badgewright/reduce/colour"
	"badgewright/sizing"
	"badgewright/sizing/unit"
	"badgewright/sizing/wall"
	"badgewright/wasm/wire"
)

// header reads the start of a file, before anything is decoded.
func header(_ *Session, job Job, ask wire.HeaderAsk) (Reply, error) {
	h, err := reduce.ReadHeader(ask.FileName, ask.Size, job.Bytes)
	if err != nil {
		return Reply{}, err
	}
	w, ht := reduce.WorkingSize(h.W, h.H, reduce.WorkingLongSide)
	space := "srgb"
	if h.WideProfile {
		space = "display-p3"
	}
	return Reply{Answer: wire.Header{Format: h.Format, W: h.W, H: h.H, Space: space, WorkW: w, WorkH: ht}}, nil
}

// open takes the pixels of a drawing and says what was found in it.
func open(s *Session, job Job, ask wire.OpenAsk) (Reply, error) {
	b, first := Brought{ID: ask.ID, FileName: ask.FileName, Ground: ask.Ground}, job.Bytes
	var err error
	if two := ask.Second; two != nil {
		half := len(first) / 2
		b.SecondName = two.FileName
		if b.Second, err = drawingIn(first[half:], ask.W, ask.H, two.FileW, two.FileH, two.Space); err != nil {
			return Reply{}, err
		}
		b.Second.Part = ask.Part
		first = first[:half]
	}
	if b.Drawing, err = drawingIn(first, ask.W, ask.H, ask.FileW, ask.FileH, ask.Space); err != nil {
		return Reply{}, err
	}
	b.Drawing.Part, b.Finest = ask.Part, ask.Finest
	return s.Open(b, job.Progress)
}

// drawingIn reads one picture from its pixels.
func drawingIn(bytes []byte, w, h, fileW, fileH int, space string) (*reduce.Drawing, error) {
	pix, err := pixels(bytes, w, h)
	if err != nil {
		return nil, err
	}
	d, err := reduce.NewDrawing(w, h, pix)
	if err != nil {
		return nil, err
	}
	d.FileW, d.FileH = cmp.Or(fileW, w), cmp.Or(fileH, h)
	if space == "display-p3" {
		d.Clipped = reduce.FromDisplayP3(pix)
	}
	return d, nil
}

// Brought is a decoded drawing and where it comes from; with a second picture
// the two are its lines and its colours, in either order.
type Brought struct {
	ID                   string
	FileName, SecondName string
	Drawing, Second      *reduce.Drawing
	Ground               reduce.GroundChoice
	// Finest is the long side, px, at which the file could be drawn again; 0
	// when it could not.
	Finest int
}

// Open keeps a drawing and says what was found in it. One that is refused
// leaves every other as it was.
func (s *Session) Open(b Brought, p reduce.Progress) (Reply, error) {
	o := &opened{id: b.ID, fileName: b.FileName, name: nameFrom(b.FileName), drawing: b.Drawing, choice: b.Ground}
	if b.Second != nil {
		var err error
		if o.layers, err = reduce.LayersOf(b.Drawing, b.Second); err != nil {
			return Reply{}, err
		}
		o.drawing = o.layers.Whole
		o.fileName, o.name = b.FileName+" and "+b.SecondName, nameOfBoth(b.FileName, b.SecondName)
	}
	if closer, err := closerLook(o, b.Finest); closer != nil || err != nil {
		return Reply{Answer: wire.Opened{Drawing: o.id, Closer: closer}}, err
	}
	o, err := s.look(o, p)
	if err != nil {
		return Reply{}, err
	}
	return s.describe(o, p)
}

// closerLook finds the ground and asks for the drawing again, closer, when its
// file has more to show.
func closerLook(o *opened, finest int) (*wire.Closer, error) {
	d := o.drawing
	if !d.Part.Whole() || finest <= max(d.W, d.H) {
		return nil, nil
	}
	var err error
	if o.ground, err = reduce.FindGround(d, o.choice); err != nil {
		return nil, err
	}
	part, ok := d.Closer(o.ground, finest)
	if !ok {
		return nil, nil
	}
	closer := wire.Closer{}
	closer.Part, closer.WorkW, closer.WorkH = reduce.WorkingPart(part, d.FileW, d.FileH, finest)
	return &closer, nil
}

// ground looks at an opened drawing again with another background.
func ground(s *Session, job Job, ask wire.GroundAsk) (Reply, error) {
	o, err := s.drawing(ask.Drawing, ask.Ground, job.Progress)
	if err != nil {
		return Reply{}, err
	}
	return s.describe(o, job.Progress)
}

// The thumbnails that can be asked for, px on the long side.
const (
	leastThumbnail    = 16
	greatestThumbnail = 512
)

// thumbnail gives a small picture of a drawing as brought.
func thumbnail(s *Session, job Job, ask wire.ThumbnailAsk) (Reply, error) {
	if ask.LongSide < leastThumbnail || ask.LongSide > greatestThumbnail {
		return Reply{}, &reduce.Refusal{
			What: fmt.Sprintf("A small picture of %d px cannot be drawn.", ask.LongSide),
			Do:   fmt.Sprintf("Ask for %d to %d px.", leastThumbnail, greatestThumbnail),
		}
	}
	o, err := s.drawing(ask.Drawing, "", job.Progress)
	if err != nil {
		return Reply{}, err
	}
	small := reduce.Thumbnail(o.drawing, ask.LongSide)
	return Reply{
		Answer: wire.Thumbnail{W: small.W, H: small.H, Clear: seenThrough(small), Words: "The drawing as brought, " + lyingOn(o)},
		Bytes:  rgba(small.Pix),
	}, nil
}

func seenThrough(d *reduce.Drawing) bool {
	for _, p := range d.Pix {
		if p>>24 < 255 {
			return true
		}
	}
	return false
}

// lyingOn says what was found round a drawing.
func lyingOn(o *opened) string {
	switch o.ground.Found {
	case reduce.GroundClear:
		return "on a transparent background"
	case reduce.GroundPaper:
		return "on paper: " + colour.Name(o.ground.RGB)
	}
	return "filling its whole file"
}

// describe says what was found in a drawing and proposes a design.
func (s *Session) describe(o *opened, p reduce.Progress) (Reply, error) {
	count, reason := o.found.Suggested()
	d := blankDesign()
	d.Name = o.name
	d.Drawings = []sizing.DrawingRef{{ID: o.id, FileName: o.fileName, Ground: o.choice, Revision: 1}}
	d.Colours = min(max(count, 1), reduce.MaxCount)
	b, _, err := s.baseOf(o, reduce.Options{Count: d.Colours, Edits: d.Edits})
	if err != nil {
		return Reply{}, err
	}
	d.Recipes = proposed(wall.Suggest(b.sep), o)
	m, err := b.widths(p)
	if err != nil {
		return Reply{}, err
	}
	d.Size = proposedSize(m.HoldsFrom(b.box, sizing.ByLongest, d.Limits))
	return Reply{Answer: wire.Opened{
		Drawing: o.id, W: o.drawing.W, H: o.drawing.H,
		Ground: o.ground.Found, GroundRGB: o.ground.RGB, GroundNote: o.ground.Note,
		Clipped: o.drawing.Clipped, Suggested: count, Reason: reason, Lined: o.found.Lined(), Layers: o.layers != nil,
		Notes: notesOn(o), Design: d,
	}}, nil
}

// The usual lapel pin is 32 to 38 mm long (common practice, no published
// source): a first size is taken from that range, larger only within it.
const (
	usualLeast    unit.MM = 32
	usualGreatest unit.MM = 38
)

// proposedSize is the smallest usual size that holds, in whole millimetres.
func proposedSize(holds unit.MM) sizing.Size {
	mm := unit.MM(math.Ceil(float64(holds)))
	return sizing.Size{MM: min(max(mm, usualLeast), usualGreatest), By: sizing.ByLongest}
}

// notesOn says what an artist should know of a drawing that was opened.
func notesOn(o *opened) []string {
	notes := []string{}
	d := o.drawing
	switch {
	case !d.Part.Whole():
		notes = append(notes, "The drawing takes up only part of its canvas, so the tool looks at that part, closer.")
	case d.FileW > d.W:
		notes = append(notes, fmt.Sprintf("The file is %d x %d px; the tool thinks at %d x %d px.", d.FileW, d.FileH, d.W, d.H))
	}
	if d.Clipped >= 0.0005 {
		notes = append(notes, fmt.Sprintf("%.1f %% of the drawing has colours brighter than sRGB can hold; they were taken to the nearest it can.", 100*d.Clipped))
	}
	switch {
	case o.layers != nil:
		notes = append(notes, "The lines came on a picture of their own, so what is metal is known. It will look like the plating, not like ink.")
	case o.found.Lined():
		notes = append(notes, "The dark lines became raised metal, so they are not counted as a colour. They will look like the plating, not like ink.")
	}
	if max(d.W, d.H) < smallDrawing {
		notes = append(notes, fmt.Sprintf("This drawing is only %d x %d px. Thin lines may not be told apart; bring one of at least %d px.", d.W, d.H, smallDrawing))
	}
	return notes
}

// smallDrawing is the long side under which a 0.2 mm line of a 32 mm pin is
// less than three pixels wide.
const smallDrawing = 480
