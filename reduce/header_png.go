package reduce

import (
	"bytes"
	"compress/zlib"
	"io"
)

const pngMagic = "\x89PNG\r\n\x1a\n"

// Colour primaries by their code points (ITU-T H.273, table 2), as used by
// PNG's cICP and by AVIF's colr.
const (
	primariesBT709 = 1 // those of sRGB
	primariesNone  = 2
	primariesP3    = 12
)

// readPNG walks the chunks in front of the picture (PNG third edition,
// sections 5 and 11). cICP goes before iCCP, iCCP before sRGB, sRGB before cHRM.
func readPNG(f file) (Header, error) {
	var h Header
	rank := 0 // of the colour chunk believed so far
	believe := func(r int, wide, p3 bool) {
		if r > rank {
			rank, h.WideProfile, h.displayP3 = r, wide, p3
		}
	}
	b, at := f.head, int64(len(pngMagic))
	for first := true; ; first = false {
		if at+8 > f.size {
			return h, cutShort
		}
		if at+8 > int64(len(b)) {
			return pngEnd(h, first)
		}
		n, kind := int64(be32(b[at:])), string(b[at+4:at+8])
		if first != (kind == "IHDR") {
			return h, damaged
		}
		if at+12+n > f.size {
			return h, cutShort
		}
		if kind == "IDAT" {
			h.unfinished = f.whole() && !bytes.Contains(b[at:], []byte("IEND"))
			return h.turned(), nil
		}
		if at+8+n > int64(len(b)) {
			return pngEnd(h, first)
		}
		data := b[at+8 : at+8+n]
		switch kind {
		case "IHDR":
			if n < 13 {
				return h, damaged
			}
			h.W, h.H = clampSide(be32(data)), clampSide(be32(data[4:]))
		case "cICP":
			if n >= 4 {
				p := int(data[0])
				believe(4, p != primariesBT709 && p != primariesNone, p == primariesP3)
			}
		case "iCCP":
			wide, p3 := profileIn(data)
			believe(3, wide, p3)
		case "sRGB":
			believe(2, false, false)
		case "cHRM":
			believe(1, n >= 32 && !srgbChromaticities(data), false)
		case "eXIf":
			h.turn = orientation(data)
		case "IEND":
			return h, cutShort // the end, and no picture before it
		}
		at += 12 + n
	}
}

// pngEnd is reached when the head ends before the picture begins: a very long
// text or profile. The size is known by then, or the file is of no use.
func pngEnd(h Header, first bool) (Header, error) {
	if first {
		return h, cutShort
	}
	return h.turned(), nil
}

// clampSide keeps absurd sides inside an int on every platform.
func clampSide(v uint32) int { return int(min(v, 1<<31-1)) }

// profileIn unpacks the profile of an iCCP chunk: a name, a zero, a method, data.
func profileIn(data []byte) (wide, p3 bool) {
	end := bytes.IndexByte(data, 0)
	if end < 0 || end+2 > len(data) {
		return false, false
	}
	z, err := zlib.NewReader(bytes.NewReader(data[end+2:]))
	if err != nil {
		return false, false
	}
	icc, _ := io.ReadAll(io.LimitReader(z, HeaderBytes))
	return profile(icc)
}

// srgbChromaticities compares a cHRM chunk with IEC 61966-2-1: white, red,
// green, blue as x and y in 100000ths.
func srgbChromaticities(data []byte) bool {
	for i, want := range [8]int{31270, 32900, 64000, 33000, 30000, 60000, 15000, 6000} {
		if d := int(be32(data[4*i:])) - want; d > 300 || d < -300 {
			return false
		}
	}
	return true
}
