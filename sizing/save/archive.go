package save

import (
	"archive/zip"
	"bytes"
	"encoding/binary"
	"errors"
	"io"
	"strings"
)

// The end of an archive's directory (APPNOTE 4.3.16), as it is without a comment.
const (
	endSize = 22
	endMark = "PK\x05\x06"
	headOf  = "PK\x03\x04"
)

// archive is the entries of a file whose directory was looked at: those of its own
// by name, and the names of strays that are let be.
type archive struct {
	own    map[string]*zip.File
	strays []string
}

// openArchive looks at the directory of a file before anything is unpacked.
func openArchive(data []byte) (*archive, error) {
	if err := measure(data); err != nil {
		return nil, err
	}
	r, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return nil, refuse(copyAgain, "The directory of this project file is damaged.")
	}
	if len(r.File) > mostEntries {
		return nil, refuse(notOurs, "This project file has %d entries; the most that is opened is %d.", len(r.File), mostEntries)
	}
	a := &archive{own: map[string]*zip.File{}}
	total := uint64(0)
	for _, f := range r.File {
		if err := a.admit(f); err != nil {
			return nil, err
		}
		if total += f.UncompressedSize64; total > MostBytes {
			return nil, refuse(notOurs, "This project file unpacks to more than %d MiB, the most that is opened.", MostBytes>>20)
		}
	}
	return a, nil
}

// measure looks at the ends of a file: whether it is an archive, whole, and with a
// directory that is safe to read.
func measure(data []byte) error {
	switch {
	case len(data) == 0:
		return refuse(copyAgain, "This project file is empty.")
	case len(data) > MostBytes:
		return refuse(notOurs, "This project file has %d MiB; the most that is opened is %d MiB.", (len(data)+1<<20-1)>>20, MostBytes>>20)
	case !strings.HasPrefix(string(data[:min(4, len(data))]), headOf):
		return refuse(notOurs, "This is not a project file.")
	}
	at := len(data) - endSize
	if at < 0 || string(data[at:at+4]) != endMark {
		return refuse(copyAgain, "This project file is cut short, or something was added to its end.")
	}
	end := data[at:]
	entries, size, from := binary.LittleEndian.Uint16(end[10:]), binary.LittleEndian.Uint32(end[12:]), binary.LittleEndian.Uint32(end[16:])
	if size > mostDirectory || entries > mostEntries {
		return refuse(notOurs, "This project file has a directory of %d entries and %d bytes; the most that is opened is %d and %d.", entries, size, mostEntries, mostDirectory)
	}
	// Nothing may lie between the directory and its end, or be put before the file: a
	// reader that looks for entries would go through all of it.
	if int64(from)+int64(size) != int64(at) {
		return refuse(copyAgain, "The directory of this project file does not lie where it should.")
	}
	return nil
}

// admit takes one entry, or refuses the file for it.
func (a *archive) admit(f *zip.File) error {
	name := f.Name
	if err := checkPath(name); err != nil {
		return err
	}
	if _, twice := a.own[name]; twice {
		return refuse(notOurs, "This project file has two entries named %q.", name)
	}
	if f.Flags&1 != 0 {
		return refuse("Save it without a password.", "The entry %q of this project file is encrypted.", name)
	}
	if f.Method != zip.Store && f.Method != zip.Deflate {
		return refuse(notOurs, "The entry %q of this project file is packed in a way that is not read here.", name)
	}
	most := mostOf(name)
	if f.UncompressedSize64 > most {
		return refuse(notOurs, "The entry %q of this project file unpacks to %d bytes; the most is %d.", name, f.UncompressedSize64, most)
	}
	if f.UncompressedSize64 > ratioMattersAt && f.UncompressedSize64 > mostRatio*f.CompressedSize64 {
		return refuse(notOurs, "The entry %q of this project file unpacks to %d times its size: that is a trap, not a drawing.", name, f.UncompressedSize64/max(1, f.CompressedSize64))
	}
	if isStray(name) {
		a.strays = append(a.strays, name)
		return nil
	}
	a.own[name] = f
	return nil
}

// checkPath refuses names that lead out of the file.
func checkPath(name string) error {
	if name == "" || len(name) > mostName || hasControl(name) {
		return refuse(notOurs, "This project file has an entry with a name that no file here has.")
	}
	bad := strings.HasPrefix(name, "/") || strings.ContainsAny(name, "\\:")
	for _, part := range strings.Split(name, "/") {
		bad = bad || part == ".." || part == "."
	}
	if bad {
		return refuse(notOurs, "The entry %q of this project file leads out of it.", name)
	}
	return nil
}

func isStray(name string) bool {
	if name == projectEntry || name == thumbEntry {
		return false
	}
	return strings.HasSuffix(name, "/") || !strings.HasPrefix(name, drawingsDir) && !strings.HasPrefix(name, picturesDir)
}

// mostOf is how large an entry may be, unpacked.
func mostOf(name string) uint64 {
	switch {
	case name == projectEntry:
		return mostProject
	case name == thumbEntry:
		return mostThumb
	case isStray(name):
		return mostStray
	default:
		return mostDrawing
	}
}

// unpack reads one entry. What it says of its size was bounded, and it is held to it.
func (a *archive) unpack(name string) ([]byte, error) {
	f, ok := a.own[name]
	if !ok {
		return nil, refuse(copyAgain, "This project file has no entry %q, which it speaks of.", name)
	}
	r, err := f.Open()
	if err != nil {
		return nil, damaged(name)
	}
	defer r.Close()
	data := make([]byte, f.UncompressedSize64)
	if _, err := io.ReadFull(r, data); err != nil {
		return nil, damaged(name)
	}
	// The check sum is looked at where the entry ends.
	if n, err := r.Read(make([]byte, 1)); n != 0 || !errors.Is(err, io.EOF) {
		return nil, damaged(name)
	}
	return data, nil
}

func damaged(name string) error {
	return refuse(copyAgain, "The entry %q of this project file is damaged.", name)
}
