package fastener

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

const testLong = 600 // px a side of the struck test shapes

// struck keeps the specimens of the cabinet, by name.
var struck = map[string]*sizing.Badge{}

func advise(t *testing.T, s specimen, choice sizing.PostCount) (*sizing.Badge, Advice) {
	b := struck[s.name]
	if b == nil {
		b = strike(s.shape, 21, testLong, s.longest)
		if s.name != "" {
			struck[s.name] = b
		}
	}
	a, err := Advise(b, sizing.Iron, 1.5, choice)
	require.NoError(t, err, s.name)
	return b, a
}

// One post up to roughly 32-38 mm, two above, three for the very large; long
// shapes sooner: common practice, no published source.
func TestHowManyPosts(t *testing.T) {
	want := map[string]int{
		"disc": 1, "disc-large": 2, "big-disc": 3, "banner": 3, "tiny": 1,
		"cross": 1, "star": 1, "heart": 1, "cloud": 2, "tree": 2, "ring": 2,
		"fish": 2, "tower": 2, "wings": 2, "arrow": 2, "key": 2, "leaning-feather": 2, "buoy-anchor": 1,
	}
	for _, s := range cabinet() {
		_, a := advise(t, s, 0)
		if n, ok := want[s.name]; ok {
			assert.Equal(t, n, a.Count, s.name)
		}
		assert.Equal(t, a.Count, a.Chosen)
		assert.Len(t, a.Posts, a.Count)
		assert.Contains(t, a.Reason, fmt.Sprintf("At %s and", unit.InMM(s.longest, 1)))
	}
}

func TestTwoPostsFromAboutAnInchAndAHalf(t *testing.T) {
	count := func(s shape, mm unit.MM) int {
		_, a := advise(t, specimen{"", mm, s}, 0)
		return a.Count
	}
	round, long := disc(0, 0, 10), oval(0, 0, 15, 5)
	assert.Equal(t, 1, count(round, 32))
	assert.Equal(t, 2, count(round, 38.1))
	assert.Equal(t, 1, count(long, 25))
	assert.Equal(t, 2, count(long, 32), "long shapes sooner")
	assert.Equal(t, 2, count(disc(0, 0, 10).less(disc(0, 0, 6)), 32), "balance off the metal: sooner")
	for mm, before := unit.MM(10), 1; mm < 120; mm += 5 {
		now := count(round, mm)
		assert.GreaterOrEqual(t, now, before, "never fewer for a larger piece")
		before = now
	}
}

func TestTheReasonIsOneSentenceWithNumbers(t *testing.T) {
	_, a := advise(t, specimen{"", 32, disc(0, 0, 10)}, 0)
	assert.Equal(t, "At 32 mm and 9.5 g one post holds; above 36 mm this shape wants two.", a.Reason)
	_, a = advise(t, specimen{"", 32, disc(0, 0, 10).less(disc(0, 0, 6))}, 0)
	assert.Contains(t, a.Reason, "wants two posts, so that it does not turn or droop; one holds up to 29 mm, because its balance point lies off the metal.")
	_, a = advise(t, specimen{"", 45, disc(0, 0, 10)}, 1)
	assert.Equal(t, 2, a.Count)
	assert.Equal(t, 1, a.Chosen)
	assert.Contains(t, a.Reason, "You chose one: it may turn or droop.")
}

// solidWithin is the slow twin of Hidden: every pixel of a circle on the badge.
func solidWithin(b *sizing.Badge, p sizing.Post, r unit.MM) bool {
	cx, cy := p.X.Px(b.Scale)+b.Outline[0], p.Y.Px(b.Scale)+b.Outline[1]
	n := r.Px(b.Scale)
	for y := range b.Sep.H {
		for x := range b.Sep.W {
			dx, dy := float64(x)+0.5-cx, float64(y)+0.5-cy
			if dx*dx+dy*dy <= n*n && b.Sep.Labels[y*b.Sep.W+x] == reduce.None {
				return false
			}
		}
	}
	return true
}

func TestHiddenClutchesAreHiddenAndShownOnesSaidSo(t *testing.T) {
	hidden, shown := 0, 0
	for _, s := range cabinet() {
		for choice := range sizing.PostCount(4) {
			b, a := advise(t, s, choice)
			const slack = 0.3 // mm: a cell and half a pixel
			all := true
			for _, p := range a.Posts {
				all = all && solidWithin(b, p, a.Clutch/2-slack)
				if !a.Hidden {
					continue
				}
				assert.True(t, solidWithin(b, p, a.Clutch/2-slack), "%s, %d posts: a clutch said to be hidden shows", s.name, choice)
			}
			why := strings.Join(a.Why, " ")
			if a.Hidden {
				hidden++
				assert.Contains(t, why, "hidden", s.name)
			} else {
				shown++
				assert.Regexp(t, "shows beyond the edge|would show by", why, s.name)
				assert.False(t, all && solidWithin(b, a.Posts[0], a.Clutch/2+slack) && len(a.Posts) == 1, "%s: hides after all", s.name)
			}
		}
	}
	assert.Greater(t, hidden, 10)
	assert.Greater(t, shown, 5)
}

