// One maker's prices, to be written over.
import type { Break, Charge, ChargeBy, ColourPrices, PiecePrices, PriceList } from '../engine/wire.gen';
import { typed } from '../state/typed';
import { mm } from '../words/length';
import { CountField, TextField } from './TextField';

interface Props {
  list: PriceList;
  /** Changes the list as it then is: another cell may have been read since. */
  onList: (change: (l: PriceList) => PriceList, what: string) => void;
}

type Set = (change: (l: PriceList) => Partial<PriceList>, what: string) => void;

const amount = (text: string, beside: string, take: (exact: string) => void) =>
  typed({ text, as: 'amount', beside }, (t) => take(t.text));

export function PriceTable({ list, onList }: Props) {
  const set: Set = (change, what) => onList((l) => ({ ...l, ...change(l), invented: false }), what);
  const rate = rateOf(list, set);
  return (
    <details class="more">
      <summary>Price list: {list.name}</summary>
      <div class="limit-grid">
        <TextField label="die, once" unit={list.currency} value={list.die.flat} numeric onSet={rate((l, flat) => ({ die: { ...l.die, flat } }), 'Die charge')} />
        <TextField label="shipping, once" unit={list.currency} value={list.shipping.flat} numeric onSet={rate((l, flat) => ({ shipping: { ...l.shipping, flat } }), 'Shipping')} />
        <CountField label="enamels in the price" value={list.colours.included} least={0} most={12} onCount={(included) => set((l) => ({ colours: { ...l.colours, included } }), 'Included colours')} />
        <CountField label="least pieces" value={list.least.design} least={1} most={100000} onCount={(design) => set((l) => ({ least: { ...l.least, design } }), 'Minimum')} />
        <TextField label="currency" value={list.currency}
          onSet={(text) => typed({ text, as: 'currency' }, (t) => set(() => ({ currency: t.text }), 'Currency'))} />
        <CountField label="digits after the point" value={list.minorDigits} least={0} most={4} onCount={(n) => set(() => ({ minorDigits: n }), 'Digits of the currency')} />
        <ChargeField label="each further enamel" charge={list.colours.further} currency={list.currency} onCharge={(c) => set((l) => ({ colours: { ...l.colours, further: { ...l.colours.further, ...c } } }), 'Further enamel')} />
        <ChargeField label="hard instead of soft" charge={hardOf(list.colours)} currency={list.currency} onCharge={(c) => set((l) => ({ colours: withHard(l.colours, c) }), 'Hard enamel')} />
      </div>
      <Further list={list} set={set} />
      <Breaks list={list} set={set} />
    </details>
  );
}

const rateOf = (list: PriceList, set: Set) => (place: (l: PriceList, exact: string) => Partial<PriceList>, what: string) => (text: string) =>
  amount(text, list.currency, (exact) => set((l) => place(l, exact), what));

const hardOf = (c: ColourPrices): Charge => c.fill.listed.find((k) => k.id === 'hard')?.charge ?? c.fill.others;

const withFancy = (c: ColourPrices, change: Partial<Charge>): ColourPrices =>
  ({ ...c, fancy: { ...c.fancy, others: { ...c.fancy.others, ...change } } });

function withHard(c: ColourPrices, change: Partial<Charge>): ColourPrices {
  const charge = { ...hardOf(c), ...change };
  return { ...c, fill: { ...c.fill, listed: [{ id: 'hard', charge }, ...c.fill.listed.filter((k) => k.id !== 'hard')] } };
}

/** What few orders have. */
function Further({ list, set }: { list: PriceList; set: Set }) {
  const rate = rateOf(list, set);
  return (
    <details class="more">
      <summary>Further charges: second post, back stamp, fancy fills, print</summary>
      <div class="limit-grid">
        <TextField label="second post, a piece" unit={list.currency} value={list.back.post.rate} numeric onSet={rate((l, exact) => ({ back: { ...l.back, post: { ...l.back.post, rate: exact } } }), 'Second post')} />
        <TextField label="stamp on the back, once" unit={list.currency} value={list.back.stamp.rate} numeric onSet={rate((l, exact) => ({ back: { ...l.back, stamp: { ...l.back.stamp, rate: exact } } }), 'Stamp on the back')} />
        <TextField label="print set-up, each colour, once" unit={list.currency} value={list.colours.printSetUp} numeric onSet={rate((l, printSetUp) => ({ colours: { ...l.colours, printSetUp } }), 'Print set-up')} />
        <ChargeField label="each colour printed on top" charge={list.colours.printed} currency={list.currency} onCharge={(c) => set((l) => ({ colours: { ...l.colours, printed: { ...l.colours.printed, ...c } } }), 'Printed colour')} />
        <ChargeField label="each fancy fill" charge={list.colours.fancy.others} currency={list.currency} onCharge={(c) => set((l) => ({ colours: withFancy(l.colours, c) }), 'Fancy fill')} />
      </div>
    </details>
  );
}

