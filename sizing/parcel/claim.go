package parcel

import (
	"fmt"
	"strings"

	"badgewright/sizing/days"
	"badgewright/sizing/unit"
)

// ClaimPhoto is a picture that goes with a claim.
type ClaimPhoto struct {
	Number  int    `json:"number"` // as the text has it
	Photo   string `json:"photo"`  // as the page keeps it
	Caption string `json:"caption"`
}

// Claim is what to write to the maker.
type Claim struct {
	// Asks is false when the count gives nothing to ask for; the text then
	// reports it.
	Asks   bool         `json:"asks"`
	Text   string       `json:"text"`
	Photos []ClaimPhoto `json:"photos"`
	Tells  string       `json:"tells"`
}

// Claimed writes the claim of a parcel counted.
func Claimed(p Parcel, today days.Date) (*Claim, unit.Faults) {
	t, f := Count(p, nil, today)
	if len(f) > 0 {
		return nil, f
	}
	c := &Claim{Photos: p.photos(), Tells: t.Tells}
	asks := t.asks()
	c.Asks = len(asks) > 0
	parts := []string{p.opening(), t.counts(), t.stands(&p)}
	if c.Asks {
		parts = append(parts, "We ask you to make good "+listed(asks)+", by new pieces or by a credit, as suits you.")
	} else {
		parts = append(parts, "That is within what we agreed; nothing is asked for.")
	}
	if text := captions(c.Photos); text != "" {
		parts = append(parts, text)
	}
	c.Text = strings.Join(parts, "\n\n")
	return c, f
}

func (p *Parcel) opening() string {
	says := "Hello"
	if p.Maker != "" {
		says += " " + p.Maker
	}
	says += ",\n\nour order"
	if d, err := days.Read(p.Ordered); err == nil {
		says += " of " + d.Says()
	}
	if d, err := days.Read(p.Arrived); err == nil {
		says += " arrived on " + d.Says()
	} else {
		says += " has arrived"
	}
	if late, ok := p.late(); ok && late > 0 {
		says += fmt.Sprintf(", %s after the day agreed", plural(late, "day"))
	}
	return says + ". This is what we counted."
}

// late is how many days after the day agreed it came; below 0 before it.
func (p *Parcel) late() (int, bool) {
	due, e1 := days.Read(p.Due)
	arrived, e2 := days.Read(p.Arrived)
	return int(arrived - due), e1 == nil && e2 == nil
}

// counts is one paragraph for each version that came or was ordered.
func (t *Tally) counts() string {
	var b strings.Builder
	for i, r := range t.Rows {
		if i > 0 {
			b.WriteString("\n")
		}
		came := fmt.Sprintf("received %d%s", r.Received, shortWords(r.Short))
		if !r.Known {
			came = fmt.Sprintf("%d counted so far", r.Graded)
		}
		fmt.Fprintf(&b, "%s: ordered %d, %s. %s, %s, %s", r.Name, r.Ordered, came, plural(r.Firsts, "first"), plural(r.Seconds, "second"), plural(r.Rejects, "reject"))
		if rest := r.Received - r.Graded; rest > 0 && r.Known {
			fmt.Fprintf(&b, ", %d not looked at", rest)
		}
		b.WriteString(".")
		if len(r.Flaws) > 0 {
			fmt.Fprintf(&b, " Faults: %s.", flawWords(r.Flaws))
		}
	}
	return b.String()
}

func flawWords(all []FlawCount) string {
	words := make([]string, len(all))
	for i, c := range all {
		words[i] = fmt.Sprintf("%s %d", c.Name, c.Count)
	}
	return strings.Join(words, ", ")
}

// stands holds the whole against what was agreed.
func (t *Tally) stands(p *Parcel) string {
	a := t.All
	if a.Graded == 0 {
		return "No piece has been looked at closely yet."
	}
	flawed := a.Seconds + a.Rejects
	share := fmt.Sprintf("%.1f", 100*float64(flawed)/float64(a.Graded))
	says := fmt.Sprintf("In all %d of the %d pieces looked at are flawed, %s percent. We agreed on at most %s, which is %d of %d.", flawed, a.Graded, share, percent(p.Agreed), a.Verdict.Allowed, a.Received)
	if v := a.Verdict; a.Graded < a.Received && v.Kind == Over && flawed <= v.Allowed {
		says += fmt.Sprintf(" From these at least %d of the %d must be taken to be flawed (%s confidence, exact limits).", v.Least, a.Received, percent(float64(p.Sure)))
	}
	for _, c := range a.Flaws {
		if c.Serious {
			says += fmt.Sprintf(" %s, found on %s, can hurt somebody: such pieces cannot be sold at all.", capital(c.Name), pieces(c.Count))
		}
	}
	return says
}

// asks is what the maker should make good: pieces over the share agreed in all,
// pieces that can hurt where the share does not cover them, and what is missing.
func (t *Tally) asks() []string {
	var all []string
	v := t.All.Verdict
	if over := max(t.All.Seconds+t.All.Rejects, v.Least) - v.Allowed; v.Kind == Over && over > 0 {
		all = append(all, "the "+pieces(over)+" past the share agreed")
	} else if n := t.serious(); n > 0 {
		all = append(all, "the "+pieces(n)+" that can hurt somebody")
	}
	missing := 0
	for _, r := range t.Rows {
		missing += max(0, r.Short)
	}
	if missing > 0 {
		all = append(all, "the "+pieces(missing)+" missing")
	}
	return all
}

func (t *Tally) serious() int {
	n := 0
	for _, c := range t.All.Flaws {
		if c.Serious {
			n += c.Count
		}
	}
	return n
}

func listed(all []string) string { return strings.Join(all, " and ") }

// photos numbers the pictures through the parcel.
func (p *Parcel) photos() []ClaimPhoto {
	all := []ClaimPhoto{}
	for _, r := range p.Rows {
		for _, piece := range r.Flawed {
			for _, id := range piece.Photos {
				n := len(all) + 1
				all = append(all, ClaimPhoto{n, id, fmt.Sprintf("%d. %s: %s (%s)", n, r.Name, flawOf(piece.Flaw).Name, piece.Grade)})
			}
		}
	}
	return all
}

func captions(all []ClaimPhoto) string {
	if len(all) == 0 {
		return ""
	}
	lines := []string{"Pictures:"}
	for _, p := range all {
		lines = append(lines, p.Caption)
	}
	return strings.Join(lines, "\n")
}
