import { describe, expect, it } from 'vitest';
import { CHECK } from '../../dev/canned/answers';
import { COMPARISON } from '../../dev/canned/order';
import { linesOf } from '../widgets/MakersChart';
import { billSays, crossSays, rangeAt, ticks } from './order';

describe('the order in a sentence', () => {
  it('names the maker, the total and about how much each', () => {
    expect(billSays(CHECK.quote, 'Skerry')).toBe('100 pins from Skerry: EUR\u00a0339.00 in all, about EUR\u00a03.390 each.');
  });

  it('says that a total is not the whole one', () => {
    const needs = [{ cell: 'shape.cutOut.rate', what: '1 cut-out', says: '' }];
    expect(billSays({ ...CHECK.quote, needs }, 'Skerry')).toBe('100 pins from Skerry: EUR\u00a0339.00 so far; one price is not known yet.');
  });
});

describe('makers compared', () => {
  it('cross where the engine says so', () => {
    expect(crossSays(COMPARISON)).toBe(COMPARISON.ranges.map((r) => r.words).join(' '));
    expect(rangeAt(COMPARISON.ranges, 100)?.maker).toBe(0);
    expect(rangeAt(COMPARISON.ranges, 500)?.maker).toBe(1);
  });

  it('do not cross where one is cheapest all along, or none has a price', () => {
    const all = { from: 1, to: 500, words: '' };
    expect(crossSays({ ...COMPARISON, ranges: [{ ...all, maker: 1 }] })).toBe('Anvil & Tide, invented is cheapest at every number.');
    expect(crossSays({ ...COMPARISON, ranges: [{ ...all, maker: -1 }] })).toBe('None of these makers has a price.');
  });

  it('have a line that ends where they have no price', () => {
    const point = (quantity: number) => ({ quantity, total: '', draw: quantity, totalSays: '', eachSays: '' });
    const m = { list: 'a', name: 'A', invented: true, problem: '', points: [50, 99, 200].map(point) };
    expect(linesOf(m, [1, 50, 99, 100, 199, 200]).map((run) => run.map((p) => p.quantity))).toEqual([[50, 99], [200]]);
  });
});

describe('an axis', () => {
  it('has three to six round marks', () => {
    for (const most of [1, 7, 93, 339, 1100, 20000]) {
      const all = ticks(most);
      expect(all.length, `${most}`).toBeGreaterThanOrEqual(3);
      expect(all.length, `${most}`).toBeLessThanOrEqual(6);
      expect(all.at(-1)).toBeLessThanOrEqual(most);
    }
  });
});
