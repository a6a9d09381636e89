// The makers of an order: a price list each, one of them in use; over quantity
// and beyond price they are held against each other.
import type { Comparison, MakerRate, PriceList } from '../engine/wire.gen';
import { MakersChart } from '../widgets/MakersChart';
import { TextField } from '../widgets/TextField';
import { typed } from '../state/typed';
import { crossSays } from '../words/order';

export interface MakersProps {
  lists: readonly PriceList[];
  used: PriceList;
  quantity: number;
  comparison: Comparison | undefined;
  /** Why nothing could be compared. */
  problem: string;
  late: boolean;
  rates: readonly MakerRate[];
  /** Currencies that want a rate to that of the list in use. */
  foreign: readonly string[];
  removed: string | undefined;
  today: string;
  onUse: (id: string) => void;
  onRename: (id: string, name: string) => void;
  onAdd: () => void;
  onCopy: (list: PriceList) => void;
  onRemove: (list: PriceList) => void;
  onPutBack: () => void;
  onRate: (rate: MakerRate) => void;
}

export function OrderMakers(p: MakersProps) {
  return (
    <div class="makers">
      <h3>Makers</h3>
      <ul class="maker-rows">
        {p.lists.map((l) => <Maker key={l.id} {...p} list={l} />)}
      </ul>
      <p class="row-acts">
        <button type="button" class="plain" onClick={p.onAdd}>Add a maker</button>
        {p.removed !== undefined ? <span role="status">“{p.removed}” is put away. <button type="button" class="link" onClick={p.onPutBack}>put it back</button></span> : null}
      </p>
      {p.foreign.length > 0 ? <Rates {...p} /> : null}
      {p.problem ? <p class="warn">{p.problem}</p> : null}
      {p.comparison ? <Compare comparison={p.comparison} quantity={p.quantity} used={p.used.id} late={p.late} /> : null}
    </div>
  );
}

function Maker(p: MakersProps & { list: PriceList }) {
  const { list } = p;
  const used = list.id === p.used.id;
  const seen = p.comparison?.makers.find((m) => m.list === list.id);
  const rename = (text: string) => (text.trim() === '' ? 'A maker has a name. Type one.' : () => p.onRename(list.id, text.trim()));
  return (
    <li class={used ? 'now' : undefined}>
      <input type="radio" name="maker" aria-label={`Use ${list.name}`} checked={used} onChange={() => p.onUse(list.id)} />
      <TextField label={`Name of ${list.name}`} hideLabel value={list.name} onSet={rename} />
      <span class="maker-acts">
        <button type="button" class="link" aria-label={`Copy ${list.name}`} onClick={() => p.onCopy(list)}>copy</button>
        {p.lists.length > 1 ? <button type="button" class="link" aria-label={`Put ${list.name} away`} onClick={() => p.onRemove(list)}>✕</button> : null}
      </span>
      {seen ? <span class="maker-now">{seen.now ? `${seen.now.totalSays} in all, ${seen.now.eachSays} each` : seen.problem}</span> : null}
    </li>
  );
}

function Rates(p: MakersProps) {
  const into = p.used.currency;
  return (
    <div class="order-fields">
      {p.foreign.map((c) => {
        const known = p.rates.find((r) => r.currency === c);
        return (
          <TextField key={c} label={`${c} 1 is, to compare${known?.dated ? `, as of ${known.dated}` : ''}`} value={known?.rate ?? ''} unit={into} numeric placeholder="not known"
            onSet={(text) => typed({ text, as: 'amount', beside: into }, (t) => p.onRate({ currency: c, rate: t.text, dated: p.today }))} />
        );
      })}
    </div>
  );
}

function Compare(p: { comparison: Comparison; quantity: number; used: string; late: boolean }) {
  const { comparison: c } = p;
  return (
    <div class={p.late ? 'makers-over behind' : 'makers-over'}>
      <MakersChart comparison={c} now={p.quantity} used={p.used} />
      {c.makers.length > 1 ? <p>{crossSays(c)}</p> : null}
      <details class="more">
        <summary>Beyond the price</summary>
        <div class="scroll">
          <table class="beyond">
            <thead>
              <tr><td />{c.makers.map((m) => <th scope="col" key={m.list}>{m.name}</th>)}</tr>
            </thead>
            <tbody>
              {c.beyond.map((b) => (
                <tr key={b.what} class={b.differs ? 'differs' : undefined}>
                  <th scope="row">{b.what}{b.differs ? <span class="differs-mark">differs</span> : null}</th>
                  {b.says.map((s, i) => <td key={i}>{s}</td>)}
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      </details>
    </div>
  );
}
