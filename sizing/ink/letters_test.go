package ink

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestEveryCharacterIsDrawnAndNoTwoAlike(t *testing.T) {
	seen := map[string]rune{}
	for r := range drawn {
		l := letterOf(r)
		assert.NotEmpty(t, l.paths, "%q", r)
		for _, p := range l.paths {
			for _, q := range p {
				assert.GreaterOrEqual(t, q.X, -0.3, "%q sticks out at the left", r)
				assert.LessOrEqual(t, q.X, l.width+0.3, "%q sticks out at the right", r)
				assert.GreaterOrEqual(t, q.Y, -3.2, "%q hangs too low", r)
				assert.LessOrEqual(t, q.Y, capUnits+0.7, "%q stands too high", r)
			}
		}
		key := fmt.Sprintf("%.2f %.2f", l.width, l.paths)
		assert.Zero(t, seen[key], "%q is drawn as %q", r, seen[key])
		seen[key] = r
	}
	for _, r := range "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789.,:;-+×·²()/%" {
		assert.Contains(t, drawn, r)
	}
}

func TestCapitalsHaveTheHeightAskedFor(t *testing.T) {
	for _, r := range "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789" {
		low, high := 1e9, -1e9
		for _, p := range TextPaths(string(r), Point{50, 100}, 40, Left) {
			for _, q := range p {
				low, high = min(low, q.Y), max(high, q.Y)
			}
		}
		assert.InDelta(t, 60, low, 0.5, "%q", r)
		if r != 'Q' {
			assert.InDelta(t, 100, high, 0.5, "%q", r)
		}
	}
}

func TestLettersStandWhereTheyAreAligned(t *testing.T) {
	ends := func(a Align) (x0, x1 float64) {
		x0, x1 = 1e9, -1e9
		for _, p := range TextPaths("H 1 H", Point{200, 50}, 20, a) {
			for _, q := range p {
				x0, x1 = min(x0, q.X), max(x1, q.X)
			}
		}
		return x0, x1
	}
	w := TextWidth("H 1 H", 20)
	x0, x1 := ends(Left)
	assert.InDelta(t, 200, x0, 1e-9)
	assert.InDelta(t, 200+w, x1, 1e-9)
	x0, x1 = ends(Right)
	assert.InDelta(t, 200-w, x0, 1e-9)
	assert.InDelta(t, 200, x1, 1e-9)
	x0, x1 = ends(Middle)
	assert.InDelta(t, 400, x0+x1, 1e-9)
	assert.NotEmpty(t, TextPaths("ж", Point{}, 10, Left), "what the alphabet lacks is a box and not nothing")
}
