// A small picture of every version as struck, kept up while the strip of
// designs shows them.
import { effect, signal, untracked } from '@preact/signals';
import type { Project } from '../engine/wire.gen';
import { placesIn } from './designs';
import { atHand } from './desk';
import { lookOf } from './look';
import { designOf, drawingOf, pickedOf, versionOf, type Place } from './project';
import * as s from './store';

/** Long side, device px: sharp where it is drawn on the finest screens. */
const LONG_SIDE = 112;

/** The sheet's own questions go first, ms. */
const SETTLE = 700;

export interface Chip {
  look: string;
  pixels: ImageData;
}

/** By design and version. */
export const chips = signal<Readonly<Record<string, Chip>>>({});

export const chipKey = (p: Project, at: Place) => `${designOf(p, at)?.id ?? ''} ${versionOf(p, at)?.id ?? ''}`;

const fresh = (p: Project, at: Place) => chips.peek()[chipKey(p, at)]?.look === lookOf(p, at);

function keep(p: Project, at: Place, pixels: ImageData): void {
  chips.value = { ...chips.peek(), [chipKey(p, at)]: { look: lookOf(p, at), pixels } };
}

/** Keeps the pictures up: called once. */
export function followChips(): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const stopSheet = effect(() => {
    const d = s.front.value;
    if (d) untracked(() => fresh(d.project, pickedOf(d.project)) || keep(d.project, pickedOf(d.project), small(d.shot.pixels)));
  });
  const stopOthers = effect(() => {
    const p = s.history.value?.now;
    if (!p || !atHand.value || s.shown.value?.project !== p) return;
    clearTimeout(timer);
    timer = setTimeout(() => void askOthers(p), SETTLE);
  });
  return () => {
    clearTimeout(timer);
    stopSheet();
    stopOthers();
  };
}

async function askOthers(p: Project): Promise<void> {
  for (const at of placesIn(p)) {
    if (s.history.value?.now !== p) return;
    if (!drawingOf(p, at) || fresh(p, at)) continue;
    try {
      const got = await atHand.value?.call('picture', { picked: s.pickedAt(p, at), view: 'struck', longSide: LONG_SIDE }, { lane: 'chip' });
      if (!got?.bytes) return;
      const { w, h } = got.answer;
      keep(p, at, new ImageData(new Uint8ClampedArray(got.bytes.buffer, got.bytes.byteOffset, 4 * w * h), w, h));
    } catch {
      // The sheet says what is wrong once it lies there.
    }
  }
}

/** The picture on the sheet, made small. */
function small(pixels: ImageData): ImageData {
  const k = Math.min(1, LONG_SIDE / Math.max(pixels.width, pixels.height));
  const canvas = (w: number, h: number) => Object.assign(document.createElement('canvas'), { width: Math.max(1, Math.round(w)), height: Math.max(1, Math.round(h)) });
  const whole = canvas(pixels.width, pixels.height);
  const to = canvas(k * pixels.width, k * pixels.height);
  const pen = to.getContext('2d', { willReadFrequently: true });
  whole.getContext('2d')?.putImageData(pixels, 0, 0);
  if (!pen) return pixels;
  pen.imageSmoothingQuality = 'high';
  pen.drawImage(whole, 0, 0, to.width, to.height);
  return pen.getImageData(0, 0, to.width, to.height);
}
