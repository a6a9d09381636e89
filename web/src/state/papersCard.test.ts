import { describe, expect, it } from 'vitest';
import type { BackingCard } from '../engine/wire.gen';
import { addText, covering, refitted, turnedCard, without } from './papersCard';

const ink = { r: 0, g: 0, b: 0 };
const card: BackingCard = { pin: [20, 30], texts: [{ words: 'Skerry', points: 10, x: 27.5, y: 73, rgb: ink }] };

describe('a backing card', () => {
  it('a picture covers it with its bleed, whatever its shape', () => {
    for (const [pw, ph] of [[1000, 1000], [3000, 500], [500, 3000], [910, 610]] as const) {
      const { x, y, wide } = covering(pw, ph, 85, 55, 3);
      const high = (wide * ph) / pw;
      expect(x).toBeLessThanOrEqual(-2.9);
      expect(y).toBeLessThanOrEqual(-2.9);
      expect(x + wide).toBeGreaterThanOrEqual(87.9);
      expect(y + high).toBeGreaterThanOrEqual(57.9);
    }
  });

  it('of another size keeps its words as far from the foot', () => {
    const next = refitted(card, 55, 85, 53.98, 85.6);
    expect(next.texts?.[0]?.y).toBeCloseTo(73.6, 5);
    expect(next.pin).toBeUndefined();
    expect(card.pin).toEqual([20, 30]);
  });

  it('that lies has its words right of the pin, and below it when it stands again', () => {
    const lying = turnedCard(card, 55, 85, true, 30, 4);
    expect(lying.across).toBe(true);
    // By hand: the pin ends at (42.5-30)/2 + 30 = 36.25, the safe margin at 81.
    expect(lying.texts?.[0]?.x).toBeCloseTo(58.6, 5);
    expect(turnedCard(lying, 85, 55, false, 30, 4).texts?.[0]?.x).toBe(27.5);
  });

  it('takes another line below the last', () => {
    expect(addText(card, 55, 85).texts?.[1]?.y).toBe(78);
    expect(without(card, 'texts')).toEqual({ pin: [20, 30] });
  });
});
