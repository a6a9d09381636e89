package left

import "testing"

func BenchmarkReckon300(b *testing.B)  { benchmark(b, 300) }
func BenchmarkReckon5000(b *testing.B) { benchmark(b, 5000) }

func benchmark(b *testing.B, pieces int) {
	p := plan()
	p.Pieces = pieces
	for b.Loop() {
		if _, f := Reckon(p); len(f) > 0 {
			b.Fatal(f)
		}
	}
}
