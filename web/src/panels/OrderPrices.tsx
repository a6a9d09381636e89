// The prices a piece by size and number, as a table that is typed into.
import type { Break, PriceList } from '../engine/wire.gen';
import { faultAt, withCell, withoutSizeClass, withSizeClass } from '../state/cells';
import { typed } from '../state/typed';
import { CountField, TextField } from '../widgets/TextField';
import { mm } from '../words/length';
import { CellField, type CellsProps } from './OrderCells';

const SIZE_BY = { at: 'pieces.sizeBy', label: 'sizes go by', as: 'pick', options: [['longest', 'the longest side'], ['mean', 'the mean of width and height']] } as const;
const TOGETHER = { at: 'pieces.together', label: 'pieces count together', as: 'pick', options: [['version', 'within a version'], ['design', 'within a design'], ['order', 'in the whole order']] } as const;

const FIRST_FROM = 50;
const FIRST_SIZE = 30;
const NEXT_SIZE = 8;

interface Props extends CellsProps {
  /** A block of a spreadsheet was pasted into a cell. */
  onBlock: (text: string) => void;
}

export function OrderPrices(p: Props) {
  const { list } = p;
  const { pieces } = list;
  const bySize = list.die.bySize.length > 0;
  const paste = (e: ClipboardEvent) => {
    const text = e.clipboardData?.getData('text/plain') ?? '';
    if (!/[\t\n]/.test(text.trim())) return;
    e.preventDefault();
    e.stopPropagation();
    p.onBlock(text);
  };
  const addSize = () => p.onList((l) => withSizeClass(l, (l.pieces.sizes.at(-1) ?? FIRST_SIZE - NEXT_SIZE) + NEXT_SIZE), 'Added a size class');
  const addBreak = () => p.onList(withBreak, 'Added a quantity break');
  return (
    <div class="prices">
      <div class="limit-grid">
        <CellField {...p} cell={SIZE_BY} at={SIZE_BY.at} />
        <CellField {...p} cell={TOGETHER} at={TOGETHER.at} />
        <label class="tick-box">
          <input type="checkbox" checked={bySize} onChange={() => p.onList(withDieBySize, 'Die by size')} />
          <span>the die is priced by size</span>
        </label>
      </div>
      <div class="scroll" onPaste={paste}>
        <table class="breaks">
          <caption>Soft enamel, {list.currency} a piece. An empty price is not known.</caption>
          <thead>
            <tr>
              <th scope="col">from</th>
              {pieces.sizes.map((s, j) => <th scope="col" key={j}><SizeCell {...p} at={j} size={s} /></th>)}
              <th><span class="unseen">Remove</span></th>
            </tr>
          </thead>
          <tbody>
            {pieces.breaks.map((b, i) => <Row key={i} {...p} at={i} row={b} />)}
            {bySize ? <DieRow {...p} /> : null}
          </tbody>
        </table>
      </div>
      {['pieces.sizes', 'pieces.breaks'].map((cell) => <Whole key={cell} {...p} cell={cell} />)}
      <p class="row-acts">
        <button type="button" class="plain" onClick={addBreak}>Add a quantity break</button>
        <button type="button" class="plain" onClick={addSize}>Add a size</button>
      </p>
    </div>
  );
}

/** What is wrong with all of it and not with a cell. */
function Whole({ faults, cell }: Props & { cell: string }) {
  const fault = faults.find((f) => f.cell === cell)?.what;
  return fault ? <p class="complaint" role="alert">{fault}</p> : null;
}

function withBreak(l: PriceList): PriceList {
  const last = l.pieces.breaks.at(-1);
  const next: Break = { from: last ? last.from * 2 : FIRST_FROM, unit: l.pieces.sizes.map(() => '') };
  return { ...l, pieces: { ...l.pieces, breaks: [...l.pieces.breaks, next] } };
}

function withDieBySize(l: PriceList): PriceList {
  const bySize = l.die.bySize.length > 0 ? [] : l.pieces.sizes.map(() => l.die.flat);
  return { ...l, die: { ...l.die, bySize } };
}

function SizeCell(p: Props & { at: number; size: number }) {
  const path = `pieces.sizes[${p.at}]`;
  const set = (text: string) => typed({ text, as: 'length', beside: 'mm' }, (t) => p.onList((l) => withCell(l, path, t.number), 'Size class'));
  return (
    <span class="with-x">
      <TextField label={`Size class ${p.at + 1}, up to ${mm(p.size)}`} hideLabel value={String(p.size)} unit="mm" numeric onSet={set} fault={faultAt(p.faults, path)} />
      {p.list.pieces.sizes.length > 1 ? (
        <button type="button" class="link" aria-label={`Remove the size up to ${mm(p.size)}`} onClick={() => p.onList((l) => withoutSizeClass(l, p.at), 'Removed a size class')}>✕</button>
      ) : null}
    </span>
  );
}

/** Finds a row again, which moves when the pieces of one change, and changes it. */
function withRowAt(l: PriceList, at: number, from: number, change: (b: Break) => Break): PriceList {
  const { breaks } = l.pieces;
  const i = breaks[at]?.from === from ? at : breaks.findIndex((b) => b.from === from);
  const next = breaks.map((b, k) => (k === i ? change(b) : b)).sort((a, b) => a.from - b.from);
  return { ...l, pieces: { ...l.pieces, breaks: next } };
}

function Row(p: Props & { at: number; row: Break }) {
  const { at, row, list } = p;
  const path = `pieces.breaks[${at}]`;
  const cell = (col: number) => (text: string) => {
    const take = (exact: string) => p.onList((l) => withRowAt(l, at, row.from, (b) => ({ ...b, unit: b.unit.map((u, j) => (j === col ? exact : u)) })), 'Unit price');
    return text.trim() === '' ? () => take('') : typed({ text, as: 'amount', beside: list.currency }, (t) => take(t.text));
  };
  return (
    <tr>
      <th scope="row">
        <CountField label={`Break ${at + 1}, from pieces`} hideLabel value={row.from} least={1} most={1000000} fault={faultAt(p.faults, `${path}.from`)}
          onCount={(n) => p.onList((l) => withRowAt(l, at, row.from, (b) => ({ ...b, from: n })), 'Quantity break')} />
      </th>
      {row.unit.map((u, j) => (
        <td key={j}><TextField label={`From ${row.from}, size class ${j + 1}`} hideLabel value={u} numeric placeholder="?" onSet={cell(j)} fault={faultAt(p.faults, `${path}.unit[${j}]`)} /></td>
      ))}
      <td>
        {list.pieces.breaks.length > 1 ? (
          <button type="button" class="link" aria-label={`Remove the break at ${row.from}`} onClick={() => p.onList((l) => ({ ...l, pieces: { ...l.pieces, breaks: l.pieces.breaks.filter((_, k) => k !== at) } }), 'Removed a quantity break')}>✕</button>
        ) : null}
      </td>
    </tr>
  );
}

function DieRow(p: Props) {
  return (
    <tr class="die-row">
      <th scope="row">die, once</th>
      {p.list.die.bySize.map((_, j) => (
        <td key={j}><CellField {...p} cell={{ at: '', label: '', as: 'amount' }} at={`die.bySize[${j}]`} called={`Die, size class ${j + 1}`} /></td>
      ))}
      <td />
    </tr>
  );
}
