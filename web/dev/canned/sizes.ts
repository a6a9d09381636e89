// The sizes that hold for the demo lighthouse, and the canvas for a usual pin, as the engine gives them.
import type { Canvas, Shares, Sizes, SizesFor } from '../../src/engine/wire.gen';
import type { Wish } from '../../src/state/plan';
import { DESIGN } from './project';

/** From 10 mm up, in steps of one; zero past the end. */
const curve = (lines: number[], areas: number[]): Shares[] => Array.from({ length: 71 }, (_, i) => ({ lines: lines[i] ?? 0, areas: areas[i] ?? 0 }));

const size = (mm: number) => ({ mm, inches: mm / 25.4, inMM: mm > 0 ? `${mm} mm` : '', inInches: mm > 0 ? `${(mm / 25.4).toFixed(2)} in` : '' });

const row = (r: Pick<SizesFor, 'making' | 'fill' | 'name' | 'curve'> & { from: number; now?: boolean }): SizesFor => ({
  making: r.making, fill: r.fill, name: r.name, curve: r.curve, now: r.now ?? false, limits: DESIGN.limits,
  ranges: [{ from: size(r.from), to: size(0) }], says: `holds from ${r.from} mm`, lacks: false,
});

export const SIZES: Sizes = {
  by: 'longest', from: 10, to: 80,
  rows: [
    row({
      making: 'struck', fill: 'soft', name: 'struck, soft enamel', from: 48.4, now: true,
      curve: curve([0.8842, 0.7673, 0.7247, 0.6952, 0.2348, 0.2278, 0.0162, 0.0161, 0.016, 0.0159, 0.0157, 0.0052, 0.0052, 0.0052, 0.0052, 0.0052, 0.0052, 0.0052, 0.0052, 0.0052, 0.0051, 0.0051, 0.0051, 0.0051, 0.0051, 0.0051, 0.005, 0.005, 0.005, 0.005, 0.0049, 0.0049, 0.0049],
        [0.0751, 0.0619, 0.0431, 0.0362, 0.0277, 0.0162, 0.0146, 0.0111, 0.0092, 0.0087, 0.0081, 0.0079, 0.0077, 0.0066, 0.0055, 0.0052, 0.0049, 0.0046, 0.0046, 0.0043, 0.0036, 0.0026, 0.0026, 0.0026, 0.0026, 0.0026, 0.0026, 0.0026, 0.0026, 0.0026, 0.0026, 0.0001, 0.0001, 0.0001, 0.0001, 0.0001, 0.0001, 0.0001, 0.0001]),
    }),
    row({
      making: 'struck', fill: 'hard', name: 'struck, hard enamel', from: 56.4,
      curve: curve([0.9708, 0.9407, 0.9118, 0.8479, 0.7658, 0.7316, 0.7124, 0.2809, 0.2419, 0.2317, 0.2278, 0.0185, 0.0161, 0.0161, 0.016, 0.0159, 0.0159, 0.0052, 0.0052, 0.0052, 0.0052, 0.0052, 0.0052, 0.0052, 0.0052, 0.0052, 0.0052, 0.0052, 0.0051, 0.0051, 0.0051, 0.0051, 0.0051, 0.0051, 0.0051, 0.005, 0.005, 0.005, 0.005, 0.0049, 0.0049, 0.0049, 0.0049],
        [0.1205, 0.0849, 0.0675, 0.0571, 0.0401, 0.0366, 0.0279, 0.0245, 0.0156, 0.011, 0.0094, 0.0092, 0.0088, 0.0086, 0.008, 0.0078, 0.0058, 0.0057, 0.0055, 0.0053, 0.0049, 0.0046, 0.0046, 0.0037, 0.0034, 0.0027, 0.0026, 0.0026, 0.0026, 0.0026, 0.0026, 0.0026, 0.0026, 0.0026, 0.0026, 0.0026, 0.0026, 0.0026, 0.0001, 0.0001, 0.0001, 0.0001, 0.0001, 0.0001, 0.0001, 0.0001, 0.0001]),
    }),
    row({
      making: 'cast', fill: 'soft', name: 'cast', from: 64.5,
      curve: curve([0.9942, 0.988, 0.9708, 0.9421, 0.9172, 0.8692, 0.7814, 0.7272, 0.7095, 0.6892, 0.6016, 0.0185, 0.0161, 0.0161, 0.016, 0.0159, 0.0159, 0.0052, 0.0052, 0.0052, 0.0052, 0.0052, 0.0052, 0.0052, 0.0052, 0.0052, 0.0052, 0.0052, 0.0052, 0.0052, 0.0052, 0.0052, 0.0052, 0.0052, 0.0052, 0.0051, 0.0051, 0.0051, 0.0051, 0.0051, 0.0051, 0.0051, 0.0051, 0.0051, 0.005, 0.005, 0.005, 0.005, 0.005, 0.0049, 0.0049, 0.0049, 0.0049, 0.0049],
        [0.1328, 0.1301, 0.1181, 0.08, 0.0652, 0.0565, 0.0431, 0.037, 0.0282, 0.0276, 0.0162, 0.0148, 0.0098, 0.0094, 0.0092, 0.0088, 0.0086, 0.008, 0.0079, 0.0077, 0.0058, 0.0057, 0.0055, 0.0053, 0.0049, 0.0046, 0.0046, 0.0046, 0.0042, 0.0033, 0.0027, 0.0026, 0.0026, 0.0026, 0.0026, 0.0026, 0.0026, 0.0026, 0.0026, 0.0026, 0.0026, 0.0026, 0.0026, 0.0026, 0.0026, 0.0001, 0.0001, 0.0001, 0.0001, 0.0001, 0.0001, 0.0001, 0.0001, 0.0001, 0.0001]),
    }),
  ],
};

