// A drawing from its SVG text: with soft edges, or without any.
import { Resvg } from '@resvg/resvg-js';

/** How resvg names its ways of drawing: without anti-aliasing, and with. */
const SHAPES = { crisp: 1, soft: 2 };

function rendered(svg, side, edges) {
  return new Resvg(svg, { fitTo: { mode: 'width', value: side }, shapeRendering: SHAPES[edges], font: { loadSystemFonts: false } }).render();
}

/** RGBA pixels, colours multiplied by alpha. */
export function drawn(svg, side, edges) {
  const r = rendered(svg, side, edges);
  return { w: r.width, h: r.height, data: r.pixels };
}

/** A PNG file's bytes, straight alpha. */
export const drawnPNG = (svg, side, edges) => rendered(svg, side, edges).asPng();
