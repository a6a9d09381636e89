// What is done by hand, as it would be answered and half done.
import type { Gap, Lettered, Recipe } from '../../src/engine/wire.gen';
import type { Under } from '../../src/state/hands';
import type { LineDraft } from '../../src/state/line';
import { FLATS } from './answers';

export const GAP: Gap = { ends: [0.4, 0.62, 0.4, 0.65], width: { mm: 0.8, inches: 0.0315, inMM: '0.8 mm', inInches: '0.03 in' }, open: false };

export const UNDER: Under = { x: 0.3, y: 0.6, area: 41.6, width: 5.2, built: false, gap: GAP, lines: [] };

export const FILLS = {
  enamels: FLATS.filter((f) => f.role === 'enamel').slice(1).map(({ name, rgb }) => ({ name, rgb, drawn: rgb })),
  most: undefined,
};

export const DRAFT: LineDraft = { kind: 'draw-line', width: 0.6, points: [[0.3, 0.55], [0.5, 0.68], [0.72, 0.6]] };

export const HAND_LINES: Recipe[] = [
  { kind: 'draw-line', width: 0, points: [[0.4, 0.62], [0.4, 0.65]] },
  { kind: 'erase-line', width: 0.9, points: [[0.6, 0.2], [0.7, 0.25]] },
];

export const CAPITAL_DRAFT: LineDraft = { kind: 'capital', width: 0, points: [[0.4, 0.62]] };

/** One that holds, one that does not, and one beside the pin. */
export const CAPITALS: Lettered[] = [
  { mark: { x0: 0.4, y0: 0.62, x1: 0.4, y1: 0.56 }, lies: 'raised', height: 1.8, least: 1.5, verdict: 'holds', holdsFrom: 27.9 },
  { mark: { x0: 0.6, y0: 0.8, x1: 0.6, y1: 0.75 }, lies: 'sunk', height: 1.5, least: 2, verdict: 'fails', holdsFrom: 44.2 },
  { mark: { x0: 0.7, y0: 0.3, x1: 0.7, y1: 0.25 }, lies: 'outside', height: 1.6, least: 0, verdict: 'holds', holdsFrom: 0 },
];
