// Package sight draws what the eye sees: a badge as a struck enamel pin from
// the front and from behind, the flat drawing, and the drawing as brought.
//
// Every picture of a badge at one long side shares one frame, so that one can
// take the place of another. Light comes from the upper left in all of them.
// Colours on a screen are a guide; the look of metal and enamel is made by eye
// and has no published source.
package sight
