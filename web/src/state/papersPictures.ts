// A small picture of the pin on its ground, the same as the large one that is saved.
import { effect, signal, untracked } from '@preact/signals';
import type { Project, ShopGround } from '../engine/wire.gen';
import { papersOpen, planOf } from './papers';
import { pictureOf } from './papersSave';
import * as s from './store';

/** A pale warm grey with room round the pin. */
export const USUAL_GROUND: ShopGround = { rgb: { r: 0xf3, g: 0xf0, b: 0xea }, margin: 0.14, shape: '', shadow: 0.5 };
export const USUAL_PX = 2000;

export const groundOf = (p: Project): ShopGround => planOf(p).ground ?? USUAL_GROUND;
export const pixelsOf = (p: Project): number => planOf(p).pixels || USUAL_PX;

/** Long side of the small picture, px. */
const SMALL = 480;

export const preview = signal('');

let shownFor: Project | undefined;

async function draw(p: Project): Promise<void> {
  try {
    const { bytes } = await pictureOf(p, s.at.value, SMALL, groundOf(p));
    if (!bytes || s.asked.value !== p) return;
    const old = preview.value;
    preview.value = URL.createObjectURL(new Blob([bytes], { type: 'image/png' }));
    if (old) URL.revokeObjectURL(old);
  } catch {
    shownFor = undefined; // overtaken, or refused in words where it is saved
  }
}

/** Keeps the small picture up: called once. */
export function followPreview(): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const stop = effect(() => {
    const p = s.asked.value;
    if (!papersOpen.value || !p || s.behind.value || s.dragged.value) return;
    untracked(() => {
      if (shownFor && sameLook(shownFor, p)) return;
      shownFor = p;
      clearTimeout(timer);
      timer = setTimeout(() => void draw(p), 400);
    });
  });
  return () => {
    clearTimeout(timer);
    stop();
    shownFor = undefined;
  };
}

const sameLook = (a: Project, b: Project) => a.order.designs === b.order.designs && planOf(a).ground === planOf(b).ground;
