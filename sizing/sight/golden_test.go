package sight

import (
	"fmt"
	"hash/crc32"
	"image"
	"image/color"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/sizing"
)

const goldenDir = "../../testdata/golden/sight"

// goldenOff is how far (levels of 255) a channel may lie from its golden: none
// may be seen, and rounding in another writer of PNG is forgiven.
const goldenOff = 1

// bitsFile holds a checksum of each picture: the same bits natively and in WASM.
const bitsFile = "bits.txt"

var goldens = []struct {
	name    string
	solid   bool
	plating sizing.PlatingID
	fill    sizing.Fill
	side    Side
	long    int
	back    sizing.Fastening
}{
	{"gold-soft", false, "gold", sizing.Soft, Front, 200, ""},
	{"silver-hard", false, "silver", sizing.Hard, Front, 200, ""},
	{"dyed-black-twin", false, "dyed-black", sizing.Soft, Front, 96, ""},
	{"antique-copper-unfilled", true, "antique-copper", sizing.Unfilled, Front, 160, ""},
	{"rose-back", false, "rose", sizing.Soft, Back, 200, ""},
	{"magnet-back", false, "gold", sizing.Soft, Back, 200, sizing.MagnetBack},
	{"screw-back", false, "black-nickel", sizing.Soft, Back, 200, sizing.ScrewBack},
	{"bar-back", false, "silver", sizing.Soft, Back, 200, sizing.PinBar},
	{"flat", false, "gold", sizing.Soft, "", 120, ""},
}

func TestGoldens(t *testing.T) {
	write := os.Getenv("BADGEWRIGHT_GOLDEN") == "write"
	light, solid := lightPin(480, 32), solidPin(360, 36)
	var bits strings.Builder
	for _, g := range goldens {
		b := light
		if g.solid {
			b = solid
		}
		look := lookAt(g.fill, g.side, g.long)
		look.Plating = plating(g.plating)
		if g.back != "" {
			holdBy(&look, g.back)
		}
		im := Flat(b, g.long, look.Plating, nil)
		if g.side != "" {
			im = struckAt(t, b, look)
		}
		fmt.Fprintf(&bits, "%s %08x\n", g.name, sum(im))
		path := filepath.Join(goldenDir, g.name+".png")
		if write {
			writePNG(t, path, im)
			continue
		}
		t.Run(g.name, func(t *testing.T) { compare(t, path, im) })
	}
	path := filepath.Join(goldenDir, bitsFile)
	if write {
		require.NoError(t, os.WriteFile(path, []byte(bits.String()), 0o644))
		return
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, string(want), bits.String(), "the pictures are not the same bits")
}

func TestNoGoldenIsUnclaimed(t *testing.T) {
	claimed := map[string]bool{bitsFile: true}
	for _, g := range goldens {
		claimed[g.name+".png"] = true
	}
	files, err := os.ReadDir(goldenDir)
	require.NoError(t, err)
	for _, f := range files {
		if !strings.HasSuffix(f.Name(), ".got.png") {
			assert.True(t, claimed[f.Name()], "no test draws %s", f.Name())
		}
	}
}

func sum(im *Image) uint32 {
	raw := make([]byte, 0, 4*len(im.Pix))
	for _, p := range im.Pix {
		raw = append(raw, byte(p), byte(p>>8), byte(p>>16), byte(p>>24))
	}
	return crc32.ChecksumIEEE(raw)
}

func nrgba(im *Image) *image.NRGBA {
	out := image.NewNRGBA(image.Rect(0, 0, im.W, im.H))
	for i, p := range im.Pix {
		out.SetNRGBA(i%im.W, i/im.W, color.NRGBA{R: uint8(p), G: uint8(p >> 8), B: uint8(p >> 16), A: uint8(p >> 24)})
	}
	return out
}

func writePNG(t *testing.T, path string, im *Image) {
	t.Helper()
	require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o755))
	f, err := os.Create(path)
	require.NoError(t, err)
	require.NoError(t, png.Encode(f, nrgba(im)))
	require.NoError(t, f.Close())
}

// compare holds a picture to its golden and leaves the new one beside the old
// when they differ.
func compare(t *testing.T, path string, im *Image) {
	got := strings.TrimSuffix(path, ".png") + ".got.png"
	_ = os.Remove(got)
	f, err := os.Open(path)
	require.NoError(t, err, "no golden; write it with BADGEWRIGHT_GOLDEN=write")
	defer f.Close()
	want, err := png.Decode(f)
	require.NoError(t, err)
	if off := farthest(want, nrgba(im)); off > goldenOff {
		writePNG(t, got, im)
		t.Errorf("%s is off by up to %d levels; the new picture is %s", path, off, got)
	}
}

func farthest(a, b image.Image) int {
	if a.Bounds() != b.Bounds() {
		return 256
	}
	var off int
	r := a.Bounds()
	for y := r.Min.Y; y < r.Max.Y; y++ {
		for x := r.Min.X; x < r.Max.X; x++ {
			p, q := color.NRGBAModel.Convert(a.At(x, y)).(color.NRGBA), color.NRGBAModel.Convert(b.At(x, y)).(color.NRGBA)
			for _, d := range []int{int(p.R) - int(q.R), int(p.G) - int(q.G), int(p.B) - int(q.B), int(p.A) - int(q.A)} {
				off = max(off, d, -d)
			}
		}
	}
	return off
}
