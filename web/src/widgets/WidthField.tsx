import { WIDEST } from '../state/line';
import { typed, type Outcome } from '../state/typed';
import { lineWidth, THINNEST } from '../words/hands';
import { TextField } from './TextField';

interface Props {
  label: string;
  /** mm; 0 is as thin as the maker holds. */
  width: number;
  /** mm; with 0 the width may be “thinnest”. */
  least: number;
  onWidth: (mm: number) => void;
  /** Told what becomes of a typed text, and nothing once the field is done with. */
  onReading?: (r: Promise<Outcome> | undefined) => void;
  hideLabel?: boolean;
}

/** The width of a line, typed as any other length. */
export function WidthField({ label, width, least, onWidth, onReading, hideLabel }: Props) {
  const read = (text: string): Outcome | Promise<Outcome> => {
    if (least === 0 && ['', THINNEST].includes(text.trim())) return () => onWidth(0);
    const reading = typed({ text, as: 'length', beside: 'mm', least, most: WIDEST }, (t) => onWidth(t.number));
    onReading?.(reading);
    return reading;
  };
  return <TextField label={label} value={lineWidth({ width })} onSet={read} onDone={() => onReading?.(undefined)} hideLabel={hideLabel} />;
}
