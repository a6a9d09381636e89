// Sentences about repairs.
import type { MendAll, Recipe } from '../engine/wire.gen';
import { repairsOf, type Named, type RepairKind } from '../state/repairs';
import { plural } from './words';

const REPAIR_WORDS: Record<RepairKind, string> = {
  'close-gap': 'Gap closed',
  'build-border': 'Line built',
  'thicken-line': 'Line thickened',
  'widen-area': 'Area widened',
  'drop-thin': 'Thin part let go',
  'grow-area': 'Area made larger',
  'drop-area': 'Small part let go',
  'merge-area': 'Small part taken out',
  'open-up': 'Line taken out',
  'build-bridge': 'Bridge built',
  'round-tip': 'Tip rounded',
};

export const repairName = ({ kind, no }: Pick<Named, 'kind' | 'no'>) => `${REPAIR_WORDS[kind]} ${no}`;

/** What a step did, for the undo. */
export function repairedWords(recipes: readonly Recipe[]): string {
  const n = Math.max(1, repairsOf(recipes).length);
  return n === 1 ? 'Repaired one place' : `Repaired ${n} places`;
}

/** What repairing all comes to. */
export function outcomeSays(m: MendAll): string {
  const left = m.left.length;
  if (m.before === 0) return 'Nothing fails: there is nothing to repair.';
  if (m.recipes.length === 0) return `No gentle repair was found. ${left === 1 ? 'This place needs' : `These ${left} places need`} you.`;
  const all = `${plural(m.before, 'place')} failed. Repaired, ${left === 0 ? 'none does' : `${left} still ${left === 1 ? 'does' : 'do'}`}.`;
  return `${all} It changes ${m.change.words}.`;
}
