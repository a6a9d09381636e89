package colour

// Vision is a kind of colour vision.
type Vision string

// The kinds of vision that are looked at: the normal one, and those without one
// of the three cones.
const (
	Normal Vision = "normal"
	Protan Vision = "protan" // without the long-wave cone: red is dark
	Deutan Vision = "deutan" // without the middle-wave cone, the commonest
	Tritan Vision = "tritan" // without the short-wave cone, rare
)

// Visions lists them, the normal one first.
func Visions() []Vision { return []Vision{Normal, Protan, Deutan, Tritan} }

// missing holds the matrices of Machado, Oliveira and Fernandes (IEEE
// Transactions on Visualization and Computer Graphics 15(6), 2009), at full
// severity.
var missing = map[Vision][9]float64{
	Protan: {0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998},
	Deutan: {0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.011820, 0.042940, 0.968881},
	Tritan: {1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.303900},
}

// SeenBy returns the colour as a kind of vision sees it. The matrices go with
// linear light (some tools multiply encoded values and get other colours);
// what leaves sRGB is clipped.
func (c RGB8) SeenBy(v Vision) RGB8 {
	m, ok := missing[v]
	if !ok {
		return c
	}
	l := c.Linear()
	r, g, b := times(&m, l.R, l.G, l.B)
	return Linear{r, g, b}.RGB8()
}

func times(m *[9]float64, r, g, b float64) (float64, float64, float64) {
	return dot(m[0], m[1], m[2], r, g, b), dot(m[3], m[4], m[5], r, g, b), dot(m[6], m[7], m[8], r, g, b)
}
