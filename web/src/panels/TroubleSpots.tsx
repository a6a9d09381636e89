// The trouble spots as a list, the worst first.
import { useState } from 'preact/hooks';
import type { Check, Finding } from '../engine/wire.gen';
import { Why } from '../widgets/basic';
import { kindWords, manyWords, measuredWords } from '../words/findings';
import { mm } from '../words/length';
import { VERDICT } from '../words/words';
import { SaveMarks } from './SaveMarks';

/** A list longer than this is read by nobody: the rest unfolds. */
const FEW = 40;

export interface TroubleSpotsProps {
  check: Check | undefined;
  onFinding: (index: number) => void;
}

export function TroubleSpots({ check, onFinding }: TroubleSpotsProps) {
  const [whole, setWhole] = useState(false);
  const all = check?.findings ?? [];
  if (all.length === 0) return <p class="fine"><span aria-hidden="true">✓</span> Every line and every colour area holds at this size.</p>;
  const listed = whole ? all : all.slice(0, FEW);
  return (
    <>
      <h3>Trouble spots</h3>
      {all.length > FEW ? <p class="note">{manyWords(all)}</p> : null}
      <ol class="findings">
        {listed.map((f, i) => <Row key={i} finding={f} n={i + 1} onFinding={() => onFinding(i)} />)}
      </ol>
      {all.length > FEW ? (
        <button type="button" class="plain" aria-expanded={whole} onClick={() => setWhole(!whole)}>
          {whole ? `Only the first ${FEW}` : `The other ${all.length - FEW}`}
        </button>
      ) : null}
      <SaveMarks />
      {check && check.holdsFrom > 0 ? <p>As drawn, every line and area holds from {mm(check.holdsFrom)}.</p> : null}
      <Why>
        <p>Width is measured along the middle of each line and area, to the true edge inside a pixel, so to about {mm(Math.max(...all.map((f) => f.error)), 2)} on this drawing. Within that of a limit the answer is “cannot tell”, not a guess.</p>
      </Why>
    </>
  );
}

function Row({ finding: f, n, onFinding }: { finding: Finding; n: number; onFinding: () => void }) {
  const v = VERDICT[f.verdict];
  return (
    <li>
      <button type="button" onClick={onFinding} class={f.verdict}>
        <span class="flag-no" aria-hidden="true">{n}</span>
        <span><b>{kindWords(f)}</b><br />{measuredWords(f)}</span>
        <span class="verdict-mark">{v.mark}<span class="unseen"> {v.word}</span></span>
      </button>
    </li>
  );
}
