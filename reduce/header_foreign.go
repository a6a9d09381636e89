package reduce

import (
	"fmt"
	"path"
	"strings"
)

// elsewhere lists kinds of file that are not opened: how they are known, what
// they are called, and what to export instead.
var elsewhere = []struct {
	starts []string // bytes at the start
	brands []string // ISO base media brands, at byte 8 after "ftyp"
	ends   []string // of the file's name
	is, do string
}{
	{starts: []string{"8BPS"}, ends: []string{".psd", ".psb", ".xcf", ".kra", ".ora"},
		is: "a layered paint file",
		do: "In the program it was painted in, hide the paper layer and export it as PNG with transparency."},
	{starts: []string{"%!PS", "\xc5\xd0\xd3\xc6"}, ends: []string{".ai", ".eps", ".ps"},
		is: "a page of a drawing program (PostScript or its kin)", do: "Export the drawing from that program as SVG, or as PNG."},
	{starts: []string{"%PDF"}, ends: []string{".pdf"},
		is: "a PDF", do: "Export the drawing itself as SVG, or as PNG at 1600 px or more on its long side."},
	{starts: []string{"II*\x00", "MM\x00*", "II+\x00", "MM\x00+"}, ends: []string{".tif", ".tiff"},
		is: "a TIFF", do: "Save it as PNG: nothing is lost, and every browser can read it."},
	{brands: []string{"heic", "heix", "heim", "heis", "hevc", "hevx", "mif1", "msf1"}, ends: []string{".heic", ".heif"},
		is: "a phone photo in HEIC", do: "Share or export it from the phone as JPEG (often called \"most compatible\")."},
	{brands: []string{"isom", "iso2", "mp41", "mp42", "qt  ", "M4V "}, starts: []string{"\x1aE\xdf\xa3"}, ends: []string{".mp4", ".mov", ".webm"},
		is: "a film", do: "Export one still of it as PNG."},
	{starts: []string{"BM"}, ends: []string{".bmp"}, is: "a BMP", do: "Save it as PNG: nothing is lost."},
	{starts: []string{"\xff\x0a", "\x00\x00\x00\x0cJXL ", "\x00\x00\x00\x0cjP  "}, ends: []string{".jxl", ".jp2"},
		is: "a kind of JPEG that browsers cannot read", do: "Save it as PNG, or as plain JPEG."},
	{starts: []string{"\x1f\x8b"}, ends: []string{".svgz", ".gz"}, is: "a compressed file", do: "Save the drawing as plain SVG, or unpack it first."},
	{starts: []string{"PK\x03\x04"}, ends: []string{".zip"}, is: "a ZIP, or a paint program's own file", do: "If a paint program made it, export it from there as PNG with transparency; otherwise unpack it and open the drawing inside."},
	{starts: []string{"\x00\x00\x01\x00"}, ends: []string{".ico"}, is: "an icon file", do: "Save the drawing as PNG, at 1600 px if you can."},
}

// foreign says what a file is that cannot be opened. The name is asked first
// only for kinds that hide inside another (a paint file may be a ZIP).
func foreign(name string, head []byte) error {
	end := strings.ToLower(path.Ext(strings.ReplaceAll(name, "\\", "/")))
	for _, byName := range []bool{false, true} {
		for i, k := range elsewhere {
			known := startsWith(head, k.starts) || branded(head, k.brands)
			if layeredOrPage := i < 2; layeredOrPage || byName {
				known = known || oneOf(end, k.ends)
			}
			if known {
				return &Refusal{What: fmt.Sprintf("The file%s is %s, which is not opened here.", called(name), k.is), Do: k.do}
			}
		}
	}
	return &Refusal{What: fmt.Sprintf("The file%s is not a picture of a kind known here.", called(name)),
		Do: "Export the drawing as PNG or SVG; JPEG, WebP, AVIF and GIF are opened too."}
}

func startsWith(head []byte, starts []string) bool {
	for _, s := range starts {
		if has(head, 0, s) {
			return true
		}
	}
	return false
}

func branded(head []byte, brands []string) bool {
	return has(head, 4, "ftyp") && len(head) >= 12 && oneOf(string(head[8:12]), brands)
}

func oneOf(s string, list []string) bool {
	for _, l := range list {
		if s == l {
			return true
		}
	}
	return false
}
