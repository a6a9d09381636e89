import { describe, expect, it } from 'vitest';
import { CARD, checkFromCard, checkFromRuler, cssPxPerMM, recall, remember, screenKey } from './truesize';

const plain = { w: 1440, h: 900, dpr: 1, pinch: 1 };

describe('true size', () => {
  // CSS Values and Units: 1in = 96px = 25.4mm.
  it('guesses by the CSS inch before any check', () => {
    expect(cssPxPerMM(plain, undefined) * 25.4).toBeCloseTo(96, 9);
  });

  // ISO/IEC 7810 ID-1: 85.60 x 53.98 mm.
  it('draws a matched card at the width it was matched at', () => {
    const c = checkFromCard(plain, 400);
    expect(cssPxPerMM(plain, c) * CARD.w).toBeCloseTo(400, 9);
    expect(cssPxPerMM(plain, c) * CARD.h).toBeCloseTo((400 * 53.98) / 85.6, 9);
  });

  it('keeps the size in the hand through page zoom', () => {
    const c = checkFromCard(plain, 400);
    const zoomed = { w: 960, h: 600, dpr: 1.5, pinch: 1 };
    expect(cssPxPerMM(zoomed, c) * zoomed.dpr).toBeCloseTo(cssPxPerMM(plain, c), 9);
    expect(screenKey(zoomed)).toBe(screenKey(plain));
  });

  it('keeps the size in the hand through pinch zoom', () => {
    const c = checkFromCard(plain, 400);
    expect(cssPxPerMM({ ...plain, pinch: 2 }, c) * 2).toBeCloseTo(cssPxPerMM(plain, c), 9);
  });

  it('agrees by card and by ruler', () => {
    expect(checkFromRuler(plain, 200, 50).perMM).toBeCloseTo(4, 9);
    expect(checkFromCard(plain, 4 * CARD.w).perMM).toBeCloseTo(4, 9);
  });

  it('remembers each screen, and only sane checks', () => {
    const kept = new Map<string, string>();
    const store = { getItem: (k: string) => kept.get(k) ?? null, setItem: (k: string, v: string) => void kept.set(k, v) };
    remember(store, '1440x900', { perMM: 4 });
    remember(store, '2000x1000', { perMM: 900 });
    expect(recall(store, '1440x900')).toEqual({ perMM: 4 });
    expect(recall(store, '2000x1000')).toBeUndefined();
    expect(recall(store, '800x600')).toBeUndefined();
    expect(recall({ getItem: () => 'not json', setItem: () => undefined }, 'x')).toBeUndefined();
  });
});
