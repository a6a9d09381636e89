// A proof held against the round before it, or against another maker's.
import type { PairState, ProofPairs, ProofRound } from '../engine/wire.gen';
import { roundWords } from '../words/proof';

export interface BesideProps {
  others: readonly ProofRound[];
  /** The one it is held against. */
  with: ProofRound | undefined;
  makers: boolean;
  pairs: ProofPairs | undefined;
  onWith: (id: string) => void;
}

const STATE: Record<PairState, string> = { done: 'done', open: 'still so', new: 'new', both: 'in both', first: 'in the other alone', other: 'in this alone' };

const SIGN: Record<PairState, string> = { done: '✓', open: '!', new: '+', both: '=', first: '–', other: '+' };

export function ProofBeside(p: BesideProps) {
  if (p.others.length === 0) return null;
  return (
    <div class="proof-beside">
      <label class="field">
        <span class="field-label">Beside</span>
        <select value={p.with?.id ?? ''} onChange={(e) => p.onWith(e.currentTarget.value)}>
          <option value="">no other proof</option>
          {p.others.map((r) => <option key={r.id} value={r.id}>{roundWords(r)}</option>)}
        </select>
      </label>
      {p.with && p.pairs ? (
        <>
          <p><b>{p.pairs.words}</b></p>
          <ul class="proof-pairs">
            {p.pairs.pairs.map((q, i) => <li key={i} class={q.state}><span class="state"><span aria-hidden="true">{SIGN[q.state]}</span> {STATE[q.state]}</span> {q.words}</li>)}
          </ul>
          {p.pairs.pairs.length === 0 ? <p class="fine"><span aria-hidden="true">✓</span> {p.makers ? 'Neither differs from what you asked for.' : 'Nothing was to be changed, and nothing new differs.'}</p> : null}
        </>
      ) : null}
    </div>
  );
}
