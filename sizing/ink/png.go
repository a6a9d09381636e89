package ink

import (
	"bytes"
	"compress/zlib"
	"encoding/binary"
	"fmt"
	"hash/crc32"
	"io"
	"math"
)

// stripRows is how many rows of a sheet are drawn at once.
const stripRows = 64

// each draws a sheet strip by strip and hands on every row, R G B A.
func (s *Sheet) each(use func(y int, row []byte) error) error {
	t := &strip{w: s.W, pix: make([]byte, 4*s.W*stripRows), far: make([]float64, s.W*stripRows)}
	for y := 0; y < s.H; y += stripRows {
		t.y0, t.y1 = y, min(y+stripRows, s.H)
		s.draw(t)
		for r := y; r < t.y1; r++ {
			at := 4 * s.W * (r - y)
			if err := use(r, t.pix[at:at+4*s.W]); err != nil {
				return err
			}
		}
	}
	return nil
}

func (s *Sheet) draw(t *strip) {
	g := s.Ground
	for i := 0; i < len(t.pix); i += 4 {
		t.pix[i], t.pix[i+1], t.pix[i+2], t.pix[i+3] = g.R, g.G, g.B, g.A
	}
	for _, m := range s.marks {
		if y0, y1 := m.reach(); y0 < t.y1 && y1 > t.y0 {
			m.paint(t)
		}
	}
}

// Chunks and their fields are those of the PNG specification (W3C, third
// edition): 11.2.1 IHDR, 11.3.3.5 sRGB, 11.3.4.3 pHYs.
const (
	pngMagic      = "\x89PNG\r\n\x1a\n"
	truecolourA   = 6 // colour type: truecolour with alpha
	filterUp      = 2 // each byte less that above it
	unitMetre     = 1
	mmPerMetre    = 1000
	perceptual    = 0 // rendering intent
	mostPNGNumber = 1<<31 - 1
)

// PNG writes the sheet. perMM is its scale in px per mm, to be found again by
// whatever prints it; 0 when it has none. progress, which may be nil, is told
// the share that is done, and its error ends the work.
func (s *Sheet) PNG(perMM float64, progress func(share float64) error) ([]byte, error) {
	if s.W <= 0 || s.H <= 0 || s.W > mostPNGNumber || s.H > mostPNGNumber {
		return nil, fmt.Errorf("ink: no picture has %d x %d px", s.W, s.H)
	}
	var out bytes.Buffer
	out.WriteString(pngMagic)
	head := binary.BigEndian.AppendUint32(nil, uint32(s.W))
	head = binary.BigEndian.AppendUint32(head, uint32(s.H))
	chunk(&out, "IHDR", append(head, 8, truecolourA, 0, 0, 0))
	chunk(&out, "sRGB", []byte{perceptual})
	if perMM > 0 {
		per := uint32(math.Round(perMM * mmPerMetre))
		scale := binary.BigEndian.AppendUint32(binary.BigEndian.AppendUint32(nil, per), per)
		chunk(&out, "pHYs", append(scale, unitMetre))
	}
	if err := s.packed(&out, progress); err != nil {
		return nil, err
	}
	chunk(&out, "IEND", nil)
	return out.Bytes(), nil
}

// packed writes the pixels as IDAT chunks. Much of a sheet is like the row
// above, which the filter makes nothing of.
func (s *Sheet) packed(out *bytes.Buffer, progress func(share float64) error) error {
	parts := &splitter{out: out}
	z, err := zlib.NewWriterLevel(parts, zlib.BestSpeed)
	if err != nil {
		return err
	}
	above, line := make([]byte, 4*s.W), make([]byte, 1+4*s.W)
	line[0] = filterUp
	err = s.each(func(y int, row []byte) error {
		if progress != nil && y%stripRows == 0 {
			if err := progress(float64(y) / float64(s.H)); err != nil {
				return err
			}
		}
		for i, v := range row {
			line[1+i] = v - above[i]
		}
		copy(above, row)
		_, err := z.Write(line)
		return err
	})
	if err != nil {
		return err
	}
	if err := z.Close(); err != nil {
		return err
	}
	return parts.flush()
}

func chunk(out io.Writer, name string, data []byte) {
	sum := crc32.NewIEEE()
	var size, check [4]byte
	binary.BigEndian.PutUint32(size[:], uint32(len(data)))
	both := append([]byte(name), data...)
	sum.Write(both)
	binary.BigEndian.PutUint32(check[:], sum.Sum32())
	out.Write(size[:]) // a buffer takes all there is
	out.Write(both)
	out.Write(check[:])
}

// partBytes is how much data goes into one IDAT chunk.
const partBytes = 1 << 16

// splitter puts what is written into IDAT chunks.
type splitter struct {
	out  io.Writer
	held []byte
}

func (p *splitter) Write(data []byte) (int, error) {
	p.held = append(p.held, data...)
	for len(p.held) >= partBytes {
		chunk(p.out, "IDAT", p.held[:partBytes])
		p.held = append(p.held[:0], p.held[partBytes:]...)
	}
	return len(data), nil
}

func (p *splitter) flush() error {
	if len(p.held) > 0 {
		chunk(p.out, "IDAT", p.held)
		p.held = nil
	}
	return nil
}
