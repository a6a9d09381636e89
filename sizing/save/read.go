package save

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strings"

	"badgewright/reduce"
)

// Open reads a file. What is no project file, or one that could do harm, is
// refused with a reason, in time and memory bounded by the file's own size.
func Open(data []byte) (*Read, error) {
	a, err := openArchive(data)
	if err != nil {
		return nil, err
	}
	list, format, err := a.list()
	if err != nil {
		return nil, err
	}
	r := &Read{Format: format, File: File{Project: list.Project}}
	if format < Format {
		r.Notes = append(r.Notes, "This file was saved by an earlier badgewright and was brought forward; saved again, it is a file of today.")
	}
	if err := a.drawings(list.Drawings, r); err != nil {
		return nil, err
	}
	if err := a.pictures(list.Pictures, r); err != nil {
		return nil, err
	}
	if err := a.thumb(r); err != nil {
		return nil, err
	}
	strays, err := a.left(list)
	if err != nil {
		return nil, err
	}
	if n := len(strays); n > 0 {
		r.Notes = append(r.Notes, fmt.Sprintf("%s in the file that belong to no project were left out.", counted(n, "entry", "entries")))
	}
	return r, nil
}

func counted(n int, one, more string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, more)
}

// list reads project.json and brings it forward.
func (a *archive) list() (*envelope, int, error) {
	if _, ok := a.own[projectEntry]; !ok {
		return nil, 0, refuse(notOurs, "This archive has no %s: it is not a project file.", projectEntry)
	}
	text, err := a.unpack(projectEntry)
	if err != nil {
		return nil, 0, err
	}
	if err := sane(text); err != nil {
		return nil, 0, err
	}
	text, format, err := forward(text, a.names())
	if err != nil {
		return nil, 0, err
	}
	var list envelope
	if err := strict(text, &list); err != nil {
		return nil, 0, err
	}
	return &list, format, checkList(&list)
}

// strict reads JSON into a value that has a place for everything in it.
func strict(text []byte, into any) error {
	d := json.NewDecoder(bytes.NewReader(text))
	d.DisallowUnknownFields()
	if err := d.Decode(into); err != nil {
		return refuse(notOurs, "The project in this file cannot be read: %s.", plainly(err))
	}
	return nil
}

// plainly takes the decoder's own name off its words.
func plainly(err error) string { return strings.TrimPrefix(err.Error(), "json: ") }

// Strict reads the project of a file into the value it was written from; what that
// value has no place for is refused.
func Strict(project json.RawMessage, into any) error { return strict(project, into) }

// checkList looks at the lists of drawings and pictures.
func checkList(list *envelope) error {
	var inner struct {
		Format int `json:"format"`
	}
	if err := json.Unmarshal(list.Project, &inner); err != nil || inner.Format != list.Format {
		return refuse(notOurs, "The project in this file does not say that it is of format %d, as the file does.", list.Format)
	}
	ids, paths := map[string]bool{}, map[string]bool{}
	for _, d := range list.Drawings {
		if !isID(d.ID) || ids[d.ID] || len(d.Files) < 1 || len(d.Files) > 2 {
			return refuse(notOurs, "The drawing %q of this project file is not as it should be.", d.ID)
		}
		ids[d.ID] = true
		for _, f := range d.Files {
			if paths[f.Path] || !strings.HasPrefix(f.Path, drawingsDir) || len(f.Name) > mostName {
				return refuse(notOurs, "The picture %q of this project file is not as it should be.", f.Path)
			}
			paths[f.Path] = true
		}
	}
	return checkPictures(list.Pictures)
}

func checkPictures(all []listedPicture) error {
	ids := map[string]bool{}
	for _, p := range all {
		if !isID(p.ID) || ids[p.ID] || !strings.HasPrefix(p.Path, picturesDir) {
			return refuse(notOurs, "The picture %q of this project file is not as it should be.", p.ID)
		}
		ids[p.ID] = true
	}
	return nil
}

// drawings unpacks the drawings and looks at what their first bytes say.
func (a *archive) drawings(all []listed, r *Read) error {
	for _, l := range all {
		d := Drawing{ID: l.ID}
		for i, f := range l.Files {
			data, err := a.unpack(f.Path)
			if err != nil {
				return err
			}
			o := Original{Name: f.Name, Bytes: data}
			h, err := headerOf(o)
			if err != nil {
				return err
			}
			if f.Path != pathOf(l.ID, i, h.Format) {
				return refuse(notOurs, "The picture %q of this project file is a file of another kind.", f.Path)
			}
			r.noteScript("drawing", f.Name, h.Format, data)
			d.Files = append(d.Files, o)
		}
		r.Drawings = append(r.Drawings, d)
	}
	return nil
}

// noteScript tells of an SVG that could act, were it a page.
func (r *Read) noteScript(kind, name, format string, data []byte) {
	if format == "svg" && hasScript(data) {
		r.Notes = append(r.Notes, fmt.Sprintf("The %s %q holds a script. It is not run: it is looked at as a picture, and nothing in it can act.", kind, name))
	}
}

// pictures unpacks what else the project names; it is looked at like a drawing.
func (a *archive) pictures(all []listedPicture, r *Read) error {
	for _, l := range all {
		data, err := a.unpack(l.Path)
		if err != nil {
			return err
		}
		h, err := headerOf(Original{Name: l.Path, Bytes: data})
		if err != nil {
			return err
		}
		if l.Path != picturePath(l.ID, h.Format) {
			return refuse(notOurs, "The picture %q of this project file is a file of another kind.", l.Path)
		}
		r.noteScript("picture", l.Path, h.Format, data)
		r.Pictures = append(r.Pictures, Picture{ID: l.ID, Bytes: data})
	}
	return nil
}

func (a *archive) thumb(r *Read) error {
	if _, ok := a.own[thumbEntry]; !ok {
		return nil
	}
	data, err := a.unpack(thumbEntry)
	if err != nil {
		return err
	}
	h, err := reduce.ReadHeader(thumbEntry, int64(len(data)), data)
	if err != nil || h.Format != "png" || max(h.W, h.H) > mostThumbSide {
		return refuse(notOurs, "The small picture in this project file is not a PNG of up to %d px.", mostThumbSide)
	}
	r.Thumb = data
	return nil
}

// names are the entries of the file's own, in order.
func (a *archive) names() []string { return slices.Sorted(maps.Keys(a.own)) }

// left is what the file holds and its list does not speak of: small things that a
// file manager added are let be.
func (a *archive) left(list *envelope) ([]string, error) {
	used := map[string]bool{projectEntry: true, thumbEntry: true}
	for _, d := range list.Drawings {
		for _, f := range d.Files {
			used[f.Path] = true
		}
	}
	for _, p := range list.Pictures {
		used[p.Path] = true
	}
	strays := a.strays
	for _, name := range a.names() {
		if used[name] {
			continue
		}
		if a.own[name].UncompressedSize64 > mostStray {
			return nil, refuse(notOurs, "The entry %q of this project file belongs to nothing in it.", name)
		}
		strays = append(strays, name)
	}
	return strays, nil
}
