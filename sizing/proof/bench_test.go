package proof

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

// BenchmarkAProof finds, lays and compares a proof of about 2.5 megapixels of a
// pin that was read before, as the page does.
func BenchmarkAProof(b *testing.B) {
	pin := designs[9].badge(b)
	a, err := Ask(pin, nil)
	require.NoError(b, err)
	p, _ := proofOf(b, pin, look{scale: as(0.95), turn: 0.2, ground: white, metal: gold, page: true, quality: 85}, rand.New(rand.NewPCG(1, 0)))
	b.ReportMetric(float64(p.W*p.H)/1e6, "megapixels")
	for b.Loop() {
		l, err := Find(a, p, nil, -1, nil)
		require.NoError(b, err)
		_, err = Diff(l, Wanted{}, Usual(), nil)
		require.NoError(b, err)
	}
}

// BenchmarkReadingAPin prepares a pin for its proofs.
func BenchmarkReadingAPin(b *testing.B) {
	pin := designs[9].badge(b)
	for b.Loop() {
		_, err := Ask(pin, nil)
		require.NoError(b, err)
	}
}
