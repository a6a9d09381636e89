package calls

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/wasm/wire"
)

// withFonts gives a session the small fonts of testdata, as the page gives it
// the whole ones.
func withFonts(t *testing.T, s *Session) {
	t.Helper()
	for place, name := range []string{"NotoSans", "NotoSansJP"} {
		file, err := os.ReadFile(filepath.Join("..", "..", "testdata", "fonts", name+"-some.ttf"))
		require.NoError(t, err)
		ask[wire.Font](t, s, "font", wire.FontAsk{Name: name, Place: place}, file)
	}
}

func TestFontsAreKeptByTheirPlaces(t *testing.T) {
	s := NewSession()
	_, err := s.fonts()
	assert.ErrorIs(t, err, errNoFonts)
	withFonts(t, s)
	have, _ := ask[wire.Font](t, s, "font", wire.FontAsk{}, nil)
	assert.Equal(t, []int{0, 1}, have.Places)
	set, err := s.fonts()
	require.NoError(t, err)
	again, err := s.fonts()
	require.NoError(t, err)
	assert.Same(t, set, again)

	_, err = s.Do("font", []byte(`{"name":"Odd","place":2}`), Job{Bytes: []byte("no font")})
	assert.ErrorContains(t, err, "not TrueType")
	_, err = s.Do("font", []byte(`{"name":"Odd","place":99}`), Job{Bytes: []byte{0, 1, 0, 0}})
	assert.Error(t, err)
}
