// Sentences of the sheet before drawing.
import type { Canvas } from '../engine/wire.gen';
import type { Kept } from '../state/plan';
import { mm } from './length';
import { FILL_WORDS, MAKING_WORDS } from './words';

const made = (p: Kept) => `${mm(p.mm)}, ${MAKING_WORDS[p.making]}, ${FILL_WORDS[p.fill]}`;

export function plannedNote(p: Kept): string {
  return `It starts as you planned it: ${made(p)}.`;
}

export function plannedSays(p: Kept): string {
  return `The next drawing you open starts as planned here: ${made(p)}.`;
}

/** The numbers as lines of text, to be kept beside the drawing. */
export function beforeText(c: Canvas, p: Kept): string {
  return [
    `Pin: ${made(p)}`,
    `Canvas: ${c.w} × ${c.h} px (${c.scale})`,
    `The pin fills a box of ${c.box}; keep detail ${c.safe}.`,
    ...c.needs.map((n) => `${n.what}: ${n.size} (${n.beside})`),
  ].join('\n');
}

export const FINENESS = {
  fine: { mark: '✓', class: 'holds' },
  rough: { mark: '~', class: 'cannot-tell' },
  coarse: { mark: '✕', class: 'fails' },
} as const;
