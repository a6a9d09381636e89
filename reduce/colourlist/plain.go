package colourlist

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// printable drops what cannot be seen (control characters, marks that turn the
// direction of writing) and makes every run of space one blank.
func printable(s string) string {
	s = strings.Map(func(r rune) rune {
		switch {
		case unicode.IsSpace(r):
			return ' '
		case r == utf8.RuneError, unicode.In(r, unicode.C, unicode.Zl, unicode.Zp):
			return -1
		}
		return r
	}, s)
	return strings.Join(strings.Fields(s), " ")
}

// plain makes a cell harmless text. A table program that meets it later must
// not take it for a formula, so it never begins like one; bare is false when
// such a beginning was taken off. ="0012", by which table programs keep leading
// zeros, is 0012.
func plain(s string) (text string, bare bool) {
	text = printable(s)
	if inner, ok := strings.CutPrefix(text, `="`); ok && strings.HasSuffix(inner, `"`) {
		text = strings.TrimSpace(inner[:len(inner)-1])
	}
	if strings.Trim(text, "-–—") == "" { // a dash stands for nothing
		return "", true
	}
	if _, ok := number(text); ok {
		return text, true
	}
	rest := strings.TrimLeft(text, formulaStarts+" ")
	return rest, rest == text
}

// formulaStarts are what makes a table program compute a cell. A signed number
// is only a number.
const formulaStarts = "=+-@＝＋－＠"
