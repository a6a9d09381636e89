package reduce

import "badgewright/reduce/colour"

// Mosaic is a drawing averaged over blocks of pixels, in linear light, and how
// much of each block belongs to which leaf: what the flat drawing of any count
// looks like from where blocks are too small to be seen.
type Mosaic struct {
	W, H, Block int
	R, G, B     []float32 // of the drawing; where it has no flats, of the ground
	// Enamel is how much of each block is enamel, 0..1.
	Enamel []float32
	desk   desk
	first  []int32 // of each block, into tiles; one more at the end
	tiles  []tile
}

// tile is what a leaf has of a block: a share, and the light of the drawing in
// that share.
type tile struct {
	bough   uint8
	share   float32
	r, g, b float32
}

// lights holds the linear light of each 8-bit level.
var lights = func() (t [256]float32) {
	for v := range t {
		t[v] = float32(colour.Decode(float64(v) / 255))
	}
	return t
}()

// Mosaic averages the drawing with the edits done over blocks of a side in px.
func (a *Analysis) Mosaic(edits []Edit, block int, ground colour.RGB8) *Mosaic {
	m := &Mosaic{W: (a.w + block - 1) / block, H: (a.h + block - 1) / block, Block: block, desk: a.replay(edits, false)}
	n := m.W * m.H
	m.R, m.G, m.B, m.Enamel = make([]float32, n), make([]float32, n), make([]float32, n), make([]float32, n)
	m.first = make([]int32, 1, n+1)
	l := layer{a: a, f: &m.desk.f, boughs: len(m.desk.boughs), ground: ground, tiles: make([]tile, m.W*len(m.desk.boughs)), touched: make([][]uint8, m.W)}
	for k := range m.desk.boughs {
		l.enamel[k] = m.desk.boughs[k].role == Enamel
	}
	for y := 0; y < m.H; y++ {
		l.lay(m, y)
		m.finish(&l)
	}
	return m
}

// layer gathers the tiles of one row of blocks.
type layer struct {
	a       *Analysis
	f       *fates
	boughs  int
	enamel  [256]bool
	ground  colour.RGB8
	tiles   []tile    // boughs to a block
	touched [][]uint8 // boughs met in each block, in the order they were met
}

// lay adds the pixels of row by of blocks. A block that reaches past the
// drawing is filled up with ground.
func (l *layer) lay(m *Mosaic, by int) {
	part := 1 / float32(m.Block*m.Block)
	for y := by * m.Block; y < (by+1)*m.Block; y++ {
		for bx := 0; bx < m.W; bx++ {
			at := by*m.W + bx
			for x := bx * m.Block; x < (bx+1)*m.Block; x++ {
				c := l.lightAt(x, y)
				m.R[at] += float32(c[0] * part)
				m.G[at] += float32(c[1] * part)
				m.B[at] += float32(c[2] * part)
				if x < l.a.w && y < l.a.h {
					l.share(bx, y*l.a.w+x, part, &c)
				}
			}
		}
	}
}

// lightAt is the light of a pixel: of the ground where nothing is drawn.
func (l *layer) lightAt(x, y int) [3]float32 {
	if x < l.a.w && y < l.a.h {
		if i := y*l.a.w + x; l.f.label[i] != None {
			p := l.a.pix[i]
			return [3]float32{lights[p&255], lights[p>>8&255], lights[p>>16&255]}
		}
	}
	return [3]float32{lights[l.ground.R], lights[l.ground.G], lights[l.ground.B]}
}

// share gives a pixel to the leaves it belongs to. One that is partly metal or
// ground is left as it is drawn: what becomes of its line is another matter.
func (l *layer) share(bx, i int, part float32, c *[3]float32) {
	a, b := l.f.label[i], l.f.beside[i]
	if a == None || b == None || !l.enamel[a] || !l.enamel[b] {
		return
	}
	if a == b {
		l.add(bx, a, part, c)
		return
	}
	own := float32(part * float32(l.f.cover[i]) / 255)
	l.add(bx, a, own, c)
	l.add(bx, b, part-own, c)
}

func (l *layer) add(bx int, bough uint8, share float32, c *[3]float32) {
	t := &l.tiles[bx*l.boughs+int(bough)]
	if t.share == 0 {
		l.touched[bx] = append(l.touched[bx], bough)
	}
	t.share += share
	t.r += float32(share * c[0])
	t.g += float32(share * c[1])
	t.b += float32(share * c[2])
}

// finish moves the tiles of a row of blocks into the mosaic.
func (m *Mosaic) finish(l *layer) {
	for bx := range l.touched {
		at := len(m.first) - 1
		for _, k := range l.touched[bx] {
			t := &l.tiles[bx*l.boughs+int(k)]
			t.bough = k
			m.tiles = append(m.tiles, *t)
			m.Enamel[at] += t.share
			*t = tile{}
		}
		l.touched[bx] = l.touched[bx][:0]
		m.first = append(m.first, int32(len(m.tiles)))
	}
}

// Flat is the same of the flat drawing at a count of enamels. What is no enamel
// is as it was drawn.
func (m *Mosaic) Flat(count int) (r, g, b []float32) {
	flats, table := m.desk.flats(count)
	n := len(m.R)
	r, g, b = append(make([]float32, 0, n), m.R...), append(make([]float32, 0, n), m.G...), append(make([]float32, 0, n), m.B...)
	for at := range r {
		for _, t := range m.tiles[m.first[at]:m.first[at+1]] {
			k := table[t.bough]
			if k == None || flats[k].Role != Enamel {
				continue
			}
			c := flats[k].RGB
			r[at] += float32(t.share*lights[c.R]) - t.r
			g[at] += float32(t.share*lights[c.G]) - t.g
			b[at] += float32(t.share*lights[c.B]) - t.b
		}
	}
	return r, g, b
}
