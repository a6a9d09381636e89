package demand

import "testing"

func BenchmarkAskUpTo5000(b *testing.B) {
	q := question(three(60, 140, 400))
	q.Look = []int{50, 100, 200, 500, 1000}
	for b.Loop() {
		if _, f := Ask(q); len(f) > 0 {
			b.Fatal(f)
		}
	}
}
