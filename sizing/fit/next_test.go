package fit

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"badgewright/reduce"
)

func TestNextWords(t *testing.T) {
	flats := []reduce.Flat{{ID: 2, Name: "strong blue"}, {ID: 5, Name: "sea"}}
	for _, c := range []struct {
		share, shift float64
		want         string
	}{
		{0.0431, 38, "One enamel fewer: sea joins strong blue; 4.3 % of the pin becomes another colour."},
		{0.21, 7, "One enamel fewer: sea joins strong blue; 21 % of the pin changes clearly."},
		{0.0004, 3, "One enamel fewer: sea joins strong blue; less than 0.1 % of the pin changes a little."},
		{0.5, 1.5, "One enamel fewer: sea joins strong blue; 50 % of the pin changes by hardly anything to see."},
		{0.5, 0.5, "One enamel fewer: sea joins strong blue; 50 % of the pin changes and nobody sees it."},
	} {
		assert.Equal(t, c.want, NextWords(reduce.Joining{Keep: 2, Goes: 5, Share: c.share, Shift: c.shift}, flats))
	}
}
