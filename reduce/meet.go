package reduce

// meetings counts, for each pair of labels, the pixel sides at which they
// meet; what lies off the raster is not counted. It is symmetric.
type meetings [256][256]int32

func meetingsOf(label []uint8, w, h int) *meetings {
	m := new(meetings)
	for y := 0; y < h; y++ {
		row := label[y*w : (y+1)*w]
		below := row
		if y+1 < h {
			below = label[(y+1)*w : (y+2)*w]
		}
		below = below[:len(row)]
		last := row[0]
		for x, l := range row {
			if l != last {
				m[l][last]++
				m[last][l]++
				last = l
			}
			if b := below[x]; b != l {
				m[l][b]++
				m[b][l]++
			}
		}
	}
	return m
}
