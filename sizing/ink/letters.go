package ink

import (
	"fmt"
	"image/color"
	"strconv"
	"strings"
	"sync"
)

// Lettering is drawn with one stroke of the pen, as on a technical drawing:
// small in memory, and as true at ten pixels as at a hundred. The alphabet is
// our own; its proportions follow the upright lettering type B of ISO 3098-1
// (height 10, lower case 7, stroke 1, space between characters 2), from memory.
const (
	capUnits   = 10.0
	betweenU   = 2.2 // between two characters
	spaceU     = 4.0
	strokeU    = 1.15
	missingBox = "M0 0L5 0L5 10L0 10L0 0"
)

// letter is a character in units, y up from the base line.
type letter struct {
	width float64
	paths [][]Point
}

// drawn holds each character's width and its pen strokes: M moves, L draws to a
// place, A draws along an ellipse: middle, radii, and two angles in degrees,
// counter-clockwise from the right, joined to what came before.
var drawn = map[rune]struct {
	width float64
	pen   string
}{
	'0': {6, "A3 5 3 5 0 360"}, '1': {3.2, "M0 7.8L3.2 10L3.2 0"},
	'2': {6, "A3 7.1 2.9 2.9 170 -38L0 0L6 0"}, '3': {5.8, "A2.9 7.65 2.6 2.35 155 -90A2.9 2.65 2.9 2.65 90 -155"},
	'4': {6.2, "M4.6 0L4.6 10L0 2.9L6.2 2.9"}, '5': {5.8, "M5.2 10L0.9 10L0.6 5.5A2.8 3.2 3 3.2 133 -150"},
	'6': {6, "A3 3.1 3 3.1 0 360M0 3.1A5.2 3.1 5.2 6.9 180 95"}, '7': {5.8, "M0 10L5.8 10L1.8 0"},
	'8': {6, "A3 7.6 2.6 2.4 0 360M3 5.2A3 2.6 3 2.6 90 450"}, '9': {6, "A3 6.9 3 3.1 0 360M6 6.9A0.8 6.9 5.2 6.9 0 -85"},
	'A': {7, "M0 0L3.5 10L7 0M1.2 3.4L5.8 3.4"}, 'B': {6, "M0 0L0 10L3.2 10A3.2 7.65 2.4 2.35 90 -90L0 5.3M3.2 5.3A3.2 2.65 2.8 2.65 90 -90L0 0"},
	'C': {6.6, "A3.8 5 3.8 5 48 312"}, 'D': {6.8, "M0 0L0 10L2.6 10A2.6 5 4.2 5 90 -90L0 0"},
	'E': {5.4, "M5.4 10L0 10L0 0L5.4 0M0 5.3L4.6 5.3"}, 'F': {5.4, "M5.4 10L0 10L0 0M0 5.3L4.6 5.3"},
	'G': {7.4, "A3.8 5 3.8 5 50 352L4.4 4.3"}, 'H': {6.4, "M0 0L0 10M6.4 0L6.4 10M0 5.3L6.4 5.3"},
	'I': {0.2, "M0.1 0L0.1 10"}, 'J': {4.2, "M4.2 10L4.2 2.6A2.1 2.6 2.1 2.6 0 -165"},
	'K': {6, "M0 0L0 10M5.8 10L0 4.1M2 6.1L6 0"}, 'L': {5, "M0 10L0 0L5 0"},
	'M': {8, "M0 0L0 10L4 2.6L8 10L8 0"}, 'N': {6.6, "M0 0L0 10L6.6 0L6.6 10"},
	'O': {8, "A4 5 4 5 0 360"}, 'P': {5.8, "M0 0L0 10L3.1 10A3.1 7.4 2.7 2.6 90 -90L0 4.8"},
	'Q': {8, "A4 5 4 5 0 360M5 2.6L8 -0.6"}, 'R': {6, "M0 0L0 10L3.1 10A3.1 7.4 2.7 2.6 90 -90L0 4.8M3 4.8L6 0"},
	'S': {5.9, "A3 7.55 2.6 2.45 33 270A3 2.55 2.9 2.55 90 -152"}, 'T': {6.4, "M0 10L6.4 10M3.2 10L3.2 0"},
	'U': {6.4, "M0 10L0 3.2A3.2 3.2 3.2 3.2 180 360L6.4 10"}, 'V': {6.8, "M0 10L3.4 0L6.8 10"},
	'W': {9.6, "M0 10L2.4 0L4.8 8.6L7.2 0L9.6 10"}, 'X': {6.4, "M0 0L6.4 10M0 10L6.4 0"},
	'Y': {6.6, "M0 10L3.3 5L6.6 10M3.3 5L3.3 0"}, 'Z': {6, "M0 10L6 10L0 0L6 0"},
	'a': {5.4, "A2.7 3.4 2.7 3.4 0 360M5.4 6.8L5.4 0"}, 'b': {5.4, "M0 10L0 0M0 3.4A2.7 3.4 2.7 3.4 180 540"},
	'c': {4.8, "A2.7 3.4 2.7 3.4 48 312"}, 'd': {5.4, "A2.7 3.4 2.7 3.4 0 360M5.4 10L5.4 0"},
	'e': {5.4, "M0.05 3.7L5.4 3.7A2.7 3.4 2.7 3.4 5 318"}, 'f': {3.4, "M1.5 0L1.5 8A3.2 8 1.7 2 180 75M0 6.5L3.3 6.5"},
	'g': {5.4, "A2.7 3.4 2.7 3.4 0 360M5.4 6.8L5.4 -0.5A2.8 -0.5 2.6 2.5 0 -152"}, 'h': {5, "M0 0L0 10M0 4.2A2.5 4.2 2.5 2.6 180 0L5 0"},
	'i': {0.2, "M0.1 0L0.1 6.6M0.1 9.2L0.1 9.3"}, 'j': {1.6, "M1.6 6.6L1.6 -1A0 -1 1.6 2 0 -95M1.6 9.2L1.6 9.3"},
	'k': {4.9, "M0 0L0 10M4.5 6.6L0 2.7M1.8 4.3L4.9 0"}, 'l': {1.3, "M0 10L0 1.5A1.3 1.5 1.3 1.5 180 272"},
	'm': {7.8, "M0 0L0 6.8M0 4.6A1.95 4.6 1.95 2.2 180 0L3.9 0M3.9 4.6A5.85 4.6 1.95 2.2 180 0L7.8 0"},
	'n': {5, "M0 0L0 6.8M0 4.2A2.5 4.2 2.5 2.6 180 0L5 0"}, 'o': {5.6, "A2.8 3.4 2.8 3.4 0 360"},
	'p': {5.4, "M0 6.8L0 -3M0 3.4A2.7 3.4 2.7 3.4 180 540"}, 'q': {5.4, "A2.7 3.4 2.7 3.4 0 360M5.4 6.8L5.4 -3"},
	'r': {3.2, "M0 0L0 6.8M0 4.2A2.4 4.2 2.4 2.6 180 65"}, 's': {4.3, "A2.2 5.1 1.9 1.7 33 270A2.2 1.7 2.1 1.7 90 -152"},
	't': {3.2, "M1.3 9L1.3 1.9A3 1.9 1.7 1.9 180 278M0 6.6L3.1 6.6"}, 'u': {5, "M0 6.8L0 2.6A2.5 2.6 2.5 2.6 180 360M5 6.8L5 0"},
	'v': {5, "M0 6.8L2.5 0L5 6.8"}, 'w': {7.2, "M0 6.8L1.8 0L3.6 6L5.4 0L7.2 6.8"},
	'x': {4.8, "M0 0L4.8 6.8M0 6.8L4.8 0"}, 'y': {5, "M0 6.8L2.6 0M5 6.8L1.6 -2.8"}, 'z': {4.6, "M0 6.8L4.6 6.8L0 0L4.6 0"},
	'.': {0.2, "M0.1 0L0.1 0.1"}, ',': {0.8, "M0.7 0.2L0 -1.6"}, ':': {0.2, "M0.1 0.8L0.1 0.9M0.1 5.6L0.1 5.7"}, ';': {0.8, "M0.7 0.2L0 -1.6M0.7 5.6L0.7 5.7"},
	'-': {3, "M0 3.7L3 3.7"}, '–': {4.6, "M0 3.7L4.6 3.7"}, '+': {4.6, "M0 3.7L4.6 3.7M2.3 1.4L2.3 6"}, '=': {4.6, "M0 2.6L4.6 2.6M0 5L4.6 5"},
	'×': {4.2, "M0 1.4L4.2 5.6M0 5.6L4.2 1.4"}, '·': {0.2, "M0.1 3.7L0.1 3.8"}, '/': {4, "M0 -1L4 10.6"},
	'²': {2.9, "A1.4 8.7 1.3 1.3 170 -38L0 5.6L2.9 5.6"}, '°': {2.4, "A1.2 8.8 1.2 1.2 0 360"}, '\'': {0.2, "M0.1 10L0.1 7.6"}, '"': {1.6, "M0 10L0 7.6M1.6 10L1.6 7.6"}, '’': {0.8, "M0.8 10L0.2 7.8"},
	'?': {4.6, "A2.3 7.7 2.3 2.3 170 -50L2.3 3.4L2.3 2.7M2.3 0L2.3 0.1"}, '!': {0.2, "M0.1 10L0.1 2.7M0.1 0L0.1 0.1"},
	'(': {2, "A4.4 4.4 4.4 6.4 122 238"}, ')': {2, "A-2.4 4.4 4.4 6.4 58 -58"},
	'&': {7.2, "M7.2 0L1.6 7A2.9 7.9 1.7 1.9 215 -40L1.3 4.6A2.9 2.5 2.9 2.5 125 340L6.8 4.4"},
	'©': {9, "A4.5 5 4.5 4.9 0 360A4.5 5 2.2 2.5 48 312"}, '#': {7, "M1.6 0L2.8 10M4.4 0L5.6 10M0.2 3.3L6.4 3.3M0.6 6.7L6.8 6.7"},
	'@': {10, "A5 4.6 2.3 2.7 0 360M7.3 7.3L7.3 4A8.6 4 1.3 1.6 180 360L10 5A5 5 5 5.2 0 312"}, '_': {5, "M0 -0.8L5 -0.8"},
	'ø': {5.6, "A2.8 3.4 2.8 3.4 0 360M0.4 -0.6L5.2 7.4"}, 'Ø': {8, "A4 5 4 5 0 360M1 -0.6L7 10.6"},
	'Æ': {8.6, "M0 0L3.9 10L8.6 10M4.4 10L4.4 0L8.6 0M1.3 3.4L4.4 3.4M4.4 5.3L7.8 5.3"}, 'ß': {5.2, "M0 0L0 7.6A2.2 7.6 2.2 2.4 180 -75L2.2 5.4A2.6 2.7 2.6 2.7 80 -110"},
	'%': {8, "A1.7 8.2 1.7 1.8 0 360M7.4 10L0.6 0M8 1.8A6.3 1.8 1.7 1.8 0 360"},
}

