package reduce

// The colorants of two profiles, as their ICC profiles carry them: XYZ of red,
// green and blue, adapted to D50 (ICC.1:2022, section 9.2; the numbers follow
// from the primaries of IEC 61966-2-1 and SMPTE EG 432-1 by Bradford adaptation).
var (
	colorantsSRGB = [9]float64{0.4361, 0.2225, 0.0139, 0.3851, 0.7169, 0.0971, 0.1431, 0.0606, 0.7139}
	colorantsP3   = [9]float64{0.5151, 0.2412, -0.0011, 0.2920, 0.6922, 0.0419, 0.1571, 0.0666, 0.7841}
)

// sameColorant is how far two profiles' colorants may lie apart and be the
// same: makers round and adapt them differently in the third decimal.
const sameColorant = 0.004

// profile looks into an ICC profile: wide is true unless its colorants are
// those of sRGB, or it is grey, or it is no profile at all.
func profile(icc []byte) (wide, p3 bool) {
	if len(icc) < 132 || !has(icc, 36, "acsp") || has(icc, 16, "GRAY") {
		return false, false
	}
	got, ok := colorants(icc)
	if !ok {
		return true, false // a table profile, or not RGB: let the browser convert it
	}
	return !sameColorants(got, colorantsSRGB), sameColorants(got, colorantsP3)
}

func sameColorants(a, b [9]float64) bool {
	for i := range a {
		if d := a[i] - b[i]; d > sameColorant || d < -sameColorant {
			return false
		}
	}
	return true
}

// colorants reads the tags rXYZ, gXYZ and bXYZ.
func colorants(icc []byte) (xyz [9]float64, ok bool) {
	found := 0
	n := min(int(be32(icc[128:])), (len(icc)-132)/12)
	for i := range n {
		tag := icc[132+12*i:]
		k := -1
		switch string(tag[:4]) {
		case "rXYZ":
			k = 0
		case "gXYZ":
			k = 3
		case "bXYZ":
			k = 6
		}
		at := int64(be32(tag[4:]))
		if k < 0 || at+20 > int64(len(icc)) || !has(icc, int(at), "XYZ ") {
			continue
		}
		for c := range 3 {
			xyz[k+c] = float64(int32(be32(icc[at+8+int64(4*c):]))) / 65536
		}
		found |= 1 << (k / 3)
	}
	return xyz, found == 7
}

// orientation reads EXIF tag 0x0112 of the first directory (EXIF 2.32, TIFF
// 6.0): 1..8, or 0 when it is not stated. The block may begin with "Exif\0\0".
func orientation(b []byte) int {
	if has(b, 0, "Exif\x00") && len(b) > 6 {
		b = b[6:]
	}
	if len(b) < 8 {
		return 0
	}
	u16, u32 := be16, be32
	switch {
	case has(b, 0, "II*\x00"):
		u16, u32 = le16, le32
	case !has(b, 0, "MM\x00*"):
		return 0
	}
	at := int64(u32(b[4:]))
	if at+2 > int64(len(b)) {
		return 0
	}
	n := int64(u16(b[at:]))
	for i := range n {
		e := at + 2 + 12*i
		if e+12 > int64(len(b)) {
			return 0
		}
		if u16(b[e:]) == 0x0112 {
			if v := int(u16(b[e+8:])); v >= 1 && v <= 8 {
				return v
			}
			return 0
		}
	}
	return 0
}
