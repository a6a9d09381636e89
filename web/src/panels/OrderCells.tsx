// The cells of a price list: typed, read by the engine, and told at the spot
// what is wrong. An empty one is not known.
import type { CellError, ChargeBy, PriceList } from '../engine/wire.gen';
import { faultAt, rowsAt, textAt, valueAt, withCell, withoutRow, withRow } from '../state/cells';
import { typed, type Outcome } from '../state/typed';
import { TextField } from '../widgets/TextField';
import type { Cell, CellKind, Rows } from '../words/listcells';

export interface CellsProps {
  list: PriceList;
  faults: readonly CellError[];
  /** Changes the list as it then is: another cell may have been read since. */
  onList: (change: (l: PriceList) => PriceList, what: string) => void;
}

interface CellProps extends CellsProps {
  cell: Cell;
  /** Its place in the list. */
  at: string;
  /** What it is called, where its own label stands above it already. */
  called?: string;
}

const GRAMS_MOST = 1_000_000;
const COUNT_MOST = 1_000_000;
const UNKNOWN = 'not known';

type Put = (value: unknown) => void;

/** How a text of each kind is read; nothing typed is not known. */
function reading(kind: CellKind, beside: string, put: Put): (text: string) => Outcome | Promise<Outcome> {
  const empty = (text: string) => text.trim() === '';
  if (kind === 'count' || kind === 'grams') {
    const most = kind === 'grams' ? GRAMS_MOST : COUNT_MOST;
    return (text) => (empty(text) ? () => put(0) : typed({ text, as: 'count', beside, most }, (t) => put(t.number)));
  }
  if (kind === 'mm') return (text) => typed({ text, as: 'length', beside: 'mm' }, (t) => put(t.number));
  if (kind === 'text') return (text) => () => put(text.trim());
  return (text) => (empty(text) ? () => put('') : typed({ text, as: 'amount', beside }, (t) => put(t.text)));
}

const UNITS: Partial<Record<CellKind, string>> = { percent: '%', mm: 'mm', grams: 'g' };

export function CellField(p: CellProps) {
  const { cell, at, list } = p;
  const label = p.called ?? cell.label;
  const put = (value: unknown) => p.onList((l) => withCell(l, at, value), label);
  if (cell.as === 'flag') {
    return (
      <label class="tick-box">
        <input type="checkbox" checked={valueAt(list, at) === true} onChange={(e) => put(e.currentTarget.checked)} />
        <span>{label}</span>
      </label>
    );
  }
  if (cell.as === 'pick') return <Pick label={label} hide={p.called !== undefined} value={textAt(list, at)} options={cell.options ?? []} onPick={put} />;
  if (cell.as === 'charge') return <ChargeField {...p} label={label} />;
  const unit = cell.as === 'amount' ? list.currency : UNITS[cell.as] ?? cell.unit;
  const value = textAt(list, at);
  return (
    <TextField
      label={label} hideLabel={p.called !== undefined} value={cell.unsaid && value === '0' ? '' : value} numeric={cell.as !== 'text'}
      {...(unit ? { unit } : {})} fault={faultAt(p.faults, at)} placeholder={cell.as === 'text' ? undefined : UNKNOWN}
      onSet={reading(cell.as, unit ?? '', put)}
    />
  );
}

function Pick(p: { label: string; hide: boolean; value: string; options: readonly (readonly [string, string])[]; onPick: (v: string) => void }) {
  return (
    <label class="field">
      <span class={p.hide ? 'unseen' : 'field-label'}>{p.label}</span>
      <select value={p.value} onChange={(e) => p.onPick(e.currentTarget.value)}>
        {p.options.map(([v, words]) => <option key={v} value={v}>{words}</option>)}
      </select>
    </label>
  );
}

const waysOf = (currency: string): [ChargeBy, string][] => [['piece', `${currency} a piece`], ['percent', '% of unit price'], ['set-up', `${currency} once`]];

/** A rate and what it is counted by. */
function ChargeField(p: CellProps & { label: string }) {
  const by = textAt(p.list, `${p.at}.by`) || 'piece';
  const put = (part: 'rate' | 'by') => (value: unknown) => p.onList((l) => withCell(l, `${p.at}.${part}`, value), p.label);
  return (
    <span class="charge">
      <TextField
        label={p.label} hideLabel={p.called !== undefined} value={textAt(p.list, `${p.at}.rate`)} numeric fault={faultAt(p.faults, p.at)} placeholder={UNKNOWN}
        onSet={reading('amount', by === 'percent' ? '%' : p.list.currency, put('rate'))}
      />
      <select aria-label={`${p.label}: counted by`} value={by} onChange={(e) => put('by')(e.currentTarget.value)}>
        {waysOf(p.list.currency).map(([v, words]) => <option key={v} value={v}>{words}</option>)}
      </select>
    </span>
  );
}

/** Any number of alike rows, with one more or fewer. */
export function CellRows(p: CellsProps & { part: Rows }) {
  const { part, list } = p;
  const rows = rowsAt(list, part.rows);
  const fault = p.faults.find((f) => f.cell === part.rows)?.what;
  return (
    <div class="cell-rows">
      {rows.length > 0 ? (
        <ul aria-label={part.title}>
          {rows.map((_, i) => (
            <li key={i}>
              {part.columns.map((c) => <CellField key={c.at} {...p} cell={c} at={`${part.rows}[${i}].${c.at}`} />)}
              <button type="button" class="link" aria-label={`Remove ${part.one} ${i + 1}`} onClick={() => p.onList((l) => withoutRow(l, part.rows, i), `Removed a ${part.one}`)}>✕</button>
            </li>
          ))}
        </ul>
      ) : null}
      {fault ? <p class="complaint" role="alert">{fault}</p> : null}
      <button type="button" class="link" onClick={() => p.onList((l) => withRow(l, part.rows, part.blank), `Added a ${part.one}`)}>add a {part.one}</button>
    </div>
  );
}
