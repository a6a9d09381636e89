package sheet

import (
	"strings"
	"testing"

	"github.com/ledongthuc/pdf"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// names are ones that a pin may well have; the lighthouse is invented.
var names = []string{
	"Skerry Light", "Φάρος του Σκέρι", "Маяк Скерри, Ґанок", "Latarnia Żółć gęślą jaźń", "Hải đăng Ẩn ộỗ", "灯台のピン、漢字カナ",
}

func TestNamesInManyScriptsAreFoundInTheFile(t *testing.T) {
	d := begun(t)
	for i, name := range names {
		d.Text(20, 20+unitMM(10*i), Type{Size: 11}, name)
		d.Text(20, 120+unitMM(10*i), Type{Size: 11, Weight: Strong}, name)
	}
	assert.Empty(t, d.Notes())
	file, err := d.Bytes()
	require.NoError(t, err)
	text := strings.ReplaceAll(textOf(t, readBack(t, file), 1), "\n", "") // one for each change of font
	for _, name := range names {
		assert.Equal(t, 2, strings.Count(text, name), name)
	}
}

// The outlines in the file are those of the font: another reader of fonts
// (golang.org/x/image/font/sfnt) draws the same from both, letters put together
// of several outlines too, and the widths agree.
func TestTheFontsInTheFileDrawWhatTheWholeFontsDraw(t *testing.T) {
	d := begun(t)
	all := strings.Join(names, " ")
	d.Text(20, 20, Type{Size: 11}, all)
	file, err := d.Bytes()
	require.NoError(t, err)
	r := readBack(t, file)
	whole := map[string][]byte{"NotoSans-Regular": fontFile(t, "NotoSans-some.ttf"), "NotoSansJP-Regular": fontFile(t, "NotoSansJP-some.ttf")}
	seen := 0
	for _, name := range r.Page(1).Fonts() {
		f := r.Page(1).Font(name).V
		tag, plain, ok := strings.Cut(f.Key("BaseFont").Name(), "+")
		require.True(t, ok)
		assert.Regexp(t, "^[A-Z]{6}$", tag)
		cid := f.Key("DescendantFonts").Index(0)
		assert.Equal(t, "CIDFontType2", cid.Key("Subtype").Name(), "TrueType outlines")
		assert.Equal(t, cid.Key("BaseFont").Name(), cid.Key("FontDescriptor").Key("FontName").Name())
		seen += sameLetters(t, whole[plain], streamOf(t, cid.Key("FontDescriptor").Key("FontFile2")), streamOf(t, cid.Key("CIDToGIDMap")), cid.Key("W"), all)
	}
	assert.Equal(t, len([]rune(strings.ReplaceAll(all, " ", ""))), seen, "every letter is in one of the fonts")
}

// sameLetters compares the letters of text that the whole font has with those
// of the subset, and counts them.
func sameLetters(t *testing.T, whole, subset, gids []byte, widths pdf.Value, text string) int {
	a, err := sfnt.Parse(whole)
	require.NoError(t, err)
	b, err := sfnt.Parse(subset)
	require.NoError(t, err)
	em := fixed.I(int(a.UnitsPerEm()))
	seen := 0
	for _, r := range text {
		var one, two sfnt.Buffer
		g, err := a.GlyphIndex(&one, r)
		require.NoError(t, err)
		if g == 0 || r == ' ' {
			continue
		}
		seen++
		sub := sfnt.GlyphIndex(int(gids[2*r])<<8 | int(gids[2*r+1]))
		want, err := a.LoadGlyph(&one, g, em, nil)
		require.NoError(t, err)
		got, err := b.LoadGlyph(&two, sub, em, nil)
		require.NoError(t, err)
		assert.Equal(t, want, got, "%c", r)
		far, err := a.GlyphAdvance(&one, g, em, 0)
		require.NoError(t, err)
		assert.InDelta(t, float64(far)/float64(em)*1000, widthIn(widths, int(r)), 0.5, "%c", r)
	}
	return seen
}

// widthIn reads the W of a CID font (ISO 32000-1, 9.7.4.3).
func widthIn(w pdf.Value, cid int) float64 {
	for i := 0; i+1 < w.Len(); {
		first := int(w.Index(i).Int64())
		if list := w.Index(i + 1); list.Kind() == pdf.Array {
			if cid >= first && cid < first+list.Len() {
				return list.Index(cid - first).Float64()
			}
			i += 2
			continue
		}
		if cid >= first && cid <= int(w.Index(i+1).Int64()) {
			return w.Index(i + 2).Float64()
		}
		i += 3
	}
	return -1
}

func TestALetterThatNoFontHasIsSaid(t *testing.T) {
	d := begun(t)
	d.Text(20, 20, Type{Size: 11}, "pin 🎉 ☃")
	file, err := d.Bytes()
	require.NoError(t, err)
	assert.Contains(t, textOf(t, readBack(t, file), 1), "pin � �")
	require.Len(t, d.Notes(), 1)
	assert.Contains(t, d.Notes()[0], "🎉 (U+1F389), ☃ (U+2603)")
}

func TestHostileNamesAreSetAsPlainText(t *testing.T) {
	assert.Equal(t, "a b c", Clean("\x00a\tb\r\n  c\u202e\u200b\ufeff\ufffe  "))
	assert.Equal(t, "H\u1ea3i", Clean("Ha\u0309i"), "letters and marks become one (as file names of some systems need)")
	assert.Equal(t, "\ufffd", Clean("\xff"))
	assert.Equal(t, "10\u00a0mm", Clean("10\u00a0mm"), "a number stays by its unit")
	assert.Len(t, []rune(Clean(strings.Repeat("x", 300_000))), longest+1)
	d := begun(t)
	for _, name := range []string{"", " ", ") Tj ET Q (", `\`, "\\(", strings.Repeat("W", 10_000), "\u202eevil", "<</Type/Page>>endobj"} {
		d.Text(20, 40, Type{Size: 11}, d.Cut(Type{Size: 11}, 100, name))
		d.Wrap(Type{Size: 11}, 1, name)
	}
	file, err := d.Bytes()
	require.NoError(t, err)
	text := textOf(t, readBack(t, file), 1)
	assert.Contains(t, text, ") Tj ET Q (")
	assert.Contains(t, text, "<</Type/Page>>endobj")
	assert.Equal(t, 1, readBack(t, file).NumPage())
}

func TestFontsThatAreNoneAreRefused(t *testing.T) {
	_, err := NewFonts()
	assert.ErrorContains(t, err, "no font")
	_, err = NewFonts(FontFile{"Cut", Regular, goregular.TTF[:2000]})
	assert.ErrorContains(t, err, "Cut")
	_, err = NewFonts(FontFile{"Other", Regular, []byte("OTTO and so on")})
	assert.ErrorContains(t, err, "not TrueType")
}

func TestLinesAreBrokenWhereTheyMay(t *testing.T) {
	d := begun(t)
	plain := Type{Size: 10}
	for _, text := range []string{"one two three four five six seven", "灯台のピン漢字カナ灯台のピン漢字カナ", strings.Repeat("m", 60)} {
		lines := d.Wrap(plain, 30, text)
		assert.Greater(t, len(lines), 1)
		for _, l := range lines {
			assert.LessOrEqual(t, d.Width(plain, l), unitMM(30), l)
		}
		assert.Equal(t, strings.ReplaceAll(text, " ", ""), strings.ReplaceAll(strings.Join(lines, ""), " ", ""))
	}
	assert.Equal(t, []string{"one two"}, d.Wrap(plain, 300, " one  two "))
	assert.Equal(t, []string{""}, d.Wrap(plain, 30, ""))
	cut := d.Cut(plain, 30, "one two three four five six seven")
	assert.True(t, strings.HasSuffix(cut, "…"))
	assert.LessOrEqual(t, d.Width(plain, cut), unitMM(30))
}
