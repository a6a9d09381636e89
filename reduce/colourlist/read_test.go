package colourlist

import (
	"encoding/binary"
	"os"
	"strings"
	"testing"
	"unicode/utf16"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/reduce/colour"
)

func read(t *testing.T, text string) *Reading {
	t.Helper()
	r, err := Read("skerry.csv", []byte(text), Unstated)
	require.NoError(t, err)
	return r
}

func file(t *testing.T, name string) []byte {
	t.Helper()
	b, err := os.ReadFile("../../testdata/colourlists/" + name)
	require.NoError(t, err)
	return b
}

// told is a problem as "line column: what it begins with".
func told(r *Reading) []string {
	var all []string
	for _, p := range r.Problems {
		s := p.What
		if p.Kept {
			s += " Kept."
		}
		all = append(all, strings.TrimSpace(strings.Join([]string{itoa(p.Line), p.Column}, " "))+": "+s)
	}
	return all
}

func itoa(n int) string { return strings.TrimPrefix(columnNumber(n-1), "column ") }

// Every way to write the same two colours.
func TestOneListInManyWritings(t *testing.T) {
	want := []ColourEntry{
		{Code: "SL-32", Name: "Signal red", RGB: colour.RGB8{R: 196, G: 51, B: 43}},
		{Code: "SL-54", Name: "Keeper's blue", RGB: colour.RGB8{R: 31, G: 78, B: 140}},
	}
	for how, text := range map[string]string{
		"hex":                   "code,name,hex\nSL-32,Signal red,#c4332b\nSL-54,Keeper's blue,#1f4e8c\n",
		"no last line end":      "code,name,hex\nSL-32,Signal red,#c4332b\nSL-54,Keeper's blue,#1f4e8c",
		"Windows line ends":     "code,name,hex\r\nSL-32,Signal red,#c4332b\r\nSL-54,Keeper's blue,#1f4e8c\r\n",
		"old Mac line ends":     "code,name,hex\rSL-32,Signal red,#c4332b\rSL-54,Keeper's blue,#1f4e8c\r",
		"byte order mark":       "\ufeffcode,name,hex\nSL-32,Signal red,#c4332b\nSL-54,Keeper's blue,#1f4e8c\n",
		"another order":         "Hex code;Colour name;Colour no.\nC4332B;Signal red;SL-32\n0x1F4E8C;Keeper's blue;SL-54\n",
		"tabs":                  "Ref\tDescription\tsRGB hex\nSL-32\tSignal red\t#c4332b\nSL-54\tKeeper's blue\t#1f4e8cff\n",
		"quoted":                "\"code\",\"name\",\"hex\"\n\"SL-32\",\"Signal red\",\"#c4332b\"\n\"SL-54\", \"Keeper's blue\", \"#1f4e8c\"\n",
		"channels":              "code,name,R,G,B\nSL-32,Signal red,196,51,43\nSL-54,Keeper's blue,31,78,140\n",
		"channels before codes": "red,green,blue,#,enamel colour\n196,51,43,SL-32,Signal red\n31,78.0,140,SL-54,Keeper's blue\n",
		"one cell":              "code,name,RGB\nSL-32,Signal red,\"196, 51, 43\"\nSL-54,Keeper's blue,rgb(31 78 140)\n",
		"one cell, semicolons":  "code;name;RGB\nSL-32;Signal red;196,51,43\nSL-54;Keeper's blue;31/78/140\n",
		"stated separator":      "sep=;\ncode;name;hex\nSL-32;Signal red;#c4332b\nSL-54;Keeper's blue;#1f4e8c\n",
		"a heading":             "Enamels, spring\n\ncode,name,hex\nSL-32,Signal red,#c4332b\nSL-54,Keeper's blue,#1f4e8c\n",
		"columns it ignores":    "page,code,price,name,hex\n1,SL-32,\"0,10\",Signal red,#c4332b\n2,SL-54,,Keeper's blue,#1f4e8c\n",
		"unknown colour header": "code,name,tone\nSL-32,Signal red,#c4332b\nSL-54,Keeper's blue,#1f4e8c\n",
		"colour headed colour":  "code,description,colour\nSL-32,Signal red,#c4332b\nSL-54,Keeper's blue,#1f4e8c\n",
		"no header":             "SL-32,Signal red,#c4332b\nSL-54,Keeper's blue,#1f4e8c\n",
		"no header, bare hex":   "SL-32;Signal red;c4332b\nSL-54;Keeper's blue;1f4e8c\n",
		"no header, channels":   "SL-32,Signal red,196,51,43\nSL-54,Keeper's blue,31,78,140\n",
		"no header, one cell":   "SL-32\tSignal red\t196 51 43\nSL-54\tKeeper's blue\t31 78 140\n",
	} {
		r := read(t, text)
		assert.Equal(t, want, r.List.Entries, how)
		assert.Empty(t, r.Problems, how)
		assert.Len(t, r.Notes, 1, how)
	}
}

