package colourlist

import (
	"math"

	"badgewright/reduce/colour"
)

// Nearness is a plain word for how far apart two colours are.
type Nearness string

// The words, from near to far.
const (
	Same       Nearness = "same"
	HardToTell Nearness = "hard to tell"
	Close      Nearness = "close"
	Different  Nearness = "clearly different"
	Another    Nearness = "another colour"
)

// Where one word gives way to the next, in CIEDE2000: this tool's convention.
// No standard sets such words; about 1 can just be seen with both side by side.
const (
	sameUpTo      = 1
	hardUpTo      = 2
	closeUpTo     = 5
	differentUpTo = 10
)

// DistanceOf puts a CIEDE2000 into a word.
func DistanceOf(de float64) Nearness {
	switch {
	case de < sameUpTo:
		return Same
	case de < hardUpTo:
		return HardToTell
	case de < closeUpTo:
		return Close
	case de < differentUpTo:
		return Different
	}
	return Another
}

// CodeMatch is an entry of a list beside a colour.
type CodeMatch struct {
	Entry    ColourEntry `json:"entry"`
	Index    int         `json:"index"` // of the entry in its list, from 0
	DE       float64     `json:"de"`    // CIEDE2000
	Distance Nearness    `json:"distance"`
	// Lean says which way the entry differs, such as "a little darker and
	// redder"; empty where the eye could not say.
	Lean string `json:"lean"`
}

// Shelf is a list made ready for searching.
type Shelf struct {
	entries []ColourEntry
	labs    []colour.Lab
}

// NewShelf makes a list ready for searching.
func NewShelf(l *ColourList) *Shelf {
	s := &Shelf{entries: l.Entries, labs: make([]colour.Lab, len(l.Entries))}
	for i := range l.Entries {
		s.labs[i] = l.Entries[i].CIELAB()
	}
	return s
}

// Find returns the place of a code in the list, or -1.
func (s *Shelf) Find(code string) int {
	for i := range s.entries {
		if s.entries[i].Code == code {
			return i
		}
	}
	return -1
}

// At compares a colour with one entry.
func (s *Shelf) At(i int, of colour.Lab) CodeMatch {
	return s.match(i, of, colour.CIEDE2000(of, s.labs[i]))
}

func (s *Shelf) match(i int, of colour.Lab, de float64) CodeMatch {
	return CodeMatch{Entry: s.entries[i], Index: i, DE: de, Distance: DistanceOf(de), Lean: lean(of, s.labs[i], de)}
}

// mostSL is the most by which CIEDE2000 divides a difference of lightness, so
// that two colours are at least |dL|/mostSL apart (L from 0 to 100).
const mostSL = 1.75

type near struct {
	at int
	de float64
}

// Nearest returns the n entries nearest to a colour by CIEDE2000, nearest
// first; of two equally near, the first in the list.
func (s *Shelf) Nearest(of colour.Lab, n int) []CodeMatch {
	var out []CodeMatch
	for _, b := range s.nearest(of, n) {
		out = append(out, s.match(b.at, of, b.de))
	}
	return out
}

func (s *Shelf) nearest(of colour.Lab, n int) []near {
	var best []near
	for i, l := range s.labs {
		full := len(best) == n
		if full && (n == 0 || math.Abs(l.L-of.L)/mostSL > best[n-1].de) {
			continue
		}
		b := near{i, colour.CIEDE2000(of, l)}
		if full && b.de >= best[n-1].de {
			continue
		}
		if !full {
			best = append(best, b)
		}
		at := len(best) - 1
		for ; at > 0 && best[at-1].de > b.de; at-- {
			best[at] = best[at-1]
		}
		best[at] = b
	}
	return best
}
