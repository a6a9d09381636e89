// Words of the parcel and of what is left of it.
import type { Ledger, MoveKind, Parcel, ParcelCounted, StockMove } from '../engine/wire.gen';
import { capital, plural } from './words';

export const GRADE_WORDS = { first: 'sound', second: 'second', reject: 'reject' } as const;

/** What the keys are, where there are keys. */
export const KEYS = { first: '1', second: '2', reject: '3' } as const;

/** Keys that name a fault, in the order of the kinds. */
export const FLAW_KEYS = 'asdfghjklyx';

export const MOVE_WORDS: Record<MoveKind, string> = {
  had: 'had, or came back', replacement: 'kept for replacements', gift: 'given away', wholesale: 'wholesale', fair: 'at the fair', sold: 'sold',
};

export const MOVES: readonly MoveKind[] = ['sold', 'fair', 'wholesale', 'gift', 'replacement', 'had'];

/** The section in a sentence: what is left once pieces move, the count before. */
export function parcelSays(parcel: Parcel | undefined, answer: ParcelCounted | undefined, ledger: Ledger | undefined, moves: number): string {
  if (!parcel) return 'Count what arrives, and say what is wrong with it.';
  if (moves > 0 && ledger?.stock) return ledger.stock.says;
  return answer?.tally?.says ?? 'Counting …';
}

/** How a version stands while it is counted: "38 of 60 counted: 35 sound, 2 seconds, 1 reject". */
export function progressSays(ordered: number, firsts: number, seconds: number, rejects: number): string {
  const n = firsts + seconds + rejects;
  return `${n} of ${ordered} counted: ${firsts} sound, ${plural(seconds, 'second')}, ${plural(rejects, 'reject')}`;
}

/** "12 sold on 2027-03-10: Lighthouse, gold". */
export function moveSays(m: StockMove, name: string): string {
  return `${m.day}: ${plural(m.count, m.grade)} of ${name}, ${MOVE_WORDS[m.kind]}`;
}

export const dieSays = (months: number) => (months < 1 ? 'The die is not a month old.' : `The die is ${plural(months, 'month')} old.`);

export const lastSays = (grade: string, flaw: string) => `Flawed last: ${grade}${flaw ? `, ${flaw}` : ''}`;

/** A chance out of a hundred parcels. */
export function inHundred(chance: number): string {
  if (chance > 0 && chance < 0.0005) return 'under 0.1';
  return chance >= 0.0995 || chance === 0 ? String(Math.round(100 * chance)) : (100 * chance).toFixed(1);
}

export const title = (p: Parcel, i: number) => capital(p.arrived ? `${p.maker || 'parcel'}, ${p.arrived}` : p.maker || `parcel ${i + 1}`);
