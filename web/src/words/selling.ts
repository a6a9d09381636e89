// Sentences of what is left, how many and the pre-sale.
import type { ChannelKind, ChannelRow, Demand, HowMany, LeftAfter, OrderOutcome } from '../engine/wire.gen';
import { plural } from './words';

export const KIND_WORDS: Record<ChannelKind, string> = {
  online: 'online', fair: 'at fairs', wholesale: 'to shops', consignment: 'on consignment', set: 'in sets', gift: 'as gifts', cause: 'for a cause',
};

/** Which figures a kind of channel usually has. */
export const KIND_FIELDS: Record<ChannelKind, readonly ChannelField[]> = {
  online: ['price', 'feePercent', 'feeFixed', 'posted'],
  fair: ['price', 'feePercent', 'once'],
  wholesale: ['price', 'cut', 'posted'],
  consignment: ['price', 'cut', 'once'],
  set: ['price', 'pieces', 'others', 'feePercent', 'feeFixed', 'posted'],
  gift: ['posted'],
  cause: ['price', 'given', 'feePercent', 'feeFixed', 'once', 'posted'],
};

export type ChannelField = 'price' | 'cut' | 'feePercent' | 'feeFixed' | 'once' | 'posted' | 'pieces' | 'others' | 'given';

/** What is left, and from how many pieces on: the answer of its room. */
export const leftSays = (a: LeftAfter) => `${a.says} ${a.coversSays}`;

/** Under the name of a channel: "45 pieces, about EUR 6.562 each, by large letter". */
export function rowSays(r: ChannelRow): string {
  if (r.count === 0) return 'no pieces';
  return [plural(r.count, 'piece'), `${r.eachSays} each`, ...(r.class ? [`by ${r.class}`] : [])].join(', ');
}

/** A chance as the engine's sentences say it. */
export function chanceSays(p: number): string {
  if (p > 0 && p < 0.01) return 'under 1 %';
  if (p > 0.99 && p < 1) return 'over 99 %';
  return `${Math.round(p * 100)} %`;
}

/** The orders of a table: those told of and the best, rising, each once. */
export function rowsOf(a: HowMany): OrderOutcome[] {
  return [...a.rows.filter((r) => r.quantity !== a.best.quantity), a.best].sort((x, y) => x.quantity - y.quantity);
}

/** How many of each version the answers would order, in the versions' order. */
export const bestOf = (d: Demand): number[] => d.answers.flatMap((a) => a.best.versions.map((v) => v.quantity));

/** "Take 144 pins", or of each version so many. */
export function takeSays(each: readonly number[], names: readonly string[]): string {
  if (each.length === 1) return `Order ${plural(each[0] ?? 0, 'pin')}`;
  return `Order ${each.map((n, i) => `${n} of ${names[i] ?? ''}`).join(', ')}`;
}

/** What is wanted of a version, as the guess has it. */
export function wantedSays(a: HowMany): string {
  const mean = `${Math.round(a.mean * 10) / 10} wanted on average`;
  const [low, high] = a.likely;
  return high > 0 ? `${mean}; ${low} to ${high} with a chance of 8 in 10.` : `${mean}.`;
}

/** Even marks of an axis that covers a range, three to seven of them. */
export function marks(low: number, high: number): number[] {
  const rough = Math.max(high - low, 1e-9) / 5;
  const ten = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 2.5, 5, 10].map((f) => f * ten).find((t) => t >= rough - 1e-12) ?? ten * 10;
  const from = Math.ceil(low / step - 1e-9);
  const to = Math.floor(high / step + 1e-9);
  return Array.from({ length: Math.max(0, to - from) + 1 }, (_, i) => (from + i) * step + 0);
}