func TestUTF16AsTableProgramsSaveIt(t *testing.T) {
	text := "Code\tName\tHex\r\nSL-40\tGrasnelke – „rosa“\t#e98fb0\r\n"
	for _, order := range []binary.AppendByteOrder{binary.LittleEndian, binary.BigEndian} {
		data := order.AppendUint16(nil, 0xfeff)
		for _, u := range utf16.Encode([]rune(text)) {
			data = order.AppendUint16(data, u)
		}
		r, err := Read("a.txt", data, Unstated)
		require.NoError(t, err)
		assert.Equal(t, "Grasnelke – „rosa“", r.List.Entries[0].Name)
	}
}

func TestWesternLettersAreReadAndSaid(t *testing.T) {
	r, err := Read("w.csv", file(t, "nasty-western.csv"), Unstated)
	require.NoError(t, err)
	assert.Equal(t, "Küstennebel", r.List.Entries[0].Name)
	assert.Equal(t, "Möwe’s Weiß", r.List.Entries[1].Name)
	assert.Contains(t, strings.Join(r.Notes, " "), "UTF-8")
}

// The one column of digits is the code, for it holds no letter.
func TestSixDigitCodesAreNoColours(t *testing.T) {
	r := read(t, "100200,#c4332b\n100201,#1f4e8c\n")
	assert.Equal(t, "100200", r.List.Entries[0].Code)
	_, err := Read("", []byte("100200,Signal red\n100201,Keeper's blue\n"), Unstated)
	assert.Error(t, err)
}

func TestNamesStandInForCodes(t *testing.T) {
	r := read(t, "name,hex\nSignal red,#c4332b\n")
	assert.Equal(t, ColourEntry{Code: "Signal red", RGB: colour.RGB8{R: 196, G: 51, B: 43}}, r.List.Entries[0])
}

func TestListsAreNamedByHeadingOrFile(t *testing.T) {
	assert.Equal(t, "Enamels, spring", read(t, "Enamels, spring\ncode,hex\n1,#fff\n").List.Name)
	for file, name := range map[string]string{`C:\lists\Skerry spring.csv`: "Skerry spring", "": "Pasted list", "=cmd.csv": "cmd"} {
		r, err := Read(file, []byte("code,hex\n1,#fff\n"), Unstated)
		require.NoError(t, err)
		assert.Equal(t, name, r.List.Name)
	}
}

func TestTheSkerryLists(t *testing.T) {
	for name, n := range map[string]int{"skerry.csv": 50, "skerry-lab.csv": 24, "skerry-tabs.csv": 12, "skerry-bare.csv": 12} {
		r, err := Read(name, file(t, name), Unstated)
		require.NoError(t, err, name)
		assert.Len(t, r.List.Entries, n, name)
		assert.Empty(t, r.Problems, name)
	}
	hex, _ := Read("", file(t, "skerry.csv"), Unstated)
	lab, _ := Read("", file(t, "skerry-lab.csv"), Unstated)
	for i, e := range lab.List.Entries {
		assert.Less(t, colour.CIEDE2000(e.CIELAB(), hex.List.Entries[i].CIELAB()), 0.02, e.Code) // both say the same, to two decimals
		assert.Equal(t, hex.List.Entries[i].RGB, e.RGB)
	}
}

// Each mistake is told by its line, and every good line is kept.
func TestEveryMistakeIsToldByLine(t *testing.T) {
	r, err := Read("nasty.csv", file(t, "nasty.csv"), Unstated)
	require.NoError(t, err)
	var kept []string
	for _, e := range r.List.Entries {
		kept = append(kept, e.Code+" "+e.Name)
	}
	assert.Equal(t, []string{
		"SL-01 Fog white", "SL-02 Lamp glow", "SL-04 ", "SL-06 Night, deep", `SL-08 Rope of 5" hemp`,
		`SL-09 HYPERLINK("//skerry.invalid")`, "0010 Kept zeros", "SUM(A1) Formula code", "SL-14 Tab and bell and turned text", "SL-16 Two lines", "SL-18 After it",
	}, kept)
	assert.Equal(t, []string{
		"5 hex: “#c4332” has 5 digits, not six.",
		"7 code: There is no code.",
		"8 hex: “deep” is not a hex colour. The line has 4 cells and the header 3.",
		"10 code: The code “SL-01” already stands in line 3.",
		"11 code: The code “sl-02” already stands in line 4, with another colour.",
		"12: A quotation mark stands where none belongs, or one is not closed.",
		"14 name: This began like a formula of a table program. Kept.",
		"16 code: This began like a formula of a table program. Kept.",
		"17 hex: “3366” has 4 digits, not six.",
		"18 hex: “#11223380” is a see-through colour.",
		"19 hex: “red” is not a hex colour.",
		"21 hex: There is no colour.",
		"26: A quotation mark stands where none belongs, or one is not closed.",
	}, told(r))
	assert.Contains(t, r.Problems[8].Do, "#003366")
	for _, p := range r.Problems {
		assert.NotEmpty(t, p.Do)
	}
}

