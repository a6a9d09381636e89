package sheet

import (
	"fmt"
	"slices"
	"strings"

	"badgewright/reduce"
	"badgewright/sizing"
)

// Inquiry is a message to a maker, ready to paste into a mail or a form.
type Inquiry struct {
	Subject string `json:"subject"`
	Body    string `json:"body"`
	// Gaps are the places that only the person can fill, as they stand in Body.
	Gaps []string `json:"gaps"`
}

// InquiryOf is what an inquiry is made from.
type InquiryOf struct {
	Asked []Asked `json:"asked"` // in the order of the order
	Units Units   `json:"units"`
	// NeedBy is the day by which the pins are wanted, in words; empty for none.
	NeedBy string `json:"needBy"`
	// Files is what goes with it, a name each.
	Files []string `json:"files"`
	// Note is the person's own sentence to the maker.
	Note string `json:"note"`
}

// The places that only the person can fill.
const (
	gapName    = "[ your name ]"
	gapDeliver = "[ where to deliver: town, post code, country ]"
)

// message is a text being written, line by line.
type message struct{ strings.Builder }

func (m *message) line(format string, args ...any) {
	fmt.Fprintf(m, format, args...)
	m.WriteByte('\n')
}

// group is the versions of one design.
type group struct {
	Asked
	versions []Asked
}

func groupsOf(all []Asked) []group {
	var groups []group
	for _, a := range all {
		a.Design, a.Version = Clean(a.Design), Clean(a.Version)
		i := slices.IndexFunc(groups, func(g group) bool { return g.DesignID == a.DesignID })
		if i < 0 {
			groups = append(groups, group{Asked: a})
			i = len(groups) - 1
		}
		groups[i].versions = append(groups[i].versions, a)
	}
	return groups
}

// Write writes the inquiry.
func (in InquiryOf) Write() (Inquiry, error) {
	if len(in.Asked) == 0 {
		return Inquiry{}, &reduce.Refusal{What: "There is nothing to ask a maker for.", Do: "Open a drawing first."}
	}
	groups := groupsOf(in.Asked)
	m := &message{}
	m.line("Hello,\n")
	m.line("I would like a quote for %s, and before anything is made a proof: a drawing with sizes, colours and posts that I can approve.\n", whatIsAsked(groups))
	for i := range groups {
		in.design(m, i, groups)
	}
	in.ask(m, groups)
	if note := Clean(in.Note); note != "" {
		m.line("%s\n", note)
	}
	if len(in.Files) > 0 {
		m.line("With this come: %s.\n", strings.Join(in.Files, ", "))
	}
	m.line("Thank you,\n%s", gapName)
	return Inquiry{Subject: subjectOf(groups), Body: m.String(), Gaps: []string{gapDeliver, gapName}}, nil
}

func whatIsAsked(groups []group) string {
	if len(groups) == 1 && len(groups[0].versions) == 1 {
		return "the enamel pin below"
	}
	if len(groups) == 1 {
		return fmt.Sprintf("the enamel pin below in %d versions from one die", len(groups[0].versions))
	}
	return fmt.Sprintf("the %d enamel pins below", len(groups))
}

func subjectOf(groups []group) string {
	var names []string
	n := 0
	for _, g := range groups {
		names = append(names, g.Design)
		for _, v := range g.versions {
			n += v.Item.Quantity
		}
	}
	const shown = 3
	if more := len(names) - shown; more > 0 {
		names = append(names[:shown], fmt.Sprintf("%d more", more))
	}
	return fmt.Sprintf("Quote for enamel pins: %s, %s", strings.Join(names, ", "), amount(n, "piece"))
}

func amount(n int, one string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %ss", n, one)
}

// design writes what one design is, then its versions.
func (in InquiryOf) design(m *message, i int, groups []group) {
	g := &groups[i]
	name := g.Design
	if len(groups) > 1 {
		name = fmt.Sprintf("%d. %s", i+1, name)
	}
	m.line("%s", name)
	in.shape(m, g)
	in.back(m, g)
	for _, v := range g.versions {
		in.version(m, &v, len(g.versions) > 1)
	}
	in.open(m, g)
	m.line("")
}

