// Makers compared and a table read, as the engine would answer.
import type { CellError, Comparison, ComparePoint, PriceFileRead, PriceList, Quote } from '../../src/engine/wire.gen';
import { CHECK } from './answers';
import { LIST } from './project';

export const OTHER: PriceList = { ...LIST, id: 'anvil', name: 'Anvil & Tide, invented' };

const point = (quantity: number, draw: number): ComparePoint => ({
  quantity, total: draw.toFixed(2), draw, totalSays: `EUR\u00a0${draw.toFixed(2)}`, eachSays: `about EUR\u00a0${(draw / quantity).toFixed(3)}`,
});

const run = (fixed: number, rows: readonly [from: number, to: number, each: number][]) =>
  rows.flatMap(([from, to, each]) => [point(from, fixed + from * each), point(to, fixed + to * each)]);

export const COMPARISON: Comparison = {
  currency: 'EUR',
  makers: [
    { list: LIST.id, name: LIST.name, invented: true, points: run(103, [[50, 99, 3.3], [100, 299, 2.25], [300, 500, 1.7]]), now: point(100, 328), problem: '' },
    { list: OTHER.id, name: OTHER.name, invented: true, points: run(190, [[50, 99, 2.6], [100, 299, 1.9], [300, 500, 1.5]]), now: point(100, 380), problem: '' },
  ],
  ranges: [
    { from: 1, to: 49, maker: -1, words: '1 to 49 pieces: nobody here has a price.' },
    { from: 50, to: 248, maker: 0, words: '50 to 248 pieces: Skerry Light, invented is cheapest.' },
    { from: 249, to: 500, maker: 1, words: 'From 249 pieces: Anvil & Tide, invented is cheapest.' },
  ],
  beyond: [
    { what: 'Days of making', says: ['15 (usual)', '20 (usual) and 9 (rush)'], differs: true },
    { what: 'Fewest of a design', says: ['50', '50'], differs: false },
    { what: 'Faulty pieces', says: ['Made again when told of within 14 days.', 'not said'], differs: true },
  ],
};

export const OPEN_QUOTE: Quote = {
  ...CHECK.quote,
  needs: [{ cell: 'shape.cutOut.rate', what: '2 further cut-outs', says: 'The list does not say what this costs: 2 further cut-outs.' }],
  landed: {
    good: 97, sold: 92, perGood: '3.495', perSold: '3.685', goodSays: 'about EUR\u00a03.495', soldSays: 'about EUR\u00a03.685',
    words: '100 pieces came, 3 set aside for flaws, 5 given away, 92 to sell.',
  },
  into: { currency: 'USD', total: '366.12', perPiece: '3.661', totalSays: 'about USD\u00a0366.12', eachSays: 'about USD\u00a03.661', rateSays: 'at USD\u00a01.08 for EUR\u00a01, of 2026-11-20' },
};

export const FAULTS: CellError[] = [{ cell: 'pieces.breaks[1].unit[2]', what: '100000000 is too much for one charge; look for a missing decimal point.' }];

export const READ: PriceFileRead = {
  list: LIST, notes: ['Read with the sizes down and the pieces across.'], words: '3 quantities by 4 sizes read; one cell has to be looked at.',
  problems: [{ row: 3, column: 2, text: '1,250', what: '“1,250” can mean two things. Write 1250 or 1.25.' }],
};
