import type { Typed } from '../engine/wire.gen';
import { typed } from '../state/typed';
import { TextField } from './TextField';

interface Props {
  label: string;
  mm: number;
  /** Bounds, mm. */
  least: number;
  most: number;
  onLength: (mm: number, words: string) => void;
  onDone?: () => void;
  hideLabel?: boolean;
  autofocus?: boolean;
}

const shown = (v: number) => String(Math.round(v * 100) / 100);

/** A length typed in mm, cm or inches; a bare number is mm. */
export function LengthField(p: Props) {
  const set = (text: string) =>
    typed({ text, as: 'length', beside: 'mm', least: p.least, most: p.most }, (t: Typed) => p.onLength(t.number, t.words));
  return (
    <TextField
      label={p.label} value={shown(p.mm)} onSet={set} onDone={p.onDone} unit="mm" numeric
      hideLabel={p.hideLabel} autofocus={p.autofocus}
    />
  );
}
