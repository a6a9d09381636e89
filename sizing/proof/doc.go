// Package proof holds a maker's proof, or a photograph of a finished pin,
// against the struck pin: it finds the pin in the picture, lays it on the struck
// separation and lists where the two differ, in mm and in CIEDE2000.
//
// Places of the pin are in working px of its separation, places of the picture in
// px of the picture, both with the origin at the upper left corner and y down. A
// Warp takes the first to the second.
package proof
