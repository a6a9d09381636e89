// What the proof says of its size, and from when on something counts as differing.
import type { Said, Size, Tolerances } from '../engine/wire.gen';
import { typed } from '../state/typed';
import { Choice, Why } from '../widgets/basic';
import { LengthField } from '../widgets/LengthField';
import { TextField } from '../widgets/TextField';

export interface SaidProps {
  said: Said;
  tolerances: Tolerances;
  maker: string;
  dated: string;
  onMaker: (maker: string) => void;
  onSaid: (change: (s: Said) => Said, what: string) => void;
  onTolerances: (t: Tolerances) => void;
}

const BY: readonly { value: Size['by']; label: string }[] = [
  { value: 'longest', label: 'longest side' }, { value: 'width', label: 'width' }, { value: 'height', label: 'height' }, { value: 'mean', label: 'mean of both' },
];

export function ProofSaid(p: SaidProps) {
  const { size } = p.said;
  return (
    <div class="proof-said">
      <TextField label="Maker" value={p.maker} onSet={(t) => Promise.resolve(() => p.onMaker(t.trim()))} />
      <TextField
        label="Size the proof states" value={size.mm > 0 ? String(size.mm) : ''} unit="mm" numeric placeholder="none"
        onSet={(text) => text.trim() === ''
          ? Promise.resolve(() => p.onSaid((s) => ({ ...s, size: { ...s.size, mm: 0 } }), 'No size stated'))
          : typed({ text, as: 'length', beside: 'mm', least: 1, most: 300 }, (t) => p.onSaid((s) => ({ ...s, size: { ...s.size, mm: t.number } }), `The proof states ${t.words}`))}
      />
      {size.mm > 0 ? <Choice legend="which is the" value={size.by} options={BY} onPick={(by) => p.onSaid((s) => ({ ...s, size: { ...s.size, by } }), 'By another measure')} /> : null}
      <Why ask="from when on does something count?">
        <p>These are this tool’s own bounds, not a rule of the trade: change them if your maker’s drawings are rougher, or your eye is stricter.</p>
        <div class="order-fields">
          {LENGTHS.map(([key, label]) => (
            <LengthField key={key} label={label} mm={p.tolerances[key]} least={0.01} most={10} onLength={(mm) => p.onTolerances({ ...p.tolerances, [key]: mm })} />
          ))}
          <TextField
            label="Colour off by more than" value={String(p.tolerances.colour)} unit="CIEDE2000" numeric
            onSet={(text) => typed({ text, as: 'percent', beside: '%', least: 0.5, most: 50 }, (t) => p.onTolerances({ ...p.tolerances, colour: t.number }))}
          />
        </div>
      </Why>
    </div>
  );
}

type LengthKey = 'outline' | 'line' | 'lineGone' | 'added' | 'post';

const LENGTHS: readonly [LengthKey, string][] = [
  ['outline', 'Outline off by more than'], ['line', 'Line wider or thinner by more than'], ['lineGone', 'Line missing for more than'], ['added', 'Something added, longer than'], ['post', 'Post off by more than'],
];
