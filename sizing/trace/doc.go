// Package trace turns a struck separation into smooth closed curves in
// millimetres: the outline, the metal, every area of enamel, the cut-outs and
// the print.
//
// The raster is first read as a planar map: arcs, along which two classes of
// pixel meet, between junctions, at which three or more do. Each arc is traced
// once and used by the face on either side, forward by one and backward by the
// other, so faces share their borders exactly. Places on an arc are moved to
// the true edge inside the pixel, corners and straight stretches are found,
// and what is left between them is fitted with cubics after Schneider, "An
// Algorithm for Automatically Fitting Digitized Curves", Graphics Gems, 1990.
package trace
