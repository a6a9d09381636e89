package card

import (
	"fmt"
	"html"
	"strconv"
	"strings"

	"badgewright/reduce/colour"
	"badgewright/sizing/unit"
)

// Colours of what is not part of the art.
var (
	MarkRGB = colour.RGB8{}                          // of the cuts
	HoleRGB = colour.RGB8{R: 0x70, G: 0x70, B: 0x70} // of what is pierced or punched
	AidRGB  = colour.RGB8{R: 0xb8, G: 0xb8, B: 0xb8} // light, so that a pin set a little off hides most of it
)

// Lines of what is not part of the art, mm.
const (
	HoleThick unit.MM = 0.1
	AidThick  unit.MM = 0.15
	CrossOut  unit.MM = 0.8 // how far the cross of a hole reaches over it
)

// SVG draws the sheet at true size. Words are curves, so that it looks the same
// everywhere.
func SVG(c *BackingCard, l *LaidCard, m *Imposed, title string) []byte {
	w := &svg{}
	w.f(`<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="%smm" height="%smm" viewBox="0 0 %s %s">`, n(m.W), n(m.H), n(m.W), n(m.H))
	w.f(`<title>%s</title>`, html.EscapeString(title))
	w.f(`<defs>`)
	w.f(`<clipPath id="bleed">%s</clipPath>`, rect(l.Printed()))
	w.f(`<g id="card">`)
	w.art(c, l)
	w.guides(c, l)
	w.f("</g>\n</defs>")
	w.f(`<g id="cards">`)
	for i, p := range m.Places {
		w.f(`<use id="card-%d" xlink:href="#card" x="%s" y="%s"/>`, i+1, n(p.X), n(p.Y))
	}
	w.f("</g>")
	w.f(`<g id="cut-marks" fill="none" stroke="%s" stroke-width="%s">`, MarkRGB.Hex(), n(MarkThick))
	for _, k := range m.Marks {
		w.f(`<path d="M%s %sL%s %s"/>`, n(k[0]), n(k[1]), n(k[2]), n(k[3]))
	}
	w.f("</g>\n</svg>")
	return []byte(w.b.String())
}

type svg struct{ b strings.Builder }

// f writes a line.
func (w *svg) f(format string, args ...any) {
	fmt.Fprintf(&w.b, format, args...)
	w.b.WriteByte('\n')
}

// Printed is the box that print runs over: x0, y0, x1, y1.
func (l *LaidCard) Printed() [4]unit.MM { return box{0, 0, l.W, l.H}.grown(l.Bleed) }

func (w *svg) art(c *BackingCard, l *LaidCard) {
	if c.Ground != nil {
		w.f(`<g id="ground" fill="%s">%s</g>`, c.Ground.Hex(), rect(l.Printed()))
	}
	if p := c.Picture; p != nil {
		w.f(`<g id="picture" clip-path="url(#bleed)"><image x="%s" y="%s" width="%s" height="%s" preserveAspectRatio="none" xlink:href="data:%s;base64,%s"/></g>`,
			n(p.X), n(p.Y), n(p.Wide), n(p.High()), html.EscapeString(p.Type), html.EscapeString(p.Data))
	}
	if len(l.Texts) == 0 {
		return
	}
	w.f(`<g id="words">`)
	for i, t := range l.Texts {
		w.f(`<path fill="%s" transform="translate(%s %s)" d="%s"><title>%s</title></path>`, c.Texts[i].RGB.Hex(), n(t.X), n(t.Y), t.D, html.EscapeString(c.Texts[i].Words))
	}
	w.f("</g>")
}

// guides are what helps to pierce, punch, cut and place.
func (w *svg) guides(c *BackingCard, l *LaidCard) {
	if !c.NoAid && l.Outline != "" {
		w.f(`<g id="pin-outline" fill="none" stroke="%s" stroke-width="%s"><path transform="translate(%s %s)" d="%s"/></g>`, AidRGB.Hex(), n(AidThick), n(l.Pin.X), n(l.Pin.Y), l.Outline)
	}
	w.f(`<g id="holes" fill="none" stroke="%s" stroke-width="%s">`, HoleRGB.Hex(), n(HoleThick))
	for _, h := range l.Holes {
		r := h.Across / 2
		out := r + CrossOut
		w.f(`<circle cx="%s" cy="%s" r="%s"/>`, n(h.X), n(h.Y), n(r))
		w.f(`<path d="M%s %sH%sM%s %sV%s"/>`, n(h.X-out), n(h.Y), n(h.X+out), n(h.X), n(h.Y-out), n(h.Y+out))
	}
	if l.Hang != nil {
		b, r := l.HangBox(), l.Hang.H/2
		w.f(`<rect id="hang-hole" x="%s" y="%s" width="%s" height="%s" rx="%s"/>`, n(b[0]), n(b[1]), n(b[2]-b[0]), n(b[3]-b[1]), n(min(r, l.Hang.W/2)))
	}
	if c.Corner > 0 {
		w.f(`<rect id="cut" x="0" y="0" width="%s" height="%s" rx="%s"/>`, n(l.W), n(l.H), n(c.Corner))
	}
	w.f("</g>")
}

func rect(b box) string {
	return fmt.Sprintf(`<rect x="%s" y="%s" width="%s" height="%s"/>`, n(b[0]), n(b[1]), n(b[2]-b[0]), n(b[3]-b[1]))
}

// n writes a length to a micrometre.
func n(v unit.MM) string {
	s := strconv.FormatFloat(float64(v), 'f', 3, 64)
	s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	if s == "-0" || s == "" {
		return "0"
	}
	return s
}
