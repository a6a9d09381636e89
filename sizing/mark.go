package sizing

import (
	"encoding/base64"
	"fmt"
	"slices"

	"badgewright/reduce"
	"badgewright/sizing/unit"
)

// MarkCells is the most cells along a side of a mark: at 6 mm each is a
// twentieth of a mm, a quarter of the thinnest stroke that a die holds.
const MarkCells = 128

// MarkHighest is the greatest height of a mark, mm: that of a whole small pin.
const MarkHighest = 20

// Mark is the artist's own mark as it is struck on the back, one bit a cell.
type Mark struct {
	W int `json:"w"` // cells, 1 to 128
	H int `json:"h"`
	// Rows is its cells from the top left as read from behind, a set bit where
	// there is a stroke: highest bit first, each row begun on a byte, in base64
	// (RFC 4648, section 4).
	Rows   string  `json:"rows"`
	Height unit.MM `json:"height,omitempty"` // 0 for as high as there is room, up to a usual height
	// Least is the narrowest stroke or gap that the maker holds in it, mm; 0 for
	// the usual.
	Least unit.MM `json:"least,omitempty"`
}

// NewMark keeps cells, W of them a row.
func NewMark(cells []bool, w, h int) Mark {
	stride := (w + 7) / 8
	bits := make([]byte, stride*h)
	for i, on := range cells {
		if x := i % w; on {
			bits[i/w*stride+x/8] |= 0x80 >> (x % 8)
		}
	}
	return Mark{W: w, H: h, Rows: base64.StdEncoding.EncodeToString(bits)}
}

// Cells are its cells, refused in words when they are no mark for a pin.
func (m *Mark) Cells() ([]bool, error) {
	refuse := func(what string) ([]bool, error) {
		return nil, &reduce.Refusal{What: what, Do: "Choose the picture of your mark again."}
	}
	if m.W < 1 || m.H < 1 || max(m.W, m.H) > MarkCells {
		return refuse(fmt.Sprintf("The mark on the back has %d by %d cells; it may have up to %d either way.", m.W, m.H, MarkCells))
	}
	stride := (m.W + 7) / 8
	bits, err := base64.StdEncoding.DecodeString(m.Rows)
	if err != nil || len(bits) != stride*m.H {
		return refuse(fmt.Sprintf("The mark on the back is damaged: its rows are not %d by %d cells.", m.W, m.H))
	}
	cells := make([]bool, m.W*m.H)
	for i := range cells {
		x := i % m.W
		cells[i] = bits[i/m.W*stride+x/8]&(0x80>>(x%8)) != 0
	}
	if !slices.Contains(cells, true) {
		return refuse("The mark on the back is empty.")
	}
	if !(m.Height >= 0 && m.Height <= MarkHighest) || !(m.Least >= 0 && m.Least <= MarkHighest) {
		return nil, &reduce.Refusal{What: "A mark of such measures does not go on a pin.", Do: fmt.Sprintf("Give up to %d mm, or leave it to the tool.", MarkHighest)}
	}
	return cells, nil
}
