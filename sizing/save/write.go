package save

import (
	"archive/zip"
	"bytes"
	"compress/flate"
	"encoding/json"
	"fmt"
	"io"
	"time"

	"badgewright/reduce"
)

// firstDate is the first date that an archive can state (APPNOTE 4.4.6).
var firstDate = time.Date(1980, 1, 1, 0, 0, 0, 0, time.UTC)

// Write makes the file. One project makes the same bytes every time, and what it
// makes can be read: it is read back before it is handed out.
func Write(f File) ([]byte, error) {
	project, err := clean(f.Project)
	if err != nil {
		return nil, err
	}
	list := envelope{Format: Format, Project: project, Drawings: []listed{}}
	brought, err := enlistAll(f, &list)
	if err != nil {
		return nil, err
	}
	head, err := json.Marshal(list)
	if err != nil {
		return nil, fmt.Errorf("save: %w", err)
	}
	all := append([]entry{{projectEntry, head, zip.Deflate}}, brought...)
	if len(f.Thumb) > 0 {
		all = append(all, entry{thumbEntry, f.Thumb, zip.Store})
	}
	if err := fits(all); err != nil {
		return nil, err
	}
	data, err := pack(all)
	if err != nil {
		return nil, err
	}
	if _, err := Open(data); err != nil {
		return nil, err
	}
	return data, nil
}

// fits refuses what would make a file that is too large to be opened.
func fits(all []entry) error {
	total := 0
	for _, e := range all {
		total += len(e.data)
	}
	if total > MostBytes || len(all) > mostEntries {
		return refuse("Everything stays kept in this browser. Bring smaller drawings and pictures to have it in one file.",
			"The drawings and pictures of this project have %d MiB in %d files; one project file holds up to %d MiB in %d.", total>>20, len(all), MostBytes>>20, mostEntries)
	}
	return nil
}

// entry is one entry to be written.
type entry struct {
	name   string
	data   []byte
	method uint16
}

// enlistAll lists the drawings and pictures, and makes their entries.
func enlistAll(f File, list *envelope) ([]entry, error) {
	var all []entry
	for _, d := range f.Drawings {
		l, own, err := enlist(d)
		if err != nil {
			return nil, err
		}
		list.Drawings, all = append(list.Drawings, l), append(all, own...)
	}
	for _, p := range f.Pictures {
		h, err := headerOf(Original{Name: picturesDir + p.ID, Bytes: p.Bytes})
		if err != nil {
			return nil, err
		}
		path := picturePath(p.ID, h.Format)
		list.Pictures = append(list.Pictures, listedPicture{ID: p.ID, Path: path})
		all = append(all, entry{path, p.Bytes, packing(h)})
	}
	return all, nil
}

// packing is how an entry is packed: pictures are compressed as they are, but for SVG.
func packing(h reduce.Header) uint16 {
	if h.Format == "svg" {
		return zip.Deflate
	}
	return zip.Store
}

// enlist names the pictures of a drawing in the file.
func enlist(d Drawing) (listed, []entry, error) {
	l := listed{ID: d.ID, Files: []listedFile{}}
	var all []entry
	for i, o := range d.Files {
		h, err := headerOf(o)
		if err != nil {
			return l, nil, err
		}
		path := pathOf(d.ID, i, h.Format)
		l.Files = append(l.Files, listedFile{Path: path, Name: cleanName(o.Name)})
		all = append(all, entry{path, o.Bytes, packing(h)})
	}
	return l, all, nil
}

func headerOf(o Original) (reduce.Header, error) {
	return reduce.ReadHeader(o.Name, int64(len(o.Bytes)), o.Bytes[:min(len(o.Bytes), reduce.HeaderBytes)])
}

func pack(all []entry) ([]byte, error) {
	var out bytes.Buffer
	w := zip.NewWriter(&out)
	w.RegisterCompressor(zip.Deflate, func(to io.Writer) (io.WriteCloser, error) {
		return flate.NewWriter(to, flate.DefaultCompression)
	})
	for _, e := range all {
		to, err := w.CreateHeader(&zip.FileHeader{Name: e.name, Method: e.method, Modified: firstDate})
		if err == nil {
			_, err = to.Write(e.data)
		}
		if err != nil {
			return nil, fmt.Errorf("save: %s: %w", e.name, err)
		}
	}
	if err := w.Close(); err != nil {
		return nil, fmt.Errorf("save: %w", err)
	}
	return out.Bytes(), nil
}
