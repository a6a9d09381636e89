// Sentences about capitals that were marked.
import type { Lettered } from '../engine/wire.gen';
import { mm } from './length';

export const MARKING = {
  act: 'Mark lettering', did: 'Marked a capital',
  how: 'Tap the foot of a capital, then its head, along its stem.',
} as const;

export const capitalName = (n: number) => `Capital ${n}`;

const ANSWER = { holds: 'holds', fails: 'too low', 'cannot-tell': 'cannot tell on this drawing' } as const;

/** "1.8 mm high, raised: holds; the least is 1.5 mm". */
export function capitalSays(c: Lettered): string {
  const high = `${mm(c.height, 2)} high`;
  if (c.lies === 'outside') return 'lies beside the pin or in a cut-out; mark it along its stem';
  if (c.lies === 'printed') return `${high}, printed: it needs no metal, so no height is asked of it here`;
  if (c.least === 0) return `${high}, ${c.lies}: your limits ask no least height`;
  const from = c.verdict !== 'holds' && c.holdsFrom > 0 ? `. It holds on a pin of ${mm(c.holdsFrom)}` : '';
  return `${high}, ${c.lies}: ${ANSWER[c.verdict]}; the least is ${mm(c.least, 2)}${from}`;
}
