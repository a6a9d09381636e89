// Package sizing holds the plain values that the rooms of sizing share: the
// badge at a size, what a maker can hold, trouble spots, posts and weight, and
// the order with its designs and versions. Only sizing knows millimetres.
package sizing
