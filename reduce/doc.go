// Package reduce turns the pixels of a drawing into a base separation: a few
// flat colours and, for every pixel, the flat it belongs to. It knows pixels
// and colour; it knows nothing of millimetres, money or metal thickness.
package reduce
