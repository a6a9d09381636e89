package wire

// SaveFileAsk asks for a project as one file. With it come the bytes of its
// drawings as they were brought and of its pictures, in the order in which they are
// listed, then those of the thumbnail.
type SaveFileAsk struct {
	Project  Project       `json:"project"`
	Drawings []FileDrawing `json:"drawings"`
	Pictures []FilePhoto   `json:"pictures,omitempty"`
	Thumb    int           `json:"thumb"` // bytes of the thumbnail, a PNG of up to 512 px; 0 for none
}

// FileDrawing is a drawing that a project speaks of.
type FileDrawing struct {
	ID string `json:"id"`
	// Files is one picture, or two that are its lines and its colours.
	Files []FilePicture `json:"files"`
}

// FilePicture is a file as it was brought.
type FilePicture struct {
	Name string `json:"name"`
	Size int    `json:"size"` // bytes
}

// FilePhoto is a picture that a project names: of a flawed piece, or a maker's proof.
type FilePhoto struct {
	ID   string `json:"id"`
	Size int    `json:"size"` // bytes
	Type string `json:"type"` // media type; of what is opened, as its own first bytes tell it
}

// SavedFile names the file whose bytes come with it.
type SavedFile struct {
	FileName string `json:"fileName"`
}

// OpenFileAsk comes with the bytes of a project file.
type OpenFileAsk struct{}

// OpenedFile is what a project file holds. With it come the bytes of its drawings
// and its pictures, in the order in which they are listed, then those of the thumbnail.
type OpenedFile struct {
	Project  Project       `json:"project"`
	Drawings []FileDrawing `json:"drawings"`
	Pictures []FilePhoto   `json:"pictures,omitempty"`
	Thumb    int           `json:"thumb"` // bytes; 0 for none
	Notes    []string      `json:"notes"` // what is to be told of it, a sentence each
}

// ForwardAsk comes with a project value of an older format, as JSON.
type ForwardAsk struct{}

// Forwarded is the same project in the format of today.
type Forwarded struct {
	Project Project `json:"project"`
}
