// What was agreed, the days, and counts that are typed instead of tapped.
import type { Parcel, ParcelRow } from '../engine/wire.gen';
import { typed } from '../state/typed';
import { withRow } from '../state/parcel';
import { CountField, TextField } from '../widgets/TextField';

export interface TermsProps {
  parcel: Parcel;
  onChange: (change: (p: Parcel) => Parcel, what: string) => void;
}

export function ParcelTerms({ parcel, onChange }: TermsProps) {
  const part = (change: Partial<Parcel>, what: string) => onChange((p) => ({ ...p, ...change }), what);
  const percent = (key: 'agreed' | 'sure', least: number, most: number) => (text: string) =>
    typed({ text, as: 'percent', beside: '%', least, most }, (t) => part({ [key]: t.number }, key === 'agreed' ? 'Share agreed' : 'Confidence'));
  return (
    <details class="more">
      <summary>What was agreed, and when</summary>
      <div class="order-fields">
        <TextField label="Maker" value={parcel.maker} onSet={(maker) => () => part({ maker: maker.trim() }, 'Maker')} />
        <TextField label="Flawed ones agreed, at most" value={String(parcel.agreed)} unit="%" numeric onSet={percent('agreed', 0, 100)} />
        <CountField label="Tell the maker within" value={parcel.within} least={0} most={365} unit="days" onCount={(within) => part({ within }, 'Days to tell the maker')} />
        <TextField label="How sure, where not all are seen" value={String(parcel.sure)} unit="%" numeric onSet={percent('sure', 50, 99.99)} />
        <Day label="Ordered on" value={parcel.ordered} onSet={(ordered) => part({ ordered }, 'Day of the order')} />
        <Day label="Was to be here on" value={parcel.due} onSet={(due) => part({ due }, 'Day it was to be here')} />
        <Day label="Came on" value={parcel.arrived} onSet={(arrived) => part({ arrived }, 'Day it came')} />
      </div>
      <p class="hint">The share agreed is common practice, no published source; put in what you and your maker wrote down.</p>
    </details>
  );
}

export function Day(p: { label: string; value: string | undefined; onSet: (day: string) => void }) {
  return (
    <label class="field">
      <span class="field-label">{p.label}</span>
      <input type="date" value={p.value ?? ''} onChange={(e) => p.onSet(e.currentTarget.value)} />
    </label>
  );
}

export function ParcelNumbers({ parcel, onChange }: TermsProps) {
  const row = (i: number, change: Partial<ParcelRow>, what: string) => onChange((p) => withRow(p, i, change), what);
  return (
    <details class="more">
      <summary>Type the numbers instead</summary>
      {parcel.rows.map((r, i) => (
        <fieldset key={r.design + r.version} class="number-row">
          <legend>{r.name}</legend>
          <div class="order-fields">
            <CountField label="Ordered" value={r.ordered} least={0} most={20000} unit="pins" onCount={(ordered) => row(i, { ordered }, 'Number ordered')} />
            <CountField label="Came (0: as many as counted)" value={r.received ?? 0} least={0} most={20000} unit="pins" onCount={(received) => row(i, { received }, 'Number that came')} />
            <CountField label="Sound" value={r.firsts} least={0} most={20000} unit="pins" onCount={(firsts) => row(i, { firsts }, 'Sound ones')} />
          </div>
        </fieldset>
      ))}
    </details>
  );
}
