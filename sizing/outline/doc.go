// Package outline says what the silhouette of a pin is and where it would fail:
// its parts and how they hang together by holes through them, the places where
// the metal itself is thin, its tips and its arms. Lines and colours on it, and
// how small a hole can be cut, are another package's.
//
// Everything is measured once, without any size, and compared with limits at a
// scale. Places are in working pixels of the separation, pixel (x, y) having its
// middle at (x+0.5, y+0.5).
package outline
