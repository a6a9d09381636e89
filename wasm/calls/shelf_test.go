package calls

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestShelfDropsWhatWasUnusedLongest(t *testing.T) {
	s := newShelf[int](2)
	s.put("a", 1)
	s.put("b", 2)
	_, ok := s.get("a")
	assert.True(t, ok)
	s.put("c", 3)
	_, ok = s.get("b")
	assert.False(t, ok)
	v, ok := s.get("a")
	assert.True(t, ok)
	assert.Equal(t, 1, v)
	s.dropIf(func(key string) bool { return key == "a" })
	_, ok = s.get("a")
	assert.False(t, ok)
	_, ok = s.get("c")
	assert.True(t, ok)
}
