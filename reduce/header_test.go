package reduce

import (
	"bytes"
	"compress/zlib"
	"encoding/binary"
	"encoding/csv"
	"fmt"
	"hash/crc32"
	"image"
	"image/gif"
	"image/jpeg"
	"image/png"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// blankImage is what the standard library's encoders are given.
func blankImage(w, h int) image.Image {
	img := image.NewNRGBA(image.Rect(0, 0, w, h))
	for i := range img.Pix {
		img.Pix[i] = byte(i * 7)
	}
	return img
}

func asPNG(t testing.TB, img image.Image) []byte {
	var b bytes.Buffer
	require.NoError(t, png.Encode(&b, img))
	return b.Bytes()
}

func asJPEG(t testing.TB, img image.Image) []byte {
	var b bytes.Buffer
	require.NoError(t, jpeg.Encode(&b, img, nil))
	return b.Bytes()
}

func asGIF(t testing.TB, img image.Image) []byte {
	var b bytes.Buffer
	require.NoError(t, gif.Encode(&b, img, nil))
	return b.Bytes()
}

// chunk builds a PNG chunk.
func chunk(kind string, data []byte) []byte {
	out := binary.BigEndian.AppendUint32(nil, uint32(len(data)))
	out = append(append(out, kind...), data...)
	return binary.BigEndian.AppendUint32(out, crc32.ChecksumIEEE(out[4:]))
}

// withChunk puts a chunk behind a PNG's IHDR.
func withChunk(file []byte, kind string, data []byte) []byte {
	const ihdrEnd = 8 + 25
	return bytes.Join([][]byte{file[:ihdrEnd], chunk(kind, data), file[ihdrEnd:]}, nil)
}

// iccOf builds a matrix profile with the colorants given (XYZ of red, green
// and blue adapted to D50): as much of ICC.1 as a reader of colorants needs.
func iccOf(space string, xyz [9]float64) []byte {
	const tags = 3
	p := make([]byte, 128)
	copy(p[16:], space)
	copy(p[36:], "acsp")
	p = binary.BigEndian.AppendUint32(p, tags)
	for k, name := range []string{"rXYZ", "gXYZ", "bXYZ"} {
		p = append(p, name...)
		p = binary.BigEndian.AppendUint32(p, uint32(132+12*tags+20*k))
		p = binary.BigEndian.AppendUint32(p, 20)
	}
	for k := range tags {
		p = append(p, "XYZ \x00\x00\x00\x00"...)
		for c := range 3 {
			p = binary.BigEndian.AppendUint32(p, uint32(int32(xyz[3*k+c]*65536)))
		}
	}
	return p
}

func iccChunk(t testing.TB, icc []byte) []byte {
	var z bytes.Buffer
	w := zlib.NewWriter(&z)
	_, err := w.Write(icc)
	require.NoError(t, err)
	require.NoError(t, w.Close())
	return append([]byte("profile\x00\x00"), z.Bytes()...)
}

// exif builds an EXIF block with one tag, in either byte order.
func exif(order binary.AppendByteOrder, orientation uint16) []byte {
	b := []byte("MM\x00*")
	if order.String() == "LittleEndian" {
		b = []byte("II*\x00")
	}
	b = order.AppendUint32(b, 8)
	b = order.AppendUint16(b, 2)
	b = order.AppendUint16(b, 0x010f) // another tag first
	b = append(b, make([]byte, 10)...)
	b = order.AppendUint16(b, 0x0112)
	b = order.AppendUint16(b, 3)
	b = order.AppendUint32(b, 1)
	b = order.AppendUint16(b, orientation)
	return append(b, make([]byte, 6)...)
}

// withSegment puts a segment behind a JPEG's first marker.
func withSegment(file []byte, marker byte, data []byte) []byte {
	seg := binary.BigEndian.AppendUint16([]byte{0xff, marker}, uint16(len(data)+2))
	return bytes.Join([][]byte{file[:2], seg, data, file[2:]}, nil)
}

// adobeRGB are the colorants of the space of that name, 1998, D50-adapted
// (ICC registry; from memory, and only used as "neither of the two").
var adobeRGB = [9]float64{0.6097, 0.3111, 0.0195, 0.2053, 0.6257, 0.0609, 0.1492, 0.0632, 0.7446}

func box4(kind string, parts ...[]byte) []byte {
	data := bytes.Join(parts, nil)
	return append(append(binary.BigEndian.AppendUint32(nil, uint32(len(data)+8)), kind...), data...)
}

// avif builds the boxes of an AVIF with two items: a tile and the whole.
func avif(w, h uint32, colr []byte, quarters byte) []byte {
	size := func(w, h uint32) []byte {
		return box4("ispe", binary.BigEndian.AppendUint32(binary.BigEndian.AppendUint32(make([]byte, 4), w), h))
	}
	full := make([]byte, 4)
	return bytes.Join([][]byte{
		box4("ftyp", []byte("mif1\x00\x00\x00\x00avifmif1")),
		box4("meta", full,
			box4("pitm", full, []byte{0, 2}),
			box4("iprp",
				box4("ipco", size(9000, 9000), size(w, h), box4("colr", colr), box4("irot", []byte{quarters})),
				box4("ipma", full, []byte{0, 0, 0, 2, 0, 1, 1, 1, 0, 2, 3, 0x82, 3, 0x84}))),
		box4("mdat", make([]byte, 8)),
	}, nil)
}

func riff(chunks ...[]byte) []byte {
	body := append([]byte("WEBP"), bytes.Join(chunks, nil)...)
	return append(binary.LittleEndian.AppendUint32([]byte("RIFF"), uint32(len(body))), body...)
}

func riffChunk(kind string, data []byte) []byte {
	out := append(binary.LittleEndian.AppendUint32([]byte(kind), uint32(len(data))), data...)
	if len(data)%2 == 1 {
		out = append(out, 0)
	}
	return out
}

func TestReadHeader(t *testing.T) {
	img := blankImage(30, 20)
	vp8x := func(flags byte) []byte { return riffChunk("VP8X", []byte{flags, 0, 0, 0, 29, 0, 0, 19, 0, 0}) }
	for _, c := range []struct {
		name string
		data []byte
		want Header
	}{
		{"plain PNG", asPNG(t, img), Header{Format: "png", W: 30, H: 20}},
		{"PNG, P3 profile", withChunk(asPNG(t, img), "iCCP", iccChunk(t, iccOf("RGB ", colorantsP3))), Header{Format: "png", W: 30, H: 20, WideProfile: true, displayP3: true}},
		{"PNG, sRGB profile", withChunk(asPNG(t, img), "iCCP", iccChunk(t, iccOf("RGB ", colorantsSRGB))), Header{Format: "png", W: 30, H: 20}},
		{"PNG, wide profile", withChunk(asPNG(t, img), "iCCP", iccChunk(t, iccOf("RGB ", adobeRGB))), Header{Format: "png", W: 30, H: 20, WideProfile: true}},
		{"PNG, grey profile", withChunk(asPNG(t, img), "iCCP", iccChunk(t, iccOf("GRAY", adobeRGB))), Header{Format: "png", W: 30, H: 20}},
		{"PNG, cICP P3", withChunk(asPNG(t, img), "cICP", []byte{12, 13, 0, 1}), Header{Format: "png", W: 30, H: 20, WideProfile: true, displayP3: true}},
		{"PNG, cICP goes before iCCP", withChunk(withChunk(asPNG(t, img), "iCCP", iccChunk(t, iccOf("RGB ", adobeRGB))), "cICP", []byte{1, 13, 0, 1}), Header{Format: "png", W: 30, H: 20}},
		{"PNG, wide chromaticities", withChunk(asPNG(t, img), "cHRM", make([]byte, 32)), Header{Format: "png", W: 30, H: 20, WideProfile: true}},
		{"PNG, sRGB goes before cHRM", withChunk(withChunk(asPNG(t, img), "cHRM", make([]byte, 32)), "sRGB", []byte{0}), Header{Format: "png", W: 30, H: 20}},
		{"PNG on its side", withChunk(asPNG(t, img), "eXIf", exif(binary.BigEndian, 6)), Header{Format: "png", W: 20, H: 30, turn: 6}},
		{"plain JPEG", asJPEG(t, img), Header{Format: "jpeg", W: 30, H: 20}},
		{"JPEG on its side", withSegment(asJPEG(t, img), 0xe1, append([]byte("Exif\x00\x00"), exif(binary.LittleEndian, 8)...)), Header{Format: "jpeg", W: 20, H: 30, turn: 8}},
		{"JPEG on its head", withSegment(asJPEG(t, img), 0xe1, append([]byte("Exif\x00\x00"), exif(binary.BigEndian, 3)...)), Header{Format: "jpeg", W: 30, H: 20, turn: 3}},
		{"JPEG, P3 profile", withSegment(asJPEG(t, img), 0xe2, append([]byte("ICC_PROFILE\x00\x01\x01"), iccOf("RGB ", colorantsP3)...)), Header{Format: "jpeg", W: 30, H: 20, WideProfile: true, displayP3: true}},
		{"GIF", asGIF(t, img), Header{Format: "gif", W: 30, H: 20}},
		{"WebP, lossy", riff(riffChunk("VP8 ", []byte{0, 0, 0, 0x9d, 1, 0x2a, 30, 0, 20, 0})), Header{Format: "webp", W: 30, H: 20}},
		{"WebP, lossless", riff(riffChunk("VP8L", []byte{0x2f, 29, 0xc0, 4, 0})), Header{Format: "webp", W: 30, H: 20}},
		{"WebP, extended", riff(vp8x(0x28), riffChunk("ICCP", iccOf("RGB ", colorantsP3)), riffChunk("EXIF", exif(binary.LittleEndian, 5))), Header{Format: "webp", W: 20, H: 30, WideProfile: true, displayP3: true, turn: 5}},
		{"AVIF", avif(30, 20, []byte("nclx\x00\x01\x00\x0d\x00\x06\x80"), 0), Header{Format: "avif", W: 30, H: 20, turn: 1}},
		{"AVIF, P3, a quarter turn", avif(30, 20, []byte("nclx\x00\x0c\x00\x0d\x00\x06\x80"), 1), Header{Format: "avif", W: 20, H: 30, WideProfile: true, displayP3: true, turn: 8}},
		{"AVIF, profile", avif(30, 20, append([]byte("prof"), iccOf("RGB ", adobeRGB)...), 0), Header{Format: "avif", W: 30, H: 20, WideProfile: true, turn: 1}},
	} {
		t.Run(c.name, func(t *testing.T) {
			h, err := ReadHeader("x", int64(len(c.data)), c.data)
			require.NoError(t, err)
			assert.Equal(t, c.want, h)
		})
	}
}

func TestSizeOfVectors(t *testing.T) {
	for tag, want := range map[string][2]int{
		`<svg width="60mm" height="30mm">`:                                          {1600, 800},
		`<svg width="1in" height="72pt" viewBox="0 0 5 9">`:                         {1600, 1600},
		`<svg viewBox="0,0 20 10"/>`:                                                {1600, 800},
		`<svg width="100%" height="100%" viewBox="0 0 10 20">`:                      {800, 1600},
		`<svg width='10em' viewBox='-5 -5 10 40'>`:                                  {400, 1600},
		`<svg height="50" viewBox="0 0 10 40">`:                                     {400, 1600},
		`<svg xmlns="http://www.w3.org/2000/svg">`:                                  {0, 0},
		`<svg width="50">`:                                                          {0, 0},
		`<svg width="1e400" height="2">`:                                            {0, 0},
		`<svg width="-4" height="2">`:                                               {0, 0},
		`<svg width="1" height="1000000">`:                                          {1, 1600},
		`<?xml version="1.0"?><!-- <svg width="1"> --><svg width = "4" height="2">`: {1600, 800},
		`<!DOCTYPE svg [<!ENTITY a "b>">]><x:svg xmlns:x="http://www.w3.org/2000/svg" width="2" height="4">`: {800, 1600},
		"\ufeff<svg width=\"3\" height=\"3\"/>": {1600, 1600},
	} {
		h, err := ReadHeader("", int64(len(tag)), []byte(tag))
		require.NoError(t, err, tag)
		assert.Equal(t, "svg", h.Format, tag)
		assert.Equal(t, want, [2]int{h.W, h.H}, tag)
	}
}

// CSS Values and Units, absolute lengths: testdata/reference/css_absolute_units.csv.
func TestCSSLengths(t *testing.T) {
	for _, row := range reference(t, "css_absolute_units.csv") {
		want, err := strconv.ParseFloat(row["px"], 64)
		require.NoError(t, err)
		assert.InDelta(t, want, cssLength(row["unit"]), 1e-9, row["unit"])
	}
}

// reference reads a published table; see testdata/README.md.
func reference(t testing.TB, name string) (rows []map[string]string) {
	f, err := os.Open("../testdata/reference/" + name)
	require.NoError(t, err)
	defer f.Close()
	all, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	for _, line := range all[1:] {
		row := map[string]string{}
		for i, v := range line {
			row[all[0][i]] = v
		}
		rows = append(rows, row)
	}
	require.NotEmpty(t, rows)
	return rows
}

func number(t testing.TB, s string) float64 {
	v, err := strconv.ParseFloat(s, 64)
	require.NoError(t, err)
	return v
}

func TestRefusesFilesInWords(t *testing.T) {
	img := blankImage(30, 20)
	whole := asPNG(t, img)
	sized := func(w, h uint32) []byte {
		b := bytes.Clone(whole)
		binary.BigEndian.PutUint32(b[16:], w)
		binary.BigEndian.PutUint32(b[20:], h)
		return b
	}
	for _, c := range []struct {
		name string
		data []byte
		size int64
		says []string
	}{
		{"a.png", nil, 0, []string{`"a.png" is empty`, "Export"}},
		{"a.png", whole, 80 << 20, []string{"80 MiB", "64 MiB", "3200 px"}},
		{"a.png", sized(12000, 10000), 0, []string{"12000 x 10000 px", "120 megapixels", "100"}},
		{"a.png", sized(1<<31, 1<<31), 0, []string{"megapixels"}},
		{"a.png", sized(0, 20), 0, []string{"0 x 20 px", "no pixels"}},
		{"a.png", whole[:20], 0, []string{"cut short"}},
		{"a.png", whole[:len(whole)-20], 0, []string{"cut short"}},
		{"a.png", []byte(pngMagic + "\x00\x00\x00\x05JUNK........................."), 0, []string{"damaged"}},
		{"a.jpg", asJPEG(t, img)[:200], 0, []string{"cut short"}},
		{"a.jpg", asJPEG(t, img)[:700], 0, []string{"cut short"}},
		{"a.gif", asGIF(t, img)[:12], 0, []string{"cut short"}},
		{"a.webp", riff(riffChunk("VP8L", []byte{0x2f, 29, 0xc0, 4, 0}))[:20], 0, []string{"cut short"}},
		{"a.avif", avif(30, 20, []byte("nclx\x00\x01\x00\x0d\x00\x06\x80"), 0)[:90], 0, []string{"cut short"}},
		{"cover.psd", []byte("8BPS\x00\x01"), 0, []string{"a layered paint file", "PNG with transparency"}},
		{"cover.kra", []byte("PK\x03\x04...."), 0, []string{"a layered paint file"}},
		{"cover.zip", []byte("PK\x03\x04...."), 0, []string{"a ZIP", "npack"}},
		{"pin.ai", []byte("%PDF-1.5"), 0, []string{"drawing program", "SVG"}},
		{"pin.pdf", []byte("%PDF-1.5"), 0, []string{"a PDF", "1600 px"}},
		{"pin.eps", []byte("%!PS-Adobe"), 0, []string{"drawing program"}},
		{"scan.tif", []byte("II*\x00\x08\x00\x00\x00"), 0, []string{"a TIFF", "PNG"}},
		{"IMG.HEIC", []byte("\x00\x00\x00\x18ftypheic\x00\x00\x00\x00mif1heic"), 0, []string{"phone photo", "JPEG"}},
		{"a.bmp", []byte("BM......"), 0, []string{"a BMP"}},
		{"a.mp4", []byte("\x00\x00\x00\x18ftypisom\x00\x00\x00\x00isom"), 0, []string{"a film"}},
		{"a.svgz", []byte("\x1f\x8b\x08"), 0, []string{"compressed"}},
		{"notes.txt", []byte("hello"), 0, []string{"not a picture", "PNG or SVG"}},
		{"page.html", []byte("<html><svg width='2' height='2'>"), 0, []string{"not a picture"}},
		{"", []byte("??"), 0, []string{"The file is not a picture"}},
		{strings.Repeat("long", 50), []byte("??"), 0, []string{"..."}},
	} {
		t.Run(fmt.Sprintf("%.12s %.30s", c.name, c.says[0]), func(t *testing.T) {
			size := c.size
			if size == 0 {
				size = int64(len(c.data))
			}
			_, err := ReadHeader(c.name, size, c.data)
			var r *Refusal
			require.ErrorAs(t, err, &r)
			assert.NotEmpty(t, r.Do)
			for _, s := range c.says {
				assert.Contains(t, err.Error(), s)
			}
		})
	}
}

// A long file is judged by its start alone: its end is not there to be missed.
func TestOnlyTheStartOfALongFile(t *testing.T) {
	whole := asPNG(t, blankImage(300, 200))
	h, err := ReadHeader("", 5<<20, whole[:100])
	require.NoError(t, err)
	assert.Equal(t, [2]int{300, 200}, [2]int{h.W, h.H})
	long := withSegment(asJPEG(t, blankImage(300, 200)), 0xe2, make([]byte, 60000))
	_, err = ReadHeader("", 5<<20, long[:30000])
	assert.ErrorContains(t, err, "does not say how large")
}

func TestWorkingSize(t *testing.T) {
	for in, want := range map[[3]int][2]int{
		{3200, 1600, 1600}: {1600, 800}, {100, 50, 1600}: {100, 50}, {0, 0, 1600}: {1600, 1600},
		{100000, 3, 1600}: {1600, 1}, {3, 100000, 1600}: {1, 1600}, {5, 5, 0}: {1, 1}, {0, 0, 900}: {900, 900},
	} {
		w, h := WorkingSize(in[0], in[1], in[2])
		assert.Equal(t, want, [2]int{w, h}, "%v", in)
	}
}

func FuzzReadHeader(f *testing.F) {
	img := blankImage(9, 7)
	f.Add([]byte{})
	f.Add(withChunk(withChunk(asPNG(f, img), "iCCP", iccChunk(f, iccOf("RGB ", colorantsP3))), "eXIf", exif(binary.BigEndian, 6)))
	f.Add(withSegment(asJPEG(f, img), 0xe1, append([]byte("Exif\x00\x00"), exif(binary.LittleEndian, 8)...)))
	f.Add(withSegment(asJPEG(f, img), 0xe2, append([]byte("ICC_PROFILE\x00\x01\x01"), iccOf("RGB ", adobeRGB)...)))
	f.Add(asGIF(f, img))
	f.Add(riff(riffChunk("VP8X", make([]byte, 10)), riffChunk("EXIF", exif(binary.LittleEndian, 5))))
	f.Add(avif(30, 20, []byte("nclx\x00\x0c\x00\x0d\x00\x06\x80"), 1))
	f.Add([]byte(`<?xml?><!DOCTYPE svg [<!E "b>">]><svg width="4mm" viewBox="0 0 1 1">`))
	f.Fuzz(func(t *testing.T, data []byte) {
		if len(data) > 1<<16 {
			return
		}
		for _, size := range []int64{int64(len(data)), 1 << 21} {
			h, err := ReadHeader("a.bin", size, data)
			if err != nil {
				var r *Refusal
				require.ErrorAs(t, err, &r)
				continue
			}
			assert.GreaterOrEqual(t, h.W, 0)
			assert.GreaterOrEqual(t, h.H, 0)
			assert.LessOrEqual(t, int64(h.W)*int64(h.H), int64(MostPixels))
		}
	})
}
