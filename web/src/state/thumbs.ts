// A small picture of each drawing as it was brought.
import { effect, signal, untracked } from '@preact/signals';
import type { Opened, Thumbnail } from '../engine/wire.gen';
import { atHand } from './desk';
import { drawingOf } from './project';
import * as s from './store';

/** Long side, device px: sharp where it is drawn on the finest screens. */
const LONG_SIDE = 160;

export interface Thumb {
  of: Opened;
  about: Thumbnail;
  pixels: ImageData;
}

/** By the drawing's name in the engine. */
export const thumbs = signal<Readonly<Record<string, Thumb>>>({});

/** Asks for the picture of whatever drawing comes onto the sheet: called once. */
export function followThumbs(): () => void {
  return effect(() => {
    const id = s.asked.value && drawingOf(s.asked.value);
    const of = id ? s.opened.value[id] : undefined;
    if (!of || !atHand.value) return;
    untracked(() => {
      if (thumbs.value[of.drawing]?.of !== of) void askThumb(of);
    });
  });
}

async function askThumb(of: Opened): Promise<void> {
  try {
    const got = await atHand.value?.call('thumbnail', { drawing: of.drawing, longSide: LONG_SIDE }, { lane: 'thumbnail' });
    if (!got?.bytes) return;
    const { w, h } = got.answer;
    const pixels = new ImageData(new Uint8ClampedArray(got.bytes.buffer, got.bytes.byteOffset, 4 * w * h), w, h);
    thumbs.value = { ...thumbs.value, [of.drawing]: { of, about: got.answer, pixels } };
  } catch {
    // Overtaken by another drawing: the sentence beside it says enough.
  }
}
