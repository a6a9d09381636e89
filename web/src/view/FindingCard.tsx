import type { Finding, Flat } from '../engine/wire.gen';
import { mm } from '../words/length';
import { measuredWords, meaningWords, VERDICT } from '../words/words';

interface Props {
  finding: Finding;
  flat: Flat | undefined;
  holdsFrom: number;
  size: number;
  onGrow: (mm: number) => void;
  onFlat: () => void;
  onList: () => void;
  onStep: (by: 1 | -1) => void;
}

export function FindingCard({ finding: f, flat, holdsFrom, size, onGrow, onFlat, onList, onStep }: Props) {
  const grown = Math.ceil(holdsFrom * 10) / 10;
  return (
    <div class="card-body">
      <p class={`verdict-line ${f.verdict}`}><b>{VERDICT[f.verdict].mark} {measuredWords(f)}</b></p>
      <p>{meaningWords(f, flat)}</p>
      <p class="facts">{mm(f.length)} long, {mm(f.typical, 2)} wide for the most part; measured to ±{mm(f.error, 2)}.</p>
      <div class="two">
        {grown > size ? <button type="button" class="plain" onClick={() => onGrow(grown)}>Grow to {mm(grown)}</button> : null}
        {flat ? <button type="button" class="plain" onClick={onFlat}>Change {flat.name} …</button> : null}
        <button type="button" class="plain" onClick={() => onStep(-1)}>Before</button>
        <button type="button" class="plain" onClick={() => onStep(1)}>Next</button>
        <button type="button" class="plain" onClick={onList}>To the list</button>
      </div>
    </div>
  );
}
