package reduce

import "bytes"

// readJPEG walks the marker segments up to the first scan (ITU-T T.81, annex
// B). EXIF comes in APP1 (EXIF 2.32), a profile in APP2 (ICC.1, annex B.4).
func readJPEG(f file) (Header, error) {
	var h Header
	b, at := f.head, 2
	for {
		if at+4 > len(b) {
			return jpegEnd(h, f)
		}
		if b[at] != 0xff {
			return h, damaged
		}
		m := b[at+1]
		if m == 0xff { // padding
			at++
			continue
		}
		if m == 0x01 || m >= 0xd0 && m <= 0xd8 { // markers without a length
			at += 2
			continue
		}
		n := int(be16(b[at+2:]))
		if n < 2 {
			return h, damaged
		}
		if m == 0xda || m == 0xd9 { // the scan begins, or the end comes early
			if h.Format == "" {
				return h, noSize
			}
			h.unfinished = f.whole() && !bytes.Contains(b[at:], []byte{0xff, 0xd9})
			return h.turned(), nil
		}
		if at+2+n > len(b) {
			return jpegEnd(h, f)
		}
		h = jpegSegment(h, m, b[at+4:at+2+n])
		at += 2 + n
	}
}

// jpegEnd is reached when the head ends before the scan.
func jpegEnd(h Header, f file) (Header, error) {
	switch {
	case f.whole():
		return h, cutShort
	case h.Format == "":
		return h, noSize
	}
	return h.turned(), nil
}

func jpegSegment(h Header, m byte, data []byte) Header {
	switch {
	case m >= 0xc0 && m <= 0xcf && m != 0xc4 && m != 0xc8 && m != 0xcc:
		if len(data) >= 5 {
			h.H, h.W, h.Format = int(be16(data[1:])), int(be16(data[3:])), "jpeg"
		}
	case m == 0xe1 && has(data, 0, "Exif\x00"):
		if h.turn == 0 {
			h.turn = orientation(data)
		}
	case m == 0xe2 && has(data, 0, "ICC_PROFILE\x00\x01"):
		h.WideProfile, h.displayP3 = profile(data[min(14, len(data)):])
	}
	return h
}
