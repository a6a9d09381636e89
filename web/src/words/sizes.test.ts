import { describe, expect, it } from 'vitest';
import { SIZES, THOUGHT, THOUGHT_ROW } from '../../dev/canned/sizes';
import { failsWords, holdsAt, rangeWords, sharesAt, shareWords, sizesSays, thoughtSays } from './sizes';

const soft = SIZES.rows[0];
if (!soft) throw new Error('no canned row');

describe('the sizes that hold, in words', () => {
  it('names the making that is chosen and its smallest size', () => {
    expect(sizesSays(SIZES)).toBe('Struck, soft enamel: holds from 48.4\u00a0mm.');
    expect(sizesSays(undefined)).toContain('being found');
  });

  it('says what fails at a size', () => {
    expect(failsWords(SIZES, soft, 48.4)).toBe('holds');
    expect(failsWords(SIZES, soft, 38)).toMatch(/^[\d.]+\u00a0% of lines, [\d.]+\u00a0% of areas$/);
    expect(failsWords(SIZES, soft, 120)).toBe('holds');
    const nothing = { ...soft, ranges: [], curve: soft.curve.map(() => ({ lines: 0, areas: 0 })) };
    expect(failsWords(SIZES, { ...nothing, lacks: true }, 38)).toBe('metal is missing');
    expect(failsWords(SIZES, nothing, 38)).toBe('the outline does not hold');
    expect(failsWords(SIZES, { ...soft, ranges: [] }, 5)).toBe('does not hold');
  });

  it('knows a range that ends', () => {
    const size = (v: number) => ({ mm: v, inches: 0, inMM: '', inInches: '' });
    const row = { ...soft, ranges: [{ from: size(20), to: size(45) }] };
    expect([19.9, 20, 44.9, 45].map((v) => holdsAt(row, v))).toEqual([false, true, true, true]);
    expect(holdsAt(row, 45.1)).toBe(false);
    expect(failsWords(SIZES, row, 50)).toBe('too large: an arm bends');
    expect(rangeWords({ from: { ...size(20), inMM: '20 mm' }, to: { ...size(45), inMM: '45 mm' } })).toBe('20\u00a0mm to 45\u00a0mm');
  });

  it('reads between two sizes of the curve', () => {
    const row = { ...soft, curve: [{ lines: 0.4, areas: 0.2 }, { lines: 0.2, areas: 0 }] };
    expect(sharesAt(SIZES, row, 10.5)).toEqual({ lines: expect.closeTo(0.3), areas: expect.closeTo(0.1) });
    expect(sharesAt(SIZES, row, 11)).toEqual({ lines: 0.2, areas: 0 });
    expect(sharesAt(SIZES, row, 9)).toBeUndefined();
    expect(sharesAt(SIZES, row, 12)).toBeUndefined();
  });

  it('says shares with as much as they mean', () => {
    expect([0, 0.0004, 0.0123, 0.5].map(shareWords)).toEqual(['nothing', 'under 0.1\u00a0%', '1.2\u00a0%', '50\u00a0%']);
  });

  it('says what a limit would do', () => {
    expect(THOUGHT_ROW && thoughtSays(THOUGHT, THOUGHT_ROW)).toBe('The thinnest line at 0.25\u00a0mm: holds from 52.5\u00a0mm.');
  });
});
