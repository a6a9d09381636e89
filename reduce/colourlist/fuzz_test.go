package colourlist

import (
	"bytes"
	"encoding/csv"
	"math/rand/v2"
	"path/filepath"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/reduce/colour"
)

// FuzzRead holds what must be true of any bytes at all.
func FuzzRead(f *testing.F) {
	names, err := filepath.Glob("../../testdata/colourlists/*.csv")
	require.NoError(f, err)
	require.NotEmpty(f, names)
	for _, n := range names {
		f.Add(fileBytes(f, n), "")
	}
	f.Add([]byte("code;L D50;a;b\n1;2,5;3;4\n"), "D65")
	f.Add([]byte("sep=\t\n\"a\tb"), "")
	f.Add([]byte("=,#fff\n+,#fff\n\",#fff"), "")
	f.Fuzz(func(t *testing.T, data []byte, w string) {
		white := White(w)
		if white != D50 && white != D65 {
			white = Unstated
		}
		r, err := Read("fuzz.csv", data, white)
		if err != nil {
			var refusal *reduce.Refusal
			require.ErrorAs(t, err, &refusal)
			require.NotEmpty(t, refusal.What)
			require.NotEmpty(t, refusal.Do)
			return
		}
		require.False(t, r.NeedsWhite && len(r.List.Entries) > 0)
		sound(t, r)
		again, err := Read("fuzz.csv", data, white)
		require.NoError(t, err)
		require.Equal(t, r, again)
	})
}

func fileBytes(f *testing.F, name string) []byte {
	f.Helper()
	t := &testing.T{}
	return file(t, filepath.Base(name))
}

// sound checks that a reading holds only what may leave the reader.
func sound(t *testing.T, r *Reading) {
	t.Helper()
	require.LessOrEqual(t, len(r.List.Entries), MaxEntries)
	require.LessOrEqual(t, len(r.Problems), mostProblems)
	codes := map[string]bool{}
	for _, e := range r.List.Entries {
		require.NotEmpty(t, e.Code)
		require.LessOrEqual(t, utf8.RuneCountInString(e.Code), maxCode)
		require.LessOrEqual(t, utf8.RuneCountInString(e.Name), maxName)
		harmless(t, e.Code)
		harmless(t, e.Name)
		require.False(t, codes[strings.ToLower(e.Code)], "code twice: %q", e.Code)
		codes[strings.ToLower(e.Code)] = true
		if e.Lab == nil {
			require.False(t, e.Outside)
		} else if !e.Outside {
			require.LessOrEqual(t, colour.CIEDE2000(e.CIELAB(), e.RGB.Lab()), float64(outsideStep))
		}
	}
	line := 1
	for _, p := range r.Problems {
		require.GreaterOrEqual(t, p.Line, line, "problems run down the lines")
		line = p.Line
		require.NotEmpty(t, p.What)
		require.NotEmpty(t, p.Do)
		require.Less(t, len(p.What), 400)
	}
}

func harmless(t *testing.T, s string) {
	t.Helper()
	require.True(t, utf8.ValidString(s))
	for _, c := range s {
		require.False(t, unicode.Is(unicode.C, c), "%q", s)
	}
	if _, isNumber := number(s); !isNumber {
		require.NotContains(t, "=+-@\t\r", string(append([]rune(s), ' ')[0]), "%q", s)
	}
}

// What encoding/csv writes is read back as it was, whatever stands in it.
func TestWrittenListsComeBack(t *testing.T) {
	const seed = 23
	t.Log("seed", seed)
	r := rand.New(rand.NewPCG(seed, 0))
	pieces := []string{"a", "B", "7", ",", ";", "\"", "\n", "\t", "'", " ", "é", "深", "=", "-", "@", "#", "“"}
	text := func(most int) string {
		var b strings.Builder
		for range 1 + r.IntN(most) {
			b.WriteString(pieces[r.IntN(len(pieces))])
		}
		return b.String()
	}
	for range 150 {
		sep := separators[r.IntN(len(separators))]
		var buf bytes.Buffer
		w := csv.NewWriter(&buf)
		w.Comma = sep
		require.NoError(t, w.Write([]string{"code", "name", "hex"}))
		want := []ColourEntry{}
		for i := range 1 + r.IntN(12) {
			e := ColourEntry{Code: "c" + itoa(i+1) + text(4), Name: "n" + text(8), RGB: randomColour(r)}
			require.NoError(t, w.Write([]string{e.Code, e.Name, e.RGB.Hex()}))
			e.Code, e.Name = printable(e.Code), printable(e.Name)
			want = append(want, e)
		}
		w.Flush()
		got := read(t, buf.String())
		require.Equal(t, want, got.List.Entries, "%q", buf.String())
		require.Empty(t, got.Problems)
	}
}

// Source: RFC 4180, section 2, its own examples of rules 1 to 7.
func TestRecordsOfRFC4180(t *testing.T) {
	for text, want := range map[string][][]string{
		"aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n":                      {{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}},
		"aaa,bbb,ccc\r\nzzz,yyy,xxx":                          {{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}},
		"\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx":              {{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}},
		"\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx":          {{"aaa", "b\nbb", "ccc"}, {"zzz", "yyy", "xxx"}},
		"\"aaa\",\"b\"\"bb\",\"ccc\"":                         {{"aaa", `b"bb`, "ccc"}},
		"field_name,field_name,field_name\r\naaa,bbb,ccc\r\n": {{"field_name", "field_name", "field_name"}, {"aaa", "bbb", "ccc"}},
	} {
		var got [][]string
		for _, r := range split(lines(text), ',') {
			assert.False(t, r.stray)
			got = append(got, r.cells)
		}
		assert.Equal(t, want, got)
	}
}

func TestAnOpenQuotationMarkSwallowsNoLine(t *testing.T) {
	text := "code,name,hex\n1,\"two\nlines\",#111111\n2,\"open,#222222\n3,c,#333333\n4,\"d\",#444444\n5,\"also open,#555555\n6,f,#666666\n"
	r := read(t, text)
	var codes []string
	for _, e := range r.List.Entries {
		codes = append(codes, e.Code)
	}
	assert.Equal(t, []string{"1", "3", "4", "6"}, codes)
	assert.Equal(t, []int{4, 7}, []int{r.Problems[0].Line, r.Problems[1].Line})
}
