package csvfile

import (
	"bytes"
	"encoding/csv"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// runs says whether a spreadsheet would take a cell for a formula: the first
// letters named by the OWASP page on CSV injection, blanks before them counted
// as nothing. A plain number is no formula.
func runs(cell string) bool {
	if number.MatchString(cell) {
		return false
	}
	cell = strings.TrimLeft(cell, " \u00a0")
	return cell != "" && strings.ContainsAny(string([]rune(cell)[:1]), "=+-@＝＋－＠\t\r")
}

func TestNoCellRunsAsAFormula(t *testing.T) {
	for _, name := range []string{
		"=1+1", "+1+1", "-1+1", "@SUM(A1)", "\t=1", "\r=1", " =1", "＝1+1", "'=1",
		"a;=1+1", "a\n=cmd|' /C calc'!A0", "a\r\n-1+1", "a;\t@x", "==1", "-", "x; =1",
	} {
		file := Write([][]string{{"n", name, "z"}})
		for _, comma := range []rune{',', ';', '\t'} {
			r := csv.NewReader(bytes.NewReader(file))
			r.Comma, r.LazyQuotes, r.FieldsPerRecord = comma, true, -1
			rows, err := r.ReadAll()
			require.NoError(t, err)
			for _, row := range rows {
				for _, cell := range row {
					assert.False(t, runs(cell), "%q split at %q gives %q", name, comma, cell)
				}
			}
		}
	}
}

func TestNumbersBelowZeroStayNumbers(t *testing.T) {
	for _, n := range []string{"-3", "-3.25", "0", "17", "-0.5"} {
		assert.Equal(t, n, Guard(n))
	}
	assert.Equal(t, "'-3 mm", Guard("-3 mm"), "with a unit it is text")
}

func TestPlainNamesAreLeftAlone(t *testing.T) {
	for _, name := range []string{"Skerry Light", "L'Étoile", "'Round the point", "a-b", "5 + 5", "Φάρος; ΑΒ", "灯台"} {
		assert.Equal(t, name, Guard(name))
	}
}

func TestWhatIsGuardedComesBack(t *testing.T) {
	rnd := rand.New(rand.NewPCG(4, 180))
	letters := []rune("=+-@'; \t\n\ra1.\"，,＝é")
	for range 20000 {
		b := make([]rune, rnd.IntN(9))
		for i := range b {
			b[i] = letters[rnd.IntN(len(letters))]
		}
		text := string(b)
		require.Equal(t, plainly.Replace(text), Plain(Guard(text)), "seed 4 180: %q", text)
	}
}

// RFC 4180: sections 2.1 (CRLF), 2.5 to 2.7 (quotes). The reader is Go's, strict.
func TestCellsSurviveAnotherReader(t *testing.T) {
	rows := [][]string{
		{"name", "note"},
		{`He said "light"`, "two\nlines, and a comma"},
		{"", "Яркий; фонарь"},
		{"trailing ", " leading"},
	}
	file := Write(rows)
	assert.True(t, bytes.HasSuffix(file, []byte("\r\n")))
	assert.Contains(t, string(file), `"He said ""light"""`)
	r := csv.NewReader(bytes.NewReader(file))
	got, err := r.ReadAll()
	require.NoError(t, err)
	assert.Equal(t, rows, got)
	assert.Equal(t, append([]byte{0xef, 0xbb, 0xbf}, file...), WithMark(rows), "RFC 3629 section 6")
}
