package proof

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/sizing"
)

// tally counts what was found of what was planted.
type tally struct{ planted, hit, found, right int }

func (s *tally) precision() float64 { return float64(s.right) / max(float64(s.found), 1) }
func (s *tally) recall() float64    { return float64(s.hit) / max(float64(s.planted), 1) }

// nearMM is how near a difference must be told to where it was planted.
const nearMM = 1.5

// held says whether a difference is the planted one.
func (e *edit) tells(a *Asked, x *Deviation, at []Point) bool {
	if !slices.Contains(e.kinds, x.Kind) {
		return false
	}
	for _, p := range at {
		if within(x.Box, p.X, p.Y, a.px(nearMM)) {
			return true
		}
	}
	return false
}

func TestPlantedDifferencesAreFound(t *testing.T) {
	if testing.Short() && !all() {
		t.Skip("pictures take too long to draw there")
	}
	const seed = 9
	t.Logf("seed %d", seed)
	rnd := rand.New(rand.NewPCG(seed, 0))
	by, scales := map[string]*tally{}, map[float64]*tally{}
	silent, unedited := 0, 0
	for n, d := range designs {
		few := map[int][]int{6: {1}, 9: {3}}
		if !all() && few[n] == nil {
			continue
		}
		b := d.badge(t)
		a, err := Ask(b, nil)
		require.NoError(t, err)
		for i, k := range looks() {
			if !lookedAt(n, i, few) {
				continue
			}
			if k.scale = grown(&d, k.scale); scales[k.scale] == nil {
				scales[k.scale] = &tally{}
			}
			unedited++
			if got := foundIn(t, a, b, k, rnd, d.name+" unedited"); len(got) == 0 {
				silent++
			}
			for j := range edits {
				e := &edits[j]
				if !all() && j%2 != n%2 {
					continue
				}
				c := copied(b)
				at, ok := e.make(a, c.Sep, k, rnd)
				if !ok {
					continue
				}
				if by[e.name] == nil {
					by[e.name] = &tally{}
				}
				got := foundIn(t, a, c, k, rnd, d.name+" "+e.name)
				for _, s := range []*tally{by[e.name], scales[k.scale]} {
					s.count(a, e, got, at)
				}
			}
		}
	}
	t.Logf("unedited: %d of %d silent", silent, unedited)
	for _, e := range edits {
		if s := by[e.name]; s != nil {
			t.Logf("%-22s precision %.3f (%d of %d), recall %.3f (%d of %d)", e.name, s.precision(), s.right, s.found, s.recall(), s.hit, s.planted)
		}
	}
	for _, k := range looks() {
		if s := scales[grown(&designs[6], k.scale)]; s != nil {
			t.Logf("%.1f times: precision %.3f (%d of %d), recall %.3f (%d of %d)", k.scale, s.precision(), s.right, s.found, s.recall(), s.hit, s.planted)
		}
	}
	assert.Equal(t, unedited, silent)
	var sum tally
	for _, s := range by {
		sum.planted, sum.hit, sum.found, sum.right = sum.planted+s.planted, sum.hit+s.hit, sum.found+s.found, sum.right+s.right
	}
	assert.GreaterOrEqual(t, sum.precision(), 0.95)
	assert.GreaterOrEqual(t, sum.recall(), 0.95)
}

// grown is the scale of a look, of this form's scenes; files stay as they are.
func grown(d *design, scale float64) float64 {
	if d.file != "" {
		return scale
	}
	return as(scale)
}

func (s *tally) count(a *Asked, e *edit, got []Deviation, at []Point) {
	s.planted++
	hit := 0
	for i := range got {
		s.found++
		if e.tells(a, &got[i], at) {
			s.right++
			hit = 1
		}
	}
	s.hit += hit
}

// foundIn draws a proof of a pin and lists where it differs from what was asked.
func foundIn(t *testing.T, a *Asked, drawn *sizing.Badge, k look, rnd *rand.Rand, name string) []Deviation {
	t.Helper()
	p, _ := proofOf(t, drawn, k, rnd)
	p.save(t, fmt.Sprintf("%s %.1f", name, k.scale))
	start := time.Now()
	l, err := Find(a, p, nil, -1, nil)
	require.NoError(t, err)
	r, err := Diff(l, Wanted{}, Usual(), nil)
	require.NoError(t, err)
	var out []Deviation
	for _, x := range r.Differences {
		if x.Kind != Mirrored || !k.mirror {
			out = append(out, x)
		}
	}
	t.Logf("%s, %.1f times, %.1f MP, %v:", name, k.scale, float64(p.W*p.H)/1e6, time.Since(start).Round(time.Millisecond))
	for _, x := range out {
		t.Logf("    %s at %.1f, %.1f mm: %s", x.Kind, x.Left, x.Top, x.Words)
	}
	for _, n := range r.Notes {
		t.Logf("    note: %s", n)
	}
	return out
}
