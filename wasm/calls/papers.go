//go:build !pin

package calls

import (
	"fmt"
	"image"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/days"
	"badgewright/sizing/left"
	"badgewright/sizing/sheet"
	"badgewright/sizing/shop"
	"badgewright/wasm/wire"
)

// askedFor says of a version what the papers in words speak of.
func askedFor(s *Session, job Job, ask wire.AskedAsk) (Reply, error) {
	h, err := s.handedAs(ask.Of)
	if err != nil {
		return Reply{}, err
	}
	asked, err := h.asked(job.Progress)
	return Reply{Answer: asked}, err
}

func (h *handed) asked(p reduce.Progress) (sheet.Asked, error) {
	sh, err := h.traced(p)
	if err != nil {
		return sheet.Asked{}, err
	}
	places := []sheet.AskedPlace{}
	for _, p := range h.Check.Places {
		places = append(places, sheet.AskedPlace{No: p.No, InMM: p.FromMiddle, InInches: p.FromMiddleInches})
	}
	return sheet.Ask(sheet.Source{
		Badge: h.badge, Design: &h.Design, Version: &h.Version, Plating: platingOf(h.Version.Plating).Name,
		Back: &h.Check.Back, Posts: places, Stamp: h.Check.Stamp, Spots: h.Check.Findings,
		CutOuts: max(0, len(sh.CutOuts.Areas)-eyesOf(&h.Design)),
	}), nil
}

// eyesOf is how many of the holes of a design are for rings: they are told as
// such, and are no cut-outs.
func eyesOf(d *sizing.Design) int {
	if d.Parts.Choice != sizing.PartsDangle {
		return 0
	}
	return 2 * len(d.Parts.Joins)
}

// inquiry writes the message to a maker.
func inquiry(_ *Session, _ Job, ask wire.InquiryAsk) (Reply, error) {
	of := sheet.InquiryOf{Asked: ask.Asked, Units: ask.Plan.Units, Files: ask.Files, Note: ask.Plan.Note}
	if ask.Plan.NeedBy != "" {
		day, err := days.Read(days.Date(ask.Plan.NeedBy))
		if err != nil {
			return Reply{}, err
		}
		of.NeedBy = day.Says()
	}
	text, err := of.Write()
	return Reply{Answer: text}, err
}

// changeRequest writes what is to change in a proof.
func changeRequest(_ *Session, _ Job, ask wire.ChangesAsk) (Reply, error) {
	text, err := ask.Changes.Write()
	return Reply{Answer: text}, err
}

// csvList writes one of the lists.
func csvList(_ *Session, _ Job, ask wire.ListAsk) (Reply, error) {
	var l sheet.List
	what := ""
	switch ask.Kind {
	case wire.ListColours:
		l, what = sheet.ColourList(ask.Asked), "colours"
	case wire.ListSpots:
		l, what = sheet.SpotList(ask.Asked, ask.Units), "trouble-spots"
	case wire.ListQuote:
		if ask.Quote == nil || ask.Order == nil {
			return Reply{}, &reduce.Refusal{What: "There is no quote to list.", Do: "Choose or type a price list under Order."}
		}
		l, what = sheet.QuoteList(ask.Quote, ask.Order, ask.Maker), "quote"
	case wire.ListLeft:
		of, err := leftOf(ask.Selling)
		if err != nil {
			return Reply{}, err
		}
		l, what = sheet.LeftList(of, ask.Selling.Currency, ask.Selling.MinorDigits), "left"
	default:
		return Reply{}, fmt.Errorf("calls: no list is named %q", ask.Kind)
	}
	name := fileNamed(&sizing.Design{Name: ask.Name}) + "-" + what + ".csv"
	return Reply{Answer: wire.PaperFile{
		FileName: name, Type: "text/csv", Rows: len(l) - 1, Notes: []string{},
		Words: fmt.Sprintf("A list of %s with its head.", counted(len(l)-1, "line")),
	}, Bytes: l.File()}, nil
}

// leftOf reckons what is left by a plan.
func leftOf(p *left.Selling) (*left.LeftAfter, error) {
	if p == nil {
		return nil, &reduce.Refusal{What: "Nothing is planned of selling yet.", Do: "Say under Order how your pins find their people."}
	}
	of, faults := left.Reckon(*p)
	if len(faults) > 0 {
		return nil, &reduce.Refusal{What: faults[0].What, Do: "Correct it under Order."}
	}
	return of, nil
}

// nrgba is the pixels that come with a request as a picture.
func nrgba(job Job, w, h int) (*image.NRGBA, error) {
	if w < 1 || h < 1 || max(w, h) > shop.Most || len(job.Bytes) != 4*w*h {
		return nil, fmt.Errorf("calls: %d bytes are no picture of %d by %d px", len(job.Bytes), w, h)
	}
	return &image.NRGBA{Pix: job.Bytes, Stride: 4 * w, Rect: image.Rect(0, 0, w, h)}, nil
}

// shopPicture makes a file of a pin's picture, on a ground where one is chosen.
func shopPicture(_ *Session, job Job, ask wire.ShopPictureAsk) (Reply, error) {
	pin, err := nrgba(job, ask.W, ask.H)
	if err != nil {
		return Reply{}, err
	}
	what := "cut-out"
	if ask.Ground != nil {
		what = "shop"
		if pin, err = shop.Lay(pin, *ask.Ground); err != nil {
			return Reply{}, err
		}
	}
	file, err := shop.PNG(pin)
	if err != nil {
		return Reply{}, err
	}
	return Reply{Answer: wire.PNGFile{
		W: pin.Rect.Dx(), H: pin.Rect.Dy(), FileName: fmt.Sprintf("%s-%s-%dpx.png", fileNamed(&sizing.Design{Name: ask.Name}), what, max(pin.Rect.Dx(), pin.Rect.Dy())),
		Words: fmt.Sprintf("%d by %d px", pin.Rect.Dx(), pin.Rect.Dy()),
	}, Bytes: file}, nil
}
