package unit

import (
	"fmt"
	"math"
	"strings"
)

// Report is what a browser says of the screen and the window that a page is
// on. Lengths are in its CSS pixels.
type Report struct {
	Vendor string     `json:"vendor"` // navigator.vendor: it tells how page zoom shows in the rest
	W      float64    `json:"w"`      // screen.width
	H      float64    `json:"h"`      // screen.height
	Ratio  float64    `json:"ratio"`  // devicePixelRatio
	Pinch  float64    `json:"pinch"`  // visualViewport.scale, 1 when nothing is pinched
	Inner  [2]float64 `json:"inner"`  // width and height of the page's area, 0 when not told
	Outer  [2]float64 `json:"outer"`  // and of its window
}

// Screen is what a report means once page zoom is taken out of it.
type Screen struct {
	W, H int // in device pixels; 0 when the browser does not say
	// Base is the device pixels in a CSS pixel at no zoom: the scale chosen in
	// the system's settings. 0 when the browser does not let it be told.
	Base  float64
	Ratio float64 // the same now, page zoom included
	Pinch float64
}

// Page zoom takes one of these steps in the browsers that show it only in the
// area of the page (read off Chromium 156; Safari's from memory).
var (
	chromiumZooms = []float64{0.25, 1. / 3, 0.5, 2. / 3, 0.75, 0.8, 0.9, 1, 1.1, 1.25, 1.5, 1.75, 2, 2.5, 3, 4, 5}
	webkitZooms   = []float64{0.5, 0.75, 0.85, 1, 1.15, 1.25, 1.5, 1.75, 2, 2.5, 3}
)

// zoomSlack is how far, as a share, window over page area may lie from a zoom
// step: the frame of a window takes some pixels.
const zoomSlack = 0.03

// Screen takes page zoom out of a report. How zoom shows differs by browser
// (measured at 2/3, 1.5 and 2 in Chromium 156, Firefox ESR 153, WebKitGTK 2.50):
//
//	               screen   ratio   window   page area
//	Chromium       stays    grows   stays    shrinks
//	WebKit         stays    stays   stays    shrinks
//	Gecko          shrinks  grows   shrinks  shrinks
func (r Report) Screen() Screen {
	ratio := orOne(r.Ratio)
	s := Screen{Ratio: ratio, Pinch: orOne(r.Pinch)}
	device := ratio
	switch {
	case strings.HasPrefix(r.Vendor, "Google"):
		s.Base = ratio / r.zoom(chromiumZooms)
		device = s.Base
	case strings.HasPrefix(r.Vendor, "Apple"):
		s.Base = ratio
		s.Ratio = ratio * r.zoom(webkitZooms)
	}
	s.W, s.H = whole(r.W*device), whole(r.H*device)
	return s
}

// zoom finds the step of page zoom that the window and the page's area speak
// of, and 1 when they speak of none. A panel docked beside the page narrows it
// as zoom does, but does not lower it.
func (r Report) zoom(steps []float64) float64 {
	if !(r.Inner[0] > 0 && r.Inner[1] > 0 && r.Outer[0] > 0 && r.Outer[1] > 0) {
		return 1
	}
	seen := r.Outer[0] / r.Inner[0]
	best, off := 1.0, math.Inf(1)
	for _, s := range steps {
		if d := math.Abs(s/seen - 1); d < off {
			best, off = s, d
		}
	}
	if off > zoomSlack || r.Inner[1]*best > r.Outer[1]*(1+zoomSlack) {
		return 1
	}
	return best
}

func orOne(v float64) float64 {
	if v > 0 && !math.IsInf(v, 1) {
		return v
	}
	return 1
}

// mostPixels is more than any screen has on a side.
const mostPixels = 1 << 20

func whole(px float64) int {
	if !(px > 0 && px < mostPixels) {
		return 0
	}
	return int(math.Round(px))
}

// Known is false when the browser does not say how large its screen is.
func (s Screen) Known() bool { return s.W > 0 && s.H > 0 }

// Key names the screen by its size in device pixels: "2560x1440", or with the
// scale of the system where that can be told, "1920x1080@1.25".
func (s Screen) Key() string {
	if s.Base == 0 {
		return fmt.Sprintf("%dx%d", s.W, s.H)
	}
	return fmt.Sprintf("%dx%d@%.4g", s.W, s.H, s.Base)
}

// Guess is the scale of a screen that was never checked.
func (s Screen) Guess() DevicePxPerMM {
	if s.Base > 0 {
		return GuessScreen(s.Base)
	}
	return GuessScreen(s.Ratio)
}

// CSSPx returns how many CSS pixels show a length at true size on this screen
// now, when it has a scale.
func (s Screen) CSSPx(m MM, scale DevicePxPerMM) float64 { return scale.CSSPx(m, s.Ratio, s.Pinch) }

// Match returns the scale of the screen on which an object was matched by a
// frame of some CSS pixels.
func (s Screen) Match(cssPx float64, object MM) (DevicePxPerMM, error) {
	return Calibrate(cssPx*s.Ratio*s.Pinch, object)
}

// roundingPx is how far, in device pixels, two sizes of one screen may lie
// apart at least: browsers round each side to a whole CSS pixel, which at the
// greatest page zoom (5) is two and a half device pixels each way.
const roundingPx = 3

// baseSlack is how far, as a share, two readings of a system's scale may differ.
const baseSlack = 0.01

// Same says whether another report can be of the same screen: its size in
// device pixels is the same but for rounding, and so is the system's scale
// where both are known. Page zoom changes neither.
func (s Screen) Same(o Screen) bool {
	slack := max(roundingPx, int(max(s.Ratio, o.Ratio))+1)
	if !s.Known() || !o.Known() || abs(s.W-o.W) > slack || abs(s.H-o.H) > slack {
		return false
	}
	return s.Base == 0 || o.Base == 0 || math.Abs(s.Base/o.Base-1) <= baseSlack
}

func abs(n int) int {
	if n < 0 {
		return -n
	}
	return n
}
