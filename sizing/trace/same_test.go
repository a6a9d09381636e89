package trace

import (
	"fmt"
	"hash/crc32"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
)

// bitsFile holds a checksum of what is traced of each scene: the same digits
// natively and in WASM.
const bitsFile = "../../testdata/golden/trace/bits.txt"

func TestGoldenBits(t *testing.T) {
	star := regular(10, 80, 45, 0.35)
	scenes := []struct {
		name string
		s    *reduce.Separation
	}{
		{"star", scene(200, 200, filled(star, steel, sky))},
		{"steps", hardened(scene(200, 200, filled(star, red, blue)))},
		{"letters", text(5, rows(`
			.########.
			#rrr#bbbb#
			#rrrr#bbb#
			#rriirrbb#
			.###oo###.`)...)},
	}
	var bits strings.Builder
	for _, c := range scenes {
		_, sh := traced(t, c.s, 30)
		paths := sh.PathData(sh.Outline.Areas...) + sh.PathData(sh.Metal.Areas...)
		for _, f := range append(sh.Enamel, sh.Printed...) {
			paths += sh.PathData(f.Areas...)
		}
		fmt.Fprintf(&bits, "%s %08x\n", c.name, crc32.ChecksumIEEE([]byte(paths)))
	}
	if os.Getenv("BADGEWRIGHT_GOLDEN") == "write" {
		require.NoError(t, os.WriteFile(bitsFile, []byte(bits.String()), 0o644))
		return
	}
	want, err := os.ReadFile(bitsFile)
	require.NoError(t, err)
	assert.Equal(t, string(want), bits.String(), "the curves are not the same digits")
}
