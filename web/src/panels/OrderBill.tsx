// The bill: every line, its total and what that comes to a piece. What the list
// leaves open is asked for right here.
import type { Line, Quote } from '../engine/wire.gen';
import { valueAt } from '../state/cells';
import type { Invented } from '../state/invented';
import { needSays } from '../words/order';
import { CellField, type CellsProps } from './OrderCells';

/** Whose the figures of the list are, as long as some are the example's. */
function Whose({ invented, onOwn }: Props) {
  if (invented === 'none') return null;
  if (invented === 'all') return <p class="invented">These prices are invented, to show how a price is made. Put in your own maker’s below.</p>;
  return <p class="invented">Some of these figures are still invented. <button type="button" class="link" onClick={onOwn}>They are all my maker’s now</button></p>;
}

interface Props extends CellsProps {
  quote: Quote;
  late: boolean;
  /** Names of the items, where there are several. */
  items: readonly string[];
  invented: Invented;
  /** The figures are all the maker's own. */
  onOwn: () => void;
  /** What is not in the bill, and why. */
  left: readonly string[];
}

export function OrderBill(p: Props) {
  const { quote: q } = p;
  const open = q.needs.length > 0;
  return (
    <>
      <Whose {...p} />
      <table class={p.late ? 'quote behind' : 'quote'}>
        {p.items.length > 1
          ? [...p.items.keys(), WHOLE].map((i) => <Lines key={i} of={p.items[i] ?? 'the whole order'} lines={q.lines.filter((l) => l.item === i)} />)
          : <Lines lines={q.lines} />}
        <tfoot>
          <tr><th scope="row">{open ? 'so far' : 'in all'}</th><td /><td>{q.totalSays}</td></tr>
          <tr><th scope="row">each</th><td /><td>{q.eachSays}</td></tr>
          <Landed quote={q} />
          {q.into ? <tr><th scope="row">in {q.into.currency}<small>{q.into.rateSays}</small></th><td>{q.into.eachSays}</td><td>{q.into.totalSays}</td></tr> : null}
        </tfoot>
      </table>
      {open ? <Needs {...p} /> : null}
      {q.notes.length + p.left.length > 0 ? <ul class="notes bill-notes">{[...p.left, ...q.notes].map((n) => <li key={n}>{n}</li>)}</ul> : null}
    </>
  );
}

/** The item of a line that is the whole order's own. */
const WHOLE = -1;

function Lines({ lines, of }: { lines: readonly Line[]; of?: string }) {
  if (lines.length === 0) return null;
  return (
    <tbody>
      {of ? <tr class="bill-of"><th scope="rowgroup" colSpan={3}>{of}</th></tr> : null}
      {lines.map((l, i) => (
        <tr key={i}>
          <th scope="row">{of ? l.what.replace(` (${of})`, '') : l.what}</th>
          <td>{l.sumSays}</td>
          <td>{l.says}</td>
        </tr>
      ))}
    </tbody>
  );
}

/** What a piece costs once it is here, where that differs from its price. */
function Landed({ quote: q }: { quote: Quote }) {
  const l = q.landed;
  if (!l) return null;
  const { short } = l;
  const some = l.good !== q.pieces || l.sold !== q.pieces;
  return (
    <>
      {some && l.goodSays ? <tr><th scope="row">each good one</th><td>{l.good}</td><td>{l.goodSays}</td></tr> : null}
      {some && l.soldSays ? <tr><th scope="row">each one sold<small>{l.words}</small></th><td>{l.sold}</td><td>{l.soldSays}</td></tr> : null}
      {short?.soldSays ? <tr><th scope="row">if fewer come, each one sold<small>{short.words}</small></th><td>{short.sold}</td><td>{short.soldSays}</td></tr> : null}
    </>
  );
}

function Needs(p: CellsProps & { quote: Quote }) {
  return (
    <ul class="asked">
      {p.quote.needs.map((n) => (
        <li key={n.cell}>
          <span>{needSays(n.what)}</span>
          <Asked {...p} cell={n.cell} what={n.what} />
        </li>
      ))}
    </ul>
  );
}

/** The field for one open entry: a rate that says by what it is counted, or a plain one. */
function Asked(p: CellsProps & { cell: string; what: string }) {
  const charge = p.cell.replace(/\.rate$/, '');
  const isCharge = charge !== p.cell && !p.cell.startsWith('named') && !p.cell.startsWith('shipping');
  const at = isCharge ? charge : p.cell;
  if (valueAt(p.list, at) === undefined) return null;
  const as = isCharge ? 'charge' : /\.(off|more)$/.test(at) ? 'percent' : 'amount';
  return <CellField list={p.list} faults={p.faults} onList={p.onList} cell={{ at, label: p.what, as }} at={at} called={p.what} />;
}
