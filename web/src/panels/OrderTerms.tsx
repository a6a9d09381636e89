// The wishes that hold for a whole order: delivery, proof rounds, seconds and
// free pieces, a second currency; and what comes with a pin.
import type { Extras, PriceList, Terms } from '../engine/wire.gen';
import { typed } from '../state/typed';
import { CountField, TextField } from '../widgets/TextField';

export interface TermsProps {
  list: PriceList;
  terms: Terms;
  extras: Extras;
  /** Today as the person writes it, for a rate that is typed today. */
  today: string;
  onTerms: (change: Partial<Terms>, what: string) => void;
  onNoInto: () => void;
  onExtras: (change: Partial<Extras>, what: string) => void;
}

export function OrderTerms(p: TermsProps) {
  const { list, terms } = p;
  const ways = list.delivery.choices;
  return (
    <details class="more terms">
      <summary>Delivery, seconds, packing, a second currency</summary>
      <div class="order-fields">
        {ways.length > 1 ? (
          <Pick label="delivery" value={terms.delivery || (ways[0]?.name ?? '')} onPick={(delivery) => p.onTerms({ delivery }, `Delivery: ${delivery}`)}
            options={ways.map((w) => [w.name, w.days > 0 ? `${w.name}, ${w.days} working days` : w.name])} />
        ) : null}
        {list.shipping.by === 'class' && list.shipping.classes.length > 1 ? (
          <Pick label="carriage" value={terms.shipping || (list.shipping.classes[0]?.name ?? '')} onPick={(shipping) => p.onTerms({ shipping }, `Carriage: ${shipping}`)}
            options={list.shipping.classes.map((c) => [c.name, c.name])} />
        ) : null}
        <CountField label="proof rounds (0: those in the price)" value={terms.rounds} least={0} most={20} onCount={(rounds) => p.onTerms({ rounds }, 'Proof rounds')} />
        <CountField label="seconds in a hundred" value={terms.seconds} least={0} most={100} onCount={(seconds) => p.onTerms({ seconds }, 'Seconds')} />
        <CountField label="given away" value={terms.free} least={0} most={100000} unit="pins" onCount={(free) => p.onTerms({ free }, 'Given away')} />
      </div>
      <Packing {...p} />
      <Second {...p} />
    </details>
  );
}

/** What was picked for another list stays to be seen. */
function Pick(p: { label: string; value: string; options: readonly (readonly [string, string])[]; onPick: (v: string) => void }) {
  const strange = p.options.every(([v]) => v !== p.value);
  return (
    <label class="field">
      <span class="field-label">{p.label}</span>
      <select value={p.value} onChange={(e) => p.onPick(e.currentTarget.value)}>
        {p.options.map(([v, words]) => <option key={v} value={v}>{words}</option>)}
        {strange ? <option value={p.value}>{p.value}, not in this list</option> : null}
      </select>
    </label>
  );
}

function Packing({ list, extras, onExtras }: TermsProps) {
  const kinds = list.pack.packaging.listed.map((k) => k.id);
  return (
    <div class="order-fields">
      <Pick label="packaging" value={extras.packaging ?? ''} options={[['', 'none'], ...kinds.map((k) => [k, k] as const)]}
        onPick={(packaging) => onExtras({ packaging }, packaging ? `Packaging: ${packaging}` : 'No packaging')} />
      <Tick label="backing card from the maker" on={extras.card ?? false} onTick={(card) => onExtras({ card }, card ? 'With a card' : 'Without a card')} />
      <Tick label="clear dome" on={extras.dome ?? false} onTick={(dome) => onExtras({ dome }, dome ? 'With a dome' : 'Without a dome')} />
      <CountField label="parts struck from dies of their own" value={extras.furtherDies ?? 0} least={0} most={20} onCount={(furtherDies) => onExtras({ furtherDies }, furtherDies === 0 ? 'One die' : `Further dies: ${furtherDies}`)} />
      <Tick label="ordered before, the die is there" on={extras.reorder ?? false} onTick={(reorder) => onExtras({ reorder }, reorder ? 'A reorder' : 'A first order')} />
      {extras.reorder ? <CountField label="the die was cut" value={extras.dieAge ?? 0} least={0} most={1200} unit="months ago" onCount={(dieAge) => onExtras({ dieAge }, 'Age of the die')} /> : null}
    </div>
  );
}

function Tick(p: { label: string; on: boolean; onTick: (on: boolean) => void }) {
  return (
    <label class="tick-box">
      <input type="checkbox" checked={p.on} onChange={(e) => p.onTick(e.currentTarget.checked)} />
      <span>{p.label}</span>
    </label>
  );
}

/** Usual decimals until the person says otherwise in the price list; the engine
 * refuses more than the currency has. */
const FEW = 2;

function Second(p: TermsProps) {
  const into = p.terms.into;
  const base = into ?? { currency: '', minorDigits: FEW, rate: '', dated: p.today };
  const currency = (text: string) => typed({ text, as: 'currency' }, (t) =>
    p.onTerms({ into: { ...base, currency: t.text, rate: base.rate || '1' } }, `Also in ${t.text}`));
  const rate = (text: string) => typed({ text, as: 'amount', beside: base.currency }, (t) =>
    p.onTerms({ into: { ...base, rate: t.text, dated: p.today } }, 'Rate of exchange'));
  return (
    <div class="order-fields">
      <TextField label="also in (its three letters)" value={base.currency} placeholder="none" onSet={(text) => (text.trim() === '' ? () => p.onNoInto() : currency(text))} />
      {into ? <TextField label={`${p.list.currency} 1 is`} value={base.rate} unit={base.currency} numeric onSet={rate} /> : null}
      {into ? <TextField label="as of" value={base.dated} onSet={(text) => () => p.onTerms({ into: { ...base, dated: text.trim() } }, 'Day of the rate')} /> : null}
      {into ? <CountField label="its digits after the point" value={base.minorDigits} least={0} most={4} onCount={(minorDigits) => p.onTerms({ into: { ...base, minorDigits } }, 'Digits of the second currency')} /> : null}
    </div>
  );
}
