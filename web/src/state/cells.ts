// The cells of a price list by their places in it, as the engine names them:
// "pieces.breaks[1].unit[0]". Changes are pure.
import type { CellError, PriceList } from '../engine/wire.gen';

const keysOf = (path: string): (string | number)[] =>
  path.split(/[.[]/).map((k) => (k.endsWith(']') ? Number(k.slice(0, -1)) : k));

const isRecord = (v: unknown): v is Record<string, unknown> => typeof v === 'object' && v !== null && !Array.isArray(v);

function inside(of: unknown, key: string | number): unknown {
  if (Array.isArray(of)) return typeof key === 'number' ? of[key] : undefined;
  return isRecord(of) ? of[key] : undefined;
}

/** What stands in a cell; nothing where there is no such cell. */
export const valueAt = (list: PriceList, path: string): unknown => keysOf(path).reduce(inside, list as unknown);

export function textAt(list: PriceList, path: string): string {
  const v = valueAt(list, path);
  return typeof v === 'string' || typeof v === 'number' ? String(v) : '';
}

export function rowsAt(list: PriceList, path: string): readonly unknown[] {
  const v = valueAt(list, path);
  return Array.isArray(v) ? v : [];
}

// A cell that is gone by then changes nothing: a typed text takes a moment to be read.
function placed(of: unknown, [key, ...rest]: (string | number)[], value: unknown): unknown {
  if (key === undefined) return value;
  if (inside(of, key) === undefined) return of;
  if (Array.isArray(of)) return of.map((v: unknown, i) => (i === key ? placed(v, rest, value) : v));
  return isRecord(of) ? { ...of, [key]: placed(of[key], rest, value) } : of;
}

/** A list with another value in one cell. A first rate that nothing says the
 * counting of is counted by the piece. */
export function withCell(list: PriceList, path: string, value: unknown): PriceList {
  const next = placed(list, keysOf(path), value) as PriceList;
  const by = path.replace(/\.rate$/, '.by');
  return by !== path && valueAt(next, by) === '' ? (placed(next, keysOf(by), 'piece') as PriceList) : next;
}

export function withRow(list: PriceList, path: string, row: unknown): PriceList {
  return withCell(list, path, [...rowsAt(list, path), row]);
}

export function withoutRow(list: PriceList, path: string, at: number): PriceList {
  return withCell(list, path, rowsAt(list, path).filter((_, i) => i !== at));
}

/** What is wrong in a cell, or in what it holds. */
export function faultAt(faults: readonly CellError[], path: string): string | undefined {
  return faults.find((f) => f.cell === path || f.cell.startsWith(`${path}.`))?.what;
}

/** One size class more or fewer, with its column of prices. */
export function withSizeClass(list: PriceList, mm: number): PriceList {
  const { pieces, die } = list;
  return {
    ...list,
    pieces: { ...pieces, sizes: [...pieces.sizes, mm], breaks: pieces.breaks.map((b) => ({ ...b, unit: [...b.unit, ''] })) },
    die: { ...die, bySize: die.bySize.length > 0 ? [...die.bySize, ''] : [] },
  };
}

export function withoutSizeClass(list: PriceList, at: number): PriceList {
  const rest = <T>(all: readonly T[]) => all.filter((_, i) => i !== at);
  const { pieces, die } = list;
  return {
    ...list,
    pieces: { ...pieces, sizes: rest(pieces.sizes), breaks: pieces.breaks.map((b) => ({ ...b, unit: rest(b.unit) })) },
    die: { ...die, bySize: rest(die.bySize) },
  };
}