func (in InquiryOf) shape(m *message, g *group) {
	u := in.Units
	m.line("- Size: %s wide, %s high (%s).", u.Say(g.W), u.Say(g.H), sizeBy(g.Size, u))
	m.line("- Made: %s, %s thick.", strings.Join(slices.DeleteFunc([]string{string(g.Making), fillWords(g.Item.Fill), string(g.Base)}, func(s string) bool { return s == "" }), ", "), u.Say(g.Thickness))
	var more []string
	if n := g.Item.CutOuts; n > 0 {
		more = append(more, amount(n, "cut-out")+" right through the metal")
	}
	if n := g.Item.Parts; n > 1 {
		more = append(more, fmt.Sprintf("%d parts that hang from each other by %s", n, ringWords(g.Item.Rings, g.Item.Chains)))
	}
	if n := g.Item.FurtherDies; n > 0 {
		more = append(more, amount(n, "further die"))
	}
	if g.Item.Dome {
		more = append(more, "a clear dome over the enamel")
	}
	if len(more) > 0 {
		m.line("- Shape: %s.", strings.Join(more, "; "))
	}
	if !g.Item.NewDie {
		m.line("- This is a reorder: the die was cut about %s ago.", amount(g.Item.DieAge, "month"))
	}
}

func ringWords(rings, chains int) string {
	words := amount(rings, "jump ring")
	if chains > 0 {
		words += " and " + amount(chains, "chain")
	}
	return words
}

func sizeBy(s sizing.Size, u Units) string {
	if s.By == sizing.ByMean {
		return "the size I go by is the mean of the two, " + u.Say(s.MM)
	}
	by := map[sizing.SizeBy]string{sizing.ByWidth: "width", sizing.ByHeight: "height", sizing.ByLongest: "longest side"}[s.By]
	return fmt.Sprintf("the size I go by is the %s, %s", by, u.Say(s.MM))
}

func fillWords(f sizing.Fill) string {
	switch f {
	case sizing.Soft:
		return "soft enamel"
	case sizing.Hard:
		return "hard enamel"
	}
	return "no fill"
}

func (in InquiryOf) back(m *message, g *group) {
	switch g.Item.Fastening {
	case sizing.PinBar:
		m.line("- Fastening: a pin bar of %s.", in.Units.Say(g.Bar))
	case sizing.MagnetBack:
		m.line("- Fastening: %s.", amount(g.Item.Posts, "magnet"))
	case sizing.ScrewBack:
		m.line("- Fastening: %s.", amount(g.Item.Posts, "screw back"))
	default:
		m.line("- Fastening: %s.", amount(g.Item.Posts, "post")+" with "+plural(g.Item.Posts, "a clutch", "clutches"))
	}
	if g.Item.Fastening != sizing.PinBar {
		posts := slices.SortedFunc(slices.Values(g.Posts), func(a, b AskedPlace) int { return a.No - b.No })
		for _, p := range posts {
			m.line("  No %d, from the middle, seen from behind: %s.", p.No, strings.Replace(p.say(in.Units), "in the middle", "0", 1))
		}
	}
	if g.Stamp != "" {
		m.line("- Back stamp: %s.", Clean(g.Stamp))
	}
}

func plural(n int, one, many string) string {
	if n == 1 {
		return one
	}
	return many
}

