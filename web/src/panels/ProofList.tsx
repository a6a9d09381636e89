// What differs, one entry each: walked to, accepted, or to be changed.
import type { Deviation, ProofRound, RGB8 } from '../engine/wire.gen';
import { decided } from '../state/proofs';
import { Swatch } from '../widgets/basic';
import { TextField } from '../widgets/TextField';
import { hasPlace, KIND, whereWords } from '../words/proof';

export interface ProofListProps {
  round: ProofRound;
  notes: readonly string[];
  picked: number | undefined;
  onPick: (number: number | undefined) => void;
  onChoice: (number: number, choice: { change?: boolean; note?: string }, what: string) => void;
}

export function ProofList(p: ProofListProps) {
  const all = p.round.differences;
  return (
    <>
      {all.length === 0 ? <p class="fine"><span aria-hidden="true">✓</span> Nothing differs by more than the tolerances.</p> : (
        <ol class="proof-list">{all.map((d) => <Entry key={d.number} {...p} d={d} />)}</ol>
      )}
      {p.notes.map((n) => <p key={n} class="hint">{n}</p>)}
    </>
  );
}

function Entry({ d, round, picked, onPick, onChoice }: ProofListProps & { d: Deviation }) {
  const choice = decided(round, d.number);
  const unsure = d.verdict !== 'fails';
  return (
    <li class={d.number === picked ? 'picked' : ''}>
      <button type="button" class="proof-entry" aria-expanded={d.number === picked} onClick={() => onPick(d.number === picked ? undefined : d.number)}>
        <span class="flag-no" aria-hidden="true">{d.number}</span>
        <span>
          <b>{KIND[d.kind]}{unsure ? ' (cannot tell)' : ''}</b> <Pair asked={d.askedRGB} shown={d.shownRGB} /><br />{d.words}
          {hasPlace(d) ? <span class="hint"> {whereWords(d)}.</span> : null}
        </span>
      </button>
      {unsure ? null : (
        <div class="proof-decide">
          <fieldset class="choice">
            <legend class="unseen">What is to become of it</legend>
            <div class="choice-row">
              {[true, false].map((change) => (
                <label key={String(change)}>
                  <input type="radio" name={`${round.id}-${d.number}`} checked={choice.change === change} onChange={() => onChoice(d.number, { change }, change ? `Ask to change ${d.number}` : `Accepted ${d.number}`)} />
                  <span>{change ? 'ask to change it' : 'accept it'}</span>
                </label>
              ))}
            </div>
          </fieldset>
          {d.number === picked && choice.change ? <TextField label="Your own word on it" value={choice.note} onSet={(note) => Promise.resolve(() => onChoice(d.number, { note: note.trim() }, `A word on ${d.number}`))} /> : null}
        </div>
      )}
    </li>
  );
}

function Pair({ asked, shown }: { asked: RGB8 | undefined; shown: RGB8 | undefined }) {
  if (!asked || !shown) return null;
  return <span class="proof-pair"><Swatch rgb={asked} label="asked for" /><span aria-hidden="true">→</span><Swatch rgb={shown} label="shown" /></span>;
}
