// Fields for money, percentages and measures that the engine reads, and that
// show what it finds wrong with them.
import type { Fault } from '../engine/wire.gen';
import { typed, type Outcome } from '../state/typed';
import { TextField } from './TextField';

export const faultAt = (faults: readonly Fault[], field: string): string | undefined => faults.find((f) => f.field === field)?.what;

interface FieldProps {
  label: string;
  value: string;
  fault?: string | undefined;
  onSet: (text: string) => void;
}

const empty = (text: string) => text.trim() === '';

/** An amount of money. */
export function Amount(p: FieldProps & { currency: string }) {
  return <TextField label={p.label} value={p.value} unit={p.currency} numeric fault={p.fault} onSet={(text) => typed({ text, as: 'amount', beside: p.currency }, (t) => p.onSet(t.text))} />;
}

/** An amount that may be left empty: then it follows from something else, which is shown. */
/** An average that follows is shown to a thousandth; it is reckoned with whole. */
const brief = (amount: string) => (/\.\d{4}/.test(amount) ? Number(amount).toFixed(3) : amount);

export function OwnAmount(p: Omit<FieldProps, 'value' | 'onSet'> & { value: string | undefined; follows: string; currency: string; onSet: (text: string | undefined) => void }) {
  const set = (text: string): Outcome | Promise<Outcome> =>
    empty(text) ? () => p.onSet(undefined) : typed({ text, as: 'amount', beside: p.currency }, (t) => p.onSet(t.text));
  return <TextField label={p.label} value={p.value ?? ''} placeholder={brief(p.follows)} unit={p.currency} numeric fault={p.fault} onSet={set} />;
}

export function Percent(p: FieldProps) {
  return <TextField label={p.label} value={p.value} unit="%" numeric fault={p.fault} onSet={(text) => typed({ text, as: 'percent', beside: '%', most: 100 }, (t) => p.onSet(t.text))} />;
}

/** A weight or a thickness; 0 may be left empty, and `follows` shows what holds then. */
export function Measure(p: { label: string; value: number; unit: 'g' | 'mm'; follows?: string; fault?: string | undefined; onSet: (n: number) => void }) {
  const set = (text: string): Outcome | Promise<Outcome> =>
    empty(text) ? () => p.onSet(0) : typed({ text, as: 'amount', beside: p.unit }, (t) => p.onSet(Number(t.text)));
  const value = p.value === 0 && p.follows !== undefined ? '' : String(p.value);
  return <TextField label={p.label} value={value} placeholder={p.follows} unit={p.unit} numeric fault={p.fault} onSet={set} />;
}

export function Tick(p: { label: string; on: boolean; onTick: (on: boolean) => void }) {
  return (
    <label class="tick-box">
      <input type="checkbox" checked={p.on} onChange={(e) => p.onTick(e.currentTarget.checked)} />
      <span>{p.label}</span>
    </label>
  );
}

export function Pick(p: { label: string; value: string; options: readonly (readonly [string, string])[]; onPick: (v: string) => void; fault?: string | undefined }) {
  return (
    <label class="field">
      <span class="field-label">{p.label}</span>
      <select value={p.value} onChange={(e) => p.onPick(e.currentTarget.value)}>
        {p.options.map(([v, words]) => <option key={v} value={v}>{words}</option>)}
      </select>
      {p.fault ? <span class="complaint" role="alert">{p.fault}</span> : null}
    </label>
  );
}

/** What is wrong with a list as a whole. */
export function Faults({ faults, at }: { faults: readonly Fault[]; at: string }) {
  const what = faultAt(faults, at);
  return what ? <p class="complaint" role="alert">{what}</p> : null;
}
