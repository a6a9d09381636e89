// Draws an SVG through an <img>, where its scripts and outside references are
// inert, at the working size. Workers have no <img>, so this runs on the page.
import { draw } from './decode';
import { EngineError } from './errors';
import type { Pixels } from './protocol';
import type { Header } from './wire.gen';

export async function decodeSVG(file: Blob, header: Header): Promise<Pixels> {
  const sized = withSize(await file.text(), header);
  const address = URL.createObjectURL(new Blob([sized], { type: 'image/svg+xml' }));
  try {
    const img = new Image(header.workW, header.workH);
    img.decoding = 'async';
    img.src = address;
    await img.decode();
    return draw(img, header);
  } catch {
    throw cannotDraw('the browser could not draw it');
  } finally {
    URL.revokeObjectURL(address);
  }
}

/** Gives the root a size in pixels, so that every browser draws it at the
 * working size: some refuse an SVG without one, some draw it small first. */
export function withSize(text: string, header: Header): string {
  const doc = new DOMParser().parseFromString(text, 'image/svg+xml');
  const root = doc.documentElement;
  if (root.localName !== 'svg' || doc.getElementsByTagName('parsererror').length > 0) {
    throw cannotDraw('it is not well-formed');
  }
  if (!root.hasAttribute('viewBox')) root.setAttribute('viewBox', `0 0 ${header.w} ${header.h}`);
  root.setAttribute('width', String(header.workW));
  root.setAttribute('height', String(header.workH));
  return new XMLSerializer().serializeToString(doc);
}

function cannotDraw(why: string): EngineError {
  return new EngineError(`This SVG could not be opened: ${why}.`, 'Export it again as a plain SVG, or as PNG.', 'refused');
}
