import { describe, expect, it } from 'vitest';
import { cardAt, fitIn, mapping, poles, spread } from './place';

describe('place', () => {
  it('fits a picture into the middle of a room', () => {
    expect(fitIn({ x: 10, y: 0, w: 200, h: 100 }, 50, 50)).toEqual({ x: 60, y: 0, w: 100, h: 100 });
  });

  it('maps there and back', () => {
    const m = mapping({ w: 500, h: 400, scale: 0.5, dx: 20, dy: 30 }, { x: 100, y: 50, w: 250, h: 200 });
    expect(m.toSheet(0, 0)).toEqual({ x: 110, y: 65 });
    const p = m.toSheet(321, 123);
    const q = m.toWork(p.x, p.y);
    expect(q.x).toBeCloseTo(321, 9);
    expect(q.y).toBeCloseTo(123, 9);
  });

  it('lifts flags over one another', () => {
    expect(poles([{ x: 0, y: 100 }, { x: 50, y: 100 }])).toEqual([0, 0]);
    const at = [{ x: 0, y: 100 }, { x: 5, y: 104 }, { x: 9, y: 90 }, { x: 12, y: 100 }];
    const tops = poles(at).map((l, i) => (at[i]?.y ?? 0) - l);
    for (const [i, a] of tops.entries()) for (const b of tops.slice(0, i)) expect(Math.abs(a - b)).toBeGreaterThanOrEqual(22);
  });

  it('spreads callouts without crossing or leaving the room', () => {
    expect(spread([10, 12, 14], 20, 100)).toEqual([10, 30, 50]);
    expect(spread([90, 95, 99], 20, 100)).toEqual([60, 80, 100]);
    const tight = spread([0, 0, 0, 0, 0], 50, 100);
    expect(tight).toEqual([0, 25, 50, 75, 100]);
  });

  it('puts a card beside what was touched, and off a place that is to be seen', () => {
    const [card, room] = [{ w: 300, h: 400 }, { w: 900, h: 600 }];
    expect(cardAt({ x: 200, y: 100 }, card, room)).toEqual({ x: 216, y: 60 });
    expect(cardAt({ x: 700, y: 590 }, card, room)).toEqual({ x: 384, y: 200 });
    expect(cardAt({ x: 500, y: 100 }, card, room, { x: 600, y: 120 })).toEqual({ x: 184, y: 60 });
    expect(cardAt({ x: 200, y: 100 }, card, room, { x: 300, y: 120 })).toEqual({ x: 592, y: 60 });
    expect(cardAt({ x: 200, y: 100 }, card, room, { x: 300, y: 590 })).toEqual({ x: 216, y: 60 });
  });
});
