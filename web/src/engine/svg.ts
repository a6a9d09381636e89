// Draws an SVG through an <img>, where its scripts and outside references are
// inert, at the working size. Workers have no <img>, so this runs on the page.
import { draw, isWhole } from './decode';
import { EngineError } from './errors';
import type { Pixels } from './protocol';
import type { Header, Part } from './wire.gen';

export async function decodeSVG(file: Blob, header: Header, part: Part): Promise<Pixels> {
  const whole = wholeOf(header, part);
  const sized = withSize(textOf(await file.arrayBuffer()), whole);
  const address = URL.createObjectURL(new Blob([sized], { type: 'image/svg+xml' }));
  try {
    const img = new Image(whole.workW, whole.workH);
    img.decoding = 'async';
    img.src = address;
    await img.decode();
    return draw(img, header, part);
  } catch (err) {
    if (err instanceof EngineError) throw err;
    throw cannotDraw('the browser could not draw it');
  } finally {
    URL.revokeObjectURL(address);
  }
}

/** The size at which all is drawn so that its part has the working size. */
function wholeOf(header: Header, part: Part): Header {
  if (isWhole(part)) return header;
  const [x0, y0, x1, y1] = part;
  return { ...header, workW: Math.round(header.workW / (x1 - x0)), workH: Math.round(header.workH / (y1 - y0)) };
}

/** Gives the root a size in pixels, so that every browser draws it at the
 * working size: some refuse an SVG without one, some draw it small first. */
export function withSize(text: string, header: Header): string {
  const doc = new DOMParser().parseFromString(text, 'image/svg+xml');
  const root = doc.documentElement;
  if (root.localName !== 'svg' || doc.getElementsByTagName('parsererror').length > 0) {
    throw cannotDraw('it is not well-formed');
  }
  if (!root.hasAttribute('viewBox')) root.setAttribute('viewBox', ownBox(root));
  root.setAttribute('width', String(header.workW));
  root.setAttribute('height', String(header.workH));
  return new XMLSerializer().serializeToString(doc);
}

/** What an SVG without a viewBox shows: its own size, in its own units. */
function ownBox(root: Element): string {
  const [w, h] = ['width', 'height'].map((name) => cssPixels(root.getAttribute(name) ?? ''));
  if (w && h) return `0 0 ${w} ${h}`;
  throw new EngineError('This SVG does not say how large it is.', 'Export it again with a width and a height, or with a viewBox.', 'refused');
}

/** Absolute units of CSS in px (CSS Values and Units 4, section 6.2). */
const PX: Record<string, number> = { '': 1, px: 1, in: 96, cm: 96 / 2.54, mm: 96 / 25.4, q: 96 / 101.6, pt: 96 / 72, pc: 16 };

/** A length in CSS px; 0 for one that depends on what is round it. */
function cssPixels(length: string): number {
  const [, number = '', unit = ''] = /^\s*([+]?[\d.]+(?:e[+-]?\d+)?)\s*([a-z]*)\s*$/i.exec(length) ?? [];
  return Number(number) * (PX[unit.toLowerCase()] ?? 0);
}

/** Text in the encoding its byte order mark names; UTF-8 without one. */
function textOf(bytes: ArrayBuffer): string {
  const [a, b] = new Uint8Array(bytes, 0, Math.min(2, bytes.byteLength));
  const encoding = a === 0xff && b === 0xfe ? 'utf-16le' : a === 0xfe && b === 0xff ? 'utf-16be' : 'utf-8';
  return new TextDecoder(encoding).decode(bytes);
}

function cannotDraw(why: string): EngineError {
  return new EngineError(`This SVG could not be opened: ${why}.`, 'Export it again as a plain SVG, or as PNG.', 'refused');
}
