package colourlist

import (
	"math"

	"badgewright/reduce/colour"
)

// greyish is the chroma below which a colour has no hue to speak of.
const greyish = 6

// lean says in which direction one colour lies from another: at most two
// words, the second only where it counts half as much as the first. It weighs
// chroma and hue as CIE94 does; words need no more. Nothing is said where the
// two can hardly be told, or are not the same colour at all.
func lean(from, to colour.Lab, de float64) string {
	if de < hardUpTo || de >= differentUpTo {
		return ""
	}
	var first, second part
	for _, p := range parts(from, to) {
		switch {
		case p.size > first.size:
			first, second = p, first
		case p.size > second.size:
			second = p
		}
	}
	words := first.word
	if second.size >= first.size/2 {
		words += " and " + second.word
	}
	if de < closeUpTo {
		return "a little " + words
	}
	return words
}

type part struct {
	word string
	size float64
}

func parts(from, to colour.Lab) []part {
	c1, c2 := length(from.A, from.B), length(to.A, to.B)
	dL, dC, dA, dB := to.L-from.L, c2-c1, to.A-from.A, to.B-from.B
	mean := (c1 + c2) / 2
	light := part{pick(dL > 0, "lighter", "darker"), math.Abs(dL)}
	if mean < greyish {
		return []part{light, {tint(dA, dB), length(dA, dB) / (1 + float64(0.045*mean))}}
	}
	chroma := part{pick(dC > 0, "stronger", "greyer"), math.Abs(dC) / (1 + float64(0.045*mean))}
	// What is left of the step once the part along the mean hue is taken off.
	ux, uy := from.A+to.A, from.B+to.B
	u := length(ux, uy)
	if u == 0 {
		return []part{light, chroma}
	}
	across := (float64(dB*ux) - float64(dA*uy)) / u
	hue := part{tint(-across*uy/u, across*ux/u), math.Abs(across) / (1 + float64(0.015*mean))}
	return []part{light, chroma, hue}
}

// length is plain arithmetic: the library's own is machine code on some machines.
func length(x, y float64) float64 { return math.Sqrt(float64(x*x) + float64(y*y)) }

// tint names a step in the plane of a and b.
func tint(a, b float64) string {
	if math.Abs(a) > math.Abs(b) {
		return pick(a > 0, "redder", "greener")
	}
	return pick(b > 0, "yellower", "bluer")
}

func pick(first bool, a, b string) string {
	if first {
		return a
	}
	return b
}
