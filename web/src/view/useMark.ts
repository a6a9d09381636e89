// A mark that the arrow keys move over the pin.
import { useState } from 'preact/hooks';
import type { Check } from '../engine/wire.gen';
import type { Box, Mapping, Point } from './place';

/** How far an arrow key moves the mark, px: by itself, and with Shift. */
export interface Steps {
  far: number;
  near: number;
}

/** The same on the pin, mm. */
const FAR = 0.5;
const NEAR = 0.1;

/** Until a pin was measured, px. */
const UNMEASURED: Steps = { far: 8, near: 1 };

export function stepsOf(check: Check | undefined, map: Mapping | undefined): Steps {
  if (!check || !map) return UNMEASURED;
  const pxPerMM = check.scale * map.scale;
  return { far: FAR * pxPerMM, near: NEAR * pxPerMM };
}

const WAYS: Record<string, Point> = {
  ArrowLeft: { x: -1, y: 0 }, ArrowRight: { x: 1, y: 0 }, ArrowUp: { x: 0, y: -1 }, ArrowDown: { x: 0, y: 1 },
};

/** Where the mark is after a key; undefined for a key that does not move it. It
 * starts from the middle of its room and does not leave it. */
export function moved(at: Point | undefined, key: string, fine: boolean, steps: Steps, room: Box): Point | undefined {
  const way = WAYS[key];
  if (!way) return undefined;
  const by = fine ? steps.near : steps.far;
  const from = at ?? { x: room.x + room.w / 2, y: room.y + room.h / 2 };
  return {
    x: Math.min(room.x + room.w, Math.max(room.x, from.x + way.x * by)),
    y: Math.min(room.y + room.h, Math.max(room.y, from.y + way.y * by)),
  };
}

/** The mark, and what a key does to it: true when it was the mark's. */
export function useMark(room: Box, steps: Steps, start?: Point) {
  const [mark, setMark] = useState(start);
  const onKey = (e: KeyboardEvent): boolean => {
    const to = e.ctrlKey || e.metaKey || e.altKey ? undefined : moved(mark, e.key, e.shiftKey, steps, room);
    if (!to) return false;
    e.preventDefault();
    setMark(to);
    return true;
  };
  return { mark, setMark, onKey };
}
