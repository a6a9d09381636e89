// Repairs as the engine would offer them.
import type { Finding, Length, MendAll, Offers, Recipe } from '../../src/engine/wire.gen';
import { CHECK } from './answers';

const length = (mm: number): Length => ({ mm, inches: mm / 25.4, inMM: `${mm} mm`, inInches: `${(mm / 25.4).toFixed(2)} in` });

export const REPAIRS: Recipe[] = [
  { kind: 'thicken-line', width: 0, points: [[0.3, 0.55], [0.5, 0.6]] },
  { kind: 'widen-area', width: 0, points: [[0.6, 0.3], [0.7, 0.3]] },
  { kind: 'widen-area', width: 0, points: [[0.62, 0.32], [0.7, 0.34]] },
  { kind: 'drop-area', width: 0, points: [[0.4, 0.8]] },
];

export const OFFERS: Offers = {
  side: 96, across: length(4), why: '',
  offers: [
    { words: 'Thicken this stretch to 0.2 mm, into the larger area beside it.', recipes: REPAIRS.slice(0, 1), gentle: true, change: { mm2: 0.12, share: 0.0003, words: '0.12 mm², 0.03 % of the pin' } },
    { words: 'Let this thin stretch go.', recipes: [{ kind: 'drop-thin', width: 0, points: [[0.3, 0.55], [0.5, 0.6]] }], gentle: false, change: { mm2: 0.2, share: 0.0005, words: '0.2 mm², 0.05 % of the pin' } },
  ],
};

export const NO_OFFERS: Offers = { ...OFFERS, side: 0, offers: [], why: 'There is no room here to thicken the line without closing an area. Draw it with more room, take a line out, or make the pin larger.' };

const left = (f: Finding | undefined): MendAll['left'] => (f ? [{ finding: f, why: NO_OFFERS.why }] : []);

export const MENDED: MendAll = {
  recipes: REPAIRS, before: 4, left: left(CHECK.findings[0]), change: { mm2: 1.26, share: 0.0029, words: '1.26 mm², 0.29 % of the pin' },
};

export const FOUND = { share: 1, running: false, search: { least: 29, most: 29, tried: 8, found: true, done: true }, size: length(14.5) };
