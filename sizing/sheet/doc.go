// Package sheet makes the papers that go to a maker: the spec sheet and the
// layers, on a small base that every paper shares. Page has the sheets and what
// is drawn on them, Fonts the letters, Art the curves of a pin at a scale.
//
// Everything on paper is in mm from the upper left of the sheet, y down; the
// size of type alone is in points. The same input gives the same bytes, every
// run and on every machine: today is passed in.
package sheet
