// Turns a raster file into pixels at the working size. The browser decodes, so
// rotation and colour profiles are honoured as everywhere else in it.
import { EngineError } from './errors';
import type { Pixels } from './protocol';
import type { Header, Part } from './wire.gen';

/** The part that leaves nothing out, as the engine writes it. */
export const WHOLE: Part = [0, 0, 0, 0];

export const isWhole = (part: Part) => part[2] <= part[0];

type Surface = OffscreenCanvas | HTMLCanvasElement;
type Pen = OffscreenCanvasRenderingContext2D | CanvasRenderingContext2D;

/** Above this many pixels the browser is asked to shrink while it decodes, so
 * that the full-size picture does not live beside its copy: 12 megapixels are
 * 48 MB decoded. */
const SHRINK_WHILE_DECODING = 12e6;

export async function decodeRaster(file: Blob, header: Header, part: Part): Promise<Pixels> {
  const bitmap = await bitmapOf(file, header, isWhole(part));
  try {
    return draw(bitmap, header, part);
  } finally {
    bitmap.close();
  }
}

async function bitmapOf(file: Blob, header: Header, whole: boolean): Promise<ImageBitmap> {
  const options: ImageBitmapOptions = { imageOrientation: 'from-image', premultiplyAlpha: 'premultiply' };
  if (whole && header.w * header.h > SHRINK_WHILE_DECODING) {
    options.resizeWidth = header.workW;
    options.resizeHeight = header.workH;
    options.resizeQuality = 'high';
  }
  try {
    return await createImageBitmap(file, options);
  } catch {
    throw new EngineError(
      `This file says it is ${named(header.format)}, but the browser could not decode it: it may be cut short or damaged.`,
      'Save or export it again, as PNG if you can.',
      'refused',
    );
  }
}

/** Draws a part of a picture at the working size and reads its pixels. */
export function draw(picture: ImageBitmap | HTMLImageElement, header: Header, part: Part): Pixels {
  const w = header.workW;
  const h = header.workH;
  const surface = surfaceOf(w, h);
  const pen = penOf(surface, header.space);
  pen.imageSmoothingEnabled = true;
  pen.imageSmoothingQuality = 'high';
  const [x0, y0, x1, y1] = isWhole(part) ? [0, 0, 1, 1] : part;
  const { width, height } = picture;
  pen.drawImage(picture, x0 * width, y0 * height, (x1 - x0) * width, (y1 - y0) * height, 0, 0, w, h);
  const space = spaceOf(pen);
  const { data } = pen.getImageData(0, 0, w, h, { colorSpace: space });
  // Lets the browser drop the canvas at once instead of when it tidies up.
  surface.width = surface.height = 0;
  return { w, h, space, bytes: new Uint8Array(data.buffer as ArrayBuffer) };
}

function surfaceOf(w: number, h: number): Surface {
  if (typeof OffscreenCanvas !== 'undefined') return new OffscreenCanvas(w, h);
  const canvas = document.createElement('canvas');
  canvas.width = w;
  canvas.height = h;
  return canvas;
}

function penOf(surface: Surface, space: string): Pen {
  const colorSpace = space === 'display-p3' ? 'display-p3' : 'srgb';
  const pen = surface.getContext('2d', { colorSpace, willReadFrequently: true }) as Pen | null;
  if (!pen) {
    throw new EngineError('The browser has no memory left for this drawing.', 'Close other tabs, or export the drawing smaller.', 'refused');
  }
  return pen;
}

/** The space the canvas really has: a browser may not know the one asked for. */
function spaceOf(pen: Pen): 'srgb' | 'display-p3' {
  const has = 'getContextAttributes' in pen ? pen.getContextAttributes().colorSpace : undefined;
  return has === 'display-p3' ? 'display-p3' : 'srgb';
}

function named(format: string): string {
  return format === 'svg' || format === 'avif' ? `an ${format.toUpperCase()}` : `a ${format.toUpperCase()}`;
}
