//go:build !pin

package calls

import (
	"errors"
	"maps"
	"slices"

	"badgewright/sizing/sheet"
	"badgewright/wasm/wire"
)

// mostFonts is how many fonts are kept: those of the papers are three.
const mostFonts = 8

// errNoFonts is returned for a paper that is asked for before its fonts came.
var errNoFonts = errors.New("calls: the fonts of the papers are not there yet")

// font keeps a font for the papers.
func font(s *Session, job Job, ask wire.FontAsk) (Reply, error) {
	if len(job.Bytes) > 0 {
		if ask.Place < 0 || ask.Place >= mostFonts {
			return Reply{}, errors.New("calls: a font has a place among the first few")
		}
		f := sheet.FontFile{Name: ask.Name, Data: job.Bytes}
		if ask.Strong {
			f.Weight = sheet.Strong
		}
		if _, err := sheet.NewFonts(f); err != nil {
			return Reply{}, err
		}
		s.second.fontFiles[ask.Place], s.second.fonts = f, nil
	}
	places := slices.Sorted(maps.Keys(s.second.fontFiles))
	return Reply{Answer: wire.Font{Places: append([]int{}, places...)}}, nil
}

// fonts are the fonts of the papers.
func (s *Session) fonts() (*sheet.Fonts, error) {
	if s.second.fonts != nil {
		return s.second.fonts, nil
	}
	var files []sheet.FontFile
	for _, place := range slices.Sorted(maps.Keys(s.second.fontFiles)) {
		files = append(files, s.second.fontFiles[place])
	}
	if len(files) == 0 {
		return nil, errNoFonts
	}
	set, err := sheet.NewFonts(files...)
	s.second.fonts = set
	return set, err
}
