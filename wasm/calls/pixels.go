package calls

import (
	"encoding/binary"
	"fmt"

	"badgewright/reduce"
)

// pixels reads w x h RGBA pixels, four bytes each.
func pixels(bytes []byte, w, h int) ([]uint32, error) {
	if w <= 0 || h <= 0 {
		return nil, &reduce.Refusal{What: "This picture has no pixels.", Do: "Export it again with a width and a height."}
	}
	if max(w, h) > maxSide || len(bytes) != 4*w*h {
		return nil, fmt.Errorf("calls: %d bytes are not %d x %d pixels", len(bytes), w, h)
	}
	pix := make([]uint32, w*h)
	for i := range pix {
		pix[i] = binary.LittleEndian.Uint32(bytes[4*i:])
	}
	return pix, nil
}

// maxSide bounds a raster that the page may send: twice the working raster,
// so that measurements at other sizes stay possible.
const maxSide = 4096

// rgba writes pixels as bytes, R G B A.
func rgba(pix []uint32) []byte {
	out := make([]byte, 4*len(pix))
	for i, p := range pix {
		binary.LittleEndian.PutUint32(out[4*i:], p)
	}
	return out
}
