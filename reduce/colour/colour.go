// Package colour holds the colour science of badgewright: sRGB, OKLab, CIELAB,
// CIEDE2000 and contrast, each held to a published table in its tests.
package colour

// RGB8 is an sRGB colour (IEC 61966-2-1), 8 bits a channel, encoded.
type RGB8 struct {
	R uint8 `json:"r"`
	G uint8 `json:"g"`
	B uint8 `json:"b"`
}
