//go:build !pin

package calls

import (
	"fmt"
	"hash/fnv"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/proof"
	"badgewright/sizing/sight"
	"badgewright/wasm/wire"
)

// How much is kept of proofs: those of a round or two, and of two makers.
const (
	keepProofs = 3
	keepLaid   = 4
)

// proofs is what the second program keeps of proofs between calls.
type proofs struct {
	open *shelf[*openProof]
	laid *shelf[*proof.Laid] // by version and proof
}

func newProofs() proofs {
	return proofs{open: newShelf[*openProof](keepProofs), laid: newShelf[*proof.Laid](keepLaid)}
}

// openProof is a proof's picture and how the pin is to be laid on it.
type openProof struct {
	picture *proof.Picture
	how     wire.ProofHow
}

// proofOpen takes a proof's picture and lays the pin on it.
func proofOpen(s *Session, job Job, ask wire.ProofOpenAsk) (Reply, error) {
	pix, err := pixels(job.Bytes, ask.W, ask.H)
	if err != nil {
		return Reply{}, err
	}
	p, err := proof.NewPicture(ask.W, ask.H, pix)
	if err != nil {
		return Reply{}, err
	}
	sum := fnv.New64a()
	sum.Write(job.Bytes)
	key := fmt.Sprintf("%dx%d-%016x", ask.W, ask.H, sum.Sum64())
	s.second.proofs.open.put(key, &openProof{picture: p})
	return proofFit(s, job, wire.ProofFitAsk{Of: ask.Of, Proof: key, How: ask.How})
}

// proofFit lays the pin on an open proof, by itself or by hand.
func proofFit(s *Session, job Job, ask wire.ProofFitAsk) (Reply, error) {
	o, ok := s.second.proofs.open.get(ask.Proof)
	if !ok {
		return Reply{}, errGone
	}
	l, err := s.lay(ask.Of, o.picture, ask.How, job.Progress)
	if err != nil {
		return Reply{}, err
	}
	o.how = ask.How
	s.second.proofs.laid.put(keyOf(ask.Of, ask.Proof), l)
	corners := l.Corners(handles(ask.How))
	on := make([]proof.Point, len(corners))
	for i, c := range corners {
		on[i] = l.ToPicture(c)
	}
	return Reply{Answer: wire.ProofLaid{
		Proof: ask.Proof, W: o.picture.W, H: o.picture.H, Spots: append([]proof.Candidate{}, l.Spots...), Chosen: l.Chosen + 1, Fit: l.Fit,
		Outline: l.Outline(), Corners: corners, PictureCorners: on,
	}}, nil
}

// handles is how many places lay a pin by hand: one more where it may lie in
// perspective.
func handles(how wire.ProofHow) int {
	if how.Slant || len(how.Pin) > 3 {
		return 4
	}
	return 3
}

func (s *Session) lay(of string, p *proof.Picture, how wire.ProofHow, progress reduce.Progress) (*proof.Laid, error) {
	h, err := s.handedAs(of)
	if err != nil {
		return nil, err
	}
	a, err := h.askedFor(progress)
	if err != nil {
		return nil, err
	}
	if len(how.Pin) > 0 {
		return proof.Lay(a, p, how.Pin, how.Picture, how.Exact, how.Refine)
	}
	l, err := proof.Find(a, p, how.Box, how.Choose-1, progress)
	if err == nil && how.Slant {
		l.Slant()
	}
	return l, err
}

// askedFor is the version as proofs are held against it, found once.
func (h *handed) askedFor(p reduce.Progress) (*proof.Asked, error) {
	if h.held != nil {
		return h.held, nil
	}
	a, err := proof.Ask(h.badge, p)
	if err == nil {
		h.held = a
	}
	return a, err
}

