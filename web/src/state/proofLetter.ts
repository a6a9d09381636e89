// What goes back to the maker, and one proof beside another.
import { signal } from '@preact/signals';
import type { Inquiry, ProofPairs, ProofRound } from '../engine/wire.gen';
import { hasPlace, whereWords } from '../words/proof';
import { atHand } from './desk';
import { about } from './handed';
import { now, pairs, tell } from './proofDesk';
import { decided, toChange } from './proofs';
import { saveFile } from './save';
import * as s from './store';

export const letter = signal<{ round: ProofRound; letter: Inquiry } | undefined>(undefined);
export const beside = signal<{ id: string; with: string; makers: boolean; pairs?: ProofPairs } | undefined>(undefined);

/** Writes the request for what is to be changed. */
export async function write(round: ProofRound, name: string): Promise<void> {
  try {
    const all = toChange(round).map((d) => ({
      number: d.number, what: d.words, where: hasPlace(d) ? whereWords(d) : '', asked: d.asked, shown: d.shown, note: decided(round, d.number).note,
    }));
    const changes = { name, round: round.round, dated: round.dated ?? '', all, note: '', files: [markedName(name)] };
    const got = await atHand.value?.call('changes', { changes }, { lane: 'proof letter' });
    if (got) letter.value = { round, letter: got.answer };
  } catch (err) {
    tell(err);
  }
}

/** As the engine calls the file of the marked picture. */
const markedName = (name: string) => `${name.toLowerCase().replace(/[^a-z0-9]+/g, '-')}-proof-marked.png`;

/** Hands over the proof's picture with what is to be changed marked on it. */
export async function saveMarks(round: ProofRound, name: string): Promise<void> {
  const [p, c] = [s.asked.value, now.value];
  if (!p || !c) return;
  try {
    const { answer, bytes } = await about(p, s.at.value, 'proofmarks', { proof: c.laid.proof, differences: toChange(round), name });
    if (!bytes) return;
    saveFile(new Blob([bytes], { type: 'image/png' }), answer.fileName);
    s.said.value = `Saved ${answer.fileName}: ${answer.words}`;
  } catch (err) {
    tell(err);
  }
}

/** Holds a proof against another: an earlier round of the same maker, or the
 * proof of another one. */
export async function hold(round: ProofRound, other: ProofRound | undefined): Promise<void> {
  if (!other) {
    beside.value = undefined;
    return;
  }
  const makers = (round.maker ?? '') !== (other.maker ?? '');
  const mine = { id: round.id, with: other.id, makers };
  beside.value = mine;
  try {
    const got = await pairs(makers ? other.differences : toChange(other), round.differences, makers);
    if (beside.value === mine) beside.value = { ...mine, pairs: got };
  } catch (err) {
    tell(err);
  }
}