// alphabet is drawn once it is wanted.
var alphabet = sync.OnceValue(func() map[rune]letter {
	all := map[rune]letter{}
	for r, d := range drawn {
		all[r] = letter{d.width, pen(d.pen)}
	}
	addAccented(all)
	return all
})

// pen reads the strokes of a character. A fault in one is a bug of this file.
func pen(text string) (paths [][]Point) {
	for len(text) > 0 {
		op := text[0]
		end := 1 + strings.IndexAny(text[1:], "MLA")
		if end == 0 {
			end = len(text)
		}
		n := numbers(text[1:end])
		text = text[end:]
		last := len(paths) - 1
		switch {
		case op == 'M':
			paths = append(paths, []Point{{n[0], n[1]}})
		case op == 'L':
			paths[last] = append(paths[last], Point{n[0], n[1]})
		case last < 0:
			paths = append(paths, arc(n[0], n[1], n[2], n[3], n[4], n[5]))
		default:
			paths[last] = append(paths[last], arc(n[0], n[1], n[2], n[3], n[4], n[5])...)
		}
	}
	return paths
}

func numbers(text string) (all []float64) {
	for _, f := range strings.Fields(text) {
		v, err := strconv.ParseFloat(f, 64)
		if err != nil {
			panic(fmt.Sprintf("ink: %q is no number of a pen stroke", f))
		}
		all = append(all, v)
	}
	return all
}

