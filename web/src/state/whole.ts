// Go writes an empty list that was never made as null; the page wants lists.
import type { Check } from '../engine/wire.gen';

type Holes<T> = T | null;

const list = <T>(v: Holes<T[]>): T[] => v ?? [];

/** The check with every list in it a list. */
export function whole(c: Check): Check {
  return {
    ...c,
    flats: { ...c.flats, flats: list(c.flats.flats), spots: list(c.flats.spots) },
    findings: list(c.findings).map((f) => ({ ...f, path: list(f.path) })),
    back: { ...c.back, posts: list(c.back.posts), why: list(c.back.why) },
    quote: { ...c.quote, lines: list(c.quote.lines), notes: list(c.quote.notes) },
  };
}
