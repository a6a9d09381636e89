import { describe, expect, it } from 'vitest';
import { TRUE_SIZE } from '../../dev/canned/answers';
import type { Report } from '../engine/wire.gen';
import { drawnPerMM, worthAsking } from './truesize';

const plain: Report = { vendor: 'Google Inc.', w: 1440, h: 900, ratio: 1, pinch: 1, inner: [1200, 700], outer: [1200, 800] };
const answered = { report: plain, size: { ...TRUE_SIZE, perMM: 5 } };

describe('true size as drawn', () => {
  it('is what the engine said', () => {
    expect(drawnPerMM(answered, plain)).toBe(5);
  });

  it('stays the same in the hand through zoom and pinch, before the engine speaks again', () => {
    const now = { ...plain, ratio: 1.5, pinch: 2 };
    expect(drawnPerMM(answered, now) * now.ratio * now.pinch).toBeCloseTo(5, 9);
  });

  it('is asked about again when the screen or the zoom may be another', () => {
    expect(worthAsking(plain, { ...plain, pinch: 3 })).toBe(false);
    for (const change of [{ ratio: 1.5 }, { w: 1920 }, { inner: [800, 466] as [number, number] }]) {
      expect(worthAsking(plain, { ...plain, ...change })).toBe(true);
    }
  });
});
