// Sentences of the order: its answer, and who is cheapest where.
import type { CheapRange, Comparison, Quote } from '../engine/wire.gen';
import { plural } from './words';

/** The order in a sentence: "100 pins from Anvil & Tide: EUR 283.00 in all, about EUR 2.830 each." */
export function billSays(q: Quote, maker: string): string {
  const head = `${plural(q.pieces, 'pin')} from ${maker}: ${q.totalSays}`;
  const open = q.needs.length;
  if (open > 0) return `${head} so far; ${open === 1 ? 'one price is' : `${open} prices are`} not known yet.`;
  return `${head} in all, ${q.eachSays} each.`;
}

/** What an open entry is asked for with: "Your list says nothing of 1 cut-out, which this order has." */
export const needSays = (what: string) => `Your list says nothing of “${what}”, which this order has.`;

/** Where makers cross, in one sentence, for those who do not see the chart. */
export function crossSays(c: Comparison): string {
  const won = [...new Set(c.ranges.map((r) => r.maker))].filter((m) => m >= 0);
  const [only] = won;
  if (only === undefined) return 'None of these makers has a price.';
  if (won.length === 1 && c.ranges.length === 1) return `${nameOf(c, only)} is cheapest at every number.`;
  return c.ranges.map((r) => r.words).join(' ');
}

export const nameOf = (c: Comparison, maker: number) => c.makers[maker]?.name ?? 'nobody';

/** The range that a number of pieces lies in. */
export const rangeAt = (ranges: readonly CheapRange[], n: number) => ranges.find((r) => r.from <= n && n <= r.to);

/** How many cells want looking at, for the fold they are in. */
export const faultCount = (n: number) => (n === 0 ? '' : `${plural(n, 'cell')} to look at`);

/** Round marks for an axis from 0: three to six of them. */
export function ticks(most: number): number[] {
  const rough = most / 4;
  const ten = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 2.5, 5, 10].map((f) => f * ten).find((t) => t >= rough) ?? ten * 10;
  return Array.from({ length: Math.floor(most / step + 1e-9) + 1 }, (_, i) => i * step);
}