// laidOn finds a version as laid on a proof; a version that was changed since is
// laid anew in the same way.
func (s *Session) laidOn(of, key string, p reduce.Progress) (*proof.Laid, error) {
	if l, ok := s.second.proofs.laid.get(keyOf(of, key)); ok {
		return l, nil
	}
	o, ok := s.second.proofs.open.get(key)
	if !ok {
		return nil, errGone
	}
	l, err := s.lay(of, o.picture, o.how, p)
	if err == nil {
		s.second.proofs.laid.put(keyOf(of, key), l)
	}
	return l, err
}

// proofDiff compares a proof with what was asked for.
func proofDiff(s *Session, job Job, ask wire.ProofDiffAsk) (Reply, error) {
	l, err := s.laidOn(ask.Of, ask.Proof, job.Progress)
	if err != nil {
		return Reply{}, err
	}
	h, err := s.handedAs(ask.Of)
	if err != nil {
		return Reply{}, err
	}
	t, want := proof.Usual(), proof.Wanted{Said: ask.Said, Posts: h.Check.Back.Posts}
	if ask.Photo {
		t = proof.Photographed()
		want = proof.Wanted{Photo: &proof.Snapshot{White: ask.White, Metal: platingOf(h.Version.Plating).Mid}}
	}
	if ask.Tolerances != nil {
		t = *ask.Tolerances
	}
	r, err := proof.Diff(l, want, t, job.Progress)
	return Reply{Answer: r}, err
}

// proofLook draws the proof like the pin, or the pin like the proof.
func proofLook(s *Session, job Job, ask wire.ProofLookAsk) (Reply, error) {
	if err := checkLongSide(ask.LongSide); err != nil {
		return Reply{}, err
	}
	l, err := s.laidOn(ask.Of, ask.Proof, job.Progress)
	if err != nil {
		return Reply{}, err
	}
	h, err := s.handedAs(ask.Of)
	if err != nil {
		return Reply{}, err
	}
	to := sight.Frame(h.badge, ask.LongSide)
	f := proof.Frame{W: to.W, H: to.H, Scale: to.Scale, DX: to.DX, DY: to.DY}
	pix := l.Shown
	if ask.View == wire.ProofAsked {
		pix = l.AsAsked
	}
	return Reply{
		Answer: wire.Picture{W: to.W, H: to.H, Scale: to.Scale, DX: to.DX, DY: to.DY},
		Bytes:  rgba(pix(f)),
	}, nil
}

// proofMarks draws differences on the proof's picture.
func proofMarks(s *Session, job Job, ask wire.ProofMarksAsk) (Reply, error) {
	l, err := s.laidOn(ask.Of, ask.Proof, job.Progress)
	if err != nil {
		return Reply{}, err
	}
	file, err := proof.Marked(l, ask.Differences, job.Progress)
	if err != nil {
		return Reply{}, err
	}
	o, ok := s.second.proofs.open.get(ask.Proof)
	if !ok {
		return Reply{}, errGone
	}
	return Reply{
		Answer: wire.PNGFile{W: o.picture.W, H: o.picture.H, FileName: fileNamed(&sizing.Design{Name: ask.Name}) + "-proof-marked.png", Words: marksWords(len(ask.Differences))},
		Bytes:  file,
	}, nil
}

func marksWords(n int) string {
	if n == 1 {
		return "The proof with one place marked."
	}
	return fmt.Sprintf("The proof with %d places marked and numbered.", n)
}

// proofPairs holds two rounds, or two makers' proofs, against each other.
func proofPairs(s *Session, _ Job, ask wire.ProofPairsAsk) (Reply, error) {
	h, err := s.handedAs(ask.Of)
	if err != nil {
		return Reply{}, err
	}
	perMM := float64(h.badge.Scale)
	pairs := proof.Rounds(ask.First, ask.Other, perMM)
	if ask.Makers {
		pairs = proof.Beside(ask.First, ask.Other, perMM)
	}
	if pairs == nil {
		pairs = []proof.DeviationPair{}
	}
	return Reply{Answer: wire.ProofPairs{Pairs: pairs, Words: proof.SayPairs(pairs)}}, nil
}
