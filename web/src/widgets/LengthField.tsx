import { parseLength } from '../words/length';
import { TextField } from './TextField';

interface Props {
  label: string;
  mm: number;
  least: number;
  most: number;
  onLength: (mm: number) => void;
  hideLabel?: boolean;
  autofocus?: boolean;
}

const shown = (v: number) => String(Math.round(v * 100) / 100);

/** A length typed in mm, cm or inches; a bare number is mm. */
export function LengthField(p: Props) {
  const set = (text: string) => {
    const v = parseLength(text);
    if (v === undefined) return 'Write a length such as 32 mm or 1.25 in.';
    if (v < p.least || v > p.most) return `Give ${p.least} to ${p.most} mm.`;
    p.onLength(v);
    return undefined;
  };
  return <TextField label={p.label} value={shown(p.mm)} onSet={set} unit="mm" numeric hideLabel={p.hideLabel} autofocus={p.autofocus} />;
}