func TestChannelsAndCIELABOutOfBounds(t *testing.T) {
	r := read(t, "code,r,g,b\n1,256,0,0\n2,0.5,0,0\n3,,0,0\n4,1e2,0,0\n5,12,13,14\n")
	assert.Equal(t, []string{
		"2 r: “256” is not an amount of red.", "3 r: “0.5” is not an amount of red.",
		"4 r: There is no red.", "5 r: “1e2” is not an amount of red.",
	}, told(r))
	r = read(t, "code,L D65,a,b\n1,101,0,0\n2,50,-160,0\n3,50,0,inf\n4,50,0\n5,50,−1.5,\"2,5\"\n")
	assert.Equal(t, []string{
		"2 L D65: “101” is no L of CIELAB.", "3 L D65: “-160” is no a of CIELAB.",
		"4 L D65: “inf” is not a number for b.", "5 L D65: There is no b.",
	}, told(r))
	assert.Equal(t, &[3]float64{50, -1.5, 2.5}, r.List.Entries[0].Lab)
}

func TestWhatIsNoListIsRefusedInWords(t *testing.T) {
	for text, says := range map[string]string{
		"":                                "nothing",
		" \r\n\t\n":                       "nothing",
		"PK\x03\x04rest":                  "workbook",
		"%PDF-1.7":                        "PDF",
		"\x89PNG\r\n\x1a\n\x00\x00":       "not a text file",
		string(file(t, "no-colours.csv")): "code,name,price",
		"dear maker, which codes?":        "dear maker",
		"code,L D50,a D65,b\n1,2,3,4":     "both D50 and D65",
		"code,hex\n" + strings.Repeat("x,#ffffff\n", MaxBytes/10): "larger than 1 MB",
	} {
		_, err := Read("a.csv", []byte(text), Unstated)
		var r *reduce.Refusal
		require.ErrorAs(t, err, &r, "%.20q", text)
		assert.Contains(t, r.What, says)
		assert.NotEmpty(t, r.Do)
	}
}

func TestBoundsAreSaid(t *testing.T) {
	var b strings.Builder
	b.WriteString("code,hex\n")
	for i := range MaxEntries + 7 {
		b.WriteString("c" + itoa(i+1) + ",#123456\n")
	}
	r := read(t, b.String())
	assert.Len(t, r.List.Entries, MaxEntries)
	require.Len(t, r.Problems, 1)
	assert.Equal(t, MaxEntries+2, r.Problems[0].Line)
	assert.Contains(t, r.Problems[0].What, "5000 colours")

	r = read(t, "code,name,hex\n"+strings.Repeat("x", maxCode+1)+",,#fff\nSL-1,"+strings.Repeat("n", maxName+1)+",#fff\n")
	assert.Contains(t, told(r)[0], "too many for a code")
	assert.Len(t, []rune(r.List.Entries[0].Name), maxName)

	r = read(t, "code,hex\n"+strings.Repeat("x,y\n", mostProblems+5)+"SL-1,#fff\n")
	assert.Len(t, r.Problems, mostProblems)
	assert.Equal(t, 5, r.More)
	assert.Len(t, r.List.Entries, 1)
}

func TestEmptyCellsKeepTheirPlace(t *testing.T) {
	for _, sep := range []string{",", ";", "\t"} {
		r := read(t, strings.ReplaceAll("code,name,hex\nSL-1,,#c4332b\n", ",", sep))
		assert.Equal(t, []ColourEntry{{Code: "SL-1", RGB: colour.RGB8{R: 196, G: 51, B: 43}}}, r.List.Entries, "%q", sep)
	}
}

// A line that holds a colour is no header, whatever its name is.
func TestAColourCalledHexIsNoHeader(t *testing.T) {
	r := read(t, "SL-1,Hex,#c4332b\nSL-2,Red,#1f4e8c\n")
	assert.Len(t, r.List.Entries, 2)
}
