// Answers as the engine would give them, for panels and the sheet shown alone.
import { BACK, BACK_USUAL, CAUTIONS, FIXINGS, PLACES } from './back';
import { EYE_USUAL } from './eye';
import type { Buys, Check, Choice, Choices, Finding, Flat, Hello, Length, Line, Next, Opened, Plating, RGB8, TrueSize } from '../../src/engine/wire.gen';
import { rgbOf } from '../../src/state/project';
import { BLANK, DESIGN } from './project';

const rgb = (hex: string): RGB8 => rgbOf(hex) ?? { r: 0, g: 0, b: 0 };

const flat = (id: number, name: string, hex: string, share: number, role: Flat['role'] = 'enamel'): Flat => ({
  id, name, rgb: rgb(hex), role, locked: false, share,
});

export const FLATS: Flat[] = [
  flat(0, 'night blue', '#1d3f5e', 0.34),
  flat(1, 'sea green', '#2f7f7b', 0.18),
  flat(2, 'cream', '#f3ead3', 0.16),
  flat(3, 'signal red', '#c23b2e', 0.12),
  flat(4, 'lamp yellow', '#f0bd3c', 0.06),
  flat(5, 'ink', '#20222a', 0.14, 'metal'),
];

export const NEXT: Next = {
  joining: { goes: 4, keep: 2, becomes: { r: 0xf3, g: 0xea, b: 0xd3 }, share: 0.06, shift: 31 },
  words: 'One enamel fewer: lamp yellow joins cream; 6.0 % of the pin becomes another colour.',
};

const length = (mm: number): Length => ({
  mm, inches: mm / 25.4, inMM: `${mm} mm`, inInches: `${(mm / 25.4).toFixed(2)} in`,
});

const line = (key: string, what: string, count: number, each: string, amount: string): Line => ({
  key, what, item: key === 'shipping' ? -1 : 0, count, each, amount, says: `EUR\u00a0${Number(amount).toFixed(2)}`, sumSays: count > 1 ? `${count}\u00a0× EUR\u00a0${each}` : '',
});

/** Working raster of the canned drawing. */
export const RASTER = { w: 800, h: 1000 };

const finding = (f: Partial<Finding>): Finding => ({
  kind: 'thin-line', flat: 5, other: -2, ends: [0, 0, 0, 0], area: 0, count: 1, x: 0, y: 0, x0: 0, y0: 0, x1: 0, y1: 0, path: [], length: 3.4,
  thinnest: 0.14, typical: 0.19, error: 0.02, limit: 0.2, verdict: 'fails', needPx: 0, ...f,
});

export const CHECK: Check = {
  flats: {
    ...RASTER, count: 5, flats: FLATS,
    spots: [
      { flat: 0, x: 200, y: 330, pieces: 3 }, { flat: 1, x: 560, y: 850, pieces: 2 }, { flat: 2, x: 400, y: 420, pieces: 2 },
      { flat: 3, x: 400, y: 560, pieces: 2 }, { flat: 4, x: 405, y: 255, pieces: 1 }, { flat: 5, x: 290, y: 765, pieces: 1 },
    ],
  },
  w: 27.2, h: 34, longest: 34, mean: 30.6,
  shown: { w: length(27.2), h: length(34), longest: length(34), mean: length(30.6), inMM: '27.2 × 34 mm', inInches: '1.07 × 1.34 in' },
  scale: 1000 / 34, outline: [0, 0, 800, 1000],
  findings: [
    finding({ x: 330, y: 300, path: [330, 260, 330, 300, 334, 340] }),
    finding({ kind: 'narrow-area', flat: 1, x: 640, y: 800, thinnest: 0.22, limit: 0.3, path: [600, 790, 640, 800, 690, 796] }),
    finding({ x: 470, y: 690, verdict: 'cannot-tell', thinnest: 0.19, error: 0.06, needPx: 2400, path: [450, 690, 490, 692] }),
  ],
  holdsFrom: 41.5, growTo: length(41.5), shrinkTo: length(0), places: PLACES, back: BACK, fixings: FIXINGS, cautions: CAUTIONS, stampProblem: '',
  quote: {
    currency: 'EUR', minorDigits: 2, invented: true, pieces: 100,
    lines: [
      line('die', 'Die, once', 1, '75', '75'), line('pieces', 'Pieces up to 38 mm, price from 100 pieces', 100, '2.25', '225'),
      line('colours', '1 further colour', 100, '0.11', '11'), line('shipping', 'Shipping', 1, '28', '28'),
    ],
    total: '339', perPiece: '3.390', totalSays: 'EUR\u00a0339.00', eachSays: 'about EUR\u00a03.390', needs: [], notes: ['90 pins cost more in all than 100.'],
  },
  quoteProblem: '', verdict: 'fails', words: '2 places will not hold at 34 mm; as drawn, lines and areas hold from 41.5 mm.',
};

