package ink

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func top(text string) float64 {
	high := 1e9
	for _, p := range TextPaths(text, Point{0, 0}, 10, Left) {
		for _, q := range p {
			high = min(high, q.Y)
		}
	}
	return -high
}

// A letter with a mark is that letter with the mark above it, or below.
func TestAccentsStandOverTheirLetters(t *testing.T) {
	for mark, lists := range accented {
		bare, written := []rune(lists[0]), []rune(lists[1])
		if !assert.Len(t, written, len(bare), "%q", mark) {
			continue
		}
		for i, r := range written {
			assert.Contains(t, alphabet(), r)
			assert.Equal(t, TextWidth(string(bare[i]), 10), TextWidth(string(r), 10), "%q", r)
			assert.NotEqual(t, TextPaths(string(bare[i]), Point{}, 10, Left), TextPaths(string(r), Point{}, 10, Left), "%q", r)
			switch {
			case mark == '¸':
				assert.Equal(t, top(string(bare[i])), top(string(r)), "%q", r)
			case bare[i] == 'i':
				assert.Len(t, TextPaths(string(r), Point{}, 10, Left), 1+len(pen(accents[mark])), "%q keeps no dot", r)
			default:
				assert.Greater(t, top(string(r)), top(string(bare[i]))+0.5, "%q", r)
			}
			assert.Less(t, top(string(r)), 13.1, "%q", r)
		}
	}
}

func TestWhatTheAlphabetLacksIsListedOnce(t *testing.T) {
	assert.Equal(t, "жλ", Missing("ж Skerry жλ Light"))
	assert.Empty(t, Missing("Ångström & Søn © 2027, 50 %"))
}