// letterOf returns a character; one that the alphabet lacks is a box.
func letterOf(r rune) letter {
	if l, ok := alphabet()[r]; ok {
		return l
	}
	return letter{5, pen(missingBox)}
}

// Align says where a line of lettering stands by its place.
type Align float64

// The ways to stand: from the place on, about it, up to it.
const (
	Left   Align = 0
	Middle Align = 0.5
	Right  Align = 1
)

// TextWidth is the width of a line of lettering whose capitals have a height.
func TextWidth(text string, height float64) float64 {
	sum := -betweenU
	for _, r := range text {
		sum += betweenU + spaceU
		if r != ' ' {
			sum += letterOf(r).width - spaceU
		}
	}
	return max(0, sum) * height / capUnits
}

// TextPaths is the pen's way along a line of lettering. The base line passes
// through the place; height is that of capitals, px.
func TextPaths(text string, at Point, height float64, align Align) [][]Point {
	u := height / capUnits
	x := at.X - float64(float64(align)*TextWidth(text, height))
	var all [][]Point
	for _, r := range text {
		if r == ' ' {
			x += (spaceU + betweenU) * u
			continue
		}
		l := letterOf(r)
		for _, p := range l.paths {
			way := make([]Point, len(p))
			for i, q := range p {
				way[i] = Point{x + float64(q.X*u), at.Y - float64(q.Y*u)}
			}
			all = append(all, way)
		}
		x += (l.width + betweenU) * u
	}
	return all
}

// Text draws a line of lettering.
func (s *Sheet) Text(text string, at Point, height float64, align Align, ink color.NRGBA) {
	s.Stroke(TextPaths(text, at, height, align), Line(TextStroke(height), ink))
}

// TextStroke is how wide the strokes of lettering are, px: a pixel at least.
func TextStroke(height float64) float64 { return max(1, Stroke(height)) }

// Stroke is how wide the strokes of lettering are whose capitals have a height.
func Stroke(height float64) float64 { return height * strokeU / capUnits }
