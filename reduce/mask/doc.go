// Package mask works on rasters of labels: exact distances, connected
// components by runs, centrelines and boundaries. Pixel (x, y) has index
// y*w+x and its centre lies at (x+0.5, y+0.5); what lies off the raster counts
// as a label of its own. It knows nothing of colour or millimetres.
package mask
