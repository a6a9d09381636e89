//go:build !js

package proof

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"badgewright/reduce"
)

func separated(t testing.TB, file string) *reduce.Separation {
	t.Helper()
	f, err := os.Open(filepath.Join("..", "..", "testdata", "drawings", file))
	require.NoError(t, err)
	defer f.Close()
	d, err := reduce.Decode(f, 1200)
	require.NoError(t, err)
	g, err := reduce.FindGround(d, reduce.GroundAuto)
	require.NoError(t, err)
	a, err := reduce.Analyse(d, g, nil)
	require.NoError(t, err)
	count, _ := a.Suggested()
	s, err := a.Reduce(reduce.Options{Count: count})
	require.NoError(t, err)
	return s
}
