// A pin drawn by hand on a canvas, standing in for the engine's pictures.
import type { View } from '../../src/engine/wire.gen';
import type { Shot } from '../../src/state/store';
import type { Thumb } from '../../src/state/thumbs';
import { OPENED, RASTER } from './answers';

const MARGIN = 0.05;

export function cannedShot(view: View, longSide = 1000): Shot {
  const k = (longSide * (1 - 2 * MARGIN)) / RASTER.h;
  const pad = longSide * MARGIN;
  const w = Math.round(RASTER.w * k + 2 * pad);
  const c = document.createElement('canvas');
  c.width = w;
  c.height = longSide;
  const g = c.getContext('2d');
  if (!g) throw new Error('no canvas');
  g.translate(pad, pad);
  g.scale(k, k);
  if (view === 'back') drawBack(g);
  else drawFront(g, view === 'drawing' ? '#20222a' : '#cfa045');
  return { picture: { w, h: longSide, scale: k, dx: pad, dy: pad }, pixels: g.getImageData(0, 0, w, longSide) };
}

/** The drawing as brought, small. */
export function cannedThumb(): Thumb {
  const { picture, pixels } = cannedShot('drawing', 160);
  return { of: OPENED, about: { w: picture.w, h: picture.h, clear: true, words: 'The drawing as brought, on a transparent background' }, pixels };
}

function outline(g: CanvasRenderingContext2D): void {
  g.beginPath();
  g.roundRect(10, 10, 780, 980, 380);
}

function drawBack(g: CanvasRenderingContext2D): void {
  outline(g);
  g.fillStyle = '#c79a45';
  g.fill();
  g.beginPath();
  g.arc(400, 418, 170, 0, 7);
  g.fillStyle = '#e6c67c';
  g.fill();
}

function drawFront(g: CanvasRenderingContext2D, line: string): void {
  outline(g);
  g.save();
  g.clip();
  const areas: [string, number, number, number, number][] = [
    ['#1d3f5e', 0, 0, 800, 760], ['#2f7f7b', 0, 760, 800, 240], ['#f3ead3', 320, 340, 160, 420],
    ['#c23b2e', 320, 500, 160, 110], ['#f0bd3c', 345, 220, 110, 100],
  ];
  g.strokeStyle = line;
  g.lineWidth = 11;
  for (const [fill, x, y, w, h] of areas) {
    g.fillStyle = fill;
    g.fillRect(x, y, w, h);
    g.strokeRect(x, y, w, h);
  }
  g.restore();
  g.lineWidth = 20;
  g.stroke();
}
