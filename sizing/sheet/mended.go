package sheet

import (
	"bytes"
	"errors"
	"fmt"
	"hash/fnv"
	"slices"
	"strconv"
	"strings"
	"unicode"
)

// The writer leaves two things of fonts that other programs stumble over, and
// both are mended in the finished file. It calls them by keys: they get their
// own names, marked as subsets (ISO 32000-1, 9.6.4). And it maps all codes to
// letters in one range, though in a range only the last byte may change (9.10.3):
// strict readers then find the wrong letters.

// keyOf is what the writer knows a face by.
func keyOf(i int) string { return "face" + strconv.Itoa(i) + "x" }

// nameOf is the name of a face in the file.
func (s *Fonts) nameOf(i int) string {
	f := &s.faces[i].file
	name := strings.Map(letters, f.Name)
	if f.Weight == Strong {
		return name + "-Strong"
	}
	return name + "-Regular"
}

func letters(r rune) rune {
	if r < unicode.MaxASCII && unicode.IsLetter(r) {
		return r
	}
	return -1
}

// tagOf is six capitals that tell one subset from another.
func tagOf(used string) string {
	h := fnv.New64a()
	h.Write([]byte(used))
	n, tag := h.Sum64(), make([]byte, 6)
	for i := range tag {
		tag[i] = byte('A' + n%26)
		n /= 26
	}
	return string(tag)
}

// mended mends the objects of a finished file and writes its table again.
func (d *Document) mended(file []byte) ([]byte, error) {
	offsets, table, err := tableOf(file)
	if err != nil {
		return nil, err
	}
	order := make([]int, len(offsets)) // objects as they lie in the file
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(a, b int) int { return offsets[a] - offsets[b] })
	out := append([]byte(nil), file[:offsets[order[0]]]...)
	moved := make([]int, len(offsets))
	for k, o := range order {
		end := table
		if k+1 < len(order) {
			end = offsets[order[k+1]]
		}
		moved[o] = len(out)
		out = append(out, d.object(file[offsets[o]:end])...)
	}
	trailer := file[table+bytes.Index(file[table:], []byte("trailer")):]
	return append(out, newTable(moved, trailer, len(out))...), nil
}

var errTable = errors.New("sheet: the file has no table of objects")

// tableOf reads where the objects 1, 2, ... of a file begin, and their table.
func tableOf(file []byte) (offsets []int, table int, err error) {
	at := bytes.LastIndex(file, []byte("startxref\n"))
	if at < 0 {
		return nil, 0, errTable
	}
	var n int
	if _, err := fmt.Sscan(string(file[at+len("startxref\n"):]), &table); err != nil || table >= len(file) {
		return nil, 0, errTable
	}
	lines := strings.Split(string(file[table:at]), "\n")
	if len(lines) < 3 {
		return nil, 0, errTable
	}
	if _, err := fmt.Sscanf(lines[1], "0 %d", &n); err != nil || n < 2 || len(lines) < n+2 {
		return nil, 0, errTable
	}
	offsets = make([]int, n-1)
	for i := range offsets {
		if offsets[i], err = strconv.Atoi(strings.TrimLeft(lines[i+3][:10], "0")); err != nil {
			return nil, 0, errTable
		}
	}
	return offsets, table, nil
}

func newTable(offsets []int, trailer []byte, at int) []byte {
	b := fmt.Appendf(nil, "xref\n0 %d\n0000000000 65535 f \n", len(offsets)+1)
	for _, o := range offsets {
		b = fmt.Appendf(b, "%010d 00000 n \n", o)
	}
	b = append(b, trailer[:bytes.LastIndex(trailer, []byte("startxref"))]...)
	return fmt.Appendf(b, "startxref\n%d\n%%%%EOF\n", at)
}

// object mends one object.
func (d *Document) object(o []byte) []byte {
	number, body, _ := bytes.Cut(o, []byte("\n"))
	switch {
	case bytes.HasPrefix(body, []byte("<</Type /Font")): // a font or its descriptor
		for i := range d.fonts.faces {
			if d.used[i] != nil {
				name := tagOf(d.used[i].String()) + "+" + d.fonts.nameOf(i)
				o = bytes.ReplaceAll(o, []byte("/utf8"+keyOf(i)), []byte("/"+name))
			}
		}
	case bytes.Contains(body, []byte("/CMapName /Adobe-Identity-UCS")) && bytes.HasPrefix(body, []byte("<</Length")):
		m := d.letterMap()
		return fmt.Appendf(nil, "%s\n<</Length %d>>\nstream\n%s\nendstream\nendobj\n", number, len(m), m)
	}
	return o
}

// letterMap says which letter each code is: a range for each 256 of which some
// are used. Codes are those of UTF-16.
func (d *Document) letterMap() string {
	var rows [256]bool
	for _, used := range d.used {
		if used != nil {
			for _, r := range used.String() {
				rows[r>>8] = true
			}
		}
	}
	var ranges []string
	for row, used := range rows {
		if used {
			ranges = append(ranges, fmt.Sprintf("<%02X00> <%02XFF> <%02X00>\n", row, row, row))
		}
	}
	var b strings.Builder
	b.WriteString("/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n/CIDSystemInfo <</Registry (Adobe) /Ordering (UCS) /Supplement 0>> def\n" +
		"/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n")
	for some := range slices.Chunk(ranges, 100) { // more may not stand in one list
		fmt.Fprintf(&b, "%d beginbfrange\n%sendbfrange\n", len(some), strings.Join(some, ""))
	}
	b.WriteString("endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend")
	return b.String()
}
