// From where the pin is looked at, and how much of it is read from there.
import { useState } from 'preact/hooks';
import type { EyeUsual, Length, ReadingAnswer, ReadingAt, Thresholds, Viewing } from '../engine/wire.gen';
import type { Outcome } from '../state/typed';
import { Why } from '../widgets/basic';
import { LengthField } from '../widgets/LengthField';
import { TextField } from '../widgets/TextField';
import { allFrom, distance, rowSays } from '../words/sight';

export interface SightDistancesProps {
  usual: EyeUsual;
  viewing: Viewing;
  thresholds: Thresholds;
  reading: ReadingAnswer | undefined;
  late: boolean;
  onDistance: (mm: number) => void;
  /** Takes what was typed, or says what is wrong with it. */
  onAcuity: (text: string) => Promise<Outcome>;
  onSize: (mm: number, words: string) => void;
}

export function SightDistances(p: SightDistancesProps) {
  const named = p.usual.distances.some((d) => d.mm === p.viewing.distance);
  const [other, setOther] = useState(!named);
  const free = other || !named;
  const { reading } = p;
  return (
    <fieldset class={p.late ? 'seen-from late-answer' : 'seen-from'}>
      <legend>Seen from</legend>
      {p.usual.distances.map((d) => (
        <Row
          key={d.mm} name={d.name} mm={d.mm} row={reading?.rows.find((r) => r.viewing.distance === d.mm)} checked={!free && d.mm === p.viewing.distance}
          onPick={() => { setOther(false); p.onDistance(d.mm); }} onSize={p.onSize}
        />
      ))}
      <Row name="from another distance" mm={free ? p.viewing.distance : undefined} row={free && !named ? reading?.at : undefined} checked={free} onPick={() => setOther(true)} onSize={p.onSize} />
      {free ? (
        <div class="seen-other">
          <LengthField
            label="Distance, in mm, cm, m or in" mm={p.viewing.distance} least={p.usual.leastDistance} most={p.usual.greatestDistance}
            onLength={(mm) => { setOther(!p.usual.distances.some((d) => d.mm === mm)); p.onDistance(mm); }}
          />
        </div>
      ) : null}
      {p.viewing.acuity === p.usual.acuity ? null : <p class="hint">Seen by an eye of {p.viewing.acuity}, where {p.usual.acuity} is a normal one.</p>}
      <Why>
        <TextField class="acuity" label={`Eyesight, decimal; ${p.usual.acuity} is a normal eye`} value={String(p.viewing.acuity)} numeric onSet={p.onAcuity} />
        <p>Two things are told apart when the gap between them is at least {p.thresholds.gap} minute of arc wide to a normal eye (the ring of ISO 8596){reading ? `: ${reading.at.gap.inMM} from here` : ''}. Capitals are read from {p.thresholds.letter} minutes, with ease from {p.thresholds.letterBest} (ISO 9241-303){reading ? `: ${reading.at.letter.inMM} and ${reading.at.letterBest.inMM}` : ''}.</p>
        <p>Eyesight enters as the distance divided by it: an eye of 0.5 sees from 1 m what a normal one sees from 2 m. That is this tool’s convention; it is exact for what is told apart by its angle alone.</p>
      </Why>
    </fieldset>
  );
}

interface RowProps {
  name: string;
  mm: number | undefined;
  row: ReadingAt | undefined;
  checked: boolean;
  onPick: () => void;
  onSize: (mm: number, words: string) => void;
}

function Row({ name, mm, row, checked, onPick, onSize }: RowProps) {
  return (
    <div class={checked ? 'seen-row now' : 'seen-row'}>
      <label class="tick">
        <input type="radio" name="seen-from" checked={checked} onChange={onPick} />
        <span><b>{name}</b>{mm === undefined ? '' : <span class="hint"> {distance(mm)}</span>}</span>
      </label>
      {row ? <p class="seen-says">{rowSays(row)} {row.fail + row.unsure > 0 ? <All row={row} onSize={onSize} /> : null}</p> : null}
    </div>
  );
}

function All({ row, onSize }: { row: ReadingAt; onSize: (mm: number, words: string) => void }) {
  const to: Length = row.readFrom;
  if (to.mm <= 0) return <span class="hint">{allFrom(row)}</span>;
  return <button type="button" class="link" onClick={() => onSize(to.mm, to.inMM)}>{allFrom(row)}<span class="unseen">, {row.name}: make the pin so large</span></button>;
}
