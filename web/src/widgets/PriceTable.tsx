// One maker's prices, to be written over.
import type { Charge, PriceList } from '../engine/wire.gen';
import { parseRate } from '../words/money';
import { mm, parseLength } from '../words/length';
import { CountField, TextField } from './TextField';

interface Props {
  list: PriceList;
  onList: (l: PriceList, what: string) => void;
}

const BAD = 'Write a price such as 1.25.';

export function PriceTable({ list, onList }: Props) {
  const set = (change: Partial<PriceList>, what: string) => onList({ ...list, ...change, invented: false }, what);
  const rate = (key: 'die' | 'secondPost' | 'shipping', what: string) => (text: string) => {
    const r = parseRate(text);
    if (r === undefined) return BAD;
    set({ [key]: r }, what);
    return undefined;
  };
  return (
    <details class="more">
      <summary>Price list: {list.name}</summary>
      <div class="limit-grid">
        <TextField label="die, once" unit={list.currency} value={list.die} numeric onSet={rate('die', 'Die charge')} />
        <TextField label="shipping, once" unit={list.currency} value={list.shipping} numeric onSet={rate('shipping', 'Shipping')} />
        <TextField label="second post, a piece" unit={list.currency} value={list.secondPost} numeric onSet={rate('secondPost', 'Second post')} />
        <CountField label="enamels in the price" value={list.included} least={0} most={12} onCount={(n) => set({ included: n }, 'Included colours')} />
        <CountField label="least pieces" value={list.minimum} least={1} most={100000} onCount={(n) => set({ minimum: n }, 'Minimum')} />
        <TextField label="currency" value={list.currency} onSet={(t) => {
          if (!/^[A-Za-z]{3}$/.test(t.trim())) return 'Three letters, such as EUR.';
          set({ currency: t.trim().toUpperCase() }, 'Currency');
          return undefined;
        }} />
        <CountField label="digits after the point" value={list.minorDigits} least={0} most={4} onCount={(n) => set({ minorDigits: n }, 'Digits of the currency')} />
        <ChargeField label="each further enamel" charge={list.extraColour} currency={list.currency} onCharge={(c) => set({ extraColour: c }, 'Further enamel')} />
        <ChargeField label="hard instead of soft" charge={list.hard} currency={list.currency} onCharge={(c) => set({ hard: c }, 'Hard enamel')} />
      </div>
      <Breaks list={list} set={set} />
    </details>
  );
}

function ChargeField(p: { label: string; charge: Charge; currency: string; onCharge: (c: Charge) => void }) {
  return (
    <span class="charge">
      <TextField label={p.label} value={p.charge.rate} numeric onSet={(t) => {
        const rate = parseRate(t);
        if (rate === undefined) return BAD;
        p.onCharge({ ...p.charge, rate });
        return undefined;
      }} />
      <select
        aria-label={`${p.label}: counted by`}
        value={p.charge.by}
        onChange={(e) => p.onCharge({ ...p.charge, by: e.currentTarget.value === 'percent' ? 'percent' : 'piece' })}
      >
        <option value="piece">{p.currency} a piece</option>
        <option value="percent">% of the unit price</option>
      </select>
    </span>
  );
}

function Breaks({ list, set }: { list: PriceList; set: (c: Partial<PriceList>, what: string) => void }) {
  const cell = (row: number, col: number) => (text: string) => {
    const r = parseRate(text);
    if (r === undefined) return BAD;
    const breaks = list.breaks.map((b, i) => (i === row ? { ...b, unit: b.unit.map((u, j) => (j === col ? r : u)) } : b));
    set({ breaks }, 'Unit price');
    return undefined;
  };
  const size = (col: number) => (text: string) => {
    const v = parseLength(text);
    if (v === undefined) return 'Write a length such as 30 mm.';
    set({ sizes: list.sizes.map((s, j) => (j === col ? v : s)) }, 'Size class');
    return undefined;
  };
  const from = (row: number, n: number) =>
    set({ breaks: list.breaks.map((b, i) => (i === row ? { ...b, from: n } : b)).sort((a, b) => a.from - b.from) }, 'Quantity break');
  const add = () => {
    const last = list.breaks.at(-1);
    if (last) set({ breaks: [...list.breaks, { from: last.from * 2, unit: [...last.unit] }] }, 'Added a quantity break');
  };
  return (
    <div class="scroll">
      <table class="breaks">
        <caption>Soft enamel, {list.currency} a piece; size classes by {list.sizeBy === 'mean' ? 'the mean of width and height' : 'the longest side'}</caption>
        <thead>
          <tr>
            <th scope="col">from</th>
            {list.sizes.map((s, j) => (
              <th scope="col" key={j}><TextField label={`Size class ${j + 1}, up to ${mm(s)}`} hideLabel value={String(s)} unit="mm" numeric onSet={size(j)} /></th>
            ))}
            <th><span class="unseen">Remove</span></th>
          </tr>
        </thead>
        <tbody>
          {list.breaks.map((b, i) => (
            <tr key={i}>
              <th scope="row"><CountField label={`Break ${i + 1}, from pieces`} hideLabel value={b.from} least={1} most={1000000} onCount={(n) => from(i, n)} /></th>
              {b.unit.map((u, j) => (
                <td key={j}><TextField label={`From ${b.from}, size class ${j + 1}`} hideLabel value={u} numeric onSet={cell(i, j)} /></td>
              ))}
              <td>
                {list.breaks.length > 1 ? (
                  <button type="button" class="link" aria-label={`Remove the break at ${b.from}`} onClick={() => set({ breaks: list.breaks.filter((_, k) => k !== i) }, 'Removed a quantity break')}>✕</button>
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
