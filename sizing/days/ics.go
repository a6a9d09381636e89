//go:build !pin

package days

import (
	"bytes"
	"encoding/hex"
	"fmt"
	"hash/fnv"
	"strings"
	"unicode"

	"github.com/emersion/go-ical"

	"badgewright/sizing/unit"
)

// product names the maker of a file, as RFC 5545 section 3.7.3 asks.
const product = "-//badgewright//order calendar//EN"

// lineBytes is how long a line of a calendar file may be, without its break
// (RFC 5545 section 3.1).
const lineBytes = 75

// entry is one whole-day event.
type entry struct {
	key, title, text string
	span             span
}

// ICS writes a schedule as a calendar file (RFC 5545), all in whole days, which
// hold in every time zone: the latest days of each step when there is a launch
// day, otherwise the days as they would fall.
func ICS(name string, s Schedule) ([]byte, unit.Faults) {
	p, f := s.ready()
	c, g := Reckon(s)
	if len(g) > 0 {
		return nil, g
	}
	name = oneLine(name)
	out := ical.NewCalendar()
	out.Props.SetText(ical.PropVersion, "2.0")
	out.Props.SetText(ical.PropProductID, product)
	for _, e := range p.entries(name, c) {
		out.Children = append(out.Children, e.event(name, p.today))
	}
	if len(out.Children) == 0 {
		f.Say("steps", "Every step is over, so there is nothing to put into a calendar.")
		return nil, f
	}
	var b bytes.Buffer
	if err := ical.NewEncoder(&b).Encode(out); err != nil {
		f.Say("steps", "The calendar could not be written: %s.", err)
		return nil, f
	}
	return folded(b.Bytes()), f
}

func (p *plan) entries(name string, c *Calendar) []entry {
	var all []entry
	add := func(key, title, text string, s span) {
		if s.last >= s.first {
			all = append(all, entry{key, oneLine(titled(name, title)), oneLine(text), s})
		}
	}
	for i := p.doing; i < len(c.Rows); i++ {
		r := c.Rows[i]
		if p.has.launch {
			add(r.Key, r.Name, "At the latest. "+r.Says, c.latest[i])
		} else {
			add(r.Key, r.Name, "", c.ahead[i])
		}
	}
	if p.has.launch {
		add(KeySlack, "kept free", "", c.slack)
		add("launch", "launch", c.Position, span{p.launch, p.launch})
	}
	return all
}

func titled(name, what string) string {
	if name == "" {
		return what
	}
	return name + ": " + what
}

// event makes the component. Its end is the day after the last (RFC 5545
// section 3.6.1), and its stamp is today, for there is no clock.
func (e entry) event(name string, today Day) *ical.Component {
	ev := ical.NewEvent()
	ev.Props.SetText(ical.PropUID, uid(name, e.key))
	ev.Props.SetDateTime(ical.PropDateTimeStamp, today.at())
	ev.Props.SetDate(ical.PropDateTimeStart, e.span.first.at())
	ev.Props.SetDate(ical.PropDateTimeEnd, (e.span.last + 1).at())
	ev.Props.SetText(ical.PropSummary, e.title)
	if e.text != "" {
		ev.Props.SetText(ical.PropDescription, e.text)
	}
	ev.Props.SetText(ical.PropTransparency, "TRANSPARENT") // it does not take up the day
	return ev.Component
}

// uid is the same for the same step of the same order, so that a file brought
// in again moves what is there.
func uid(name, key string) string {
	h := fnv.New128a()
	fmt.Fprintf(h, "%d:%s%s", len(name), name, key)
	return hex.EncodeToString(h.Sum(nil)) + "@badgewright.invalid"
}

// oneLine takes out what a calendar file cannot carry.
func oneLine(text string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsControl(r) {
			return ' '
		}
		return r
	}, strings.ToValidUTF8(text, " "))
}

// folded breaks long lines as RFC 5545 section 3.1 says, never within a letter.
func folded(file []byte) []byte {
	var out bytes.Buffer
	for line := range bytes.SplitSeq(bytes.TrimSuffix(file, []byte("\r\n")), []byte("\r\n")) {
		room := lineBytes
		for len(line) > room {
			cut := room
			for line[cut]&0xc0 == 0x80 {
				cut--
			}
			out.Write(line[:cut])
			out.WriteString("\r\n ")
			line, room = line[cut:], lineBytes-1
		}
		out.Write(line)
		out.WriteString("\r\n")
	}
	return out.Bytes()
}
