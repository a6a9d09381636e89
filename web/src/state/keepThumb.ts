// A small picture of the pin, to know a project by.
import type { Drawn } from './store';

/** Long side, px. */
const SIDE = 192;

/** As PNG; nothing where there is no picture, or no room to make one. */
export async function thumbOf(drawn: Drawn | undefined): Promise<Blob | undefined> {
  const pixels = drawn?.shot.pixels;
  if (!pixels) return undefined;
  const k = Math.min(1, SIDE / Math.max(pixels.width, pixels.height));
  const [w, h] = [Math.max(1, Math.round(pixels.width * k)), Math.max(1, Math.round(pixels.height * k))];
  const bitmap = await createImageBitmap(pixels, { resizeWidth: w, resizeHeight: h, resizeQuality: 'high' });
  const canvas = document.createElement('canvas');
  [canvas.width, canvas.height] = [w, h];
  canvas.getContext('2d')?.drawImage(bitmap, 0, 0);
  bitmap.close();
  return new Promise((done) => canvas.toBlob((b) => done(b ?? undefined), 'image/png'));
}
