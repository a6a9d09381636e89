//go:build !pin

package calls

import (
	"encoding/json"
	"fmt"
	"strings"

	"badgewright/reduce"
	"badgewright/sizing/save"
	"badgewright/wasm/wire"
)

// saveFile makes one file of a project, its drawings and its pictures. In the file these
// are numbered in the order in which the project names them, so that one project makes one
// file, however they were called meanwhile.
func saveFile(_ *Session, job Job, ask wire.SaveFileAsk) (Reply, error) {
	brought, pictures, thumb, err := cutUp(&ask, job.Bytes)
	if err != nil {
		return Reply{}, err
	}
	p := ask.Project
	p.Format = wire.Format
	drawings, err := numbered(&p, brought)
	if err != nil {
		return Reply{}, err
	}
	if err := save.Check(contentOf(&p), drawings); err != nil {
		return Reply{}, err
	}
	numbers := numberedPictures(&p, pictures)
	text, err := json.Marshal(p)
	if err != nil {
		return Reply{}, fmt.Errorf("calls: a project that cannot be written: %w", err)
	}
	data, err := save.Write(save.File{Project: text, Drawings: drawings, Pictures: numbers, Thumb: thumb})
	return Reply{Answer: wire.SavedFile{FileName: fileNameOf(&p) + ".badgewright"}, Bytes: data}, err
}

// openFile reads a project file; one that is refused changes nothing.
func openFile(_ *Session, job Job, _ wire.OpenFileAsk) (Reply, error) {
	r, err := save.Open(job.Bytes)
	if err != nil {
		return Reply{}, err
	}
	answer := wire.OpenedFile{Drawings: []wire.FileDrawing{}, Thumb: len(r.Thumb), Notes: append([]string{}, r.Notes...)}
	if err := save.Strict(r.Project, &answer.Project); err != nil {
		return Reply{}, err
	}
	if err := save.Check(contentOf(&answer.Project), r.Drawings); err != nil {
		return Reply{}, err
	}
	var bytes []byte
	for _, d := range r.Drawings {
		of := wire.FileDrawing{ID: d.ID, Files: []wire.FilePicture{}}
		for _, o := range d.Files {
			of.Files = append(of.Files, wire.FilePicture{Name: o.Name, Size: len(o.Bytes)})
			bytes = append(bytes, o.Bytes...)
		}
		answer.Drawings = append(answer.Drawings, of)
	}
	for _, p := range r.Pictures {
		answer.Pictures = append(answer.Pictures, wire.FilePhoto{ID: p.ID, Size: len(p.Bytes), Type: p.Type()})
		bytes = append(bytes, p.Bytes...)
	}
	return Reply{Answer: answer, Bytes: append(bytes, r.Thumb...)}, nil
}

// bringForward makes a project value of an older format one of today.
func bringForward(_ *Session, job Job, _ wire.ForwardAsk) (Reply, error) {
	text, err := save.Forward(job.Bytes)
	if err != nil {
		return Reply{}, err
	}
	var answer wire.Forwarded
	err = save.Strict(text, &answer.Project)
	return Reply{Answer: answer}, err
}

func contentOf(p *wire.Project) save.Content {
	o := &p.Order
	return save.Content{Designs: o.Designs, PriceLists: o.PriceLists, ColourList: o.ColourList, PriceListID: o.PriceList}
}

// cutUp parts the bytes that came along into the files they are of.
func cutUp(ask *wire.SaveFileAsk, bytes []byte) (drawings map[string]save.Drawing, pictures map[string][]byte, thumb []byte, err error) {
	take := func(n int) []byte {
		if n < 0 || n > len(bytes) {
			return nil
		}
		got := bytes[:n:n]
		bytes = bytes[n:]
		return got
	}
	drawings, pictures = map[string]save.Drawing{}, map[string][]byte{}
	for _, d := range ask.Drawings {
		of := save.Drawing{ID: d.ID}
		for _, f := range d.Files {
			of.Files = append(of.Files, save.Original{Name: f.Name, Bytes: take(f.Size)})
		}
		drawings[d.ID] = of
	}
	for _, p := range ask.Pictures {
		pictures[p.ID] = take(p.Size)
	}
	if thumb = take(ask.Thumb); len(thumb) != ask.Thumb || len(bytes) > 0 {
		return nil, nil, nil, fmt.Errorf("calls: the bytes that came with a project are not those of its drawings")
	}
	return drawings, pictures, thumb, nil
}

// numbered calls the drawings of a project by their place in it, and returns them in
// this order. The project is changed, its designs are not shared with the caller.
func numbered(p *wire.Project, by map[string]save.Drawing) ([]save.Drawing, error) {
	var all []save.Drawing
	names := map[string]string{}
	for i := range p.Order.Designs {
		refs := p.Order.Designs[i].Drawings
		for k := range refs {
			old := refs[k].ID
			if names[old] == "" {
				d, ok := by[old]
				if !ok {
					return nil, &reduce.Refusal{What: fmt.Sprintf("The drawing %q is not here to be saved.", refs[k].FileName), Do: "Bring its file again, then save."}
				}
				d.ID = fmt.Sprintf("drawing-%d", len(all)+1)
				names[old] = d.ID
				all = append(all, d)
			}
			refs[k].ID = names[old]
		}
	}
	return all, nil
}

// fileNameOf names a project's file after its first design.
func fileNameOf(p *wire.Project) string {
	name := ""
	if len(p.Order.Designs) > 0 {
		name = p.Order.Designs[0].Name
	}
	return plainFileName(name, "Project")
}

// plainFileName is a name that every system takes for a file's.
func plainFileName(name, otherwise string) string {
	name = strings.Map(func(r rune) rune {
		if strings.ContainsRune(`/\:*?"<>|`, r) || r < ' ' {
			return '-'
		}
		return r
	}, strings.TrimSpace(name))
	if name = strings.TrimLeft(name, "."); name == "" {
		return otherwise
	}
	return name
}
