// What became of the pieces: the answer first, then the book, then the makers.
import { useState } from 'preact/hooks';
import type { Grade, Ledger, MakerRecord, MoveKind, StockBook, StockLine, StockMove, StockName, StockRow } from '../engine/wire.gen';
import { typed } from '../state/typed';
import { Field, Why } from '../widgets/basic';
import { CountField } from '../widgets/TextField';
import { dieSays, MOVES, MOVE_WORDS, moveSays } from '../words/parcel';
import { Day } from './ParcelTerms';

export interface LedgerProps {
  ledger: Ledger | undefined;
  book: StockBook;
  names: readonly StockName[];
  today: string;
  refused: string;
  /** A new order is reckoned by the order's calendar. */
  byCalendar: boolean;
  onEnter: (move: StockMove) => Promise<boolean>;
  onOut: (at: number) => void;
  onBook: (change: Partial<StockBook>, what: string) => void;
  onAgain: (row: StockRow) => void;
}

export function ParcelLedger(p: LedgerProps) {
  const fault = p.ledger?.faults[0];
  const stock = p.ledger?.stock;
  return (
    <div class="ledger">
      <h3>What is left</h3>
      {fault ? <p class="warn" role="alert">{fault.what}</p> : null}
      {stock ? <p class="answer">{stock.says}</p> : null}
      {stock ? <Rows rows={stock.rows} onAgain={p.onAgain} /> : null}
      <Enter {...p} />
      <Entries {...p} />
      {p.ledger && p.ledger.makers.length > 0 ? <Makers all={p.ledger.makers} /> : null}
      <Why>
        {stock?.rows.map((r) => (r.pace ? <p key={r.design + r.version}>{r.name}: {r.pace.says}{r.reorder ? ` ${r.reorder.ends}` : ''}</p> : null))}
        <p>The pace takes all that went to buyers in the weeks looked at as one rate; its interval is exact for a count that comes at one steady rate (Garwood 1936). A fair sells in one day what a shop sells in weeks, so it makes the pace look faster than it goes on.</p>
        <p>{p.byCalendar ? 'A new order is counted back by your calendar of the order' : 'A new order is reckoned in days, as typed under the book'}; the die is kept, so there is neither drawing nor proof.</p>
        {stock?.notes.map((n) => <p key={n}>{n}</p>)}
      </Why>
    </div>
  );
}

function Rows({ rows, onAgain }: { rows: readonly StockRow[]; onAgain: (r: StockRow) => void }) {
  return (
    <>
      <div class="scroll">
        <table class="stock">
          <thead><tr><th scope="col">version</th><th scope="col">left</th><th scope="col">came</th><th scope="col">sold</th><th scope="col">fair</th><th scope="col">wholesale</th><th scope="col">gifts</th><th scope="col">replacements</th></tr></thead>
          <tbody>
            {rows.flatMap((r) => [r.firsts, ...(r.seconds.came > 0 ? [r.seconds] : [])].map((l) => <Line key={r.design + r.version + l.grade} name={r.name} line={l} />))}
          </tbody>
        </table>
      </div>
      {rows.map((r) => (r.reorder?.die ? (
        <p key={r.design + r.version} class="row-acts">
          <button type="button" class="plain" onClick={() => onAgain(r)}>Order {r.name} again on its die</button>
          <span class="hint">{dieSays(r.reorder.dieAge)}</span>
        </p>
      ) : null))}
    </>
  );
}

function Line({ name, line }: { name: string; line: StockLine }) {
  return (
    <tr>
      <th scope="row">{name}{line.grade === 'second' ? ', seconds' : ''}</th>
      <td><b>{line.left}</b></td><td>{line.came}</td><td>{line.sold}</td><td>{line.fair}</td><td>{line.wholesale}</td><td>{line.gifts}</td><td>{line.replacements}</td>
    </tr>
  );
}

