import { describe, expect, it } from 'vitest';
import type { Finding } from '../engine/wire.gen';
import { kindWords, meaningWords, measuredWords } from './findings';

const spot = (kind: Finding['kind'], rest: Partial<Finding> = {}): Finding => ({
  kind, flat: 0, other: -2, x: 0, y: 0, x0: 0, y0: 0, x1: 0, y1: 0, ends: [0, 0, 0, 0], path: [], length: 12, thinnest: 0.8, typical: 1, area: 9, count: 1, error: 0.01, limit: 1.5, verdict: 'fails', needPx: 0, ...rest,
});
const nobody = { flat: undefined, other: undefined };

describe('the outline in words', () => {
  it('says what was measured, with units', () => {
    expect(measuredWords(spot('thin-bridge'))).toBe('0.8 mm wide over 12 mm, the maker holds 1.5 mm');
    expect(measuredWords(spot('long-arm', { force: 3.14 }))).toBe('12 mm long and 0.8 mm wide, bends at 3.1 N');
    expect(measuredWords(spot('sharp-tip', { angle: 36 }))).toBe('a radius of 0.8 mm, its sides enclose 36°');
    expect(measuredWords(spot('loose-part'))).toBe('9 mm², 0.8 mm from the rest');
    expect(measuredWords(spot('loose-part', { count: 3 }))).toBe('3 specks, 9 mm² in all');
    expect(measuredWords(spot('weak-eye', { typical: 0 }))).toBe('no hole there for a ring');
  });

  it('tells a note from a fault', () => {
    expect(kindWords(spot('loose-part'))).toBe('A part stands alone');
    expect(kindWords(spot('loose-part', { verdict: 'holds' }))).toBe('A part hangs');
    expect(kindWords(spot('sharp-tip', { verdict: 'holds' }))).toBe('Pointed tip');
    expect(meaningWords(spot('sharp-tip'), nobody)).toContain('pricks');
    expect(meaningWords(spot('sharp-tip', { verdict: 'holds' }), nobody)).toContain('can be made');
    expect(meaningWords(spot('thin-bridge', { verdict: 'cannot-tell', needPx: 900 }), nobody)).toContain('900 px');
  });
});
