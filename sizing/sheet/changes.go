package sheet

import (
	"fmt"
	"strings"

	"badgewright/reduce"
)

// Difference is one place in which a proof differs from what was asked, in
// words; Number is what it is called on the marked picture.
type Difference struct {
	Number int    `json:"number"`
	What   string `json:"what"`  // "the line between sky and lamp"
	Where  string `json:"where"` // "upper left, 4 mm from the left"; may be empty
	Asked  string `json:"asked"`
	Shown  string `json:"shown"` // what the proof has; may be empty
	Note   string `json:"note"`  // the person's own; may be empty
}

// ChangesOf is what a change request is made from.
type ChangesOf struct {
	Name  string       `json:"name"` // of the pin
	Round int          `json:"round"`
	Dated string       `json:"dated"` // the proof's day, in words; empty when not known
	All   []Difference `json:"all"`
	Note  string       `json:"note"`
	// Files is what goes with it, a name each.
	Files []string `json:"files"`
}

// Write writes the request for changes to a proof.
func (c ChangesOf) Write() (Inquiry, error) {
	name := Clean(c.Name)
	if name == "" {
		name = "my pin"
	}
	if len(c.All) == 0 {
		return Inquiry{}, &reduce.Refusal{What: "There is nothing to change in this proof.", Do: "Approve it, or add what differs."}
	}
	m := &message{}
	m.line("Hello,\n")
	m.line("Thank you for the %s of %s%s. I do not approve it yet. Please change %s:\n", proofWords(c.Round), name, datedWords(c.Dated), things(len(c.All)))
	for i, d := range c.All {
		d.write(m, i+1)
	}
	m.line("Nothing else is to change. Please send me a new proof, with the changed places marked; make nothing before I approve it in writing.\n")
	if note := Clean(c.Note); note != "" {
		m.line("%s\n", note)
	}
	if len(c.Files) > 0 {
		m.line("With this come: %s.\n", strings.Join(c.Files, ", "))
	}
	m.line("Thank you,\n%s", gapName)
	return Inquiry{Subject: fmt.Sprintf("Changes to the proof of %s: %s", name, amount(len(c.All), "place")), Body: m.String(), Gaps: []string{gapName}}, nil
}

func proofWords(round int) string {
	if round > 1 {
		return fmt.Sprintf("proof (round %d)", round)
	}
	return "proof"
}

func datedWords(day string) string {
	if day = Clean(day); day != "" {
		return " of " + day
	}
	return ""
}

func things(n int) string {
	if n == 1 {
		return "one thing"
	}
	return fmt.Sprintf("these %d things", n)
}

func (d Difference) write(m *message, place int) {
	no := d.Number
	if no == 0 {
		no = place
	}
	head := Clean(d.What)
	if where := Clean(d.Where); where != "" {
		head += " (" + where + ")"
	}
	m.line("%d. %s", no, head)
	for _, l := range [][2]string{{"Asked for", d.Asked}, {"The proof shows", d.Shown}, {"Note", d.Note}} {
		if text := Clean(l[1]); text != "" {
			m.line("   %s: %s", l[0], text)
		}
	}
	m.line("")
}
