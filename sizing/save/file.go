package save

import (
	"encoding/json"
	"fmt"

	"badgewright/reduce"
)

// Format is the version of the file that is written.
const Format = 2

// File is what a project file holds.
type File struct {
	// Project is the project value, as the page and the engine write it to each other.
	Project json.RawMessage
	// Drawings are the originals, in the order in which the project names them.
	Drawings []Drawing
	// Pictures are what else the project names: flawed pieces, and makers' proofs. One that
	// it names may be missing.
	Pictures []Picture
	// Thumb is a small PNG of the pin; empty when there is none.
	Thumb []byte
}

// Drawing is one drawing as it was brought.
type Drawing struct {
	ID string // as the project names it: a-z, 0-9 and hyphens
	// Files is one picture, or two that are its lines and its colours.
	Files []Original
}

// Picture is a picture that a project names.
type Picture struct {
	ID    string // as the project names it: a-z, 0-9 and hyphens
	Bytes []byte
}

// Type is the media type that a picture's own first bytes tell (RFC 6838).
func (p *Picture) Type() string {
	h, err := headerOf(Original{Bytes: p.Bytes})
	switch {
	case err != nil:
		return ""
	case h.Format == "svg":
		return "image/svg+xml"
	default:
		return "image/" + h.Format
	}
}

// Original is a file as it was brought.
type Original struct {
	Name  string
	Bytes []byte
}

// Read is a file that was read, and what is to be told of it.
type Read struct {
	File
	Format int      // of the file, before it was brought forward
	Notes  []string // a sentence each
}

// envelope is project.json.
type envelope struct {
	Format   int             `json:"format"`
	Project  json.RawMessage `json:"project"`
	Drawings []listed        `json:"drawings"`
	Pictures []listedPicture `json:"pictures,omitempty"`
}

// listedPicture is a picture in project.json.
type listedPicture struct {
	ID   string `json:"id"`
	Path string `json:"path"`
}

// listed is a drawing in project.json.
type listed struct {
	ID    string       `json:"id"`
	Files []listedFile `json:"files"`
}

type listedFile struct {
	Path string `json:"path"`
	Name string `json:"name"`
}

const (
	projectEntry = "project.json"
	thumbEntry   = "thumbnail.png"
	drawingsDir  = "drawings/"
	picturesDir  = "pictures/"
)

// extensions is how a drawing or picture is called in the file, by the format that its own first bytes
// tell.
var extensions = map[string]string{"png": ".png", "jpeg": ".jpg", "webp": ".webp", "avif": ".avif", "gif": ".gif", "svg": ".svg"}

// pathOf is where a drawing lies in the file, or its second one.
func pathOf(id string, picture int, format string) string {
	if picture > 0 {
		id += fmt.Sprintf("-%d", picture+1)
	}
	return drawingsDir + id + extensions[format]
}

func picturePath(id, format string) string { return picturesDir + id + extensions[format] }

// refuse says what is wrong with a project file.
func refuse(do, format string, args ...any) error {
	return &reduce.Refusal{What: fmt.Sprintf(format, args...), Do: do}
}

// What can be done about a file that is refused.
const (
	copyAgain = "Copy or download it again, or open another copy of it."
	notOurs   = "What is open stays as it is. Choose a file that was saved here."
)
