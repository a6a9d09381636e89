//go:build !js

package main

import (
	"cmp"
	"encoding/json"
	"os"
	"strconv"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/wasm/calls"
	"badgewright/wasm/wire"
)

// request is one line in. Beside the call and what it asks for, it may name
// files: a drawing to open, and pictures to write. Set and Version are merged
// into the design and version in hand.
type request struct {
	Call    string                     `json:"call"`
	Ask     map[string]json.RawMessage `json:"ask"`
	File    string                     `json:"file"`    // open: PNG, JPEG, WebP or GIF to read
	Second  string                     `json:"second"`  // open: the other half, when lines and colours come apart
	Cap     int                        `json:"cap"`     // open: long side of the working raster, px
	Labels  string                     `json:"labels"`  // flats: write the label map, grey PNG, 255 is background
	Reduced string                     `json:"reduced"` // flats: write the reduced drawing, PNG
	PNG     string                     `json:"png"`     // picture, look, guide, marks: write it, PNG
	Out     string                     `json:"out"`     // any call whose answer comes with a file: write it as it is
	Set     json.RawMessage            `json:"set"`
	Version json.RawMessage            `json:"version"`
}

// response is one line out.
type response struct {
	Call   string        `json:"call,omitempty"`
	Answer any           `json:"answer,omitempty"`
	Error  *wire.Failure `json:"error,omitempty"`
}

// desk keeps what the page would keep: the design in hand, so that a line
// need not repeat it.
type desk struct {
	session *calls.Session
	picked  wire.Picked
}

func newDesk(s *calls.Session) *desk {
	return &desk{session: s, picked: wire.Picked{Project: calls.BlankProject()}}
}

func (d *desk) answer(line []byte) response {
	var r request
	if err := json.Unmarshal(line, &r); err != nil {
		return failed("", &reduce.Refusal{What: "This line is not a JSON object: " + err.Error() + ".", Do: "Send one object a line."})
	}
	if err := d.set(&r); err != nil {
		return failed(r.Call, err)
	}
	if r.Call == "" {
		return response{Answer: d.picked}
	}
	reply, err := d.do(&r)
	if err != nil {
		return failed(r.Call, err)
	}
	return response{Call: r.Call, Answer: reply.Answer}
}

func failed(call string, err error) response {
	f := calls.FailureOf(err)
	return response{Call: call, Error: &f}
}

// set merges what a line sets into the design and version in hand.
func (d *desk) set(r *request) error {
	for _, part := range []struct {
		json json.RawMessage
		into any
	}{{r.Set, d.design()}, {r.Version, &d.design().Versions[d.picked.Version]}} {
		if len(part.json) == 0 {
			continue
		}
		if err := json.Unmarshal(part.json, part.into); err != nil {
			return &reduce.Refusal{What: "What this line sets cannot be read: " + err.Error() + "."}
		}
	}
	return nil
}

func (d *desk) design() *sizing.Design { return &d.picked.Project.Order.Designs[d.picked.Design] }

func (d *desk) do(r *request) (calls.Reply, error) {
	if r.Call == "open" {
		return d.open(r)
	}
	job, err := d.job(r)
	if err != nil {
		return calls.Reply{}, err
	}
	ask, err := d.fill(r)
	if err != nil {
		return calls.Reply{}, err
	}
	reply, err := d.session.Do(r.Call, ask, job)
	if err != nil {
		return reply, err
	}
	d.keepList(reply)
	return reply, d.write(r, reply)
}

