package reduce

// readWebP reads the chunks of a RIFF container (RFC 9649). The extended header
// gives the canvas; otherwise the picture's own first bytes do.
func readWebP(f file) (Header, error) {
	var h Header
	b := f.head
	if len(b) < 12 || int64(le32(b[4:]))+8 > f.size {
		return h, cutShort
	}
	for at := int64(12); at+8 <= int64(len(b)); {
		kind, n := string(b[at:at+4]), int64(le32(b[at+4:]))
		data := b[at+8 : min(at+8+n, int64(len(b)))]
		whole := int64(len(data)) == n
		switch {
		case kind == "VP8X" && len(data) >= 10:
			h.W, h.H = 1+le24(data[4:]), 1+le24(data[7:])
		case kind == "VP8 " && h.W == 0 && len(data) >= 10:
			if !has(data, 3, "\x9d\x01\x2a") {
				return h, damaged
			}
			h.W, h.H = int(le16(data[6:])&0x3fff), int(le16(data[8:])&0x3fff)
		case kind == "VP8L" && h.W == 0 && len(data) >= 5:
			if data[0] != 0x2f {
				return h, damaged
			}
			v := le32(data[1:])
			h.W, h.H = int(v&0x3fff)+1, int(v>>14&0x3fff)+1
		case kind == "ICCP":
			h.WideProfile, h.displayP3 = profile(data)
		case kind == "EXIF" && whole:
			h.turn = orientation(data)
		}
		at += 8 + n + n&1
	}
	if h.W == 0 {
		return h, noSize
	}
	return h.turned(), nil
}

func le24(b []byte) int { return int(b[0]) | int(b[1])<<8 | int(b[2])<<16 }
