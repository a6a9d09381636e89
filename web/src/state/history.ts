// Undo and redo over values that are replaced whole.

export interface History<T> {
  readonly past: readonly Step<T>[];
  readonly now: T;
  /** The value as the last step made it, when it was turned since. */
  readonly made?: T;
  readonly future: readonly Step<T>[];
}

/** A value left behind, and in words what was done to leave it. */
export interface Step<T> {
  readonly value: T;
  readonly what: string;
}

/** Enough for an evening's work; a project value is a few kilobytes. */
export const DEEPEST = 200;

export function begin<T>(now: T): History<T> {
  return { past: [], now, future: [] };
}

export function replace<T>(h: History<T>, now: T, what: string): History<T> {
  if (Object.is(now, h.now)) return h;
  return { past: [...h.past, { value: h.now, what }].slice(-DEEPEST), now, future: [] };
}

/** Turns the value to another side of it: nothing to undo, and no step forward
 * is lost. What was done again stands as it was made. */
export function turn<T>(h: History<T>, now: T): History<T> {
  return { ...h, now, made: h.made ?? h.now };
}

export function undo<T>(h: History<T>): History<T> {
  const last = h.past.at(-1);
  if (!last) return h;
  return { past: h.past.slice(0, -1), now: last.value, future: [{ value: h.made ?? h.now, what: last.what }, ...h.future] };
}

export function redo<T>(h: History<T>): History<T> {
  const next = h.future[0];
  if (!next) return h;
  return { past: [...h.past, { value: h.now, what: next.what }], now: next.value, future: h.future.slice(1) };
}
