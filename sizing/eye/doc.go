// Package eye models what an eye resolves: how large things look from a
// distance, and S-CIELAB (Zhang and Wandell 1996), which blurs a picture as the
// eye does before colours are compared. It knows pictures and distances, and
// nothing of pins.
package eye