function Enter(p: LedgerProps) {
  const [kind, setKind] = useState<MoveKind>('sold');
  const [grade, setGrade] = useState<Grade>('first');
  const [text, setText] = useState('1');
  const [fault, setFault] = useState('');
  const [of, setOf] = useState(0);
  const [day, setDay] = useState(p.today);
  const name = p.names[Math.min(of, p.names.length - 1)];
  if (!name) return null;
  const move = { kind, grade, day, design: name.design, version: name.version };
  // The number is read when it is entered, so that what stands there is what counts.
  const enter = async () => {
    const got = await typed({ text, as: 'count', least: 1, most: 20000 }, (t) => void p.onEnter({ ...move, count: t.number }));
    setFault(typeof got === 'string' ? got : '');
    if (typeof got !== 'string') got();
  };
  const complaint = fault || p.refused;
  return (
    <form class="enter-move" onSubmit={(e) => { e.preventDefault(); void enter(); }}>
      <Field label="Pieces"><input type="text" inputMode="numeric" value={text} aria-invalid={fault ? true : undefined} onInput={(e) => setText(e.currentTarget.value)} /></Field>
      <label class="field"><span class="field-label">Grade</span>
        <select value={grade} onChange={(e) => setGrade(e.currentTarget.value === 'second' ? 'second' : 'first')}><option value="first">firsts</option><option value="second">seconds</option></select>
      </label>
      {p.names.length > 1 ? (
        <label class="field"><span class="field-label">Of</span>
          <select value={String(of)} onChange={(e) => setOf(Number(e.currentTarget.value))}>{p.names.map((n, i) => <option key={n.design + n.version} value={String(i)}>{n.name}</option>)}</select>
        </label>
      ) : null}
      <label class="field"><span class="field-label">What became of them</span>
        <select value={kind} onChange={(e) => setKind(MOVES.find((m) => m === e.currentTarget.value) ?? 'sold')}>{MOVES.map((m) => <option key={m} value={m}>{MOVE_WORDS[m]}</option>)}</select>
      </label>
      <Day label="On" value={day} onSet={setDay} />
      <button type="submit" class="plain">Enter it</button>
      {complaint ? <p class="complaint" role="alert">{complaint}</p> : null}
    </form>
  );
}

function Entries(p: LedgerProps) {
  const nameOf = (m: StockMove) => p.names.find((n) => n.design === m.design && n.version === m.version)?.name ?? 'a version no longer in the order';
  return (
    <details class="more">
      <summary>The book, and how far it looks</summary>
      {p.book.moves.length === 0 ? <p class="hint">Nothing is entered yet. What a parcel brings is in the book by its count.</p> : (
        <ul class="versions">
          {p.book.moves.map((m, i) => (
            <li key={i}><span>{moveSays(m, nameOf(m))}</span><button type="button" class="link" aria-label={`Take out: ${moveSays(m, nameOf(m))}`} onClick={() => p.onOut(i)}>take out</button></li>
          )).reverse()}
        </ul>
      )}
      <div class="order-fields">
        <CountField label="Pace over the last" value={p.book.weeks} least={1} most={104} unit="weeks" onCount={(weeks) => p.onBook({ weeks }, 'Weeks of the pace')} />
        <CountField label="From ordering again to carded" value={p.book.leadDays} least={0} most={730} unit="days" onCount={(leadDays) => p.onBook({ leadDays }, 'Days of a new order')} />
      </div>
    </details>
  );
}

function Makers({ all }: { all: readonly MakerRecord[] }) {
  return (
    <div>
      <h3>How each maker did</h3>
      <ul class="notes">{all.map((m) => <li key={m.maker}><b>{m.maker || 'No maker named'}:</b> {m.says}</li>)}</ul>
      <Why><p>The share of firsts stands with its exact 95 percent interval (Clopper and Pearson 1934). Pieces of one parcel share their faults, so the true doubt is wider, most of all after one parcel.</p></Why>
    </div>
  );
}
