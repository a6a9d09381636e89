package save

import (
	"encoding/json"
	"path"
	"strings"
)

// steps bring project.json forward, each by one format: steps[0] makes a file of
// format 1 one of format 2. names are the file's entries, in order.
var steps = []func(text []byte, names []string) ([]byte, error){
	listDrawings,
}

// forward brings project.json to the format of today, and says of which it was.
func forward(text []byte, names []string) (now []byte, was int, err error) {
	var head struct {
		Format int `json:"format"`
	}
	if err := json.Unmarshal(text, &head); err != nil || head.Format < 1 {
		return nil, 0, refuse(notOurs, "This project file does not say of which format it is.")
	}
	if head.Format > Format {
		return nil, 0, refuse("Load this page again to have the newest badgewright, then open the file.", "This project file was made by a later badgewright: it is of format %d, and this one reads up to %d.", head.Format, Format)
	}
	for _, step := range steps[head.Format-1:] {
		if text, err = step(text, names); err != nil {
			return nil, 0, err
		}
	}
	return text, head.Format, nil
}

// Forward brings a project value that stands by itself to the format of today.
func Forward(project json.RawMessage) (json.RawMessage, error) {
	if err := sane(project); err != nil {
		return nil, err
	}
	var head struct {
		Format int `json:"format"`
	}
	text := []byte(project)
	if json.Unmarshal(project, &head) == nil && head.Format > 1 {
		text, _ = json.Marshal(envelope{Format: head.Format, Project: project})
	}
	text, _, err := forward(text, nil)
	if err != nil {
		return nil, err
	}
	var list envelope
	err = json.Unmarshal(text, &list)
	return list.Project, err
}

// listDrawings makes format 2 of format 1, which was the project alone: its drawings
// lay beside it under their IDs and were not listed, and their names were those that the
// project gives them.
func listDrawings(text []byte, names []string) ([]byte, error) {
	var project map[string]json.RawMessage
	var old struct {
		Order struct {
			Designs []struct {
				Drawings []struct {
					ID       string `json:"id"`
					FileName string `json:"fileName"`
				} `json:"drawings"`
			} `json:"designs"`
		} `json:"order"`
	}
	if json.Unmarshal(text, &project) != nil || json.Unmarshal(text, &old) != nil {
		return nil, refuse(notOurs, "The project in this file is not one of format 1, as it says.")
	}
	list := envelope{Format: 2, Drawings: []listed{}}
	seen := map[string]bool{}
	for _, design := range old.Order.Designs {
		for _, d := range design.Drawings {
			if !seen[d.ID] {
				list.Drawings = append(list.Drawings, listed{ID: d.ID, Files: lying(d.ID, d.FileName, names)})
			}
			seen[d.ID] = true
		}
	}
	project["format"] = json.RawMessage("2")
	var err error
	if list.Project, err = json.Marshal(project); err != nil {
		return nil, err
	}
	return json.Marshal(list)
}

// lying finds the pictures of a drawing among the entries.
func lying(id, name string, names []string) []listedFile {
	all := []listedFile{}
	for _, stem := range []string{id, id + "-2"} {
		for _, n := range names {
			if strings.TrimSuffix(n, path.Ext(n)) == drawingsDir+stem {
				all = append(all, listedFile{Path: n, Name: name})
				break
			}
		}
	}
	return all
}
