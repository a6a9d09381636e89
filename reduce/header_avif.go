package reduce

// isAVIF looks for an AVIF brand in the file type box (AVIF 1.1, section 6;
// ISO/IEC 14496-12, section 4.3).
func isAVIF(b []byte) bool {
	if !has(b, 4, "ftyp") || len(b) < 16 {
		return false
	}
	end := min(int64(be32(b)), int64(len(b)))
	for at := int64(8); at+4 <= end; at += 4 {
		if at != 12 && (has(b, int(at), "avif") || has(b, int(at), "avis")) {
			return true
		}
	}
	return false
}

// readAVIF reads the properties of the primary item (ISO/IEC 23008-12): ispe
// its size, irot its rotation, colr its colours.
func readAVIF(f file) (Header, error) {
	b := f.head
	for at := int64(0); at+8 <= f.size; {
		kind, data, next := isoBox(b, at)
		if kind == "" {
			break
		}
		if next > f.size {
			return Header{}, cutShort
		}
		if kind == "meta" {
			if len(data) < 4 {
				return Header{}, cutShort
			}
			return readMeta(data[4:])
		}
		at = next
	}
	return Header{}, noSize
}

// isoBox reads the box at a place: its kind, what is seen of its inside, and
// where the next begins. An empty kind means there is none that can be read.
func isoBox(b []byte, at int64) (kind string, data []byte, next int64) {
	if at < 0 || at+8 > int64(len(b)) {
		return "", nil, at
	}
	n, head := int64(be32(b[at:])), int64(8)
	switch {
	case n == 1 && at+16 <= int64(len(b)):
		n, head = int64(be32(b[at+8:])&0x7fffffff)<<32|int64(be32(b[at+12:])), 16
	case n == 0: // to the end of the file
		n = int64(len(b)) - at
	}
	if n < head || n > 1<<40 {
		return "", nil, at
	}
	from := min(at+head, int64(len(b)))
	return string(b[at+4 : at+8]), b[from:min(at+n, int64(len(b)))], at + n
}

// eachBox walks the boxes inside a box; visit returns false to stop.
func eachBox(b []byte, visit func(kind string, data []byte)) {
	for at := int64(0); ; {
		kind, data, next := isoBox(b, at)
		if kind == "" {
			return
		}
		visit(kind, data)
		at = next
	}
}

func readMeta(meta []byte) (Header, error) {
	var primary uint32
	var properties, links []byte
	eachBox(meta, func(kind string, data []byte) {
		switch {
		case kind == "pitm" && len(data) >= 6:
			if primary = uint32(be16(data[4:])); data[0] > 0 && len(data) >= 8 {
				primary = be32(data[4:])
			}
		case kind == "iprp":
			eachBox(data, func(kind string, data []byte) {
				switch kind {
				case "ipco":
					properties = data
				case "ipma":
					links = data
				}
			})
		}
	})
	mine := linksOf(links, primary)
	var h Header
	i := 0
	eachBox(properties, func(kind string, data []byte) {
		i++
		if mine == nil || mine[i] {
			h = withProperty(h, kind, data)
		}
	})
	if h.W == 0 && h.H == 0 {
		return h, noSize
	}
	return h.turned(), nil
}

// withProperty takes up one property. Without links (mine unknown) the largest
// size wins: it is the whole picture, the others are its tiles.
func withProperty(h Header, kind string, data []byte) Header {
	switch {
	case kind == "ispe" && len(data) >= 12:
		w, ht := clampSide(be32(data[4:])), clampSide(be32(data[8:]))
		if int64(w)*int64(ht) >= int64(h.W)*int64(h.H) {
			h.W, h.H = w, ht
		}
	case kind == "irot" && len(data) >= 1:
		h.turn = [4]int{1, 8, 3, 6}[data[0]&3] // quarter turns, anticlockwise
	case kind == "colr" && len(data) >= 6:
		switch string(data[:4]) {
		case "nclx":
			p := int(be16(data[4:]))
			h.WideProfile, h.displayP3 = p != primariesBT709 && p != primariesNone, p == primariesP3
		case "prof", "rICC":
			h.WideProfile, h.displayP3 = profile(data[4:])
		}
	}
	return h
}

// linksOf returns which properties (from 1) belong to an item; nil when the
// box says nothing of it.
func linksOf(b []byte, item uint32) map[int]bool {
	if len(b) < 8 {
		return nil
	}
	wideID, wideIndex := b[0] > 0, b[3]&1 == 1
	b = b[8:]
	for len(b) > 0 {
		id, n := uint32(0), 2
		if wideID {
			n = 4
		}
		if len(b) < n+1 {
			return nil
		}
		if id = uint32(be16(b)); wideID {
			id = be32(b)
		}
		count := int(b[n])
		b = b[n+1:]
		size := 1
		if wideIndex {
			size = 2
		}
		if len(b) < count*size {
			return nil
		}
		if id == item {
			return indexes(b[:count*size], size)
		}
		b = b[count*size:]
	}
	return nil
}

func indexes(b []byte, size int) map[int]bool {
	mine := map[int]bool{}
	for ; len(b) >= size; b = b[size:] {
		if size == 2 {
			mine[int(be16(b)&0x7fff)] = true
		} else {
			mine[int(b[0]&0x7f)] = true
		}
	}
	return mine
}
