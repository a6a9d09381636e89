// What is left after costs: by channel, in all, and against the pieces sold.
import type { Channel, ChannelKind, Fault, LeftAfter, Selling } from '../engine/wire.gen';
import { KIND_WORDS, leftSays } from '../words/selling';
import { Why } from '../widgets/basic';
import { MoneyChart, valueAt, type MoneyMark } from '../widgets/MoneyChart';
import { Amount, faultAt, Faults, Pick } from '../widgets/MoneyFields';
import { Room } from '../widgets/Room';
import { LeftChannel } from './LeftChannel';
import { LeftPost } from './LeftPost';
import { Lines, RowHead } from './LeftRow';
import { LeftSeconds } from './LeftSeconds';

export interface LeftProps {
  plan: Selling;
  /** Missing while it is not known, or where the plan cannot be used. */
  left: LeftAfter | undefined;
  faults: readonly Fault[];
  /** Why nothing can be reckoned at all. */
  problem: string;
  late: boolean;
  /** Currency in which it is sold: that of the list, or the second one. */
  currency: string;
  /** More than one where the order knows a rate between two. */
  currencies: readonly string[];
  /** Which figures are still the invented ones. */
  invented: readonly string[];
  pinGrams: number;
  onPlan: (change: (plan: Selling) => Selling, what: string) => void;
  onChannel: (at: number, change: Partial<Channel>, what: string) => void;
  onAdd: (kind: ChannelKind) => void;
  onRemove: (at: number) => void;
}

function says(p: LeftProps): string {
  if (p.problem) return p.problem;
  if (p.left) return leftSays(p.left);
  return p.faults[0]?.what ?? 'Counting …';
}

export function LeftPanel(p: LeftProps) {
  const { left, plan } = p;
  const money = { currency: p.currency, faults: p.faults };
  return (
    <Room id="left" title="Left after costs" says={says(p)} alarm={Boolean(p.problem) || p.faults.length > 0} late={p.late}>
      {p.invented.length > 0 ? <p class="invented">Invented, to show how it is reckoned: {p.invented.join('; ')}. Put in your own.</p> : null}
      <div class="order-fields">
        <Amount label="price of a pin" value={plan.price} currency={p.currency} fault={faultAt(p.faults, 'price')} onSet={(price) => p.onPlan((q) => ({ ...q, price }), 'Price of a pin')} />
        {p.currencies.length > 1 ? (
          <Pick label="sold in" value={p.currency} options={p.currencies.map((c) => [c, c])} onPick={(currency) => p.onPlan((q) => ({ ...q, currency }), `Sold in ${currency}`)} fault={faultAt(p.faults, 'currency')} />
        ) : null}
      </div>
      {left ? <LeftOver left={left} currency={p.currency} /> : null}
      <Ledger {...p} />
      {left ? <AllLines left={left} /> : null}
      {left && left.notes.length > 0 ? <ul class="notes bill-notes">{left.notes.map((n) => <li key={n}>{n}</li>)}</ul> : null}
      <LeftPost {...money} plan={plan} pinGrams={p.pinGrams} onPlan={p.onPlan} />
      <LeftSeconds {...money} plan={plan} onPlan={p.onPlan} />
      <Why>
        <p>Every line is rounded once, to the smallest coin, and each sum is that of the lines you see. The maker’s bill is shared out by pieces; what comes to a piece is marked “about”.</p>
        <p>Pieces are handed to the channels one by one, so that at every number each has the pieces of its share (Webster’s method); the curve above goes that way, the pieces without flaw first.</p>
      </Why>
    </Room>
  );
}

function LeftOver({ left, currency }: { left: LeftAfter; currency: string }) {
  const points = left.points.map((q) => ({ n: q.pieces, v: Number(q.left) }));
  const last = points.at(-1);
  const marked: MoneyMark[] = [];
  if (left.covers >= 0) marked.push({ n: left.covers, v: valueAt(points, left.covers), says: `costs covered from ${left.covers}`, kind: 'covers' });
  if (last) marked.push({ ...last, says: `all ${last.n} gone`, kind: 'now' });
  return <MoneyChart points={points} marked={marked} along="pieces sold or given" up={`${currency} left`} label={`What is left against pieces sold: ${leftSays(left)}`} />;
}

const KINDS = Object.keys(KIND_WORDS) as ChannelKind[];

function Ledger(p: LeftProps) {
  const rows = p.left?.rows ?? [];
  const further = rows.slice(p.plan.channels.length);
  return (
    <div class="ledger">
      <ul>
        {p.plan.channels.map((c, i) => (
          <LeftChannel key={i} channel={c} at={i} plan={p.plan} row={rows[i]} currency={p.currency} faults={p.faults} onChange={p.onChannel} onRemove={p.onRemove} />
        ))}
        {further.map((r) => (
          <li key={r.name} class="ledger-row plain-row">
            <details>
              <summary><RowHead name={r.name} says={r.count > 0 ? `${r.count} pieces, ${r.eachSays} each` : ''} sum={r.leftSays} /></summary>
              <Lines row={r} />
            </details>
          </li>
        ))}
      </ul>
      {p.left ? <p class="ledger-total"><RowHead name="In all" says={`${p.left.total.count} pieces, ${p.left.total.eachSays} each`} sum={p.left.total.leftSays} /></p> : null}
      <Faults faults={p.faults} at="channels" />
      <label class="field ledger-add">
        <span class="field-label">another way to sell</span>
        <select value="" onChange={(e) => { const kind = KINDS.find((k) => k === e.currentTarget.value); e.currentTarget.value = ''; if (kind) p.onAdd(kind); }}>
          <option value="">choose …</option>
          {KINDS.map((k) => <option key={k} value={k}>{KIND_WORDS[k]}</option>)}
        </select>
      </label>
    </div>
  );
}

function AllLines({ left }: { left: LeftAfter }) {
  return (
    <details class="more">
      <summary>All that comes in and goes out</summary>
      <Lines row={left.total} />
    </details>
  );
}
