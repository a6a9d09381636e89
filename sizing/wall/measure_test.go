package wall

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

func pxPerMM(v float64) unit.PxPerMM { return unit.PxPerMM(v) }

func measured(t testing.TB, s *reduce.Separation) *Measured {
	t.Helper()
	m, err := Measure(s, nil)
	require.NoError(t, err)
	return m
}

func median(v []float64) float64 {
	slices.Sort(v)
	return v[len(v)/2]
}

func kinds(found []sizing.Finding, k sizing.Kind) (n []sizing.Finding) {
	for _, f := range found {
		if f.Kind == k {
			n = append(n, f)
		}
	}
	return n
}
