// The marks of the scale of sizes, in words.
import type { Glance, Length, SizeRange } from '../engine/wire.gen';
import { both } from './words';

export interface Mark {
  key: string;
  /** What begins there. */
  what: string;
  at: Length;
}

/** Where something begins: each is a size that can be taken. */
export function marksOf(g: Glance): Mark[] {
  const all: Mark[] = g.made.map((r, i) => ({ key: `made ${i}`, what: i === 0 ? 'can be made' : 'can be made again', at: r.from }));
  if (g.lettersFrom.mm > 0 && g.lettersFrom.mm < g.readFrom.mm) all.push({ key: 'letters', what: 'letters can be read', at: g.lettersFrom });
  if (g.readFrom.mm > 0) all.push({ key: 'read', what: 'all can be read', at: g.readFrom });
  return all;
}

/** The size of a mark that is as good as meant, or the size itself; mm. */
export function snapped(mm: number, marks: readonly Mark[], near: number): number {
  const nearest = marks.reduce((a, m) => (Math.abs(m.at.mm - mm) < Math.abs(a - mm) ? m.at.mm : a), Infinity);
  return Math.abs(nearest - mm) <= near ? nearest : mm;
}

/** The scale for one who does not see it. */
export function scaleSays(g: Glance, where: string): string {
  const made = g.made.length > 0 ? `can be made ${g.made.map(rangeSays).join(' and ')}` : 'cannot be made at any size as drawn';
  const read = g.readFrom.mm > 0 ? `can be read ${where} from ${both(g.readFrom)}` : `cannot be read wholly ${where} at any size`;
  return `Sizes from ${g.from} to ${g.to} mm: the pin ${made}, and ${read}. Asked for: ${both(g.asked)}.`;
}

function rangeSays({ from, to }: SizeRange): string {
  return to.mm > 0 ? `from ${both(from)} to ${both(to)}` : `from ${both(from)}`;
}
