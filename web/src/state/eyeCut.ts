// A square cut out of a picture of the pin, round a place of the working raster.
import type { Picture } from '../engine/wire.gen';

/** Of the long side of the picture, how much the square is. */
const SHARE = 0.3;

export interface Cut {
  x: number;
  y: number;
  side: number;
}

/** Where the square lies, picture px: wholly inside, with the place as near its middle as can be. */
export function cutAt(p: Picture, at: { x: number; y: number }): Cut {
  const side = Math.min(Math.round(SHARE * Math.max(p.w, p.h)), p.w, p.h);
  const within = (v: number, room: number) => Math.round(Math.min(room - side, Math.max(0, v - side / 2)));
  return { x: within(at.x * p.scale + p.dx, p.w), y: within(at.y * p.scale + p.dy, p.h), side };
}

export function cutOut(shot: { picture: Picture; pixels: ImageData }, at: { x: number; y: number }): { pixels: ImageData } {
  const { x, y, side } = cutAt(shot.picture, at);
  const out = new ImageData(side, side);
  for (let row = 0; row < side; row++) {
    const from = 4 * ((y + row) * shot.pixels.width + x);
    out.data.set(shot.pixels.data.subarray(from, from + 4 * side), 4 * row * side);
  }
  return { pixels: out };
}
