package calls

import (
	"fmt"
	"strings"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/canvas"
	"badgewright/wasm/wire"
)

func telling(job Job, doing string) func(float64) error {
	return func(share float64) error { return job.Progress(share, doing) }
}

// marks draws the trouble spots of a picked version over its file.
func marks(s *Session, job Job, ask wire.MarksAsk) (Reply, error) {
	u, err := s.subject(&ask.Picked, job.Progress)
	if err != nil {
		return Reply{}, err
	}
	k, err := u.measured(job.Progress)
	if err != nil {
		return Reply{}, err
	}
	back, err := u.back()
	if err != nil {
		return Reply{}, err
	}
	spots, err := u.findings(k, &back, job.Progress)
	if err != nil {
		return Reply{}, err
	}
	if len(spots) == 0 {
		return Reply{}, &reduce.Refusal{What: "There is nothing to mark: every line and every colour area holds."}
	}
	art := artOf(u.opened.drawing)
	art.Scale = k.badge.Scale
	file, err := canvas.Marks(art, spots).PNG(art.KX*float64(k.badge.Scale), telling(job, "drawing the marks"))
	if err != nil {
		return Reply{}, err
	}
	return Reply{Answer: wire.PNGFile{
		W: art.W, H: art.H, FileName: fileNamed(u.design) + "-marks.png",
		Words: fmt.Sprintf("The marks alone: %s, numbered as in the list", counted(len(spots), "trouble spot")),
	}, Bytes: file}, nil
}

// artOf lays working pixels on the file that a drawing came from. A file
// coarser than the working raster, as a vector drawing's may be, is taken at
// the raster's pixels.
func artOf(d *reduce.Drawing) canvas.Art {
	p := d.Part
	if p.Whole() {
		p = reduce.Part{0, 0, 1, 1}
	}
	w, h := float64(d.FileW), float64(d.FileH)
	kx, ky := (p[2]-p[0])*w/float64(d.W), (p[3]-p[1])*h/float64(d.H)
	if up := max(kx, ky); up < 1 {
		w, h, kx, ky = w/up, h/up, kx/up, ky/up
	}
	return canvas.Art{W: int(w + 0.5), H: int(h + 0.5), X: p[0] * w, Y: p[1] * h, KX: kx, KY: ky}
}

// fileNamed makes a file's name of a design's: what every system takes.
func fileNamed(d *sizing.Design) string {
	name := strings.Map(func(r rune) rune {
		switch {
		case r >= 'a' && r <= 'z', r >= '0' && r <= '9':
			return r
		case r >= 'A' && r <= 'Z':
			return r + 'a' - 'A'
		}
		return '-'
	}, d.Name)
	name = strings.Join(strings.FieldsFunc(name, func(r rune) bool { return r == '-' }), "-")
	if name == "" {
		return "pin"
	}
	return name
}
