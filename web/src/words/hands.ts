// Sentences about what is done by hand.
import type { Gap, Recipe, Role } from '../engine/wire.gen';
import type { LineDraft, LineKind } from '../state/line';
import { mm } from './length';
import { MARKING } from './lettering';
import { both, ROLE_WORDS } from './words';

export const THINNEST = 'thinnest';

export const lineWidth = (r: Pick<Recipe, 'width'>) => (r.width > 0 ? mm(r.width, 2) : THINNEST);

export function gapSays(gap: Gap): string {
  const wide = both(gap.width).replaceAll(' ', '\u00a0').replace('\u00a0·', ' ·');
  return gap.open ? `A fill would run out of the drawing through a gap of ${wide}.` : `This area runs on through a gap of ${wide}.`;
}

/** What a step did, for the undo. */
export function filledWords(name: string, closed: boolean): string {
  return `Filled an area with ${name}${closed ? ' and closed a gap' : ''}`;
}

export function madeWords(role: Role, closed: boolean): string {
  return `Made an area ${ROLE_WORDS[role]}${closed ? ' and closed a gap' : ''}`;
}

export const LINE_WORDS = {
  'draw-line': { act: 'Draw a line', short: 'draw', from: 'Draw a line from here', did: 'Drew a line', one: 'Drawn line', how: 'Tap points; tap the last again to end' },
  'erase-line': { act: 'Erase a line', short: 'erase', from: 'Erase line from here', did: 'Erased a stretch of line', one: 'Erased stretch', how: 'Metal goes; tap the last point again to end' },
} as const;

export function handName(kind: LineKind, n: number): string {
  return `${LINE_WORDS[kind].one} ${n}`;
}

/** What is being done on the pin, and how. */
export function draftWords(kind: LineDraft['kind']): { act: string; how: string; did: string } {
  return kind === 'capital' ? MARKING : LINE_WORDS[kind];
}

/** Where the mark stands on the pin, for those who do not see it. */
export function markSays(leftMM: number, topMM: number): string {
  return `${leftMM.toFixed(1)} mm from the left, ${topMM.toFixed(1)} mm from the top`;
}
