package wall

import (
	"maps"
	"math"
	"math/rand/v2"
	"os"
	"runtime"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// fault is a planted place, in px: what is found there, and how long it is.
type fault struct {
	kind       sizing.Kind
	x, y, long float64
}

// planted is a closed drawing, a round badge of five stripes between metal lines
// and a rim, with faults planted by the rule: gaps cut in lines and rim, lines
// thinned and stripes narrowed below the limit over more than it, and beside
// them lines and stripes as much above it, which are none.
type planted struct {
	mm     float64 // across
	tilt   float64
	px     float64 // to the mm
	c      float64 // middle, px
	gaps   []cutAt
	thin   []cutAt // of a line: what is left is wide
	narrow []cutAt // of a stripe
	rim    []cutAt // long is an angle here
	faults []fault
}

// cutAt is a change to line or stripe k over a length in mm round place u along it.
type cutAt struct {
	k             int
	u, long, wide float64
}

// The make of the planted drawings, in mm: the usual limits of soft enamel are
// 0.20, 0.30 and 0.30.
const (
	plantedLine = 0.34
	plantedRim  = 0.7
)

// plantedPx is how many pixels each way of coming in has across.
var plantedPx = map[string]int{"clean": 760, "jpeg": 900, "photo": 1200}

func plant(mm, tilt float64, across int, rnd *rand.Rand) *planted {
	p := &planted{mm: mm, tilt: tilt, px: 0.92 * float64(across) / mm, c: float64(across) / 2}
	jitter := func() float64 { return (rnd.Float64() - 0.5) * mm / 20 }
	for i, wide := range []float64{0.2, 0.4, 0.7} {
		p.gaps = append(p.gaps, cutAt{k: 0, u: (float64(i)-1)*mm/7 + jitter(), wide: 0, long: wide})
	}
	p.thin = []cutAt{
		{k: 1, u: -mm/4 + jitter(), long: 1.4, wide: 0.12}, {k: 1, u: jitter(), long: 0.6, wide: 0.14},
		{k: 1, u: mm/4 + jitter(), long: 1.4, wide: 0.25}, // enough
	}
	p.narrow = []cutAt{
		{k: 3, u: -mm/4 + jitter(), long: 1.2, wide: 0.18}, {k: 3, u: jitter(), long: 0.8, wide: 0.22},
		{k: 3, u: mm/4 + jitter(), long: 1.2, wide: 0.38}, // enough
	}
	p.rim = []cutAt{{u: 1.45 * math.Pi, long: 0.4}, {u: 0.6 * math.Pi, long: 0.6}}
	p.tell()
	return p
}

// lineAt is how far line k lies from the middle, mm.
func (p *planted) lineAt(k int) float64 { return (float64(k) - 1.5) * p.mm / 6 }

// tell notes where the faults lie.
func (p *planted) tell() {
	at := func(kind sizing.Kind, u, v, long float64) {
		s, c := math.Sincos(p.tilt)
		p.faults = append(p.faults, fault{kind, p.c + p.px*(u*c-v*s), p.c + p.px*(u*s+v*c), p.px * long})
	}
	for _, g := range p.gaps {
		at(sizing.Gap, g.u, p.lineAt(g.k), g.long)
	}
	for _, g := range p.thin {
		if g.wide < 0.2 {
			at(sizing.ThinLine, g.u, p.lineAt(g.k), g.long)
		}
	}
	for _, g := range p.narrow {
		if g.wide < 0.3 {
			at(sizing.NarrowArea, g.u, p.lineAt(g.k)-p.mm/12, g.long)
		}
	}
	for _, g := range p.rim {
		r := p.mm/2 - plantedRim/2
		at(sizing.Gap, r*math.Cos(g.u), r*math.Sin(g.u), plantedRim)
	}
}

// label says what lies at a place of the raster.
func (p *planted) label(x, y float64) uint8 {
	s, c := math.Sincos(p.tilt)
	x, y = (x-p.c)/p.px, (y-p.c)/p.px
	u, v := x*c+y*s, y*c-x*s
	r := math.Hypot(u, v)
	if r > p.mm/2 {
		return sky
	}
	if r > p.mm/2-plantedRim && !p.inRim(u, v) || p.onLine(u, v) || p.besideNarrow(u, v) {
		return steel
	}
	stripe := 0
	for k := range 4 {
		if v > p.lineAt(k) {
			stripe = k + 1
		}
	}
	return [5]uint8{red, blue, gold, red, blue}[stripe]
}

func (p *planted) inRim(u, v float64) bool {
	for _, g := range p.rim {
		s, c := math.Sincos(g.u)
		if u*c+v*s > 0 && math.Abs(v*c-u*s) < g.long/2 {
			return true
		}
	}
	return false
}

func (p *planted) onLine(u, v float64) bool {
	for k := range 4 {
		wide := plantedLine
		for _, g := range append(append([]cutAt{}, p.gaps...), p.thin...) {
			if g.k == k && math.Abs(u-g.u) < g.long/2 {
				wide = g.wide
			}
		}
		if math.Abs(v-p.lineAt(k)) < wide/2 {
			return true
		}
	}
	return false
}

// besideNarrow is metal that leaves a channel in the middle of a stripe.
func (p *planted) besideNarrow(u, v float64) bool {
	for _, g := range p.narrow {
		from := v - (p.lineAt(g.k) - p.mm/12)
		if math.Abs(u-g.u) < g.long/2 && math.Abs(from) > g.wide/2 && math.Abs(from) < p.mm/12 {
			return true
		}
	}
	return false
}

// score counts what was found of what was planted, and what was not planted.
type score struct{ planted, hit, found, right int }

func (s *score) precision() float64 { return float64(s.right) / max(float64(s.found), 1) }
func (s *score) recall() float64    { return float64(s.hit) / max(float64(s.planted), 1) }

// tally holds what was found against what was planted. Only what fails counts,
// and a place that was planted counts once, however often it is found.
func (p *planted) tally(found []sizing.Finding, scores map[sizing.Kind]*score) {
	hit := make([]bool, len(p.faults))
	of := func(k sizing.Kind) *score {
		if scores[k] == nil {
			scores[k] = &score{}
		}
		return scores[k]
	}
	for _, f := range found {
		if f.Verdict != sizing.Fails {
			continue
		}
		s := of(f.Kind)
		s.found++
		for i, q := range p.faults {
			if q.kind == f.Kind && math.Hypot(f.X-q.x, f.Y-q.y) <= q.long/2+0.15*p.px+2 {
				hit[i] = true
				s.right++
				break
			}
		}
	}
	for i, q := range p.faults {
		of(q.kind).planted++
		if hit[i] {
			of(q.kind).hit++
		}
	}
}

// What is asked of each way a drawing comes in: precision and recall of each
// kind, and how much is found that nobody planted, against what was. The aim is
// 0.98 for clean art and 0.9 for photographs. Of all sizes and tilts, 135 faults
// each way, these were found: all of the clean ones and nothing else; of the JPEGs
// 0.973 of the gaps, all of the rest, and two missing lines instead; of the
// photographs all, and one narrow area too many.
var floors = map[string]struct{ precision, recall, extra float64 }{
	"clean": {0.98, 0.98, 0}, "jpeg": {0.95, 0.92, 0.05}, "photo": {0.9, 0.9, 0.05},
}

// plantedAll in the environment makes the test go through every size at every
// tilt; it takes minutes.
const plantedAll = "BADGEWRIGHT_PLANTED"

func TestPlantedFaultsAreFound(t *testing.T) {
	const seed = 61
	t.Logf("seed %d", seed)
	for _, way := range taken {
		t.Run(way, func(t *testing.T) {
			if runtime.GOOS == "js" && (way != "clean" || testing.Short()) {
				t.Skip("reducing pictures takes too long there")
			}
			scores := foundPlanted(t, way, rand.New(rand.NewPCG(seed, 0)))
			planted, extra := 0, 0
			for _, kind := range slices.Sorted(maps.Keys(scores)) {
				s, floor := scores[kind], floors[way]
				t.Logf("%-5s %-11s precision %.3f (%d of %d), recall %.3f (%d of %d)", way, kind, s.precision(), s.right, s.found, s.recall(), s.hit, s.planted)
				if s.planted == 0 {
					extra += s.found
					continue
				}
				planted += s.planted
				assert.GreaterOrEqual(t, s.precision(), floor.precision, "%s", kind)
				assert.GreaterOrEqual(t, s.recall(), floor.recall, "%s", kind)
			}
			require.Greater(t, planted, 40)
			assert.LessOrEqual(t, float64(extra), floors[way].extra*float64(planted), "found though not planted")
		})
	}
}

func foundPlanted(t *testing.T, way string, rnd *rand.Rand) map[sizing.Kind]*score {
	sizes, tilts := []float64{19, 22, 25, 32, 38}, []float64{0, 0.35, 1.1}
	scores := map[sizing.Kind]*score{}
	for i, mm := range sizes {
		for k, tilt := range tilts {
			p := plant(mm, tilt, plantedPx[way], rnd)
			if (i+k)%3 > 0 && os.Getenv(plantedAll) == "" {
				continue
			}
			s := flatDrawing(t, plantedPx[way], way, 3, p.label)
			p.tally(measured(t, s).Findings(unit.PxPerMM(p.px), soft), scores)
		}
	}
	return scores
}
