// The artist's own mark for the back: its picture decoded as every drawing is,
// and read by the engine.
import { signal } from '@preact/signals';
import { decodeRaster, WHOLE } from '../engine/decode';
import { decodeSVG } from '../engine/svg';
import type { Header, Mark } from '../engine/wire.gen';
import { atHand, sentenceOf } from './desk';
import * as s from './store';

/** Long side at which a mark is decoded, px: eight for each cell that is kept. */
const LONG_SIDE = 1024;

/** Why the last picture was no mark; '' when it was one. */
export const markFault = signal('');

/** Reads a picture and takes it as the mark; what is refused changes nothing. */
export async function bringMark(file: File, take: (mark: Mark) => void): Promise<void> {
  const engine = atHand.value;
  if (!engine) return;
  try {
    const start = new Uint8Array(await file.slice(0, s.hello.value?.headerBytes).arrayBuffer());
    const head = smaller((await engine.call('header', { fileName: file.name, size: file.size }, { bytes: start })).answer);
    const { w, h, bytes } = head.format === 'svg' ? await decodeSVG(file, head, WHOLE) : await decodeRaster(file, head, WHOLE);
    const { answer } = await engine.call('backmark', { w, h }, { bytes });
    markFault.value = '';
    take(answer.mark);
    s.said.value = answer.words;
  } catch (err) {
    markFault.value = sentenceOf(err);
  }
}

function smaller(h: Header): Header {
  const share = Math.min(1, LONG_SIDE / Math.max(h.workW, h.workH));
  return { ...h, workW: Math.max(1, Math.round(h.workW * share)), workH: Math.max(1, Math.round(h.workH * share)) };
}
