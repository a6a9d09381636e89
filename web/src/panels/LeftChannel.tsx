// One way in which pieces reach people: what it comes to, and its figures.
import type { Channel, ChannelRow, Fault, GivenOf, Selling } from '../engine/wire.gen';
import { KIND_FIELDS, rowSays, type ChannelField } from '../words/selling';
import { Amount, faultAt, Measure, OwnAmount, Percent, Pick, Tick } from '../widgets/MoneyFields';
import { CountField, TextField } from '../widgets/TextField';
import { Lines, RowHead } from './LeftRow';

interface Props {
  channel: Channel;
  at: number;
  plan: Selling;
  row: ChannelRow | undefined;
  currency: string;
  faults: readonly Fault[];
  onChange: (at: number, change: Partial<Channel>, what: string) => void;
  onRemove: (at: number) => void;
}

/** Pieces that go into one sale, at most. */
const MOST_IN_ONE = 1000;

export function LeftChannel(p: Props) {
  const { channel: c, row } = p;
  const wrong = p.faults.some((f) => f.field.startsWith(`channels[${p.at}].`));
  return (
    <li class={`ledger-row${Number(c.share) === 0 ? ' unused' : ''}`}>
      <details open={wrong || undefined}>
        <summary>
          <RowHead name={c.name} says={`${c.share} %${row ? `, ${rowSays(row)}` : ''}`} sum={row && row.lines.length > 0 ? row.leftSays : '–'} />
          {wrong ? <span class="fault-count">to look at</span> : null}
        </summary>
        <div class="ledger-body">
          <ChannelFields {...p} />
          {row && row.lines.length > 0 ? <Lines row={row} /> : null}
          <button type="button" class="link" aria-label={`take it out: ${c.name}`} onClick={() => p.onRemove(p.at)}>take it out</button>
        </div>
      </details>
    </li>
  );
}

function ChannelFields(p: Props) {
  const { channel: c } = p;
  const set = (change: Partial<Channel>, what: string) => p.onChange(p.at, change, `${c.name}: ${what}`);
  const fault = (key: keyof Channel) => faultAt(p.faults, `channels[${p.at}].${key}`);
  // A figure that is not usual for the kind stays to be seen where it counts.
  const has = (key: ChannelField) => KIND_FIELDS[c.kind].includes(key) || (c.kind !== 'gift' && key !== 'pieces' && Number(c[key as keyof Channel]) > 0);
  const amount = (key: 'feeFixed' | 'once' | 'others' | 'postPaid', label: string) =>
    <Amount label={label} value={c[key]} currency={p.currency} fault={fault(key)} onSet={(v) => set({ [key]: v }, label)} />;
  const percent = (key: 'cut' | 'feePercent' | 'given', label: string) =>
    <Percent label={label} value={c[key]} fault={fault(key)} onSet={(v) => set({ [key]: v }, label)} />;
  return (
    <div class="order-fields">
      <TextField label="called" value={c.name} onSet={(text) => (text.trim() === '' ? 'A way to sell has a name. Type one.' : () => set({ name: text.trim() }, 'its name'))} />
      <Percent label="share of the good pieces" value={c.share} fault={fault('share')} onSet={(share) => set({ share }, 'its share')} />
      {has('price') ? (
        <OwnAmount label={c.kind === 'set' ? 'price of a set' : 'price, where it differs'} value={c.price === '0' ? undefined : c.price} follows={p.plan.price} currency={p.currency} fault={fault('price')} onSet={(v) => set({ price: v ?? '0' }, 'its price')} />
      ) : null}
      {has('pieces') ? <CountField label="of these pins in a set" value={Math.max(1, c.pieces)} least={1} most={MOST_IN_ONE} unit="pins" fault={fault('pieces')} onCount={(pieces) => set({ pieces }, 'pins in a set')} /> : null}
      {has('others') ? amount('others', 'the rest of a set costs') : null}
      {has('others') ? <Measure label="the rest of a set weighs" value={c.othersGrams} unit="g" fault={fault('othersGrams')} onSet={(othersGrams) => set({ othersGrams }, 'weight of the rest')} /> : null}
      {has('cut') ? percent('cut', 'the shop keeps') : null}
      {has('feePercent') ? percent('feePercent', 'fee, of all that is paid') : null}
      {has('feeFixed') ? amount('feeFixed', 'fee for each sale') : null}
      {has('once') ? amount('once', 'paid once: table, reader, the way') : null}
      {has('given') ? percent('given', 'passed on') : null}
      {has('given') ? <Pick label="passed on is a share of" value={c.givenOf || 'left'} options={GIVEN} onPick={(v) => set({ givenOf: v as GivenOf }, 'what is passed on')} fault={fault('givenOf')} /> : null}
      {has('posted') ? <Tick label="goes by post" on={c.posted} onTick={(posted) => set({ posted }, posted ? 'by post' : 'not by post')} /> : null}
      {c.posted && c.kind !== 'gift' ? amount('postPaid', 'buyers pay for posting') : null}
      {c.posted && c.kind !== 'set' ? <CountField label="pins in a parcel" value={Math.max(1, c.pieces)} least={1} most={MOST_IN_ONE} unit="pins" fault={fault('pieces')} onCount={(pieces) => set({ pieces }, 'pins in a parcel')} /> : null}
      {fault('posted') ? <p class="complaint" role="alert">{fault('posted')}</p> : null}
      {c.kind !== 'gift' ? <Tick label="tax on sales applies" on={c.taxed} onTick={(taxed) => set({ taxed }, taxed ? 'taxed' : 'not taxed')} /> : null}
    </div>
  );
}

const GIVEN: readonly (readonly [GivenOf, string])[] = [['left', 'what is left after costs'], ['price', 'the price']];
