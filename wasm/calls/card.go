//go:build !pin

package calls

import (
	"bytes"
	"fmt"
	"image"
	"image/jpeg"
	"time"

	"golang.org/x/image/draw"

	"badgewright/reduce"
	"badgewright/sizing"
	board "badgewright/sizing/card"
	"badgewright/sizing/sheet"
	"badgewright/sizing/shop"
	"badgewright/sizing/unit"
	"badgewright/wasm/wire"
)

// carded is a card laid out for a version that was handed over.
type carded struct {
	paper sheet.CardPaper
	fonts *sheet.Fonts
	name  string
}

func (s *Session) carded(job Job, of string, c *board.BackingCard) (*carded, error) {
	h, err := s.handedAs(of)
	if err != nil {
		return nil, err
	}
	fonts, err := s.fonts()
	if err != nil {
		return nil, err
	}
	sh, err := h.traced(job.Progress)
	if err != nil {
		return nil, err
	}
	pin, back := sheet.CardPin(sh), &h.Check.Back
	pin.Name = h.Design.Name
	pin.Pierced = board.Pierces(back.Fastening, back.Posts, back.Bar, back.Upright)
	pin.No = numbersOf(h.Check.Places, len(pin.Pierced))
	l, err := board.Lay(c, &pin, fonts)
	if err != nil {
		return nil, err
	}
	return &carded{paper: sheet.CardPaper{Card: c, Laid: l, Shapes: sh}, fonts: fonts, name: h.Design.Name}, nil
}

// imposed lays the card on its paper.
func (k *carded) imposed() (err error) {
	k.paper.Imposed, err = board.Impose(k.paper.Laid, k.paper.Card.Sheet)
	return err
}

// numbersOf is what the holes of a card are called: as the posts are from
// behind. The two of a bar are counted.
func numbersOf(places []wire.Place, holes int) []int {
	all := make([]int, holes)
	for i := range all {
		all[i] = i + 1
		if len(places) == holes {
			all[i] = places[i].No
		}
	}
	return all
}

// cardLaid says how a card comes out.
func cardLaid(s *Session, job Job, ask wire.CardAsk) (Reply, error) {
	if ask.Card == nil {
		h, err := s.handedAs(ask.Of)
		if err != nil {
			return Reply{}, err
		}
		start := board.Starting(h.Design.Name)
		ask.Card = &start
	}
	k, err := s.carded(job, ask.Of, ask.Card)
	if err != nil {
		return Reply{}, err
	}
	if err := k.imposed(); err != nil {
		// The card stays on the page, with what is wrong beside its paper.
		f := FailureOf(err)
		k.paper.Imposed = &board.Imposed{Places: []board.CardPlace{}, Marks: [][4]unit.MM{}, Says: f.What + " " + f.Do}
	}
	own := *k.paper.Card
	if own.Picture != nil {
		p := *own.Picture
		p.Data = "" // the page has it
		own.Picture = &p
	}
	return Reply{Answer: wire.CardLaid{
		Card: own, Laid: *k.paper.Laid, Sheet: *k.paper.Imposed, Kinds: board.Kinds(),
		Usual: wire.CardUsual{Hole: float64(board.UsualHole), Bleed: float64(board.UsualBleed), Safe: float64(board.UsualSafe), Corner: float64(board.BankCorner)},
	}}, nil
}

// cardFile writes a card as a file.
func cardFile(s *Session, job Job, ask wire.CardFileAsk) (Reply, error) {
	day, err := time.Parse(time.DateOnly, ask.Today)
	if err != nil {
		return Reply{}, fmt.Errorf("calls: %q is no day", ask.Today)
	}
	k, err := s.carded(job, ask.Of, &ask.Card)
	if err != nil {
		return Reply{}, err
	}
	if err := k.imposed(); err != nil {
		return Reply{}, err
	}
	name := fileNamed(&sizing.Design{Name: k.name}) + "-card"
	answer := wire.PaperFile{FileName: name + ".svg", Type: "image/svg+xml", Words: k.paper.Imposed.Says, Notes: []string{}}
	if !ask.PDF {
		return Reply{Answer: answer, Bytes: board.SVG(&ask.Card, k.paper.Laid, k.paper.Imposed, k.name+", backing card")}, nil
	}
	file, notes, err := k.paper.PDF(sheet.Meta{Title: k.name + ", backing card", Subject: k.paper.Laid.Says, Date: day}, k.fonts)
	if err != nil {
		return Reply{}, err
	}
	answer.FileName, answer.Type = name+".pdf", "application/pdf"
	if notes != nil {
		answer.Notes = notes
	}
	return Reply{Answer: answer, Bytes: file}, nil
}

// A picture for a card is kept small enough for the project to carry it.
const (
	cardPictureLong  = 1600    // px: a card of 100 mm at 400 px an inch
	cardPictureLight = 700_000 // bytes of a PNG that need not be a JPEG
	cardPictureFine  = 90      // quality of a JPEG
)

// cardPicture makes a picture that a card keeps.
func cardPicture(_ *Session, job Job, ask wire.CardPictureAsk) (Reply, error) {
	m, err := nrgba(job, ask.W, ask.H)
	if err != nil {
		return Reply{}, err
	}
	if long := max(ask.W, ask.H); long > cardPictureLong {
		k := float64(cardPictureLong) / float64(long)
		small := image.NewNRGBA(image.Rect(0, 0, max(1, int(float64(ask.W)*k)), max(1, int(float64(ask.H)*k))))
		draw.CatmullRom.Scale(small, small.Rect, m, m.Rect, draw.Src, nil)
		m = small
	}
	answer := wire.CardPicture{Type: "image/png", W: m.Rect.Dx(), H: m.Rect.Dy()}
	file, err := shop.PNG(m)
	if err != nil {
		return Reply{}, err
	}
	if len(file) > cardPictureLight && m.Opaque() {
		var b bytes.Buffer
		if err := jpeg.Encode(&b, m, &jpeg.Options{Quality: cardPictureFine}); err != nil {
			return Reply{}, err
		}
		if b.Len() < len(file) {
			file, answer.Type = b.Bytes(), "image/jpeg"
		}
	}
	if len(file) > mostPictureBytes {
		return Reply{}, &reduce.Refusal{What: fmt.Sprintf("This picture takes %d MB, too much for a card.", len(file)>>20), Do: "Bring one with fewer pixels."}
	}
	return Reply{Answer: answer, Bytes: file}, nil
}

// mostPictureBytes is the most a project carries of a card's picture.
const mostPictureBytes = 5 << 20
