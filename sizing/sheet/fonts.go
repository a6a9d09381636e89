package sheet

import (
	"bytes"
	"fmt"
	"math"
	"strings"
	"unicode"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	"golang.org/x/text/unicode/norm"

	"badgewright/reduce"
)

// Weight is how heavy type is.
type Weight int

// The weights of the papers.
const (
	Regular Weight = iota
	Strong
)

// FontFile is a TrueType font as it lies in a file.
type FontFile struct {
	Name   string // of the family, in plain letters
	Weight Weight
	Data   []byte
}

// Fonts is an ordered set of fonts: a letter is set in the first of its weight
// that has it, else in the first of any.
type Fonts struct{ faces []face }

type face struct {
	file FontFile
	font *sfnt.Font
	// wide is how far each letter that was asked for goes, thousandths of the
	// type's size; none for one that the font has not.
	wide map[rune]int
}

const none = -1

// NewFonts reads font files, the one for most text first. One that is not
// TrueType is refused: only its kind of outline is embedded.
func NewFonts(files ...FontFile) (*Fonts, error) {
	if len(files) == 0 {
		return nil, noFonts("There is no font to set a paper in.")
	}
	set := &Fonts{}
	for _, f := range files {
		if !bytes.HasPrefix(f.Data, []byte{0, 1, 0, 0}) {
			return nil, noFonts(fmt.Sprintf("The font %s is damaged or not TrueType.", f.Name))
		}
		parsed, err := sfnt.Parse(f.Data)
		if err != nil {
			return nil, noFonts(fmt.Sprintf("The font %s cannot be read: %v.", f.Name, err))
		}
		set.faces = append(set.faces, face{f, parsed, map[rune]int{}})
	}
	return set, nil
}

func noFonts(what string) error {
	return &reduce.Refusal{What: what, Do: "Load the page again while you are online, then make the paper again."}
}

// has says whether a face can show a letter.
func (f *face) has(r rune) bool { return f.widthOf(r) != none }

// widthOf is how far a letter goes, rounded as the file has it. Beyond U+FFFF
// there is none: the PDF writer's codes have two bytes.
func (f *face) widthOf(r rune) int {
	w, known := f.wide[r]
	if !known {
		w = f.read(r)
		f.wide[r] = w
	}
	return w
}

func (f *face) read(r rune) int {
	var b sfnt.Buffer
	g, err := f.font.GlyphIndex(&b, r)
	if err != nil || g == 0 || r > 0xFFFF {
		return none
	}
	em := int(f.font.UnitsPerEm())
	far, err := f.font.GlyphAdvance(&b, g, fixed.I(em), font.HintingNone)
	if err != nil {
		return none
	}
	return int(math.Round(1000 / float64(em) * float64(far) / 64))
}

// width is how far clean text goes, thousandths of the type's size.
func (s *Fonts) width(clean string, w Weight) int {
	sum := 0
	for _, r := range clean {
		i := s.faceFor(r, w)
		if i < 0 {
			r, i = s.standIn(w)
		}
		sum += max(0, s.faces[i].widthOf(r))
	}
	return sum
}

// faceFor is the place of the face that shows a letter, -1 when none does.
func (s *Fonts) faceFor(r rune, w Weight) int {
	other := -1
	for i := range s.faces {
		if f := &s.faces[i]; f.has(r) {
			if f.file.Weight == w {
				return i
			}
			if other < 0 {
				other = i
			}
		}
	}
	return other
}

// run is a stretch of text in one face.
type run struct {
	face int
	text string
}

// runs breaks clean text into stretches by face; a letter that no face has
// stands as the stand-in.
func (s *Fonts) runs(text string, w Weight) []run {
	var all []run
	for _, r := range text {
		i := s.faceFor(r, w)
		if i < 0 {
			r, i = s.standIn(w)
		}
		if n := len(all); n > 0 && all[n-1].face == i {
			all[n-1].text += string(r)
		} else {
			all = append(all, run{i, string(r)})
		}
	}
	return all
}

// standIn is what stands for a letter that no face has.
func (s *Fonts) standIn(w Weight) (rune, int) {
	for _, r := range []rune{unicode.ReplacementChar, '?'} {
		if i := s.faceFor(r, w); i >= 0 {
			return r, i
		}
	}
	return '?', 0
}

// hardSpace is a blank that no line ends after.
const hardSpace = '\u00a0'

// longest is the most letters of a text that are set: a hostile name may have
// millions, and no name on paper has more.
const longest = 4000

// Clean makes text fit to be set: composed letters, plain spaces for what breaks
// lines or is blank, and nothing that only steers (control characters, marks of
// direction and of width nought).
func Clean(s string) string {
	var b strings.Builder
	blank, n := true, 0
	for _, r := range strings.ToValidUTF8(s, string(unicode.ReplacementChar)) {
		switch {
		case r == hardSpace: // keeps a number by its unit
		case unicode.IsSpace(r):
			if !blank {
				b.WriteRune(' ')
			}
			blank = true
			continue
		case unicode.In(r, unicode.Cc, unicode.Cf, unicode.Co, unicode.Cs, unicode.Variation_Selector, unicode.Noncharacter_Code_Point):
			continue
		}
		b.WriteRune(r)
		blank = false
		if n++; n == longest {
			b.WriteRune('…')
			break
		}
	}
	return norm.NFC.String(strings.TrimRight(b.String(), " "))
}

// script is a script whose letters change with their neighbours, or run from
// right to left.
type script struct {
	name  string
	table *unicode.RangeTable
}

// unjoined are such scripts; here their letters stand one by one, in the order
// they are spoken.
var unjoined = []script{
	{"Arabic", unicode.Arabic}, {"Bengali", unicode.Bengali}, {"Devanagari", unicode.Devanagari},
	{"Gujarati", unicode.Gujarati}, {"Gurmukhi", unicode.Gurmukhi}, {"Hebrew", unicode.Hebrew},
	{"Kannada", unicode.Kannada}, {"Khmer", unicode.Khmer}, {"Malayalam", unicode.Malayalam},
	{"Mongolian", unicode.Mongolian}, {"Burmese", unicode.Myanmar}, {"Oriya", unicode.Oriya},
	{"Sinhala", unicode.Sinhala}, {"Syriac", unicode.Syriac}, {"Tamil", unicode.Tamil},
	{"Telugu", unicode.Telugu}, {"Thaana", unicode.Thaana}, {"Tibetan", unicode.Tibetan},
}

// firstUnjoined is the first letter of any of them.
const firstUnjoined = 0x0590

// unjoinedScript is the name of such a script that a letter is of, or empty.
func unjoinedScript(r rune) string {
	if r < firstUnjoined {
		return ""
	}
	for _, s := range unjoined {
		if unicode.Is(s.table, r) {
			return s.name
		}
	}
	return ""
}
