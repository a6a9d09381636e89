package sight

import (
	"fmt"
	"testing"

	"badgewright/sizing"
)

func BenchmarkStruck(b *testing.B) {
	pin := lightPin(1000, 32)
	for _, c := range []struct {
		fill sizing.Fill
		side Side
		long int
	}{{sizing.Soft, Front, 1000}, {sizing.Hard, Front, 1000}, {sizing.Soft, Back, 1000}, {sizing.Soft, Front, 128}} {
		b.Run(fmt.Sprintf("%s-%s-%d", c.fill, c.side, c.long), func(b *testing.B) {
			look := lookAt(c.fill, c.side, c.long)
			for b.Loop() {
				if _, err := Struck(pin, look, nil); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkFlat(b *testing.B) {
	pin := lightPin(1000, 32)
	for b.Loop() {
		Flat(pin, 1000, plating("gold"), nil)
	}
}
