// Package csvfile writes tables of text as CSV after RFC 4180, so that no cell
// is taken for a formula by the spreadsheet that opens it.
//
// A spreadsheet runs a cell that begins with = + - @ or their full-width forms.
// Such a cell gets an apostrophe in front, which spreadsheets take for "this is
// text". A semicolon or a line break inside a cell may begin a new cell where
// another separator is usual, so the same is done behind those. Tabs, which are
// separators too, become blanks, and a carriage return ends a line like any
// other. A plain number, below zero too, stays a number.
package csvfile

import (
	"bytes"
	"encoding/csv"
	"regexp"
	"strings"
)

// bom tells a spreadsheet that the text is UTF-8; without it some take names
// for the letters of an old code page.
const bom = "\ufeff"

// quote is what tells a spreadsheet that text follows.
const quote = "'"

var (
	// begins finds where a formula could begin, behind blanks and marks that are
	// there already.
	begins = regexp.MustCompile(`(^|[;\n])([ \x{a0}']*[=+\-@＝＋－＠])`)
	// guarded is the same with one mark more.
	guarded = regexp.MustCompile(`(^|[;\n])'([ \x{a0}']*[=+\-@＝＋－＠])`)
	// number is what stays as it is.
	number = regexp.MustCompile(`^-?\d+(\.\d+)?$`)
	// plainly takes out what no cell needs.
	plainly = strings.NewReplacer("\r\n", "\n", "\r", "\n", "\t", " ")
)

// Guard makes a cell's text harmless.
func Guard(text string) string {
	text = plainly.Replace(text)
	if number.MatchString(text) {
		return text
	}
	return begins.ReplaceAllString(text, "${1}"+quote+"${2}")
}

// Plain gives back what Guard was given, but for tabs and carriage returns.
func Plain(cell string) string {
	return guarded.ReplaceAllString(plainly.Replace(cell), "${1}${2}")
}

// Write writes rows, guarded, with lines ended as RFC 4180 section 2.1 has it.
func Write(rows [][]string) []byte {
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	w.UseCRLF = true
	for _, cells := range rows {
		safe := make([]string, len(cells))
		for i, c := range cells {
			safe[i] = Guard(c)
		}
		_ = w.Write(safe) // a buffer does not fail
	}
	w.Flush()
	return out.Bytes()
}

// WithMark is Write with the byte order mark that spreadsheets know UTF-8 by.
func WithMark(rows [][]string) []byte { return append([]byte(bom), Write(rows)...) }