// version writes what is its own.
func (in InquiryOf) version(m *message, v *Asked, named bool) {
	indent := "- "
	if named {
		m.line("- Version %s:", v.Version)
		indent = "  - "
	}
	m.line("%sPlating: %s.", indent, v.Plating)
	enamels := slices.DeleteFunc(slices.Clone(v.Colours), func(c AskedColour) bool { return c.Role == reduce.Metal })
	m.line("%sColours: %s, metal not counted.", indent, amount(len(enamels), "colour"))
	for _, c := range enamels {
		m.line("%s%d  %s", strings.Repeat(" ", len(indent)), c.No, colourWords(c))
	}
	for _, c := range v.Colours {
		if c.Role == reduce.Metal && c.Finish != sizing.Plain {
			m.line("%sMetal: %s.", indent, c.Finish)
		}
	}
	var with []string
	if v.Item.Packaging != "" {
		with = append(with, "packed: "+Clean(v.Item.Packaging))
	}
	if v.Item.Card {
		with = append(with, "on a backing card printed by you")
	}
	m.line("%sQuantity: %s.", indent, strings.Join(append([]string{amount(v.Item.Quantity, "piece")}, with...), ", "))
}

// colourWords is a colour as it is ordered.
func colourWords(c AskedColour) string {
	words := Clean(c.Name) + ", " + c.RGB.Hex()
	if c.Code != "" {
		words += ", your code " + Clean(c.Code)
		if named := Clean(c.Named); named != "" {
			words += " (" + named + ")"
		}
	}
	if c.Finish != sizing.Plain {
		words += ", " + finishWords(c.Finish)
	}
	if c.Role == reduce.Printed {
		words += ", printed on top"
	}
	return words
}

func finishWords(f sizing.Finish) string {
	if f == sizing.Glow {
		return "glows in the dark"
	}
	return string(f)
}

// open tells of what may be too fine, one line for each kind.
func (in InquiryOf) open(m *message, g *group) {
	var kinds []sizing.Kind
	worst, count := map[sizing.Kind]*sizing.Finding{}, map[sizing.Kind]int{}
	for i := range g.Spots {
		f := &g.Spots[i].Finding
		if !Open(f) {
			continue
		}
		if worst[f.Kind] == nil {
			kinds, worst[f.Kind] = append(kinds, f.Kind), f
		} else if f.Thinnest < worst[f.Kind].Thinnest {
			worst[f.Kind] = f
		}
		count[f.Kind] += max(f.Count, 1)
	}
	if len(kinds) == 0 {
		m.line("- Thinnest lines and areas hold %s and %s.", in.Units.Say(g.Limits.Line), in.Units.Say(g.Limits.Area))
		return
	}
	m.line("- Please look at these; they may be finer than your die holds at this size:")
	for _, k := range kinds {
		f := worst[k]
		words := SpotName(f)
		if measured := SpotMeasured(f, in.Units); measured != "" {
			words += ", " + measured
		}
		if limit := SpotLimit(f, in.Units); limit != "" && f.Kind != sizing.LongArm {
			words += ", I reckoned with " + limit
		}
		m.line("  %s: %s.", amount(count[k], "place"), words)
	}
}

// ask writes the questions that a quote must answer.
func (in InquiryOf) ask(m *message, groups []group) {
	m.line("Please tell me")
	m.line("- the die charge, the price each, and what is charged apart (colours past those included, posts, fills, cut-outs, packing);")
	m.line("- the price each at the next two quantities above, and what one colour fewer saves;")
	m.line("- the days for the proof, for making and for carriage to %s;", gapDeliver)
	if day := Clean(in.NeedBy); day != "" {
		m.line("- whether the pins can be here by %s;", day)
	}
	m.line("- how many proof rounds are in the price, and how long you keep the die;")
	m.line("- how many pieces over or under you may send, and what you do about faulty ones;")
	m.line("- how you are paid, and what your thinnest line, narrowest area and narrowest gap are.\n")
	m.line("Please do not move, thicken, join or leave out any line, colour or post without asking me; what you would change, show me in the proof.\n")
	for _, g := range groups {
		for _, v := range g.versions {
			if slices.ContainsFunc(v.Colours, func(c AskedColour) bool { return c.Code == "" && c.Role == reduce.Enamel }) {
				m.line("Where I give no code, please choose the nearest of your chart and tell me which; a screen shows colours only roughly.\n")
				return
			}
		}
	}
}
