import type { ComponentChildren } from 'preact';
import type { Finding, Flat, Length } from '../engine/wire.gen';
import { factsWords, measuredWords, meaningWords } from '../words/findings';
import { VERDICT } from '../words/words';

interface Props {
  finding: Finding;
  flat: Flat | undefined;
  /** What lies beyond the border it speaks of. */
  other: Flat | undefined;
  /** The size from which everything holds, when the pin is smaller. */
  growTo: Length | undefined;
  /** The largest at which it does not bend, when the pin is larger. */
  shrinkTo: Length | undefined;
  /** What is asked about it first. */
  asks?: ComponentChildren;
  /** What can be done about it. */
  repairs?: ComponentChildren;
  onSize: (to: Length, what: string) => void;
  onFlat: () => void;
  onList: () => void;
  onStep: (by: 1 | -1) => void;
}

export function FindingCard({ finding: f, flat, other, growTo, shrinkTo, asks, repairs, onSize, onFlat, onList, onStep }: Props) {
  return (
    <div class="card-body">
      <p class={`verdict-line ${f.verdict}`}><b>{VERDICT[f.verdict].mark} {measuredWords(f)}</b></p>
      <p>{meaningWords(f, { flat, other })}</p>
      <p class="facts">{factsWords(f)}</p>
      {asks}
      {repairs}
      <div class="two">
        {growTo ? <button type="button" class="plain" onClick={() => onSize(growTo, 'Grew')}>Grow to {growTo.inMM}</button> : null}
        {shrinkTo ? <button type="button" class="plain" onClick={() => onSize(shrinkTo, 'Shrank')}>Shrink to {shrinkTo.inMM}</button> : null}
        {flat ? <button type="button" class="plain" onClick={onFlat}>Change {flat.name} …</button> : null}
        <button type="button" class="plain" onClick={() => onStep(-1)}>Before</button>
        <button type="button" class="plain" onClick={() => onStep(1)}>Next</button>
        <button type="button" class="plain" onClick={onList}>To the list</button>
      </div>
    </div>
  );
}