const LOSS = [31, 19, 11.2, 7.1, 3.4, 1.2, 0.8, 0.6, 0.5, 0.4, 0.4, 0.4];

export const BUYS: Buys = {
  included: 4,
  rows: LOSS.map((worst, i) => ({
    count: i + 1, mean: worst * 0.38, worst, each: 3.28 + Math.max(0, i - 3) * 0.11,
    perPiece: `about EUR\u00a0${(3.28 + Math.max(0, i - 3) * 0.11).toFixed(3)}`, total: `EUR\u00a0${(328 + Math.max(0, i - 3) * 11).toFixed(2)}`,
    words: i === 0 ? '' : `Enamel number ${i + 1}: ${i > 3 ? 'about EUR\u00a00.11 a piece, EUR\u00a011.00 in all' : 'nothing more to pay'}; the worst-matched tenth of the picture gets closer`,
    swatches: FLATS.filter((f) => f.role === 'enamel').slice(0, i + 1).map((f) => f.rgb),
    seen: { mean: worst * 0.1, worst: worst * 0.3, step: i === 0 ? 0 : worst * 1.2, unseen: worst < 3 },
  })),
};

const plating = (id: string, name: string, dark: string, mid: string, bright: string, softOnly = false): Plating => ({
  id, name, dark: rgb(dark), mid: rgb(mid), bright: rgb(bright), antique: softOnly, softOnly, nickel: name.includes('nickel'),
});

export const HELLO: Hello = {
  starting: [
    { name: 'strong reddish orange', rgb: { r: 217, g: 91, b: 75 } },
    { name: 'light bluish green', rgb: { r: 108, g: 208, b: 190 } },
    { name: 'strong blue', rgb: { r: 43, g: 95, b: 152 } },
  ],
  maxCount: 12, workingLongSide: 1600, headerBytes: 65536,
  platings: [
    plating('gold', 'gold', '#7a5414', '#d9ab4a', '#fff1c2'),
    plating('silver', 'silver (nickel)', '#5d6268', '#c3c8cc', '#ffffff'),
    plating('copper', 'copper', '#6b2f16', '#c97b4e', '#ffdcc0'),
    plating('black-nickel', 'black nickel', '#16181b', '#4a4e54', '#b4bac2'),
    plating('antique-gold', 'antique gold', '#3b2a0e', '#ae8a45', '#f0dca4', true),
  ],
  blank: BLANK, limits: [{ making: 'struck', fill: 'soft', limits: DESIGN.limits }], finishes: [{ role: 'enamel', finishes: ['', 'glitter', 'pearl', 'translucent', 'glow'] }, { role: 'metal', finishes: ['', 'sandblasted', 'textured'] }],
  leastSize: 5, greatestSize: 150, back: BACK_USUAL, eye: EYE_USUAL,
};

export const OPENED: Opened = {
  drawing: 'drawing-1', ...RASTER, ground: 'clear', groundRGB: rgb('#ffffff'), groundNote: 'The background is transparent.',
  clipped: 0, suggested: 5, reason: 'it has five flat colours, and dark lines that became metal.', lined: true, layers: false,
  notes: ['The dark lines became raised metal, so they are not counted as a colour.'], design: DESIGN,
};

const choice = (key: string, what: string, perPiece: string, total: string): Choice => {
  const says = (v: string) => (Number(v) === 0 ? 'the same' : `EUR\u00a0${v.replace('-', '')} ${v.startsWith('-') ? 'less' : 'more'}`);
  return { key, what, known: true, why: '', perPiece, total, pieceSays: says(perPiece), totalSays: says(total) };
};

export const CHOICES: Choices = {
  rows: [
    choice('colour+', 'one colour more', '0.11', '11.00'), choice('colour-', 'one colour fewer', '-0.11', '-11.00'),
    choice('size+', '3 mm larger, which takes two posts', '0.12', '12.00'), choice('size-', '3 mm smaller', '-0.30', '-30.00'),
    choice('fill', 'hard enamel instead of soft', '0.45', '45.00'), choice('post+', 'two posts instead of one', '0.12', '12.00'),
    { ...choice('quantity', '300 pieces instead of 100', '0', '0'), known: false, why: 'This list has no price for so many.', pieceSays: '', totalSays: '' },
  ],
};

export const TRUE_SIZE: TrueSize = {
  screen: '1440x900@1', devicePerMM: 96 / 25.4, perMM: 96 / 25.4, checked: false, words: 'a guess until checked',
  says: 'its size on this screen is a guess until checked', keep: '', card: { w: 85.6, h: 53.98, words: '85.60 × 53.98 mm' },
};
