// A maker's proof as pixels: a picture as every drawing is decoded, or a page of
// a PDF.
import { decodeRaster, WHOLE } from '../engine/decode';
import { decodeSVG } from '../engine/svg';
import { atHand } from './desk';
import * as s from './store';

/** A proof at the raster it is compared at. */
export interface ProofShot {
  pixels: ImageData;
  /** Pages of the PDF it is from; 1 for a picture. */
  pages: number;
  page: number;
  /** Pixels in a millimetre of the paper, for a page of a PDF. */
  perMM?: number;
}

/** The long side at which a page is rendered, px: fine enough for lines of
 * .1 mm on a pin that takes a fifth of the page. */
const PAGE_SIDE = 2400;

const isPDF = async (file: Blob) => new TextDecoder('latin1').decode(await file.slice(0, 1024).arrayBuffer()).includes('%PDF-');

export async function readProof(file: Blob, name: string, page = 1): Promise<ProofShot> {
  return (await isPDF(file)) ? readPage(file, page) : readPicture(file, name);
}

async function readPage(file: Blob, page: number): Promise<ProofShot> {
  const { openPDF } = await import('../engine/pdf');
  const doc = await openPDF(file);
  try {
    const number = Math.min(Math.max(1, page), doc.count);
    return { ...(await doc.render(number, PAGE_SIDE)), pages: doc.count, page: number };
  } finally {
    doc.close();
  }
}

async function readPicture(file: Blob, name: string): Promise<ProofShot> {
  const engine = atHand.value;
  if (!engine) throw new Error('The engine is not there yet.');
  const bytes = new Uint8Array(await file.slice(0, s.hello.value?.headerBytes).arrayBuffer());
  const { answer: head } = await engine.call('header', { fileName: name, size: file.size }, { bytes });
  // Every proof is compared in sRGB.
  const { w, h, bytes: data } = await (head.format === 'svg' ? decodeSVG(file, head, WHOLE) : decodeRaster(file, { ...head, space: 'srgb' }, WHOLE));
  return { pixels: new ImageData(new Uint8ClampedArray(data.buffer), w, h), pages: 1, page: 1 };
}
