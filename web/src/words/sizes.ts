// Sentences about the sizes that hold.
import type { Shares, SizeRange, Sizes, SizesFor } from '../engine/wire.gen';
import type { Thought } from '../state/sizes';
import { mm } from './length';
import { capital } from './words';

export const LIMIT_WORDS = { line: 'thinnest line', area: 'narrowest area', edge: 'outer edge' } as const;

export function sizesSays(sizes: Sizes | undefined): string {
  const now = sizes?.rows.find((r) => r.now) ?? sizes?.rows[0];
  return now ? tied(`${capital(now.name)}: ${now.says}.`) : 'The sizes that hold are being found …';
}

/** No line ends between a number and its unit. */
const tied = (text: string) => text.replaceAll(/(\d) (?=mm|%)/g, '$1\u00a0');

/** "0.4 %", "12 %", "nothing", tied. */
export function shareWords(v: number): string {
  if (v <= 0) return 'nothing';
  const percent = 100 * v;
  return `${percent < 0.1 ? 'under 0.1' : percent.toFixed(percent < 10 ? 1 : 0)}\u00a0%`;
}

/** The shares at a size between two of the curve. */
export function sharesAt(sizes: Sizes, row: SizesFor, size: number): Shares | undefined {
  const i = size - sizes.from;
  const a = row.curve[Math.floor(i)];
  const b = row.curve[Math.ceil(i)] ?? a;
  if (!a || !b) return undefined;
  const t = i - Math.floor(i);
  return { lines: a.lines + (b.lines - a.lines) * t, areas: a.areas + (b.areas - a.areas) * t };
}

/** What fails at a size, in words. */
export function failsWords(sizes: Sizes, row: SizesFor, size: number): string {
  if (holdsAt(row, size)) return 'holds';
  if (row.ranges.length > 0 && row.ranges.every((r) => r.to.mm > 0 && size > r.to.mm)) return 'too large: an arm bends';
  const at = sharesAt(sizes, row, size);
  if (!at) return 'does not hold';
  if (at.lines <= 0 && at.areas <= 0) return row.lacks ? 'metal is missing' : 'the outline does not hold';
  return [at.lines > 0 ? `${shareWords(at.lines)} of lines` : '', at.areas > 0 ? `${shareWords(at.areas)} of areas` : ''].filter(Boolean).join(', ');
}

export function holdsAt(row: SizesFor, size: number): boolean {
  return row.ranges.some((r) => size >= r.from.mm && (r.to.mm === 0 || size <= r.to.mm));
}

/** "22 mm", "22 mm to 45 mm". */
export const rangeWords = (r: SizeRange) => tied(r.to.mm > 0 ? `${r.from.inMM} to ${r.to.inMM}` : r.from.inMM);

export function thoughtSays(t: Thought, row: SizesFor): string {
  return tied(`The ${LIMIT_WORDS[t.key]} at ${mm(t.mm, 2)}: ${row.says}.`);
}
