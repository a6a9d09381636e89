package sizing

import "badgewright/reduce"

// DrawingRef points at one revision of a design's drawing.
type DrawingRef struct {
	ID       string `json:"id"` // of the drawing opened in the session
	FileName string `json:"fileName"`
	// Ground is how the background was found: see reduce.Ground.
	Ground reduce.GroundChoice `json:"ground"`
	// Revision counts the drawings of a design as they came, from 1.
	Revision int `json:"revision"`
	// Differs says what differs from the drawing that was on the sheet before
	// it; empty for the first.
	Differs string `json:"differs,omitempty"`
	// Places is how many places differ.
	Places int `json:"places,omitempty"`
	// Lost is what was set on the drawing before and does not fit this one, with
	// its reason, a sentence each.
	Lost []string `json:"lost,omitempty"`
	// Set is what was set on it when another took its place on the sheet.
	Set *SetOn `json:"set,omitempty"`
}

// SetOn is everything of a design that speaks of places and flats of one
// drawing.
type SetOn struct {
	Colours   int           `json:"colours"`
	Edits     []reduce.Edit `json:"edits"`
	Recipes   []Recipe      `json:"recipes"`
	Lettering []LetterMark  `json:"lettering,omitempty"`
	Parts     Parts         `json:"parts,omitempty,omitzero"`
	Versions  []VersionSet  `json:"versions"`
}

// VersionSet is the colours of one version.
type VersionSet struct {
	ID      string          `json:"id"`
	Colours []VersionColour `json:"colours"`
}

// SetNow is what is set on the drawing that is on the sheet.
func (d *Design) SetNow() *SetOn {
	s := &SetOn{Colours: d.Colours, Edits: d.Edits, Recipes: d.Recipes, Lettering: d.Lettering, Parts: d.Parts, Versions: []VersionSet{}}
	for _, v := range d.Versions {
		s.Versions = append(s.Versions, VersionSet{v.ID, v.Colours})
	}
	return s
}

// ColoursOf is what was set for a version; ok is false for one that came later.
func (s *SetOn) ColoursOf(version string) (all []VersionColour, ok bool) {
	for _, v := range s.Versions {
		if v.ID == version {
			return v.Colours, true
		}
	}
	return nil, false
}
