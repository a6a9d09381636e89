package colour

import (
	"fmt"
	"strconv"
	"strings"
)

// Hex prints a colour as #rrggbb.
func (c RGB8) Hex() string { return fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B) }

// ParseHex reads #rgb or #rrggbb, the # may be left out and letters may be of
// either case.
func ParseHex(s string) (RGB8, error) {
	h := strings.TrimPrefix(strings.TrimSpace(s), "#")
	if len(h) == 3 {
		h = string([]byte{h[0], h[0], h[1], h[1], h[2], h[2]})
	}
	v, err := strconv.ParseUint(h, 16, 32)
	if err != nil || len(h) != 6 {
		return RGB8{}, fmt.Errorf("%q is not a colour: write it as #rrggbb, for example #1a6b8f", s)
	}
	return RGB8{uint8(v >> 16), uint8(v >> 8), uint8(v)}, nil
}