// open reads a drawing from a file and takes the proposed design in hand.
func (d *desk) open(r *request) (calls.Reply, error) {
	var ask wire.OpenAsk
	if err := remarshal(r.Ask, &ask); err != nil {
		return calls.Reply{}, err
	}
	b := calls.Brought{ID: cmp.Or(ask.ID, r.File), FileName: cmp.Or(ask.FileName, r.File), SecondName: r.Second, Ground: cmp.Or(ask.Ground, reduce.GroundAuto)}
	var err error
	if b.Drawing, err = decoded(r.File, r.Cap); err != nil {
		return calls.Reply{}, err
	}
	if r.Second != "" {
		if b.Second, err = decoded(r.Second, r.Cap); err != nil {
			return calls.Reply{}, err
		}
	}
	reply, err := d.session.Open(b, func(float64, string) error { return nil })
	if err == nil {
		*d.design() = reply.Answer.(wire.Opened).Design
	}
	return reply, err
}

// decoded reads a drawing from a file, with a cap on its long side in px; 0 for the usual.
func decoded(path string, side int) (*reduce.Drawing, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, &reduce.Refusal{What: "This file cannot be read: " + err.Error() + ".", Do: "Check the path."}
	}
	defer f.Close()
	if side <= 0 {
		side = reduce.WorkingLongSide
	}
	return reduce.Decode(f, side)
}

// fill adds the design in hand to a request that names none.
func (d *desk) fill(r *request) ([]byte, error) {
	ask := map[string]any{}
	for k, v := range r.Ask {
		ask[k] = v
	}
	if _, has := ask["of"]; !has && wire.OfHanded(r.Call) {
		key, err := d.handOver()
		if err != nil {
			return nil, err
		}
		ask["of"] = key
	}
	switch r.Call {
	case "codes":
		if err := d.fillCodes(ask); err != nil {
			return nil, err
		}
	case "buys", "check", "quote", "choices", "picture", "touch", "hang", "offers", "mendall", "mendedfrom", "marks", "sizes", "parts", "eyes",
		"look", "reading", "neighbours", "glance", "struck":
		if _, has := ask["picked"]; !has {
			ask["picked"] = d.picked
		}
		calls.FillSight(r.Call, ask)
	case "flats", "ground", "thumbnail":
		design := d.design()
		if len(design.Drawings) == 0 {
			return nil, &reduce.Refusal{What: "No drawing is open.", Do: "Send an open line first."}
		}
		if _, has := ask["drawing"]; !has {
			ask["drawing"] = design.Drawings[len(design.Drawings)-1].ID
		}
		if _, has := ask["options"]; !has {
			ask["options"] = reduce.Options{Count: design.Colours, Edits: design.Edits}
		}
	}
	return json.Marshal(ask)
}

// handOver hands the version in hand from one program's calls to the other's.
func (d *desk) handOver() (string, error) {
	ask, err := json.Marshal(wire.StruckAsk{Picked: d.picked})
	if err != nil {
		return "", err
	}
	k, err := d.session.Do("struck", ask, calls.Job{})
	if err != nil {
		return "", err
	}
	if ask, err = json.Marshal(k.Answer); err != nil {
		return "", err
	}
	_, err = d.session.Do("hand", ask, calls.Job{Bytes: k.Bytes})
	return k.Answer.(wire.Struck).Key, err
}

func remarshal(from, into any) error {
	text, err := json.Marshal(from)
	if err != nil {
		return err
	}
	return json.Unmarshal(text, into)
}

// job reads the file that a header, font or colourlist line names, and says its size.
func (d *desk) job(r *request) (calls.Job, error) {
	if r.Call == "colourlist" {
		return listJob(r)
	}
	if r.Call != "header" && r.Call != "font" || r.File == "" {
		return calls.Job{}, nil
	}
	file, err := os.ReadFile(r.File)
	if err != nil {
		return calls.Job{}, &reduce.Refusal{What: "This file cannot be read: " + err.Error() + ".", Do: "Check the path."}
	}
	if r.Call == "font" {
		return calls.Job{Bytes: file}, nil
	}
	if r.Ask == nil {
		r.Ask = map[string]json.RawMessage{}
	}
	if _, has := r.Ask["size"]; !has {
		r.Ask["size"] = json.RawMessage(strconv.Itoa(len(file)))
	}
	return calls.Job{Bytes: file[:min(len(file), reduce.HeaderBytes)]}, nil
}