func TestTwoPostsStandLevelInTheUpperHalfOrAlongANarrowPiece(t *testing.T) {
	along := map[string]bool{}
	for _, s := range cabinet() {
		_, a := advise(t, s, 2)
		l, r := a.Posts[0], a.Posts[1]
		if l.Y != r.Y {
			along[s.name] = true
			assert.Contains(t, strings.Join(a.Why, " "), "along it")
			continue
		}
		assert.Less(t, float64(l.X), float64(r.X), s.name)
		if s.name != "buoy-anchor" { // its posts stand on the upper of two parts
			assert.LessOrEqual(t, float64(l.Y), float64(a.Centre[1])+0.06*float64(s.longest), s.name)
		}
	}
	for _, name := range []string{"tower", "arrow-up", "key", "tree", "leaning-feather"} {
		assert.True(t, along[name], name)
	}
	for _, name := range []string{"disc", "ring", "fish", "wings", "cross", "cloud", "heart", "star", "banner"} {
		assert.False(t, along[name], name)
	}
}

func TestSymmetricArtGetsSymmetricPosts(t *testing.T) {
	for _, s := range cabinet() {
		switch s.name {
		case "disc", "ring", "arrow-up", "tower", "wings", "cross", "tree", "heart", "star", "banner", "tiny":
		default:
			continue
		}
		b, a := advise(t, s, 1)
		assert.InDelta(t, float64(b.Width())/2, float64(a.Posts[0].X), 0.15, s.name)
		_, a = advise(t, s, 2)
		assert.InDelta(t, float64(b.Width()), float64(a.Posts[0].X+a.Posts[1].X), 0.3, s.name)
	}
}

// One post stands above the centre of mass by a stated height wherever a
// hidden clutch allows that near the line of balance.
func TestOnePostStandsHighWhereTheShapeAllows(t *testing.T) {
	allowed := 0
	for _, s := range cabinet() {
		b, a := advise(t, s, 1)
		z, err := ShapeOf(b.Sep, b.Outline)
		require.NoError(t, err)
		p := z.at(b.Scale)
		high := false
		for y := range p.h {
			for x := range p.w {
				q := p.centre(x, y)
				beside := 1.0
				if p.symmetric {
					beside = p.cell
				}
				high = high || math.Abs(q.x-p.CX) < beside && q.y <= p.CY-leastAbove-p.cell && p.plate.at(q) >= rubber/2+edgeMargin
			}
		}
		if high {
			allowed++
			assert.GreaterOrEqual(t, p.CY-p.point(a.Posts[0]).y, leastAbove-p.cell, s.name)
			assert.True(t, a.Hidden, s.name)
		}
	}
	assert.Greater(t, allowed, 8)
}

func TestMirroredArtGivesMirroredPosts(t *testing.T) {
	for _, s := range cabinet() {
		for choice := sizing.PostCount(1); choice <= 3; choice++ {
			if s.name == "tree" && choice == 3 {
				continue // two along the axis of a symmetric piece leave the third left or right
			}
			b, a := advise(t, s, choice)
			_, m := advise(t, specimen{s.name + " mirrored", s.longest, s.shape.mirrored()}, choice)
			require.Len(t, m.Posts, len(a.Posts))
			for _, p := range a.Posts {
				found := false
				for _, q := range m.Posts {
					found = found || math.Hypot(float64(b.Width()-p.X-q.X), float64(p.Y-q.Y)) < 0.35
				}
				assert.True(t, found, "%s, %d posts: %v against %v (width %.2f)", s.name, choice, a.Posts, m.Posts, b.Width())
			}
			assert.InDelta(t, float64(a.Weight), float64(m.Weight), 0.02)
			assert.Equal(t, a.Count, m.Count, s.name)
		}
	}
}

func TestAFinerRasterGivesTheSamePosts(t *testing.T) {
	for _, s := range cabinet()[:8] {
		_, a := advise(t, s, 0)
		fine, err := Advise(strike(s.shape, 21, 2*testLong, s.longest), sizing.Iron, 1.5, 0)
		require.NoError(t, err)
		require.Len(t, fine.Posts, len(a.Posts), s.name)
		for i := range a.Posts {
			assert.InDelta(t, float64(a.Posts[i].X), float64(fine.Posts[i].X), 0.5, s.name)
			assert.InDelta(t, float64(a.Posts[i].Y), float64(fine.Posts[i].Y), 0.5, s.name)
		}
		assert.InEpsilon(t, float64(a.Weight), float64(fine.Weight), 0.002, s.name)
	}
}

// drawn makes a badge of text: # is metal, o a cut-out, the rest background.
func drawn(mmPerCell float64, rows ...string) *sizing.Badge {
	sep := reduce.NewSeparation(len(rows[0]), len(rows))
	sep.Flats = []reduce.Flat{{Role: reduce.Metal}, {Role: reduce.CutOut}}
	for y, row := range rows {
		for x, c := range row {
			if l := strings.IndexRune("#o", c); l >= 0 {
				sep.Labels[y*sep.W+x], sep.Beside[y*sep.W+x] = uint8(l), uint8(l)
			}
		}
	}
	box, _ := sizing.Outline(sep)
	return &sizing.Badge{Sep: sep, Outline: box, Scale: unit.PxPerMM(1 / mmPerCell)}
}

