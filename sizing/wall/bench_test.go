package wall

import (
	"sync"
	"testing"

	"badgewright/reduce"
	"badgewright/sizing"
)

// big is a drawing of 2.5 megapixels.
var big = sync.OnceValue(func() *reduce.Separation { return lighthouse(1581, 9, 5) })

const benchScale = 50 // px per mm: 32 mm high

var benchLimits = sizing.DefaultLimits(sizing.Struck, sizing.Soft)

func BenchmarkMeasure(b *testing.B) {
	s := big()
	for b.Loop() {
		measured(b, s)
	}
}

func BenchmarkFindings(b *testing.B) {
	m := measured(b, big())
	for b.Loop() {
		m.Findings(benchScale, benchLimits)
	}
}

func BenchmarkFindingsAllTooThin(b *testing.B) {
	m := measured(b, big())
	for b.Loop() {
		m.Findings(2*benchScale, benchLimits)
	}
}

func BenchmarkBuilderFirst(b *testing.B) {
	s := big()
	for b.Loop() {
		build(b, NewBuilder(s))
	}
}

func BenchmarkApply(b *testing.B) {
	builder := NewBuilder(big())
	for b.Loop() {
		build(b, builder)
	}
}

func build(b testing.TB, builder *Builder) {
	recipes := []sizing.Recipe{{Kind: sizing.OuterEdge}, {Kind: sizing.BuildLines}}
	if _, err := builder.Apply(recipes, benchScale, benchLimits); err != nil {
		b.Fatal(err)
	}
}

func BenchmarkSuggest(b *testing.B) {
	s := big()
	for b.Loop() {
		Suggest(s)
	}
}
