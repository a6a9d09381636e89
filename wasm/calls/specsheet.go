//go:build !pin

package calls

import (
	"fmt"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/sheet"
	"badgewright/wasm/wire"
)

// specSheet prints the spec sheet of a version.
func specSheet(s *Session, job Job, ask wire.SpecSheetAsk) (Reply, error) {
	h, err := s.handedAs(ask.Of)
	if err != nil {
		return Reply{}, err
	}
	fonts, err := s.fonts()
	if err != nil {
		return Reply{}, err
	}
	spec, err := h.spec(job.Progress)
	if err != nil {
		return Reply{}, err
	}
	spec.Format, spec.Units, spec.Date, spec.Note = ask.Format, ask.Units, ask.Today, ask.Note
	p, err := spec.Print(fonts)
	if err != nil {
		return Reply{}, err
	}
	return Reply{Answer: wire.PaperFile{
		FileName: h.fileName("spec", "pdf"), Type: "application/pdf", Notes: append([]string{}, p.Notes...),
		Words: fmt.Sprintf("The spec sheet, %s, with front and back at true size.", counted(p.Pages, "page")),
	}, Bytes: p.File}, nil
}

// layers gives a version as layers at true size.
func layers(s *Session, job Job, ask wire.LayersAsk) (Reply, error) {
	h, err := s.handedAs(ask.Of)
	if err != nil {
		return Reply{}, err
	}
	spec, err := h.spec(job.Progress)
	if err != nil {
		return Reply{}, err
	}
	spec.Date = ask.Today
	l := sheet.Layers{Spec: spec}
	words := fmt.Sprintf("The curves at true size, %s, a layer each for outline, lines, colours, cut-outs, posts and measures.", sizeWords(spec.Asked.W, spec.Asked.H))
	if !ask.PDF {
		return Reply{Answer: wire.PaperFile{FileName: h.fileName("layers", "svg"), Type: "image/svg+xml", Words: words, Notes: []string{}}, Bytes: l.SVG()}, nil
	}
	fonts, err := s.fonts()
	if err != nil {
		return Reply{}, err
	}
	p, err := l.PDF(fonts)
	return Reply{Answer: wire.PaperFile{
		FileName: h.fileName("layers", "pdf"), Type: "application/pdf", Words: words, Notes: append([]string{}, p.Notes...),
	}, Bytes: p.File}, err
}

// fileName is what a paper of a version is called.
func (h *handed) fileName(what, ending string) string {
	name := fileNamed(&h.Design)
	if len(h.Design.Versions) > 1 {
		name += "-" + fileNamed(&sizing.Design{Name: h.Version.Name})
	}
	return fmt.Sprintf("%s-%.4gmm-%s.%s", name, float64(h.Design.Size.MM), what, ending)
}

// spec gathers what stands on the sheet.
func (h *handed) spec(p reduce.Progress) (sheet.Spec, error) {
	sh, err := h.traced(p)
	if err != nil {
		return sheet.Spec{}, err
	}
	asked, err := h.asked(p)
	if err != nil {
		return sheet.Spec{}, err
	}
	spec := sheet.Spec{
		Asked: asked, Badge: h.badge, Shapes: sh, Metal: platingOf(h.Version.Plating).Mid,
		Back: &h.Check.Back, Stamped: h.Check.Stamp, Cautions: h.Check.Cautions,
	}
	if h.Design.Back.Stamp != nil {
		spec.Mark = h.Design.Back.Stamp.Mark
	}
	if held := h.Check.Parts; held != nil {
		for _, j := range held.Joins {
			spec.Chain = append(spec.Chain, j.Loops...)
			spec.Hanging = append(spec.Hanging, j.Says)
		}
	}
	for _, v := range h.Design.Versions {
		spec.Versions = append(spec.Versions, sheet.SpecVersion{
			Name: v.Name, Plating: platingOf(v.Plating).Name, Quantity: v.Quantity, This: v.ID == h.Version.ID,
		})
	}
	if n := len(h.Design.Drawings); n > 0 {
		last := h.Design.Drawings[n-1]
		spec.Drawing = last.FileName
		if last.Revision > 1 {
			spec.Drawing += fmt.Sprintf(", revision %d", last.Revision)
		}
	}
	return spec, nil
}
