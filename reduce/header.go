package reduce

import (
	"bytes"
	"fmt"
	"strings"
)

// Header is what a file says of itself before any pixel is decoded.
type Header struct {
	Format string // png, jpeg, webp, avif, gif or svg
	// W and H are the size in pixels as shown, after EXIF rotation. A vector
	// drawing has no pixels of its own: it gets its proportions at
	// WorkingLongSide, or 0 x 0 when it states none.
	W, H int
	// WideProfile is true when the file carries a colour profile other than
	// sRGB, so that it should be decoded into a wider space first.
	WideProfile bool

	turn       int  // EXIF orientation, 1..8; 0 when not stated
	displayP3  bool // the profile is Display-P3
	unfinished bool // the whole file was seen and its end is missing
}

const (
	// HeaderBytes is how much of a file's start ReadHeader wants to see: room
	// for the previews and profiles that cameras put before the size.
	HeaderBytes = 1 << 20
	// MostBytes and MostPixels are the largest file and picture that are
	// opened: what a browser tab on a tablet can decode without being ended.
	MostBytes  = 64 << 20
	MostPixels = 100_000_000
	// vectorSide is the long side at which a vector drawing without a size is drawn.
	vectorSide = WorkingLongSide
)

// WorkingSize returns the raster a file of w x h pixels is to be drawn at: its
// long side at most cap, each side at least 1. A file that does not say its
// size (0 x 0) is drawn on a square.
func WorkingSize(w, h, cap int) (int, int) {
	cap = max(cap, 1)
	if w <= 0 || h <= 0 {
		return min(vectorSide, cap), min(vectorSide, cap)
	}
	return fit(w, h, cap)
}

// ReadHeader reads the first bytes of a file; size is that of the whole file in
// bytes. It decodes nothing. What cannot be opened is refused with a Refusal.
func ReadHeader(name string, size int64, head []byte) (Header, error) {
	if size <= 0 || len(head) == 0 {
		return Header{}, &Refusal{What: fmt.Sprintf("The file%s is empty.", called(name)), Do: "Export the drawing again."}
	}
	if size > MostBytes {
		return Header{}, &Refusal{
			What: fmt.Sprintf("The file%s has %d MiB; the most that is opened is %d MiB.", called(name), (size+1<<20-1)>>20, MostBytes>>20),
			Do:   fmt.Sprintf("Export it at about %d px on its long side.", 2*WorkingLongSide)}
	}
	for _, f := range formats {
		if f.is(head) {
			h, err := f.read(file{head, size})
			if err != nil {
				return Header{}, named(err, name)
			}
			h.Format = f.name
			return h, refuseSize(h, name)
		}
	}
	return Header{}, foreign(name, head)
}

// file is the start of a file and the size of the whole.
type file struct {
	head []byte
	size int64
}

// whole is true when the head is all there is.
func (f file) whole() bool { return f.size <= int64(len(f.head)) }

var formats = []struct {
	name string
	is   func(head []byte) bool
	read func(f file) (Header, error)
}{
	{"png", func(b []byte) bool { return bytes.HasPrefix(b, []byte(pngMagic)) }, readPNG},
	{"jpeg", func(b []byte) bool { return bytes.HasPrefix(b, []byte("\xff\xd8\xff")) }, readJPEG},
	{"webp", func(b []byte) bool { return has(b, 0, "RIFF") && has(b, 8, "WEBP") }, readWebP},
	{"avif", isAVIF, readAVIF},
	{"gif", func(b []byte) bool { return has(b, 0, "GIF87a") || has(b, 0, "GIF89a") }, readGIF},
	{"svg", isSVG, readSVG},
}

func has(b []byte, at int, s string) bool {
	return len(b) >= at+len(s) && string(b[at:at+len(s)]) == s
}

// called puts a file's name into a sentence; nothing when there is none.
func called(name string) string {
	if name = strings.TrimSpace(name); name == "" {
		return ""
	}
	if r := []rune(name); len(r) > 60 {
		name = string(r[:57]) + "..."
	}
	return " \"" + name + "\""
}

// flaw is what the reader of a format finds wrong; ReadHeader puts it in words
// with the file's name.
type flaw int

const (
	cutShort flaw = iota
	noSize
	damaged
)

func (f flaw) Error() string { return [...]string{"cut short", "no size", "damaged"}[f] }

func named(err error, name string) error {
	switch err {
	case cutShort:
		return &Refusal{What: fmt.Sprintf("The file%s is cut short: its end is missing.", called(name)), Do: "Copy or download it again, or export it again."}
	case noSize:
		return &Refusal{What: fmt.Sprintf("The file%s does not say how large its picture is.", called(name)), Do: "Export it again as PNG."}
	case damaged:
		return &Refusal{What: fmt.Sprintf("The file%s is damaged near its start.", called(name)), Do: "Copy or download it again, or export it again."}
	}
	return err
}

func refuseSize(h Header, name string) error {
	if h.Format == "svg" {
		return nil
	}
	if h.W <= 0 || h.H <= 0 {
		return &Refusal{What: fmt.Sprintf("The picture in%s is %d x %d px: it has no pixels.", calledFile(name), h.W, h.H), Do: "Export it again with a width and a height."}
	}
	if px := int64(h.W) * int64(h.H); px > MostPixels {
		return &Refusal{
			What: fmt.Sprintf("The picture in%s is %d x %d px, %d megapixels; the most that is opened is %d.", calledFile(name), h.W, h.H, (px+500_000)/1_000_000, MostPixels/1_000_000),
			Do:   fmt.Sprintf("Export it at about %d px on its long side.", 2*WorkingLongSide)}
	}
	if h.unfinished {
		return named(cutShort, name)
	}
	return nil
}

func calledFile(name string) string {
	if c := called(name); c != "" {
		return c
	}
	return " this file"
}

// turned swaps the sides when the orientation lies on its side (EXIF 2.32,
// tag 0x0112: 5 to 8).
func (h Header) turned() Header {
	if h.turn >= 5 && h.turn <= 8 {
		h.W, h.H = h.H, h.W
	}
	return h
}

// leastGIF is a screen, an image descriptor, one block of data and the trailer.
const leastGIF = 13 + 10 + 3 + 1

// readGIF reads the logical screen (GIF89a, section 18).
func readGIF(f file) (Header, error) {
	if len(f.head) < 13 {
		return Header{}, cutShort
	}
	return Header{
		W: int(le16(f.head[6:])), H: int(le16(f.head[8:])),
		unfinished: f.size < leastGIF,
	}, nil
}

func le16(b []byte) uint16 { return uint16(b[0]) | uint16(b[1])<<8 }
func le32(b []byte) uint32 { return uint32(le16(b)) | uint32(le16(b[2:]))<<16 }
func be16(b []byte) uint16 { return uint16(b[0])<<8 | uint16(b[1]) }
func be32(b []byte) uint32 { return uint32(be16(b))<<16 | uint32(be16(b[2:])) }
