import { describe, expect, it } from 'vitest';
import { GLANCE } from '../../dev/canned/eye';
import { marksOf, scaleSays, snapped } from './glance';

describe('the scale of sizes', () => {
  it('marks where it can be made and where all is read', () => {
    expect(marksOf(GLANCE).map((m) => [m.what, m.at.mm])).toEqual([['can be made', 41.5], ['all can be read', 61.7]]);
    expect(marksOf({ ...GLANCE, made: [], readFrom: { ...GLANCE.readFrom, mm: 0 } })).toEqual([]);
  });

  it('takes a mark that is touched nearly', () => {
    const marks = marksOf(GLANCE);
    expect(snapped(42, marks, 1)).toBe(41.5);
    expect(snapped(44, marks, 1)).toBe(44);
    expect(snapped(44, [], 1)).toBe(44);
  });

  it('can be heard', () => {
    expect(scaleSays(GLANCE, 'on the lapel')).toBe('Sizes from 10 to 80 mm: the pin can be made from 41.5 mm · 1.63 in, and can be read on the lapel from 61.7 mm · 2.43 in. Asked for: 34 mm · 1.34 in.');
    expect(scaleSays({ ...GLANCE, made: [], readFrom: { ...GLANCE.readFrom, mm: 0 } }, 'on the lapel')).toContain('cannot be made at any size as drawn');
  });
});
