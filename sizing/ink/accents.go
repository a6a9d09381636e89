package ink

import "strings"

// accents draws marks about the middle of a letter, y up from its top, or from
// its base line for the cedilla.
var accents = map[rune]string{
	'´': "M-0.6 0L0.7 1.6", '`': "M0.6 0L-0.7 1.6", '^': "M-1.3 0L0 1.5L1.3 0", 'ˇ': "M-1.3 1.5L0 0L1.3 1.5",
	'¨': "M-1.1 0.6L-1.1 0.7M1.1 0.6L1.1 0.7", '~': "M-1.6 0.1L-0.6 0.9L0.6 0.1L1.6 0.9", '˚': "A0 0.7 0.9 0.9 0 360",
	'¸': "M0.1 0L0.8 -1L0 -1.9L-0.9 -1.9",
}

// accented lists letters with a mark, by the mark: the bare ones, then as they
// are written, in the same order.
var accented = map[rune][2]string{
	'´': {"AEIOUYCLNRSZaeiouycnrsz", "ÁÉÍÓÚÝĆĹŃŔŚŹáéíóúýćńŕśź"}, '`': {"AEIOUaeiou", "ÀÈÌÒÙàèìòù"},
	'^': {"AEIOUWYaeiouwy", "ÂÊÎÔÛŴŶâêîôûŵŷ"}, 'ˇ': {"CDENRSTZcenrsz", "ČĎĚŇŘŠŤŽčěňřšž"},
	'¨': {"AEIOUYaeiouy", "ÄËÏÖÜŸäëïöüÿ"}, '~': {"ANOano", "ÃÑÕãñõ"}, '˚': {"AUau", "ÅŮåů"}, '¸': {"CSTcst", "ÇŞŢçşţ"},
}

// Where marks stand above a letter, units.
const (
	overCapital = 11.4
	overSmall   = 8
)

// addAccented enters letters with marks in an alphabet.
func addAccented(all map[rune]letter) {
	for mark, lists := range accented {
		bare, written := []rune(lists[0]), []rune(lists[1])
		for i, r := range written {
			all[r] = withMark(all, bare[i], mark)
		}
	}
}

func withMark(all map[rune]letter, bare, mark rune) letter {
	base := all[bare]
	top := overCapital
	switch {
	case mark == '¸':
		top = 0
	case bare >= 'a':
		top = overSmall
	}
	out := letter{width: base.width, paths: append([][]Point(nil), base.paths...)}
	if bare == 'i' {
		out.paths = out.paths[:1] // the mark takes the place of the dot
	}
	for _, way := range pen(accents[mark]) {
		moved := make([]Point, len(way))
		for i, q := range way {
			moved[i] = Point{base.width/2 + q.X, top + q.Y}
		}
		out.paths = append(out.paths, moved)
	}
	return out
}

// Missing lists the characters of a text, each once, that are drawn as a box
// because the alphabet lacks them.
func Missing(text string) string {
	var out strings.Builder
	for _, r := range text {
		if _, ok := alphabet()[r]; !ok && r != ' ' && !strings.ContainsRune(out.String(), r) {
			out.WriteRune(r)
		}
	}
	return out.String()
}
