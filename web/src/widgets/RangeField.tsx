// A figure that is not known better than between two ends.
import type { Range } from '../engine/wire.gen';
import { typed } from '../state/typed';
import { TextField } from './TextField';

interface Props {
  label: string;
  unit: string;
  range: Range;
  /** Changes the range as it is by then. */
  onRange: (change: Partial<Range>) => void;
}

export function RangeField({ label, unit, range, onRange }: Props) {
  const set = (end: keyof Range, text: string) =>
    typed({ text, as: 'amount', beside: unit }, (t) => onRange({ [end]: Number(t.text) }));
  return (
    <fieldset class="range-field">
      <legend>{label}</legend>
      <TextField label="from" value={String(range.low)} numeric onSet={(t) => set('low', t)} />
      <TextField label="to" value={String(range.high)} unit={unit} numeric onSet={(t) => set('high', t)} />
    </fieldset>
  );
}