const first = SIZES.rows[0];
export const THOUGHT = { key: 'line', mm: 0.25 } as const;
export const THOUGHT_ROW: SizesFor | undefined = first && { ...first, name: 'what if', now: false, ranges: [{ from: size(52.5), to: size(0) }], says: 'holds from 52.5 mm' };

export const WISH: Wish = { mm: 32, making: 'struck', fill: 'soft', limits: DESIGN.limits, own: undefined };

export const CANVAS: Canvas = {
  w: 1800,
  h: 1800,
  recommended: true,
  perMM: 40,
  perInch: 1016,
  scale: '40 px to the millimetre, 1016 to the inch',
  size: { mm: 32, inches: 1.2598425196850394, inMM: '32 mm', inInches: '1.26 in' },
  box: '32 × 32 mm',
  safe: '0.6 mm inside the outline',
  needs: [
    { key: 'line', px: 8, exact: 8, mm: 0.2, what: 'No brush under', size: '8 px', beside: '0.2 mm', why: 'A thinner line of metal breaks in the die or is polished away.' },
    { key: 'gap', px: 12, exact: 12, mm: 0.3, what: 'No gap under', size: '12 px', beside: '0.3 mm', why: 'Between two lines; enamel does not flow into a narrower one.' },
    { key: 'edge', px: 12, exact: 12, mm: 0.3, what: 'Outer edge at least', size: '12 px', beside: '0.3 mm', why: 'The metal that runs round the whole pin.' },
    { key: 'area', px: 20, exact: 20, mm: 0.5, what: 'Colour areas at least', size: '20 × 20 px', beside: '0.25 mm²', why: 'Too little room for a drop of enamel otherwise. Other shapes need as much in all.' },
    { key: 'cut-out', px: 60, exact: 60, mm: 1.5, what: 'Cut-outs at least', size: '60 px', beside: '1.5 mm', why: 'A hole right through, at its narrowest. Holes of a free shape want casting.' },
    { key: 'bridge', px: 60, exact: 60, mm: 1.5, what: 'Bridges at least', size: '60 px', beside: '1.5 mm', why: 'Metal that holds two parts together, so that it does not bend.' },
    { key: 'capitals', px: 60, exact: 60, mm: 1.5, what: 'Capitals at least', size: '60 px', beside: '1.5 mm', why: 'Raised letters of metal, with strokes of 8 px, and gaps as above.' },
    { key: 'sunk', px: 80, exact: 80, mm: 2, what: 'Sunk capitals at least', size: '80 px', beside: '2 mm', why: 'Letters of enamel in metal, with strokes of 12 px.' },
  ],
  fineness: 'fine',
  says: 'Fine enough: 0.2 mm is 8 px wide here, so one pixel more or less does no harm.',
  why: '40 px to the millimetre (1016 to the inch): the thinnest thing that the maker holds, 0.2 mm, is then 8 px wide. 2 would do for the tool to judge it by; more makes it easy to draw, and much more only makes a heavy file.',
};
