package wall

import (
	"math"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// shaper is one recipe that changes the silhouette, on its way to the pixels.
// Lengths are in pixels.
type shaper struct {
	b     *Builder
	s     *reduce.Separation
	is    *[256]bool // labels that are solid
	line  []place
	width float64 // 0 for what the limits allow
	label uint8   // of metal that is laid
	// limits
	bridge, edge, eye, eyeRim, tip float64
}

// reshapes are how each of them is made.
var reshapes = map[sizing.RecipeKind]func(*shaper){
	sizing.BuildBridge: (*shaper).buildBridge,
	sizing.AddEye:      (*shaper).addEye,
	sizing.RoundTip:    (*shaper).roundTip,
}

// reshape applies a recipe that changes the silhouette; ok is false for one that
// does not.
func (b *Builder) reshape(s *reduce.Separation, r sizing.Recipe, label uint8, scale unit.PxPerMM, l sizing.Limits) (ok bool) {
	do, ok := reshapes[r.Kind]
	if line := nearby(b.pointsOf(r.Points), b.base.W, b.base.H); ok && len(line) > 0 {
		do(&shaper{
			b: b, s: s, is: s.Solid(), line: line, width: max(0, r.Width).Px(scale), label: label,
			bridge: l.Bridge.Px(scale), edge: l.Edge.Px(scale), eye: l.Eye.Px(scale), eyeRim: l.EyeRim.Px(scale), tip: l.Tip.Px(scale),
		})
	}
	return ok
}

func (m *shaper) or(limit float64) float64 {
	if m.width > 0 {
		return m.width
	}
	return limit
}

// outlineSlack is how much wider than a limit the silhouette is made, in pixels,
// so that what is measured afterwards does not fall short by the raster's grain.
const outlineSlack = 0.5

// buildBridge lays metal along the line, but only where there is nothing yet:
// the parts that it joins stay as they are.
func (m *shaper) buildBridge() {
	half := (m.or(m.bridge) + outlineSlack) / 2
	m.b.near(m.line, half+0.5, func(i int, d float64) {
		m.fillOutside(i, uint8(255*min(1, half+0.5-d)))
	})
}

// fillOutside gives metal at least a part of a pixel, 0..255, out of what of it
// lies outside.
func (m *shaper) fillOutside(i int, part uint8) {
	s := m.s
	own, beside := !m.is[s.Labels[i]], !m.is[s.Beside[i]]
	switch {
	case own && (beside || s.Cover[i] == 255):
		m.b.cover(s, i, m.label, part)
	case own && part >= 128: // what was there keeps its share
		s.Labels[i], s.Built[i] = m.label, true
	case beside && s.Cover[i] < 255 && part >= 128:
		s.Beside[i] = m.label
	}
	if s.Labels[i] == s.Beside[i] {
		s.Cover[i] = 255
	}
}

// addEye lays a disc of metal round each point and cuts a hole through it. The
// disc may stand on the silhouette or out of it.
func (m *shaper) addEye() {
	hole := (m.or(m.eye) + outlineSlack) / 2
	for k := range m.line {
		m.b.draw(m.s, m.line[k:k+1], 2*(hole+m.eyeRim)+outlineSlack, m.label)
	}
	for k := range m.line {
		m.b.near(m.line[k:k+1], hole+0.5, func(i int, d float64) {
			m.takeAway(i, uint8(255*min(1, hole+0.5-d)))
		})
	}
}

// takeAway gives the outside at least a part of a pixel, 0..255.
func (m *shaper) takeAway(i int, part uint8) {
	s := m.s
	own, beside, cover := s.Labels[i], s.Beside[i], s.Cover[i]
	switch {
	case !m.is[own] && (!m.is[beside] || cover >= part):
	case m.is[own] && cover < 255 && !m.is[beside] && 255-cover >= part:
		// As much of it is outside already.
	case part == 255:
		s.Labels[i], s.Beside[i], s.Cover[i] = reduce.None, reduce.None, 255
	case part >= 128:
		if !m.is[own] {
			own = beside
		}
		s.Labels[i], s.Beside[i], s.Cover[i] = reduce.None, own, part
	case part > 0:
		s.Beside[i], s.Cover[i] = reduce.None, 255-part
	}
	s.Built[i] = s.Built[i] && m.is[s.Labels[i]]
}

// roundTip rounds the tip at the first point to a radius; the last lies on the
// middle line behind it. What is cut off is what lies beyond the outermost disc
// of that radius that fits.
func (m *shaper) roundTip() {
	tip, back := m.line[0], m.line[len(m.line)-1]
	dx, dy := tip.x-back.x, tip.y-back.y
	far := math.Sqrt(float64(dx*dx) + float64(dy*dy))
	if far < 1 {
		return
	}
	c := &capEnd{shaper: m, tip: tip, dx: dx / far, dy: dy / far, radius: m.or(m.tip) + outlineSlack}
	if c.settle() {
		c.cut()
	}
}
