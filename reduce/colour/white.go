package colour

// LabFromD50 brings CIELAB values given under D50, as print tables give them,
// to D65, by Bradford adaptation of their tristimulus values.
func LabFromD50(l Lab) Lab { return l.xyz(d50).fromD50().lab(d65) }

// fromD50 carries D50 tristimulus values to D65 (Bradford, as CSS Color 4 prints it).
func (c XYZ) fromD50() XYZ {
	return XYZ{
		dot(0.955473421488075, -0.02309845494876471, 0.06325924320057072, c.X, c.Y, c.Z),
		dot(-0.0283697093338637, 1.0099953980813041, 0.021041441191917323, c.X, c.Y, c.Z),
		dot(0.012314014864481998, -0.020507649298898964, 1.330365926242124, c.X, c.Y, c.Z),
	}
}

// xyz returns the tristimulus values of CIELAB under a white (CIE 15).
func (l Lab) xyz(w XYZ) XYZ {
	y := (l.L + 16) / 116
	x, z := y+l.A/500, y-l.B/200
	return XYZ{w.X * labPower(x), w.Y * labPower(y), w.Z * labPower(z)}
}

// labPower undoes labRoot.
func labPower(t float64) float64 {
	const d, k = 6.0 / 29, 24389.0 / 27 // CIE 15, in exact form
	if t > d {
		return t * t * t
	}
	return (float64(116*t) - 16) / k
}