func TestThePostOfADangleGoesOnTheUpperPart(t *testing.T) {
	b := drawn(2,
		"......#.........",
		"................",
		"...#########....",
		"...#########....",
		"...#########....",
		"...#########....",
		"...#########....",
		"...#########....",
		"................",
		".############...",
		".############...",
		".############...",
		".############...",
		".############...",
		".############...",
		".############...",
	)
	a, err := Advise(b, sizing.Brass, 1.5, 1)
	require.NoError(t, err)
	assert.Greater(t, float64(a.Posts[0].Y), 4.0, "not on the small piece at the top")
	assert.Less(t, float64(a.Posts[0].Y), 16.0)
	assert.Contains(t, strings.Join(a.Why, " "), "3 separate parts")
	assert.InDelta(t, (1+6*9+7*12)*4, a.Area, 1e-9)
	assert.InDelta(t, (1+6*9+7*12)*4*1.5*8.53/1000, float64(a.Weight), 1e-9)
}

func TestACutOutKeepsThePostAway(t *testing.T) {
	rows := []string{
		"################",
		"################",
		"################",
		"######oooo######",
		"######oooo######",
		"######oooo######",
		"######oooo######",
		"################",
		"################",
		"################",
		"################",
		"################",
		"################",
		"################",
		"################",
		"################",
	}
	a, err := Advise(drawn(2, rows...), sizing.Iron, 1.5, 1)
	require.NoError(t, err)
	clearOf := math.Hypot(max(0, 12-float64(a.Posts[0].X), float64(a.Posts[0].X)-20), max(0, 6-float64(a.Posts[0].Y), float64(a.Posts[0].Y)-14))
	assert.GreaterOrEqual(t, clearOf, float64(a.Clutch)/2, "%v", a.Posts)
	assert.True(t, a.Hidden)
	assert.InDelta(t, (256-16)*4, a.Area, 1e-9)
}

func TestWhatCannotBeAdvisedIsRefusedInWords(t *testing.T) {
	good := strike(disc(0, 0, 10), 12, 100, 30)
	empty := &sizing.Badge{Sep: reduce.NewSeparation(20, 20), Scale: 1}
	holes := drawn(1, "oooo", "oooo")
	holes.Outline = [4]float64{0, 0, 4, 2}
	for name, f := range map[string]func() (Advice, error){
		"empty":     func() (Advice, error) { return Advise(empty, sizing.Iron, 1.5, 0) },
		"all holes": func() (Advice, error) { return Advise(holes, sizing.Iron, 1.5, 0) },
		"no scale":  func() (Advice, error) { b := *good; b.Scale = 0; return Advise(&b, sizing.Iron, 1.5, 0) },
		"metal":     func() (Advice, error) { return Advise(good, "cheese", 1.5, 0) },
		"thin":      func() (Advice, error) { return Advise(good, sizing.Iron, 0, 0) },
		"thick":     func() (Advice, error) { return Advise(good, sizing.Iron, 50, 0) },
		"nan":       func() (Advice, error) { return Advise(good, sizing.Iron, unit.MM(math.NaN()), 0) },
		"posts":     func() (Advice, error) { return Advise(good, sizing.Iron, 1.5, 4) },
		"fewer":     func() (Advice, error) { return Advise(good, sizing.Iron, 1.5, -1) },
	} {
		_, err := f()
		var r *reduce.Refusal
		if assert.ErrorAs(t, err, &r, name) {
			assert.NotEmpty(t, r.Do, name)
		}
	}
}

func TestThinAndTinyPiecesStillGetPosts(t *testing.T) {
	for _, s := range []specimen{
		{"line", 40, box(-20, -0.2, 20, 0.2)}, {"upright line", 40, box(-0.2, -20, 0.2, 20)},
		{"hoop", 30, disc(0, 0, 20).less(disc(0, 0, 19))}, {"dot", 5, disc(0, 0, 1)},
		{"spray", 30, join(disc(-15, -15, 1), disc(15, 15, 1), disc(-15, 15, 1), disc(15, -15, 1))},
	} {
		for choice := range sizing.PostCount(4) {
			_, a := advise(t, s, choice)
			assert.Len(t, a.Posts, a.Chosen, s.name)
			for _, p := range a.Posts {
				assert.False(t, math.IsNaN(float64(p.X+p.Y)), s.name)
			}
			assert.False(t, a.Hidden, s.name)
		}
	}
}

func BenchmarkAdvise(b *testing.B) {
	for _, s := range cabinet() {
		badge := strike(s.shape, 21, 3400, s.longest) // the silhouette about 1600 px long
		b.Run(s.name, func(b *testing.B) {
			for b.Loop() {
				if _, err := Advise(badge, sizing.Iron, 1.5, 2); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
