// Where things lie on the sheet: working pixels to sheet pixels, and callouts
// that keep out of each other's way.
import type { Picture } from '../engine/wire.gen';

export interface Box {
  x: number;
  y: number;
  w: number;
  h: number;
}

export interface Point {
  x: number;
  y: number;
}

/** The largest box of the picture's shape in the middle of the room. */
export function fitIn(room: Box, w: number, h: number): Box {
  const k = Math.min(room.w / w, room.h / h);
  return { x: room.x + (room.w - w * k) / 2, y: room.y + (room.h - h * k) / 2, w: w * k, h: h * k };
}

export interface Mapping {
  /** Sheet px to a working px. */
  scale: number;
  toSheet: (x: number, y: number) => Point;
  toWork: (x: number, y: number) => Point;
}

export function mapping(p: Picture, at: Box): Mapping {
  const k = at.w / p.w;
  return {
    scale: k * p.scale,
    toSheet: (x, y) => ({ x: at.x + (x * p.scale + p.dx) * k, y: at.y + (y * p.scale + p.dy) * k }),
    toWork: (x, y) => ({ x: ((x - at.x) / k - p.dx) / p.scale, y: ((y - at.y) / k - p.dy) / p.scale }),
  };
}

/** Moves wished-for heights (in order) apart by at least `gap`, inside 0..room, as little as it can. */
export function spread(wished: readonly number[], gap: number, room: number): number[] {
  const n = wished.length;
  const step = n > 1 ? Math.min(gap, room / (n - 1)) : gap;
  const out: number[] = [];
  for (const [i, y] of wished.entries()) {
    const before = out[i - 1];
    out.push(Math.max(y, before === undefined ? 0 : before + step));
  }
  let limit = room;
  for (let i = n - 1; i >= 0; i--) {
    out[i] = Math.min(out[i] ?? 0, limit);
    limit = (out[i] ?? 0) - step;
  }
  return out;
}

/** Room a flag takes, px. */
const FLAG = { w: 26, h: 22 } as const;

/** How much longer the pole of each flag must be, px, so that no flag hides another. */
export function poles(at: readonly Point[]): number[] {
  const lifts: number[] = [];
  for (const [i, p] of at.entries()) {
    const near = at.slice(0, i).flatMap((q, j) => (Math.abs(q.x - p.x) < FLAG.w ? [q.y - (lifts[j] ?? 0)] : []));
    let lift = 0;
    // Each step clears one more flag, so as many steps as flags always do.
    for (let step = 0; step <= near.length; step++) {
      const hit = near.filter((y) => Math.abs(y - (p.y - lift)) < FLAG.h);
      if (hit.length === 0) break;
      lift = p.y - Math.min(...hit) + FLAG.h;
    }
    lifts.push(lift);
  }
  return lifts;
}

/** A card stands this far beside what was touched, and this far above its middle, px. */
const BESIDE = 16;
const ABOVE = 40;

/** Air kept round a place that a card is not to hide, px. */
const AIR = 28;

/** Where a card of a size stands: beside a place, inside the room, and if it can
 * without hiding another place. */
export function cardAt(at: Point, card: { w: number; h: number }, room: { w: number; h: number }, bare?: Point): Point {
  const y = Math.max(0, Math.min(at.y - ABOVE, room.h - card.h));
  const rightmost = room.w - card.w - 8;
  const right = at.x + BESIDE;
  const left = Math.max(8, at.x - card.w - BESIDE);
  const beside = right <= rightmost ? [right, left] : [left];
  const hides = (x: number) => bare && bare.x > x - AIR && bare.x < x + card.w + AIR && bare.y > y - AIR && bare.y < y + card.h + AIR;
  return { x: [...beside, 8, rightmost].find((x) => !hides(x)) ?? beside[0] ?? left, y };
}
