// What sight starts from and what is seen of the canned lighthouse, for panels seen alone.
import type { Contrast, EyeUsual, Glance, Length, Neighbours, Pair, Ranked, Reading, ReadingAnswer, ReadingAt, Seen, Vision } from '../../src/engine/wire.gen';

export const EYE_USUAL: EyeUsual = {
  distances: [{ name: 'in the hand', mm: 400 }, { name: 'on the lapel', mm: 1000 }, { name: 'across a table', mm: 2000 }],
  acuity: 1, thresholds: { gap: 1, letter: 16, letterBest: 20, noticed: 5, colour: 10, metal: 20, lightness: 3 },
  cloths: [{ name: 'denim', rgb: { r: 62, g: 82, b: 112 } }, { name: 'undyed canvas', rgb: { r: 214, g: 203, b: 180 } }],
  leastDistance: 100, greatestDistance: 20000, leastAcuity: 0.05, greatestAcuity: 3,
};

const length = (mm: number): Length => ({ mm, inches: mm / 25.4, inMM: mm > 0 ? `${mm} mm` : '', inInches: mm > 0 ? `${(mm / 25.4).toFixed(2)} in` : '' });

const found = (r: Partial<Reading>): Reading => ({
  detail: 'line', flat: 5, beside: [0, 2], x: 330, y: 300, x0: 320, y0: 260, x1: 340, y1: 340, path: [330, 260, 330, 300, 334, 340], length: 3.4,
  measured: 0.14, arcmin: 0.49, error: 0.01, need: 0.29, better: 0, parted: 'fails', partedFrom: length(61.7), difference: 7.1, noticed: 'holds',
  noticedFrom: length(21.8), needPx: 0, built: false, ...r,
});

const FINDINGS: Reading[] = [
  found({}),
  found({ detail: 'area', flat: 3, beside: [5, 5], x: 400, y: 560, path: [340, 555, 400, 560, 470, 556], measured: 0.23, arcmin: 0.78, partedFrom: length(39.6), difference: 0.9, noticed: 'fails', noticedFrom: length(0) }),
  found({ detail: 'lettering', flat: 2, x: 400, y: 900, x0: 300, y0: 870, x1: 500, y1: 930, path: [], measured: 2, need: 4.65, better: 5.82, partedFrom: length(0), noticed: 'holds' }),
  found({ detail: 'lettering', flat: 2, x: 400, y: 160, x0: 300, y0: 120, x1: 500, y1: 200, path: [], measured: 5, need: 4.65, better: 5.82, parted: 'holds', partedFrom: length(31), noticed: 'holds' }),
  found({ detail: 'edge', beside: [0, -2], x: 470, y: 690, path: [450, 690, 490, 692], parted: 'cannot-tell', needPx: 2400, noticed: 'cannot-tell' }),
];

const at = (name: string, mm: number, r: Partial<ReadingAt>): ReadingAt => ({
  name, viewing: { distance: mm, acuity: 1 }, gap: length(Number((mm * 0.00029089).toFixed(2))), letter: length(4.65), letterBest: length(5.82),
  findings: [], fail: 0, unsure: 0, lines: 1, areas: 1, readFrom: length(24.7), words: 'everything can be told apart', ...r,
});

const LAPEL = at('on the lapel', 1000, { fail: 3, unsure: 1, lines: 0.994, areas: 0.978, readFrom: length(61.7), words: 'the lettering is too small to read' });

export const READING: ReadingAnswer = {
  at: { ...LAPEL, findings: FINDINGS },
  rows: [at('in the hand', 400, {}), LAPEL, at('across a table', 2000, { fail: 9, lines: 0.41, areas: 0.77, readFrom: length(0), words: '41 % of the lines and 77 % of the areas can be told apart' })],
};

export const GLANCE: Glance = {
  from: 10, to: 80, made: [{ from: length(41.5), to: length(0) }], madeSays: 'holds from 41.5 mm', readFrom: length(61.7), lettersFrom: length(0), asked: length(34),
  canMake: false, canRead: false, words: 'As drawn it holds from 41.5 mm; everything can be read on the lapel from 61.7 mm; you asked for 34 mm.',
};

const seen = (vision: Vision, colour: number, lightness: number, least: number, metal?: Contrast): Seen => ({
  vision, colour, lightness, ...(metal ? { dark: metal, bright: { colour, lightness } } : {}),
  byColour: colour >= least ? 'holds' : 'fails', byLightness: lightness >= 3 ? 'holds' : 'fails',
});

const pair = (p: Pick<Pair, 'kind' | 'a' | 'b'> & Partial<Pair>, colours: [number, number, number, number], lightness: number): Pair => {
  const metal = p.kind === 'metal';
  const eyes: Vision[] = ['normal', 'protan', 'deutan', 'tritan'];
  return {
    x: 405, y: 255, length: 12.5, width: p.kind === 'across-line' ? 0.25 : 0, ...p,
    seen: eyes.map((v, i) => seen(v, colours[i] ?? 0, lightness, metal ? 20 : 10, metal ? { colour: 36, lightness: 3.6 } : undefined)),
  };
};

const PAIRS: Pair[] = [
  pair({ kind: 'touching', a: 0, b: 1, x: 560, y: 760 }, [5.1, 5.1, 4.8, 12], 1.2),
  pair({ kind: 'metal', a: 4, b: -1 }, [18.4, 19.4, 17.2, 18.3], 1.7),
  pair({ kind: 'across-line', a: 2, b: 3, x: 400, y: 500 }, [48, 31, 9.2, 51], 4.4),
  pair({ kind: 'metal', a: 0, b: -1, x: 200, y: 330 }, [52, 50, 49, 52], 5.2),
];

const ranked = (plating: Ranked['plating'], name: string, r: Partial<Ranked>): Ranked => ({
  plating, name, chosen: false, fits: true, fail: [], dim: [4], share: 1, decides: 3, nearest: 24, words: 'told from every colour; signal red comes nearest', ...r,
});

export const NEIGHBOURS: Neighbours = {
  pairs: PAIRS,
  platings: [
    ranked('black-nickel', 'black nickel', {}),
    ranked('copper', 'copper', { share: 0.91, fail: [3], nearest: 15.6, words: 'reads as one with signal red' }),
    ranked('gold', 'gold', { chosen: true, share: 0.82, fail: [4], decides: 4, nearest: 18.4, words: 'reads as one with lamp yellow' }),
    ranked('antique-gold', 'antique gold', { fits: false, share: 0.8, fail: [4], decides: 4, nearest: 13, words: 'reads as one with lamp yellow' }),
  ],
  ideas: [
    { pair: 0, recipe: { kind: 'build-border', width: 0, points: [[0.7, 0.76]] }, shift: 0, fixes: 1, breaks: 0, words: 'Build a line between night blue and sea green.' },
    { pair: 0, edit: { op: 'recolour', flat: 1, rgb: { r: 72, g: 150, b: 146 } }, shift: 6.1, fixes: 1, breaks: 0, words: 'Make sea green lighter.' },
    { pair: 1, edit: { op: 'recolour', flat: 4, rgb: { r: 216, g: 175, b: 47 } }, shift: 2.6, fixes: 1, breaks: 0, words: 'Make lamp yellow darker.' },
    { pair: 1, plating: 'black-nickel', shift: 0, fixes: 1, breaks: 0, words: 'Plate it in black nickel.' },
  ],
  words: '2 of 4 pairs that meet read as one',
};
