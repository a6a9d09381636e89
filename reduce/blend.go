package reduce

const (
	// blendRadii is how near, in radii, two steps of one gradient lie.
	blendRadii = 3
	// blendSides is the least number of calm sides two steps must share.
	blendSides = 24
	// blendRim is the part of the smaller step's calm sides that must be shared.
	blendRim = 8
	// blendWide is how long the shared sides must be against the side of a
	// square of the smaller step's size, in parts of 100: steps of a gradient
	// lie along one another, stain touches at spots.
	blendWide = 60
)

// blendJump is how much of the way from one colour to the other, in parts of
// 100, the picture may jump where two steps of a gradient touch, by grade. A
// real edge jumps nearly all of it, even a faint one; grain hides a part.
var blendJump = [...]int64{exact: 40, wandering: 26, grainy: 75}

// contact is what is seen where two flats touch in calm places.
type contact struct {
	sides int32
	jump  int32 // sum of differences, levels
}

// contactsOf looks at all places where calm pixels of two flats touch. The
// contact of labels j < k is at k*256+j.
func contactsOf(label []uint8, pix []uint32, w, h int) []contact {
	all := make([]contact, 256*256)
	touch := func(i, j int) {
		a, b := label[i], label[j]
		if a < b {
			a, b = b, a
		}
		c := &all[int(a)<<8|int(b)]
		c.sides++
		c.jump += int32(differ(pix[i], pix[j]))
	}
	for y := 0; y < h; y++ {
		for i := y * w; i < (y+1)*w; i++ {
			l := label[i]
			if l >= loose {
				continue
			}
			if i+1 < (y+1)*w && label[i+1] != l && label[i+1] < loose {
				touch(i, i+1)
			}
			if y+1 < h && label[i+w] != l && label[i+w] < loose {
				touch(i, i+w)
			}
		}
	}
	return all
}

// blends finds gradients: flats that touch without an edge between them. It
// returns for each leaf the first leaf of its gradient.
func blends(leaves []leaf, label []uint8, s *survey) []int {
	touch := contactsOf(label, s.pix, s.w, s.h)
	var size [256]int
	for _, l := range label {
		size[l]++
	}
	rim := make([]int32, len(leaves))
	for k := range leaves {
		for j := range k {
			n := touch[k<<8|j].sides
			rim[k], rim[j] = rim[k]+n, rim[j]+n
		}
	}
	of := alone(len(leaves))
	for k := range leaves {
		for j := range k {
			if s.oneGradient(&leaves[k], &leaves[j], &touch[k<<8|j], min(rim[k], rim[j]), min(size[k], size[j])) {
				tie(of, k, j)
			}
		}
	}
	return of
}

func (s *survey) oneGradient(a, b *leaf, c *contact, rim int32, size int) bool {
	r := trusts[s.grade].radius * blendRadii
	wide := int64(c.sides) * 100 / blendWide
	if wide*wide < int64(size) || c.sides < max(blendSides, rim/blendRim) || a.lab.Distance2(b.lab) > r*r {
		return false
	}
	whole := int64(max(gap(a.rgb.R, b.rgb.R), gap(a.rgb.G, b.rgb.G), gap(a.rgb.B, b.rgb.B)))
	return 100*int64(c.jump) <= blendJump[s.grade]*whole*int64(c.sides)
}

// tie gives all of k's group the name of j's.
func tie(of []int, k, j int) {
	from, to := of[k], of[j]
	for i := range of {
		if of[i] == from {
			of[i] = to
		}
	}
}
