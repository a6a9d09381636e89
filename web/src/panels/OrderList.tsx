// One maker's price list, folded into groups; it comes and goes as a table of text.
import { useRef, useState } from 'preact/hooks';
import type { PriceList } from '../engine/wire.gen';
import type { Arrived } from '../state/lists';
import { typed } from '../state/typed';
import { CountField, TextField } from '../widgets/TextField';
import { GROUPS, isRows, type Group } from '../words/listcells';
import { faultCount } from '../words/order';
import { CellField, CellRows, type CellsProps } from './OrderCells';
import { Arrival } from './OrderArrival';
import { OrderPrices } from './OrderPrices';

export interface ListProps extends CellsProps {
  arrived: Arrived | undefined;
  onText: (text: string) => void;
  onFile: (file: File) => void;
  onAccept: () => void;
  onAcceptMore: () => void;
  onLeave: () => void;
  onSave: (list: PriceList) => void;
}

export function OrderList(p: ListProps) {
  const [text, setText] = useState<string>();
  const [die, ...rest] = GROUPS;
  return (
    <details class="more price-list">
      <summary>Price list: {p.list.name}{p.faults.length > 0 ? <b class="fault-count">{faultCount(p.faults.length)}</b> : null}</summary>
      <Ways {...p} pasting={text !== undefined} onPasting={(on) => setText(on ? '' : undefined)} />
      {text === undefined ? null : <PasteBox text={text} onText={setText} onRead={() => p.onText(text)} />}
      {p.arrived ? <Arrival arrived={p.arrived} list={p.list} onAccept={() => { setText(undefined); p.onAccept(); }} onAcceptMore={() => { setText(undefined); p.onAcceptMore(); }} onLeave={p.onLeave} /> : null}
      {die ? <Cells {...p} group={die} open /> : null}
      <details class="more" open>
        <summary>Pieces, by size and number<Faults faults={p.faults.filter((f) => f.cell.startsWith('pieces')).length} /></summary>
        <OrderPrices {...p} onBlock={(block) => setText(block)} />
      </details>
      {rest.map((g) => <Cells key={g.id} {...p} group={g} />)}
      <Money {...p} />
    </details>
  );
}

const Faults = ({ faults }: { faults: number }) => (faults > 0 ? <b class="fault-count">{faultCount(faults)}</b> : null);

/** What a group's cells begin with. */
const own = (g: Group, cell: string) => g.parts.some((part) => cell.startsWith(isRows(part) ? part.rows : part.at));

function Cells(p: CellsProps & { group: Group; open?: boolean }) {
  const { group } = p;
  const wrong = p.faults.filter((f) => own(group, f.cell)).length;
  const cells = group.parts.filter((part) => !isRows(part));
  const rows = group.parts.filter(isRows);
  return (
    <details class="more" open={p.open || wrong > 0}>
      <summary>{group.title}<Faults faults={wrong} /></summary>
      <div class={group.id === 'notes' ? 'limit-grid whole' : 'limit-grid'}>
        {cells.map((c) => (isRows(c) ? null : <CellField key={c.at} {...p} cell={c} at={c.at} />))}
      </div>
      {rows.map((r) => (
        <div class="rows" key={r.rows}>
          <h4>{r.title}</h4>
          <CellRows {...p} part={r} />
        </div>
      ))}
    </details>
  );
}

function Money(p: CellsProps) {
  const set = (change: Partial<PriceList>, what: string) => p.onList((l) => ({ ...l, ...change }), what);
  return (
    <div class="limit-grid">
      <TextField label="currency" value={p.list.currency} fault={p.faults.find((f) => f.cell === 'currency')?.what}
        onSet={(text) => typed({ text, as: 'currency' }, (t) => set({ currency: t.text }, 'Currency'))} />
      <CountField label="digits after the point" value={p.list.minorDigits} least={0} most={4} fault={p.faults.find((f) => f.cell === 'minorDigits')?.what}
        onCount={(n) => set({ minorDigits: n }, 'Digits of the currency')} />
    </div>
  );
}

const KINDS = '.csv,.tsv,.txt,text/csv,text/tab-separated-values,text/plain';

function Ways(p: ListProps & { pasting: boolean; onPasting: (on: boolean) => void }) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <div class="two ways">
      <input ref={input} class="unseen" type="file" accept={KINDS} tabIndex={-1} aria-label="Price list file"
        onChange={(e) => {
          const file = e.currentTarget.files?.[0];
          if (file) p.onFile(file);
          e.currentTarget.value = '';
        }} />
      <button type="button" class="link" aria-expanded={p.pasting} onClick={() => p.onPasting(!p.pasting)}>paste rows</button>
      <button type="button" class="link" onClick={() => input.current?.click()}>open a CSV file</button>
      <button type="button" class="link" onClick={() => p.onSave(p.list)}>save as CSV</button>
    </div>
  );
}

const EXAMPLE = 'pieces,up to 30 mm,up to 38 mm\n100,1.48,1.72\n200,1.30,1.52\ndie,,68.00';

/** Keys and pastes in here are the field's own, not the sheet's. */
function PasteBox({ text, onText, onRead }: { text: string; onText: (t: string) => void; onRead: () => void }) {
  return (
    <div class="paste-rows">
      <label>
        <span class="field-label">rows from a spreadsheet, their head first</span>
        <textarea rows={6} value={text} placeholder={EXAMPLE} spellcheck={false} autofocus
          onInput={(e) => onText(e.currentTarget.value)} onPaste={(e) => e.stopPropagation()} onKeyDown={(e) => e.stopPropagation()} />
      </label>
      <button type="button" class="solid" disabled={!text.trim()} onClick={onRead}>Read these rows</button>
    </div>
  );
}
