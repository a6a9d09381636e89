//go:build !js

package main

import (
	"encoding/json"
	"os"

	"badgewright/reduce"
	"badgewright/wasm/calls"
	"badgewright/wasm/wire"
)

// listJob reads the colour list that a line names.
func listJob(r *request) (calls.Job, error) {
	file, err := os.ReadFile(r.File)
	if err != nil {
		return calls.Job{}, &reduce.Refusal{What: "This file cannot be read: " + err.Error() + ".", Do: "Check the path."}
	}
	if _, has := r.Ask["fileName"]; !has {
		name, err := json.Marshal(r.File)
		if err != nil {
			return calls.Job{}, err
		}
		if r.Ask == nil {
			r.Ask = map[string]json.RawMessage{}
		}
		r.Ask["fileName"] = name
	}
	return calls.Job{Bytes: file}, nil
}

// keepList takes a list that was read into use, as the page does: one without
// a colour in it leaves the list before.
func (d *desk) keepList(reply calls.Reply) {
	if read, ok := reply.Answer.(wire.ColourListRead); ok && len(read.List.Entries) > 0 {
		d.picked.Project.Order.ColourList = &read.List
	}
}

// fillCodes adds the design in hand and the list in use.
func (d *desk) fillCodes(ask map[string]any) error {
	if _, has := ask["picked"]; !has {
		ask["picked"] = d.picked
	}
	if _, has := ask["list"]; has {
		return nil
	}
	list := d.picked.Project.Order.ColourList
	if list == nil {
		return &reduce.Refusal{What: "No colour list is in use.", Do: "Send a colourlist line with its file first."}
	}
	ask["list"] = *list
	return nil
}
