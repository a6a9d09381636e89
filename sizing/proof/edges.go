package proof

// edge is a place on a border with its unit normal, and the classes it parts: n
// points from in to out.
type edge struct {
	at, n   Point
	in, out uint8
}

// The most places that a picture is laid by, on the outline and within.
const (
	mostOutline = 1600
	mostInner   = 2600
)

// findEdges takes places on the outline and on the borders within at even steps.
func (a *Asked) findEdges() {
	total := 0
	for i := range a.loops {
		total += len(a.loops[i].at)
	}
	every := max(1, total/mostOutline)
	for _, l := range a.loops {
		for i := 0; i < len(l.at); i += every {
			p := l.at[i]
			a.edges = append(a.edges, edge{p, l.out[i], a.classAt(p.X-2*l.out[i].X, p.Y-2*l.out[i].Y), outside})
		}
	}
	a.innerEdges()
}

// innerEdges takes borders between two classes that are both solid.
func (a *Asked) innerEdges() {
	s := a.Badge.Sep
	count := 0
	each := func(f func(x, y, dx, dy int)) {
		for y := 1; y < s.H-1; y++ {
			row := a.class[y*s.W:]
			for x := 1; x < s.W-1; x++ {
				if c := row[x]; c != outside {
					if d := row[x+1]; d != c && d != outside {
						f(x, y, 1, 0)
					}
					if d := row[x+s.W]; d != c && d != outside {
						f(x, y, 0, 1)
					}
				}
			}
		}
	}
	each(func(int, int, int, int) { count++ })
	every := max(1, count/mostInner)
	k := 0
	each(func(x, y, dx, dy int) {
		if k++; k%every == 0 {
			a.innerEdge(x, y, dx, dy)
		}
	})
}

func (a *Asked) innerEdge(x, y, dx, dy int) {
	w := a.Badge.Sep.W
	i, j := y*w+x, (y+dy)*w+x+dx
	c, d := a.class[i], a.class[j]
	far := a.cover(i, c) + a.cover(j, c) - 0.5
	at := Point{float64(x) + 0.5 + float64(dx)*far, float64(y) + 0.5 + float64(dy)*far}
	var n Point
	for v := -normalReach; v <= normalReach; v++ {
		for u := -normalReach; u <= normalReach; u++ {
			px, py := x+u, y+v
			if px < 0 || py < 0 || px >= w || py >= a.Badge.Sep.H {
				continue
			}
			has := a.cover(py*w+px, c)
			n.X -= has * float64(u)
			n.Y -= has * float64(v)
		}
	}
	t := dist(n, Point{})
	if t == 0 {
		return
	}
	n.X, n.Y = n.X/t, n.Y/t
	if n.X*float64(dx)+n.Y*float64(dy) < 0.5 {
		return // a thin line or a corner: its normal is not to be had here
	}
	a.edges = append(a.edges, edge{at, n, c, d})
}

// normalReach is how far round an edge its normal is taken from, px.
const normalReach = 3