const WAYS: readonly ChargeBy[] = ['piece', 'percent', 'set-up'];

function ChargeField(p: { label: string; charge: Charge; currency: string; onCharge: (c: Partial<Charge>) => void }) {
  const beside = p.charge.by === 'percent' ? '%' : p.currency;
  return (
    <span class="charge">
      <TextField label={p.label} value={p.charge.rate} numeric onSet={(text) => amount(text, beside, (rate) => p.onCharge({ rate }))} />
      <select
        aria-label={`${p.label}: counted by`}
        value={p.charge.by}
        onChange={(e) => p.onCharge({ by: WAYS.find((w) => w === e.currentTarget.value) ?? 'piece' })}
      >
        <option value="piece">{p.currency} a piece</option>
        <option value="percent">% of the unit price</option>
        <option value="set-up">{p.currency} once, as a set-up</option>
      </select>
    </span>
  );
}

const replaced = <T,>(all: readonly T[], at: number, now: T) => all.map((v, i) => (i === at ? now : v));

function Breaks({ list, set: setList }: { list: PriceList; set: Set }) {
  const { pieces } = list;
  const set = (change: (p: PiecePrices) => Partial<PiecePrices>, what: string) =>
    setList((l) => ({ pieces: { ...l.pieces, ...change(l.pieces) } }), what);
  // Rows move when the pieces of one change: a row goes by these where it is gone from its place.
  const row = (at: number, from: number, change: (b: Break) => Break, what: string) => set((l) => {
    const i = l.breaks[at]?.from === from ? at : l.breaks.findIndex((b) => b.from === from);
    return { breaks: l.breaks.map((b, k) => (k === i ? change(b) : b)).sort((a, b) => a.from - b.from) };
  }, what);
  const cell = (i: number, from: number, col: number) => (text: string) =>
    amount(text, list.currency, (exact) => row(i, from, (b) => ({ ...b, unit: replaced(b.unit, col, exact) }), 'Unit price'));
  const size = (col: number) => (text: string) =>
    typed({ text, as: 'length', beside: 'mm' }, (t) => set((l) => ({ sizes: replaced(l.sizes, col, t.number) }), 'Size class'));
  const add = () => set((l) => {
    const last = l.breaks.at(-1);
    return last ? { breaks: [...l.breaks, { from: last.from * 2, unit: [...last.unit] }] } : {};
  }, 'Added a quantity break');
  return (
    <div class="scroll">
      <table class="breaks">
        <caption>Soft enamel, {list.currency} a piece; size classes by {pieces.sizeBy === 'mean' ? 'the mean of width and height' : 'the longest side'}</caption>
        <thead>
          <tr>
            <th scope="col">from</th>
            {pieces.sizes.map((s, j) => (
              <th scope="col" key={j}><TextField label={`Size class ${j + 1}, up to ${mm(s)}`} hideLabel value={String(s)} unit="mm" numeric onSet={size(j)} /></th>
            ))}
            <th><span class="unseen">Remove</span></th>
          </tr>
        </thead>
        <tbody>
          {pieces.breaks.map((b, i) => (
            <tr key={i}>
              <th scope="row"><CountField label={`Break ${i + 1}, from pieces`} hideLabel value={b.from} least={1} most={1000000} onCount={(n) => row(i, b.from, (q) => ({ ...q, from: n }), 'Quantity break')} /></th>
              {b.unit.map((u, j) => (
                <td key={j}><TextField label={`From ${b.from}, size class ${j + 1}`} hideLabel value={u} numeric onSet={cell(i, b.from, j)} /></td>
              ))}
              <td>
                {pieces.breaks.length > 1 ? (
                  <button type="button" class="link" aria-label={`Remove the break at ${b.from}`} onClick={() => set((l) => ({ breaks: l.breaks.filter((_, k) => k !== i) }), 'Removed a quantity break')}>✕</button>
                ) : null}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <button type="button" class="plain" onClick={add}>Add a quantity break</button>
    </div>
  );
}
