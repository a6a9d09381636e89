package calls

import (
	"encoding/json"
	"fmt"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/outline"
	"badgewright/sizing/sight"
	"badgewright/sizing/unit"
	"badgewright/sizing/wall"
	"badgewright/wasm/wire"
)

// How much a session keeps: enough to step back and forth between a few
// drawings, counts and sizes without finding anything again, and no more, so
// that memory stays flat.
const (
	keepDrawings = 3
	keepBases    = 4
	keepStruck   = 3
	keepPins     = 3
)

// Session holds opened drawings and the costly steps that follow from them.
// It is not for use by two calls at once.
type Session struct {
	drawings *shelf[*opened]
	bases    *shelf[*base]
	struck   *shelf[*struck]
	pins     *shelf[*sight.Image] // fronts, as they were drawn last
	differs  differs
	second   second
}

// NewSession returns an empty session.
func NewSession() *Session {
	return &Session{
		drawings: newShelf[*opened](keepDrawings),
		bases:    newShelf[*base](keepBases),
		struck:   newShelf[*struck](keepStruck),
		pins:     newShelf[*sight.Image](keepPins),
		second:   newSecond(),
	}
}

// opened is a drawing, what it lies on, and what was found in it.
type opened struct {
	id       string
	fileName string
	name     string // proposed for the design
	drawing  *reduce.Drawing
	layers   *reduce.Layers // nil unless lines and colours came apart
	ground   *reduce.Ground
	choice   reduce.GroundChoice
	found    *reduce.Analysis
}

// base is a flat drawing and, once asked for, its widths.
type base struct {
	sep      *reduce.Separation
	box      [4]float64
	bare     *bare
	measured *wall.Measured
	outline  *outline.Measured
	builder  *wall.Builder
	curve    *wall.Curve
	spots    []wire.Spot
	backing  backing
}

// struck is a base with every recipe applied at a size.
type struck struct {
	badge    *sizing.Badge
	measured *wall.Measured
	curve    *wall.Curve       // as looked at, once asked for
	outline  *outline.Measured // where recipes change it
	backing  backing
}

// drawing returns an opened drawing, looked at with the ground asked for.
func (s *Session) drawing(id string, choice reduce.GroundChoice, p reduce.Progress) (*opened, error) {
	o, ok := s.drawings.get(id)
	if !ok {
		return nil, errGone
	}
	if choice == "" || choice == o.choice {
		return o, nil
	}
	return s.look(&opened{id: o.id, fileName: o.fileName, name: o.name, drawing: o.drawing, layers: o.layers, choice: choice}, p)
}

// look finds the ground and the flats of a drawing and keeps it.
func (s *Session) look(o *opened, p reduce.Progress) (*opened, error) {
	if err := o.analyse(p); err != nil {
		return nil, err
	}
	s.bases.dropIf(func(key string) bool { return keyStarts(key, o.id) })
	s.struck.dropIf(func(key string) bool { return keyStarts(key, o.id) })
	s.pins.dropIf(func(key string) bool { return keyStarts(key, o.id) })
	s.drawings.put(o.id, o)
	return o, nil
}

func (o *opened) analyse(p reduce.Progress) (err error) {
	whole := o.drawing
	if o.ground == nil {
		if o.ground, err = reduce.FindGround(whole, o.choice); err != nil {
			return err
		}
	}
	if o.layers != nil {
		o.found, err = reduce.AnalyseLayers(o.layers, o.ground, p)
		return err
	}
	o.found, err = reduce.Analyse(whole, o.ground, p)
	if err != nil || o.choice != reduce.GroundAuto || o.ground.Found != reduce.GroundClear || !o.found.OnlyLines() {
		return err
	}
	onPaper := reduce.OnWhite(whole)
	ground, err := reduce.FindGround(onPaper, reduce.GroundPaper)
	if err != nil {
		return err
	}
	ground.Note = "These are lines alone on a transparent ground: what they close in is taken for white areas, to be given their colours."
	o.ground = ground
	o.found, err = reduce.Analyse(onPaper, ground, p)
	return err
}

// baseOf returns the flat drawing for a choice of count and edits.
func (s *Session) baseOf(o *opened, opt reduce.Options) (*base, string, error) {
	key := keyOf(o.id, opt)
	if b, ok := s.bases.get(key); ok {
		return b, key, nil
	}
	sep, err := o.found.Reduce(opt)
	if err != nil {
		return nil, "", err
	}
	box, ok := sizing.Outline(sep)
	if !ok {
		return nil, "", &reduce.Refusal{What: "Nothing of this drawing is left to strike: every colour is cut out.", Do: "Give one colour back its enamel or metal."}
	}
	b := &base{sep: sep, box: box}
	s.bases.put(key, b)
	return b, key, nil
}

// widths returns the measures of a flat drawing, found once.
func (b *base) widths(p reduce.Progress) (*wall.Measured, error) {
	if b.measured == nil {
		m, err := wall.Measure(b.sep, p)
		if err != nil {
			return nil, err
		}
		b.measured = m
	}
	return b.measured, nil
}

// strike applies a design's recipes at its size.
func (s *Session) strike(d *sizing.Design, b *base, baseKey string) (*struck, error) {
	scale, err := scaleOf(d, b)
	if err != nil {
		return nil, err
	}
	recipes := d.Struck()
	if len(recipes) == 0 {
		return s.unbuilt(b, scale), nil
	}
	key := keyOf(baseKey, struckKey{accepted(recipes), scale, d.Limits})
	if k, ok := s.struck.get(key); ok {
		return k, nil
	}
	if b.builder == nil {
		b.builder = wall.NewBuilder(b.sep)
	}
	sep, err := b.builder.Apply(recipes, scale, d.Limits)
	if err != nil {
		return nil, err
	}
	k := &struck{badge: &sizing.Badge{Sep: sep, Scale: scale, Outline: outlineOf(sep, recipes, b.box)}}
	s.struck.put(key, k)
	return k, nil
}

// outlineOf is the box of what is struck: that of the drawing, unless lines were
// drawn or erased by hand, which may lie outside it.
func outlineOf(s *reduce.Separation, recipes []sizing.Recipe, drawn [4]float64) [4]float64 {
	for _, r := range recipes {
		if len(r.Points) == 0 {
			continue
		}
		if box, ok := sizing.Outline(s); ok {
			return box
		}
	}
	return drawn
}

type struckKey struct {
	Recipes []sizing.Recipe
	Scale   unit.PxPerMM
	Limits  sizing.Limits
}

// unbuilt is a design without recipes: what is struck is what was drawn.
func (s *Session) unbuilt(b *base, scale unit.PxPerMM) *struck {
	return &struck{badge: &sizing.Badge{Sep: b.sep, Scale: scale, Outline: b.box}, measured: b.measured}
}

// scaleOf returns working pixels per mm at a design's size.
func scaleOf(d *sizing.Design, b *base) (unit.PxPerMM, error) {
	if err := d.Size.Check(); err != nil {
		return 0, err
	}
	return sizing.ScaleFor(b.box, d.Size), nil
}

// keyOf joins what a step depends on into one text.
func keyOf(first string, rest any) string {
	text, err := json.Marshal(rest)
	if err != nil {
		panic(fmt.Sprintf("calls: a key that cannot be written: %v", err))
	}
	return first + "\x00" + string(text)
}

func keyStarts(key, id string) bool {
	return len(key) > len(id) && key[:len(id)] == id && key[len(id)] == 0
}
