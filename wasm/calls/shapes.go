//go:build !pin

package calls

import (
	"fmt"

	"badgewright/reduce"
	"badgewright/reduce/colour"
	"badgewright/sizing/trace"
	"badgewright/sizing/unit"
	"badgewright/wasm/wire"
)

// shapes traces a version into clean curves.
func shapes(s *Session, job Job, ask wire.ShapesAsk) (Reply, error) {
	h, err := s.handedAs(ask.Of)
	if err != nil {
		return Reply{}, err
	}
	sh, err := h.traced(job.Progress)
	if err != nil {
		return Reply{}, err
	}
	p := h.painter()
	answer := wire.Shapes{
		W: sh.Width, H: sh.Height,
		Outline: p.shape(sh, &sh.Outline), Metal: p.shape(sh, &sh.Metal), CutOuts: p.shape(sh, &sh.CutOuts),
		Enamel: p.shapes(sh, sh.Enamel), Printed: p.shapes(sh, sh.Printed),
		Tolerance: sh.Tolerance, Within: sh.Within,
		Lines: sh.Counts.Lines, Curves: sh.Counts.Curves, Corners: sh.Counts.Corners,
		FileName: fmt.Sprintf("%s-%.4gmm.svg", fileNamed(&h.Design), float64(h.Design.Size.MM)),
	}
	answer.Words = fmt.Sprintf("%s in %d areas, within %s of the drawing’s edges",
		sizeWords(h.badge.Width(), h.badge.Height()), sh.Counts.Areas, unit.InMM(sh.Within, 3))
	svg := sh.SVG(trace.Drawing{Title: h.Design.Name, Metal: p.metal, Paint: p.paint})
	return Reply{Answer: answer, Bytes: svg}, nil
}

func sizeWords(w, h unit.MM) string {
	inMM, _ := unit.ShownBy(w, h)
	return inMM
}

// painter gives faces the names and colours of a version.
type painter struct {
	metal colour.RGB8
	flats map[reduce.FlatID]reduce.Flat
}

func (h *handed) painter() painter {
	p := painter{metal: platingOf(h.Version.Plating).Mid, flats: map[reduce.FlatID]reduce.Flat{}}
	for _, f := range h.Flats {
		p.flats[f.ID] = f
	}
	return p
}

func (p *painter) paint(f *trace.Face) (string, colour.RGB8) {
	if flat, ok := p.flats[f.Flat]; ok && f.Role != reduce.Metal {
		return flat.Name, flat.RGB
	}
	return f.Name, p.metal
}

func (p *painter) shape(sh *trace.Shapes, f *trace.Face) wire.Shape {
	name, rgb := f.Name, p.metal
	if f.Role == reduce.Enamel || f.Role == reduce.Printed {
		name, rgb = p.paint(f)
	}
	return wire.Shape{
		Flat: f.Flat, Role: f.Role, Name: name, RGB: rgb,
		D: sh.PathData(f.Areas...), Pieces: len(f.Areas), Area: sh.Area(f.Areas...),
	}
}

// shapes is a list on the wire, even when empty.
func (p *painter) shapes(sh *trace.Shapes, faces []trace.Face) []wire.Shape {
	all := []wire.Shape{}
	for i := range faces {
		all = append(all, p.shape(sh, &faces[i]))
	}
	return all
}
